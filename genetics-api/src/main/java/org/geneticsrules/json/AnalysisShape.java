package org.geneticsrules.json;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.geneticsrules.answer.compared.Analysis;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.Reference;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.LifeStage;

/**
 * The shape of a frozen analysis: its envelope, and which documents it says it holds. What they say is read by {@link AnalysisContents} once
 * the hashes were found to be right.
 *
 * @param library the version of the library that answered
 * @param kind what is asked
 * @param model the model in use
 * @param rivals the other models
 * @param cautions the cautions
 * @param pedigree the records
 * @param vocabularies what reads their names
 * @param population the population named
 * @param traits the traits named
 * @param misnamed errors of naming
 * @param draws how many sets are drawn
 * @param seed where they begin
 * @param documents the documents that the analysis holds
 * @param answer the answer
 * @param question the question as it stands, with its hash
 */
record AnalysisShape(
        Optional<String> library,
        Optional<Analysis.Kind> kind,
        Optional<Held> model,
        List<Held> rivals,
        List<Named> cautions,
        Optional<Named> pedigree,
        List<Named> vocabularies,
        Optional<String> population,
        List<String> traits,
        List<Misnamed> misnamed,
        Optional<Integer> draws,
        Optional<Long> seed,
        List<Embedded> documents,
        Optional<Embedded> answer,
        Optional<Embedded> question) {

    /** The kind of {@link Embedded} that a question is. */
    static final String QUESTION = "question";

    private static final int MOST_DRAWS = 10_000_000;
    private static final int MOST_FITTED = 1_000_000;

    private static final Pattern SHA_256 = Pattern.compile("[0-9a-f]{64}");

    private static final List<String> KINDS =
            Arrays.stream(Analysis.Kind.values()).map(Analysis.Kind::word).toList();

    /** The kinds that an analysis may hold. */
    private static final List<String> HELD_KINDS = DocumentKind.words().stream()
            .filter(word -> !word.equals(DocumentKind.ANALYSIS.word()))
            .toList();

    private static final List<String> ANSWERS = List.of(LitterDocument.KIND);

    /**
     * A reference to a document that the analysis is to hold.
     *
     * @param kind its kind
     * @param reference which it is
     * @param pointer where it is named
     */
    record Named(DocumentKind kind, Reference reference, String pointer) {}

    /**
     * A model that takes part.
     *
     * @param title what it is called
     * @param base the model without patches
     * @param patches the patches on it
     * @param prior its share of belief
     * @param fitted how many numbers were fitted
     * @param pointer where it is stated
     */
    record Held(
            Optional<String> title,
            Optional<Named> base,
            List<Named> patches,
            Probability prior,
            int fitted,
            String pointer) {}

    /**
     * An error of naming.
     *
     * @param trait the trait
     * @param shown the state shown
     * @param read the state recorded
     * @param stage the stage
     * @param chance how often
     * @param pointer where it is stated
     */
    record Misnamed(
            Optional<String> trait,
            Optional<String> shown,
            Optional<String> read,
            Optional<LifeStage> stage,
            Optional<Probability> chance,
            String pointer) {}

    /**
     * A document within the analysis.
     *
     * @param kind its kind
     * @param self its id and version; none of an answer
     * @param sha256 the hash that it is said to have
     * @param node the document
     * @param pointer where it stands
     */
    record Embedded(String kind, Optional<Reference> self, String sha256, Node node, String pointer) {}

    /** Reads the envelope; what is absent is so only where a problem was noted, or may be absent. */
    static AnalysisShape read(Part document) {
        Part.Members members =
                document.members("formatVersion", "kind", "library", QUESTION, "questionSha256", "documents", "answer");
        Head.kind(members, DocumentKind.ANALYSIS);
        Optional<String> library = members.required("library").flatMap(Part::sentence);
        Optional<Part> whole = members.required(QUESTION);
        Optional<Embedded> pinned = members.required("questionSha256")
                .flatMap(AnalysisShape::hash)
                .flatMap(hash -> whole.map(
                        part -> new Embedded(QUESTION, Optional.empty(), hash, part.plain(), part.pointer())));
        Optional<Part.Members> question = whole.map(part -> part.members(
                "kind",
                "model",
                "rivals",
                "cautions",
                "pedigree",
                "vocabularies",
                "population",
                "traits",
                "misnamed",
                "draws",
                "seed"));
        List<Embedded> documents = members.required("documents").map(Part::items).orElse(List.of()).stream()
                .flatMap(part -> embedded(part, HELD_KINDS, true).stream())
                .toList();
        Optional<Embedded> answer = members.required("answer").flatMap(part -> embedded(part, ANSWERS, false));
        return new AnalysisShape(
                library,
                question.flatMap(stated -> stated.required("kind"))
                        .flatMap(part -> part.word("question", Analysis.Kind::of, KINDS)),
                question.flatMap(stated -> stated.required("model")).map(AnalysisShape::held),
                items(question, "rivals").stream().map(AnalysisShape::held).toList(),
                named(question, "cautions", DocumentKind.CAUTIONS),
                question.flatMap(stated -> stated.required("pedigree"))
                        .flatMap(part -> named(part, DocumentKind.PEDIGREE)),
                named(question, "vocabularies", DocumentKind.VOCABULARY),
                question.flatMap(stated -> stated.optional("population")).flatMap(Part::sentence),
                items(question, "traits").stream()
                        .flatMap(part -> part.sentence().stream())
                        .toList(),
                items(question, "misnamed").stream()
                        .map(AnalysisShape::misnamed)
                        .toList(),
                question.flatMap(stated -> stated.required("draws")).flatMap(AnalysisShape::draws),
                question.flatMap(stated -> stated.required("seed")).flatMap(AnalysisShape::seed),
                documents,
                answer,
                pinned);
    }

    private static List<Part> items(Optional<Part.Members> question, String name) {
        return question.flatMap(stated -> stated.optional(name))
                .map(Part::items)
                .orElse(List.of());
    }

    private static List<Named> named(Optional<Part.Members> question, String name, DocumentKind kind) {
        return items(question, name).stream()
                .flatMap(part -> named(part, kind).stream())
                .toList();
    }

    private static Optional<Named> named(Part part, DocumentKind kind) {
        return Head.pinned(part).map(reference -> new Named(kind, reference, part.pointer()));
    }

    private static Held held(Part part) {
        Part.Members members = part.members("title", "base", "patches", "prior", "fitted");
        return new Held(
                members.required("title").flatMap(Part::sentence),
                members.required("base").flatMap(base -> named(base, DocumentKind.MODEL)),
                members.optional("patches").map(Part::items).orElse(List.of()).stream()
                        .flatMap(patch -> named(patch, DocumentKind.PATCH).stream())
                        .toList(),
                members.optional("prior")
                        .flatMap(prior -> ChanceShape.read(prior, "bad-chance"))
                        .orElse(Probability.ONE),
                members.optional("fitted")
                        .flatMap(number -> number.amount(MOST_FITTED))
                        .orElse(0),
                part.pointer());
    }

    private static Misnamed misnamed(Part part) {
        Part.Members members = part.members("trait", "shown", "read", "stage", "chance");
        return new Misnamed(
                members.required("trait").flatMap(Part::sentence),
                members.required("shown").flatMap(Part::sentence),
                members.required("read").flatMap(Part::sentence),
                members.optional("stage").map(IndividualShape::stage),
                members.required("chance").flatMap(chance -> ChanceShape.read(chance, "bad-chance")),
                part.pointer());
    }

    private static Optional<Integer> draws(Part part) {
        int least = Analysis.Settings.FEWEST_DRAWS;
        return part.count(MOST_DRAWS).filter(number -> {
            if (number < least) {
                part.problems().add("too-few-draws", part.pointer(), number + " draws", "at least " + least);
            }
            return number >= least;
        });
    }

    private static Optional<Long> seed(Part part) {
        return part.number().flatMap(value -> {
            boolean good = value.stripTrailingZeros().scale() <= 0
                    && value.compareTo(BigDecimal.valueOf(Long.MIN_VALUE)) >= 0
                    && value.compareTo(BigDecimal.valueOf(Long.MAX_VALUE)) <= 0;
            if (!good) {
                part.problems()
                        .add(
                                "not-whole",
                                part.pointer(),
                                value + " is not a whole number",
                                Long.MIN_VALUE + " to " + Long.MAX_VALUE);
            }
            return good ? Optional.of(value.longValue()) : Optional.empty();
        });
    }

    private static Optional<String> hash(Part value) {
        return value.text(SHA_256, "bad-sha256", "64 lower-case hexadecimal digits");
    }

    private static Optional<Embedded> embedded(Part part, List<String> kinds, boolean hasId) {
        Part.Members members = part.members("sha256", "document");
        Optional<String> hash = members.required("sha256").flatMap(AnalysisShape::hash);
        return members.required("document").flatMap(document -> {
            Part.Members stated = new Part.Members(document, document.entries());
            Optional<String> kind = stated.required("kind")
                    .flatMap(word -> word.word("kind", text -> Optional.of(text).filter(kinds::contains), kinds));
            Optional<Reference> self = hasId ? Head.idAndVersion(stated) : Optional.empty();
            return kind.flatMap(
                    word -> hash.map(pinned -> new Embedded(word, self, pinned, document.plain(), part.pointer())));
        });
    }
}
