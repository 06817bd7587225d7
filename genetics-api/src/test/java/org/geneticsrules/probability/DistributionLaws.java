package org.geneticsrules.probability;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Laws of distributions: mass is 1, mixtures are associative, conditioning is renormalised restriction. */
class DistributionLaws {

    @Provide
    Arbitrary<Distribution<String>> distributions() {
        return Chances.distributions();
    }

    @Provide
    Arbitrary<Map<String, Distribution<String>>> kernels() {
        return Chances.kernels();
    }

    static void massIsOne(Distribution<?> d) {
        Probability mass = Probability.ZERO;
        for (Probability chance : d.asMap().values()) {
            assertFalse(chance.isZero());
            mass = mass.plus(chance);
        }
        assertEquals(Probability.ONE, mass);
        assertEquals(d.outcomes(), d.asMap().keySet());
    }

    static void mixturesAreAssociative(
            Distribution<String> d, Map<String, Distribution<String>> f, Map<String, Distribution<String>> g) {
        assertEquals(
                d.flatMap(f::get).flatMap(g::get),
                d.flatMap(first -> f.get(first).flatMap(g::get)));
    }

    static void certaintyIsNeutral(Distribution<String> d, Map<String, Distribution<String>> f) {
        assertEquals(d, d.flatMap(Distribution::certain));
        assertEquals(f.get("x"), Distribution.certain("x").flatMap(f::get));
    }

    static void mapIsAMixtureOfCertainties(Distribution<String> d) {
        assertEquals(d.flatMap(x -> Distribution.certain(x.equals("w"))), d.map(x -> x.equals("w")));
        assertEquals(d.probability("w"), d.map(x -> x.equals("w")).probability(true));
        assertEquals(d, d.map(x -> x));
    }

    static void productsHaveTheirMargins(Distribution<String> d, Distribution<String> e) {
        Distribution<List<String>> joint = d.product(e, (x, y) -> List.of(x, y));
        massIsOne(joint);
        assertEquals(d, joint.map(pair -> pair.get(0)));
        assertEquals(e, joint.map(pair -> pair.get(1)));
        joint.asMap()
                .forEach((pair, chance) ->
                        assertEquals(d.probability(pair.get(0)).times(e.probability(pair.get(1))), chance));
    }

    static void conditioningIsRenormalisedRestriction(Distribution<String> d, Set<String> event) {
        Probability whole = d.probabilityOf(event::contains);
        assertEquals(whole.isZero(), d.given(event::contains).isEmpty());
        d.given(event::contains).ifPresent(given -> {
            massIsOne(given);
            assertTrue(event.containsAll(given.outcomes()));
            given.asMap().forEach((x, chance) -> assertEquals(d.probability(x), chance.times(whole)));
        });
        assertEquals(d, d.given(x -> true).orElseThrow());
    }

    static void totalProbabilityHolds(Distribution<String> d, Set<String> event) {
        Map<Boolean, Probability> sides = new LinkedHashMap<>();
        for (boolean inside : List.of(true, false)) {
            sides.put(inside, d.probabilityOf(x -> event.contains(x) == inside));
        }
        Distribution<Boolean> side = Distribution.of(sides);
        assertEquals(
                d,
                side.flatMap(inside -> d.given(x -> event.contains(x) == inside).orElseThrow()));
    }

    static void theRatioIsTheSmallestInProportion(Distribution<String> d) {
        List<BigInteger> ratio = d.ratio();
        BigInteger divisor = BigInteger.ZERO;
        Map<String, BigInteger> weights = new LinkedHashMap<>();
        List<String> outcomes = new ArrayList<>(d.outcomes());
        for (int i = 0; i < ratio.size(); i++) {
            divisor = divisor.gcd(ratio.get(i));
            weights.put(outcomes.get(i), ratio.get(i));
        }
        assertEquals(BigInteger.ONE, divisor);
        assertEquals(d, Distribution.ofWeights(weights));
    }

    @Property
    void mass(@ForAll("distributions") Distribution<String> d, @ForAll("kernels") Map<String, Distribution<String>> f) {
        massIsOne(d);
        massIsOne(d.flatMap(f::get));
    }

    @Property(tries = 300)
    void mixtures(
            @ForAll("distributions") Distribution<String> d,
            @ForAll("kernels") Map<String, Distribution<String>> f,
            @ForAll("kernels") Map<String, Distribution<String>> g) {
        mixturesAreAssociative(d, f, g);
        certaintyIsNeutral(d, f);
    }

    @Property
    void images(@ForAll("distributions") Distribution<String> d) {
        mapIsAMixtureOfCertainties(d);
    }

    @Property
    void products(@ForAll("distributions") Distribution<String> d, @ForAll("distributions") Distribution<String> e) {
        productsHaveTheirMargins(d, e);
    }

    @Provide
    Arbitrary<Set<String>> events() {
        return Arbitraries.subsetOf("w", "x", "y", "z");
    }

    @Property
    void conditioning(@ForAll("distributions") Distribution<String> d, @ForAll("events") Set<String> event) {
        conditioningIsRenormalisedRestriction(d, event);
        totalProbabilityHolds(d, event);
    }

    @Property
    void ratios(@ForAll("distributions") Distribution<String> d) {
        theRatioIsTheSmallestInProportion(d);
    }
}
