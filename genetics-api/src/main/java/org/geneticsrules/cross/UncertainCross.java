package org.geneticsrules.cross;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.geneticsrules.explanation.MatingExplanation;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.probability.Approximation;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;

/**
 * A mating of parents of whom only something is known: a set of genotypes, looks, or which of several males had access.
 *
 * <p>Two kinds of answer are kept apart. <i>Possible</i> answers rest on the model and on what is known of the parents alone.
 * <i>Probable</i> answers also weigh the parents' genotypes by Hardy-Weinberg proportions of a named population, restricted to what
 * is known, the parents being unrelated; they are refused if an uncertain parent has no population, and empty if what is known
 * of a parent has no weight in its population.
 *
 * <p>Kits of one litter share their parents and so depend on one another: seeing one changes the chances of the next. Kits are counted
 * as the {@link View} says, born unless stated otherwise: each is drawn from the distribution of its parents' kits given that it is
 * counted, and averages over parents are averages of these (a birth is no evidence about the parents).
 *
 * <p>Immutable and thread-safe.
 */
public final class UncertainCross {

    private final CompiledModel compiled;
    private final Sires sires;
    private final Parent dam;

    private UncertainCross(CompiledModel compiled, Sires sires, Parent dam) {
        this.compiled = compiled;
        this.sires = sires;
        this.dam = dam;
    }

    /**
     * Returns the mating of two parents.
     *
     * @param compiled the model of inheritance
     * @param sire what is known of the father
     * @param dam what is known of the mother
     * @return the mating
     */
    public static UncertainCross of(CompiledModel compiled, Parent sire, Parent dam) {
        return of(compiled, Sires.of(sire), dam);
    }

    /**
     * Returns the mating of a dam with a male, or with several who had access.
     *
     * @param compiled the model of inheritance
     * @param sires who may be the father
     * @param dam what is known of the mother
     * @return the mating
     */
    public static UncertainCross of(CompiledModel compiled, Sires sires, Parent dam) {
        return new UncertainCross(compiled, sires, dam);
    }

    /**
     * Returns who may be the father.
     *
     * @return the males as given
     */
    public Sires sires() {
        return sires;
    }

    /**
     * Returns what is known of the father, where there is one.
     *
     * @return the first of the males
     */
    public Parent sire() {
        return sires.males().get(0);
    }

    /**
     * Returns what is known of the mother.
     *
     * @return the parent as given
     */
    public Parent dam() {
        return dam;
    }

    /**
     * Tells whether what is known of a parent excludes every genotype, so that nothing can follow from it.
     *
     * @return true if a parent can have no genotype
     */
    public boolean isContradictory() {
        return males().stream().anyMatch(ParentBoxes::isEmpty) || female().isEmpty();
    }

    /**
     * Returns the phenotypes that some kit of some such parents may show.
     *
     * @param traits the traits asked for
     * @return phenotypes in the declared order of states; none if a parent's set is empty
     */
    public Set<Phenotype> possible(Collection<String> traits) {
        return possible(View.of(traits));
    }

    /**
     * Returns the phenotypes that some kit of some such parents may show.
     *
     * @param view what is looked at
     * @return phenotypes in the declared order of states; none if a parent's set is empty
     */
    public Set<Phenotype> possible(View view) {
        Litter litter = litter(view, ImmutableList.of());
        return litter.inOrder(litter.averages(structural(litter)).parts().keySet());
    }

    /**
     * Returns the chances a kit may have of showing a phenotype, one for each kind of parents there may be.
     *
     * @param description a full or partial phenotype
     * @return the distinct chances in ascending order; none if a parent's set is empty
     * @throws TooLargeException if there are too many kinds of parents to go through
     */
    public Set<Probability> possibleChances(Phenotype description) {
        return possibleChances(View.of(description.traits()), description, ImmutableList.of());
    }

    /**
     * Returns the chances the next kit may have of showing a look and no other in some traits, one for each kind of parents that could
     * have had the kits already seen.
     *
     * @param view what is looked at
     * @param look the look in these traits; a trait it does not name is one for which the model makes no claim
     * @param seen what the litter-mates seen so far show
     * @return the distinct chances in ascending order; none if no such parents could have had the kits seen
     * @throws TooLargeException if there are too many kinds of parents to go through
     */
    public Set<Probability> possibleChances(View view, Phenotype look, List<Sighting> seen) {
        Litter litter = litter(view, seen);
        return new TreeSet<>(litter.chances(structural(litter), look).parts().keySet());
    }

    /**
     * Returns the loci at which a weighted answer about some traits needs frequencies that are not named.
     *
     * @param traits the traits asked for
     * @return locus ids by parent, {@code sire} and {@code dam}, without parents that lack nothing
     */
    public Map<String, List<String>> missingFrequencies(Collection<String> traits) {
        return missingFrequencies(View.of(traits), ImmutableList.of());
    }

    /**
     * Returns the loci at which a weighted answer about a kit, given kits already seen, needs frequencies that are not named.
     *
     * @param view what is looked at
     * @param seen what the litter-mates seen so far show
     * @return locus ids by parent, {@code sire} and {@code dam}, without parents that lack nothing
     */
    public Map<String, List<String>> missingFrequencies(View view, List<Sighting> seen) {
        return missing(litter(view, seen).read());
    }

    /**
     * Returns the loci at which the share of kits that are lost needs frequencies that are not named.
     *
     * @param census until when
     * @return locus ids by parent, {@code sire} and {@code dam}, without parents that lack nothing
     */
    public Map<String, List<String>> missingFrequencies(Census census) {
        return missing(Litter.surviving(compiled, sires, census).read());
    }

    /**
     * Returns the chances of what a kit may show, the parents being weighted by their populations.
     *
     * @param traits the traits asked for
     * @return the distribution of phenotypes; empty if what is known of a parent has no weight in its population
     * @throws ProblemsException if an uncertain parent has no frequencies at a locus that matters
     */
    public Optional<Distribution<Phenotype>> probable(Collection<String> traits) {
        return probable(View.of(traits));
    }

    /**
     * Returns the chances of what a kit may show, the parents being weighted by their populations.
     *
     * @param view what is looked at
     * @return the distribution of phenotypes; empty if what is known of a parent has no weight in its population
     * @throws ProblemsException if an uncertain parent has no frequencies at a locus that matters
     */
    public Optional<Distribution<Phenotype>> probable(View view) {
        Litter litter = litter(view, ImmutableList.of());
        return litter.averages(weighted(litter)).distribution().map(litter::inOrder);
    }

    /**
     * Returns the same as {@link #probable(View)} in floating point.
     *
     * @param view what is looked at
     * @return the chances, with a bound on their error; empty where {@link #probable(View)} is
     * @throws ProblemsException if an uncertain parent has no frequencies at a locus that matters
     */
    public Optional<Approximation<Phenotype>> approximate(View view) {
        Litter litter = litter(view, ImmutableList.of());
        return litter.approximate(weighted(litter));
    }

    /**
     * Returns the share of the kits conceived that are lost before they are counted.
     *
     * @param census until when; none is lost at conception
     * @return the mean share over what the parents may be; empty if what is known of a parent has no weight in its population
     * @throws ProblemsException if an uncertain parent has no frequencies at a locus that matters
     */
    public Optional<Probability> lostShare(Census census) {
        Litter litter = Litter.surviving(compiled, sires, census);
        return litter.lost(weighted(litter)).distribution().map(lost -> lost.probability(true));
    }

    /**
     * Returns how likely it is that the chance of a kit showing a phenotype has each value it may have, given kits already seen.
     *
     * @param description a full or partial phenotype of the next kit
     * @param seen what the litter-mates seen so far show; a trait for which the model makes no claim is no evidence
     * @return the distribution of the chance over the parents; empty if the kits seen cannot be of such parents, or what is known of a
     *     parent has no weight in its population
     * @throws ProblemsException if an uncertain parent has no frequencies at a locus that matters
     * @throws TooLargeException if there are too many kinds of parents to go through
     */
    public Optional<Distribution<Probability>> chance(Phenotype description, List<Sighting> seen) {
        return chance(View.of(description.traits()), description, seen);
    }

    /**
     * Returns how likely it is that the chance of a kit showing a look has each value it may have, given kits already seen.
     *
     * @param view what is looked at
     * @param look the look in these traits; a trait it does not name is one for which the model makes no claim
     * @param seen what the litter-mates seen so far show
     * @return the distribution of the chance over the parents; empty as above
     * @throws ProblemsException if an uncertain parent has no frequencies at a locus that matters
     * @throws TooLargeException if there are too many kinds of parents to go through
     */
    public Optional<Distribution<Probability>> chance(View view, Phenotype look, List<Sighting> seen) {
        Litter litter = litter(view, seen);
        return litter.chances(weighted(litter), look).distribution();
    }

    /**
     * Returns the chance that the next kit shows a phenotype, given kits already seen.
     *
     * @param description a full or partial phenotype of the next kit
     * @param seen what the litter-mates seen so far show
     * @return the mean of {@link #chance}; empty where that is
     */
    public Optional<Probability> next(Phenotype description, List<Sighting> seen) {
        return next(View.of(description.traits()), description, seen);
    }

    /**
     * Returns the chance that the next kit shows a look and no other in some traits, given kits already seen.
     *
     * @param view what is looked at
     * @param look the look in these traits; a trait it does not name is one for which the model makes no claim
     * @param seen what the litter-mates seen so far show
     * @return the chance; empty if the kits seen cannot be of such parents, or what is known of a parent has no weight in its population
     * @throws ProblemsException if an uncertain parent has no frequencies at a locus that matters
     * @throws TooLargeException if there are too many kinds of parents to go through
     */
    public Optional<Probability> next(View view, Phenotype look, List<Sighting> seen) {
        return chance(view, look, seen)
                .map(chances -> chances.flatMap(UncertainCross::trial).probability(true));
    }

    /**
     * Returns the chances of how many of the kits yet to be seen show a phenotype, given kits already seen.
     *
     * @param description a full or partial phenotype
     * @param kits number of kits yet to be seen, at least 0
     * @param seen what the litter-mates seen so far show
     * @return a mixture of binomial distributions; empty where {@link #chance} is
     */
    public Optional<Distribution<Integer>> count(Phenotype description, int kits, List<Sighting> seen) {
        return count(View.of(description.traits()), description, LitterSize.of(kits), seen);
    }

    /**
     * Returns the chances of how many of the kits yet to be seen show a look, given kits already seen.
     *
     * @param view what is looked at
     * @param look the look in these traits; a trait it does not name is one for which the model makes no claim
     * @param size how many kits there will be
     * @param seen what the litter-mates seen so far show
     * @return a mixture of binomial distributions; empty where {@link #chance} is
     */
    public Optional<Distribution<Integer>> count(View view, Phenotype look, LitterSize size, List<Sighting> seen) {
        return chance(view, look, seen).map(chances -> chances.flatMap(size::count));
    }

    /**
     * Returns the reasons behind {@link #probable(View)}, from the same diagram.
     *
     * @param traits the traits asked for
     * @return what the parents pass on, the ways to each phenotype, what stays hidden and which statements all this rests on; empty
     *     where {@link #probable(View)} is
     * @throws ProblemsException if an uncertain parent has no frequencies at a locus that matters
     * @throws TooLargeException if there are too many ways to list
     */
    public Optional<MatingExplanation> explain(Collection<String> traits) {
        return explain(View.of(traits));
    }

    /**
     * Returns the reasons behind {@link #probable(View)}, from the same diagram.
     *
     * @param view what is looked at
     * @return what the parents pass on, the ways to each phenotype, what stays hidden and which statements all this rests on; empty
     *     where {@link #probable(View)} is
     * @throws ProblemsException if an uncertain parent has no frequencies at a locus that matters
     * @throws TooLargeException if there are too many ways to list
     */
    public Optional<MatingExplanation> explain(View view) {
        Litter litter = litter(view, ImmutableList.of());
        requireFrequencies(litter.read());
        return new Explainer(
                        compiled,
                        view,
                        litter,
                        sires,
                        dam,
                        boxes(litter.read(), true),
                        female().weighted(litter.read()))
                .explain();
    }

    private static Distribution<Boolean> trial(Probability chance) {
        Map<Boolean, Probability> outcomes = new LinkedHashMap<>();
        outcomes.put(true, chance);
        outcomes.put(false, chance.complement());
        return Distribution.of(outcomes);
    }

    private Litter litter(View view, List<Sighting> seen) {
        Litter litter = Litter.of(compiled, sires, view, seen);
        Census census = Litter.counted(view, seen);
        return barrenParentsMatter(census) ? litter.ofParentsWithKits(compiled.survival(census)) : litter;
    }

    /**
     * Tells whether there may be parents who lose all their kits, and who they are bears on loci that are inherited independently: by
     * boxes in which several loci differ, or by who the sire is.
     */
    private boolean barrenParentsMatter(Census census) {
        if (!Litter.hasLethals(compiled.model(), census) || !isTied()) {
            return false;
        }
        Litter survival = Litter.surviving(compiled, sires, census);
        return survival.mayBeBarren(structural(survival));
    }

    /** Whether loci that are inherited independently may depend on one another through what is known of the parents. */
    private boolean isTied() {
        return sires.males().size() > 1
                || female().isUnion()
                || males().stream().anyMatch(ParentBoxes::isUnion);
    }

    private ParentPairs structural(Litter litter) {
        return new ParentPairs(
                compiled.model(),
                boxes(litter.read(), false),
                female().structural(litter.read()),
                false,
                litter.bothSexes());
    }

    private ParentPairs weighted(Litter litter) {
        requireFrequencies(litter.read());
        return new ParentPairs(
                compiled.model(),
                boxes(litter.read(), true),
                female().weighted(litter.read()),
                true,
                litter.bothSexes());
    }

    private List<List<ParentBox>> boxes(Set<String> read, boolean weighted) {
        List<List<ParentBox>> all = new ArrayList<>();
        for (ParentBoxes male : males()) {
            all.add(weighted ? male.weighted(read) : male.structural(read));
        }
        return all;
    }

    private List<ParentBoxes> males() {
        return sires.males().stream()
                .map(male -> new ParentBoxes(compiled, Sex.MALE, male))
                .toList();
    }

    private ParentBoxes female() {
        return new ParentBoxes(compiled, Sex.FEMALE, dam);
    }

    private Map<String, List<String>> missing(Set<String> read) {
        Map<String, List<String>> missing = new LinkedHashMap<>();
        Set<String> fromMales = new LinkedHashSet<>();
        males().forEach(male -> fromMales.addAll(male.withoutFrequencies(read)));
        missing.put("sire", ImmutableList.copyOf(fromMales));
        missing.put("dam", female().withoutFrequencies(read));
        missing.values().removeIf(List::isEmpty);
        return missing;
    }

    private void requireFrequencies(Set<String> read) {
        Problems problems = new Problems(Stage.MEANING);
        males().forEach(male -> male.requireFrequencies("sire", read, problems));
        female().requireFrequencies("dam", read, problems);
        problems.throwIfAny();
    }

    /** Returns what is known of the parents with a multiplication sign. */
    @Override
    public String toString() {
        List<String> males =
                sires.males().stream().map(male -> male.genotypes().toString()).toList();
        return String.join(" or ", males) + " \u00d7 " + dam.genotypes();
    }
}
