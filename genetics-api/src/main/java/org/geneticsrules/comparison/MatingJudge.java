package org.geneticsrules.comparison;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.statistics.BinomialInterval;
import org.geneticsrules.statistics.Counts;
import org.geneticsrules.statistics.GoodnessOfFit;
import org.geneticsrules.statistics.Interval;
import org.geneticsrules.statistics.MultinomialTest;
import org.geneticsrules.statistics.Ratio;
import org.geneticsrules.trait.Phenotype;

/**
 * Puts the kits of couples that were recorded alike together, and holds their counts against what is expected of such couples, by what each
 * may be according to all records.
 */
final class MatingJudge {

    /** Chances become fractions of this, which is finer than a double tells them apart. */
    private static final BigInteger WHOLE = BigInteger.ONE.shiftLeft(52);

    private static final double LEVEL = 0.95;

    private static final int DRAWS = 9_999;

    private final CompiledModel compiled;
    private final boolean misread;
    private final long seed;
    private final Map<Kind, Group> groups = new LinkedHashMap<>();

    /** What makes couples and looks at their kits alike. */
    private record Kind(List<Object> sire, List<Object> dam, Alike way) {}

    /** Couples that are alike, and their kits: how often each was seen, and how often it is expected. */
    private static final class Group {
        private final String parents;
        private final Set<String> litters = new LinkedHashSet<>();
        private final List<Shown> seen = new ArrayList<>();
        private final Map<Shown, Double> expected = new LinkedHashMap<>();
        private boolean independent = true;

        Group(String parents) {
            this.parents = parents;
        }
    }

    MatingJudge(CompiledModel compiled, boolean misread, long seed) {
        this.compiled = compiled;
        this.misread = misread;
        this.seed = seed;
    }

    void add(Pedigree pedigree, Kindred kindred, List<Noticed> litters, Chances known) {
        Optional<Individual> sire = kindred.sire(pedigree);
        Optional<Individual> dam = kindred.dam(pedigree);
        if (sire.isEmpty() || dam.isEmpty() || (known.soFar() == Double.NEGATIVE_INFINITY)) {
            return;
        }
        for (Noticed litter : litters) {
            Ascertainment how = litter.litter().ascertainment();
            if (!(how instanceof Ascertainment.Complete) && !(how instanceof Ascertainment.Unknown)) {
                continue;
            }
            Map<Alike, List<Shown>> seen = new LinkedHashMap<>();
            for (Individual kit : litter.kits()) {
                Alike.of(kit, compiled)
                        .ifPresent(way -> seen.computeIfAbsent(way, key -> new ArrayList<>())
                                .add(way.shown(kit)));
            }
            seen.forEach((way, kits) -> {
                Group group = groups.computeIfAbsent(
                        new Kind(records(sire.get()), records(dam.get()), way),
                        key -> new Group(words(sire.get()) + " x " + words(dam.get())));
                group.litters.add(litter.litter().id());
                group.seen.addAll(kits);
                expect(group, way, kits, litter, known);
            });
        }
    }

    /** What as many further kits of the same parents are expected to show. */
    private void expect(Group group, Alike way, List<Shown> kits, Noticed litter, Chances known) {
        double before = known.with(litter.litter(), List.of(litter.born()));
        for (Shown look : way.all(compiled, misread, kits)) {
            Individual kit = way.showing(litter.born(), look);
            double log = known.with(litter.litter(), List.of(kit)) - before;
            if (log != Double.NEGATIVE_INFINITY) {
                double twice = known.with(litter.litter(), List.of(kit, Noticed.renamed(kit, kit.id() + "'"))) - before;
                group.independent &= Math.abs(twice - 2 * log) < 1e-9;
                group.expected.merge(look, kits.size() * Math.exp(log), Double::sum);
            }
        }
    }

    private static List<Object> records(Individual parent) {
        return List.of(parent.observations(), parent.tests(), parent.population());
    }

    private static String words(Individual parent) {
        List<String> words = new ArrayList<>();
        parent.tests().forEach(test -> words.add(String.join(" or ", test.result())));
        parent.observations()
                .forEach(seen -> words.add(String.join(
                        " or ", seen.looks().stream().map(Phenotype::toString).toList())));
        return words.isEmpty() ? "not recorded" : String.join(", ", words);
    }

    List<MatingFit> judge() {
        List<MatingFit> fits = new ArrayList<>();
        groups.values().forEach(group -> fit(group).ifPresent(fits::add));
        return fits;
    }

    private Optional<MatingFit> fit(Group group) {
        int kits = group.seen.size();
        double sum = group.expected.values().stream()
                .mapToDouble(Double::doubleValue)
                .sum();
        if (Math.abs(sum - kits) > 1e-6 * kits) {
            return Optional.empty();
        }
        group.seen.forEach(look -> group.expected.putIfAbsent(look, 0.0));
        Map<String, Long> counts = new LinkedHashMap<>();
        List<Double> shares = new ArrayList<>();
        group.expected.forEach((look, expected) -> {
            counts.put(look.toString(), 0L);
            shares.add(expected / kits);
        });
        group.seen.forEach(look -> counts.merge(look.toString(), 1L, Long::sum));
        Counts counted = new Counts(counts);
        Ratio ratio = ratio(shares);
        List<Interval> intervals = counts.values().stream()
                .map(count -> BinomialInterval.clopperPearson(count, kits, LEVEL))
                .toList();
        return Optional.of(new MatingFit(
                List.copyOf(group.litters),
                group.parents,
                GoodnessOfFit.of(counted, ratio),
                group.independent,
                group.independent && (shares.size() > 1)
                        ? Optional.of(
                                MultinomialTest.of(ratio).sampling(DRAWS, seed).test(counted))
                        : Optional.empty(),
                intervals));
    }

    /** Chances as fractions that sum to 1; what is possible stays possible, and what is not does not become so. */
    private static Ratio ratio(List<Double> shares) {
        List<BigInteger> parts = new ArrayList<>();
        BigInteger sum = BigInteger.ZERO;
        int largest = 0;
        for (int at = 0; at < shares.size(); at++) {
            double share = shares.get(at);
            BigInteger part = share == 0
                    ? BigInteger.ZERO
                    : BigInteger.valueOf(Math.max(1, Math.round(share * WHOLE.doubleValue())));
            parts.add(part);
            sum = sum.add(part);
            largest = share > shares.get(largest) ? at : largest;
        }
        parts.set(largest, parts.get(largest).add(WHOLE.subtract(sum)));
        return new Ratio(parts.stream().map(part -> Probability.of(part, WHOLE)).toList());
    }
}
