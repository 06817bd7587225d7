package org.geneticsrules.expression;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.probability.Approximation;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Chances that can be written down without a diagram: a chain of loci each of which hides all that follow, beside loci that nothing
 * hides. The models are invented.
 */
class FlowTest {

    /** Loci L0 to Ln: the first that is on decides the hue. Loci M0 to Mk decide a mark each. */
    private static ModelBuilder model(int chain, int marks) {
        Catalogue.Builder catalogue = Catalogue.builder("flow.traits", "1");
        String[] hues = new String[chain + 1];
        for (int i = 0; i <= chain; i++) {
            hues[i] = "hue " + i;
        }
        catalogue.trait("hue", hues);
        for (int i = 0; i < marks; i++) {
            catalogue.trait("mark " + i, "marked", "plain");
        }
        ModelBuilder model = Model.builder("flow", "1", catalogue.build());
        for (int i = 0; i < chain; i++) {
            locus(model, "L" + i);
        }
        for (int i = 0; i < marks; i++) {
            locus(model, "M" + i);
        }
        model.trait("hue", rule -> {
            Condition before = Condition.always();
            for (int i = 0; i < chain; i++) {
                rule.when(before.and("L" + i, "on"), "hue " + i);
                before = before.and("L" + i, "off");
            }
            rule.when(before, "hue " + chain);
        });
        for (int i = 0; i < marks; i++) {
            Condition on = Condition.where("M" + i, "on");
            model.trait("mark " + i, rule -> rule.when(on, "marked").otherwise("plain"));
        }
        return model;
    }

    private static void locus(ModelBuilder model, String name) {
        model.locus(
                name,
                locus -> locus.alleles(name, "x" + name)
                        .dominant(name, "x" + name)
                        .shows(name, "on")
                        .shows("x" + name, "off"));
    }

    /** On and off of each locus, at random up to a number of bits; one locus in five is certain. */
    private static Map<String, long[]> shares(Diagram<?> diagram, int bits, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Map<String, long[]> shares = new LinkedHashMap<>();
        for (String locus : diagram.loci()) {
            long on = random.nextLong(1L << bits);
            long off = random.nextLong(1L << bits) + 1;
            shares.put(locus, random.nextInt(5) == 0 ? new long[] {0, off} : new long[] {on + 1, off});
        }
        return shares;
    }

    private static Probability chance(long[] onOff, boolean on) {
        BigInteger total = BigInteger.valueOf(onOff[0]).add(BigInteger.valueOf(onOff[1]));
        return Probability.of(BigInteger.valueOf(on ? onOff[0] : onOff[1]), total);
    }

    private static Distribution<Phenotype> byHand(int chain, int marks, Map<String, long[]> shares) {
        Map<String, Probability> hues = new LinkedHashMap<>();
        Probability left = Probability.ONE;
        for (int i = 0; i < chain; i++) {
            long[] here = shares.get("L" + i);
            hues.put("hue: hue " + i, left.times(chance(here, true)));
            left = left.times(chance(here, false));
        }
        hues.put("hue: hue " + chain, left);
        Distribution<String> all = Distribution.of(hues);
        for (int i = 0; i < marks; i++) {
            Map<String, Probability> mark = new LinkedHashMap<>();
            mark.put(", mark " + i + ": marked", chance(shares.get("M" + i), true));
            mark.put(", mark " + i + ": plain", chance(shares.get("M" + i), false));
            all = all.product(Distribution.of(mark), String::concat);
        }
        return all.map(Phenotype::parse);
    }

    /** Totals that fit one digit of 64 bits, two, and more; with and without loci that nothing hides. */
    @ParameterizedTest
    @CsvSource({
        "1, 0, 2",
        "4, 0, 3",
        "12, 0, 4",
        "12, 0, 20",
        "12, 0, 40",
        "12, 0, 61",
        "6, 2, 2",
        "6, 2, 15",
        "6, 2, 30",
        "3, 4, 5",
        "3, 4, 60",
        "2, 1, 62",
        "0, 3, 2",
        "0, 3, 60"
    })
    void weights_flow_to_the_chances_that_are_written_down(int chain, int marks, int bits) {
        Diagram<Phenotype> diagram =
                CompiledModel.of(model(chain, marks).build()).diagram();
        for (long seed = 0; seed < 2; seed++) {
            Map<String, long[]> shares = shares(diagram, bits, seed);
            Distribution<Phenotype> expected = byHand(chain, marks, shares);
            LocusWeights[] weights = diagram.loci().stream()
                    .map(locus -> LocusWeights.of(shares.get(locus)))
                    .toArray(LocusWeights[]::new);
            assertEquals(expected, diagram.distribution(weights));
            assertEquals(expected, diagram.distribution(diagram.weigh(law(shares))));
            for (Approximation<Phenotype> close :
                    List.of(diagram.approximate(weights), diagram.approximate(law(shares)))) {
                for (Phenotype outcome : diagram.outcomes()) {
                    Probability exact = expected.probability(outcome);
                    assertEquals(!exact.isZero(), close.isPossible(outcome));
                    assertEquals(exact.toDouble(), close.chance(outcome), 1e-13 * exact.toDouble());
                }
            }
        }
    }

    private static KitLaw law(Map<String, long[]> shares) {
        List<Chain> chains = new ArrayList<>();
        shares.forEach((locus, onOff) -> chains.add(
                Chain.single(locus, new BigInteger[] {BigInteger.valueOf(onOff[0]), BigInteger.valueOf(onOff[1])})));
        return KitLaw.of(Sex.FEMALE, chains);
    }

    /** Linked loci are followed in map order whatever stands between them. */
    @Test
    void linked_loci_that_decide_together() {
        Model model = model(3, 0)
                .group(LinkageGroup.autosomal("one", List.of("L0", "L2"), List.of(Probability.of(1, 10))))
                .build();
        Diagram<Phenotype> diagram = CompiledModel.of(model).diagram();
        BigInteger[][] shown = {ChainTest.row(1, 0), ChainTest.row(0, 1)};
        Chain linked = Chain.of(
                List.of("L0", "L2"),
                ChainTest.row(1, 1),
                new BigInteger[][][] {{ChainTest.row(9, 1), ChainTest.row(1, 9)}},
                new BigInteger[][][] {shown, shown});
        Weights weights =
                diagram.weigh(KitLaw.of(Sex.FEMALE, List.of(linked, Chain.single("L1", ChainTest.row(1, 3)))));
        // L0 is on in 1/2; off and L1 on 1/8; of 3/8 left L2 is on with 1/10
        assertEquals(
                Distribution.of(Map.of(
                        Phenotype.of("hue", "hue 0"), Probability.of(1, 2),
                        Phenotype.of("hue", "hue 1"), Probability.of(1, 8),
                        Phenotype.of("hue", "hue 2"), Probability.of(3, 80),
                        Phenotype.of("hue", "hue 3"), Probability.of(27, 80))),
                diagram.distribution(weights));
        KitLaw apart = KitLaw.of(
                Sex.FEMALE,
                List.of(
                        Chain.single("L0", ChainTest.row(1, 1)),
                        Chain.single("L1", ChainTest.row(1, 3)),
                        Chain.single("L2", ChainTest.row(1, 1))));
        assertEquals(
                Probability.of(3, 16),
                diagram.distribution(diagram.weigh(apart)).probability(Phenotype.of("hue", "hue 2")));
    }

    @Test
    void linked_loci_come_in_map_order() {
        Diagram<Phenotype> diagram = CompiledModel.of(model(3, 0).build()).diagram();
        Chain backwards = ChainTest.gametesOf("L2", "L1", "L0");
        IllegalArgumentException refused = assertThrows(
                IllegalArgumentException.class, () -> diagram.weigh(KitLaw.of(Sex.FEMALE, List.of(backwards))));
        assertTrue(
                refused.getMessage().contains("are tested together, but chances are given for [L2, L1, L0]"),
                refused.getMessage());
        assertThrows(
                IllegalArgumentException.class,
                () -> diagram.weigh(KitLaw.of(Sex.FEMALE, List.of(Chain.single("L0", ChainTest.row(1, 1))))));
    }

    /** Where L0 is on L2 decides, else L1: so one way passes over the locus in the middle of its chromosome. */
    @Test
    void a_linked_locus_between_two_others_is_passed_over() {
        Catalogue catalogue = Catalogue.builder("over.traits", "1")
                .trait("hue", "one", "two", "three", "four")
                .build();
        ModelBuilder model = Model.builder("over", "1", catalogue);
        for (String locus : List.of("L0", "L1", "L2")) {
            locus(model, locus);
        }
        Condition on = Condition.where("L0", "on");
        Condition off = Condition.where("L0", "off");
        model.trait(
                        "hue",
                        rule -> rule.when(on.and("L2", "on"), "one")
                                .when(on.and("L2", "off"), "two")
                                .when(off.and("L1", "on"), "three")
                                .when(off.and("L1", "off"), "four"))
                .group(LinkageGroup.autosomal(
                        "one", List.of("L0", "L1", "L2"), List.of(Probability.of(1, 10), Probability.of(1, 4))));
        Diagram<Phenotype> diagram = CompiledModel.of(model.build()).diagram();
        KitLaw law = KitLaw.of(Sex.FEMALE, List.of(ChainTest.gametesOf("L0", "L1", "L2")));
        // L0 and L2 are 3/10 apart, L0 and L1 1/10
        Distribution<Phenotype> expected = Distribution.ofWeights(Map.of(
                Phenotype.of("hue", "one"), 7,
                Phenotype.of("hue", "two"), 3,
                Phenotype.of("hue", "three"), 1,
                Phenotype.of("hue", "four"), 9));
        assertEquals(expected, diagram.distribution(diagram.weigh(law)));
        assertClose(expected, diagram.approximate(law));
        BigInteger stay = BigInteger.TEN.pow(200).subtract(BigInteger.ONE);
        BigInteger[][] seldom = {{stay, BigInteger.ONE}, {BigInteger.ONE, stay}};
        BigInteger[][] shown = {ChainTest.row(1, 0), ChainTest.row(0, 1)};
        Chain tight = Chain.of(
                List.of("L0", "L1", "L2"),
                ChainTest.row(1, 1),
                new BigInteger[][][] {seldom, seldom},
                new BigInteger[][][] {shown, shown, shown});
        // a change in either interval, of which there are two
        assertEquals(
                -200 * Math.log(10),
                diagram.approximate(KitLaw.of(Sex.FEMALE, List.of(tight))).log(Phenotype.of("hue", "two")),
                1e-10);
    }

    private static void assertClose(Distribution<Phenotype> exact, Approximation<Phenotype> close) {
        assertTrue(close.relativeError() > 0 && close.relativeError() < 1e-13, close::toString);
        exact.asMap().forEach((outcome, chance) -> {
            double error = Math.abs(close.chance(outcome) / chance.toDouble() - 1);
            assertTrue(error <= close.relativeError() + 0x1p-52, () -> outcome + " errs by " + error);
        });
    }

    /** Three marks of linked loci, each of which is on on the first strand: one half times what each interval does, by hand. */
    @ParameterizedTest
    @CsvSource({"1", "50", "100", "160", "300"})
    void however_seldom_strands_are_changed_it_is_possible(int zeros) {
        Model model = model(0, 3)
                .group(LinkageGroup.autosomal(
                        "one", List.of("M0", "M1", "M2"), List.of(Probability.of(1, 4), Probability.of(1, 4))))
                .build();
        Diagram<Phenotype> diagram = CompiledModel.of(model).diagram();
        BigInteger stay = BigInteger.TEN.pow(zeros).subtract(BigInteger.ONE);
        BigInteger[][] step = {{stay, BigInteger.ONE}, {BigInteger.ONE, stay}};
        BigInteger[][] shown = {ChainTest.row(1, 0), ChainTest.row(0, 1)};
        Chain chain = Chain.of(
                List.of("M0", "M1", "M2"),
                ChainTest.row(1, 1),
                new BigInteger[][][] {step, step},
                new BigInteger[][][] {shown, shown, shown});
        KitLaw law = KitLaw.of(Sex.MALE, List.of(chain));
        Approximation<Phenotype> close = diagram.approximate(law);
        Distribution<Phenotype> exact = diagram.distribution(diagram.weigh(law));
        double change = -zeros * Math.log(10);
        double kept = Math.log1p(-Math.pow(10, -zeros));
        for (Phenotype outcome : diagram.outcomes()) {
            List<Boolean> marks = List.of(
                    outcome.state("mark 0").equals(Optional.of("marked")),
                    outcome.state("mark 1").equals(Optional.of("marked")),
                    outcome.state("mark 2").equals(Optional.of("marked")));
            double log = -Math.log(2)
                    + (marks.get(0).equals(marks.get(1)) ? kept : change)
                    + (marks.get(1).equals(marks.get(2)) ? kept : change);
            assertTrue(close.isPossible(outcome));
            assertEquals(log, close.log(outcome), 1e-12 * (1 + Math.abs(log)), () -> outcome + " of " + zeros);
            BigInteger ways = (marks.get(0).equals(marks.get(1)) ? stay : BigInteger.ONE)
                    .multiply(marks.get(1).equals(marks.get(2)) ? stay : BigInteger.ONE);
            assertEquals(Probability.of(ways, BigInteger.TEN.pow(2 * zeros).shiftLeft(1)), exact.probability(outcome));
        }
    }

    /** Twenty loci in a row, each of which is off in one of 2^62 only. */
    @Test
    void far_below_what_floating_point_holds_it_is_possible() {
        Diagram<Phenotype> diagram = CompiledModel.of(model(20, 0).build()).diagram();
        long on = (1L << 62) - 1;
        LocusWeights[] weights = new LocusWeights[20];
        Arrays.fill(weights, LocusWeights.of(on, 1));
        Approximation<Phenotype> close = diagram.approximate(weights);
        for (int i = 0; i < 20; i++) {
            Phenotype hue = Phenotype.of("hue", "hue " + i);
            assertTrue(close.isPossible(hue), hue::toString);
            assertEquals(-62.0 * i * Math.log(2), close.log(hue), 1e-9, hue::toString);
        }
        assertEquals(-62.0 * 20 * Math.log(2), close.log(Phenotype.of("hue", "hue 20")), 1e-9);
        Distribution<Phenotype> exact = diagram.distribution(weights);
        assertEquals(
                Probability.of(BigInteger.ONE, BigInteger.TWO.pow(62 * 20)),
                exact.probability(Phenotype.of("hue", "hue 20")));
    }

    @Test
    void the_bound_on_the_error_grows_with_the_number_of_loci() {
        double before = 0;
        for (int chain : new int[] {1, 4, 12}) {
            Diagram<Phenotype> diagram =
                    CompiledModel.of(model(chain, 1).build()).diagram();
            Map<String, long[]> shares = shares(diagram, 20, chain);
            LocusWeights[] weights = diagram.loci().stream()
                    .map(locus -> LocusWeights.of(shares.get(locus)))
                    .toArray(LocusWeights[]::new);
            assertClose(byHand(chain, 1, shares), diagram.approximate(weights));
            assertClose(byHand(chain, 1, shares), diagram.approximate(law(shares)));
            double now = diagram.approximate(weights).relativeError();
            assertTrue(now > before, () -> chain + " loci");
            assertTrue(diagram.approximate(law(shares)).relativeError() > before, () -> chain + " loci");
            before = now;
        }
    }

    /** Where A is off no mark is seen, so that most of the diagram ends at its first test; else the marks are independent. */
    @ParameterizedTest
    @CsvSource({"2, 2", "5, 2", "5, 9", "6, 30"})
    void a_locus_that_hides_all_the_others(int marks, int bits) {
        Catalogue.Builder catalogue = Catalogue.builder("hidden.traits", "1");
        for (int i = 0; i < marks; i++) {
            catalogue.trait("mark " + i, "marked", "plain");
        }
        ModelBuilder builder = Model.builder("hidden", "1", catalogue.build());
        locus(builder, "A");
        Mask mask = Mask.of("white", Condition.where("A", "off"));
        for (int i = 0; i < marks; i++) {
            locus(builder, "M" + i);
            Condition on = Condition.where("M" + i, "on");
            builder.trait("mark " + i, rule -> rule.when(on, "marked").otherwise("plain"));
            mask = mask.covering("mark " + i, "plain");
        }
        Diagram<Phenotype> diagram =
                CompiledModel.of(builder.mask(mask).build()).diagram();
        for (long seed = 0; seed < 3; seed++) {
            Map<String, long[]> shares = shares(diagram, bits, seed);
            Map<String, Probability> expected = new LinkedHashMap<>();
            for (int set = 0; set < 1 << marks; set++) {
                Probability chance = chance(shares.get("A"), true);
                List<String> look = new ArrayList<>();
                for (int i = 0; i < marks; i++) {
                    boolean on = (set >> i & 1) == 1;
                    chance = chance.times(chance(shares.get("M" + i), on));
                    look.add("mark " + i + (on ? ": marked" : ": plain"));
                }
                expected.put(
                        String.join(", ", look),
                        chance.plus(set == 0 ? chance(shares.get("A"), false) : Probability.ZERO));
            }
            Distribution<Phenotype> byHand = Distribution.of(expected).map(Phenotype::parse);
            LocusWeights[] weights = diagram.loci().stream()
                    .map(locus -> LocusWeights.of(shares.get(locus)))
                    .toArray(LocusWeights[]::new);
            assertEquals(byHand, diagram.distribution(weights));
            assertEquals(byHand, diagram.distribution(diagram.weigh(law(shares))));
            assertClose(byHand, diagram.approximate(weights));
        }
    }

    /** Whether an odd number of five loci is on: each level has two tests, and what arrives at them is added up by hand. */
    @ParameterizedTest
    @ValueSource(ints = {2, 14, 30, 45, 61})
    void an_odd_number_of_loci(int bits) {
        Catalogue catalogue = Catalogue.builder("odd.traits", "1")
                .trait("number", "odd", "even")
                .build();
        ModelBuilder builder = Model.builder("odd", "1", catalogue);
        for (int i = 0; i < 5; i++) {
            locus(builder, "L" + i);
        }
        builder.trait("number", rule -> {
            for (int set = 0; set < 32; set++) {
                if (Integer.bitCount(set) % 2 == 1) {
                    Condition when = Condition.always();
                    for (int i = 0; i < 5; i++) {
                        when = when.and("L" + i, (set >> i & 1) == 1 ? "on" : "off");
                    }
                    rule.when("set " + set, when, new CaseState.Certain("odd"));
                }
            }
            rule.otherwise("even");
        });
        Diagram<Phenotype> diagram = CompiledModel.of(builder.build()).diagram();
        for (long seed = 0; seed < 3; seed++) {
            Map<String, long[]> shares = shares(diagram, bits, seed);
            Probability odd = Probability.ZERO;
            for (long[] here : shares.values()) {
                odd = odd.times(chance(here, false)).plus(odd.complement().times(chance(here, true)));
            }
            same(
                    Distribution.of(Map.of(
                            Phenotype.of("number", "odd"), odd, Phenotype.of("number", "even"), odd.complement())),
                    diagram,
                    shares);
        }
    }

    private static void same(Distribution<Phenotype> expected, Diagram<Phenotype> diagram, Map<String, long[]> shares) {
        LocusWeights[] weights = diagram.loci().stream()
                .map(locus -> LocusWeights.of(shares.get(locus)))
                .toArray(LocusWeights[]::new);
        assertEquals(expected, diagram.distribution(weights));
        assertEquals(expected, diagram.distribution(diagram.weigh(law(shares))));
        assertClose(expected, diagram.approximate(weights));
        assertClose(expected, diagram.approximate(law(shares)));
    }

    /** Of two tests on one level one ends there, and the other goes on: where L0 and L1 are off and on, L2 decides between one and four. */
    @ParameterizedTest
    @ValueSource(ints = {2, 20, 25, 40, 61})
    void tests_of_one_level_that_lead_to_different_levels(int bits) {
        Catalogue catalogue = Catalogue.builder("levels.traits", "1")
                .trait("hue", "one", "two", "three", "four", "five")
                .build();
        ModelBuilder builder = Model.builder("levels", "1", catalogue);
        for (String locus : List.of("L0", "L1", "L2")) {
            locus(builder, locus);
        }
        Condition on = Condition.where("L0", "on");
        Condition off = Condition.where("L0", "off");
        builder.trait(
                "hue",
                rule -> rule.when(on.and("L1", "on"), "one")
                        .when(on.and("L1", "off"), "two")
                        .when("again", off.and("L1", "on").and("L2", "on"), new CaseState.Certain("one"))
                        .when(off.and("L1", "on").and("L2", "off"), "four")
                        .when(off.and("L1", "off"), "five"));
        Diagram<Phenotype> diagram = CompiledModel.of(builder.build()).diagram();
        for (long seed = 0; seed < 3; seed++) {
            Map<String, long[]> shares = shares(diagram, bits, seed);
            Probability first = chance(shares.get("L0"), true);
            Probability second = chance(shares.get("L1"), true);
            Probability third = chance(shares.get("L2"), true);
            Probability goesOn = first.complement().times(second);
            Map<Phenotype, Probability> expected = new LinkedHashMap<>();
            expected.put(Phenotype.of("hue", "one"), first.times(second).plus(goesOn.times(third)));
            expected.put(Phenotype.of("hue", "two"), first.times(second.complement()));
            expected.put(Phenotype.of("hue", "four"), goesOn.times(third.complement()));
            expected.put(Phenotype.of("hue", "five"), first.complement().times(second.complement()));
            same(Distribution.of(expected), diagram, shares);
        }
    }

    /** Two ways to one look, both far below what floating point holds: what is added is kept, whichever of them is greater. */
    @ParameterizedTest
    @CsvSource({"3, 1, 1, 1", "1, 7, 6, 1", "1, 1, 1, 0", "1, 1023, 1023, 0"})
    void ways_of_very_small_chances_add_up(long on, long off, long thirdOn, long thirdOff) {
        Catalogue catalogue = Catalogue.builder("rare.traits", "1")
                .trait("look", "rare", "usual")
                .build();
        ModelBuilder builder = Model.builder("rare", "1", catalogue);
        for (String locus : List.of("L0", "L1", "L2")) {
            locus(builder, locus);
        }
        Condition seldom = Condition.where("L0", "off");
        builder.trait(
                "look",
                rule -> rule.when("one", seldom.and("L1", "on"), new CaseState.Certain("rare"))
                        .when("two", seldom.and("L1", "off").and("L2", "on"), new CaseState.Certain("rare"))
                        .otherwise("usual"));
        Diagram<Phenotype> diagram = CompiledModel.of(builder.build()).diagram();
        BigInteger whole = BigInteger.TEN.pow(400);
        KitLaw law = KitLaw.of(
                Sex.FEMALE,
                List.of(
                        Chain.single("L0", new BigInteger[] {whole.subtract(BigInteger.ONE), BigInteger.ONE}),
                        Chain.single("L1", ChainTest.row(on, off)),
                        Chain.single("L2", ChainTest.row(thirdOn, thirdOff))));
        double second = (double) on / (on + off);
        double third = (double) thirdOn / (thirdOn + thirdOff);
        double expected = -400 * Math.log(10) + Math.log(second + (1 - second) * third);
        Approximation<Phenotype> close = diagram.approximate(law);
        assertEquals(expected, close.log(Phenotype.of("look", "rare")), 1e-10);
    }

    /** One way leads from the first of three linked loci to the last, another through the middle: of 80, by hand. */
    @Test
    void two_ways_to_the_last_of_three_linked_loci() {
        Catalogue catalogue = Catalogue.builder("ways.traits", "1")
                .trait("hue", "one", "two", "three", "four", "five", "six")
                .build();
        ModelBuilder builder = Model.builder("ways", "1", catalogue);
        for (String locus : List.of("L0", "L1", "L2")) {
            locus(builder, locus);
        }
        Condition on = Condition.where("L0", "on");
        Condition off = Condition.where("L0", "off");
        builder.trait(
                        "hue",
                        rule -> rule.when(on.and("L2", "on"), "one")
                                .when(on.and("L2", "off"), "two")
                                .when(off.and("L1", "on").and("L2", "on"), "three")
                                .when(off.and("L1", "on").and("L2", "off"), "four")
                                .when(off.and("L1", "off").and("L2", "on"), "five")
                                .when(off.and("L1", "off").and("L2", "off"), "six"))
                .group(LinkageGroup.autosomal(
                        "one", List.of("L0", "L1", "L2"), List.of(Probability.of(1, 10), Probability.of(1, 4))));
        Diagram<Phenotype> diagram = CompiledModel.of(builder.build()).diagram();
        Map<Phenotype, Integer> expected = new LinkedHashMap<>();
        List<Integer> of80 = List.of(28, 12, 3, 1, 9, 27);
        List<String> hues = List.of("one", "two", "three", "four", "five", "six");
        for (int i = 0; i < 6; i++) {
            expected.put(Phenotype.of("hue", hues.get(i)), of80.get(i));
        }
        KitLaw law = KitLaw.of(Sex.FEMALE, List.of(ChainTest.gametesOf("L0", "L1", "L2")));
        assertEquals(Distribution.ofWeights(expected), diagram.distribution(diagram.weigh(law)));
        assertClose(Distribution.ofWeights(expected), diagram.approximate(law));
    }

    /** Of a strand that is read once in ten to the four hundred, nothing is lost. */
    @Test
    void a_start_that_is_very_improbable() {
        Model model = model(0, 2)
                .group(LinkageGroup.autosomal("one", List.of("M0", "M1"), List.of(Probability.of(1, 4))))
                .build();
        Diagram<Phenotype> diagram = CompiledModel.of(model).diagram();
        BigInteger[][] shown = {ChainTest.row(1, 0), ChainTest.row(0, 1)};
        BigInteger most = BigInteger.TEN.pow(400).subtract(BigInteger.ONE);
        Chain chain = Chain.of(
                List.of("M0", "M1"),
                new BigInteger[] {most, BigInteger.ONE},
                new BigInteger[][][] {{ChainTest.row(3, 1), ChainTest.row(1, 3)}},
                new BigInteger[][][] {shown, shown});
        KitLaw law = KitLaw.of(Sex.MALE, List.of(chain));
        Approximation<Phenotype> close = diagram.approximate(law);
        Distribution<Phenotype> exact = diagram.distribution(diagram.weigh(law));
        for (String second : List.of("plain", "marked")) {
            Phenotype look = diagram.outcomes().stream()
                    .filter(one -> one.state("mark 0").equals(Optional.of("plain"))
                            && one.state("mark 1").equals(Optional.of(second)))
                    .findFirst()
                    .orElseThrow();
            int quarters = second.equals("plain") ? 3 : 1;
            assertEquals(-400 * Math.log(10) + Math.log(quarters / 4.0), close.log(look), 1e-10);
            assertEquals(
                    Probability.of(
                            BigInteger.valueOf(quarters),
                            BigInteger.TEN.pow(400).shiftLeft(2)),
                    exact.probability(look));
        }
    }
}
