package org.geneticsrules.answer;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.caution.CautionSet;
import org.geneticsrules.caution.Situation;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Population;
import org.geneticsrules.model.Statement;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Phenotype;

/**
 * Answers questions under one model, with reasons, cautions and evidence.
 *
 * <pre>{@code
 * Answers answers = Answers.of(CompiledModel.of(model), cautions);
 * Answer answer = answers.mating(MatingQuestion.of(hob, jill));
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Answers {

    private final CompiledModel compiled;
    private final ImmutableList<CautionSet> cautions;

    private Answers(CompiledModel compiled, ImmutableList<CautionSet> cautions) {
        this.compiled = compiled;
        this.cautions = cautions;
    }

    /**
     * Answers under a model.
     *
     * @param compiled the model
     * @param cautions the cautions to raise
     * @return the answering service
     */
    public static Answers of(CompiledModel compiled, Collection<CautionSet> cautions) {
        return new Answers(compiled, ImmutableList.copyOf(cautions));
    }

    /**
     * Returns the model the answers rest on.
     *
     * @return the compiled model
     */
    public CompiledModel compiled() {
        return compiled;
    }

    /**
     * Answers what may come of a mating.
     *
     * @param question the question
     * @return the answer; a contradiction in what is stated of a parent is an answer too
     * @throws ProblemsException if a trait or state that is asked for is unknown
     * @throws TooLargeException if an exact answer would take too much work
     */
    public Answer mating(MatingQuestion question) {
        return new MatingAnswer(this, question).answer();
    }

    /**
     * Answers how an animal's look comes about and what it does not tell.
     *
     * @param question the question
     * @return the answer; a contradiction in what is stated of the animal is an answer too
     * @throws ProblemsException if a trait that is asked for is unknown
     * @throws TooLargeException if an exact answer would take too much work
     */
    public Answer coat(CoatQuestion question) {
        return new CoatAnswer(this, question).answer();
    }

    Model model() {
        return compiled.model();
    }

    /** The traits asked for, or all that can be seen; refuses traits the model has no rule for, with its reason. */
    List<String> traits(Set<String> asked) {
        Set<String> ruled = model().visibleTraits();
        Problems problems = new Problems(Stage.REFERENCES);
        for (String trait : asked) {
            String reason = model().notModelled().get(trait);
            if (reason != null) {
                problems.add(
                        "not-modelled", "", "model " + model() + " makes no claim about \"" + trait + "\": " + reason);
            } else if (!ruled.contains(trait)) {
                problems.unknown("unknown-trait", "", "trait", trait, ruled);
            }
        }
        problems.throwIfAny();
        return asked.isEmpty() ? ImmutableList.copyOf(ruled) : ImmutableList.copyOf(asked);
    }

    EvidenceLevel evidence(Set<String> pointers, Collection<Population> populations) {
        List<Statement> statements = new ArrayList<>();
        for (Statement statement : model().statements().values()) {
            boolean weighs = populations.stream()
                    .anyMatch(population -> statement.pointer().equals(pointer(population)));
            if (pointers.contains(statement.pointer()) || weighs) {
                statements.add(statement);
            }
        }
        return EvidenceLevel.of(statements);
    }

    private static String pointer(Population population) {
        return Pointer.of("populations", population.id());
    }

    static List<Rival> rivals(EvidenceLevel evidence) {
        List<Rival> rivals = new ArrayList<>();
        for (Statement statement : evidence.statements()) {
            statement
                    .evidence()
                    .ifPresent(support -> support.dissent().stream()
                            .filter(view -> rivals.stream()
                                    .noneMatch(rival -> rival.view().equals(view)))
                            .forEach(view -> rivals.add(new Rival(statement.pointer(), view))));
        }
        return rivals;
    }

    List<Phenotype> cautionLooks(Phenotype described, Function<List<String>, Set<Phenotype>> possible) {
        return CautionLooks.of(cautions, model().visibleTraits(), described, possible);
    }

    List<Caution> cautions(Situation situation) {
        return cautions.stream()
                .flatMap(set -> set.raisedBy(situation).stream())
                .toList();
    }
}
