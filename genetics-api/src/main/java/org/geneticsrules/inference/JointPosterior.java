package org.geneticsrules.inference;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.problem.TooLargeException;

/**
 * What several animals carry together at several loci, weighed by all records: two relatives may each carry an allele with chance 1/2, and
 * yet both or neither of them, and a look may leave one locus open or another, but not both.
 *
 * @param standing exact, or why there are no numbers
 * @param parts parts that are independent of one another, each with all combinations that are possible; none if there are no numbers
 */
public record JointPosterior(Standing standing, List<Part> parts) {

    /** More combinations than this are not listed. */
    private static final double MOST_COMBINATIONS = 1_000_000;

    /**
     * Animals and loci that depend on one another.
     *
     * @param combinations combinations that are possible; their chances sum to 1 but for rounding
     */
    public record Part(List<Combination> combinations) {
        /**
         * Copies the combinations.
         *
         * @param combinations combinations that are possible
         */
        public Part {
            combinations = ImmutableList.copyOf(combinations);
        }
    }

    /**
     * One of the things that animals may carry together.
     *
     * @param genotypes genotypes by locus, by id of an animal
     * @param chance how likely it is
     */
    public record Combination(Map<String, Map<String, AllelePair>> genotypes, double chance) {
        /**
         * Copies the genotypes.
         *
         * @param genotypes genotypes by locus, by id of an animal
         * @param chance how likely it is
         */
        public Combination {
            ImmutableMap.Builder<String, Map<String, AllelePair>> copy = ImmutableMap.builder();
            genotypes.forEach((id, pairs) -> copy.put(id, ImmutableMap.copyOf(pairs)));
            genotypes = copy.buildOrThrow();
        }
    }

    /**
     * Copies the parts.
     *
     * @param standing exact, or why there are no numbers
     * @param parts parts that are independent of one another
     */
    public JointPosterior {
        parts = ImmutableList.copyOf(parts);
    }

    /**
     * Returns all combinations over all parts.
     *
     * @return each with the product of the chances of its parts
     * @throws TooLargeException if there are more than a million
     */
    public List<Combination> combinations() {
        double count = 1;
        for (Part part : parts) {
            count *= part.combinations().size();
        }
        if (count > MOST_COMBINATIONS) {
            throw new TooLargeException(
                    "combinations of what the animals may carry together",
                    count,
                    MOST_COMBINATIONS,
                    "ask for fewer loci, or look at each independent part by itself.");
        }
        if (parts.isEmpty()) {
            return List.of();
        }
        List<Combination> all = List.of(new Combination(Map.of(), 1));
        for (Part part : parts) {
            List<Combination> longer = new ArrayList<>();
            for (Combination before : all) {
                for (Combination here : part.combinations()) {
                    longer.add(new Combination(
                            merged(before.genotypes(), here.genotypes()), before.chance() * here.chance()));
                }
            }
            all = longer;
        }
        return ImmutableList.copyOf(all);
    }

    private static Map<String, Map<String, AllelePair>> merged(
            Map<String, Map<String, AllelePair>> one, Map<String, Map<String, AllelePair>> other) {
        Map<String, Map<String, AllelePair>> both = new TreeMap<>();
        one.forEach(
                (id, pairs) -> both.computeIfAbsent(id, key -> new TreeMap<>()).putAll(pairs));
        other.forEach(
                (id, pairs) -> both.computeIfAbsent(id, key -> new TreeMap<>()).putAll(pairs));
        return both;
    }

    /**
     * Returns the chance of a set of combinations.
     *
     * @param set which count, by what each animal carries at each locus
     * @return the sum of their chances
     * @throws TooLargeException if there are more than a million combinations
     */
    public double chance(Predicate<Map<String, Map<String, AllelePair>>> set) {
        return combinations().stream()
                .filter(one -> set.test(one.genotypes()))
                .mapToDouble(Combination::chance)
                .sum();
    }
}
