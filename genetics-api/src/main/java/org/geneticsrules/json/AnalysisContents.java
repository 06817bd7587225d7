package org.geneticsrules.json;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.stream.Stream;
import org.geneticsrules.answer.compared.Analysis;
import org.geneticsrules.answer.compared.HeldModel;
import org.geneticsrules.caution.CautionSet;
import org.geneticsrules.document.Canonical;
import org.geneticsrules.document.Reference;
import org.geneticsrules.json.AnalysisShape.Embedded;
import org.geneticsrules.json.AnalysisShape.Held;
import org.geneticsrules.json.AnalysisShape.Misnamed;
import org.geneticsrules.json.AnalysisShape.Named;
import org.geneticsrules.model.Model;
import org.geneticsrules.patch.Patch;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Confusion;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.vocabulary.Vocabulary;

/** Reads what a frozen analysis holds: first all hashes, then the documents, those that others refer to first. */
final class AnalysisContents {

    private final AnalysisShape shape;
    private final DocumentReader reader;
    private final Map<Embedded, Catalogue> catalogues = new LinkedHashMap<>();
    private final Map<Embedded, Model> models = new LinkedHashMap<>();
    private final Map<Embedded, Patch> patches = new LinkedHashMap<>();
    private final Map<Embedded, CautionSet> cautions = new LinkedHashMap<>();
    private final Map<Embedded, Vocabulary> vocabularies = new LinkedHashMap<>();
    private final Map<Embedded, Pedigree> pedigrees = new LinkedHashMap<>();
    private final List<Problem> problems = new ArrayList<>();

    private AnalysisContents(AnalysisShape shape, DocumentReader reader) {
        this.shape = shape;
        this.reader = reader;
    }

    /** The analysis whose shape was found to be right. */
    static FrozenAnalysis read(AnalysisShape shape, DocumentReader reader) {
        return new AnalysisContents(shape, reader).read();
    }

    private FrozenAnalysis read() {
        checkHashes();
        all(DocumentKind.CATALOGUE, DocumentReader::readCatalogue, catalogues);
        throwIfAny();
        List<Catalogue> traits = List.copyOf(catalogues.values());
        all(DocumentKind.MODEL, (with, source) -> with.readModel(source, traits), models);
        all(DocumentKind.CAUTIONS, DocumentReader::readCautions, cautions);
        all(DocumentKind.VOCABULARY, (with, source) -> with.readVocabulary(source, traits), vocabularies);
        all(DocumentKind.PATCH, DocumentReader::readPatch, patches);
        all(DocumentKind.PEDIGREE, DocumentReader::readPedigree, pedigrees);
        throwIfAny();
        HeldModel first = held(shape.model().orElseThrow());
        List<HeldModel> others = shape.rivals().stream().map(this::held).toList();
        Analysis.Settings settings = settings(first.model());
        throwIfAny();
        try {
            Analysis analysis = new Analysis(
                    shape.kind().orElseThrow(),
                    first,
                    others,
                    named(shape.cautions(), cautions),
                    found(shape.pedigree().orElseThrow(), pedigrees),
                    named(shape.vocabularies(), vocabularies),
                    settings);
            checkQuestion(shape.question().orElseThrow());
            return new FrozenAnalysis(
                    analysis,
                    shape.answer().orElseThrow().node(),
                    shape.library().orElseThrow());
        } catch (IllegalArgumentException e) {
            throw new ProblemsException(
                    Problem.of(Stage.MEANING, "bad-question", "/question", String.valueOf(e.getMessage())));
        }
    }

    /** The question is the one that was answered; told last, since what is wrong with it may say more. */
    private static void checkQuestion(AnalysisShape.Embedded question) {
        String actual = Canonical.sha256(question.node());
        if (!actual.equals(question.sha256())) {
            Problems found = new Problems(Stage.REFERENCES);
            found.add(
                    "other-content",
                    question.pointer() + "Sha256",
                    "the question is not what was frozen: the hash of its content is " + actual,
                    "the content of hash " + question.sha256());
            found.throwIfAny();
        }
    }

    /** Each document has the hash it is said to have, and each document named is held. */
    private void checkHashes() {
        Problems found = new Problems(Stage.REFERENCES);
        Stream.concat(shape.documents().stream(), shape.answer().stream()).forEach(one -> {
            String actual = Canonical.sha256(one.node());
            if (!actual.equals(one.sha256())) {
                String what = one.self()
                        .map(self -> one.kind() + " " + self.id() + " " + self.version())
                        .orElse("answer");
                found.add(
                        "other-content",
                        one.pointer() + "/sha256",
                        "the " + what + " is not what was frozen: the hash of its content is " + actual,
                        "the content of hash " + one.sha256());
            }
        });
        Stream<Named> held = Stream.concat(shape.model().stream(), shape.rivals().stream())
                .flatMap(one -> Stream.concat(one.base().stream(), one.patches().stream()));
        Stream.of(held, shape.cautions().stream(), shape.pedigree().stream(), shape.vocabularies().stream())
                .flatMap(all -> all)
                .filter(one -> shape.documents().stream().noneMatch(document -> isMeant(one, document)))
                .forEach(one -> missing(one, found));
        found.throwIfAny();
    }

    private void missing(Named one, Problems found) {
        Reference reference = one.reference();
        Optional<Embedded> other = shape.documents().stream()
                .filter(document -> document.kind().equals(one.kind().word()))
                .filter(document -> document.self()
                        .filter(self -> Reference.of(reference.id(), reference.version())
                                .means(self))
                        .isPresent())
                .findFirst();
        if (other.isPresent()) {
            found.add(
                    "other-content",
                    one.pointer(),
                    "the " + one.kind().word() + " " + reference.id() + " " + reference.version()
                            + " that this analysis holds has the hash "
                            + other.get().sha256(),
                    "the hash " + reference.sha256().orElseThrow());
            return;
        }
        found.unknown(
                "unknown-" + one.kind().word(),
                one.pointer(),
                one.kind().word(),
                reference.id() + " " + reference.version(),
                shape.documents().stream()
                        .filter(document -> document.kind().equals(one.kind().word()))
                        .flatMap(document -> document.self().stream())
                        .map(self -> self.id() + " " + self.version())
                        .toList());
    }

    private static boolean isMeant(Named one, Embedded document) {
        return document.kind().equals(one.kind().word())
                && document.self()
                        .map(self -> new Reference(self.id(), self.version(), Optional.of(document.sha256())))
                        .filter(one.reference()::equals)
                        .isPresent();
    }

    private <T> void all(DocumentKind kind, BiFunction<DocumentReader, Source, T> read, Map<Embedded, T> into) {
        for (Embedded one : shape.documents()) {
            if (one.kind().equals(kind.word())) {
                try {
                    String text = Documents.write(one.node());
                    // Laid out for people it is longer than it was allowed to be within this document.
                    Limits limits =
                            reader.limits().withBytes(Math.max(reader.limits().bytes(), 4 * text.length()));
                    into.put(one, read.apply(Documents.reader(limits), Source.of(one.pointer(), text)));
                } catch (ProblemsException e) {
                    e.problems().forEach(problem -> problems.add(at(one.pointer() + "/document", problem)));
                }
            }
        }
    }

    private HeldModel held(Held one) {
        Model base = found(one.base().orElseThrow(), models);
        List<Patch> made = named(one.patches(), patches);
        Model patched = base;
        if (!made.isEmpty()) {
            try {
                patched = reader.apply(base, made);
            } catch (ProblemsException e) {
                e.problems().forEach(problem -> problems.add(at(one.pointer() + "/patches", problem.pointing(""))));
                return HeldModel.of(base);
            }
        }
        return new HeldModel(one.title().orElseThrow(), base, made, patched, one.prior(), one.fitted());
    }

    private Analysis.Settings settings(Model model) {
        shape.population()
                .filter(id -> !model.populations().containsKey(id))
                .ifPresent(id -> problems.add(Problems.unknown(
                        Stage.MEANING,
                        "unknown-population",
                        "/question/population",
                        "population",
                        id,
                        model.populations().keySet())));
        List<Confusion> errors = new ArrayList<>();
        for (Misnamed one : shape.misnamed()) {
            try {
                errors.add(new Confusion(
                        one.trait().orElseThrow(),
                        one.shown().orElseThrow(),
                        one.read().orElseThrow(),
                        one.stage(),
                        one.chance().orElseThrow()));
            } catch (IllegalArgumentException e) {
                problems.add(Problem.of(Stage.MEANING, "bad-misnaming", one.pointer(), String.valueOf(e.getMessage())));
            }
        }
        Confusions misnamed = Confusions.none();
        try {
            misnamed = Confusions.of(errors);
        } catch (IllegalArgumentException e) {
            problems.add(
                    Problem.of(Stage.MEANING, "bad-misnaming", "/question/misnamed", String.valueOf(e.getMessage())));
        }
        return new Analysis.Settings(
                shape.population(),
                shape.traits(),
                misnamed,
                shape.draws().orElseThrow(),
                shape.seed().orElseThrow());
    }

    private <T> List<T> named(List<Named> all, Map<Embedded, T> among) {
        return all.stream().map(one -> found(one, among)).toList();
    }

    private static <T> T found(Named one, Map<Embedded, T> among) {
        return among.entrySet().stream()
                .filter(entry -> isMeant(one, entry.getKey()))
                .map(Map.Entry::getValue)
                .findFirst()
                .map(Objects::requireNonNull)
                .orElseThrow();
    }

    /** Problems of the first stage that has any, as with every document. */
    private void throwIfAny() {
        problems.stream().map(Problem::stage).min(Comparator.naturalOrder()).ifPresent(first -> {
            throw new ProblemsException(problems.stream()
                    .filter(problem -> problem.stage() == first)
                    .toList());
        });
    }

    /** The same problem of a part of this document; its place in the text is looked up anew. */
    private static Problem at(String pointer, Problem problem) {
        return new Problem(
                problem.stage(),
                problem.code(),
                pointer + Pointer.of(Pointer.names(problem.pointer()).toArray(String[]::new)),
                Optional.empty(),
                problem.message(),
                problem.expected(),
                problem.nearest());
    }
}
