package org.geneticsrules.answer;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Diagram;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Judgeable;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/**
 * The traits an answer is about: those asked for, or all that can be seen. What is asked for and cannot be told is refused; of all that
 * can be seen, what cannot be told at the stage is left out, and said to be.
 *
 * @param traits trait ids, the sex first if it is among them
 * @param stage when they are looked at: as stated, or completed where what is not stated does not matter
 * @param notices what is left out, and when to look again
 * @param takenAsTold traits of which the stage does not state the count from which they can be told; they are taken as told
 */
record Asked(List<String> traits, LifeStage stage, List<String> notices, Set<String> takenAsTold) {

    /** Traits that do not fit in with the others are tried up to this number. */
    private static final int MOST_TRIED = 3;

    Asked {
        traits = ImmutableList.copyOf(traits);
        notices = ImmutableList.copyOf(notices);
        takenAsTold = ImmutableSet.copyOf(takenAsTold);
    }

    /**
     * Checks traits.
     *
     * @param who who is looked at, for messages
     * @param stages what stages matter to the animals in question
     * @throws ProblemsException if a trait is unknown, not modelled or cannot be told at the stage, or the stage lacks what it depends on
     */
    static Asked of(CompiledModel compiled, String who, Set<String> asked, LifeStage stage, Stages stages) {
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
        LifeStage settled = stage;
        for (String trait : all ? model.visibleTraits() : named) {
            try {
                LifeStage when = settled(compiled, trait, stage, stages);
                settled = when.equals(stage) ? settled : when;
                traits.add(trait);
                if (model.catalogue().judgeable(trait, stage) == Judgeable.UNKNOWN) {
                    taken.add(trait);
                }
            } catch (ProblemsException e) {
                e.problems().forEach(problem -> problems.add(about(who, problem)));
                Problem first = e.problems().get(0);
                notices.add("\"" + trait + "\" is left out: " + first.message()
                        + first.expected().map(needed -> "; it needs " + needed).orElse(""));
            }
        }
        if (!problems.isEmpty() && (!all || traits.isEmpty())) {
            throw new ProblemsException(new ArrayList<>(new LinkedHashSet<>(problems)));
        }
        if (sex) {
            traits.add(0, Sex.VARIABLE);
        }
        return new Asked(traits, settled, notices, taken);
    }

    /**
     * Keeps as many traits as can be answered together, in declared order, and says which are left out. One is kept in any case, so that
     * a refusal can say what is too large.
     *
     * @param fit whether some traits can be answered together
     */
    Asked together(Predicate<List<String>> fit) {
        List<String> kept = new ArrayList<>();
        List<String> left = new ArrayList<>();
        for (String trait : traits) {
            List<String> longer = new ArrayList<>(kept);
            longer.add(trait);
            if (kept.isEmpty() || (left.size() < MOST_TRIED && fit.test(longer))) {
                kept = longer;
            } else {
                left.add(trait);
            }
        }
        if (left.isEmpty()) {
            return this;
        }
        List<String> more = new ArrayList<>(notices);
        more.add("all traits together have too many looks for one answer, so these are left out: "
                + String.join(", ", left) + "; ask about them by name, a few at a time");
        Set<String> taken = new LinkedHashSet<>(takenAsTold);
        taken.retainAll(kept);
        return new Asked(kept, stage, more, taken);
    }

    /** Whether the looks in some traits, of whatever genotype, are few enough to go through. */
    static boolean fits(CompiledModel compiled, View view, int mostLooks, int mostTests) {
        try {
            Diagram<Phenotype> diagram = compiled.diagram(view);
            return diagram.outcomes().size() <= mostLooks && diagram.size() <= mostTests;
        } catch (TooLargeException e) {
            return false;
        }
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

    /** The stage at which one trait can be answered; fails if it cannot. */
    private static LifeStage settled(CompiledModel compiled, String trait, LifeStage stage, Stages stages) {
        if (compiled.model().catalogue().judgeable(trait, stage) == Judgeable.NO) {
            LifeStage from = Evident.from(compiled.model(), trait);
            throw new ProblemsException(
                    Problem.of(Stage.MEANING, "stage-needed", "", "\"" + trait + "\" cannot be told at " + stage)
                            .expecting("a stage from " + from + " on; look again then"));
        }
        return stages.settle(stage, when -> compiled.diagram(new View(List.of(trait), when, Census.CONCEIVED)));
    }

    /** A problem with a word on who it is about. */
    static Problem about(String who, Problem problem) {
        Problem named = Problem.of(problem.stage(), problem.code(), problem.pointer(), who + ": " + problem.message());
        return problem.expected().map(named::expecting).orElse(named);
    }
}
