package org.geneticsrules.comparison;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Confusions;
import org.jspecify.annotations.Nullable;

/**
 * The question which of several models of inheritance records of litters favour.
 *
 * <pre>{@code
 * ComparedModels compared = ModelComparison.of(List.of(Candidate.of(oneSeries), Candidate.of(twoLoci)), pedigree)
 *         .from("even")
 *         .compare();
 * compared.logRatio(1);     // natural logarithm of how much better the second foretold the kits than the first
 * compared.reachesBar(1);   // whether that is evidence, looked at when you like
 * }</pre>
 *
 * <p>The first candidate is the one that the others are held against; name it before looking. See the package's description for what is
 * calculated.
 *
 * <p>Immutable and thread-safe.
 */
public final class ModelComparison {

    private final ImmutableList<Candidate> candidates;
    private final Pedigree stated;
    private final ImmutableList<String> only;
    private final SharedRecords records;
    private final Confusions confusions;
    private final Optional<String> population;
    private final boolean countingParents;
    private final @Nullable Runnable watch;

    private ModelComparison(
            ImmutableList<Candidate> candidates,
            Pedigree stated,
            ImmutableList<String> only,
            SharedRecords records,
            Confusions confusions,
            Optional<String> population,
            boolean countingParents,
            @Nullable Runnable watch) {
        this.candidates = candidates;
        this.stated = stated;
        this.only = only;
        this.records = records;
        this.confusions = confusions;
        this.population = population;
        this.countingParents = countingParents;
        this.watch = watch;
    }

    /**
     * Asks about some models and all that was recorded of kits and their parents.
     *
     * @param candidates the models, at least one, of one catalogue; the first is the one that others are held against
     * @param pedigree the records; names have been read ({@link org.geneticsrules.pedigree.NamedRecords})
     * @return the question
     * @throws ProblemsException if two candidates have one name, the models are of several catalogues, the records name what a model does
     *     not know, nothing recorded is spoken of by all models, or how litters came to be recorded does not go with their records
     */
    public static ModelComparison of(List<Candidate> candidates, Pedigree pedigree) {
        if (candidates.isEmpty()) {
            throw new IllegalArgumentException("a comparison needs at least one model");
        }
        return new ModelComparison(
                ImmutableList.copyOf(candidates),
                pedigree,
                ImmutableList.of(),
                SharedRecords.of(candidates, pedigree, List.of()),
                Confusions.none(),
                Optional.empty(),
                false,
                null);
    }

    private ModelComparison with(
            ImmutableList<String> traits,
            Confusions named,
            Optional<String> from,
            boolean parents,
            @Nullable Runnable by) {
        return new ModelComparison(
                candidates,
                stated,
                traits,
                traits.equals(only) ? records : SharedRecords.of(candidates, stated, traits),
                named,
                from,
                parents,
                by);
    }

    /**
     * Returns the question about some traits only.
     *
     * @param traits ids of traits
     * @return a copy
     * @throws ProblemsException if nothing that was recorded of them is spoken of by all models
     */
    public ModelComparison about(Collection<String> traits) {
        return with(ImmutableList.copyOf(traits), confusions, population, countingParents, watch);
    }

    /**
     * Returns the question with naming errors.
     *
     * @param named how often a state is recorded as another
     * @return a copy
     */
    public ModelComparison with(Confusions named) {
        return with(only, named, population, countingParents, watch);
    }

    /**
     * Returns the question with a population for founders and unrecorded parents for whom the records state none.
     *
     * @param id id of a population that every model has
     * @return a copy
     * @throws IllegalArgumentException if one of them has no such population
     */
    public ModelComparison from(String id) {
        for (Candidate candidate : candidates) {
            if (!candidate.model().populations().containsKey(id)) {
                throw new IllegalArgumentException(
                        "model " + candidate.model() + " has no population \"" + id + "\"; expected one of "
                                + candidate.model().populations().keySet());
            }
        }
        return with(only, confusions, Optional.of(id), countingParents, watch);
    }

    /**
     * Returns the question in which the records of founders are data like those of kits. Else they are taken as given, since models differ
     * in what they suppose of the frequencies of alleles, and a common look of parents would speak for whichever supposes it common.
     *
     * @return a copy
     */
    public ModelComparison countingParents() {
        return with(only, confusions, population, true, watch);
    }

    /**
     * Returns the question with somebody who watches, for example for a time to be over.
     *
     * @param by is called now and then by the thread that answers; what it throws ends the question
     * @return a copy
     */
    public ModelComparison watched(Runnable by) {
        return with(only, confusions, population, countingParents, by);
    }

    /**
     * Returns the records as far as all models speak of them.
     *
     * @return what is compared, and what was left out
     */
    public SharedRecords records() {
        return records;
    }

    /**
     * Compares the models.
     *
     * @return how well each foretold the records
     * @throws ProblemsException if a founder has no population, or one without frequencies that are needed, or the records name what a model
     *     does not know
     * @throws org.geneticsrules.problem.TooLargeException if relatives and records tie too much together for an exact answer
     */
    public ComparedModels compare() {
        Prepared prepared = prepared();
        List<double[][]> logs = new ArrayList<>();
        for (Candidate candidate : candidates) {
            ModelChances chances = chances(candidate);
            double[][] of = new double[prepared.kindreds().size()][];
            for (int k = 0; k < of.length; k++) {
                of[k] = prepared.like()[k] < k ? of[prepared.like()[k]] : chances.of(prepared, k);
                tick();
            }
            logs.add(of);
        }
        return new ComparedModels(this, prepared, logs);
    }

    /** Takes the records apart. */
    Prepared prepared() {
        Problems problems = new Problems(Stage.MEANING);
        Prepared prepared =
                Prepared.of(records.pedigree(), candidates.get(0).model().catalogue(), problems);
        problems.throwIfAny();
        return prepared;
    }

    ModelChances chances(Candidate candidate) {
        return new ModelChances(inference(candidate), records.pedigree());
    }

    void tick() {
        if (watch != null) {
            watch.run();
        }
    }

    /** Questions about the records under one of the models. */
    Inference inference(Candidate candidate) {
        Inference inference =
                Inference.of(candidate.compiled(), records.pedigree()).with(confusions);
        Inference watched = watch == null ? inference : inference.watched(watch);
        return population.map(watched::from).orElse(watched);
    }

    /**
     * Returns the models.
     *
     * @return the candidates, in order
     */
    public List<Candidate> candidates() {
        return candidates;
    }

    boolean countsParents() {
        return countingParents;
    }

    /**
     * Returns the naming errors that are reckoned with.
     *
     * @return how often a state is recorded as another
     */
    public Confusions confusions() {
        return confusions;
    }

    /** Returns the names of the models. */
    @Override
    public String toString() {
        return Objects.toString(candidates);
    }
}
