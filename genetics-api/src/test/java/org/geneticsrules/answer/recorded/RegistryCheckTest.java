package org.geneticsrules.answer.recorded;

import static org.geneticsrules.answer.recorded.Carriers.ALBINO;
import static org.geneticsrules.answer.recorded.Carriers.ANSWERS;
import static org.geneticsrules.answer.recorded.Carriers.DARK;
import static org.geneticsrules.answer.recorded.Carriers.PINK;
import static org.geneticsrules.answer.recorded.Carriers.female;
import static org.geneticsrules.answer.recorded.Carriers.male;
import static org.geneticsrules.answer.recorded.Carriers.sister;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.answer.recorded.RegistryReport.Entry;
import org.geneticsrules.answer.recorded.RegistryReport.Kindred;
import org.geneticsrules.answer.recorded.RegistryReport.Verdict;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Kindreds;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.render.RegistryText;
import org.geneticsrules.render.TextStyle;
import org.geneticsrules.table.RegistryTable;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

class RegistryCheckTest {

    private static PedigreeBuilder mistaken(PedigreeBuilder builder, int number) {
        return builder.add(female("dam " + number, PINK))
                .add(male("sire " + number, PINK))
                .add(Individual.of("kit " + number).with(DARK))
                .add(Individual.of("mate " + number).with(PINK))
                .add(Litter.of(
                        "litter " + number, "dam " + number, "sire " + number, "kit " + number, "mate " + number));
    }

    private static RegistryReport check(PedigreeBuilder builder, RegistryQuestion question) {
        return RecordedAnswers.of(ANSWERS, builder.build()).check(question, Progress.NONE);
    }

    @Test
    void every_animal_has_a_verdict_and_what_to_look_at_again_is_named() {
        PedigreeBuilder builder = mistaken(sister(Pedigree.builder("registry", "1"), "sister", Sex.FEMALE), 1);
        RegistryReport report = check(builder, RegistryQuestion.ofRecords());
        assertEquals(
                "Of 8 animals 3 have records that do not fit one another under this model; to make all fit, at least 1 record"
                        + " has to be looked at again.",
                report.verdict());
        assertEquals(5, report.count(Verdict.ACCEPT));
        assertEquals(
                List.of("dam 1", "sire 1", "kit 1"),
                report.entries().stream()
                        .filter(one -> one.verdict() == Verdict.QUERY)
                        .map(Entry::animal)
                        .toList());
        Entry kit = report.entries().stream()
                .filter(one -> one.animal().equals("kit 1"))
                .findFirst()
                .orElseThrow();
        assertEquals(Set.of(0), kit.conflicts());
        assertTrue(kit.reason()
                .startsWith("These records do not fit one another under the model; please have them looked at"));
        assertTrue(kit.reason().endsWith("or the model is mistaken."), kit.reason());
        assertEquals(1, report.recheck().size());
        assertEquals(5, report.recheck().get(0).sets().size(), "any one of the five will do");
        assertEquals(1, report.recheck().get(0).atLeast());
    }

    @Test
    void chances_are_told_allele_by_allele() {
        RegistryReport report = check(
                sister(Pedigree.builder("registry", "1"), "sister", Sex.FEMALE),
                RegistryQuestion.ofRecords().carrying(List.of(ALBINO)));
        assertEquals(1, report.origins().size());
        assertEquals(
                List.of("1", "1", "1", "2/3 (66.67 %)"),
                report.entries().stream()
                        .map(one -> one.chances().get(0).toString())
                        .toList());
        List<String> lines = RegistryTable.write(report).lines().toList();
        assertEquals(
                "id,verdict,reason,conflicts,inbreeding,generations known,"
                        + "\"carries: C c, rare\",\"standing: C c, rare\",\"standard error: C c, rare\"",
                lines.get(0));
        assertTrue(lines.get(4).startsWith("sister,accept,,,0,1,0.666666"), lines.get(4));
        assertTrue(lines.get(4).endsWith(",exact,"), lines.get(4));
    }

    /** Ids are opaque, so they may be anything that a spreadsheet would run. */
    @Test
    void the_table_is_safe_in_a_spreadsheet() {
        RegistryReport report = check(
                Pedigree.builder("registry", "1").add(female("=1+1")).add(male("-2")), RegistryQuestion.ofRecords());
        List<String> lines = RegistryTable.write(report).lines().toList();
        assertEquals("'=1+1,accept,,,0,0", lines.get(1));
        assertEquals("'-2,accept,,,0,0", lines.get(2));
    }

    /** Portions are whole kindreds, so it does not matter how many there are. */
    @Test
    void large_registries_are_gone_through_in_portions_with_the_same_result() {
        PedigreeBuilder builder = Pedigree.builder("registry", "1");
        int kindreds = 2_000;
        for (int i = 0; i < kindreds; i++) {
            if (i % 500 == 0) {
                mistaken(builder, i);
            } else {
                builder.add(female("dam " + i, DARK))
                        .add(male("sire " + i, PINK))
                        .add(Individual.of("kit " + i).with(i % 2 == 0 ? DARK : PINK))
                        .add(Individual.of("mate " + i))
                        .add(Litter.of("litter " + i, "dam " + i, "sire " + i, "kit " + i, "mate " + i));
            }
        }
        List<Long> told = new ArrayList<>();
        RegistryReport report = RecordedAnswers.of(ANSWERS, builder.build())
                .check(RegistryQuestion.ofRecords().carrying(List.of(ALBINO)), (done, all) -> {
                    assertEquals(2 * 4L * kindreds, all);
                    told.add(done);
                });
        assertEquals(4, told.size(), "two portions, looked at twice");
        assertEquals(2 * 4L * kindreds, told.get(3));
        assertEquals(kindreds, report.kindreds().size());
        assertTrue(report.kindreds().stream().allMatch(one -> one.animals() == 4 && one.inTime()));
        assertEquals(12, report.count(Verdict.QUERY));
        assertEquals(4, report.recheck().size());
        assertEquals(4 * kindreds - 12, report.count(Verdict.ACCEPT));
        Entry mate = report.entries().get(7);
        assertEquals("mate 1", mate.animal());
        assertEquals("1", mate.chances().get(0).toString(), "the kit of an albino");
    }

    /** A dam and her son, and what they have together: a loop, and each further litter a further one. */
    private static PedigreeBuilder backcrossed(PedigreeBuilder builder, int number, int litters) {
        String of = " " + number;
        builder.add(female("mother" + of, DARK))
                .add(male("father" + of, DARK))
                .add(male("son" + of, DARK))
                .add(Litter.of("first" + of, "mother" + of, "father" + of, "son" + of));
        for (int i = 0; i < litters; i++) {
            String kit = "kit " + i + of;
            builder.add(Individual.of(kit)).add(Litter.of("back " + i + of, "mother" + of, "son" + of, kit));
        }
        return builder;
    }

    /** Wright 1922 (published): the young of a parent and its offspring have 1/4. */
    @Test
    void inbreeding_is_told_with_how_much_is_known() {
        RegistryReport report =
                check(backcrossed(Pedigree.builder("registry", "1"), 1, 1), RegistryQuestion.ofRecords());
        Entry kit = report.entries().get(3);
        assertEquals("kit 0 1", kit.animal());
        assertEquals(0.25, kit.inbreeding(), 1e-15);
        assertEquals(1.5, kit.generations(), 1e-15, "both parents, and two of four grandparents");
        assertEquals(0, report.entries().get(2).inbreeding());
        assertTrue(report.assumptions().stream()
                .anyMatch(one ->
                        one.id().equals("recorded-ancestors") && one.otherwise().contains("veterinarian")));
    }

    /** The young of full sibs have 1/4 (Wright 1922, published), those of strangers 0: as long as it is not known whose they are, 1/8. */
    @Test
    void inbreeding_by_uncertain_sires_is_the_expected_value_and_may_fall() {
        Probability half = Probability.of(1, 2);
        PedigreeBuilder builder = Pedigree.builder("registry", "1")
                .add(female("grandmother"))
                .add(male("grandfather"))
                .add(female("dam"))
                .add(male("brother"))
                .add(male("stranger"))
                .add(Individual.of("kit"))
                .add(Litter.of("first", "grandmother", "grandfather", "dam", "brother"));
        double[] found = new double[3];
        List<Paternity> sires = List.of(
                Paternity.oneOf(Paternity.Candidate.of("brother", half), Paternity.Candidate.of("stranger", half)),
                Paternity.of("brother"),
                Paternity.of("stranger"));
        for (int i = 0; i < 3; i++) {
            Pedigree pedigree = Altered.with(
                            builder.build(),
                            List.of(),
                            List.of(Litter.of("second", Optional.of("dam"), sires.get(i), "kit")),
                            Set.of())
                    .build();
            RegistryReport report =
                    RecordedAnswers.of(ANSWERS, pedigree).check(RegistryQuestion.ofRecords(), Progress.NONE);
            found[i] = report.entries().get(5).inbreeding();
            String otherwise = report.assumptions().stream()
                    .filter(one -> one.id().equals("recorded-ancestors"))
                    .findFirst()
                    .orElseThrow()
                    .otherwise();
            assertTrue(otherwise.contains("can rise but not fall"), otherwise);
            assertEquals(i == 0, otherwise.contains("where sires are certain; where several males may be"), otherwise);
        }
        assertArrayEquals(new double[] {0.125, 0.25, 0}, found, 1e-15);
    }

    /** Each of some dams with each of as many sires. */
    private static PedigreeBuilder crossed(PedigreeBuilder builder, int each) {
        for (int i = 0; i < each; i++) {
            builder.add(female("dam " + i)).add(male("sire " + i));
        }
        for (int i = 0; i < each * each; i++) {
            builder.add(Individual.of("kit " + i))
                    .add(Litter.of("litter " + i, "dam " + i / each, "sire " + i % each, "kit " + i));
        }
        return builder;
    }

    private static PedigreeBuilder raised(PedigreeBuilder builder, String foster) {
        builder.add(female("small dam", DARK)).add(male("small sire", PINK)).add(Individual.of("small kit"));
        Litter litter = Litter.of("small", "small dam", "small sire", "small kit");
        return builder.add(foster.isEmpty() ? litter : litter.raisedBy(foster));
    }

    private static RegistryReport until(PedigreeBuilder builder, AtomicInteger asked, int answers) {
        return RecordedAnswers.of(ANSWERS, builder.build())
                .within(100_000)
                .check(
                        RegistryQuestion.ofRecords().carrying(List.of(ALBINO)),
                        Progress.NONE,
                        () -> asked.getAndIncrement() >= answers);
    }

    /** What is enough time for a family is enough for it beside a huge kennel, one of whose dams raised it. */
    @Test
    void a_foster_dam_does_not_make_a_family_dear() {
        AtomicInteger enough = new AtomicInteger();
        until(raised(Pedigree.builder("registry", "1"), ""), enough, Integer.MAX_VALUE);
        RegistryReport report = until(
                raised(crossed(Pedigree.builder("registry", "1"), 11), "dam 0"), new AtomicInteger(), enough.get());
        assertEquals(
                List.of(3, 22 + 121),
                report.kindreds().stream().map(Kindred::animals).toList());
        assertFalse(report.kindreds().get(1).within());
        assertEquals(3, report.count(Standing.EXACT), report.kindreds()::toString);
        assertEquals(22 + 121, report.count(Standing.NOT_IN_TIME));
        assertEquals(
                "1",
                report.entries()
                        .get(report.entries().size() - 1)
                        .chances()
                        .get(0)
                        .toString());
    }

    @Test
    void a_foster_dam_who_is_no_relative_is_left_out_with_all_of_hers() {
        Pedigree whole =
                raised(crossed(Pedigree.builder("registry", "1"), 2), "dam 0").build();
        Pedigree family = Kindreds.of(whole).around(List.of("small kit"));
        assertEquals(
                Set.of("small dam", "small sire", "small kit"),
                family.individuals().keySet());
        assertEquals(Optional.empty(), family.litters().get("small").fosterDam());
        assertEquals(
                Optional.of("dam 0"),
                Kindreds.of(whole)
                        .around(List.of("small kit", "dam 0"))
                        .litters()
                        .get("small")
                        .fosterDam());
    }

    private static PedigreeBuilder family(PedigreeBuilder builder, String name, int kits, String foster) {
        builder.add(female("dam of " + name)).add(male("sire of " + name));
        for (int i = 0; i < kits; i++) {
            String kit = "kit " + i + " of " + name;
            builder.add(Individual.of(kit));
            Litter litter = Litter.of("litter " + i + " of " + name, "dam of " + name, "sire of " + name, kit);
            builder.add(foster.isEmpty() ? litter : litter.raisedBy(foster));
        }
        return builder;
    }

    /** None of these has a loop, so that each costs nothing but for its animals; foster dams do not make one task of them. */
    @Test
    void of_those_without_loops_the_fewest_animals_come_first() {
        PedigreeBuilder builder = Pedigree.builder("registry", "1");
        family(builder, "large", 5_998, "");
        family(builder, "medium", 2_998, "dam of large");
        family(builder, "other", 2_996, "dam of medium");
        family(builder, "small", 1, "dam of other");
        List<Long> told = new ArrayList<>();
        RegistryReport report = RecordedAnswers.of(ANSWERS, builder.build())
                .check(RegistryQuestion.ofRecords().carrying(List.of(ALBINO)), (done, all) -> told.add(done));
        assertEquals(12_001L, report.entries().size());
        assertEquals(12_001, report.count(Standing.EXACT));
        assertEquals(
                List.of(3, 2_998, 3_000, 6_000),
                report.kindreds().stream().map(Kindred::animals).toList());
        assertEquals(
                List.of(6_000L, 9_000L, 12_001L, 12_001L + 3_000, 12_001L + 6_001, 24_002L),
                told,
                "portion by portion; then 3,000, 3,001 and at last the largest");
    }

    /** Where no founder has the allele, nothing is left to be found out; where some may have it, there is. */
    @Test
    void what_costs_most_by_any_origin_is_what_is_told() {
        Model model = Model.builder(
                        "origins",
                        "1",
                        Catalogue.builder("origins.traits", "1")
                                .trait("eye", "dark", "pink")
                                .build())
                .locus(
                        "C",
                        locus -> locus.alleles("C", "c")
                                .dominant("C", "c")
                                .shows("C", "pigment")
                                .shows("c", "albino"))
                .trait(
                        "eye",
                        rule -> rule.when(Condition.where("C", "albino"), "pink")
                                .otherwise("dark"))
                .population(
                        "clear", one -> one.frequency("C", "C", Probability.ONE).frequency("C", "c", Probability.ZERO))
                .population(
                        "rare",
                        one -> one.frequency("C", "C", Probability.of(49, 50))
                                .frequency("C", "c", Probability.of(1, 50)))
                .build();
        Pedigree pedigree = crossed(Pedigree.builder("registry", "1"), 3).build();
        RecordedAnswers all = RecordedAnswers.of(Answers.of(CompiledModel.of(model), List.of()), pedigree);
        RegistryQuestion question = RegistryQuestion.ofRecords().carrying(List.of(HiddenAllele.find(model, "c")));
        List<Double> cells = new ArrayList<>();
        for (RecordedAnswers one : List.of(all, all.from("clear"), all.from("rare"))) {
            cells.add(one.check(question, Progress.NONE).kindreds().get(0).cells());
        }
        assertTrue(cells.get(1) < cells.get(2), cells::toString);
        assertEquals(cells.get(2), cells.get(0));
    }

    @Test
    void animals_to_look_at_again_are_listed_reason_by_reason() {
        PedigreeBuilder builder = Pedigree.builder("registry", "1");
        for (int i = 0; i < 7; i++) {
            sister(builder, "sister " + i, Sex.FEMALE);
        }
        RegistryReport report = RecordedAnswers.of(ANSWERS, builder.build())
                .within(0)
                .check(RegistryQuestion.ofRecords(), Progress.NONE);
        assertEquals(28, report.count(Verdict.NOT_DECIDED));
        String text = RegistryText.of(report, TextStyle.standard()).replaceAll("\\s+", " ");
        assertTrue(
                text.contains("\"sister 4\" and 8 more (the table and the document form list them all): Whether these"),
                text);
        assertFalse(text.contains("sister 5"), text);
    }

    private static RegistryReport mixed(int answers) {
        PedigreeBuilder builder = Pedigree.builder("registry", "1");
        backcrossed(builder, 1, 3);
        sister(builder, "sister", Sex.FEMALE);
        int[] asked = {0};
        return RecordedAnswers.of(ANSWERS, builder.build())
                .within(20)
                .check(
                        RegistryQuestion.ofRecords().carrying(List.of(ALBINO)),
                        Progress.NONE,
                        () -> asked[0]++ >= answers);
    }

    @Test
    void the_cheapest_relatives_come_first_and_their_cost_is_told() {
        RegistryReport report = mixed(Integer.MAX_VALUE);
        assertEquals(
                List.of(4, 6), report.kindreds().stream().map(Kindred::animals).toList());
        assertEquals(0, report.kindreds().get(0).cells(), report.kindreds().toString());
        assertTrue(report.kindreds().get(0).within());
        assertTrue(report.kindreds().get(1).cells() > 1);
        assertFalse(report.kindreds().get(1).within());
        assertEquals(4, report.count(Standing.EXACT), "what has no loops");
        assertEquals(6, report.count(Standing.TOO_LARGE), "what has");
        assertEquals(0, report.count(Standing.NOT_IN_TIME));
    }

    /** Whatever the time, an animal has its chance or is told to have none; what there is does not depend on the time. */
    @Test
    void what_is_not_come_to_in_time_is_told() {
        RegistryReport whole = mixed(Integer.MAX_VALUE);
        long before = 0;
        for (int answers : new int[] {0, 1, 2, 3, 1000}) {
            RegistryReport some = mixed(answers);
            long left = some.count(Standing.NOT_IN_TIME);
            assertTrue(answers > 0 ? left <= before : left == 10, left + " after " + answers);
            before = left;
            for (int i = 0; i < 10; i++) {
                Chance chance = some.entries().get(i).chances().get(0);
                if (chance.standing() == Standing.NOT_IN_TIME) {
                    assertEquals("not worked out within the time", chance.toString());
                } else {
                    assertEquals(whole.entries().get(i).chances().get(0), chance);
                }
            }
            assertEquals(left == 0, some.kindreds().stream().allMatch(Kindred::inTime), "the kindreds say so, too");
            assertEquals(whole.conflicts(), some.conflicts());
        }
        assertEquals(0, before);
        List<String> table = RegistryTable.write(mixed(0)).lines().toList();
        assertTrue(table.get(1).endsWith(",,not in time,"), table.get(1));
    }

    @Test
    void a_check_can_be_stopped() {
        RecordedAnswers asked = RecordedAnswers.of(
                ANSWERS,
                sister(Pedigree.builder("registry", "1"), "sister", Sex.FEMALE).build());
        Thread.currentThread().interrupt();
        assertThrows(CancellationException.class, () -> asked.check(RegistryQuestion.ofRecords(), Progress.NONE));
        assertTrue(Thread.interrupted());
        assertThrows(
                CancellationException.class,
                () -> asked.check(RegistryQuestion.ofRecords(), (done, all) -> {
                    throw new CancellationException("stop");
                }));
        assertFalse(asked.check(RegistryQuestion.ofRecords(), Progress.NONE)
                .entries()
                .isEmpty());
    }
}
