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

/** Puts the kits of couples that were recorded alike together, and holds their counts against what is expected of such couples. */
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

    /** Couples that are alike, and their kits. */
    private record Group(Kindred example, Noticed litter, String parents, Set<String> litters, List<Shown> seen) {}

    MatingJudge(CompiledModel compiled, boolean misread, long seed) {
        this.compiled = compiled;
        this.misread = misread;
        this.seed = seed;
    }

    void add(Pedigree pedigree, Kindred kindred, List<Noticed> litters) {
        Optional<Individual> sire = kindred.sire(pedigree);
        Optional<Individual> dam = kindred.dam(pedigree);
        if (sire.isEmpty() || dam.isEmpty()) {
            return;
        }
        for (Noticed litter : litters) {
            Ascertainment how = litter.litter().ascertainment();
            if (!(how instanceof Ascertainment.Complete) && !(how instanceof Ascertainment.Unknown)) {
                continue;
            }
            for (Individual kit : litter.kits()) {
                Alike.of(kit, compiled).ifPresent(way -> {
                    Group group = groups.computeIfAbsent(
                            new Kind(records(sire.get()), records(dam.get()), way),
                            key -> new Group(
                                    kindred,
                                    litter,
                                    words(sire.get()) + " x " + words(dam.get()),
                                    new LinkedHashSet<>(),
                                    new ArrayList<>()));
                    group.litters().add(litter.litter().id());
                    group.seen().add(way.shown(kit));
                });
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

    List<MatingFit> judge(ModelChances chances) {
        List<MatingFit> fits = new ArrayList<>();
        groups.forEach((kind, group) -> fit(kind.way(), group, chances).ifPresent(fits::add));
        return fits;
    }

    private Optional<MatingFit> fit(Alike way, Group group, ModelChances chances) {
        Chances couple = chances.chances(group.example());
        Individual born = group.litter().born();
        double before = couple.with(group.litter().litter(), List.of(born));
        List<Shown> all = way.all(compiled, misread, group.seen());
        List<Shown> looks = new ArrayList<>();
        List<Double> shares = new ArrayList<>();
        boolean independent = true;
        double sum = 0;
        for (Shown look : all) {
            Individual kit = way.showing(born, look);
            double log = couple.with(group.litter().litter(), List.of(kit)) - before;
            double twice = couple.with(group.litter().litter(), List.of(kit, kit)) - before;
            sum += Math.exp(log);
            if ((log != Double.NEGATIVE_INFINITY) || group.seen().contains(look)) {
                looks.add(look);
                shares.add(Math.exp(log));
                independent &= (log == Double.NEGATIVE_INFINITY) || (Math.abs(twice - 2 * log) < 1e-9);
            }
        }
        if (looks.isEmpty() || (Math.abs(sum - 1) > 1e-6)) {
            return Optional.empty();
        }
        Map<String, Long> counts = new LinkedHashMap<>();
        looks.forEach(look -> counts.put(look.toString(), 0L));
        group.seen().forEach(look -> counts.merge(look.toString(), 1L, Long::sum));
        Counts counted = new Counts(counts);
        Ratio ratio = ratio(shares);
        List<Interval> intervals = counts.values().stream()
                .map(count ->
                        BinomialInterval.clopperPearson(count, group.seen().size(), LEVEL))
                .toList();
        return Optional.of(new MatingFit(
                List.copyOf(group.litters()),
                group.parents(),
                GoodnessOfFit.of(counted, ratio),
                independent,
                independent && (looks.size() > 1)
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
