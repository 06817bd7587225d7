package org.geneticsrules.expression;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntConsumer;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Viability;
import org.geneticsrules.trait.Clock;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;

/**
 * All rules of a model as diagrams over every sex, stage and outcome of chance, and what of them an animal can be in.
 *
 * <p>What can be is a union of a few products: within one sex, each locus has the expressions that some genotype has in that sex; at one
 * count of a clock, each progression has the states that it can be in then. Within each product, levels do not depend on each other.
 */
final class Survey {

    /** A product of what can be in one sex. */
    record Scope(Sex sex, Restriction within) {}

    private final Model model;
    private final EveryStage axes;
    private final Nodes nodes;
    private final RuleDiagrams rules;
    private final Map<Clock, Phases> phases = new EnumMap<>(Clock.class);
    private final Map<Clock, Map<Integer, List<Restriction>>> counted = new EnumMap<>(Clock.class);
    private final List<Scope> everywhere = new ArrayList<>();
    private final Map<Sex, Restriction> wide = new EnumMap<>(Sex.class);
    private final Map<String, List<Restriction>> seasons = new LinkedHashMap<>();
    private final List<Viability> lethal;
    private final List<Restriction> born = new ArrayList<>();
    private final List<Restriction> underAnyDominance = new ArrayList<>();

    Survey(Model model) {
        this.model = model;
        this.lethal = model.viability().values().stream()
                .filter(one -> one.birth().isZero())
                .toList();
        this.axes = new EveryStage(model);
        this.nodes = new Nodes(
                axes.widths(),
                DiagramBuilder.MOST_NODES,
                "the whole model",
                "let fewer rules and masks decide over one trait, or ask about single traits of the model.");
        this.rules = new RuleDiagrams(model, axes, nodes);
        for (Clock clock : Clock.values()) {
            Map<String, CaseState.Progression> ticking = new LinkedHashMap<>(axes.chains());
            ticking.values().removeIf(chain -> chain.clock() != clock);
            phases.put(clock, new Phases(ticking));
        }
        for (List<Phases.Phase> counts : widest()) {
            sexes().forEach(sex -> everywhere.add(new Scope(sex, within(Optional.of(sex), counts, Optional.empty()))));
            underAnyDominance.add(within(Optional.empty(), counts, Optional.empty()));
        }
        born();
    }

    /** Who has an expression that is lethal before birth is left out; in a sex that always has one, everybody. */
    private void born() {
        for (List<Phases.Phase> counts : lethal.isEmpty() ? List.<List<Phases.Phase>>of() : widest()) {
            for (Sex sex : sexes()) {
                boolean any = true;
                for (Locus locus : model.loci().values()) {
                    any &= !living(locus, sex).isEmpty();
                }
                if (any) {
                    boolean[][] allowed = allowed(Optional.of(sex), counts, Optional.empty());
                    for (Locus locus : model.loci().values()) {
                        int level = axes.position(locus.id()).orElseThrow();
                        Set<String> living = living(locus, sex);
                        for (int value = 0; value < allowed[level].length; value++) {
                            allowed[level][value] &=
                                    living.contains(axes.values(level).get(value));
                        }
                    }
                    born.add(new Restriction(nodes, allowed));
                }
            }
        }
    }

    /** The expressions of a locus with which animals of a sex can be born. */
    private Set<String> living(Locus locus, Sex sex) {
        Set<String> living = expressions(locus, sex);
        for (Viability one : lethal) {
            if (one.locus().equals(locus.id()) && one.sex().orElse(sex) == sex) {
                living.removeAll(one.expressions());
            }
        }
        return living;
    }

    Model model() {
        return model;
    }

    EveryStage axes() {
        return axes;
    }

    Nodes nodes() {
        return nodes;
    }

    Phases phases(Clock clock) {
        return phases.getOrDefault(clock, new Phases(Map.of()));
    }

    /** Both sexes where they make a difference, else one that stands for both. */
    List<Sex> sexes() {
        return model.distinguishesSex() ? List.of(Sex.values()) : List.of(Sex.FEMALE);
    }

    RuleDiagrams rules() {
        return rules;
    }

    /** What is seen of a trait, or of one that cannot be seen, its own state. */
    int look(String trait) {
        return axes.seen().contains(trait)
                ? rules.shown(trait, LifeStage.unstated())
                : rules.own(trait, LifeStage.unstated());
    }

    /** Products that together are all that can be. */
    List<Scope> everywhere() {
        return everywhere;
    }

    /** The leaf values of a diagram that some animal reaches. */
    BitSet reached(int root) {
        BitSet found = new BitSet();
        everywhere.forEach(scope -> add(scope.within().leaves(root), found));
        return found;
    }

    /** The leaf values that some animal reaches that can be born. */
    BitSet reachedBorn(int root) {
        if (lethal.isEmpty()) {
            return reached(root);
        }
        BitSet found = new BitSet();
        born.forEach(within -> add(within.leaves(root), found));
        return found;
    }

    /** The leaf values that could be reached if each locus showed any of its declared expressions. */
    BitSet reachedUnderAnyDominance(int root) {
        BitSet found = new BitSet();
        underAnyDominance.forEach(within -> add(within.leaves(root), found));
        return found;
    }

    static void add(int[] values, BitSet found) {
        for (int value : values) {
            found.set(value);
        }
    }

    /** What animals can be at one count of a clock, in each sex and at whatever count of the other clock. */
    List<Restriction> at(Clock clock, Phases.Phase phase) {
        Map<Integer, List<Restriction>> kept = counted.computeIfAbsent(clock, key -> new LinkedHashMap<>());
        return kept.computeIfAbsent(phase.count(), key -> {
            List<Restriction> found = new ArrayList<>();
            for (Sex sex : sexes()) {
                for (Clock other : Clock.values()) {
                    for (Phases.Phase beside : other == clock
                            ? List.<Phases.Phase>of()
                            : phases(other).widest()) {
                        found.add(within(Optional.of(sex), List.of(phase, beside), Optional.empty()));
                    }
                }
            }
            return found;
        });
    }

    /** What animals can be in one season, in each sex and at whatever counts. */
    List<Restriction> in(String season) {
        return seasons.computeIfAbsent(season, key -> {
            List<Restriction> found = new ArrayList<>();
            for (List<Phases.Phase> counts : widest()) {
                sexes().forEach(sex -> found.add(within(Optional.of(sex), counts, Optional.of(season))));
            }
            return found;
        });
    }

    /** What animals of a sex can be at any count, each draw by itself. */
    Restriction wide(Sex sex) {
        return wide.computeIfAbsent(sex, key -> within(Optional.of(sex), List.of(), Optional.empty()));
    }

    /** One phase of each clock, in all ways that matter. */
    private List<List<Phases.Phase>> widest() {
        List<List<Phases.Phase>> all = new ArrayList<>();
        for (Phases.Phase moult : phases(Clock.MOULT).widest()) {
            phases(Clock.WEEK).widest().forEach(week -> all.add(List.of(moult, week)));
        }
        return all;
    }

    /** Without a sex, loci show whatever is declared. */
    private Restriction within(Optional<Sex> sex, List<Phases.Phase> counts, Optional<String> season) {
        return new Restriction(nodes, allowed(sex, counts, season));
    }

    private boolean[][] allowed(Optional<Sex> sex, List<Phases.Phase> counts, Optional<String> season) {
        boolean[][] allowed = all();
        for (int level = 0; level < allowed.length; level++) {
            String name = axes.name(level);
            Set<String> possible = new LinkedHashSet<>();
            if (name.equals(Sex.VARIABLE)) {
                sex.ifPresent(one -> possible.add(one.word()));
            } else if (name.equals(LifeStage.SEASON)) {
                season.ifPresent(possible::add);
            } else if (model.loci().containsKey(name)) {
                sex.ifPresent(one -> possible.addAll(expressions(model.locus(name), one)));
            } else {
                counts.forEach(phase -> possible.addAll(phase.states().getOrDefault(name, Set.of())));
            }
            if (!possible.isEmpty()) {
                List<String> values = axes.values(level);
                for (int value = 0; value < values.size(); value++) {
                    allowed[level][value] = possible.contains(values.get(value));
                }
            }
        }
        return allowed;
    }

    /** The expressions that genotypes of a locus have in one sex. */
    static Set<String> expressions(Locus locus, Sex sex) {
        Set<String> shown = new LinkedHashSet<>();
        locus.pairs(sex).forEach(pair -> shown.add(locus.expression(pair, sex)));
        return shown;
    }

    /** The levels that a diagram tests. */
    BitSet tested(int root) {
        BitSet levels = new BitSet();
        BitSet seen = new BitSet();
        visit(root, seen, node -> levels.set(nodes.level(node)));
        return levels;
    }

    /** Visits the nodes of a diagram that were not visited before. */
    void visit(int root, BitSet seen, IntConsumer visitor) {
        if (root >= 0 && !seen.get(root)) {
            seen.set(root);
            visitor.accept(root);
            for (int value = 0; value < nodes.width(nodes.level(root)); value++) {
                visit(nodes.child(root, value), seen, visitor);
            }
        }
    }

    private boolean[][] all() {
        boolean[][] allowed = new boolean[axes.size()][];
        for (int level = 0; level < allowed.length; level++) {
            allowed[level] = new boolean[axes.values(level).size()];
            Arrays.fill(allowed[level], true);
        }
        return allowed;
    }
}
