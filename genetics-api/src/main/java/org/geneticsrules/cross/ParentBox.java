package org.geneticsrules.cross;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;

/**
 * One box of a parent's genotypes with the weight of each pair at each locus that matters; within a box the loci are independent.
 *
 * <p>A locus matters if the question reads it, or if boxes differ in it, because then it weighs one box against another.
 *
 * @param weights by locus, the weight of each pair in the order of {@link Locus#pairs()}, 0 for pairs outside the box
 */
record ParentBox(Map<String, BigInteger[]> weights) {

    ParentBox {
        weights = ImmutableMap.copyOf(weights);
    }

    BigInteger[] at(String locus) {
        return Objects.requireNonNull(weights.get(locus), locus);
    }

    /** Boxes in which every allowed pair has weight 1, for questions of what is possible. */
    static List<ParentBox> structural(Model model, Parent parent, Set<String> read) {
        List<Map<String, List<AllelePair>>> boxes = parent.genotypes().boxes();
        Set<String> matter = mattering(model, boxes, read);
        ImmutableList.Builder<ParentBox> result = ImmutableList.builder();
        for (Map<String, List<AllelePair>> box : boxes) {
            Map<String, BigInteger[]> weights = new LinkedHashMap<>();
            for (String locus : matter) {
                weights.put(locus, ones(model.locus(locus), Objects.requireNonNull(box.get(locus))));
            }
            result.add(new ParentBox(weights));
        }
        return result.build();
    }

    /** Boxes weighted by Hardy-Weinberg proportions of the parent's population, without those of weight 0. */
    static List<ParentBox> weighted(Model model, Parent parent, Set<String> read) {
        List<Map<String, List<AllelePair>>> boxes = parent.genotypes().boxes();
        Set<String> matter = mattering(model, boxes, read);
        ImmutableList.Builder<ParentBox> result = ImmutableList.builder();
        for (Map<String, List<AllelePair>> box : boxes) {
            Map<String, BigInteger[]> weights = new LinkedHashMap<>();
            boolean possible = true;
            for (String name : matter) {
                Locus locus = model.locus(name);
                List<AllelePair> allowed = Objects.requireNonNull(box.get(name));
                BigInteger[] shares = isFixed(boxes, name)
                        ? ones(locus, allowed)
                        : hardyWeinberg(
                                locus, allowed, frequencies(parent, name).orElseThrow());
                possible &= Arrays.stream(shares).anyMatch(share -> share.signum() > 0);
                weights.put(name, shares);
            }
            if (possible) {
                result.add(new ParentBox(weights));
            }
        }
        return result.build();
    }

    /** The loci for which weights are needed but no frequencies are named. */
    static List<String> withoutFrequencies(Model model, Parent parent, Set<String> read) {
        List<Map<String, List<AllelePair>>> boxes = parent.genotypes().boxes();
        if (boxes.isEmpty()) {
            return ImmutableList.of(); // a contradiction needs no frequencies
        }
        return mattering(model, boxes, read).stream()
                .filter(locus ->
                        !isFixed(boxes, locus) && frequencies(parent, locus).isEmpty())
                .toList();
    }

    private static Optional<Distribution<String>> frequencies(Parent parent, String locus) {
        return parent.population()
                .flatMap(population ->
                        Optional.ofNullable(population.frequencies().get(locus)));
    }

    private static Set<String> mattering(Model model, List<Map<String, List<AllelePair>>> boxes, Set<String> read) {
        Set<String> matter = new LinkedHashSet<>();
        for (String locus : model.loci().keySet()) {
            boolean differ =
                    boxes.stream().map(box -> box.get(locus)).distinct().count() > 1;
            if (read.contains(locus) || differ) {
                matter.add(locus);
            }
        }
        return matter;
    }

    /** Known for certain in the same way in every box, so that no frequency can say anything about it. */
    private static boolean isFixed(List<Map<String, List<AllelePair>>> boxes, String locus) {
        return boxes.stream().map(box -> box.get(locus)).distinct().count() == 1
                && Objects.requireNonNull(boxes.get(0).get(locus)).size() == 1;
    }

    private static BigInteger[] ones(Locus locus, List<AllelePair> allowed) {
        BigInteger[] weights = new BigInteger[locus.pairs().size()];
        Arrays.setAll(weights, i -> allowed.contains(locus.pairs().get(i)) ? BigInteger.ONE : BigInteger.ZERO);
        return weights;
    }

    /** p^2 for a homozygote and 2pq for a heterozygote, over the common denominator of the frequencies squared. */
    private static BigInteger[] hardyWeinberg(Locus locus, List<AllelePair> allowed, Distribution<String> frequencies) {
        BigInteger common = frequencies.asMap().values().stream()
                .map(Probability::denominator)
                .reduce(BigInteger.ONE, (a, b) -> a.divide(a.gcd(b)).multiply(b));
        List<BigInteger> parts = new ArrayList<>();
        for (Allele allele : locus.alleles().values()) {
            Probability p = frequencies.probability(allele.id());
            parts.add(p.numerator().multiply(common.divide(p.denominator())));
        }
        BigInteger[] weights = new BigInteger[locus.pairs().size()];
        for (int i = 0; i < weights.length; i++) {
            AllelePair pair = locus.pairs().get(i);
            int[] at = locus.positions(pair);
            BigInteger share = parts.get(at[0]).multiply(parts.get(at[1]));
            BigInteger weight = pair.isHomozygous() ? share : share.shiftLeft(1);
            weights[i] = allowed.contains(pair) ? weight : BigInteger.ZERO;
        }
        return weights;
    }
}
