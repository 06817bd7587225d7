package org.geneticsrules.answer.recorded;

import static org.geneticsrules.answer.recorded.Carriers.ALBINO;
import static org.geneticsrules.answer.recorded.Carriers.ANSWERS;
import static org.geneticsrules.answer.recorded.Carriers.DARK;
import static org.geneticsrules.answer.recorded.Carriers.PINK;
import static org.geneticsrules.answer.recorded.Carriers.female;
import static org.geneticsrules.answer.recorded.Carriers.male;
import static org.geneticsrules.answer.recorded.Carriers.sister;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CancellationException;
import org.geneticsrules.answer.recorded.RegistryReport.Entry;
import org.geneticsrules.answer.recorded.RegistryReport.Kindred;
import org.geneticsrules.answer.recorded.RegistryReport.Verdict;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.table.RegistryTable;
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
                "id,verdict,reason,conflicts,inbreeding at least,generations known,"
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

    /** A dam and her son, and what they have together; the kits are albino, so that the loop stays closed. */
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
        assertEquals(10, report.count(Standing.EXACT) + report.count(Standing.TOO_LARGE));
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
