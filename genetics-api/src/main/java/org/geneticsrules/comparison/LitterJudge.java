package org.geneticsrules.comparison;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import org.geneticsrules.comparison.KitFit.Standing;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.trait.Sighting;

/**
 * Judges litters, each by what its parents may be according to all records, its own included: of the kits that were looked at in the same way,
 * how many show which look, against all other counts that so many further kits of these parents might show.
 */
final class LitterJudge {

    /** So many counts are gone through where the chance of one is quickly found, and where it is a pedigree's. */
    private static final int MOST_OF_COUPLES = 20_000;

    private static final int MOST_OF_KINDREDS = 400;

    /** The same, times the number of the relatives. */
    private static final int MOST_ANIMALS = 8_000;

    private static final int DRAWS = 2_000;

    /** Finding the chances of the next kit's looks is not repeated more often than this. */
    private static final int MOST_STEPS = 400_000;

    private final CompiledModel compiled;
    private final boolean misread;
    private final SplittableRandom random;
    private int animals = 1;

    /**
     * What was found of a litter.
     *
     * @param fit how it goes with the model
     * @param outcomes what it might have shown, if that was found
     */
    record Judged(LitterFit fit, Optional<LitterOutcomes> outcomes) {}

    LitterJudge(CompiledModel compiled, boolean misread, SplittableRandom random) {
        this.compiled = compiled;
        this.misread = misread;
        this.random = random;
    }

    /**
     * Judges a litter.
     *
     * @param litter the litter
     * @param before what was known before it
     * @param possible whether that can be
     * @param all what is known of all litters of its kindred
     * @param first whether it is the first of its kindred
     * @param relatives how many animals the kindred has
     */
    Judged judge(Noticed litter, Chances before, boolean possible, Chances all, boolean first, int relatives) {
        animals = relatives;
        if (!possible) {
            return first
                    ? untested(litter, Standing.IMPOSSIBLE, "what was recorded of founders has no chance")
                    : untested(litter, Standing.NOT_JUDGED, "what was recorded before has no chance");
        }
        if (before.with(litter.litter(), litter.recorded()) == Double.NEGATIVE_INFINITY) {
            return untested(litter, Standing.IMPOSSIBLE, "it has no chance");
        }
        if (all.soFar() == Double.NEGATIVE_INFINITY) {
            return untested(litter, Standing.FINE, "a later litter has no chance");
        }
        Map<Alike, List<Individual>> ways = new LinkedHashMap<>();
        for (Individual kit : litter.kits()) {
            if (Noticed.isRecorded(kit)) {
                Optional<Alike> way = Alike.of(kit, compiled);
                if (way.isEmpty()) {
                    return untested(
                            litter,
                            Standing.FINE,
                            "a kit was looked at several times, or tested, or its look is not certain");
                }
                ways.computeIfAbsent(way.get(), key -> new ArrayList<>()).add(kit);
            }
        }
        if (ways.isEmpty()) {
            return untested(litter, Standing.NOT_JUDGED, "nothing was recorded of its kits");
        }
        if (litter.litter().dam().isEmpty() || !(litter.litter().sires() instanceof Paternity.Known)) {
            return untested(litter, Standing.FINE, "a parent of it is not recorded for certain");
        }
        if (ways.size() > 1) {
            return untested(litter, Standing.FINE, "its kits were not all looked at in the same way");
        }
        Map.Entry<Alike, List<Individual>> only = ways.entrySet().iterator().next();
        Alike way = only.getKey();
        List<Individual> kits = only.getValue();
        if ((kits.size() < litter.size()) && (litter.chances().length > 0)) {
            return untested(
                    litter, Standing.FINE, "not every kit of a litter that was noticed for its looks was looked at");
        }
        Set<Shown> seen = new LinkedHashSet<>();
        kits.forEach(kit -> seen.add(way.shown(kit)));
        List<Shown> looks = way.all(compiled, misread, seen);
        return looks.isEmpty()
                ? untested(litter, Standing.FINE, "its looks are too many to compare")
                : judge(litter, all, way, kits, looks);
    }

    private Judged judge(Noticed litter, Chances known, Alike way, List<Individual> kits, List<Shown> all) {
        Individual any = litter.born();
        double born = known.with(litter.litter(), List.of(any));
        List<Shown> looks = new ArrayList<>();
        List<Double> chances = new ArrayList<>();
        double sum = 0;
        for (Shown look : all) {
            double chance = Math.exp(known.with(litter.litter(), List.of(way.showing(any, look))) - born);
            sum += chance;
            if (chance > 0) {
                looks.add(look);
                chances.add(chance);
            }
        }
        if (Math.abs(sum - 1) > 1e-6) {
            return untested(
                    litter, Standing.FINE, "what its looks say depends on an age or season that is not recorded");
        }
        Map<Shown, Integer> counts = new LinkedHashMap<>();
        Map<Shown, Double> expected = new LinkedHashMap<>();
        for (int at = 0; at < looks.size(); at++) {
            counts.put(looks.get(at), 0);
            expected.put(looks.get(at), kits.size() * chances.get(at));
        }
        kits.forEach(kit -> counts.merge(way.shown(kit), 1, Integer::sum));
        int[] observed = looks.stream().mapToInt(counts::get).toArray();
        Law law = new Law(litter, known, way, looks);
        Optional<LitterOutcomes> outcomes = law.outcomes(observed, kits.size());
        if (outcomes.isEmpty()) {
            return new Judged(
                    new LitterFit(
                            litter.litter().id(),
                            Standing.FINE,
                            counts,
                            expected,
                            Optional.empty(),
                            0,
                            Optional.of("what it might have shown is too much to go through")),
                    Optional.empty());
        }
        LitterOutcomes found = outcomes.get();
        double p = found.p();
        return new Judged(
                new LitterFit(
                        litter.litter().id(),
                        p < FittedModel.USUAL_RISK ? Standing.UNLIKELY : Standing.FINE,
                        counts,
                        litter.chances().length > 0 ? Map.of() : expected,
                        Optional.of(p),
                        found.standardError(),
                        Optional.empty()),
                outcomes);
    }

    private static Judged untested(Noticed litter, Standing standing, String why) {
        return new Judged(
                new LitterFit(
                        litter.litter().id(), standing, Map.of(), Map.of(), Optional.empty(), 0, Optional.of(why)),
                Optional.empty());
    }

    /** The chances of counts of looks among the kits of one litter. */
    private final class Law {

        private final Noticed litter;
        private final Chances known;
        private final List<Shown> looks;
        private final boolean[] signs;
        private final boolean couple;
        private final List<Individual> examples = new ArrayList<>();

        Law(Noticed litter, Chances known, Alike way, List<Shown> looks) {
            this.litter = litter;
            this.known = known;
            this.looks = looks;
            this.couple = known instanceof CoupleChances;
            looks.forEach(look -> examples.add(way.showing(litter.born(), look)));
            this.signs = new boolean[looks.size()];
            if (litter.chances().length > 0) {
                Sighting sign = litter.litter().ascertainment().noticedBy().orElseThrow();
                for (int at = 0; at < signs.length; at++) {
                    signs[at] = looks.get(at).look().shows(sign.look());
                }
            }
        }

        Optional<LitterOutcomes> outcomes(int[] observed, int kits) {
            double ways = 1;
            for (int at = 1; at < looks.size(); at++) {
                ways = ways * (kits + at) / at;
            }
            if (Math.rint(ways) <= (couple ? MOST_OF_COUPLES : Math.min(MOST_OF_KINDREDS, MOST_ANIMALS / animals))) {
                return Optional.of(listed(observed, kits));
            }
            return couple
                            && ((double) kits * looks.size() * DRAWS <= 10.0 * MOST_STEPS)
                            && (litter.chances().length == 0)
                    ? Optional.of(drawn(observed, kits))
                    : Optional.empty();
        }

        private LitterOutcomes listed(int[] observed, int kits) {
            List<Double> logs = new ArrayList<>();
            list(new int[looks.size()], 0, kits, logs);
            double most = logs.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
            double sum = logs.stream().mapToDouble(log -> Math.exp(log - most)).sum();
            double whole = most + Math.log(sum);
            double[] normal = logs.stream().mapToDouble(log -> log - whole).toArray();
            return new LitterOutcomes(
                    log(observed) - whole,
                    normal,
                    Arrays.stream(normal).map(Math::exp).toArray(),
                    true);
        }

        private void list(int[] counts, int at, int left, List<Double> logs) {
            if (at == counts.length - 1) {
                counts[at] = left;
                double log = log(counts);
                if (log != Double.NEGATIVE_INFINITY) {
                    logs.add(log);
                }
                return;
            }
            for (int here = 0; here <= left; here++) {
                counts[at] = here;
                list(counts, at + 1, left - here, logs);
            }
            counts[at] = 0;
        }

        /** The logarithm of the chance of counts, in any order of kits, and of being recorded with them. */
        private double log(int[] counts) {
            List<Individual> kits = new ArrayList<>();
            double log = 0;
            int signed = 0;
            for (int at = 0; at < counts.length; at++) {
                signed += signs[at] ? counts[at] : 0;
                for (int k = 0; k < counts[at]; k++) {
                    kits.add(kit(at, kits.size()));
                    log += Math.log(kits.size()) - Math.log(k + 1.0);
                }
            }
            if (litter.chances().length > 0) {
                log += Math.log(litter.chances()[signed]);
            }
            return log == Double.NEGATIVE_INFINITY ? log : log + known.with(litter.litter(), kits);
        }

        private Individual kit(int look, int number) {
            Individual shown = examples.get(look);
            return couple ? shown : Noticed.renamed(shown, litter.born().id() + " " + number);
        }

        /** Litters drawn kit by kit, each given the kits before it. */
        private LitterOutcomes drawn(int[] observed, int kits) {
            double[] logs = new double[DRAWS];
            double[] shares = new double[looks.size()];
            for (int d = 0; d < DRAWS; d++) {
                int[] counts = new int[looks.size()];
                List<Individual> mates = new ArrayList<>();
                for (int k = 0; k < kits; k++) {
                    double most = Double.NEGATIVE_INFINITY;
                    for (int at = 0; at < shares.length; at++) {
                        mates.add(kit(at, k));
                        shares[at] = known.with(litter.litter(), mates);
                        mates.remove(k);
                        most = Math.max(most, shares[at]);
                    }
                    double sum = 0;
                    for (int at = 0; at < shares.length; at++) {
                        shares[at] = Math.exp(shares[at] - most);
                        sum += shares[at];
                    }
                    double left = random.nextDouble() * sum;
                    int at = 0;
                    while ((at < shares.length - 1) && ((left -= shares[at]) >= 0)) {
                        at++;
                    }
                    counts[at]++;
                    mates.add(kit(at, k));
                }
                logs[d] = log(counts);
            }
            double[] equal = new double[DRAWS];
            Arrays.fill(equal, 1.0 / DRAWS);
            return new LitterOutcomes(log(observed), logs, equal, false);
        }
    }
}
