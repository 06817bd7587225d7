package org.geneticsrules.cross;

import com.google.common.collect.ImmutableList;
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
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.WeightedBox;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Viability;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.trait.Sex;

/**
 * What is known of a parent as boxes of pairs, structurally or weighted.
 *
 * <p>A locus matters if the question reads it, or if boxes differ in it, because then it weighs one box against another.
 */
final class ParentBoxes {

    private final CompiledModel compiled;
    private final Model model;
    private final Sex sex;
    private final Parent parent;
    private final List<Known> boxes;

    /** A box of pairs with what it weighs by what was seen of the animal. */
    private record Known(Probability weight, Map<String, List<AllelePair>> pairs) {}

    ParentBoxes(CompiledModel compiled, Sex sex, Parent parent) {
        this.compiled = compiled;
        this.model = compiled.model();
        this.sex = sex;
        this.parent = parent;
        this.boxes = known();
    }

    private List<Known> known() {
        List<Known> all = new ArrayList<>();
        List<WeightedBox> looks = parent.looks().isEmpty()
                ? List.of(new WeightedBox(Condition.always(), Probability.ONE))
                : compiled.evidence(parent.looks(), Confusions.none());
        for (Map<String, List<AllelePair>> box : parent.genotypes().of(sex).boxes()) {
            for (WeightedBox look : looks) {
                known(box, look).ifPresent(all::add);
            }
        }
        return all;
    }

    /** What of a box shows as was seen. */
    private Optional<Known> known(Map<String, List<AllelePair>> box, WeightedBox look) {
        Allowed sexes = look.box().variables().get(Sex.VARIABLE);
        if (sexes != null && !sexes.allows(sex.word())) {
            return Optional.empty();
        }
        Map<String, List<AllelePair>> left = new LinkedHashMap<>();
        for (Map.Entry<String, List<AllelePair>> at : box.entrySet()) {
            Locus locus = model.locus(at.getKey());
            Allowed shows = look.box().variables().get(at.getKey());
            List<AllelePair> pairs = at.getValue().stream()
                    .filter(pair -> mayHave(model, locus, pair, sex)
                            && (shows == null || shows.allows(locus.expression(pair, sex))))
                    .toList();
            if (pairs.isEmpty()) {
                return Optional.empty();
            }
            left.put(at.getKey(), pairs);
        }
        return Optional.of(new Known(look.weight(), left));
    }

    /** An animal that has lived to become a parent has as many strands as its sex, and no combination that never lives. */
    static boolean mayHave(Model model, Locus locus, AllelePair pair, Sex sex) {
        return pair.alleles().size() == locus.transmission().strands(sex)
                && !survival(model, sex, locus, pair).isZero();
    }

    /** The chance that an animal with a pair lives from conception until it is scored. */
    static Probability survival(Model model, Sex sex, Locus locus, AllelePair pair) {
        Probability chance = Probability.ONE;
        if (model.viability().isEmpty()) {
            return chance;
        }
        String expression = locus.expression(pair, sex);
        for (Viability one : model.viability().values()) {
            if (one.locus().equals(locus.id())
                    && one.expressions().contains(expression)
                    && one.sex().orElse(sex) == sex) {
                chance = chance.times(one.birth()).times(one.scored());
            }
        }
        return chance;
    }

    boolean isEmpty() {
        return boxes.isEmpty();
    }

    /** Whether loci may depend on one another through what is known of the parent. */
    boolean isUnion() {
        return boxes.size() > 1;
    }

    /** Boxes in which every allowed pair has weight 1, for questions of what is possible. */
    List<ParentBox> structural(Set<String> read) {
        Set<String> matter = mattering(read);
        ImmutableList.Builder<ParentBox> result = ImmutableList.builder();
        for (Known box : boxes) {
            Map<String, BigInteger[]> weights = new LinkedHashMap<>();
            for (String locus : matter) {
                weights.put(locus, ones(model.locus(locus), at(box, locus)));
            }
            result.add(new ParentBox(sex, BigInteger.ONE, weights, parent.phase()));
        }
        return result.build();
    }

    /** Boxes weighted by Hardy-Weinberg proportions of the parent's population among those who live, without those of weight 0. */
    List<ParentBox> weighted(Set<String> read) {
        BigInteger common = boxes.stream()
                .map(box -> box.weight().denominator())
                .reduce(BigInteger.ONE, (a, b) -> a.divide(a.gcd(b)).multiply(b));
        Set<String> matter = mattering(read);
        ImmutableList.Builder<ParentBox> result = ImmutableList.builder();
        for (Known box : boxes) {
            Map<String, BigInteger[]> weights = new LinkedHashMap<>();
            boolean possible = true;
            for (String name : matter) {
                Locus locus = model.locus(name);
                List<AllelePair> allowed = at(box, name);
                BigInteger[] shares = isFixed(name)
                        ? ones(locus, allowed)
                        : shares(locus, allowed, frequencies(name).orElseThrow());
                possible &= Arrays.stream(shares).anyMatch(share -> share.signum() > 0);
                weights.put(name, shares);
            }
            if (possible) {
                BigInteger weight = box.weight()
                        .numerator()
                        .multiply(common.divide(box.weight().denominator()));
                result.add(new ParentBox(sex, weight, weights, parent.phase()));
            }
        }
        return result.build();
    }

    /** The loci for which weights are needed but no frequencies are named. */
    List<String> withoutFrequencies(Set<String> read) {
        if (boxes.isEmpty()) {
            return ImmutableList.of(); // a contradiction needs no frequencies
        }
        return mattering(read).stream()
                .filter(locus -> !isFixed(locus) && frequencies(locus).isEmpty())
                .toList();
    }

    /** Refuses to weigh an animal of whom too little is known. */
    void requireFrequencies(String role, Set<String> read, Problems problems) {
        List<String> missing = withoutFrequencies(read);
        if (!missing.isEmpty()) {
            problems.add(
                    "population-needed",
                    "",
                    "the " + role + " is only partly known at " + String.join(", ", missing) + ", and "
                            + parent.population()
                                    .map(population ->
                                            "population \"" + population.id() + "\" gives no frequencies there")
                                    .orElse("no population is named"),
                    model.populations().isEmpty()
                            ? "a full genotype there, because model " + model + " has no population"
                            : "a full genotype there, or a population such as "
                                    + String.join(", ", model.populations().keySet()));
        }
    }

    private Optional<Distribution<String>> frequencies(String locus) {
        return parent.population()
                .flatMap(population ->
                        Optional.ofNullable(population.frequencies().get(locus)));
    }

    private Set<String> mattering(Set<String> read) {
        Set<String> matter = new LinkedHashSet<>();
        for (String locus : model.loci().keySet()) {
            boolean differ =
                    boxes.stream().map(box -> at(box, locus)).distinct().count() > 1;
            if (read.contains(locus) || differ) {
                matter.add(locus);
            }
        }
        return matter;
    }

    /** Known for certain in the same way in every box, so that no frequency can say anything about it. */
    private boolean isFixed(String locus) {
        return boxes.stream().map(box -> at(box, locus)).distinct().count() == 1
                && at(boxes.get(0), locus).size() == 1;
    }

    private static List<AllelePair> at(Known box, String locus) {
        return Objects.requireNonNull(box.pairs().get(locus), locus);
    }

    private static BigInteger[] ones(Locus locus, List<AllelePair> allowed) {
        BigInteger[] weights = new BigInteger[locus.pairs().size()];
        Arrays.setAll(weights, i -> allowed.contains(locus.pairs().get(i)) ? BigInteger.ONE : BigInteger.ZERO);
        return weights;
    }

    /**
     * p^2 for a homozygote, 2pq for a heterozygote and p for a hemizygote, times the chance to live, over common denominators.
     */
    private BigInteger[] shares(Locus locus, List<AllelePair> allowed, Distribution<String> frequencies) {
        List<BigInteger> parts = parts(locus.alleles().values().stream()
                .map(Allele::id)
                .map(frequencies::probability)
                .toList());
        List<BigInteger> lives =
                parts(locus.pairs().stream().map(pair -> lives(locus, pair)).toList());
        BigInteger[] weights = new BigInteger[locus.pairs().size()];
        for (int i = 0; i < weights.length; i++) {
            AllelePair pair = locus.pairs().get(i);
            BigInteger share = BigInteger.ONE;
            for (int position : locus.positions(pair)) {
                share = share.multiply(parts.get(position));
            }
            share = pair.isHeterozygous() ? share.shiftLeft(1) : share;
            weights[i] = allowed.contains(pair) ? share.multiply(lives.get(i)) : BigInteger.ZERO;
        }
        return weights;
    }

    private Probability lives(Locus locus, AllelePair pair) {
        return pair.alleles().size() == locus.transmission().strands(sex)
                ? survival(model, sex, locus, pair)
                : Probability.ZERO;
    }

    /** Numerators over the least common denominator. */
    private static List<BigInteger> parts(List<Probability> chances) {
        BigInteger common = chances.stream()
                .map(Probability::denominator)
                .reduce(BigInteger.ONE, (a, b) -> a.divide(a.gcd(b)).multiply(b));
        return chances.stream()
                .map(p -> p.numerator().multiply(common.divide(p.denominator())))
                .toList();
    }
}
