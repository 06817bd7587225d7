package org.geneticsrules.expression;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;

/** The diagrams of the parts of a model's rules at a stage: conditions, own states, masks and shown states. */
class RuleDiagrams {

    /** The leaf value where a condition fails. */
    static final int FAILS = 0;
    /** The leaf value where a condition holds. */
    static final int HOLDS = 1;
    /** The leaf value where it is not known whether a condition holds. */
    static final int UNKNOWN = 2;

    private record At(Object part, LifeStage stage) {}

    final Model model;
    final Axes axes;
    final Nodes nodes;
    private final Map<At, Integer> own = new LinkedHashMap<>();
    private final Map<At, Integer> conditions = new LinkedHashMap<>();

    RuleDiagrams(Model model, Axes axes, Nodes nodes) {
        this.model = model;
        this.axes = axes;
        this.nodes = nodes;
    }

    /** Leaf values: index of the shown state, or the number of states where the model makes no claim; the sex shows as it is. */
    int shown(String trait, LifeStage stage) {
        if (trait.equals(Sex.VARIABLE)) {
            return nodes.test(axes.position(trait).orElseThrow(), sex -> sex);
        }
        List<String> states = model.states(trait);
        int none = states.size();
        int unknown = none + 1;
        int width = none + 2;
        List<Mask> covering = model.masks().values().stream()
                .filter(mask -> mask.covers().containsKey(trait))
                .toList();
        int both = supposed(nodes.map(own(trait, stage), state -> state * width + state), states, covering, stage);
        for (Mask mask : covering) {
            Mask.Cover cover = Objects.requireNonNull(mask.covers().get(trait));
            int active = stated(mask, uncovered(mask, covering, stage));
            nodes.charge(Pointer.of("masks", mask.id()));
            both = nodes.combine(both, active, (pair, truth) -> {
                int beneath = pair / width;
                int seen = pair % width;
                if (truth == FAILS || seen == unknown) {
                    return pair;
                }
                return beneath * width + (truth == UNKNOWN ? unknown : covered(cover, beneath, seen, states));
            });
        }
        return nodes.map(both, pair -> Math.min(pair % width, none));
    }

    /** Where a mask is active and no mask above it is; masks left over by this agree, so their order does not matter. */
    final int uncovered(Mask mask, List<Mask> covering, LifeStage stage) {
        int result = activity(mask, stage);
        for (Mask other : covering) {
            if (model.isOver(other.id(), mask.id())) {
                nodes.charge(Pointer.of("masks", other.id()));
                result = nodes.combine(result, activity(other, stage), (a, b) -> a == HOLDS && b == HOLDS ? FAILS : a);
            }
        }
        return result;
    }

    /** Leaf values: whether a mask is active. */
    int activity(Mask mask, LifeStage stage) {
        return condition(mask.when(), stage);
    }

    /** Where a mask covers what its statement says, of where it is active. */
    int stated(Mask mask, int active) {
        return active;
    }

    /**
     * The own state and what is seen of it before any mask covers what its statement says: leaf values (own state) (number of states + 2)
     * + (state seen, or the number of states where there is no claim, or one more where a mask may be active).
     */
    int supposed(int both, List<String> states, List<Mask> covering, LifeStage stage) {
        return both;
    }

    private static int covered(Mask.Cover cover, int beneath, int seen, List<String> states) {
        if (cover.constant().isPresent()) {
            return states.indexOf(cover.constant().get());
        }
        // Without a known state beneath, only a constant cover says what is seen.
        return beneath == states.size() ? seen : states.indexOf(cover.shown(states.get(beneath)));
    }

    /** The traits whose own states were asked for, each after those that it reads. */
    final List<String> readTraits() {
        return own.keySet().stream().map(key -> (String) key.part()).toList();
    }

    /** Leaf values: index of the own state, or the number of states where the model makes no claim. */
    int own(String trait, LifeStage stage) {
        At key = new At(trait, stage);
        Integer before = own.get(key);
        if (before != null) {
            return before;
        }
        TraitRule rule = model.rules().get(trait);
        int result = rule == null ? Nodes.leaf(model.states(trait).size()) : own(rule, stage);
        own.put(key, result);
        return result;
    }

    /** Leaf values as above, of a trait that the model has a rule for. */
    int own(TraitRule rule, LifeStage stage) {
        int none = rule.states().size();
        int left = none + 1; // no case holds so far, and none is unknown
        int result = Nodes.leaf(left);
        for (Case one : rule.cases()) {
            int truth = condition(one.when(), stage);
            if (truth != Nodes.leaf(FAILS)) {
                int given = gives(rule, one, stage);
                nodes.charge(rule.pointer(one));
                int here = nodes.combine(truth, given, new Nodes.Meeting() {
                    @Override
                    public int early(int holds, int state) {
                        return holds == Nodes.leaf(HOLDS) ? state : holds < 0 ? other(holds) : OPEN;
                    }

                    @Override
                    public int value(int holds, int state) {
                        return holds == HOLDS ? state : Nodes.value(other(Nodes.leaf(holds)));
                    }

                    private int other(int holds) {
                        return Nodes.leaf(holds == Nodes.leaf(UNKNOWN) ? none : left);
                    }
                });
                result = nodes.combine(result, here, first(left, none));
            }
        }
        if (rule.otherwise().isEmpty()) {
            return nodes.map(result, soFar -> Math.min(soFar, none));
        }
        int rest = gives(rule, rule.otherwise().get(), stage);
        nodes.charge(rule.pointer(rule.otherwise().get()));
        return nodes.combine(result, rest, first(left, left));
    }

    /** Takes the first diagram's value, and the second's where that is still open; one that is weak gives way to a known one. */
    private static Nodes.Meeting first(int open, int weak) {
        return new Nodes.Meeting() {
            @Override
            public int early(int a, int b) {
                if (a == Nodes.leaf(open)) {
                    return b;
                }
                return b == Nodes.leaf(open) || (a < 0 && a != Nodes.leaf(weak)) ? a : OPEN;
            }

            @Override
            public int value(int a, int b) {
                return a == open || (a == weak && b != open) ? b : a;
            }
        };
    }

    /** Leaf values: index of the state that a case gives where it holds. */
    private int gives(TraitRule rule, Case one, LifeStage stage) {
        String pointer = rule.pointer(one);
        List<String> states = rule.states();
        OptionalInt draw = axes.position(pointer);
        if (one.gives() instanceof CaseState.Certain certain) {
            return Nodes.leaf(states.indexOf(certain.state()));
        }
        if (one.gives() instanceof CaseState.Threshold sums) {
            nodes.charge(pointer);
            return sums(sums, draw, states);
        }
        int[] byOutcome;
        if (one.gives() instanceof CaseState.Progression chain) {
            byOutcome = axes.progressed(pointer, chain, stage);
        } else {
            byOutcome = one.gives().states().stream().mapToInt(states::indexOf).toArray();
        }
        return draw.isPresent() ? nodes.test(draw.getAsInt(), outcome -> byOutcome[outcome]) : Nodes.leaf(byOutcome[0]);
    }

    /** Leaf values: the state of the sum of doses and residual. */
    int sums(CaseState.Threshold sums, OptionalInt draw, List<String> states) {
        TreeMap<Integer, int[]> doses = new TreeMap<>();
        sums.doses()
                .forEach((locus, dose) -> doses.put(
                        axes.position(locus).orElseThrow(),
                        model.locus(locus).expressions().stream()
                                .mapToInt(expression -> dose.getOrDefault(expression, 0))
                                .toArray()));
        int[] residual =
                sums.residual().outcomes().stream().mapToInt(Integer::intValue).toArray();
        draw.ifPresent(level -> doses.put(level, residual));
        return new PartialSums(nodes, doses, sum -> states.indexOf(sums.state(sum)))
                .diagram(draw.isPresent() ? 0 : residual[0]);
    }

    /** Leaf values: fails, holds or unknown. */
    int condition(Condition condition, LifeStage stage) {
        At key = new At(condition, stage);
        Integer before = conditions.get(key);
        if (before != null) {
            return before;
        }
        int result = seasonFails(condition, stage) ? Nodes.leaf(FAILS) : all(condition, stage);
        conditions.put(key, result);
        return result;
    }

    /** Whether the season rules a condition out; then nothing else that it names need be known. */
    private boolean seasonFails(Condition condition, LifeStage stage) {
        Allowed seasons = condition.variables().get(LifeStage.SEASON);
        return seasons != null
                && !testsSeason()
                && !seasons.allows(stage.season().orElseThrow());
    }

    private boolean testsSeason() {
        return axes.position(LifeStage.SEASON).isPresent();
    }

    private int all(Condition condition, LifeStage stage) {
        List<Integer> parts = new ArrayList<>();
        condition.variables().forEach((name, allowed) -> {
            if (!name.equals(LifeStage.SEASON) || testsSeason()) {
                parts.add(variable(name, allowed, stage));
            }
        });
        parts.sort(Comparator.comparing(
                (Integer part) -> -nodes.level(part))); // a later test goes below an earlier at once
        int result = Nodes.leaf(HOLDS);
        for (int part : parts) {
            result = nodes.combine(part, result, BOTH);
        }
        return result;
    }

    private static final Nodes.Meeting BOTH = new Nodes.Meeting() {
        @Override
        public int early(int a, int b) {
            if (a == Nodes.leaf(FAILS) || b == Nodes.leaf(HOLDS)) {
                return a;
            }
            return b == Nodes.leaf(FAILS) || a == Nodes.leaf(HOLDS) ? b : OPEN;
        }

        @Override
        public int value(int a, int b) {
            if (a == FAILS || b == FAILS) {
                return FAILS;
            }
            return a == HOLDS && b == HOLDS ? HOLDS : UNKNOWN;
        }
    };

    /** Leaf values: whether one variable of a condition has an allowed value. */
    int variable(String name, Allowed allowed, LifeStage stage) {
        if (axes.position(name).isPresent()) {
            List<String> values = values(name);
            return nodes.test(
                    axes.position(name).orElseThrow(), value -> allowed.allows(values.get(value)) ? HOLDS : FAILS);
        }
        List<String> states = model.states(name);
        return nodes.map(own(name, stage), state -> {
            if (state == states.size()) {
                return UNKNOWN;
            }
            return allowed.allows(states.get(state)) ? HOLDS : FAILS;
        });
    }

    private List<String> values(String name) {
        return switch (name) {
            case Sex.VARIABLE -> Sex.words();
            case LifeStage.SEASON -> model.catalogue().seasons();
            default -> model.locus(name).expressions();
        };
    }

    /** Leaf values: whether every case of a rule is known to fail, so that its {@code otherwise} decides. */
    int rest(TraitRule rule, LifeStage stage) {
        int result = Nodes.leaf(HOLDS);
        for (Case one : rule.cases()) {
            int truth = condition(one.when(), stage);
            nodes.charge(rule.pointer(one));
            result = nodes.combine(result, truth, new Nodes.Meeting() {
                @Override
                public int early(int open, int here) {
                    if (open == Nodes.leaf(FAILS) || here == Nodes.leaf(FAILS)) {
                        return open;
                    }
                    return here < 0 ? Nodes.leaf(FAILS) : OPEN;
                }

                @Override
                public int value(int open, int here) {
                    return here == FAILS ? open : FAILS;
                }
            });
        }
        return result;
    }

    /** Leaf values: index of the state that a case gives, or the number of states where it does not hold. */
    int given(TraitRule rule, Case one, int truth, LifeStage stage) {
        int none = rule.states().size();
        int given = gives(rule, one, stage);
        nodes.charge(rule.pointer(one));
        return nodes.combine(truth, given, new Nodes.Meeting() {
            @Override
            public int early(int holds, int state) {
                return holds == Nodes.leaf(HOLDS) ? state : holds < 0 ? Nodes.leaf(none) : OPEN;
            }

            @Override
            public int value(int holds, int state) {
                return holds == HOLDS ? state : none;
            }
        });
    }
}
