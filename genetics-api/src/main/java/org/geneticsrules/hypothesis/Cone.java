package org.geneticsrules.hypothesis;

import java.util.Collection;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.trait.Clock;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;

/** What some traits of a model have to do with age and season, through the traits they read and the masks that cover them. */
final class Cone {

    private final Model model;
    private final Set<String> seen = new LinkedHashSet<>();
    private final Map<Clock, Double> paths = new EnumMap<>(Clock.class);
    private boolean season;

    private Cone(Model model) {
        this.model = model;
    }

    static Cone of(Model model, Collection<String> traits) {
        Cone cone = new Cone(model);
        for (String trait : traits) {
            cone.own(trait);
            for (Mask mask : model.masks().values()) {
                if (mask.covers().containsKey(trait)) {
                    cone.condition(mask.when());
                }
            }
        }
        return cone;
    }

    boolean readsSeason() {
        return season;
    }

    boolean reads(Clock clock) {
        return paths.containsKey(clock);
    }

    /** In how many states all that progresses with a clock may be together; 1 if nothing does. */
    double states(Clock clock) {
        return paths.getOrDefault(clock, 1.0);
    }

    private void own(String trait) {
        TraitRule rule = model.rules().get(trait);
        if (rule != null && seen.add(trait)) {
            for (Case one : rule.allCases()) {
                condition(one.when());
                if (one.gives() instanceof CaseState.Progression chain) {
                    paths.merge(chain.clock(), (double) chain.states().size(), (a, b) -> a * b);
                }
            }
        }
    }

    private void condition(Condition condition) {
        for (String name : condition.names()) {
            season |= name.equals(LifeStage.SEASON);
            own(name);
        }
    }
}
