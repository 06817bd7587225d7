package org.geneticsrules.planning;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.comparison.ComparedModels;
import org.geneticsrules.comparison.SharedRecords;
import org.geneticsrules.hypothesis.Comparison;
import org.geneticsrules.hypothesis.WhatMoves;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Reading;
import org.jspecify.annotations.Nullable;

/**
 * The question what to do next to tell models of inheritance apart.
 *
 * <pre>{@code
 * Distinguishing apart = Distinguishing.of(List.of(Candidate.of(oneSeries), Candidate.of(twoLoci)), pedigree).from("even");
 * List<Worth> steps = apart.rank(List.of(Step.look("Pip", "hue"), Step.mating("Bo", "Ida", 6, "hue")));
 * steps.get(0).bits();                    // how much the first step is expected to tell
 * steps.get(1).ratio(0, 1);               // for how much a mating would speak, if the first model is true
 * }</pre>
 *
 * <p>Candidates are numbered from 0 as they were named. Results are plain: which matings are not to be made at all, for the health of the animals
 * or by law, is not asked here, and no result is advice to breed. See the package's description for what is calculated.
 *
 * <p>Immutable and thread-safe.
 */
public final class Distinguishing {

    /** The chances asked for unless others are: 4 in 5 and 19 in 20. */
    public static final List<Double> USUAL_SURENESSES = ImmutableList.of(0.8, 0.95);

    private final ImmutableList<Candidate> candidates;
    private final Pedigree records;

    /** By trait, the models that do not speak of it for every animal. */
    private final ImmutableMap<String, List<String>> unclaimed;

    private final Confusions confusions;
    private final Optional<String> population;
    private final ImmutableList<Double> beliefs;
    private final ImmutableList<Double> held;
    private final double bar;
    private final ImmutableList<Double> surenesses;
    private final @Nullable Runnable watch;

    private Distinguishing(
            ImmutableList<Candidate> candidates,
            Pedigree records,
            Map<String, List<String>> unclaimed,
            Confusions confusions,
            Optional<String> population,
            List<Double> beliefs,
            List<Double> held,
            double bar,
            List<Double> surenesses,
            @Nullable Runnable watch) {
        this.candidates = candidates;
        this.records = records;
        this.unclaimed = ImmutableMap.copyOf(unclaimed);
        this.confusions = confusions;
        this.population = population;
        this.beliefs = ImmutableList.copyOf(beliefs);
        this.held = ImmutableList.copyOf(held);
        this.bar = bar;
        this.surenesses = ImmutableList.copyOf(surenesses);
        this.watch = watch;
    }

    /**
     * Asks about some models and the records held.
     *
     * @param candidates the models, at least two, of one catalogue; what is believed of each is its prior
     * @param pedigree the records; names have been read ({@link org.geneticsrules.pedigree.NamedRecords})
     * @return the question
     * @throws IllegalArgumentException if there are fewer than two models, or nothing is believed of any
     * @throws ProblemsException if two candidates have one name, the models are of several catalogues, something is recorded and nothing of it
     *     is spoken of by all, or a litter is recorded because of a trait of which not all speak
     */
    public static Distinguishing of(List<Candidate> candidates, Pedigree pedigree) {
        if (candidates.size() < 2) {
            throw new IllegalArgumentException(
                    "two models at least are told apart, but there were " + candidates.size());
        }
        boolean bare = pedigree.individuals().values().stream()
                .allMatch(one -> one.observations().isEmpty() && one.tests().isEmpty());
        Pedigree shared = pedigree;
        if (bare) {
            SharedRecords.check(candidates, pedigree);
        } else {
            shared = SharedRecords.of(candidates, pedigree, List.of()).pedigree();
        }
        double[] priors =
                candidates.stream().mapToDouble(one -> one.prior().toDouble()).toArray();
        return new Distinguishing(
                ImmutableList.copyOf(candidates),
                shared,
                SharedRecords.unclaimed(candidates),
                Confusions.none(),
                Optional.empty(),
                shares(priors),
                candidates.stream().map(one -> 0.0).toList(),
                ComparedModels.bar(ComparedModels.USUAL_RISK, candidates.size() - 1),
                USUAL_SURENESSES,
                null);
    }

    private Distinguishing copy(
            Confusions named,
            Optional<String> from,
            List<Double> believed,
            List<Double> logs,
            double ratio,
            List<Double> chances,
            @Nullable Runnable by) {
        return new Distinguishing(candidates, records, unclaimed, named, from, believed, logs, ratio, chances, by);
    }

    private static List<Double> shares(double[] priors) {
        double sum = Arrays.stream(priors).sum();
        if (sum == 0) {
            throw new IllegalArgumentException("something is believed of one model at least");
        }
        return Arrays.stream(priors).mapToObj(one -> one / sum).toList();
    }

    /**
     * Returns the question with naming errors.
     *
     * @param named how often a state is recorded as another, in the records held and in looks to come
     * @return a copy
     */
    public Distinguishing with(Confusions named) {
        return copy(named, population, beliefs, held, bar, surenesses, watch);
    }

    /**
     * Returns the question with a population for founders and unrecorded parents for whom the records state none.
     *
     * @param id id of a population that every model has
     * @return a copy
     * @throws IllegalArgumentException if one of them has no such population
     */
    public Distinguishing from(String id) {
        for (Candidate candidate : candidates) {
            if (!candidate.model().populations().containsKey(id)) {
                throw new IllegalArgumentException(
                        "model " + candidate.model() + " has no population \"" + id + "\"; expected one of "
                                + candidate.model().populations().keySet());
            }
        }
        return copy(confusions, Optional.of(id), beliefs, held, bar, surenesses, watch);
    }

    /**
     * Returns the question after the records held have been compared: what is believed of each model is what they leave, and a ratio starts from
     * where they brought it. Else steps are judged by what is believed before any record, and have to reach the bar by themselves.
     *
     * @param compared the same candidates, compared by the records held
     * @return a copy
     * @throws IllegalArgumentException if these are other candidates - by name, model or what is believed of them - or one of them is excluded
     *     by the records
     */
    public Distinguishing after(ComparedModels compared) {
        if (!compared.candidates().stream()
                .map(Distinguishing::identity)
                .toList()
                .equals(candidates.stream().map(Distinguishing::identity).toList())) {
            throw new IllegalArgumentException("the candidates are " + described(candidates)
                    + ", but those compared are " + described(compared.candidates()));
        }
        List<Double> logs = new ArrayList<>();
        for (int m = 0; m < candidates.size(); m++) {
            if (compared.impossible(m)) {
                throw new IllegalArgumentException("the records held exclude model " + candidates.get(m)
                        + "; leave it out, since nothing more is needed to tell it from the others");
            }
            logs.add(compared.log(m));
        }
        return copy(confusions, population, compared.posteriors(), logs, bar, surenesses, watch);
    }

    /** What makes two candidates the same: name, model and what is believed of it. */
    private static List<Object> identity(Candidate one) {
        return List.of(one.name(), one.model().reference(), one.prior());
    }

    private static String described(List<Candidate> some) {
        return some.stream()
                .map(one -> one.name() + " (" + one.model().reference() + ", believed in by " + one.prior() + ")")
                .toList()
                .toString();
    }

    /**
     * Returns the question with another bar.
     *
     * @param ratio what the likelihood ratio has to reach to be evidence; {@link ComparedModels#bar(double, int)} unless stated
     * @return a copy
     * @throws IllegalArgumentException if it is not a number above 1
     */
    public Distinguishing reaching(double ratio) {
        if (!(ratio > 1) || Double.isInfinite(ratio)) {
            throw new IllegalArgumentException("a bar is a number above 1, but was " + ratio);
        }
        return copy(confusions, population, beliefs, held, ratio, surenesses, watch);
    }

    /**
     * Returns the question with other chances with which numbers of kits have to reach the bar.
     *
     * @param chances chances between 0 and 1, without both
     * @return a copy
     * @throws IllegalArgumentException if one is outside this range
     */
    public Distinguishing surely(double... chances) {
        for (double chance : chances) {
            if (!(chance > 0 && chance < 1)) {
                throw new IllegalArgumentException("a chance to reach the bar is between 0 and 1, but was " + chance);
            }
        }
        return copy(
                confusions,
                population,
                beliefs,
                held,
                bar,
                Arrays.stream(chances).boxed().toList(),
                watch);
    }

    /**
     * Returns the question with somebody who watches, for example for a time to be over.
     *
     * @param by is called now and then by the thread that answers; what it throws ends the question
     * @return a copy
     */
    public Distinguishing watched(Runnable by) {
        return copy(confusions, population, beliefs, held, bar, surenesses, by);
    }

    /**
     * Returns the models.
     *
     * @return the candidates, in order
     */
    public List<Candidate> candidates() {
        return candidates;
    }

    /**
     * Returns what is believed of each model before a step.
     *
     * @return for each candidate its share
     */
    public List<Double> beliefs() {
        return beliefs;
    }

    /**
     * Returns what a likelihood ratio has to reach.
     *
     * @return the bar
     */
    public double bar() {
        return bar;
    }

    /**
     * Works out what a step is worth.
     *
     * @param step the step
     * @return what it may find and what that would say
     * @throws IllegalArgumentException if the records know no animal of this id
     * @throws ProblemsException if a model makes no claim about a trait that is looked at, not all have a locus that is tested, a founder has
     *     no population, or the stage does not state what a model needs ({@code stage-needed})
     */
    public Worth worth(Step step) {
        return new Steps(this).worth(step);
    }

    /**
     * Works out what several steps are worth, and puts them in order: first what breeds nobody ({@link Effort}), and of one effort first what
     * is expected to tell most. What tells nothing, or is not proposed, stands behind what tells something of the same effort.
     *
     * @param steps the steps
     * @return what each is worth; steps worth the same stay in the order stated
     * @throws IllegalArgumentException as {@link #worth}
     * @throws ProblemsException as {@link #worth}
     */
    public List<Worth> rank(Collection<? extends Step> steps) {
        return steps.stream()
                .map(this::worth)
                .sorted(Comparator.comparing((Worth one) -> one.step().effort())
                        .thenComparing(Worth::standing)
                        .thenComparing(one -> -Math.rint(one.bits() * 1e9)))
                .collect(ImmutableList.toImmutableList());
    }

    /**
     * Finds out whether any look at any animal or mating can tell two of the models apart, whatever is recorded.
     *
     * @param first number of a model
     * @param second number of another
     * @return the smallest genotypes and matings that look otherwise, or the proof that there are none, or why that is not known
     */
    public ToldApart toldApart(int first, int second) {
        return toldApart(first, second, traits());
    }

    /**
     * Returns the traits that every model speaks of, for every animal.
     *
     * @return ids in the order of the first model
     */
    public Set<String> traits() {
        Set<String> traits = new LinkedHashSet<>(candidates.get(0).model().visibleTraits());
        candidates.forEach(one -> traits.retainAll(one.model().visibleTraits()));
        traits.removeAll(unclaimed.keySet());
        return traits;
    }

    /**
     * Finds out whether looks at some traits can tell two of the models apart, whatever is recorded.
     *
     * @param first number of a model
     * @param second number of another
     * @param traits ids of traits that every model speaks of
     * @return the smallest genotypes and matings that look otherwise, or the proof that there are none, or why that is not known
     */
    public ToldApart toldApart(int first, int second, Collection<String> traits) {
        Candidate one = candidates.get(first);
        Candidate other = candidates.get(second);
        if (traits.isEmpty()) {
            return new ToldApart(
                    first,
                    second,
                    Set.of(),
                    ToldApart.Verdict.UNDECIDED,
                    Optional.empty(),
                    Set.of("there is no trait of which all models speak"));
        }
        WhatMoves moves;
        try {
            moves = Comparison.of(one.model(), other.model()).inTraits(traits).whatMoves();
        } catch (TooLargeException | ProblemsException notCompared) {
            return new ToldApart(
                    first,
                    second,
                    ImmutableSet.copyOf(traits),
                    ToldApart.Verdict.UNDECIDED,
                    Optional.empty(),
                    Set.of(Objects.toString(notCompared.getMessage())));
        }
        Set<String> limits = new LinkedHashSet<>(moves.limits());
        Set<String> alone = new LinkedHashSet<>(one.compiled().lociRead(traits));
        Set<String> others = new LinkedHashSet<>(other.compiled().lociRead(traits));
        Set<String> both = new LinkedHashSet<>(alone);
        both.retainAll(others);
        alone.addAll(others);
        alone.removeAll(both);
        alone.removeIf(locus ->
                one.model().loci().containsKey(locus) && other.model().loci().containsKey(locus));
        alone.forEach(locus ->
                limits.add("locus " + locus + " is in one of the models only, and was compared at one allele"));
        ToldApart.Verdict verdict = !moves.isNothing()
                ? ToldApart.Verdict.BY_LOOKS
                : limits.isEmpty() ? ToldApart.Verdict.NEVER : ToldApart.Verdict.UNDECIDED;
        return new ToldApart(first, second, ImmutableSet.copyOf(traits), verdict, Optional.of(moves), limits);
    }

    Pedigree records() {
        return records;
    }

    Confusions confusions() {
        return confusions;
    }

    Optional<String> population() {
        return population;
    }

    double[] held() {
        return held.stream().mapToDouble(one -> one).toArray();
    }

    List<Double> surenesses() {
        return surenesses;
    }

    void tick() {
        if (watch != null) {
            watch.run();
        }
    }

    /** Questions about some relatives, under each of the models. */
    List<Held> held(Pedigree relatives) {
        List<Held> all = new ArrayList<>();
        for (Candidate candidate : candidates) {
            Inference inference = Inference.of(candidate.compiled(), relatives).with(confusions);
            inference = watch == null ? inference : inference.watched(watch);
            all.add(new Held(candidate, population.map(inference::from).orElse(inference), relatives));
        }
        return all;
    }

    /** Refuses traits of which not all models speak, and a stage that does not state what one of them needs for them. */
    void requireShared(List<String> traits, LifeStage stage) {
        Problems problems = new Problems(Stage.REFERENCES);
        Set<String> known = candidates.get(0).model().catalogue().traits().keySet();
        for (String trait : traits) {
            if (!known.contains(trait)) {
                problems.unknown("unknown-trait", "", "trait", trait, known);
                continue;
            }
            List<String> silent = new ArrayList<>(unclaimed.getOrDefault(trait, List.of()));
            candidates.stream()
                    .filter(one -> !one.model().visibleTraits().contains(trait) && !silent.contains(one.name()))
                    .forEach(one -> silent.add(one.name()));
            if (!silent.isEmpty()) {
                problems.add(Problem.of(
                                Stage.REFERENCES,
                                "trait-not-shared",
                                "",
                                "of \"" + trait + "\" no claim for every animal is made by "
                                        + String.join(", ", silent))
                        .expecting("a trait for which every one of these models has a rule without gaps"));
            }
        }
        problems.throwIfAny();
        candidates.forEach(one -> requireStage(one, traits, stage));
    }

    /** A look that does not state what it depends on would be no evidence under this model. */
    private void requireStage(Candidate candidate, List<String> traits, LifeStage stage) {
        candidate.model().catalogue().check(stage);
        for (String trait : traits) {
            Phenotype any = Phenotype.of(trait, candidate.model().states(trait).get(0));
            candidate.compiled().evidence(List.of(new Reading(stage, Set.of(any))), confusions);
        }
    }

    /** Returns the names of the models. */
    @Override
    public String toString() {
        return candidates.toString();
    }
}
