package org.geneticsrules.planning;

import static org.geneticsrules.planning.Pales.seen;
import static org.geneticsrules.planning.Pales.tested;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.comparison.ComparedModels;
import org.geneticsrules.comparison.ModelComparison;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Fertility;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.planning.KitsNeeded.Design;
import org.geneticsrules.planning.KitsNeeded.Standing;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Confusion;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** What steps are worth, with numbers worked by hand. */
class DistinguishingTest {

    private static final double EXACT = 1e-9;

    private static Distinguishing asked(Pedigree pedigree, Model... models) {
        return Distinguishing.of(Arrays.stream(models).map(Candidate::of).toList(), pedigree);
    }

    private static Pedigree pair(Individual sire, Individual dam) {
        return Pedigree.builder("pair", "1").add(sire).add(dam).build();
    }

    private static Pedigree darks() {
        return pair(seen("sire", "dark"), seen("dam", "dark"));
    }

    private static Pedigree carriers() {
        return pair(tested("sire", Sex.MALE, "D/d"), tested("dam", Sex.FEMALE, "D/d"));
    }

    private static double chance(Worth worth, String found, int model) {
        return worth.outcomes().stream()
                .filter(one -> one.found().equals(Map.of(found, 1)))
                .mapToDouble(one -> one.chances().get(model))
                .sum();
    }

    /**
     * Two dark parents carry d with 2/3 each, so a kit is pale with 4/9 1/4 = 1/9 by one locus, and with 1 - (8/9)^2 = 17/81 if pale comes of
     * either of two.
     */
    @Test
    void parents_who_are_not_known_are_summed_over() {
        Worth worth = asked(darks(), Pales.recessive(), Pales.twoLoci("two", Optional.empty()))
                .from("even")
                .worth(Step.mating("sire", "dam", 1, "coat"));
        assertEquals(Worth.Standing.TELLS, worth.standing());
        assertEquals(2, worth.outcomes().size());
        assertEquals(1.0 / 9, chance(worth, "coat: pale", 0), EXACT);
        assertEquals(17.0 / 81, chance(worth, "coat: pale", 1), EXACT);
        double one = 1.0 / 9 * Math.log(9.0 / 17) + 8.0 / 9 * Math.log(9.0 / 8);
        double two = 17.0 / 81 * Math.log(17.0 / 9) + 64.0 / 81 * Math.log(8.0 / 9);
        assertEquals(one, worth.ratio(0, 1).orElseThrow().expected(), EXACT);
        assertEquals(two, worth.ratio(1, 0).orElseThrow().expected(), EXACT);
        assertEquals(0, worth.ratio(1, 0).orElseThrow().excluding());
        assertEquals(1, worth.kitsBorn());
        assertEquals(Optional.of(Probability.ZERO), worth.inbreeding());
        assertEquals(List.of("sire", "dam"), List.copyOf(worth.animals()));
    }

    /**
     * By one locus no number of kits of these parents is ever enough: if one carries nothing, all kits are dark, as they may be by two loci
     * (5/9 to 25/81), and else a quarter is pale, as it may be by two (4/9 to 40/81). By two, only parents who both carry both have kits
     * of which 7/16 are pale: 16/81.
     */
    @Test
    void parents_who_may_be_what_both_models_have_are_never_enough() {
        Worth worth = asked(darks(), Pales.recessive(), Pales.twoLoci("two", Optional.empty()))
                .from("even")
                .worth(Step.mating("sire", "dam", 6, "coat"));
        for (Design design : List.of(Design.COUPLE, Design.LITTERS)) {
            KitsNeeded one = worth.needed(0, 1, design, 0.8).orElseThrow();
            assertEquals(Standing.NEVER, one.standing());
            assertEquals(0, one.limit(), EXACT);
            KitsNeeded two = worth.needed(1, 0, design, 0.8).orElseThrow();
            assertEquals(Standing.NEVER, two.standing());
            assertEquals(16.0 / 81, two.limit(), EXACT);
            assertEquals(OptionalInt.empty(), two.kits());
        }
    }

    /**
     * A pale line crossed with an albino line (hypotheses stated in full, so the kits follow by Mendel's rules): in one series all kits are pale;
     * by two loci all are dark, unless the albino line hides the pale allele in double dose: then they are pale as well.
     */
    @Test
    void a_cross_of_two_lines_excludes_or_tells_nothing() {
        Pedigree lines = pair(
                seen("sire", "pale").from("pale line"), seen("dam", "albino").from("albino line"));
        Step.Kits mating = Step.mating("sire", "dam", 1, "coat");
        Worth open = asked(lines, Pales.oneSeries(), Pales.twoSeries("two loci", false))
                .worth(mating);
        assertEquals(1, chance(open, "coat: pale", 0), EXACT);
        assertEquals(1, chance(open, "coat: dark", 1), EXACT);
        ExpectedRatio ratio = open.ratio(0, 1).orElseThrow();
        assertEquals(Double.POSITIVE_INFINITY, ratio.expected());
        assertEquals(1, ratio.excluding(), EXACT);
        assertEquals(0, ratio.finite(), EXACT);
        assertEquals(1, open.bits(), EXACT);
        assertEquals(
                OptionalInt.of(1),
                open.needed(0, 1, Design.COUPLE, 0.95).orElseThrow().kits());
        Worth hidden =
                asked(lines, Pales.oneSeries(), Pales.twoSeries("hidden", true)).worth(mating);
        assertEquals(Worth.Standing.TELLS_NOTHING, hidden.standing());
        assertEquals(0, hidden.bits());
        assertEquals(
                Standing.NEVER,
                hidden.needed(0, 1, Design.COUPLE, 0.8).orElseThrow().standing());
    }

    /** The young of that cross mated with one another: 3 pale to 1 albino in one series, 9 dark, 3 pale and 4 albino by two loci. */
    @Test
    void the_next_generation_shows_the_textbook_ratios() {
        Pedigree lines = Pedigree.builder("lines", "1")
                .add(seen("sire", "pale").from("pale line"))
                .add(seen("dam", "albino").from("albino line"))
                .add(Individual.of("son", Sex.MALE))
                .add(Individual.of("daughter", Sex.FEMALE))
                .add(Litter.of("litter", "dam", "sire", "son", "daughter"))
                .build();
        Worth worth = asked(
                        lines, Pales.oneSeries(), Pales.twoSeries("two loci", false), Pales.twoSeries("hidden", true))
                .worth(Step.mating("son", "daughter", 1, "coat"));
        assertEquals(3.0 / 4, chance(worth, "coat: pale", 0), EXACT);
        assertEquals(1.0 / 4, chance(worth, "coat: albino", 0), EXACT);
        assertEquals(9.0 / 16, chance(worth, "coat: dark", 1), EXACT);
        assertEquals(3.0 / 16, chance(worth, "coat: pale", 1), EXACT);
        assertEquals(4.0 / 16, chance(worth, "coat: albino", 1), EXACT);
        assertEquals(0, worth.ratio(0, 2).orElseThrow().expected());
        assertEquals(Double.POSITIVE_INFINITY, worth.ratio(1, 2).orElseThrow().expected());
        assertEquals(9.0 / 16, worth.ratio(1, 2).orElseThrow().excluding(), EXACT);
        assertEquals(Optional.of(Probability.of(1, 4)), worth.inbreeding());
    }

    /**
     * Two thirds or three quarters dark: about 170 kits are said to tell them apart. The criterion that gives this number is that the
     * expected logarithm of the likelihood ratio reaches that of the bar, ln 20, if the coat is lethal in double dose:
     * ln 20 / (2/3 ln 8/9 + 1/3 ln 4/3) = 172.5, so 173 kits; if it is not, ln 20 / (3/4 ln 9/8 + 1/4 ln 3/4) = 182.5, so 183. With
     * so many kits the bar is reached in little more than half of the cases only; to reach it surely takes more.
     */
    @Test
    void telling_two_to_one_from_three_to_one_takes_about_170_kits() {
        Distinguishing asked =
                asked(carriers(), Pales.lethal(), Pales.recessive()).from("even");
        double bar = Math.log(20);
        assertEquals(20, asked.bar(), EXACT);
        double one = 2.0 / 3 * Math.log(8.0 / 9) + 1.0 / 3 * Math.log(4.0 / 3);
        assertEquals(
                172 * one,
                asked.worth(Step.born("sire", "dam", 172, "coat"))
                        .ratio(0, 1)
                        .orElseThrow()
                        .expected(),
                1e-8);
        assertTrue(172 * one < bar);
        assertTrue(asked.worth(Step.born("sire", "dam", 173, "coat"))
                        .ratio(0, 1)
                        .orElseThrow()
                        .expected()
                >= bar);
        assertTrue(asked.worth(Step.born("sire", "dam", 182, "coat"))
                        .ratio(1, 0)
                        .orElseThrow()
                        .expected()
                < bar);
        Worth worth = asked.worth(Step.born("sire", "dam", 183, "coat"));
        assertTrue(worth.ratio(1, 0).orElseThrow().expected() >= bar);
        assertEquals(0, worth.kitsBorn());
        for (double sure : Distinguishing.USUAL_SURENESSES) {
            assertEquals(
                    OptionalInt.of(fewest(2.0 / 3, 3.0 / 4, sure)),
                    worth.needed(0, 1, Design.COUPLE, sure).orElseThrow().kits());
            assertEquals(
                    OptionalInt.of(fewest(3.0 / 4, 2.0 / 3, sure)),
                    worth.needed(1, 0, Design.COUPLE, sure).orElseThrow().kits());
        }
    }

    /** The smallest number of kits by the binomial distribution alone. */
    private static int fewest(double truth, double rival, double sure) {
        for (int n = 1; n <= 1000; n++) {
            double reached = 0;
            double log = n * Math.log(1 - truth);
            for (int k = 0; k <= n; k++) {
                double ratio = k * Math.log(truth / rival) + (n - k) * Math.log((1 - truth) / (1 - rival));
                reached += ratio >= Math.log(20) ? Math.exp(log) : 0;
                log += Math.log((n - k) / (k + 1.0) * truth / (1 - truth));
            }
            if (reached >= sure) {
                return n;
            }
        }
        throw new AssertionError("more than 1000 kits");
    }

    private static int[] needed(Worth worth, int truth, int rival, Design design, double... sures) {
        return Arrays.stream(sures)
                .mapToInt(sure -> worth.needed(truth, rival, design, sure)
                        .orElseThrow()
                        .kits()
                        .orElse(-1))
                .toArray();
    }

    /**
     * A hob that carries d, mated with pale jills, or with a known carrier, or one kit each of his own daughters, against a model by which what he
     * carries is never seen: one pale kit excludes that, and it is missed with 1/2, 3/4 and 7/8 per kit. The smallest numbers for
     * 95 %, 99 % and 99.9 % are those of test matings: 5, 7, 10; 11, 17, 25; 23, 35, 52 (calculated from the binomial).
     */
    @Test
    void an_outcome_that_excludes_takes_as_many_kits_as_a_test_mating() {
        double[] sures = {0.95, 0.99, 0.999};
        Worth pale = asked(
                        pair(tested("sire", Sex.MALE, "D/d"), tested("dam", Sex.FEMALE, "d/d")),
                        Pales.recessive(),
                        Pales.unrelated())
                .from("even")
                .surely(sures)
                .worth(Step.planned("sire", "dam", 8, "coat"));
        assertArrayEquals(new int[] {5, 7, 10}, needed(pale, 0, 1, Design.COUPLE, sures));
        // if nothing is ever pale, each dark kit counts 2 to 1, and 5 are 32 to 1, for certain
        assertArrayEquals(new int[] {5, 5, 5}, needed(pale, 1, 0, Design.COUPLE, sures));
        assertEquals(
                OptionalInt.of(2),
                pale.needed(0, 1, Design.LITTERS, 0.999).orElseThrow().litters());
        assertEquals(8, pale.kitsBorn());
        Worth carrier = asked(carriers(), Pales.recessive(), Pales.unrelated())
                .from("even")
                .surely(sures)
                .worth(Step.planned("sire", "dam", 8, "coat"));
        assertArrayEquals(new int[] {11, 17, 25}, needed(carrier, 0, 1, Design.COUPLE, sures));
        Worth daughters = asked(daughter(), Pales.recessive(), Pales.unrelated())
                .from("even")
                .surely(sures)
                .worth(Step.mating("sire", "daughter", 1, "coat"));
        assertArrayEquals(new int[] {23, 35, 52}, needed(daughters, 0, 1, Design.JILLS, sures));
        assertEquals(Optional.of(Probability.of(1, 4)), daughters.inbreeding());
    }

    /** A hob that carries d, and a daughter of his by a jill that does not. */
    private static Pedigree daughter() {
        return Pedigree.builder("daughter", "1")
                .add(tested("sire", Sex.MALE, "D/d"))
                .add(tested("dam", Sex.FEMALE, "D/D"))
                .add(Individual.of("daughter", Sex.FEMALE))
                .add(Litter.of("litter", "dam", "sire", "daughter"))
                .build();
    }

    /**
     * One daughter, who carries with 1/2 only, never makes it sure, and 1/2 is the limit; of litters of 8, each of another daughter, each misses
     * with 1/2 + 1/2 (3/4)^8 = 0.550056, and 6 are enough for 95 %, 8 for 99 %.
     */
    @Test
    void one_daughter_is_never_enough_and_several_are() {
        Worth worth = asked(daughter(), Pales.recessive(), Pales.unrelated())
                .from("even")
                .surely(0.4, 0.95, 0.99)
                .worth(Step.mating("sire", "daughter", 8, "coat"));
        for (Design design : List.of(Design.COUPLE, Design.LITTERS)) {
            KitsNeeded never = worth.needed(0, 1, design, 0.95).orElseThrow();
            assertEquals(Standing.NEVER, never.standing());
            assertEquals(0.5, never.limit(), EXACT);
        }
        // 1/2 - 1/2 (3/4)^n reaches 0.4 with 6 kits
        assertEquals(
                OptionalInt.of(6),
                worth.needed(0, 1, Design.COUPLE, 0.4).orElseThrow().kits());
        assertEquals(
                OptionalInt.of(6),
                worth.needed(0, 1, Design.JILLS, 0.95).orElseThrow().litters());
        KitsNeeded eight = worth.needed(0, 1, Design.JILLS, 0.99).orElseThrow();
        assertEquals(OptionalInt.of(8), eight.litters());
        assertEquals(OptionalInt.of(64), eight.kits());
        assertEquals(1 - Math.pow(0.550056, 8), eight.reached(), 1e-6);
        assertEquals(1, eight.limit(), EXACT);
    }

    /** A dark animal carries d with 2/3 if d is recessive, and never if it is dominant: a test that reports it excludes that. */
    @Test
    void a_test_tells_what_a_look_does_not() {
        Pedigree one = Pedigree.builder("one", "1").add(seen("Pip", "dark")).build();
        Distinguishing asked = asked(one, Pales.recessive(), Pales.dominant()).from("even");
        Worth sure = asked.worth(Step.test("Pip", "A"));
        assertEquals(2.0 / 3, chance(sure, "D/d", 0), EXACT);
        assertEquals(1, chance(sure, "D/D", 1), EXACT);
        ExpectedRatio ratio = sure.ratio(0, 1).orElseThrow();
        assertEquals(2.0 / 3, ratio.excluding(), EXACT);
        assertEquals(1.0 / 3 * Math.log(1.0 / 3), ratio.finite(), EXACT);
        assertEquals(Math.log(3), sure.ratio(1, 0).orElseThrow().expected(), EXACT);
        // P(D/D) = 2/3 in the mean
        double bits = 1.0 / 3 + 1.0 / 2 * (1.0 / 3 * Math.log(0.5) / Math.log(2) + Math.log(1.5) / Math.log(2));
        assertEquals(bits, sure.bits(), EXACT);
        Worth erring = asked.worth(new Step.Test("Pip", "A", Probability.of(1, 10)));
        assertEquals(2.0 / 3 * 0.9 + 1.0 / 3 * 0.05, chance(erring, "D/d", 0), EXACT);
        assertEquals(0.05, chance(erring, "D/d", 1), EXACT);
        assertTrue(Double.isFinite(erring.ratio(0, 1).orElseThrow().expected()));
        assertTrue(erring.bits() < sure.bits());
        Worth again = asked.worth(Step.look("Pip", "coat"));
        assertEquals(Worth.Standing.NOT_PROPOSED, again.standing());
        assertEquals("it is recorded already at this stage", again.reason().orElseThrow());
    }

    /** What is believed weighs: nothing is learnt where one model is certain. */
    @Test
    void information_is_by_what_is_believed() {
        Pedigree one = Pedigree.builder("one", "1").add(seen("Pip", "dark")).build();
        Distinguishing sure = Distinguishing.of(
                        List.of(
                                Candidate.of(Pales.recessive()).believed(Probability.ONE),
                                Candidate.of(Pales.dominant()).believed(Probability.ZERO)),
                        one)
                .from("even");
        assertEquals(List.of(1.0, 0.0), sure.beliefs());
        Worth worth = sure.worth(Step.test("Pip", "A"));
        assertEquals(Worth.Standing.TELLS, worth.standing());
        assertEquals(0, worth.bits(), EXACT);
    }

    /** Records, tests, planned matings, new matings: a look comes first although the mating tells more. */
    @Test
    void no_mating_stands_in_front_of_a_record() {
        Pedigree pedigree = Pedigree.builder("kennel", "1")
                .add(tested("sire", Sex.MALE, "D/d"))
                .add(tested("dam", Sex.FEMALE, "D/d"))
                .add(seen("Pip", "dark"))
                .add(tested("Bo", Sex.MALE, "D/d"))
                .add(Individual.of("neuter", Sex.MALE).with(Fertility.NEUTERED))
                .build();
        List<Worth> ranked = asked(pedigree, Pales.recessive(), Pales.unrelated())
                .from("even")
                .rank(List.of(
                        Step.mating("neuter", "dam", 6, "coat"),
                        Step.mating("sire", "dam", 6, "coat"),
                        Step.planned("sire", "dam", 1, "coat"),
                        Step.test("Pip", "A"),
                        Step.look("Pip", "bib"),
                        Step.look("Bo", "coat"),
                        Step.look("neuter", "coat"),
                        Step.mating("sire", "dam", 8, "coat")));
        assertEquals(
                List.of(
                        "look at neuter: coat",
                        "look at Pip: bib",
                        "look at Bo: coat",
                        "DNA test of Pip at A",
                        "planned mating of sire and dam: 1 kit, coat",
                        "new mating of sire and dam: 8 kits, coat",
                        "new mating of sire and dam: 6 kits, coat",
                        "new mating of neuter and dam: 6 kits, coat"),
                ranked.stream().map(one -> one.step().toString()).toList());
        Worth last = ranked.get(7);
        assertEquals(Worth.Standing.NOT_PROPOSED, last.standing());
        assertEquals(
                "neuter is recorded as neutered and has no more young",
                last.reason().orElseThrow());
        assertEquals(Worth.Standing.TELLS_NOTHING, ranked.get(1).standing());
        // his kits that are born may still be looked at
        assertEquals(
                Worth.Standing.TELLS,
                asked(pedigree, Pales.recessive(), Pales.unrelated())
                        .from("even")
                        .worth(Step.born("neuter", "dam", 2, "coat"))
                        .standing());
    }

    @Test
    void what_cannot_be_is_not_proposed() {
        Distinguishing asked =
                asked(carriers(), Pales.recessive(), Pales.unrelated()).from("even");
        assertEquals(
                "dam is recorded as female and is no sire",
                asked.worth(Step.mating("dam", "sire", 1, "coat")).reason().orElseThrow());
        assertEquals(
                "sire cannot be both parents",
                asked.worth(Step.mating("sire", "sire", 1, "coat")).reason().orElseThrow());
        assertEquals(
                "bib cannot be told so early, at week 3",
                asked.worth(new Step.Look("sire", List.of("bib"), LifeStage.atWeek(3), Optional.empty()))
                        .reason()
                        .orElseThrow());
        ProblemsException unknown =
                assertThrows(ProblemsException.class, () -> asked.worth(Step.look("sire", "coats", "bob")));
        assertEquals(2, unknown.problems().size());
        assertThrows(ProblemsException.class, () -> asked.worth(Step.test("sire", "B")));
        assertThrows(IllegalArgumentException.class, () -> asked.worth(Step.look("nobody", "coat")));
        assertThrows(IllegalArgumentException.class, () -> Step.mating("sire", "dam", 0, "coat"));
        assertThrows(IllegalArgumentException.class, () -> asked.surely(1.0));
        assertThrows(IllegalArgumentException.class, () -> asked.reaching(1.0));
    }

    /** A pale animal excludes the model by which all are dark. */
    @Test
    void records_that_exclude_a_model_settle_it() {
        Pedigree one = Pedigree.builder("one", "1").add(seen("Pip", "pale")).build();
        Distinguishing asked = asked(one, Pales.recessive(), Pales.unrelated()).from("even");
        Worth worth = asked.worth(Step.test("Pip", "A"));
        assertEquals(Worth.Standing.SETTLED, worth.standing());
        assertEquals("the records held exclude unrelated", worth.reason().orElseThrow());
    }

    /** A dam that shows pale, a dark sire: on the X all sons are pale and no daughter; else the look hangs on what the sire carries. */
    @Test
    void kits_are_counted_by_sex_where_that_matters() {
        Worth worth = asked(pair(seen("sire", "dark"), seen("dam", "pale")), Pales.recessive(), Pales.sexLinked())
                .from("even")
                .worth(Step.mating("sire", "dam", 1, "coat"));
        assertEquals(1.0 / 2, chance(worth, "male, coat: pale", 1), EXACT);
        assertEquals(1.0 / 2, chance(worth, "female, coat: dark", 1), EXACT);
        assertEquals(0, chance(worth, "female, coat: pale", 1));
        // the sire carries with 2/3
        assertEquals(1.0 / 6, chance(worth, "female, coat: pale", 0), EXACT);
        assertEquals(1.0 / 3, chance(worth, "male, coat: dark", 0), EXACT);
    }

    /** Linked or not: a parent may carry both in coupling or in repulsion, so each count is a litter of its own. */
    @Test
    void where_phase_is_not_known_litters_are_put_into_the_pedigree() {
        Worth worth = asked(
                        darks(),
                        Pales.twoLoci("free", Optional.empty()),
                        Pales.twoLoci("linked", Optional.of(Probability.of(1, 10))))
                .from("even")
                .worth(Step.mating("sire", "dam", 2, "coat"));
        assertEquals(Worth.Standing.TELLS, worth.standing());
        assertEquals(3, worth.outcomes().size());
        assertTrue(worth.numbers().isEmpty());
        assertTrue(
                worth.reason().orElseThrow().contains("phase"), worth.reason().orElseThrow());
        assertEquals(
                1,
                worth.outcomes().stream()
                        .mapToDouble(one -> one.chances().get(1))
                        .sum(),
                EXACT);
    }

    /** Misreading one in ten: a carrier pair's kit is read pale with 1/4 9/10 + 3/4 0. */
    @Test
    void looks_to_come_are_misread_as_well() {
        Worth worth = asked(carriers(), Pales.recessive(), Pales.lethal())
                .from("even")
                .with(Confusions.of(
                        List.of(new Confusion("coat", "pale", "dark", Optional.empty(), Probability.of(1, 10)))))
                .worth(Step.mating("sire", "dam", 1, "coat"));
        assertEquals(9.0 / 40, chance(worth, "coat: pale", 0), EXACT);
        assertEquals(3.0 / 10, chance(worth, "coat: pale", 1), EXACT);
    }

    /** After records the ratio starts where they brought it: 3 dark kits of a carrier and a pale jill are 8 to 1, and 2 more reach 20. */
    @Test
    void after_records_less_is_needed() {
        Pedigree pedigree = Pedigree.builder("held", "1")
                .add(tested("sire", Sex.MALE, "D/d"))
                .add(tested("dam", Sex.FEMALE, "d/d"))
                .add(seen("a", "dark"))
                .add(seen("b", "dark"))
                .add(seen("c", "dark"))
                .add(Litter.of("litter", "dam", "sire", "a", "b", "c"))
                .build();
        List<Candidate> candidates = List.of(Candidate.of(Pales.recessive()), Candidate.of(Pales.unrelated()));
        ComparedModels compared =
                ModelComparison.of(candidates, pedigree).from("even").compare();
        Distinguishing asked = Distinguishing.of(candidates, pedigree).from("even");
        Step step = Step.mating("sire", "dam", 4, "coat");
        assertEquals(
                OptionalInt.of(5),
                asked.worth(step)
                        .needed(1, 0, Design.COUPLE, 0.95)
                        .orElseThrow()
                        .kits());
        Distinguishing after = asked.after(compared);
        assertEquals(1.0 / 9, after.beliefs().get(0), EXACT);
        assertEquals(
                OptionalInt.of(2),
                after.worth(step)
                        .needed(1, 0, Design.COUPLE, 0.95)
                        .orElseThrow()
                        .kits());
        assertEquals(
                OptionalInt.of(1),
                after.reaching(8 * 1.5)
                        .worth(step)
                        .needed(1, 0, Design.COUPLE, 0.95)
                        .orElseThrow()
                        .kits());
    }

    @Test
    void models_that_foretell_the_same_are_proved_to() {
        Model same = Pales.one("same", "D", "pale").build();
        Distinguishing asked =
                asked(carriers(), Pales.recessive(), same, Pales.dominant(), Pales.twoLoci("two", Optional.empty()));
        assertEquals(ToldApart.Verdict.NEVER, asked.toldApart(0, 1).verdict());
        ToldApart moved = asked.toldApart(0, 2);
        assertEquals(ToldApart.Verdict.BY_LOOKS, moved.verdict());
        assertFalse(moved.moves().orElseThrow().isNothing());
        // a locus that only one has was compared at one allele
        assertTrue(asked.toldApart(0, 3).verdict() != ToldApart.Verdict.NEVER);
    }
}
