package org.geneticsrules.answer.recorded;

import static org.geneticsrules.answer.recorded.Carriers.ALBINO;
import static org.geneticsrules.answer.recorded.Carriers.ANSWERS;
import static org.geneticsrules.answer.recorded.Carriers.DARK;
import static org.geneticsrules.answer.recorded.Carriers.MODEL;
import static org.geneticsrules.answer.recorded.Carriers.PINK;
import static org.geneticsrules.answer.recorded.Carriers.female;
import static org.geneticsrules.answer.recorded.Carriers.kits;
import static org.geneticsrules.answer.recorded.Carriers.male;
import static org.geneticsrules.answer.recorded.Carriers.seen;
import static org.geneticsrules.answer.recorded.Carriers.sister;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.answer.Status;
import org.geneticsrules.answer.recorded.CarrierTrail.Step;
import org.geneticsrules.answer.recorded.CarrierTrail.Trail;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.inference.Sampling;
import org.geneticsrules.pedigree.Fertility;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.table.RegistryTable;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Questions about recorded animals. Bayesian carrier arithmetic is calculated from Mendelian segregation and Bayes' rule; the form of the
 * argument is in Murphy E. A., Chase G. A. (1975), from memory.
 */
class RecordedAnswersTest {

    private static final double CLOSE = 1e-12;

    private static RecordedAnswers about(PedigreeBuilder builder) {
        return RecordedAnswers.of(ANSWERS, builder.build());
    }

    private static PedigreeBuilder kennel() {
        return Pedigree.builder("example.kennel", "1");
    }

    private static double value(Chance chance) {
        assertEquals(Standing.EXACT, chance.standing());
        return chance.value().orElseThrow();
    }

    private static Trail trail(RecordedAnswer answer) {
        List<Trail> trails = ((CarrierTrail) answer.finding()).trails();
        assertEquals(1, trails.size());
        return trails.get(0);
    }

    @Test
    void a_sister_of_an_albino_tested_by_an_albino_is_cleared_kit_by_kit() {
        PedigreeBuilder builder = sister(kennel(), "sister", Sex.FEMALE).add(male("mate", PINK));
        Trail trail = trail(about(kits(builder, "sister", "mate", 6, DARK)).carrierTrail("sister", ALBINO));
        assertEquals(1 / 25.0 * 0.98 + 1 / 2500.0, value(trail.before()), CLOSE, "2pq + q2 before any record");
        double[] expected = {2 / 3.0, 1 / 2.0, 1 / 3.0, 1 / 5.0, 1 / 9.0, 1 / 17.0, 1 / 33.0};
        List<Step> steps = trail.steps();
        int last = steps.size() - 1;
        for (int n = 0; n < expected.length; n++) {
            assertEquals(expected[n], value(steps.get(last - 6 + n).after()), CLOSE, n + " clear kits");
        }
        for (int n = 1; n < expected.length; n++) {
            assertEquals(0.5, steps.get(last - 6 + n).factor().orElseThrow(), CLOSE, "a clear kit halves the odds");
            assertEquals(
                    "the look of \"kit " + (n - 1) + "\" (eye: dark)",
                    steps.get(last - 6 + n).records().get(0).words());
        }
        assertEquals(1, trail.still(), "the albino mate's own look says nothing of her");
        assertEquals(1 / 33.0, value(trail.after()), CLOSE);
    }

    /** Known carriers have an albino parent; then a clear kit multiplies the odds by 3/4. */
    @Test
    void a_sister_of_an_albino_tested_by_a_known_carrier() {
        PedigreeBuilder builder = sister(kennel(), "sister", Sex.FEMALE)
                .add(female("albino", PINK))
                .add(male("carrier", DARK))
                .add(Litter.of("other", Optional.of("albino"), Paternity.unknown(), "carrier"));
        Trail trail = trail(about(kits(builder, "sister", "carrier", 5, DARK)).carrierTrail("sister", ALBINO));
        double[] expected = {3 / 5.0, 9 / 17.0, 27 / 59.0, 81 / 209.0, 243 / 755.0};
        int last = trail.steps().size() - 1;
        for (int n = 0; n < expected.length; n++) {
            assertEquals(expected[n], value(trail.steps().get(last - 4 + n).after()), CLOSE);
        }
    }

    @ParameterizedTest
    @CsvSource({"0, 4, 9", "1, 3, 8", "2, 9, 29", "3, 27, 107", "4, 81, 401"})
    void both_parents_sibs_of_albinos(int clear, int numerator, int denominator) {
        PedigreeBuilder builder = sister(sister(kennel(), "jill", Sex.FEMALE), "hob", Sex.MALE);
        RecordedAnswers asked = about(clear == 0 ? builder : kits(builder, "jill", "hob", clear, DARK));
        // both carry iff the next kit can be albino, which it then is with 1/4
        NextLitter next = (NextLitter) asked.nextLitter(NextLitterQuestion.of("hob", "jill", Set.of("eye")))
                .finding();
        double albino = value(next.courses().get(0).looks().get(Phenotype.of("eye", "pink")));
        assertEquals(numerator / (4.0 * denominator), albino, CLOSE);
    }

    @ParameterizedTest
    @CsvSource({"0", "1", "2", "3", "6"})
    void a_daughter_of_an_obligate_carrier_of_a_recessive_on_the_x(int sons) {
        PedigreeBuilder builder = kennel().add(female("dam", seen("gait", "firm")))
                .add(male("affected son", seen("gait", "swaying")))
                .add(male("sire", seen("gait", "firm")))
                .add(female("daughter"))
                .add(Litter.of("first", "dam", "sire", "affected son", "daughter"))
                .add(male("mate", seen("gait", "firm")));
        String[] ids = new String[sons];
        for (int i = 0; i < sons; i++) {
            ids[i] = "son " + i;
            builder.add(male(ids[i], seen("gait", "firm")));
        }
        if (sons > 0) {
            builder.add(Litter.of("second", "daughter", "mate", ids));
        }
        Trail trail = trail(about(builder).carrierTrail("daughter", HiddenAllele.find(MODEL, "x")));
        assertEquals(1 / (Math.pow(2, sons) + 1), value(trail.after()), CLOSE);
    }

    @Test
    void dates_order_the_trail_only_if_every_record_has_one() {
        LocalDate day = LocalDate.of(2026, 3, 1);
        PedigreeBuilder dated = kennel().add(female("dam", dated(DARK, day.plusDays(9))))
                .add(male("sire", dated(PINK, day.plusDays(5))))
                .add(Individual.of("kit").with(dated(DARK, day)))
                .add(Litter.of("first", "dam", "sire", "kit"));
        CarrierTrail found =
                (CarrierTrail) about(dated).carrierTrail("kit", ALBINO).finding();
        assertEquals(CarrierTrail.Order.BY_DATE, found.order());
        assertEquals(
                List.of(
                        "the look of \"kit\" (eye: dark, seen 2026-03-01)",
                        "the look of \"sire\" (eye: pink, seen 2026-03-06)"),
                found.trails().get(0).steps().stream()
                        .map(step -> step.records().get(0).words())
                        .toList());
        Step last = found.trails().get(0).steps().get(1);
        assertEquals(1, value(last.after()), "the dark kit of an albino is a carrier for certain");
        assertTrue(last.factor().isEmpty());
        dated.add(female("other", DARK));
        assertEquals(
                CarrierTrail.Order.BY_DATE,
                ((CarrierTrail) about(dated).carrierTrail("kit", ALBINO).finding()).order(),
                "a record of an animal that is no relative does not matter");
        CarrierTrail undated = (CarrierTrail) about(sister(kennel(), "sister", Sex.FEMALE))
                .carrierTrail("sister", ALBINO)
                .finding();
        assertEquals(CarrierTrail.Order.BY_PEDIGREE, undated.order());
    }

    private static Observation dated(Observation seen, LocalDate day) {
        return new Observation(Optional.of(day), seen.stage(), seen.looks());
    }

    @Test
    void what_an_animal_may_carry_is_told_with_what_hides_it() {
        RecordedAnswer answer = about(sister(kennel(), "sister", Sex.FEMALE)).mayCarry("sister", Set.of("C"));
        assertEquals("By all records \"sister\" may carry c: 2/3 (66.67 %).", answer.verdict());
        assertEquals(Status.EXACT, answer.status());
        MayCarry found = (MayCarry) answer.finding();
        MayCarry.AtLocus at = found.loci().get(0);
        assertEquals(
                "C/C possible 1/3, C/c possible 2/3, c/c excluded 0",
                String.join(
                        ", ",
                        at.genotypes().stream()
                                .map(one -> one.pair() + " "
                                        + one.possibility()
                                                .getClass()
                                                .getSimpleName()
                                                .toLowerCase(Locale.ROOT)
                                        + " "
                                        + one.chances().get(0).toString().replaceAll(" .*", ""))
                                .toList()));
        assertEquals("[dominant allele C]", at.hidden().orElseThrow().causes().toString());
        assertEquals(
                List.of(
                                "/loci/C/dominance/order/0",
                                "/loci/C/dominance/shows/C",
                                "/loci/C/dominance/shows/c",
                                "/traits/eye/cases/0",
                                "/traits/eye/otherwise",
                                "/populations/rare")
                        .size(),
                answer.evidence().statements().size(),
                answer.evidence().statements().toString());
        RecordedAnswer clear = about(kennel().add(female("dam")
                                .with(GenotypeTest.of(MODEL.locus("C").pair("C", "C"))))
                        .add(male("sire").with(GenotypeTest.of(MODEL.locus("C").pair("C", "C"))))
                        .add(Individual.of("kit"))
                        .add(Litter.of("first", "dam", "sire", "kit")))
                .mayCarry("kit", Set.of("C"));
        assertEquals(
                "By all records \"kit\" carries nothing but the common alleles at the loci asked about.",
                clear.verdict());
    }

    @Test
    void contradictory_records_are_named_and_nobody_is_accused() {
        RecordedAnswers asked = about(kennel().add(female("dam", PINK))
                .add(male("sire", PINK))
                .add(Individual.of("kit").with(DARK))
                .add(Litter.of("first", "dam", "sire", "kit")));
        for (RecordedAnswer answer : List.of(
                asked.mayCarry("kit", Set.of("C")),
                asked.carrierTrail("kit", ALBINO),
                asked.nextLitter(NextLitterQuestion.of("dam", "sire", Set.of("eye"))))) {
            assertEquals(Status.UNDECIDED, answer.status());
            assertTrue(answer.verdict().contains("cannot all be true under this model"), answer.verdict());
            assertEquals(
                    List.of(
                            "Either the look of \"dam\" (eye: pink), or the look of \"sire\" (eye: pink), or the recorded dam"
                                    + " \"dam\" of litter \"first\", or the recorded sire \"sire\" of litter \"first\", or the look of"
                                    + " \"kit\" (eye: dark), or the model is mistaken."),
                    answer.conflicts().stream().map(Conflict::toString).toList());
        }
    }

    /** Test matings (calculated): by an albino 5 kits show a carrier with 95 %, 7 with 99 %, 10 with 99.9 %; from 2/3 belief takes 6. */
    @Test
    void three_kinds_of_sure_by_an_albino_mate() {
        PedigreeBuilder builder = sister(kennel(), "sister", Sex.FEMALE).add(male("mate", PINK));
        RecordedAnswer answer = about(builder)
                .howSure(HowSureQuestion.of("sister", ALBINO, "mate").forKits(10));
        HowSure found = (HowSure) answer.finding();
        assertEquals(Set.of(Phenotype.of("eye", "pink")), found.signs());
        HowSure.Course course = found.courses().get(0);
        assertEquals(2 / 3.0, value(course.now()), CLOSE);
        for (HowSure.Row row : course.rows()) {
            double missed = Math.pow(0.5, row.kits());
            assertEquals(1 - missed, value(row.detected()), CLOSE);
            assertEquals(2 * missed / (2 * missed + 1), value(row.carries()), CLOSE);
            assertEquals(2 / 3.0 * (1 - missed), value(row.atLeastOne()), CLOSE);
        }
        assertEquals(5, first(course, 0.95));
        assertEquals(7, first(course, 0.99));
        assertEquals(10, first(course, 0.999));
        assertEquals(
                6,
                course.rows().stream()
                        .filter(row -> value(row.carries()) <= 0.05)
                        .findFirst()
                        .orElseThrow()
                        .kits());
    }

    private static int first(HowSure.Course course, double confidence) {
        return course.rows().stream()
                .filter(row -> value(row.detected()) >= confidence)
                .findFirst()
                .orElseThrow()
                .kits();
    }

    /** Known carriers: 11, 17 and 25 kits (calculated; (3/4)^16 = 0.0100226 just misses). His own daughter: 1/2 + 1/2 (3/4)^k, never 5 %. */
    @Test
    void a_carrier_mate_takes_longer_and_one_own_daughter_never_tells() {
        PedigreeBuilder builder = sister(kennel(), "hob", Sex.MALE)
                .add(female("albino", PINK))
                .add(female("carrier", DARK))
                .add(Litter.of("other", Optional.of("albino"), Paternity.unknown(), "carrier"))
                .add(female("clear").with(GenotypeTest.of(MODEL.locus("C").pair("C", "C"))))
                .add(female("daughter"))
                .add(Litter.of("own", "clear", "hob", "daughter"));
        HowSure carrier = (HowSure) about(builder)
                .howSure(HowSureQuestion.of("hob", ALBINO, "carrier").forKits(25))
                .finding();
        assertEquals(11, first(carrier.courses().get(0), 0.95));
        assertEquals(17, first(carrier.courses().get(0), 0.99));
        assertEquals(25, first(carrier.courses().get(0), 0.999));
        RecordedAnswer close = about(builder)
                .howSure(HowSureQuestion.of("hob", ALBINO, "daughter").forKits(30));
        for (HowSure.Row row : ((HowSure) close.finding()).courses().get(0).rows()) {
            assertEquals(0.5 - 0.5 * Math.pow(0.75, row.kits()), value(row.detected()), CLOSE);
        }
        assertTrue(
                close.given().contains("relation of the two: parent-offspring"),
                close.given().toString());
        assertTrue(
                close.given().contains("coefficient of inbreeding of their young, as far back as is recorded: 1/4"),
                close.given().toString());
    }

    @Test
    void a_mating_needs_a_female_and_a_male_that_can_have_young() {
        PedigreeBuilder builder = kennel().add(female("jill"))
                .add(female("aunt"))
                .add(male("hob"))
                .add(male("gib").with(Fertility.NEUTERED));
        RecordedAnswers asked = about(builder);
        for (String[] pair : new String[][] {
            {"jill", "aunt", "wrong-sex"}, {"jill", "gib", "no-young"}, {"jill", "jill", "one-animal"}
        }) {
            ProblemsException refused = assertThrows(
                    ProblemsException.class,
                    () -> asked.nextLitter(NextLitterQuestion.of(pair[0], pair[1], Set.of("eye"))));
            assertEquals(pair[2], refused.problems().get(0).code());
        }
        ProblemsException unknown = assertThrows(
                ProblemsException.class, () -> asked.nextLitter(NextLitterQuestion.of("hob", "jill", Set.of("eyes"))));
        assertEquals(Optional.of("eye"), unknown.problems().get(0).nearest());
    }

    /** Eight kits of two carriers: at least one albino 1 - (3/4)^8 = 0.899887 (calculated); kits of perhaps carriers are a mixture. */
    @Test
    void kits_of_uncertain_parents_are_counted_as_a_mixture() {
        PedigreeBuilder builder = sister(sister(kennel(), "jill", Sex.FEMALE), "hob", Sex.MALE);
        RecordedAnswer answer = about(builder)
                .nextLitter(
                        NextLitterQuestion.of("hob", "jill", Set.of("eye")).counting(Phenotype.of("eye", "pink"), 8));
        NextLitter.Course course = ((NextLitter) answer.finding()).courses().get(0);
        double none = 5 / 9.0 + 4 / 9.0 * Math.pow(0.75, 8);
        assertEquals(none, value(course.counts().get(0)), CLOSE);
        assertEquals(4 / 9.0 * 0.899887, 1 - value(course.counts().get(0)), 1e-6);
        assertEquals(
                1,
                course.counts().stream().mapToDouble(RecordedAnswersTest::value).sum(),
                CLOSE);
        assertEquals(
                4 / 9.0 * 28 * Math.pow(0.25, 2) * Math.pow(0.75, 6),
                value(course.counts().get(2)),
                CLOSE);
        assertEquals(Math.pow(8 / 9.0, 8), value(course.independent().orElseThrow()), CLOSE);
    }

    @Test
    void a_male_is_excluded_with_the_records_that_say_so_and_the_others_by_their_shares() {
        PedigreeBuilder builder = kennel().add(female("dam", PINK))
                .add(male("albino", PINK))
                .add(male("clear").with(GenotypeTest.of(MODEL.locus("C").pair("C", "C"))))
                .add(male("carrier").with(GenotypeTest.of(MODEL.locus("C").pair("C", "c"))))
                .add(Individual.of("dark kit").with(DARK))
                .add(Individual.of("other kit").with(DARK))
                .add(female("nurse", PINK))
                .add(Litter.of("first", Optional.of("dam"), Paternity.unknown(), "dark kit", "other kit")
                        .raisedBy("nurse"));
        RecordedAnswer answer =
                about(builder).parentage(ParentageQuestion.of("first").among(List.of("albino", "clear", "carrier")));
        Parentage found = (Parentage) answer.finding();
        List<Parentage.OfMale> males = found.kits().get(0).males();
        assertEquals(
                List.of(Parentage.Word.EXCLUDED, Parentage.Word.NOT_EXCLUDED, Parentage.Word.NOT_EXCLUDED),
                males.stream().map(Parentage.OfMale::word).toList());
        assertEquals(
                List.of(0.0, 4 / 5.0, 1 / 5.0),
                males.stream()
                        .map(male -> Math.rint(value(male.chances().get(0)) * 1e12) / 1e12)
                        .toList(),
                "two dark kits of an albino dam: 1 against 1/4");
        assertTrue(males.get(0).against().get(0).stream()
                .map(Cited::words)
                .toList()
                .contains("the look of \"albino\" (eye: pink)"));
        assertFalse(
                males.get(0).against().toString().contains("sire"), "that he is the sire is supposed, and no record");
        assertTrue(answer.verdict().endsWith("Colour proves no parentage."), answer.verdict());
        assertTrue(answer.assumptions().stream()
                .anyMatch(one -> one.otherwise().contains("DNA parentage test through a veterinarian")));
    }

    @Test
    void each_kit_of_a_litter_may_have_a_sire_of_its_own() {
        PedigreeBuilder builder = kennel().add(female("dam", PINK))
                .add(male("albino", PINK))
                .add(male("clear").with(GenotypeTest.of(MODEL.locus("C").pair("C", "C"))))
                .add(Individual.of("dark kit").with(DARK))
                .add(Individual.of("pink kit").with(PINK))
                .add(Litter.of("first", Optional.of("dam"), Paternity.unknown(), "dark kit", "pink kit"));
        ParentageQuestion whole = ParentageQuestion.of("first").among(List.of("albino", "clear"));
        RecordedAnswer one = about(builder).parentage(whole);
        ((Parentage) one.finding())
                .kits()
                .get(0)
                .males()
                .forEach(male -> assertEquals(Parentage.Word.EXCLUDED, male.word(), "neither sired both"));
        Probability half = Probability.of(1, 2);
        RecordedAnswer each = about(builder)
                .parentage(whole.among(Paternity.perKit(
                        Paternity.Candidate.of("albino", half), Paternity.Candidate.of("clear", half))));
        Parentage found = (Parentage) each.finding();
        assertEquals("dark kit", found.kits().get(0).kit().orElseThrow());
        assertEquals(Parentage.Word.EXCLUDED, found.kits().get(0).males().get(0).word());
        assertEquals(1, value(found.kits().get(0).males().get(1).chances().get(0)));
        assertEquals(Parentage.Word.EXCLUDED, found.kits().get(1).males().get(1).word());
        assertEquals(1, value(found.kits().get(1).males().get(0).chances().get(0)));
    }

    @Test
    void too_much_is_said_to_be_too_much() {
        RecordedAnswers asked = about(sister(kennel(), "sister", Sex.FEMALE)).within(0);
        RecordedAnswer answer = asked.carrierTrail("sister", ALBINO);
        assertEquals(Standing.TOO_LARGE, trail(answer).after().standing());
        assertEquals(Status.UNDECIDED, answer.status());
        assertEquals(
                "How likely \"sister\" is to carry c was not calculated: too much ties its relatives together.",
                answer.verdict());
        assertEquals(
                "Of 4 animals no records were found that contradict one another under this model; for 4 it was not decided.",
                asked.check(RegistryQuestion.ofRecords(), Progress.NONE).verdict());
    }

    /** With no room for tables: what is exactly 1/33 (see above) is estimated, and says so. */
    @Test
    void what_is_too_large_is_estimated_where_that_is_asked_for() {
        PedigreeBuilder builder = sister(kennel(), "sister", Sex.FEMALE).add(male("mate", PINK));
        RecordedAnswers asked =
                about(kits(builder, "sister", "mate", 6, DARK)).within(0).sampling(Sampling.seeded(7));
        RecordedAnswer answer = asked.carrierTrail("sister", ALBINO);
        Chance after = trail(answer).after();
        assertEquals(Standing.SAMPLED, after.standing());
        assertEquals(Status.SAMPLED, answer.status());
        double error = after.standardError().orElseThrow();
        assertTrue(error > 0 && error <= Sampling.USUAL_STANDARD_ERROR, after::toString);
        assertEquals(1 / 33.0, after.value().orElseThrow(), 4 * error);
        assertTrue(answer.verdict().contains("estimated, standard error"), answer.verdict());
        RegistryReport report = asked.check(RegistryQuestion.ofRecords().carrying(List.of(ALBINO)), Progress.NONE);
        String sister = RegistryTable.write(report)
                .lines()
                .filter(line -> line.startsWith("sister,"))
                .findFirst()
                .orElseThrow();
        assertTrue(sister.matches(".*,0\\.0[0-9]+,sampled,0\\.00[0-9]+"), sister);
    }

    @Test
    void a_stage_that_matters_is_asked_for() {
        assertEquals(LifeStage.unstated(), HowSureQuestion.of("a", ALBINO, "b").stage());
        assertThrows(
                IllegalArgumentException.class,
                () -> HowSureQuestion.of("a", ALBINO, "b").forKits(31));
        assertThrows(IllegalArgumentException.class, () -> NextLitterQuestion.of("a", "b", Set.of()));
    }
}
