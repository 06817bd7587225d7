package org.geneticsrules.cross;

import com.google.common.collect.ImmutableSet;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.geneticsrules.explanation.MatingExplanation;
import org.geneticsrules.expression.Chain;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Diagram;
import org.geneticsrules.expression.KitLaw;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/**
 * A mating of parents of whom only a set of genotypes is known.
 *
 * <p>Two kinds of answer are kept apart. <i>Possible</i> answers rest on the model and on what is known of the parents alone.
 * <i>Probable</i> answers also weigh the parents' genotypes by Hardy-Weinberg proportions of a named population, restricted to what
 * is known, the two parents being unrelated; they are refused if an uncertain parent has no population, and empty if what is known
 * of a parent has no weight in its population.
 *
 * <p>Kits of one litter share their parents and so depend on one another: seeing one changes the chances of the next.
 *
 * <p>Immutable and thread-safe.
 */
public final class UncertainCross {

    private final CompiledModel compiled;
    private final Parent sire;
    private final Parent dam;

    private UncertainCross(CompiledModel compiled, Parent sire, Parent dam) {
        this.compiled = compiled;
        this.sire = sire;
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
        return new UncertainCross(compiled, sire, dam);
    }

    /**
     * Returns what is known of the father.
     *
     * @return the parent as given
     */
    public Parent sire() {
        return sire;
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
     * @return true if a parent's set of genotypes is empty
     */
    public boolean isContradictory() {
        return sire.genotypes().isEmpty() || dam.genotypes().isEmpty();
    }

    /**
     * Returns the phenotypes that some kit of some such parents may show.
     *
     * @param traits the traits asked for
     * @return phenotypes in the declared order of states; none if a parent's set is empty
     */
    public Set<Phenotype> possible(Collection<String> traits) {
        Diagram<Phenotype> diagram = compiled.diagram(traits);
        return averaged(diagram, structural(ImmutableSet.copyOf(diagram.loci())))
                .keySet();
    }

    /**
     * Returns the chances a kit may have of showing a phenotype, one for each kind of parents there may be.
     *
     * @param description a full or partial phenotype
     * @return the distinct chances in ascending order; none if a parent's set is empty
     * @throws TooLargeException if there are too many kinds of parents to go through
     */
    public Set<Probability> possibleChances(Phenotype description) {
        return possibleChances(description.traits(), description, List.of());
    }

    /**
     * Returns the chances the next kit may have of showing a look and no other in some traits, one for each kind of parents that could
     * have had the kits already seen.
     *
     * @param traits the traits asked for
     * @param look the look in these traits; a trait it does not name is one for which the model makes no claim
     * @param seen what the litter-mates seen so far show
     * @return the distinct chances in ascending order; none if no such parents could have had the kits seen
     * @throws TooLargeException if there are too many kinds of parents to go through
     */
    public Set<Probability> possibleChances(Collection<String> traits, Phenotype look, List<Phenotype> seen) {
        Set<String> read = read(traits, seen);
        return new TreeSet<>(chances(traits, look, seen, structural(read), read).keySet());
    }

    /**
     * Returns the loci at which a weighted answer about some traits needs frequencies that are not named.
     *
     * @param traits the traits asked for
     * @return locus ids by parent, {@code sire} and {@code dam}, without parents that lack nothing
     */
    public Map<String, List<String>> missingFrequencies(Collection<String> traits) {
        Set<String> read = compiled.lociRead(traits);
        Map<String, List<String>> missing = new LinkedHashMap<>();
        missing.put("sire", ParentBox.withoutFrequencies(compiled.model(), sire, read));
        missing.put("dam", ParentBox.withoutFrequencies(compiled.model(), dam, read));
        missing.values().removeIf(List::isEmpty);
        return missing;
    }

    /**
     * Returns the chances of what a kit may show, the parents being weighted by their populations.
     *
     * @param traits the traits asked for
     * @return the distribution of phenotypes; empty if what is known of a parent has no weight in its population
     * @throws ProblemsException if an uncertain parent has no frequencies at a locus that matters
     */
    public Optional<Distribution<Phenotype>> probable(Collection<String> traits) {
        Diagram<Phenotype> diagram = compiled.diagram(traits);
        Map<Phenotype, BigInteger> weights = averaged(diagram, weighted(ImmutableSet.copyOf(diagram.loci())));
        return weights.isEmpty() ? Optional.empty() : Optional.of(Distribution.ofWeights(weights));
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
    public Optional<Distribution<Probability>> chance(Phenotype description, List<Phenotype> seen) {
        return chance(description.traits(), description, seen);
    }

    private Optional<Distribution<Probability>> chance(
            Collection<String> traits, Phenotype look, List<Phenotype> seen) {
        Set<String> read = read(traits, seen);
        Map<Probability, BigInteger> weights = chances(traits, look, seen, weighted(read), read);
        return weights.isEmpty() ? Optional.empty() : Optional.of(Distribution.ofWeights(weights));
    }

    /**
     * Returns the chance that the next kit shows a phenotype, given kits already seen.
     *
     * @param description a full or partial phenotype of the next kit
     * @param seen what the litter-mates seen so far show
     * @return the mean of {@link #chance}; empty where that is
     */
    public Optional<Probability> next(Phenotype description, List<Phenotype> seen) {
        return next(description.traits(), description, seen);
    }

    /**
     * Returns the chance that the next kit shows a look and no other in some traits, given kits already seen.
     *
     * @param traits the traits asked for
     * @param look the look in these traits; a trait it does not name is one for which the model makes no claim
     * @param seen what the litter-mates seen so far show
     * @return the chance; empty if the kits seen cannot be of such parents, or what is known of a parent has no weight in its population
     * @throws ProblemsException if an uncertain parent has no frequencies at a locus that matters
     * @throws TooLargeException if there are too many kinds of parents to go through
     */
    public Optional<Probability> next(Collection<String> traits, Phenotype look, List<Phenotype> seen) {
        return chance(traits, look, seen)
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
    public Optional<Distribution<Integer>> count(Phenotype description, int kits, List<Phenotype> seen) {
        Binomial.requireKits(kits);
        return chance(description, seen).map(chances -> chances.flatMap(chance -> Binomial.of(chance, kits)));
    }

    /**
     * Returns the reasons behind {@link #probable}, from the same diagram.
     *
     * @param traits the traits asked for
     * @return what the parents pass on, the ways to each phenotype, what stays hidden and which statements all this rests on; empty
     *     where {@link #probable} is
     * @throws ProblemsException if an uncertain parent has no frequencies at a locus that matters
     * @throws TooLargeException if there are too many ways to list
     */
    public Optional<MatingExplanation> explain(Collection<String> traits) {
        Set<String> read = compiled.lociRead(traits);
        requireFrequencies(read);
        List<ParentBox> sires = ParentBox.weighted(compiled.model(), sire, read);
        List<ParentBox> dams = ParentBox.weighted(compiled.model(), dam, read);
        return sires.isEmpty() || dams.isEmpty()
                ? Optional.empty()
                : Optional.of(new Explainer(compiled, traits, sires, dams).explain());
    }

    private static Distribution<Boolean> trial(Probability chance) {
        Map<Boolean, Probability> outcomes = new LinkedHashMap<>();
        outcomes.put(true, chance);
        outcomes.put(false, chance.complement());
        return Distribution.of(outcomes);
    }

    private ParentPairs structural(Set<String> read) {
        return new ParentPairs(
                compiled.model(),
                ParentBox.structural(compiled.model(), sire, read),
                ParentBox.structural(compiled.model(), dam, read));
    }

    private ParentPairs weighted(Set<String> read) {
        requireFrequencies(read);
        return new ParentPairs(
                compiled.model(),
                ParentBox.weighted(compiled.model(), sire, read),
                ParentBox.weighted(compiled.model(), dam, read));
    }

    private void requireFrequencies(Set<String> read) {
        Problems problems = new Problems(Stage.MEANING);
        requireFrequencies("sire", sire, read, problems);
        requireFrequencies("dam", dam, read, problems);
        problems.throwIfAny();
    }

    private void requireFrequencies(String role, Parent parent, Set<String> read, Problems problems) {
        List<String> missing = ParentBox.withoutFrequencies(compiled.model(), parent, read);
        if (!missing.isEmpty()) {
            problems.add(
                    "population-needed",
                    "",
                    "the " + role + " is only partly known at " + String.join(", ", missing) + ", and "
                            + parent.population()
                                    .map(population ->
                                            "population \"" + population.id() + "\" gives no frequencies there")
                                    .orElse("no population is named"),
                    compiled.model().populations().isEmpty()
                            ? "a full genotype there, because model " + compiled.model() + " has no population"
                            : "a full genotype there, or a population such as "
                                    + String.join(
                                            ", ", compiled.model().populations().keySet()));
        }
    }

    private Map<Phenotype, BigInteger> averaged(Diagram<Phenotype> diagram, ParentPairs parents) {
        BigInteger[] sums = new BigInteger[diagram.outcomes().size()];
        Arrays.fill(sums, BigInteger.ZERO);
        parents.averages(ImmutableSet.copyOf(diagram.loci()), (outside, young) -> {
            BigInteger[] weights = diagram.weigh(law(diagram, young)).shares();
            for (int i = 0; i < sums.length; i++) {
                sums[i] = sums[i].add(weights[i].multiply(outside));
            }
        });
        Map<Phenotype, BigInteger> result = new LinkedHashMap<>();
        for (int i = 0; i < sums.length; i++) {
            if (sums[i].signum() > 0) {
                result.put(diagram.outcomes().get(i), sums[i]);
            }
        }
        return result;
    }

    private Map<Probability, BigInteger> chances(
            Collection<String> traits,
            Phenotype description,
            List<Phenotype> seen,
            ParentPairs parents,
            Set<String> read) {
        Map<Probability, BigInteger> result = new LinkedHashMap<>();
        Diagram<Phenotype> asked = compiled.diagram(traits);
        List<Diagram<Phenotype>> evidence =
                seen.stream().map(kit -> compiled.diagram(kit.traits())).toList();
        parents.classes(read, (weight, young) -> {
            List<Probability> likelihood = new ArrayList<>();
            for (int i = 0; i < seen.size(); i++) {
                Phenotype kit = seen.get(i);
                likelihood.add(share(
                        evidence.get(i),
                        young,
                        p -> kit.restrictedTo(p.traits()).equals(p)));
            }
            BigInteger up = likelihood.stream().map(Probability::numerator).reduce(weight, BigInteger::multiply);
            if (up.signum() > 0) {
                Probability chance = share(asked, young, description::equals);
                result.merge(chance, scaled(up, likelihood), BigInteger::add);
            }
        });
        return result;
    }

    /** Brings a product of likelihoods onto the common total 4^loci per kit, so that weights of different parents compare. */
    private BigInteger scaled(BigInteger up, List<Probability> likelihood) {
        BigInteger weight = up;
        int bits = 2 * compiled.model().loci().size();
        for (Probability p : likelihood) {
            weight = weight.multiply(BigInteger.ONE.shiftLeft(bits).divide(p.denominator()));
        }
        return weight;
    }

    private static Probability share(
            Diagram<Phenotype> diagram, Map<String, BigInteger[]> young, Predicate<Phenotype> meant) {
        BigInteger[] weights = diagram.weigh(law(diagram, young)).shares();
        BigInteger part = BigInteger.ZERO;
        BigInteger total = BigInteger.ZERO;
        for (int i = 0; i < weights.length; i++) {
            total = total.add(weights[i]);
            if (meant.test(diagram.outcomes().get(i))) {
                part = part.add(weights[i]);
            }
        }
        return Probability.of(part, total);
    }

    private static KitLaw law(Diagram<Phenotype> diagram, Map<String, BigInteger[]> young) {
        return KitLaw.of(
                Sex.FEMALE,
                diagram.loci().stream()
                        .map(locus -> Chain.single(locus, Objects.requireNonNull(young.get(locus), locus)))
                        .toList());
    }

    private Set<String> read(Collection<String> asked, List<Phenotype> seen) {
        Set<String> traits = new LinkedHashSet<>(asked);
        seen.forEach(kit -> traits.addAll(kit.traits()));
        return compiled.lociRead(traits);
    }

    /** Returns what is known of the parents with a multiplication sign. */
    @Override
    public String toString() {
        return sire.genotypes() + " \u00d7 " + dam.genotypes();
    }
}
