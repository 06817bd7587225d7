package org.geneticsrules.json;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.geneticsrules.document.Reference;
import org.geneticsrules.evidence.Evidence;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Taxon;

/** Reads what documents of every kind have in common. */
final class Head {

    private static final Pattern SHA_256 = Pattern.compile("[0-9a-f]{64}");

    private Head() {}

    /** Checks format version and kind, and returns id and version if both are stated. */
    static Optional<Reference> read(Part.Members document, DocumentKind kind) {
        kind(document, kind);
        return idAndVersion(document);
    }

    /** Checks format version and kind. */
    static void kind(Part.Members document, DocumentKind kind) {
        document.required("formatVersion")
                .ifPresent(part -> part.number().ifPresent(version -> {
                    if (version.compareTo(BigDecimal.ZERO) != 0) {
                        part.problems()
                                .add(
                                        "unsupported-format",
                                        part.pointer(),
                                        "format version " + version + " is not known",
                                        "0");
                    }
                }));
        document.required("kind")
                .ifPresent(part -> part.word("kind", DocumentKind::of, DocumentKind.words())
                        .filter(found -> found != kind)
                        .ifPresent(found -> part.problems()
                                .add(
                                        "other-kind",
                                        part.pointer(),
                                        "this document is of kind " + found.word(),
                                        "a document of kind " + kind.word())));
    }

    /** A reference to another document. */
    static Optional<Reference> reference(Part part) {
        return reference(part.members("id", "version", "sha256"));
    }

    /** A reference that must state the hash. */
    static Optional<Reference> pinned(Part part) {
        Part.Members members = part.members("id", "version", "sha256");
        members.required("sha256");
        return reference(members).filter(stated -> stated.sha256().isPresent());
    }

    private static Optional<Reference> reference(Part.Members members) {
        Optional<String> hash = members.optional("sha256")
                .flatMap(value -> value.text(SHA_256, "bad-sha256", "64 lower-case hexadecimal digits"));
        return idAndVersion(members).map(plain -> new Reference(plain.id(), plain.version(), hash));
    }

    static Optional<Taxon> taxon(Part part) {
        Part.Members members = part.members("name", "ncbi", "young");
        Optional<Integer> ncbi = members.optional("ncbi").flatMap(Part::count);
        Optional<Taxon.Young> young = members.optional("young").flatMap(Head::young);
        return members.required("name").flatMap(Part::sentence).map(name -> new Taxon(name, ncbi, young));
    }

    /** The support for a claim. */
    static Evidence evidence(String id, Part part) {
        Part.Members stated = part.members("grade", "claim", "sources", "dissent");
        List<String> grades = List.of(Grade.values()).stream().map(Grade::word).toList();
        return new Evidence(
                id,
                stated.required("grade")
                        .flatMap(grade -> grade.word("grade", Grade::of, grades))
                        .orElse(Grade.CONJECTURE),
                stated.required("claim").flatMap(Part::text).orElse(""),
                stated.required("sources").map(list -> list.texts(0)).orElse(List.of()),
                stated.optional("dissent").map(list -> list.texts(0)).orElse(List.of()));
    }

    /** An age or a moult. */
    static Optional<LifeStage> countedStage(Part part) {
        Part.Members members = part.members("weeks", "moult");
        Optional<Part> weeks = members.optional("weeks");
        Optional<Part> moult = members.optional("moult");
        if (weeks.isPresent() && moult.isPresent()) {
            part.problems()
                    .add("two-clocks", part.pointer(), "both weeks and a moult are stated", "one of weeks and moult");
            return Optional.empty();
        }
        if (moult.isPresent()) {
            return moult.flatMap(count -> count.count(LifeStage.MOST)).map(LifeStage::atMoult);
        }
        return members.required("weeks")
                .flatMap(count -> count.count(LifeStage.MOST))
                .map(LifeStage::atWeek);
    }

    private static Optional<Taxon.Young> young(Part part) {
        Part.Members members = part.members("one", "many");
        Optional<String> one = members.required("one").flatMap(Part::sentence);
        Optional<String> many = members.required("many").flatMap(Part::sentence);
        return one.flatMap(word -> many.map(words -> new Taxon.Young(word, words)));
    }

    static Optional<Reference> idAndVersion(Part.Members members) {
        Optional<String> id = members.required("id").flatMap(Part::sentence);
        Optional<String> version = members.required("version").flatMap(Part::sentence);
        return id.flatMap(name -> version.map(number -> Reference.of(name, number)));
    }
}
