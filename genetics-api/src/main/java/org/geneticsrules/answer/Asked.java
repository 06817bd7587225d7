package org.geneticsrules.answer;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Judgeable;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;

/**
 * The traits an answer is about: those asked for, or all that can be seen. What is asked for and cannot be told is refused; of all that
 * can be seen, what cannot be told at the stage is left out, and said to be.
 *
 * @param traits trait ids, the sex first if it is among them
 * @param notices what is left out, and when to look again
 * @param takenAsTold traits of which the stage does not state the count from which they can be told; they are taken as told
 */
record Asked(List<String> traits, List<String> notices, Set<String> takenAsTold) {

    Asked {
        traits = ImmutableList.copyOf(traits);
        notices = ImmutableList.copyOf(notices);
        takenAsTold = ImmutableSet.copyOf(takenAsTold);
    }

    /**
     * Checks traits.
     *
     * @param who who is looked at, for messages
     * @throws ProblemsException if a trait is unknown, not modelled or cannot be told at the stage, or the stage lacks what it depends on
     */
    static Asked of(CompiledModel compiled, String who, Set<String> asked, LifeStage stage) {
        Model model = compiled.model();
        model.catalogue().check(stage);
        boolean sex = asked.contains(Sex.VARIABLE);
        Set<String> named = new LinkedHashSet<>(asked);
        named.remove(Sex.VARIABLE);
        requireRuled(model, named);
        boolean all = named.isEmpty() && !sex;
        List<String> traits = new ArrayList<>();
        List<String> notices = new ArrayList<>();
        Set<String> taken = new LinkedHashSet<>();
        List<Problem> problems = new ArrayList<>();
        for (String trait : all ? model.visibleTraits() : named) {
            List<Problem> found = problems(compiled, trait, stage);
            found.forEach(problem -> problems.add(about(who, problem)));
            if (found.isEmpty()) {
                traits.add(trait);
                if (model.catalogue().judgeable(trait, stage) == Judgeable.UNKNOWN) {
                    taken.add(trait);
                }
            } else {
                notices.add("\"" + trait + "\" is left out: " + found.get(0).message()
                        + found.get(0)
                                .expected()
                                .map(needed -> "; it needs " + needed)
                                .orElse(""));
            }
        }
        if (!problems.isEmpty() && (!all || traits.isEmpty())) {
            throw new ProblemsException(new ArrayList<>(new LinkedHashSet<>(problems)));
        }
        if (sex) {
            traits.add(0, Sex.VARIABLE);
        }
        return new Asked(traits, notices, taken);
    }

    private static void requireRuled(Model model, Set<String> named) {
        Problems problems = new Problems(Stage.REFERENCES);
        for (String trait : named) {
            String reason = model.notModelled().get(trait);
            if (reason != null) {
                problems.add(
                        "not-modelled", "", "model " + model + " makes no claim about \"" + trait + "\": " + reason);
            } else if (!model.visibleTraits().contains(trait)) {
                problems.unknown("unknown-trait", "", "trait", trait, model.visibleTraits());
            }
        }
        problems.throwIfAny();
    }

    /** Why one trait cannot be asked about at a stage. */
    private static List<Problem> problems(CompiledModel compiled, String trait, LifeStage stage) {
        if (compiled.model().catalogue().judgeable(trait, stage) == Judgeable.NO) {
            LifeStage from = Evident.from(compiled.model(), trait);
            return List.of(Problem.of(Stage.MEANING, "stage-needed", "", "\"" + trait + "\" cannot be told at " + stage)
                    .expecting("a stage from " + from + " on; look again then"));
        }
        return missingStages(() -> compiled.diagram(new View(List.of(trait), stage, Census.CONCEIVED)));
    }

    /** What a question lacks of the stages it depends on. */
    static List<Problem> missingStages(Runnable question) {
        try {
            question.run();
            return ImmutableList.of();
        } catch (ProblemsException e) {
            return e.problems().stream()
                    .map(found -> found.expecting(
                            found.expected().orElse("a stage that states it") + ", or look again when it is known"))
                    .toList();
        }
    }

    /** A problem with a word on who it is about. */
    static Problem about(String who, Problem problem) {
        Problem named = Problem.of(problem.stage(), problem.code(), problem.pointer(), who + ": " + problem.message());
        return problem.expected().map(named::expecting).orElse(named);
    }
}
