package org.geneticsrules.answer;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;

/**
 * Tells whether a stage that is not stated matters for the animals in question.
 *
 * <p>A statement that depends on an age, a moult or a season matters only to animals that its condition can be true of. If a locus rules
 * it out in all of them, then the answer is the same at every stage, and any stage will do.
 */
final class Stages {

    private final Model model;
    private final Function<Locus, Set<String>> shown;

    private Stages(Model model, Function<Locus, Set<String>> shown) {
        this.model = model;
        this.shown = shown;
    }

    /** For one animal. */
    static Stages of(GenotypeSet known) {
        return new Stages(known.model(), locus -> {
            Set<String> found = new LinkedHashSet<>();
            known.pairs(locus.id()).forEach(pair -> found.addAll(locus.expressions(pair)));
            return found;
        });
    }

    /** For the young of some males and a female. */
    static Stages ofYoung(CompiledModel compiled, List<Animal> males, Animal dam) {
        Model model = compiled.model();
        return new Stages(model, locus -> {
            Set<String> found = new LinkedHashSet<>();
            for (Animal male : males) {
                Inherited.pairs(model, male.genotypes(), dam.genotypes(), List.of(locus.id()))
                        .getOrDefault(locus.id(), List.of())
                        .forEach(pair -> found.addAll(locus.expressions(pair)));
            }
            return found;
        });
    }

    /**
     * Returns a stage at which a question can be answered.
     *
     * @param stage what is stated of it
     * @param question fails with the code {@code stage-needed} where a stage lacks something
     * @return the stage as stated if it suffices, or a complete one if what it lacks does not matter
     * @throws ProblemsException if what it lacks matters
     */
    LifeStage settle(LifeStage stage, Consumer<LifeStage> question) {
        try {
            question.accept(stage);
            return stage;
        } catch (ProblemsException missing) {
            if (missing.problems().stream().anyMatch(this::matters)) {
                throw new ProblemsException(missing.problems().stream()
                        .map(found -> found.code().equals("stage-needed")
                                ? found.expecting(found.expected().orElse("a stage that states it")
                                        + ", or look again when it is known")
                                : found)
                        .toList());
            }
            return new LifeStage(
                    stage.weeks().isPresent() ? stage.weeks() : OptionalInt.of(0),
                    stage.moult().isPresent() ? stage.moult() : OptionalInt.of(0),
                    stage.season().or(() -> model.catalogue().seasons().stream().findFirst()));
        }
    }

    private boolean matters(Problem problem) {
        return !problem.code().equals("stage-needed")
                || condition(problem.pointer()).map(this::mayHold).orElse(true);
    }

    private boolean mayHold(Condition condition) {
        for (Map.Entry<String, Allowed> variable : condition.variables().entrySet()) {
            Locus locus = model.loci().get(variable.getKey());
            if (locus != null && shown.apply(locus).stream().noneMatch(variable.getValue()::allows)) {
                return false;
            }
        }
        return true;
    }

    /** The condition of the case or mask at a pointer; a complement may hold of any animal. */
    private Optional<Condition> condition(String pointer) {
        Optional<Case> one = ChanceWays.caseAt(model, pointer);
        if (one.isPresent()) {
            return one.map(Case::when);
        }
        for (Mask mask : model.masks().values()) {
            if (Pointer.of("masks", mask.id()).equals(pointer)) {
                return Optional.of(mask.when());
            }
        }
        return Optional.empty();
    }
}
