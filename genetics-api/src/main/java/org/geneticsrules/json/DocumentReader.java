package org.geneticsrules.json;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import org.geneticsrules.caution.CautionSet;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.Reference;
import org.geneticsrules.model.Draft;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.patch.Patch;
import org.geneticsrules.patch.PatchedDocument;
import org.geneticsrules.patch.Patches;
import org.geneticsrules.pedigree.NamedRecords;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.vocabulary.Vocabulary;
import org.geneticsrules.vocabulary.VocabularyBuilder;

/**
 * Reads documents within limits. Obtained from {@link Documents#reader()}.
 *
 * <p>Every method ends in a value, in one {@link ProblemsException} with all problems of the first stage that found any, or, if the
 * source itself fails, in an {@link UncheckedIOException}. Each problem has a position in the text, and a pointer to a part that is in
 * the document (the whole document, if nothing nearer is).
 *
 * <p>Immutable and thread-safe.
 */
public final class DocumentReader {

    private final Limits limits;

    DocumentReader(Limits limits) {
        this.limits = limits;
    }

    /**
     * Returns these limits.
     *
     * @return the limits within which this reader reads
     */
    public Limits limits() {
        return limits;
    }

    /**
     * Finds out of which kind a document is, without checking the rest of it.
     *
     * @param source where its text comes from
     * @return the kind it states
     * @throws ProblemsException if it is no JSON object or states no known kind
     * @throws UncheckedIOException if the source fails
     */
    public DocumentKind kindOf(Source source) {
        Document document = open(source);
        return document.complete(() -> {
            Part kind = new Part.Members(document.root, document.root.entries())
                    .required("kind")
                    .orElseThrow(document::problemsSoFar);
            return kind.word("kind", DocumentKind::of, DocumentKind.words()).orElseThrow(document::problemsSoFar);
        });
    }

    /**
     * Reads a catalogue.
     *
     * @param source where its text comes from
     * @return the catalogue
     * @throws ProblemsException if it is not one
     * @throws UncheckedIOException if the source fails
     */
    public Catalogue readCatalogue(Source source) {
        Document document = open(source);
        Optional<Catalogue.Builder> builder = CatalogueShape.read(document.root, limits);
        return document.complete(
                () -> builder.orElseThrow(document::problemsSoFar).build());
    }

    /**
     * Reads a model whose catalogue is one of those given.
     *
     * @param source where its text comes from
     * @param catalogues the catalogues at hand
     * @return the model
     * @throws ProblemsException if it is not one, or no given catalogue is the one it was written for
     * @throws UncheckedIOException if the source fails
     */
    public Model readModel(Source source, Collection<Catalogue> catalogues) {
        return readModel(source, reference -> find(reference, catalogues), known(catalogues));
    }

    private static Set<String> known(Collection<Catalogue> catalogues) {
        Set<String> known = new LinkedHashSet<>();
        catalogues.forEach(catalogue -> known.add(catalogue.id() + " " + catalogue.version()));
        return known;
    }

    /**
     * Reads a model and asks for its catalogue.
     *
     * @param source where its text comes from
     * @param catalogues finds the catalogue that is meant by a reference
     * @return the model
     * @throws ProblemsException if it is not one, or its catalogue is not found
     * @throws UncheckedIOException if the source fails
     */
    public Model readModel(Source source, Function<Reference, Optional<Catalogue>> catalogues) {
        return readModel(source, catalogues, Set.of());
    }

    /**
     * Reads a model that may still contradict itself, whose catalogue is one of those given.
     *
     * @param source where its text comes from
     * @param catalogues the catalogues at hand
     * @return the draft, each of its conflicts with a position in the text
     * @throws ProblemsException if it is no model, contradictions apart, or no given catalogue is the one it was written for
     * @throws UncheckedIOException if the source fails
     */
    public Draft readDraft(Source source, Collection<Catalogue> catalogues) {
        Document document = open(source);
        Supplier<Draft> stated = draft(document, reference -> find(reference, catalogues), known(catalogues));
        Draft draft = document.complete(stated);
        return draft.placed(
                draft.conflicts().stream().map(document.located::place).toList());
    }

    /**
     * Reads a set of cautions, without comparing the traits that its triggers name with any catalogue.
     *
     * @param source where its text comes from
     * @return the cautions
     * @throws ProblemsException if it is no such set
     * @throws UncheckedIOException if the source fails
     */
    public CautionSet readCautions(Source source) {
        Document document = open(source);
        Optional<CautionSet> cautions = CautionShape.read(document.root);
        return document.complete(() -> cautions.orElseThrow(document::problemsSoFar));
    }

    /**
     * Reads a set of cautions and compares the traits that its triggers name with those of a catalogue.
     *
     * @param source where its text comes from
     * @param catalogue the catalogue
     * @return the cautions
     * @throws ProblemsException if it is no such set, was written for another catalogue, or names a trait or state not in this one
     * @throws UncheckedIOException if the source fails
     */
    public CautionSet readCautions(Source source, Catalogue catalogue) {
        Document document = open(source);
        Optional<CautionSet> cautions = CautionShape.read(document.root);
        return document.complete(
                () -> cautions.orElseThrow(document::problemsSoFar).check(catalogue));
    }

    /**
     * Reads a vocabulary whose catalogue is one of those given.
     *
     * @param source where its text comes from
     * @param catalogues the catalogues at hand
     * @return the vocabulary
     * @throws ProblemsException if it is none, or no given catalogue is the one it was written for
     * @throws UncheckedIOException if the source fails
     */
    public Vocabulary readVocabulary(Source source, Collection<Catalogue> catalogues) {
        Document document = open(source);
        VocabularyShape shape = new VocabularyShape(document.root, limits);
        Optional<Reference> head = shape.head();
        Optional<Reference> written = shape.catalogue();
        // As with models, problems of shape are known before a catalogue is asked for.
        shape.fill(
                Vocabulary.builder("shape", "0", Catalogue.builder("shape", "0").build()));
        return document.complete(() -> {
            Reference self = head.orElseThrow(document::problemsSoFar);
            Reference reference = written.orElseThrow(document::problemsSoFar);
            Catalogue catalogue =
                    find(reference, catalogues).orElseThrow(() -> unknownCatalogue(reference, known(catalogues)));
            VocabularyBuilder vocabulary = Vocabulary.builder(self.id(), self.version(), catalogue);
            shape.fill(vocabulary);
            return vocabulary.writtenFor(reference).build();
        });
    }

    /**
     * Reads a patch, without comparing it with its base.
     *
     * @param source where its text comes from
     * @return the patch
     * @throws ProblemsException if it is none, if a pointer names no whole statement, or if it changes one twice
     * @throws UncheckedIOException if the source fails
     */
    public Patch readPatch(Source source) {
        Document document = open(source);
        Supplier<Optional<Patch>> patch = PatchShape.read(document.root);
        return document.complete(() -> patch.get().orElseThrow(document::problemsSoFar));
    }

    /**
     * Reads a patch and applies it to its base, to see that the patched model is sound.
     *
     * @param source where its text comes from
     * @param base the model it was written for
     * @return the patch
     * @throws ProblemsException if it is none, was written for another model or makes it unsound; each problem is placed at the statement
     *     of the patch that brings it about
     * @throws UncheckedIOException if the source fails
     */
    public Patch readPatch(Source source, Model base) {
        return readPatch(source, any -> base);
    }

    /**
     * Reads a patch whose base is one of those given, and applies it to that base, to see that the patched model is sound.
     *
     * @param source where its text comes from
     * @param bases the models at hand
     * @return the patch
     * @throws ProblemsException if it is none, no given model is the one it was written for, or it makes that unsound
     * @throws UncheckedIOException if the source fails
     */
    public Patch readPatch(Source source, Collection<Model> bases) {
        return readPatch(source, reference -> baseAmong(bases, reference));
    }

    private Patch readPatch(Source source, Function<Reference, Model> bases) {
        Document document = open(source);
        Supplier<Optional<Patch>> shape = PatchShape.read(document.root);
        return document.complete(() -> {
            Patch patch = shape.get().orElseThrow(document::problemsSoFar);
            apply(bases.apply(patch.base()), List.of(patch));
            return patch;
        });
    }

    /**
     * Reads a pedigree, without comparing what it records with any model.
     *
     * @param source where its text comes from
     * @return the pedigree
     * @throws ProblemsException if it is none, or its records do not fit together
     * @throws UncheckedIOException if the source fails
     */
    public Pedigree readPedigree(Source source) {
        Document document = open(source);
        Optional<PedigreeBuilder> pedigree = PedigreeShape.read(document.root);
        return document.complete(
                () -> pedigree.orElseThrow(document::problemsSoFar).build());
    }

    /**
     * Reads a pedigree and compares what it records with a model.
     *
     * @param source where its text comes from
     * @param model the model that is to know all traits, loci, alleles and populations named
     * @return the pedigree
     * @throws ProblemsException if it is none, its records do not fit together, or the model does not know something that they name
     * @throws UncheckedIOException if the source fails
     */
    public Pedigree readPedigree(Source source, Model model) {
        Document document = open(source);
        Optional<PedigreeBuilder> builder = PedigreeShape.read(document.root);
        return document.complete(() -> {
            Pedigree pedigree = builder.orElseThrow(document::problemsSoFar).build();
            List<Problem> unknown = pedigree.problemsUnder(model);
            if (!unknown.isEmpty()) {
                throw new ProblemsException(unknown);
            }
            return pedigree;
        });
    }

    /**
     * Reads a pedigree and the names that it says animals were called by, without comparing what it records with any model.
     *
     * @param source where its text comes from
     * @param vocabularies the vocabularies at hand
     * @return the pedigree, and what its names say
     * @throws ProblemsException if it is none, its records do not fit together, or a name cannot be read, see {@link
     *     NamedRecords#of(Pedigree, Collection)}
     * @throws UncheckedIOException if the source fails
     */
    public NamedRecords readPedigree(Source source, Collection<Vocabulary> vocabularies) {
        Document document = open(source);
        Optional<PedigreeBuilder> builder = PedigreeShape.read(document.root);
        return document.complete(() ->
                NamedRecords.of(builder.orElseThrow(document::problemsSoFar).build(), vocabularies));
    }

    /**
     * Reads a pedigree and the names that it says animals were called by, and compares all with a model.
     *
     * @param source where its text comes from
     * @param model the model that is to know all traits, loci, alleles and populations named
     * @param vocabularies the vocabularies at hand, on the catalogue of the model
     * @return the pedigree, and what its names say
     * @throws ProblemsException if it is none, its records do not fit together, the model does not know something that they name, or a name
     *     cannot be read, see {@link NamedRecords#of(Pedigree, Collection, Model)}
     * @throws UncheckedIOException if the source fails
     */
    public NamedRecords readPedigree(Source source, Model model, Collection<Vocabulary> vocabularies) {
        Document document = open(source);
        Optional<PedigreeBuilder> builder = PedigreeShape.read(document.root);
        return document.complete(() ->
                NamedRecords.of(builder.orElseThrow(document::problemsSoFar).build(), vocabularies, model));
    }

    /**
     * Reads a frozen analysis. All hashes are checked first, of each document that it holds and of the answer.
     *
     * @param source where its text comes from
     * @return the question, with everything its answer hangs on, and the answer
     * @throws ProblemsException if it is none, if any part of it is not what was frozen, or if what it holds does not fit together
     * @throws UncheckedIOException if the source fails
     */
    public FrozenAnalysis readAnalysis(Source source) {
        Document document = open(source);
        AnalysisShape shape = AnalysisShape.read(document.root);
        return document.complete(() -> AnalysisContents.read(shape, this));
    }

    /**
     * Reads an answer of any kind as it is, to compare it with another.
     *
     * @param source where its text comes from: an answer as this library writes it, or a frozen analysis, whose answer is meant
     * @return the document of the answer
     * @throws ProblemsException if it states no kind of answer; what else it states is not checked, save the hashes of an analysis
     * @throws UncheckedIOException if the source fails
     */
    public Node readAnswer(Source source) {
        Document document = open(source);
        Part.Members members = new Part.Members(document.root, document.root.entries());
        Optional<String> kind = members.required("kind").flatMap(Part::text);
        kind.filter(word -> !word.equals(DocumentKind.ANALYSIS.word()))
                .filter(word -> DocumentKind.of(word).isPresent() || !Shared.isKind(word))
                .ifPresent(word -> document.root
                        .problems()
                        .add("other-kind", "/kind", "\"" + word + "\" is no kind of answer", "an answer as JSON"));
        return document.complete(() -> kind.orElseThrow().equals(DocumentKind.ANALYSIS.word())
                ? AnalysisContents.read(readShape(document), this).answer()
                : document.root.plain());
    }

    private static AnalysisShape readShape(Document document) {
        AnalysisShape shape = AnalysisShape.read(document.root);
        document.root.problems().throwIfAny();
        return shape;
    }

    /** The model meant, or else one of its id and version, whose hash will be found to be another. */
    private static Model baseAmong(Collection<Model> bases, Reference reference) {
        return bases.stream()
                .filter(model -> reference.means(model.reference()))
                .findFirst()
                .or(() -> bases.stream()
                        .filter(model -> Reference.of(reference.id(), reference.version())
                                .means(model.reference()))
                        .findFirst())
                .orElseThrow(() -> new ProblemsException(Problems.unknown(
                        Stage.REFERENCES,
                        "unknown-base",
                        "/base",
                        "model",
                        reference.id() + " " + reference.version(),
                        bases.stream().map(Model::toString).distinct().toList())));
    }

    /**
     * Applies patches to a model.
     *
     * @param base the model that all of them were written for
     * @param patches at least one patch; their order does not matter
     * @return the patched model, with the id and version of the patch, or of all of them joined by a plus sign
     * @throws ProblemsException if they do not fit the model or one another, or the patched model is not sound; pointers are into the
     *     document of the patch that the message names, or of the only one
     * @throws IllegalArgumentException if there is no patch
     */
    public Model apply(Model base, Collection<Patch> patches) {
        PatchedDocument patched = Patches.apply(base, patches);
        try {
            return readModel(
                    new Document(Located.of(patched.document())), any -> Optional.of(base.catalogue()), Set.of());
        } catch (ProblemsException e) {
            throw new ProblemsException(
                    e.problems().stream().map(patched::inPatch).toList());
        }
    }

    private Model readModel(Source source, Function<Reference, Optional<Catalogue>> catalogues, Set<String> known) {
        return readModel(open(source), catalogues, known);
    }

    private Model readModel(Document document, Function<Reference, Optional<Catalogue>> catalogues, Set<String> known) {
        Supplier<Draft> draft = draft(document, catalogues, known);
        return document.complete(() -> draft.get().model());
    }

    /** What a document states, once its stage of shape is ended. */
    private Supplier<Draft> draft(
            Document document, Function<Reference, Optional<Catalogue>> catalogues, Set<String> known) {
        ModelShape shape = new ModelShape(document.root, limits);
        Optional<Reference> head = shape.head();
        Optional<Reference> written = shape.catalogue();
        // The shape is checked against no catalogue, so that its problems are known before one is asked for.
        shape.fill(Model.builder("shape", "0", Catalogue.builder("shape", "0").build()));
        return () -> {
            Reference self = head.orElseThrow(document::problemsSoFar);
            Reference reference = written.orElseThrow(document::problemsSoFar);
            Catalogue catalogue = catalogues.apply(reference).orElseThrow(() -> unknownCatalogue(reference, known));
            ModelBuilder model = Model.builder(self.id(), self.version(), catalogue);
            shape.fill(model);
            return model.writtenFor(reference).draft();
        };
    }

    /** The catalogue meant, or else one of its id and version, whose hash the model's own checks will find to be another. */
    private static Optional<Catalogue> find(Reference reference, Collection<Catalogue> catalogues) {
        return catalogues.stream()
                .filter(catalogue -> reference.means(catalogue.reference()))
                .findFirst()
                .or(() -> catalogues.stream()
                        .filter(catalogue -> Reference.of(reference.id(), reference.version())
                                .means(catalogue.reference()))
                        .findFirst());
    }

    private static ProblemsException unknownCatalogue(Reference reference, Set<String> known) {
        return new ProblemsException(Problems.unknown(
                Stage.REFERENCES,
                "unknown-catalogue",
                "/catalogue",
                "catalogue",
                reference.id() + " " + reference.version(),
                known));
    }

    private Document open(Source source) {
        try {
            return new Document(Tokeniser.read(source, limits));
        } catch (IOException e) {
            throw new UncheckedIOException(source.name() + " cannot be read", e);
        }
    }

    /** A document while it is being read. */
    private static final class Document {
        private final Located located;
        private final Problems problems = new Problems(Stage.SHAPE);
        final Part root;

        Document(Located located) {
            this.located = located;
            this.root = new Part(located, "", problems);
        }

        /** Ends the stage of shape, then builds the value; the problems of either get their positions. */
        <T> T complete(Supplier<T> build) {
            try {
                problems.throwIfAny();
                return build.get();
            } catch (ProblemsException e) {
                throw new ProblemsException(
                        e.problems().stream().map(located::place).toList());
            } catch (TooLargeException e) {
                throw new ProblemsException(located.place(
                        Problem.of(Stage.MEANING, "too-large-to-check", "", String.valueOf(e.getMessage()))));
            }
        }

        /** For what is absent only where a problem was noted. */
        ProblemsException problemsSoFar() {
            return new ProblemsException(problems.list());
        }
    }
}
