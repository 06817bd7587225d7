package org.geneticsrules.answer;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Trait;

/** The looks that some genotypes may have. */
final class PossibleLooks {

    private PossibleLooks() {}

    /** Looks in some traits, in the declared order of states; at any stage where what is stated of it leaves that open. */
    static Set<Phenotype> of(CompiledModel compiled, GenotypeSet genotypes, List<String> traits, LifeStage stage) {
        return atAnyStage(
                compiled.model(),
                stage,
                when -> compiled.diagram(new View(traits, when, Census.CONCEIVED))
                        .among(genotypes));
    }

    /** What is possible at a stage; if it lacks what matters, at any stage that agrees with it. */
    static Set<Phenotype> atAnyStage(Model model, LifeStage stage, Function<LifeStage, Set<Phenotype>> looks) {
        try {
            return looks.apply(stage);
        } catch (ProblemsException stageNeeded) {
            Set<Phenotype> found = new LinkedHashSet<>();
            completed(model, stage).forEach(when -> found.addAll(looks.apply(when)));
            return found;
        }
    }

    /** Stages enough to reach every state that a progression ever reaches: it needs no more steps than there are states. */
    private static List<LifeStage> completed(Model model, LifeStage stage) {
        int most = model.catalogue().traits().values().stream()
                .map(Trait::states)
                .mapToInt(List::size)
                .max()
                .orElse(1);
        List<Optional<String>> seasons =
                stage.season().isPresent() || model.catalogue().seasons().isEmpty()
                        ? List.of(stage.season())
                        : model.catalogue().seasons().stream().map(Optional::of).toList();
        List<LifeStage> stages = new ArrayList<>();
        for (int count = 0; count < most; count++) {
            for (Optional<String> season : seasons) {
                stages.add(new LifeStage(
                        stage.weeks().isPresent() ? stage.weeks() : OptionalInt.of(count),
                        stage.moult().isPresent() ? stage.moult() : OptionalInt.of(count),
                        season));
            }
        }
        return ImmutableList.copyOf(stages);
    }
}
