package org.geneticsrules.answer.compared;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.recorded.Progress;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.planning.Effort;
import org.geneticsrules.planning.ExpectedRatio;
import org.geneticsrules.planning.Step;
import org.geneticsrules.planning.Worth;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.testing.Coats;
import org.junit.jupiter.api.Test;

/** What is stated along with the question of what to do next, and what a verdict says of what is seldom. */
class TellApartStatedTest {

    /** A name that lifts nothing is refused where no mating is asked about, too; a mating named twice is worked out once. */
    @Test
    void what_is_named_is_checked_and_counts_once() {
        ProblemsException unknown = assertThrows(
                ProblemsException.class,
                () -> TellApartTest.ask(
                        TellApartQuestion.usual().inSpiteOf(List.of("close matin")),
                        TellApartTest.carriers(),
                        List.of(TellApartTest.closeMating()),
                        Coats.recessive(),
                        Coats.lethal()));
        assertEquals("unknown-exclusion", unknown.problems().get(0).code());
        assertEquals(Optional.of("close mating"), unknown.problems().get(0).nearest());
        TellApartQuestion once = TellApartQuestion.usual().planned("sire", "dam");
        assertEquals(once, once.planned("sire", "dam"));
        TellApartAnswer answer = TellApartTest.ask(once, TellApartTest.carriers(), Coats.recessive(), Coats.lethal());
        assertEquals(
                1,
                answer.tried().stream()
                        .filter(one -> one.effort() == Effort.PLANNED_MATING)
                        .findFirst()
                        .orElseThrow()
                        .tried());
    }

    /** What is believed beforehand moves what a step clears up; where nothing is believed of the models that are left, that is refused. */
    @Test
    void what_is_believed_beforehand_counts() {
        TellApartQuestion question = TellApartQuestion.usual().planned("sire", "dam");
        LitterAnswers litters = LitterAnswers.of(RecordedAnswers.of(
                Answers.of(CompiledModel.of(Coats.recessive()), List.of()), TellApartTest.carriers()));
        List<Candidate> others = List.of(Candidate.of(Coats.lethal()));
        TellApartAnswer doubted = litters.believing(Map.of(Coats.recessive().reference(), Probability.of(1, 3)))
                .tellApart(question, others, Progress.NONE);
        assertEquals(0.25, doubted.models().get(0).belief(), 1e-9);
        assertEquals(0.75, doubted.models().get(1).belief(), 1e-9);
        LitterAnswers first = litters.believing(Map.of(Coats.recessive().reference(), Probability.ZERO));
        ProblemsException none = assertThrows(
                ProblemsException.class,
                () -> first.tellApart(
                        question, List.of(Candidate.of(Coats.lethal()).believed(Probability.ZERO)), Progress.NONE));
        assertEquals("no-belief", none.problems().get(0).code());
    }

    /** That one of many thousand kits would exclude a model makes no step that is expected to be evidence. */
    @Test
    void what_excludes_very_seldom_is_hardly_evidence() {
        for (double excluding : new double[] {0.0001, 0.25}) {
            ExpectedRatio ratio = new ExpectedRatio(0, 1, Double.POSITIVE_INFINITY, excluding, 0.02);
            Worth worth = new Worth(
                    Step.test("sire", "A"),
                    Worth.Standing.TELLS,
                    Optional.empty(),
                    List.of(),
                    List.of(ratio),
                    0.01,
                    List.of(),
                    0,
                    Set.of("sire"),
                    Optional.empty());
            List<TellApartAnswer.OfModel> models = List.of(Coats.recessive(), Coats.lethal()).stream()
                    .map(one -> new TellApartAnswer.OfModel(one.id(), one.reference(), 0, 0.5))
                    .toList();
            ApartStep step = new ApartStep("a test", worth, List.of(), List.of(), List.of(), Optional.empty());
            String words =
                    new ApartVerdict(models, List.of(), 20, List.of(step), List.of(), Set.of(), List.of()).words();
            assertEquals(excluding < 0.05, words.contains("not expected to be evidence"), words);
        }
    }
}
