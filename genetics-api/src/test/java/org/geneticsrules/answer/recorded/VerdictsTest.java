package org.geneticsrules.answer.recorded;

import static org.geneticsrules.answer.recorded.Carriers.ALBINO;
import static org.geneticsrules.answer.recorded.Carriers.ANSWERS;
import static org.geneticsrules.answer.recorded.Carriers.MODEL;
import static org.geneticsrules.answer.recorded.Carriers.sister;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.answer.recorded.Later.OfState;
import org.geneticsrules.answer.recorded.Later.OfTrait;
import org.geneticsrules.answer.recorded.Later.Word;
import org.geneticsrules.answer.recorded.LookNext.Whether;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** What is said in a sentence of DNA tests and of later looks. */
class VerdictsTest {

    private static RecordedAnswer test(DnaTestQuestion question, Probability error) {
        Pedigree records = sister(Pedigree.builder("kennel", "1"), "Fen", Sex.FEMALE)
                .add(Individual.of("Tarn", Sex.MALE))
                .add(Individual.of("Stray"))
                .build();
        return RecordedAnswers.of(ANSWERS, records).from("rare").dnaTest(question.wrongIn(error));
    }

    private static double bits(RecordedAnswer answer) {
        return ((DnaTest) answer.finding()).tells().get(0).bits().orElseThrow();
    }

    /** Of k genotypes each is reported with 1/k then, whichever the animal has. */
    @Test
    void a_test_that_is_wrong_as_often_as_a_guess_tells_nothing_and_says_so() {
        String guess = "would tell nothing: it is wrong as often as a guess. No variant of it";
        RecordedAnswer of3 = test(DnaTestQuestion.of("Fen", ALBINO), Probability.of(2, 3));
        assertTrue(of3.verdict().startsWith("A DNA test of \"Fen\" at C " + guess), of3.verdict());
        assertEquals(0, bits(of3), 1e-12);
        RecordedAnswer locus = test(DnaTestQuestion.of("Fen", "C"), Probability.of(2, 3));
        assertTrue(locus.verdict().startsWith("A DNA test of \"Fen\" at C " + guess), locus.verdict());
        HiddenAllele unsound = HiddenAllele.find(MODEL, "x");
        RecordedAnswer of2 = test(DnaTestQuestion.of("Tarn", unsound), Probability.of(1, 2));
        assertTrue(of2.verdict().contains(guess), of2.verdict());
        assertEquals(0, bits(of2), 1e-12);
        for (Probability error : List.of(Probability.of(1, 2), Probability.of(3, 4))) {
            RecordedAnswer other = test(DnaTestQuestion.of("Fen", ALBINO), error);
            assertFalse(other.verdict().contains("guess"), other.verdict());
            assertTrue(bits(other) > 1e-6, other.verdict());
        }
    }

    /** A male has 2 genotypes there and a female 3: where a male tells nothing, a female does, and so does whichever is reported. */
    @Test
    void where_the_sexes_differ_no_error_makes_a_guess_of_both() {
        HiddenAllele unsound = HiddenAllele.find(MODEL, "x");
        for (Probability error : List.of(Probability.of(1, 2), Probability.of(2, 3), Probability.of(4, 5))) {
            RecordedAnswer stray = test(DnaTestQuestion.of("Stray", unsound), error);
            assertFalse(stray.verdict().contains("guess"), stray.verdict());
            assertTrue(bits(stray) > 1e-6, stray.verdict());
        }
    }

    @Test
    void what_holds_only_if_there_were_a_test_is_said_of_all_before_it() {
        String said = test(DnaTestQuestion.of("Fen", ALBINO), Probability.ZERO).verdict();
        assertTrue(said.endsWith("no test of it: all of this would hold only if there were such a test."), said);
    }

    @Test
    void the_likeliest_is_named_only_where_it_is_known_by_every_origin() {
        assertEquals("hue a or b, most likely b", said(List.of(0.25, 0.75)));
        assertEquals("hue a or b, each as likely as the other", said(List.of(0.5, 0.5)));
        assertEquals("hue a or b or c, all equally likely", said(List.of(0.25, 0.25, 0.25)));
        assertEquals("hue a or b or c, most likely a or b", said(List.of(0.375, 0.375, 0.25)));
        assertEquals(
                "hue a or b, and which is likeliest hangs on how common alleles are",
                said(List.of(0.25, 0.75), List.of(0.75, 0.25)));
        assertEquals("hue a or b", said(List.of(0.25, Double.NaN)));
        assertEquals("hue a or b", said(List.of(0.25, 0.75), List.of(Double.NaN, Double.NaN)));
        assertEquals("hue a or b", said());
    }

    /** What is said of states a, b, ... with these chances by each origin; NaN is one that was not worked out. */
    @SafeVarargs
    private static String said(List<Double>... byOrigin) {
        List<Origin> origins = new ArrayList<>();
        List<OfState> states = new ArrayList<>();
        for (List<Double> ignored : byOrigin) {
            origins.add(new Origin(Optional.empty()));
        }
        int count = byOrigin.length == 0 ? 2 : byOrigin[0].size();
        for (int state = 0; state < count; state++) {
            List<Chance> chances = new ArrayList<>();
            for (List<Double> origin : byOrigin) {
                double chance = origin.get(state);
                chances.add(Double.isNaN(chance) ? Chance.unsettled(Standing.TOO_LARGE) : Chance.exact(chance));
            }
            states.add(new OfState(Character.toString('a' + state), Whether.POSSIBLE, chances, List.of()));
        }
        OfTrait hue = new OfTrait("hue", false, Word.MAY_SHOW, states, Optional.empty(), Optional.empty());
        String verdict =
                new LaterWords(new Later("Fen", LifeStage.atMoult(3), origins, List.of(hue)), true).verdict(false);
        String before = "At moult 3, by all records, \"Fen\" may show ";
        assertTrue(verdict.startsWith(before) && verdict.endsWith("."), verdict);
        return verdict.substring(before.length(), verdict.length() - 1);
    }
}
