package org.geneticsrules.answer.compared;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.caution.CautionDocument;
import org.geneticsrules.caution.CautionSet;
import org.geneticsrules.comparison.ModelFit;
import org.geneticsrules.document.Canonical;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.Reference;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.ModelDocument;
import org.geneticsrules.patch.PatchDocument;
import org.geneticsrules.pedigree.NamedRecords;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeDocument;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.CatalogueDocument;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.vocabulary.Vocabulary;

/**
 * A question about litters with all that its answer hangs on: the records, the models, the cautions and the settings. Nothing else enters,
 * neither a clock nor chance without a seed, so that it gives the same answer whenever and wherever it is run.
 *
 * <pre>{@code
 * Analysis analysis = Analysis.of(Analysis.Kind.FIT, HeldModel.of(model), pedigree);
 * LitterAnswer answer = analysis.run();
 * }</pre>
 *
 * <p>As a document it is frozen together with its answer; see {@code json.FrozenAnalysis}. Immutable and thread-safe.
 *
 * @param kind what is asked
 * @param model the model in use, against which others are held
 * @param rivals the other models; none where a fit is asked for
 * @param cautions what may have to be said along with the answer
 * @param pedigree the recorded animals, with names as they were said
 * @param vocabularies what reads those names
 * @param settings how it is asked
 */
public record Analysis(
        Kind kind,
        HeldModel model,
        List<HeldModel> rivals,
        List<CautionSet> cautions,
        Pedigree pedigree,
        List<Vocabulary> vocabularies,
        Settings settings) {

    /** What may be asked. */
    public enum Kind {
        /** How well litters go with one model: {@link LitterAnswers#fit}. */
        FIT("litter-fit"),
        /** Which of some models litters favour, each of which was named: {@link LitterAnswers#favour(List)}. */
        NAMED("which-model"),
        /** The same of all rivals at hand, of which those that do not speak of the records are left out: {@link LitterAnswers#favour()}. */
        AT_HAND("which-model-at-hand");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        /**
         * Returns the word that stands in documents.
         *
         * @return for example {@code litter-fit}
         */
        public String word() {
            return word;
        }

        /**
         * Finds a kind.
         *
         * @param word a word as returned by {@link #word}
         * @return the kind, or empty if there is none of this word
         */
        public static Optional<Kind> of(String word) {
            return List.of(values()).stream()
                    .filter(kind -> kind.word.equals(word))
                    .findFirst();
        }
    }

    /**
     * How a question about litters is asked.
     *
     * @param population id of the population of founders for whom the records state none; none for that or those of the model
     * @param traits ids of the traits that count; none for all
     * @param misnamed how often one state is recorded as another
     * @param draws how many sets of litters are drawn where not all can be gone through, at least 99
     * @param seed where the draws begin
     */
    public record Settings(
            Optional<String> population, List<String> traits, Confusions misnamed, int draws, long seed) {

        /** Fewer draws cannot give a p below one in a hundred. */
        public static final int FEWEST_DRAWS = 99;

        /**
         * Checks the range.
         *
         * @param population the population of founders
         * @param traits the traits that count
         * @param misnamed how often one state is recorded as another
         * @param draws how many sets are drawn
         * @param seed where they begin
         * @throws IllegalArgumentException if there are fewer than 99 draws
         */
        public Settings {
            traits = ImmutableList.copyOf(traits);
            if (draws < FEWEST_DRAWS) {
                throw new IllegalArgumentException("expected at least " + FEWEST_DRAWS + " draws, but was " + draws);
            }
        }

        /**
         * Returns the usual settings.
         *
         * @return all traits, no errors of naming, no population named, the usual draws
         */
        public static Settings usual() {
            return new Settings(
                    Optional.empty(), List.of(), Confusions.none(), ModelFit.USUAL_DRAWS, ModelFit.USUAL_SEED);
        }

        /**
         * Returns these settings with a population.
         *
         * @param id id of a population of the model in use
         * @return a copy
         */
        public Settings from(String id) {
            return new Settings(Optional.of(id), traits, misnamed, draws, seed);
        }

        /**
         * Returns these settings about some traits only.
         *
         * @param ids ids of traits
         * @return a copy
         */
        public Settings about(List<String> ids) {
            return new Settings(population, ids, misnamed, draws, seed);
        }
    }

    /**
     * Copies the lists.
     *
     * @param kind what is asked
     * @param model the model in use
     * @param rivals the other models
     * @param cautions what may have to be said
     * @param pedigree the recorded animals
     * @param vocabularies what reads their names
     * @param settings how it is asked
     * @throws IllegalArgumentException if the model has no such population, rivals are stated for a fit or lack where they are named, or no
     *     model that is compared is believed in
     */
    public Analysis {
        rivals = ImmutableList.copyOf(rivals);
        cautions = ImmutableList.copyOf(cautions);
        vocabularies = ImmutableList.copyOf(vocabularies);
        if ((kind == Kind.FIT && !rivals.isEmpty()) || (kind == Kind.NAMED && rivals.isEmpty())) {
            throw new IllegalArgumentException(
                    kind == Kind.FIT
                            ? "a fit is asked of one model, but there are rivals: " + rivals
                            : "which model is asked of several, but no rival is named");
        }
        if (kind != Kind.FIT
                && model.prior().isZero()
                && rivals.stream().allMatch(one -> one.prior().isZero())) {
            throw new IllegalArgumentException("no model is believed in; expected a share above 0 for one");
        }
        for (String id : settings.population().stream().toList()) {
            if (!model.model().populations().containsKey(id)) {
                throw new IllegalArgumentException("model " + model.model() + " has no population \"" + id
                        + "\"; expected one of " + model.model().populations().keySet());
            }
        }
    }

    /**
     * Returns a question in the usual settings, without cautions, rivals and vocabularies.
     *
     * @param kind what is asked
     * @param model the model in use
     * @param pedigree the recorded animals
     * @param rivals the other models
     * @return the question
     * @throws IllegalArgumentException if rivals are stated for a fit or lack where they are named
     */
    public static Analysis of(Kind kind, HeldModel model, Pedigree pedigree, HeldModel... rivals) {
        return new Analysis(
                kind,
                model,
                ImmutableList.copyOf(rivals),
                ImmutableList.of(),
                pedigree,
                ImmutableList.of(),
                Settings.usual());
    }

    /**
     * Returns the same question in other settings.
     *
     * @param other how it is asked
     * @return a copy
     * @throws IllegalArgumentException if the model has no such population
     */
    public Analysis asked(Settings other) {
        return new Analysis(kind, model, rivals, cautions, pedigree, vocabularies, other);
    }

    /**
     * Returns the same question with cautions.
     *
     * @param sets what may have to be said along with the answer
     * @return a copy
     */
    public Analysis with(List<CautionSet> sets) {
        return new Analysis(kind, model, rivals, sets, pedigree, vocabularies, settings);
    }

    /**
     * Asks the question.
     *
     * @return the answer, the same each time
     * @throws ProblemsException if the records and the models do not go together; see {@link LitterAnswers#favour()}
     * @throws org.geneticsrules.problem.TooLargeException if relatives and records tie too much together for an exact answer
     */
    public LitterAnswer run() {
        Answers answers = Answers.of(CompiledModel.of(model.model()), cautions)
                .against(
                        kind == Kind.AT_HAND
                                ? rivals.stream().map(HeldModel::rival).toList()
                                : List.of());
        RecordedAnswers all = RecordedAnswers.of(answers, NamedRecords.of(pedigree, vocabularies, model.model()))
                .with(settings.misnamed());
        RecordedAnswers recorded = settings.population().map(all::from).orElse(all);
        Map<Reference, Integer> fitted = new LinkedHashMap<>();
        Map<Reference, Probability> shares = new LinkedHashMap<>(); // titles change, and need not be of one model only
        Stream.concat(Stream.of(model), rivals.stream()).forEach(one -> {
            shares.put(one.model().reference(), one.prior());
            fitted.put(one.model().reference(), one.fitted());
        });
        LitterAnswers litters = LitterAnswers.of(recorded)
                .about(settings.traits())
                .drawing(settings.draws(), settings.seed())
                .believing(shares)
                .fitted(fitted);
        return switch (kind) {
            case FIT -> litters.fit();
            case NAMED ->
                litters.favour(rivals.stream().map(HeldModel::candidate).toList());
            case AT_HAND -> litters.favour();
        };
    }

    /**
     * Returns everything the answer hangs on but the settings, as documents.
     *
     * @return the document of each catalogue, model, patch, set of cautions and vocabulary and of the pedigree, by its reference with the hash
     *     of its canonical form; a document stands after those that it refers to
     */
    public Map<Reference, Node> documents() {
        Map<Reference, Node> found = new LinkedHashMap<>();
        List<HeldModel> models =
                Stream.concat(Stream.of(model), rivals.stream()).toList();
        models.forEach(one -> put(CatalogueDocument.of(one.base().catalogue()), found));
        vocabularies.forEach(one -> put(CatalogueDocument.of(one.catalogue()), found));
        models.forEach(one -> put(ModelDocument.of(one.base()), found));
        models.forEach(one -> one.patches().forEach(patch -> put(PatchDocument.of(patch), found)));
        cautions.forEach(one -> put(CautionDocument.of(one), found));
        vocabularies.forEach(one -> put(one.toDocument(), found));
        put(PedigreeDocument.of(pedigree), found);
        return ImmutableMap.copyOf(found);
    }

    private static void put(Node document, Map<Reference, Node> into) {
        into.put(reference(document), document);
    }

    /** By which a document is referred to. */
    private static Reference reference(Node document) {
        return new Reference(text(document, "id"), text(document, "version"), Optional.of(Canonical.sha256(document)));
    }

    private static String text(Node document, String name) {
        return document instanceof Node.ObjectNode object && object.members().get(name) instanceof Node.TextNode text
                ? text.value()
                : "";
    }
}
