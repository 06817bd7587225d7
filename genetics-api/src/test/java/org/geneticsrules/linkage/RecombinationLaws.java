package org.geneticsrules.linkage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Sex;

/** Laws of how linked loci are separated. */
class RecombinationLaws {

    private static final Probability HALF = Probability.of(1, 2);

    @Provide
    Arbitrary<LinkageGroup> byFractions() {
        Arbitrary<Probability> fraction = Arbitraries.integers().between(0, 60).map(part -> Probability.of(part, 120));
        return Arbitraries.integers()
                .between(0, 6)
                .flatMap(intervals -> Combinators.combine(
                                fraction.list().ofSize(intervals),
                                fraction.list().ofSize(intervals))
                        .as((female, male) -> LinkageGroup.of(
                                "g",
                                Transmission.AUTOSOMAL,
                                loci(intervals + 1),
                                new Recombination.Fractions(female, male))));
    }

    /** A table that says the same as fractions, pattern by pattern. */
    private static LinkageGroup tabled(LinkageGroup group, Sex sex) {
        Map<String, Probability> table = new LinkedHashMap<>();
        group.patterns(sex).forEach((set, chance) -> {
            List<String> names = new ArrayList<>();
            for (int i = 0; i < group.intervals().size(); i++) {
                if ((set >> i & 1) == 1) {
                    names.add(group.intervals().get(i));
                }
            }
            table.put(names.isEmpty() ? "none" : String.join(" ", names), chance);
        });
        return LinkageGroup.of(group.id(), group.transmission(), group.loci(), new Recombination.Crossovers(table));
    }

    private static List<String> loci(int count) {
        List<String> loci = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            loci.add("locus " + i);
        }
        return loci;
    }

    /** The chance that an odd number of some neighbouring intervals recombine, which is when the loci at their ends are separated. */
    private static Probability separated(Map<Integer, Probability> patterns, int from, int to) {
        int between = (1 << to) - (1 << from);
        Probability chance = Probability.ZERO;
        for (Map.Entry<Integer, Probability> pattern : patterns.entrySet()) {
            if (Integer.bitCount(pattern.getKey() & between) % 2 == 1) {
                chance = chance.plus(pattern.getValue());
            }
        }
        return chance;
    }

    static void patternsSumToOne(LinkageGroup group, Sex sex) {
        Probability sum = Probability.ZERO;
        for (Probability chance : group.patterns(sex).values()) {
            sum = sum.plus(chance);
        }
        assertEquals(Probability.ONE, sum);
        assertEquals(1 << group.intervals().size(), group.patterns(sex).size());
    }

    static void theMarginalOfAnIntervalIsItsFraction(LinkageGroup group, Sex sex) {
        List<Probability> fractions = ((Recombination.Fractions) group.recombination()).of(sex);
        for (int i = 0; i < fractions.size(); i++) {
            assertEquals(fractions.get(i), separated(group.patterns(sex), i, i + 1));
        }
    }

    /** Without interference a locus between may be left out: the fractions on both sides of it compose. */
    static void skippingLociComposesFractions(LinkageGroup group, Sex sex) {
        List<Probability> fractions = ((Recombination.Fractions) group.recombination()).of(sex);
        Map<Integer, Probability> patterns = group.patterns(sex);
        for (int from = 0; from < fractions.size(); from++) {
            Probability composed = Probability.ZERO;
            for (int to = from + 1; to <= fractions.size(); to++) {
                Probability next = fractions.get(to - 1);
                composed = MapFunction.HALDANE.across(composed, next);
                assertEquals(composed, separated(patterns, from, to));
                assertTrue(composed.compareTo(HALF) <= 0);
            }
        }
    }

    static void aTableSaysWhatItsPatternsSay(LinkageGroup group, Sex sex) {
        LinkageGroup tabled = tabled(group, sex);
        assertEquals(group.patterns(sex), tabled.patterns(Sex.FEMALE));
        assertEquals(tabled.patterns(Sex.FEMALE), tabled.patterns(Sex.MALE));
    }

    /** Reading the map from the other end changes the names of intervals only. */
    static void theOtherEndOfTheMapIsAsGood(LinkageGroup group, Sex sex) {
        Recombination.Fractions fractions = (Recombination.Fractions) group.recombination();
        LinkageGroup turned = LinkageGroup.of(
                group.id(),
                group.transmission(),
                turned(group.loci()),
                new Recombination.Fractions(turned(fractions.female()), turned(fractions.male())));
        int intervals = group.intervals().size();
        Map<Integer, Probability> patterns = turned.patterns(sex);
        group.patterns(sex).forEach((set, chance) -> {
            int mirrored = 0;
            for (int i = 0; i < intervals; i++) {
                mirrored |= (set >> i & 1) << (intervals - 1 - i);
            }
            assertEquals(chance, patterns.get(mirrored));
        });
    }

    private static <T> List<T> turned(List<T> list) {
        List<T> turned = new ArrayList<>();
        list.forEach(item -> turned.add(0, item));
        return turned;
    }

    @Property(tries = 300)
    void patterns(@ForAll("byFractions") LinkageGroup group, @ForAll Sex sex) {
        patternsSumToOne(group, sex);
        theMarginalOfAnIntervalIsItsFraction(group, sex);
        skippingLociComposesFractions(group, sex);
    }

    @Property(tries = 300)
    void tables(@ForAll("byFractions") LinkageGroup group, @ForAll Sex sex) {
        aTableSaysWhatItsPatternsSay(group, sex);
        theOtherEndOfTheMapIsAsGood(group, sex);
    }
}
