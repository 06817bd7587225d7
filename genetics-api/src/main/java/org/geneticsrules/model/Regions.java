package org.geneticsrules.model;

import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.BoxSet;
import org.geneticsrules.trait.BoxSpace;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Sex;

/**
 * Where, in the space of expressions of all loci, each own state of each trait lies and each condition holds.
 *
 * <p>Conditions may read traits, and traits read traits; here all is traced back to loci. The regions are unions of boxes and are
 * combined box by box; genotypes are never listed. They range over <i>declared</i> expressions, so they do not depend on the
 * dominance hypothesis.
 *
 * <p>Where a trait that a condition reads is not modelled, it is unknown whether the condition holds; {@link #holds} excludes such
 * expressions and {@link #mayHold} includes them.
 *
 * <p>Immutable and thread-safe.
 */
public final class Regions {

    private final Model model;
    private final BoxSpace space;
    private final Map<String, Map<String, BoxSet>> own = new LinkedHashMap<>();

    private Regions(Model model) {
        this.model = model;
        ImmutableMap.Builder<String, List<String>> variables = ImmutableMap.builder();
        model.loci().forEach((name, locus) -> variables.put(name, locus.expressions()));
        this.space = BoxSpace.of(variables.buildOrThrow());
        model.rules().keySet().forEach(this::trace);
    }

    /**
     * Traces a model's rules back to its loci.
     *
     * @param model a model
     * @return its regions
     * @throws TooLargeException if a rule needs too many boxes
     */
    public static Regions of(Model model) {
        return new Regions(model);
    }

    /**
     * Returns the space of expressions.
     *
     * @return one variable per locus, with its declared expressions
     */
    public BoxSpace space() {
        return space;
    }

    /**
     * Returns where a trait has one of some own states.
     *
     * @param trait id of a trait with a rule
     * @param states the own states
     * @return the region, without the expressions at which the trait is not modelled
     */
    public BoxSet own(String trait, Allowed states) {
        BoxSet region = space.nothing();
        for (Map.Entry<String, BoxSet> state : statesOf(trait).entrySet()) {
            if (states.allows(state.getKey())) {
                region = region.or(state.getValue());
            }
        }
        return region;
    }

    /**
     * Returns where the model makes no claim about a trait's own state.
     *
     * @param trait id of a trait
     * @return the region no case covers; everything for a trait without rule
     */
    public BoxSet notModelled(String trait) {
        BoxSet region = space.everything();
        if (model.rules().containsKey(trait)) {
            for (BoxSet state : statesOf(trait).values()) {
                region = region.minus(state);
            }
        }
        return region;
    }

    /**
     * Returns where a condition is known to hold.
     *
     * @param condition a condition over loci and traits with rules
     * @return the region
     */
    public BoxSet holds(Condition condition) {
        return region(condition, false);
    }

    /**
     * Returns where a condition is not known to fail.
     *
     * @param condition a condition over loci and traits with rules
     * @return the region, at least {@link #holds}
     */
    public BoxSet mayHold(Condition condition) {
        return region(condition, true);
    }

    /**
     * Returns a genotype whose expressions lie in a region, as an example that a person can check.
     *
     * @param region a region of this space
     * @return genotype text over the loci that the region restricts, or empty if no genotype reaches it
     */
    public Optional<String> witness(BoxSet region) {
        for (Condition box : region.boxes()) {
            List<String> parts = new ArrayList<>();
            for (Map.Entry<String, Allowed> variable : box.variables().entrySet()) {
                Locus locus = Objects.requireNonNull(model.loci().get(variable.getKey()));
                locus.pairs().stream()
                        .filter(pair -> variable.getValue().allows(locus.expression(pair, Sex.FEMALE)))
                        .findFirst()
                        .ifPresent(pair -> parts.add(pair.toString()));
            }
            if (parts.size() == box.names().size()) {
                return Optional.of(parts.isEmpty() ? "any genotype" : String.join(" ", parts));
            }
        }
        return Optional.empty();
    }

    private BoxSet region(Condition condition, boolean countUnknown) {
        BoxSet region = space.everything();
        for (Map.Entry<String, Allowed> variable : condition.variables().entrySet()) {
            String name = variable.getKey();
            if (model.loci().containsKey(name)) {
                region = region.and(space.where(name, variable.getValue()));
            } else {
                BoxSet known = own(name, variable.getValue());
                region = region.and(countUnknown ? known.or(notModelled(name)) : known);
            }
        }
        return region;
    }

    private Map<String, BoxSet> statesOf(String trait) {
        return Objects.requireNonNull(own.get(trait), trait);
    }

    /** Computes the regions of a trait after those of the traits it reads; the rules have no circle. */
    private void trace(String trait) {
        if (own.containsKey(trait)) {
            return;
        }
        TraitRule rule = Objects.requireNonNull(model.rules().get(trait));
        for (Case one : rule.cases()) {
            one.when().names().stream().filter(model.rules()::containsKey).forEach(this::trace);
        }
        Map<String, BoxSet> states = new LinkedHashMap<>();
        rule.states().forEach(state -> states.put(state, space.nothing()));
        BoxSet left = space.everything();
        for (Case one : rule.cases()) {
            one.gives().states().forEach(state -> states.merge(state, holds(one.when()), BoxSet::or));
            left = left.minus(mayHold(one.when()));
        }
        BoxSet rest = left;
        rule.otherwise()
                .ifPresent(last -> last.gives().states().forEach(state -> states.merge(state, rest, BoxSet::or)));
        own.put(trait, states);
    }
}
