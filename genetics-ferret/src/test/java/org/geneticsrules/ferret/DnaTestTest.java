package org.geneticsrules.ferret;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.answer.recorded.DnaTest;
import org.geneticsrules.answer.recorded.DnaTest.Cause;
import org.geneticsrules.answer.recorded.DnaTest.Report;
import org.geneticsrules.answer.recorded.DnaTestQuestion;
import org.geneticsrules.answer.recorded.RecordedAnswer;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** What a DNA test would tell of the full sister of an albino, and what the models know of such a test. */
class DnaTestTest {

    private static final Probability ERROR = Probability.of(1, 50);

    private static Observation eyes(String colour) {
        return Observation.of(LifeStage.atWeek(9), Phenotype.of("eye colour", colour));
    }

    private static RecordedAnswers sister(Model model) {
        Pedigree kennel = Pedigree.builder("kennel", "1")
                .add(Individual.of("Wicket", Sex.FEMALE).with(eyes("dark")))
                .add(Individual.of("Tarn", Sex.MALE).with(eyes("dark")))
                .add(Individual.of("Sorrel", Sex.FEMALE).with(eyes("pink")))
                .add(Individual.of("Fen", Sex.FEMALE).with(eyes("dark")))
                .add(Litter.of("A", "Wicket", "Tarn", "Sorrel", "Fen"))
                .build();
        return RecordedAnswers.of(Answers.of(CompiledModel.of(model), List.of(Ferret.cautions())), kennel)
                .from("few carriers");
    }

    private static RecordedAnswer ask(Model model, String allele, Probability error) {
        return sister(model)
                .dnaTest(DnaTestQuestion.of("Fen", HiddenAllele.find(model, allele))
                        .wrongIn(error));
    }

    private static DnaTest found(RecordedAnswer answer) {
        return (DnaTest) answer.finding();
    }

    /** What is reported, with its chance and the chance that she carries the allele then. */
    private static Map<String, String> reports(DnaTest found) {
        Map<String, String> reports = new TreeMap<>();
        for (Report one : found.reports()) {
            reports.put(
                    one.reported().toString(),
                    one.chances().get(0) + " -> " + one.after().carries().get(0));
        }
        return reports;
    }

    /**
     * Calculated by hand. Both parents carry, so that a dark kit is C/C : C/c = 1 : 2. A test that is wrong in 1/50 of cases reports each of
     * the two other genotypes with 1/100.
     *
     * <pre>
     *   reports C/c   2/3 x 49/50 + 1/3 x 1/100 = 197/300   carries  196/197
     *   reports C/C   1/3 x 49/50 + 2/3 x 1/100 = 100/300   carries    2/100
     *   reports c/c   1/3 x 1/100 + 2/3 x 1/100 =   3/300   carries  2/3, as before: her eyes are dark
     *
     *   tells H(197/300, 1/3, 1/100) - H(49/50, 1/100, 1/100) = 0.993203 - 0.161441 = 0.831763 bits
     * </pre>
     */
    @Test
    void the_sister_of_an_albino_by_a_test_that_errs() {
        Model dna = Ferret.model("molecular-only");
        RecordedAnswer answer = ask(dna, "c", ERROR);
        DnaTest found = found(answer);
        assertEquals("2/3 (66.67 %)", found.before().carries().get(0).toString());
        assertEquals(
                Map.of(
                        "C/C", "1/3 (33.33 %) -> 1/50 (2 %)",
                        "C/c", "197/300 (65.67 %) -> 196/197 (99.49 %)",
                        "c/c", "1/100 (1 %) -> 2/3 (66.67 %)"),
                reports(found));
        assertEquals(0.831763, found.tells().get(0).bits().orElseThrow(), 1e-6);
        assertEquals(
                "A DNA test of \"Fen\" at C would tell whether it is likely to carry exon 4 deleted, but settle nothing by"
                        + " itself, since it is wrong in 1/50 of cases. A cause of it in the DNA is on record, so there may be"
                        + " a test without any mating.",
                answer.verdict());
    }

    /** Without error it settles the case, and tells the entropy of 2/3 : 1/3. */
    @Test
    void a_test_that_never_errs_settles_it() {
        RecordedAnswer answer = ask(Ferret.model("molecular-only"), "c", Probability.ZERO);
        DnaTest found = found(answer);
        assertEquals(Map.of("C/C", "1/3 (33.33 %) -> 0", "C/c", "2/3 (66.67 %) -> 1"), reports(found));
        double entropy = -(2.0 / 3 * Math.log(2.0 / 3) + 1.0 / 3 * Math.log(1.0 / 3)) / Math.log(2);
        assertEquals(entropy, found.tells().get(0).bits().orElseThrow(), 1e-12);
        assertTrue(answer.verdict().contains("would settle whether it carries"), answer.verdict());
        assertTrue(answer.assumptions().stream()
                .anyMatch(
                        one -> one.id().equals("test-error") && one.otherwise().contains("ask the laboratory")));
        assertTrue(answer.assumptions().stream().anyMatch(one -> one.id().equals("sample")));
        assertTrue(
                answer.notices().stream().anyMatch(one -> one.startsWith("whether any laboratory offers such a test")),
                answer.notices().toString());
    }

    /** The cause of albino is on record, one study speaks of silver, and of the others nothing is known. */
    @Test
    void what_is_known_of_a_cause_is_told_allele_by_allele() {
        Model common = Ferret.common();
        DnaTest albino = found(ask(common, "albino", ERROR));
        assertEquals(Cause.ON_RECORD, albino.cause());
        assertTrue(albino.support().stream()
                .anyMatch(one -> one.grade() == Grade.MOLECULAR
                        && one.evidence().orElseThrow().sources().stream()
                                .anyMatch(source -> source.contains("OMIA"))));
        assertEquals(Cause.ONE_STUDY, found(ask(common, "silver", ERROR)).cause());
        for (String other : List.of("sandy", "long coat", "point")) {
            RecordedAnswer answer = ask(common, other, ERROR);
            assertEquals(Cause.NONE_KNOWN, found(answer).cause(), other);
            assertTrue(answer.verdict().contains("no test of it"), answer.verdict());
            assertFalse(answer.verdict().contains("on record"), answer.verdict());
        }
    }

    @Test
    void what_the_records_settle_needs_no_test() {
        Model common = Ferret.common();
        RecordedAnswer parent =
                sister(common).dnaTest(DnaTestQuestion.of("Wicket", HiddenAllele.find(common, "albino")));
        assertTrue(
                parent.verdict().startsWith("That \"Wicket\" carries albino is settled by its records;"),
                parent.verdict());
        RecordedAnswer albino = sister(common).dnaTest(DnaTestQuestion.of("Sorrel", "C"));
        assertEquals(
                "A DNA test of \"Sorrel\" at C would tell nothing new: its records leave one genotype only, c/c. A cause of it in"
                        + " the DNA is on record, so there may be a test without any mating.",
                albino.verdict());
        assertEquals(0, found(albino).tells().get(0).bits().orElseThrow(), 1e-12);
    }
}
