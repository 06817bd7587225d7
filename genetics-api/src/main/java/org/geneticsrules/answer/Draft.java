package org.geneticsrules.answer;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.explanation.Hidden;
import org.geneticsrules.explanation.Reason;
import org.geneticsrules.model.Population;
import org.geneticsrules.probability.Probability;

/** An answer while it is put together; what is never set is absent. Not thread-safe. */
final class Draft {

    final List<String> given = new ArrayList<>();
    final Assumptions assumptions = new Assumptions();
    final List<Reason> because = new ArrayList<>();
    final List<Outcome> outcomes = new ArrayList<>();
    final List<Weighting> weightings = new ArrayList<>();
    final List<TestResult> tests = new ArrayList<>();
    final List<Hidden> hidden = new ArrayList<>();
    final List<Caution> cautions = new ArrayList<>();
    final Set<String> notices = new LinkedHashSet<>();
    final Set<String> statements = new LinkedHashSet<>();
    final Set<Population> populations = new LinkedHashSet<>();
    boolean unexplained;
    Status status = Status.EXACT;
    Optional<Probability> probability = Optional.empty();
    Optional<Probability> lost = Optional.empty();
    Optional<Litter> litter = Optional.empty();

    /** Leaves out all that rests on the verdict being another. */
    Draft undecided() {
        status = Status.UNDECIDED;
        because.clear();
        outcomes.clear();
        weightings.clear();
        tests.clear();
        hidden.clear();
        statements.clear();
        probability = Optional.empty();
        lost = Optional.empty();
        litter = Optional.empty();
        return this;
    }

    /**
     * The answer.
     *
     * @param same asks a rival model the same
     */
    Answer answer(Answers answers, Question question, String verdict, Function<Answers, RivalModel.Opinion> same) {
        List<RivalVerdict> otherwise = answers.rivalVerdicts(verdict, same, notices, cautions);
        EvidenceLevel evidence = status == Status.UNDECIDED && statements.isEmpty()
                ? EvidenceLevel.of(List.of())
                : answers.evidence(statements, populations);
        return new Answer(
                question,
                verdict,
                status,
                probability,
                lost,
                given,
                assumptions.list(),
                because,
                outcomes,
                litter,
                weightings,
                tests,
                hidden,
                otherwise,
                Answers.rivals(evidence),
                cautions,
                evidence,
                answers.model().reference(),
                new ArrayList<>(notices));
    }
}
