package org.geneticsrules.expression;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Viability;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Reading;
import org.geneticsrules.trait.Sex;

/** Builds the diagrams of questions from those of the parts of the rules, combined leaf by leaf. */
final class DiagramBuilder {

    /** Large enough for every phenotype of a rich model to be listed, small enough to be refused within a second or two. */
    static final int MOST_NODES = 1 << 20;

    private static final int LOST = Integer.MAX_VALUE - 1;
    private static final int DISAGREES = 0;
    private static final int AGREES = 1;

    private final Model model;
    private final Plan plan;
    private final Nodes nodes;
    private final RuleDiagrams rules;

    private DiagramBuilder(Model model, List<Look> looks, Census census) {
        this(
                model,
                Plan.of(model, looks, census),
                "the traits "
                        + looks.stream()
                                .flatMap(look -> look.traits().stream())
                                .distinct()
                                .collect(Collectors.joining(", ")));
    }

    private DiagramBuilder(Model model, Plan plan, String subject) {
        this.model = model;
        this.plan = plan;
        this.nodes = new Nodes(plan.widths(), MOST_NODES, subject, advice(plan));
        this.rules = new RuleDiagrams(model, plan, nodes);
    }

    private static String advice(Plan plan) {
        String groups = plan.groups().isEmpty()
                ? ""
                : "; the loci of " + String.join(" and of ", plan.groups()) + " have to stand together in map order";
        return "ask about fewer traits at a time" + groups + ".";
    }

    /** The diagram of what is seen of an animal of which something was seen before; who cannot show that ends in no outcome. */
    static Diagram<Phenotype> phenotypes(Model model, View view, List<Reading> before) {
        List<Look> looks = new ArrayList<>(List.of(new Look(view.traits(), view.stage())));
        looks.addAll(looks(before));
        return new DiagramBuilder(model, looks, view.census()).phenotypes(view, before);
    }

    /** The diagram of what is seen or lost, which tests loci in a stated order. */
    static Diagram<Phenotype> phenotypesInOrder(Model model, View view, List<String> order) {
        Plan plan = Plan.inOrder(model, List.of(new Look(view.traits(), view.stage())), view.census(), order);
        return new DiagramBuilder(model, plan, "the traits " + String.join(", ", view.traits()))
                .phenotypes(view, List.of());
    }

    /** The diagram of who is lost for whatever reason; who is not shows nothing. */
    static Diagram<Phenotype> survival(Model model, Census census) {
        DiagramBuilder builder = new DiagramBuilder(model, Plan.ofLosses(model, census), "viability");
        int root = builder.survivors(AGREES, census);
        return builder.finish(root, builder.kept(root), value -> Phenotype.unspecified());
    }

    /** The diagram of whether one animal shows all that was seen of it; false comes before true. */
    static Diagram<Boolean> matching(Model model, List<Reading> seen, Census census) {
        DiagramBuilder builder = new DiagramBuilder(model, looks(seen), census);
        int root = builder.agreement(seen, census);
        return builder.finish(root, builder.kept(root), value -> value == AGREES);
    }

    /** The diagram of the chance that an animal of given sex and expressions is recorded as it was. */
    static Diagram<Probability> chances(Model model, List<Reading> readings, Confusions confusions) {
        DiagramBuilder builder = new DiagramBuilder(model, looks(readings), Census.CONCEIVED);
        Averages averages = new Averages(builder.nodes, builder.plan.levels());
        int all = Nodes.leaf(averages.number(Probability.ONE));
        for (Reading reading : readings) {
            for (int part : builder.parts(reading, confusions, averages)) {
                all = builder.nodes.combine(all, part, averages.product());
            }
        }
        int root = averages.overDraws(all);
        List<Integer> kept = builder.kept(root);
        kept.sort(Comparator.comparing(averages.values()::get));
        return builder.finish(root, kept, averages.values()::get);
    }

    /** Diagrams of how likely a record is; one for each trait, or, where it leaves several looks open, one for all together. */
    private List<Integer> parts(Reading reading, Confusions confusions, Averages averages) {
        LifeStage stage = reading.stage();
        List<Integer> parts = new ArrayList<>();
        if (reading.looks().size() == 1) {
            Phenotype look = reading.looks().iterator().next();
            look.asMap().forEach((trait, read) -> {
                List<String> states = states(trait);
                int shown = rules.shown(trait, stage);
                nodes.charge(Pointer.of("traits", trait));
                parts.add(nodes.map(
                        shown,
                        state -> averages.number(
                                state == states.size()
                                        ? Probability.ONE
                                        : confusions.chance(trait, states.get(state), read, stage))));
            });
            return parts;
        }
        Tuples found = new Tuples();
        parts.add(nodes.map(
                shown(reading, found),
                tuple -> averages.number(
                        chance(reading, found.tuple(tuple, reading.traits().size()), confusions))));
        return parts;
    }

    /** What all traits of a record show, as numbered tuples of states. */
    private int shown(Reading reading, Tuples found) {
        int all = Nodes.leaf(Tuples.EMPTY);
        for (String trait : reading.traits()) {
            int shown = rules.shown(trait, reading.stage());
            nodes.charge(Pointer.of("traits", trait));
            all = nodes.combine(all, shown, (before, state) -> found.longer(before, state, nodes));
        }
        return all;
    }

    /** The chance of a record of several looks; looks that differ only where the model makes no claim count once. */
    private Probability chance(Reading reading, int[] shown, Confusions confusions) {
        Map<List<String>, Probability> byLook = new LinkedHashMap<>();
        for (Phenotype look : reading.looks()) {
            List<String> told = new ArrayList<>();
            Probability chance = Probability.ONE;
            for (int i = 0; i < shown.length; i++) {
                String trait = reading.traits().get(i);
                List<String> states = states(trait);
                if (shown[i] < states.size()) {
                    String read = look.state(trait).orElseThrow();
                    told.add(read);
                    chance = chance.times(confusions.chance(trait, states.get(shown[i]), read, reading.stage()));
                }
            }
            byLook.put(told, chance);
        }
        return byLook.values().stream().reduce(Probability.ZERO, Probability::plus);
    }

    private static List<Look> looks(List<Reading> readings) {
        return readings.stream()
                .map(one -> new Look(ImmutableList.copyOf(one.traits()), one.stage()))
                .toList();
    }

    private Diagram<Phenotype> phenotypes(View view, List<Reading> before) {
        Tuples found = new Tuples();
        int all = before.isEmpty()
                ? survivors(Tuples.EMPTY, view.census())
                : nodes.map(agreement(before, view.census()), value -> value == AGREES ? Tuples.EMPTY : LOST);
        for (String trait : view.traits()) {
            int shown = rules.shown(trait, view.stage());
            nodes.charge(Pointer.of("traits", trait));
            all = nodes.combine(all, shown, new Nodes.Meeting() {
                @Override
                public int early(int before, int state) {
                    return before == Nodes.leaf(LOST) ? before : OPEN;
                }

                @Override
                public int value(int before, int state) {
                    return before == LOST ? before : found.longer(before, state, nodes);
                }
            });
        }
        List<Integer> kept = kept(all);
        Map<Integer, int[]> states = new LinkedHashMap<>();
        kept.forEach(leaf -> states.put(leaf, found.tuple(leaf, view.traits().size())));
        // in the declared order of states, trait by trait; a trait without claim comes last
        kept.sort(Comparator.comparing(states::get, Arrays::compare));
        return finish(all, kept, leaf -> phenotype(view.traits(), Objects.requireNonNull(states.get(leaf))));
    }

    private Phenotype phenotype(List<String> traits, int[] states) {
        Map<String, String> seen = new LinkedHashMap<>();
        for (int i = 0; i < states.length; i++) {
            List<String> named = states(traits.get(i));
            if (states[i] < named.size()) {
                seen.put(traits.get(i), named.get(states[i]));
            }
        }
        return Phenotype.from(seen);
    }

    private List<String> states(String trait) {
        return trait.equals(Sex.VARIABLE) ? Sex.words() : model.states(trait);
    }

    /** Leaf values: whether all that was seen is shown; a trait for which the model makes no claim is no evidence. */
    private int agreement(List<Reading> readings, Census census) {
        int all = survivors(AGREES, census);
        for (Reading reading : readings) {
            for (int agrees : agreements(reading)) {
                all = nodes.combine(all, agrees, new Nodes.Meeting() {
                    @Override
                    public int early(int soFar, int here) {
                        boolean decided = soFar == Nodes.leaf(LOST) || soFar == Nodes.leaf(DISAGREES);
                        return decided || here == Nodes.leaf(AGREES) ? soFar : OPEN;
                    }

                    @Override
                    public int value(int soFar, int here) {
                        return soFar == AGREES ? here : soFar;
                    }
                });
            }
        }
        return all;
    }

    /** Diagrams that all have to agree: one for each trait, or, where the record leaves several looks open, one for all together. */
    private List<Integer> agreements(Reading reading) {
        if (reading.looks().size() > 1) {
            Tuples found = new Tuples();
            int traits = reading.traits().size();
            return List.of(nodes.map(
                    shown(reading, found), tuple -> isOneOf(reading, found.tuple(tuple, traits)) ? AGREES : DISAGREES));
        }
        List<Integer> parts = new ArrayList<>();
        reading.looks().iterator().next().asMap().forEach((trait, recorded) -> {
            List<String> states = states(trait);
            int state = states.indexOf(recorded);
            parts.add(nodes.map(
                    rules.shown(trait, reading.stage()),
                    shown -> shown == state || shown == states.size() ? AGREES : DISAGREES));
            nodes.charge(Pointer.of("traits", trait));
        });
        return parts;
    }

    /** Whether what is shown is one of the looks of a record, as far as the model makes a claim. */
    private boolean isOneOf(Reading reading, int[] shown) {
        return reading.looks().stream().anyMatch(look -> {
            boolean agrees = true;
            for (int i = 0; agrees && i < shown.length; i++) {
                String trait = reading.traits().get(i);
                List<String> states = states(trait);
                agrees = shown[i] == states.size()
                        || look.state(trait)
                                .filter(states.get(shown[i])::equals)
                                .isPresent();
            }
            return agrees;
        });
    }

    /** A diagram that ends in a value, or in that of a lost animal where one is lost before it is counted. */
    private int survivors(int value, Census census) {
        int alive = Nodes.leaf(value);
        for (Viability one : plan.viability()) {
            nodes.charge(one.pointer());
            List<String> expressions = model.locus(one.locus()).expressions();
            int concerned = nodes.test(
                    plan.position(one.locus()).orElseThrow(),
                    expression -> one.expressions().contains(expressions.get(expression)) ? 1 : 0);
            if (one.sex().isPresent()) {
                int sex = Sex.words().indexOf(one.sex().get().word());
                int same = nodes.test(plan.position(Sex.VARIABLE).orElseThrow(), found -> found == sex ? 1 : 0);
                concerned = nodes.combine(same, concerned, Math::min);
            }
            int lives = lives(one.birth(), Plan.birth(one));
            if (census == Census.SCORED) {
                lives = nodes.combine(lives, lives(one.scored(), Plan.scored(one)), Math::min);
            }
            int lost = nodes.combine(concerned, lives, (here, living) -> here == 1 && living == 0 ? 1 : 0);
            alive = nodes.combine(alive, lost, (before, dies) -> dies == 1 ? LOST : before);
        }
        return alive;
    }

    /** Leaf values: 1 where the animal lives. */
    private int lives(Probability chance, String draw) {
        OptionalInt level = plan.position(draw);
        return level.isPresent()
                ? nodes.test(level.getAsInt(), outcome -> 1 - outcome)
                : Nodes.leaf(chance.isZero() ? 0 : 1);
    }

    /** The leaf values that are not of lost animals, in ascending order. */
    private List<Integer> kept(int root) {
        List<Integer> kept = new ArrayList<>();
        for (int leaf : nodes.leaves(root)) {
            if (leaf != LOST) {
                kept.add(leaf);
            }
        }
        return kept;
    }

    private <T> Diagram<T> finish(int root, List<Integer> kept, IntFunction<T> outcomeOf) {
        LongTable ranks = new LongTable();
        kept.forEach(leaf -> ranks.put(leaf, ranks.size()));
        boolean loses = nodes.leaves(root).length > kept.size();
        int ranked = nodes.map(root, leaf -> leaf == LOST ? kept.size() : ranks.get(leaf));
        CompactNodes compact = new CompactNodes(nodes, ranked, plan.levels().size(), kept.size() + (loses ? 1 : 0));
        return new Diagram<>(
                plan.levels(), compact, kept.stream().map(outcomeOf::apply).toList());
    }
}
