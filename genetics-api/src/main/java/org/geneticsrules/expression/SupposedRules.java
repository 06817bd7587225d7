package org.geneticsrules.expression;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.LifeStage;

/**
 * The diagrams of rules some of whose statements may say anything: what they say is tested at a level of its own, below all levels of
 * the plan.
 *
 * <p>A locus may show any of its expressions. Any state may be given to a trait that some case or {@code otherwise} decides. A mask may
 * cover with any state, or cover nothing; where a mask that says what is stated is active too, both agree, or it would be no model.
 *
 * <p>A statement is held in some animals and may say anything in the others: the first are given by a diagram over the plan's levels.
 */
final class SupposedRules extends RuleDiagrams {

    /** What may say anything: the rule of a trait, a mask, or the dominance of a locus. */
    record Part(Kind kind, String id) {
        /** Kinds of parts. */
        enum Kind {
            TRAIT,
            MASK,
            LOCUS
        }
    }

    private final Map<Part, Integer> levels;
    private final Map<Part, Integer> held;

    /**
     * Prepares the rules.
     *
     * @param levels the level at which it is tested what a part says
     * @param held for each part that may say anything, the diagram whose leaf value is 1 where it says what is stated
     */
    SupposedRules(Model model, Axes axes, Nodes nodes, Map<Part, Integer> levels, Map<Part, Integer> held) {
        super(model, axes, nodes);
        this.levels = levels;
        this.held = new LinkedHashMap<>(held);
    }

    private int said(Part part) {
        return nodes.test(Objects.requireNonNull(levels.get(part)), value -> value);
    }

    /** The first diagram where a part says what is stated, the second where it may say anything. */
    private int either(int holds, int stated, int free) {
        int marked = nodes.combine(holds, stated, new Nodes.Meeting() {
            @Override
            public int early(int here, int value) {
                return here == Nodes.leaf(0) ? here : OPEN;
            }

            @Override
            public int value(int here, int value) {
                return here == 0 ? 0 : value + 1;
            }
        });
        return nodes.combine(marked, free, new Nodes.Meeting() {
            @Override
            public int early(int value, int other) {
                return value == Nodes.leaf(0) ? other : value < 0 ? Nodes.leaf(Nodes.value(value) - 1) : OPEN;
            }

            @Override
            public int value(int value, int other) {
                return value == 0 ? other : value - 1;
            }
        });
    }

    @Override
    int own(TraitRule rule, LifeStage stage) {
        int stated = super.own(rule, stage);
        Part part = new Part(Part.Kind.TRAIT, rule.trait());
        Integer holds = held.get(part);
        if (holds == null) {
            return stated;
        }
        int none = rule.states().size();
        int free = nodes.combine(stated, said(part), (state, other) -> state == none ? none : other);
        return either(holds, stated, free);
    }

    /** Leaf values: the position of the expression of a locus; empty where it shows what its dominance says. */
    private Optional<Integer> shows(String locus) {
        Part part = new Part(Part.Kind.LOCUS, locus);
        return Optional.ofNullable(held.get(part))
                .map(holds ->
                        either(holds, nodes.test(axes.position(locus).orElseThrow(), value -> value), said(part)));
    }

    private int allowed(int shows, List<String> expressions, Allowed allowed) {
        return nodes.map(shows, value -> allowed.allows(expressions.get(value)) ? HOLDS : FAILS);
    }

    @Override
    int variable(String name, Allowed allowed, LifeStage stage) {
        return model.loci().containsKey(name)
                ? shows(name)
                        .map(diagram -> allowed(diagram, model.locus(name).expressions(), allowed))
                        .orElseGet(() -> super.variable(name, allowed, stage))
                : super.variable(name, allowed, stage);
    }

    @Override
    int sums(CaseState.Threshold sums, OptionalInt draw, List<String> states) {
        if (sums.doses().keySet().stream().noneMatch(locus -> held.containsKey(new Part(Part.Kind.LOCUS, locus)))) {
            return super.sums(sums, draw, states);
        }
        int[] residual =
                sums.residual().outcomes().stream().mapToInt(Integer::intValue).toArray();
        int lowestResidual = Arrays.stream(residual).min().orElseThrow();
        int least = lowestResidual;
        int sum = draw.isPresent()
                ? nodes.test(draw.getAsInt(), outcome -> residual[outcome] - lowestResidual)
                : Nodes.leaf(0);
        for (Map.Entry<String, Map<String, Integer>> dose : sums.doses().entrySet()) {
            int[] doses = model.locus(dose.getKey()).expressions().stream()
                    .mapToInt(expression -> dose.getValue().getOrDefault(expression, 0))
                    .toArray();
            int lowest = Arrays.stream(doses).min().orElseThrow();
            int position = axes.position(dose.getKey()).orElseThrow();
            int shows = shows(dose.getKey()).orElseGet(() -> nodes.test(position, value -> value));
            sum = nodes.combine(sum, shows, (soFar, expression) -> soFar + doses[expression] - lowest);
            least += lowest;
        }
        int start = least;
        return nodes.map(sum, above -> states.indexOf(sums.state(start + above)));
    }

    @Override
    int activity(Mask mask, LifeStage stage) {
        int active = super.activity(mask, stage);
        Part part = new Part(Part.Kind.MASK, mask.id());
        Integer holds = held.get(part);
        return holds == null
                ? active
                : either(holds, active, nodes.combine(active, said(part), (truth, says) -> says == 0 ? FAILS : truth));
    }

    @Override
    int stated(Mask mask, int active) {
        Integer holds = held.get(new Part(Part.Kind.MASK, mask.id()));
        return holds == null ? active : nodes.combine(active, holds, (truth, here) -> here == 1 ? truth : FAILS);
    }

    @Override
    int supposed(int both, List<String> states, List<Mask> covering, LifeStage stage) {
        int unknown = states.size() + 1;
        int width = states.size() + 2;
        int result = both;
        for (Mask mask : covering) {
            Part part = new Part(Part.Kind.MASK, mask.id());
            Integer holds = held.get(part);
            if (holds != null) {
                int active = nodes.combine(
                        uncovered(mask, covering, stage), holds, (truth, here) -> here == 1 ? FAILS : truth);
                // 0 where it covers nothing, 1 where it may, and then each state that it shows
                int covers = nodes.combine(active, said(part), (truth, says) -> {
                    if (truth == FAILS || says == 0) {
                        return 0;
                    }
                    return truth == UNKNOWN ? 1 : 1 + says;
                });
                result = nodes.combine(result, covers, (pair, cover) -> {
                    if (cover == 0 || pair % width == unknown) {
                        return pair;
                    }
                    return pair / width * width + (cover == 1 ? unknown : cover - 2);
                });
            }
        }
        return result;
    }
}
