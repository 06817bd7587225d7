package org.geneticsrules.answer.recorded;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Judgeable;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Reading;
import org.geneticsrules.trait.Trait;

/** Whether traits can be told at a stage, and if not, when. */
final class WhenTold {

    private final Ground ground;
    private final LifeStage stage;

    WhenTold(Ground ground, LifeStage stage) {
        this.ground = ground;
        this.stage = stage;
    }

    private Model model() {
        return ground.model();
    }

    /** From when on, and in which light, a trait can be told, as in "from moult 1 on, in daylight". */
    Optional<String> from(String trait) {
        return model().catalogue().trait(trait).flatMap(WhenTold::when);
    }

    private static Optional<String> when(Trait trait) {
        List<String> said = new ArrayList<>();
        trait.judgeableFrom().ifPresent(first -> said.add("from " + first + " on"));
        if (!trait.judgeableIn().isEmpty()) {
            said.add("in " + String.join(" or ", trait.judgeableIn()));
        }
        return said.isEmpty() ? Optional.empty() : Optional.of(String.join(", ", said));
    }

    /** How a trait is looked at, by the catalogue. */
    Optional<String> note(String trait) {
        return model().catalogue().trait(trait).flatMap(Trait::note);
    }

    boolean isTooEarly(String trait) {
        return model().catalogue().judgeable(trait, stage) == Judgeable.NO;
    }

    /** What the stage lacks that a trait depends on, as in "needs a season". */
    Optional<String> lacking(String trait) {
        return missing(trait).stream()
                .findFirst()
                .map(first -> "needs " + first.expected().orElse(first.message()));
    }

    private List<Problem> missing(String trait) {
        Phenotype any = Phenotype.of(trait, model().states(trait).get(0));
        try {
            ground.compiled().evidence(List.of(new Reading(stage, Set.of(any))), ground.confusions());
            return List.of();
        } catch (ProblemsException needed) {
            return needed.problems();
        }
    }

    /** Why a trait cannot be told at the stage, with when to look, each thing that is needed once; none if it can be. */
    List<Problem> problems(String trait) {
        if (isTooEarly(trait)) {
            return List.of(Problem.of(Stage.MEANING, "stage-needed", "", "\"" + trait + "\" cannot be told at " + stage)
                    .expecting("a stage "
                            + model().catalogue()
                                    .trait(trait)
                                    .flatMap(Trait::judgeableFrom)
                                    .map(first -> "from " + first + " on")
                                    .orElse("later")
                            + "; look again then"));
        }
        Map<String, Problem> needs = new LinkedHashMap<>();
        for (Problem one : missing(trait)) {
            String needed = one.expected().orElse("a stage that states it") + ", or look again when it is known";
            needs.putIfAbsent(
                    needed,
                    Problem.of(one.stage(), one.code(), one.pointer(), "\"" + trait + "\": " + one.message())
                            .expecting(needed));
        }
        return new ArrayList<>(needs.values());
    }
}
