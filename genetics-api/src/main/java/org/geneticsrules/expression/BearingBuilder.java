package org.geneticsrules.expression;

import com.google.common.collect.Lists;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.expression.SupposedRules.Part;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.trait.LifeStage;

/**
 * Finds out what the look of a trait rests on, by letting one part of the model after another say anything.
 *
 * <p>The loci come first, those that are tested last before those that cut off more; then the rules of traits, each after those of the
 * traits that it reads and that of the trait itself last; then the masks. So where the same look follows in two ways, what is kept is nearest to the look. Each part says anything in addition to those before it; where the look still is the same whatever they say, it is left so, and where it is
 * not, the part is held to what is stated. All that parts may say is tested below all levels of animals, so an animal is one of the
 * latter if and only if its way through these levels does not end in a leaf.
 */
final class BearingBuilder {

    private final Model model;
    private final String trait;
    private final LifeStage stage;
    private final Plan plan;
    private final int depth;
    private final Nodes nodes;
    private final Map<Part, Integer> levels = new LinkedHashMap<>();
    private final Map<Part, Integer> held = new LinkedHashMap<>();

    private BearingBuilder(Model model, String trait, LifeStage stage) {
        this.model = model;
        this.trait = trait;
        this.stage = stage;
        this.plan = Plan.of(model, List.of(new Look(List.of(trait), stage)), Census.CONCEIVED);
        this.depth = plan.levels().size();
        int[] tested = plan.widths();
        int[] widths = Arrays.copyOf(
                tested, depth + model.masks().size() + model.rules().size() + depth);
        int next = depth;
        for (Mask mask : model.masks().values()) {
            if (mask.covers().containsKey(trait)) {
                widths[next] = 1 + model.states(trait).size();
                levels.put(new Part(Part.Kind.MASK, mask.id()), next++);
            }
        }
        for (TraitRule rule : model.rules().values()) {
            widths[next] = rule.states().size();
            levels.put(new Part(Part.Kind.TRAIT, rule.trait()), next++);
        }
        for (int level = 0; level < depth; level++) {
            if (plan.levels().get(level) instanceof Level.OfLocus at) {
                widths[next] = tested[level];
                levels.put(new Part(Part.Kind.LOCUS, at.name()), next++);
            }
        }
        this.nodes = new Nodes(
                Arrays.copyOf(widths, next),
                DiagramBuilder.MOST_NODES,
                "what the trait " + trait + " rests on",
                "ask about other traits.");
    }

    static Bearing of(Model model, String trait, LifeStage stage) {
        return new BearingBuilder(model, trait, stage).build();
    }

    private Bearing build() {
        RuleDiagrams stated = new RuleDiagrams(model, plan, nodes);
        stated.shown(trait, stage);
        Map<String, CompactNodes> loci = new LinkedHashMap<>();
        for (Part part : parts(Part.Kind.LOCUS)) {
            add(loci, part.id(), hold(part));
        }
        Map<String, CompactNodes> statements = new LinkedHashMap<>();
        held.clear();
        List<String> readers = new ArrayList<>(stated.readTraits());
        readers.remove(trait);
        readers.add(trait);
        for (String read : readers) {
            TraitRule rule = model.rules().get(read);
            if (rule != null) {
                int where = hold(new Part(Part.Kind.TRAIT, read));
                for (Case one : rule.cases()) {
                    add(statements, rule.pointer(one), both(where, stated.condition(one.when(), stage)));
                }
                rule.otherwise()
                        .ifPresent(last -> add(statements, rule.pointer(last), both(where, stated.rest(rule, stage))));
            }
        }
        held.clear();
        for (Part part : parts(Part.Kind.MASK)) {
            add(statements, Pointer.of("masks", part.id()), hold(part));
        }
        return new Bearing(plan.levels(), statements, loci);
    }

    /** Parts of a kind, the last first. */
    private List<Part> parts(Part.Kind kind) {
        List<Part> parts =
                levels.keySet().stream().filter(part -> part.kind() == kind).toList();
        return Lists.reverse(parts);
    }

    /** Leaf value 1 in the animals for whose look a part has to be held to what is stated. */
    private int hold(Part part) {
        held.put(part, Nodes.leaf(0));
        int shown = new SupposedRules(model, plan, nodes, levels, held).shown(trait, stage);
        int where = nodes.combine(shown, Nodes.leaf(0), new Nodes.Meeting() {
            @Override
            public int early(int a, int b) {
                return nodes.level(a) >= depth ? Nodes.leaf(1) : OPEN;
            }

            @Override
            public int value(int a, int b) {
                return 0;
            }
        });
        if (where == Nodes.leaf(1)) {
            held.remove(part);
        } else {
            held.put(part, where);
        }
        return where;
    }

    private int both(int where, int truth) {
        return nodes.combine(where, truth, (here, holds) -> here == 1 && holds == RuleDiagrams.HOLDS ? 1 : 0);
    }

    private void add(Map<String, CompactNodes> found, String name, int where) {
        if (where != Nodes.leaf(0)) {
            found.put(name, new CompactNodes(nodes, where, depth, 2));
        }
    }
}
