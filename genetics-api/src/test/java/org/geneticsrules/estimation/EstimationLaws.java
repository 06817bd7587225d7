package org.geneticsrules.estimation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.From;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.statistics.Counts;
import org.geneticsrules.testing.Coats;
import org.geneticsrules.testing.Once;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;

/**
 * Estimates against likelihoods that are written down independently, young by young, and searched over a grid.
 *
 * <p>The twins here list what may happen: every litter, every set of probands, every gamete. They share nothing with the engines.
 */
@Once
class EstimationLaws {

    private static final int GRID = 400;

    // ---- segregation under ascertainment
    // -----------------------------------------------------------------------------

    /** A family as a twin knows it: how it came to be recorded, and what of it. */
    record Family(int siblings, int affected, int kind, int proband, int chance) {

        /** From what was drawn, one that goes with how it came to be recorded. */
        static Family of(int siblings, int affected, int kind, int proband, int chance) {
            int showing = Math.min(affected, siblings);
            if (kind > 0) {
                showing = Math.max(1, showing);
            }
            return new Family(siblings, showing, kind, 1 + proband % Math.max(1, showing), chance);
        }

        Ascertainment how() {
            Sighting sign = Sighting.of(Coats.LIGHT);
            return switch (kind) {
                case 0 -> Ascertainment.complete();
                case 1 -> new Ascertainment.AtLeastOne(sign);
                case 2 -> new Ascertainment.Probands(sign, Probability.of(chance, 4), OptionalInt.of(probands()));
                default -> new Ascertainment.Probands(sign, Probability.of(chance, 4), OptionalInt.empty());
            };
        }

        /** Where every affected one is noticed there are no others. */
        int probands() {
            return chance == 4 ? affected : proband;
        }

        /** The chance of it among all that would be recorded, by listing all litters, and in each all sets of those who come to notice. */
        double chance(double p) {
            double recorded = 0;
            double like = 0;
            double pi = chance / 4.0;
            for (int litter = 0; litter < 1 << siblings; litter++) {
                int showing = Integer.bitCount(litter);
                double born = Math.pow(p, showing) * Math.pow(1 - p, siblings - showing);
                for (int noticed = 0; noticed < 1 << siblings; noticed++) {
                    if ((noticed & ~litter) != 0 || (kind < 2 && noticed != 0)) {
                        continue;
                    }
                    int found = Integer.bitCount(noticed);
                    double each = kind < 2 ? 1 : Math.pow(pi, found) * Math.pow(1 - pi, showing - found);
                    boolean counts = kind == 0 || (kind == 1 ? showing > 0 : found > 0);
                    recorded += counts ? born * each : 0;
                    boolean same = showing == affected && (kind != 2 || found == probands());
                    like += counts && same ? born * each : 0;
                }
            }
            return like / recorded;
        }
    }

    @Provide
    Arbitrary<Family> families() {
        return Combinators.combine(
                        Arbitraries.integers().between(1, 5),
                        Arbitraries.integers().between(0, 3),
                        Arbitraries.integers().between(0, 3),
                        Arbitraries.integers().between(0, 4),
                        Arbitraries.integers().between(1, 4))
                .as(Family::of);
    }

    @Property(tries = 60)
    void shares_are_those_of_listed_litters(@ForAll @Size(min = 1, max = 5) List<@From("families") Family> families) {
        shares_are_those_of_listed_litters_of(families);
    }

    static void shares_are_those_of_listed_litters_of(List<Family> families) {
        SegregationRatio asked = SegregationRatio.asRecorded(families.stream()
                .map(one -> new RecordedFamily("family", one.siblings(), one.affected(), one.how()))
                .toList());
        DoubleUnaryOperator twin = p ->
                families.stream().mapToDouble(one -> Math.log(one.chance(p))).sum();
        held(twin, asked.estimate(0.95), 1, families.toString());
        Estimate found = asked.estimate(0.95);
        for (Probability stated : List.of(Probability.of(1, 10), Probability.of(1, 4), Probability.of(2, 3))) {
            double statistic = 2 * (found.logLikelihood() - twin.applyAsDouble(stated.toDouble()));
            assertEquals(Math.max(0, statistic), asked.test(stated).statistic(), 1e-8, families::toString);
        }
    }

    /** No point of a grid is likelier, the estimate is as likely as it says, and the interval ends where it should. */
    private static void held(DoubleUnaryOperator twin, Estimate found, double high, String what) {
        double best = Double.NEGATIVE_INFINITY;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 1; i < GRID; i++) {
            double log = twin.applyAsDouble(high * i / GRID);
            best = Math.max(best, log);
            least = Math.min(least, log);
        }
        assertEquals(best - least < 1e-9, found.flat(), what);
        assertTrue(found.logLikelihood() >= best - 1e-9, () -> found + " " + what);
        if (found.value() > 0 && found.value() < high) {
            assertEquals(twin.applyAsDouble(found.value()), found.logLikelihood(), 1e-8, what);
        }
        double limit = found.logLikelihood() - 3.841458820694124 / 2;
        if (!found.interval().lowIsBoundary()) {
            assertEquals(limit, twin.applyAsDouble(found.interval().low()), 1e-5, what);
        }
        if (!found.interval().highIsBoundary()) {
            assertEquals(limit, twin.applyAsDouble(found.interval().high()), 1e-5, what);
        }
    }

    // ---- which litters of a pedigree count
    // ---------------------------------------------------------------------------

    /**
     * Of all that two litters of a couple may show, those outcomes by which the couple counts have chances that sum to 1. That is so only if the chance of each is
     * divided by that of counting, whatever mixture of ways the litters came to be recorded in.
     */
    @Property(tries = 12)
    void outcomes_that_count_are_all_there_is(
            @ForAll @IntRange(min = 1, max = 3) int one,
            @ForAll @IntRange(min = 1, max = 3) int other,
            @ForAll @IntRange(max = 3) int first,
            @ForAll @IntRange(max = 3) int second,
            @ForAll boolean carriers) {
        outcomes_that_count_are_all_there_is_of(one, other, first, second, carriers);
    }

    static void outcomes_that_count_are_all_there_is_of(int one, int other, int first, int second, boolean carriers) {
        double sum = 0;
        for (int a = 0; a <= one; a++) {
            for (int b = 0; b <= other; b++) {
                for (Ascertainment how : ways(first, a)) {
                    for (Ascertainment too : ways(second, b)) {
                        Pedigree pedigree = couple(one, a, how, other, b, too);
                        RecordedFamilies found = RecordedFamilies.of(
                                pedigree, new RecordedFamilies.Which(Coats.LIGHT, 0, Set.of(), carriers));
                        sum += found.leftOut().isEmpty()
                                ? likelihood(found) * (found.families().size() > 1 ? 1 : apart(one, a, other, b))
                                : 0;
                    }
                }
            }
        }
        assertEquals(1, sum, 1e-9);
    }

    /** Which share of all litters of so many affected together has just so many in each. */
    private static double apart(int one, int a, int other, int b) {
        return (double) choose(one, a) * choose(other, b) / choose(one + other, a + b);
    }

    private static int choose(int n, int k) {
        return k == 0 || k == n ? 1 : choose(n - 1, k - 1) + choose(n - 1, k);
    }

    /** The chance at 3/10. */
    private static double likelihood(RecordedFamilies found) {
        SegregationRatio asked = SegregationRatio.asRecorded(found.families());
        double best = asked.estimate(0.5).logLikelihood();
        return Math.exp(best - asked.test(Probability.of(3, 10)).statistic() / 2);
    }

    /** How a litter of so many affected may have come to be recorded, of one kind: each number of probands is an outcome. */
    private static List<Ascertainment> ways(int kind, int affected) {
        Sighting sign = Sighting.of(Coats.LIGHT);
        return switch (kind) {
            case 0 -> List.of(Ascertainment.complete());
            case 1 -> List.of(Ascertainment.unknown());
            case 2 -> affected == 0 ? List.of() : List.of(new Ascertainment.AtLeastOne(sign));
            default -> {
                List<Ascertainment> all = new ArrayList<>();
                for (int probands = 1; probands <= affected; probands++) {
                    all.add(new Ascertainment.Probands(sign, Probability.of(1, 3), OptionalInt.of(probands)));
                }
                yield all;
            }
        };
    }

    private static Pedigree couple(int one, int a, Ascertainment how, int other, int b, Ascertainment too) {
        PedigreeBuilder builder = Pedigree.builder("couple", "1")
                .add(Coats.seen("sire", Coats.DARK).with(Sex.MALE))
                .add(Coats.seen("dam", Coats.DARK).with(Sex.FEMALE));
        Coats.litter(builder, "first", "", one - a, a, how);
        return Coats.litter(builder, "second", "", other - b, b, too).build();
    }

    // ---- recombination
    // ------------------------------------------------------------------------------------------------

    /** Each gamete of each parent is listed, and what the young of each two shows. */
    @Property(tries = 40)
    void intercrosses_are_those_of_listed_gametes(
            @ForAll @IntRange(max = 30) int both,
            @ForAll @IntRange(max = 12) int first,
            @ForAll @IntRange(max = 12) int second,
            @ForAll @IntRange(min = 1, max = 12) int none,
            @ForAll boolean coupling) {
        int[] counts = {both, first, second, none};
        DoubleUnaryOperator twin = r -> {
            double[] law = new double[4];
            for (int egg = 0; egg < 4; egg++) {
                for (int sperm = 0; sperm < 4; sperm++) {
                    boolean a = (egg & 1) + (sperm & 1) > 0;
                    boolean b = (egg & 2) + (sperm & 2) > 0;
                    law[a ? b ? 0 : 1 : b ? 2 : 3] += gamete(egg, r, coupling) * gamete(sperm, r, coupling);
                }
            }
            double log = 0;
            for (int c = 0; c < 4; c++) {
                log += counts[c] == 0 ? 0 : counts[c] * Math.log(law[c]);
            }
            return log;
        };
        IntercrossLinkage cross = new IntercrossLinkage(
                Counts.of(both, first, second, none),
                coupling ? IntercrossLinkage.Phase.COUPLING : IntercrossLinkage.Phase.REPULSION);
        held(twin, cross.estimate(0.95), 0.5, cross.toString());
    }

    /** A gamete has the first dominant allele in bit 1 and the second in bit 2; of parents in coupling both or neither are parental. */
    private static double gamete(int alleles, double r, boolean coupling) {
        boolean together = alleles == 0 || alleles == 3;
        return (together == coupling ? 1 - r : r) / 2;
    }

    /** A parent is in each phase with 1/2 where that is not known, and each of the young gets one of its gametes. */
    @Property(tries = 40)
    void families_are_those_of_listed_phases(@ForAll @Size(min = 1, max = 4) List<@IntRange(max = 48) Integer> drawn) {
        List<LinkageFamily> families = new ArrayList<>();
        List<boolean[]> young = new ArrayList<>();
        for (int one : drawn) {
            int recombinants = one % 7;
            int others = one / 7;
            families.add(new LinkageFamily("family " + families.size(), recombinants, others, one % 2 == 0));
            boolean[] each = new boolean[recombinants + others];
            Arrays.fill(each, 0, recombinants, true);
            young.add(each);
        }
        DoubleUnaryOperator twin = r -> {
            double log = 0;
            for (int f = 0; f < families.size(); f++) {
                double first = 1;
                double second = 1;
                for (boolean recombinant : young.get(f)) {
                    first *= recombinant ? r : 1 - r;
                    second *= recombinant ? 1 - r : r;
                }
                log += Math.log(families.get(f).phaseKnown() ? first : (first + second) / 2);
            }
            return log;
        };
        held(twin, LodScores.of(families).estimate(0.95), 0.5, families.toString());
    }

    // ---- allele frequencies
    // -------------------------------------------------------------------------------------------

    private static final Locus THREE = Model.builder(
                    "three",
                    "1",
                    Catalogue.builder("three.traits", "1").trait("coat", "any").build())
            .locus(
                    "T",
                    one -> one.alleles("a", "b", "c")
                            .shows("a", "1")
                            .shows("a/b", "2")
                            .shows("a/c", "3")
                            .shows("b", "4")
                            .shows("b/c", "5")
                            .shows("c", "6"))
            .build()
            .locus("T");

    /**
     * What looks and tests leave where dominance is by some order: one genotype; a dominant homozygote and one, or both, of the heterozygotes with it. By the bits of
     * the genotypes a/a, a/b, a/c, b/b, b/c, c/c.
     */
    private static final int[] LEFT = {1, 2, 4, 8, 16, 32, 3, 5, 10, 24, 36, 48, 7, 26, 52};

    /** Whatever sets of genotypes animals are known by, no frequencies of a grid make them likelier. */
    @Property(tries = 40)
    void no_frequencies_of_a_grid_are_likelier(
            @ForAll @Size(min = 1, max = 5)
                    Map<@IntRange(max = 14) Integer, @IntRange(min = 1, max = 20) Integer> drawn) {
        Map<Integer, Integer> animals = new TreeMap<>();
        drawn.forEach((set, number) -> animals.put(LEFT[set], number));
        Map<Set<AllelePair>, Long> counts = new LinkedHashMap<>();
        animals.forEach((set, number) -> counts.put(pairs(set), (long) number));
        GeneCounting found = GeneCounting.ofGenotypes(THREE, counts);
        List<Double> p = List.copyOf(found.frequencies().values());
        assertEquals(1, p.stream().mapToDouble(Double::doubleValue).sum(), 1e-9);
        double here = twin(animals, p.get(0), p.get(1), p.get(2));
        double best = Double.NEGATIVE_INFINITY;
        for (int a = 0; a <= 40; a++) {
            for (int b = 0; a + b <= 40; b++) {
                best = Math.max(best, twin(animals, a / 40.0, b / 40.0, (40 - a - b) / 40.0));
            }
        }
        double highest = best;
        assertTrue(here >= highest - 1e-6, () -> animals + " " + p + " " + here + " " + highest);
        Estimate one = found.estimate("a", 0.95);
        assertEquals(here, one.logLikelihood(), 1e-6, () -> animals + " " + one);
    }

    private static Set<AllelePair> pairs(int set) {
        Set<AllelePair> found = new LinkedHashSet<>();
        for (int i = 0; i < 6; i++) {
            if ((set >> i & 1) > 0) {
                found.add(THREE.pairs().get(i));
            }
        }
        return found;
    }

    /** Both alleles of every animal are listed, in order. */
    private static double twin(Map<Integer, Integer> animals, double a, double b, double c) {
        double[] p = {a, b, c};
        double log = 0;
        for (Map.Entry<Integer, Integer> one : animals.entrySet()) {
            double chance = 0;
            for (int x = 0; x < 3; x++) {
                for (int y = 0; y < 3; y++) {
                    AllelePair pair = THREE.of(new int[] {Math.min(x, y), Math.max(x, y)});
                    int at = THREE.pairs().indexOf(pair);
                    chance += (one.getKey() >> at & 1) > 0 ? p[x] * p[y] : 0;
                }
            }
            log += one.getValue() * Math.log(chance);
        }
        return log;
    }
}
