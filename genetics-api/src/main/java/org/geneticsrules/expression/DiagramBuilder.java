package org.geneticsrules.expression;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;

/**
 * Builds the diagram of some traits from the parts of their rules: conditions, own states, masks, shown states, and at last the
 * phenotype that combines them. Each part is a diagram of its own, combined leaf by leaf.
 */
final class DiagramBuilder {

    /** Large enough for every phenotype of a rich model to be listed, small enough to be refused within a second or two. */
    static final int MOST_NODES = 1 << 20;

    private static final int FAILS = 0;
    private static final int HOLDS = 1;
    private static final int UNKNOWN = 2;

    private final Model model;
    private final ImmutableList<String> traits;
    private final ImmutableList<String> order;
    private final Nodes nodes;
    private final Map<String, Integer> own = new LinkedHashMap<>();

    DiagramBuilder(Model model, Set<String> traits) {
        this.model = model;
        this.traits = ImmutableList.copyOf(traits);
        this.order = order(model, this.traits);
        int[] widths = order.stream()
                .mapToInt(locus -> model.locus(locus).expressions().size())
                .toArray();
        this.nodes = new Nodes(widths, MOST_NODES, "the traits " + String.join(", ", traits));
    }

    Diagram<Phenotype> build() {
        List<List<Integer>> found = new ArrayList<>(List.of(List.of())); // state of each trait so far
        Map<List<Integer>, Integer> known = new LinkedHashMap<>();
        int all = Nodes.leaf(0);
        for (String trait : traits) {
            all = nodes.combine(all, shown(trait), (before, state) -> {
                List<Integer> longer = new ArrayList<>(found.get(before));
                longer.add(state);
                return known.computeIfAbsent(longer, key -> {
                    found.add(key);
                    return found.size() - 1;
                });
            });
        }
        List<Integer> leaves = nodes.leaves(all);
        leaves.sort(Comparator.comparing(found::get, DiagramBuilder::compare));
        Map<Integer, Integer> rank = new LinkedHashMap<>();
        leaves.forEach(leaf -> rank.put(leaf, rank.size()));
        int ranked = nodes.map(all, leaf -> Objects.requireNonNull(rank.get(leaf)));
        List<Phenotype> phenotypes =
                leaves.stream().map(leaf -> phenotype(found.get(leaf))).toList();
        CompactNodes compact = new CompactNodes(nodes, ranked, order.size(), phenotypes.size());
        List<Level> levels = order.stream()
                .<Level>map(locus -> new Level.OfLocus(model.locus(locus)))
                .toList();
        return new Diagram<>(levels, compact, phenotypes);
    }

    /** Phenotypes are listed in the declared order of states, trait by trait; a trait without claim comes last. */
    private static int compare(List<Integer> one, List<Integer> other) {
        for (int i = 0; i < one.size(); i++) {
            int difference = one.get(i).compareTo(other.get(i));
            if (difference != 0) {
                return difference;
            }
        }
        return 0;
    }

    private Phenotype phenotype(List<Integer> states) {
        Map<String, String> seen = new LinkedHashMap<>();
        for (int i = 0; i < states.size(); i++) {
            List<String> named = model.states(traits.get(i));
            if (states.get(i) < named.size()) {
                seen.put(traits.get(i), named.get(states.get(i)));
            }
        }
        return Phenotype.from(seen);
    }

    /** Loci that decide over many traits are tested first: a masking locus then cuts off all that it hides. */
    private static ImmutableList<String> order(Model model, List<String> traits) {
        Map<String, Integer> reach = new LinkedHashMap<>();
        ImmutableSet<String> loci = Reads.loci(model, traits);
        loci.forEach(locus -> reach.put(locus, 0));
        for (String trait : traits) {
            Reads.loci(model, List.of(trait)).forEach(locus -> reach.merge(locus, 1, Integer::sum));
        }
        List<String> sorted = new ArrayList<>(loci);
        sorted.sort(Comparator.comparing((String locus) -> -Objects.requireNonNull(reach.get(locus))));
        return ImmutableList.copyOf(sorted);
    }

    /** Leaf values: index of the shown state, or the number of states where the model makes no claim. */
    private int shown(String trait) {
        List<String> states = model.states(trait);
        int none = states.size();
        int unknown = none + 1;
        int width = none + 2;
        int both = nodes.map(own(trait), state -> state * width + state);
        List<Mask> covering = model.masks().values().stream()
                .filter(mask -> mask.covers().containsKey(trait))
                .toList();
        for (Mask mask : covering) {
            Mask.Cover cover = Objects.requireNonNull(mask.covers().get(trait));
            both = nodes.combine(both, uncovered(mask, covering), (pair, truth) -> {
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
    private int uncovered(Mask mask, List<Mask> covering) {
        int result = condition(mask.when());
        for (Mask other : covering) {
            if (model.isOver(other.id(), mask.id())) {
                result = nodes.combine(result, condition(other.when()), (a, b) -> a == HOLDS && b == HOLDS ? FAILS : a);
            }
        }
        return result;
    }

    private static int covered(Mask.Cover cover, int beneath, int seen, List<String> states) {
        if (cover.constant().isPresent()) {
            return states.indexOf(cover.constant().get());
        }
        // Without a known state beneath, only a constant cover says what is seen.
        return beneath == states.size() ? seen : states.indexOf(cover.shown(states.get(beneath)));
    }

    /** Leaf values: index of the own state, or the number of states where the model makes no claim. */
    private int own(String trait) {
        Integer before = own.get(trait);
        if (before != null) {
            return before;
        }
        List<String> states = model.states(trait);
        int none = states.size();
        TraitRule rule = model.rules().get(trait);
        int result = rule == null ? Nodes.leaf(none) : own(rule, states, none);
        own.put(trait, result);
        return result;
    }

    private int own(TraitRule rule, List<String> states, int none) {
        int left = none + 1; // no case holds so far, and none is unknown
        int result = Nodes.leaf(left);
        for (Case one : rule.cases()) {
            int state = states.indexOf(((CaseState.Certain) one.gives()).state());
            result = nodes.combine(result, condition(one.when()), (soFar, truth) -> {
                if (truth == HOLDS) {
                    return state;
                }
                return truth == UNKNOWN && soFar == left ? none : soFar;
            });
        }
        int rest = rule.otherwise()
                .map(last -> states.indexOf(((CaseState.Certain) last.gives()).state()))
                .orElse(none);
        return nodes.map(result, soFar -> soFar == left ? rest : soFar);
    }

    /** Leaf values: fails, holds or unknown. */
    private int condition(Condition condition) {
        int result = Nodes.leaf(HOLDS);
        for (Map.Entry<String, Allowed> variable : condition.variables().entrySet()) {
            result = nodes.combine(result, variable(variable.getKey(), variable.getValue()), (a, b) -> {
                if (a == FAILS || b == FAILS) {
                    return FAILS;
                }
                return a == HOLDS && b == HOLDS ? HOLDS : UNKNOWN;
            });
        }
        return result;
    }

    private int variable(String name, Allowed allowed) {
        if (model.loci().containsKey(name)) {
            List<String> expressions = model.locus(name).expressions();
            return nodes.test(order.indexOf(name), e -> allowed.allows(expressions.get(e)) ? HOLDS : FAILS);
        }
        List<String> states = model.states(name);
        return nodes.map(own(name), state -> {
            if (state == states.size()) {
                return UNKNOWN;
            }
            return allowed.allows(states.get(state)) ? HOLDS : FAILS;
        });
    }
}
