package org.geneticsrules.expression;

import com.google.common.collect.ImmutableList;
import java.util.Collection;
import java.util.List;
import org.geneticsrules.trait.LifeStage;

/**
 * What is looked at: some traits, at a stage of life, of kits that are counted at some point.
 *
 * <p>{@code sex} may stand among the traits: then looks say whether a kit is female or male too.
 *
 * @param traits trait ids, without repetition
 * @param stage when the animals are looked at
 * @param census which kits are counted
 */
public record View(List<String> traits, LifeStage stage, Census census) {

    /**
     * Copies the traits.
     *
     * @param traits trait ids
     * @param stage when the animals are looked at
     * @param census which kits are counted
     */
    public View {
        traits = traits.stream().distinct().collect(ImmutableList.toImmutableList());
    }

    /**
     * Returns the view of some traits of the kits born, at a stage of which nothing is said.
     *
     * @param traits trait ids
     * @return the view
     */
    public static View of(Collection<String> traits) {
        return new View(ImmutableList.copyOf(traits), LifeStage.unstated(), Census.BORN);
    }

    /**
     * Returns the same at a stage.
     *
     * @param when when the animals are looked at
     * @return a copy
     */
    public View at(LifeStage when) {
        return new View(traits, when, census);
    }

    /**
     * Returns the same of other kits.
     *
     * @param counted which kits are counted
     * @return a copy
     */
    public View among(Census counted) {
        return new View(traits, stage, counted);
    }
}
