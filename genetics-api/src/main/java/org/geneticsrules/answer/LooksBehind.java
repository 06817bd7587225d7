package org.geneticsrules.answer;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.explanation.AnimalCase;
import org.geneticsrules.explanation.Cause;
import org.geneticsrules.explanation.Causes;
import org.geneticsrules.explanation.CoatExplanation;
import org.geneticsrules.explanation.Hidden;
import org.geneticsrules.explanation.Reason;
import org.geneticsrules.explanation.Way;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Diagram;
import org.geneticsrules.expression.Draw;
import org.geneticsrules.expression.Expressed;
import org.geneticsrules.expression.Level;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Locus;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Reading;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;

/** The looks that an animal may have by all that is known of it, each with the ways that lead to it and the genotypes behind it. */
final class LooksBehind {

    /** Causes are told from this many kinds of genotypes behind a look at most. */
    private static final int MOST_EXAMPLES = 200;

    private final CompiledModel compiled;
    private final View view;
    private final List<Reading> before;
    private final Diagram<Phenotype> diagram;
    private final Map<Phenotype, List<Behind>> behind = new LinkedHashMap<>();
    private final Map<String, Draw> draws = new LinkedHashMap<>();
    private final Map<Drawn, Causes> finders = new HashMap<>();

    /** A way through the diagram that the animal may go, with the boxes of the genotypes that go it. */
    private record Behind(Condition box, List<GenotypeSet.Box> boxes) {}

    /** One kind of genotype that goes a way, and what its first pairs show as. */
    private record Example(Condition way, GenotypeSet.Box box, Sex sex, Map<String, String> expressions) {}

    /** What chance decided in the life of an animal of a sex. */
    private record Drawn(Sex sex, Map<String, String> draws) {}

    private LooksBehind(CompiledModel compiled, View view, List<Reading> before) {
        this.compiled = compiled;
        this.view = view;
        this.before = before;
        this.diagram = compiled.diagramAfter(view, before);
        diagram.levels().forEach(level -> {
            if (level instanceof Level.OfDraw drawn) {
                draws.put(drawn.name(), drawn.draw());
            }
        });
    }

    /**
     * Finds the looks.
     *
     * @param known the genotypes the animal may have
     * @param before what was seen of it before, where one chance decides about that and about what is looked at now
     */
    static LooksBehind of(CompiledModel compiled, View view, GenotypeSet known, List<Reading> before) {
        LooksBehind looks = new LooksBehind(compiled, view, before);
        looks.diagram.paths((outcome, box) -> {
            if (outcome < looks.diagram.outcomes().size()) {
                GenotypeSet left = known.showing(box);
                if (!left.isEmpty()) {
                    looks.behind
                            .computeIfAbsent(looks.diagram.outcomes().get(outcome), look -> new ArrayList<>())
                            .add(new Behind(box, left.sexedBoxes()));
                }
            }
            return true;
        });
        return looks;
    }

    /**
     * Tells whether one chance decides about what was seen before and about what is looked at now. If not, what was seen matters only by
     * the genotypes that it leaves.
     */
    static boolean sharesChance(CompiledModel compiled, View view, List<Reading> before) {
        Set<String> then = new LinkedHashSet<>();
        List<Sighting> single = new ArrayList<>();
        for (Reading one : before) {
            if (one.looks().size() == 1) {
                single.add(new Sighting(one.stage(), one.looks().iterator().next()));
            } else {
                one.traits().stream()
                        .map(trait -> compiled.diagram(new View(List.of(trait), one.stage(), view.census())))
                        .forEach(alone -> then.addAll(draws(alone)));
            }
        }
        if (!single.isEmpty()) {
            then.addAll(draws(compiled.matching(single, view.census())));
        }
        return !then.isEmpty()
                && view.traits().stream()
                        .map(trait -> compiled.diagram(new View(List.of(trait), view.stage(), view.census())))
                        .anyMatch(alone -> draws(alone).stream().anyMatch(then::contains));
    }

    private static Set<String> draws(Diagram<?> diagram) {
        return diagram.levels().stream()
                .filter(level -> level instanceof Level.OfDraw)
                .map(Level::name)
                .collect(ImmutableSet.toImmutableSet());
    }

    boolean isEmpty() {
        return behind.isEmpty();
    }

    /** The loci that matter. */
    List<String> loci() {
        return diagram.loci();
    }

    /** Whether the sex does. */
    boolean dependsOnSex() {
        return compiled.dependsOnSex(view) || diagram.levels().stream().anyMatch(level -> level instanceof Level.OfSex);
    }

    /** The looks in the declared order of states. */
    Set<Phenotype> possible() {
        return diagram.outcomes().stream().filter(behind::containsKey).collect(ImmutableSet.toImmutableSet());
    }

    /** The chances of the looks of one known genotype, and the ways to them as reasons. */
    Distribution<Phenotype> explain(Genotype genotype, Sex sex, List<Reason> reasons) {
        Map<String, AllelePair> pairs = new LinkedHashMap<>();
        Map<String, String> expressions = new LinkedHashMap<>();
        for (String name : diagram.loci()) {
            Locus locus = compiled.model().locus(name);
            AllelePair pair =
                    genotype.pair(name).orElseGet(() -> locus.pairs(sex).get(0));
            pairs.put(name, pair);
            expressions.put(name, locus.expression(pair, sex));
        }
        Map<Phenotype, Map<Condition, Probability>> weights = new LinkedHashMap<>();
        Probability counted = Probability.ZERO;
        for (Phenotype look : possible()) {
            for (Behind way : behindLook(look)) {
                if (holds(way, expressions, sex)) {
                    Probability chance = product(factors(way.box()));
                    weights.computeIfAbsent(look, key -> new LinkedHashMap<>()).put(way.box(), chance);
                    counted = counted.plus(chance);
                }
            }
        }
        reasons.add(
                new AnimalCase(0, dependsOnSex() ? Optional.of(sex) : Optional.empty(), pairs, expressions, counted));
        Map<Phenotype, Probability> chances = new LinkedHashMap<>();
        for (Map.Entry<Phenotype, Map<Condition, Probability>> look : weights.entrySet()) {
            Probability sum = Probability.ZERO;
            for (Map.Entry<Condition, Probability> way : look.getValue().entrySet()) {
                Probability share = way.getValue().dividedBy(counted);
                sum = sum.plus(share);
                reasons.add(new Way(
                        look.getKey(),
                        0,
                        way.getKey(),
                        factors(way.getKey()),
                        share,
                        masks(expressions, sex, way.getKey())));
            }
            chances.put(look.getKey(), sum);
        }
        return Distribution.of(chances);
    }

    private boolean holds(Behind way, Map<String, String> expressions, Sex sex) {
        return way.box().variables().entrySet().stream().allMatch(variable -> {
            String name = variable.getKey();
            String value = name.equals(Sex.VARIABLE) ? sex.word() : expressions.get(name);
            return draws.containsKey(name)
                    || (value != null && variable.getValue().allows(value));
        });
    }

    private Map<String, Probability> factors(Condition box) {
        Map<String, Probability> factors = new LinkedHashMap<>();
        draws.forEach((name, draw) -> {
            Allowed allowed = box.variables().get(name);
            if (allowed != null) {
                factors.put(name, draw.outcomes().probabilityOf(allowed::allows));
            }
        });
        return factors;
    }

    private static Probability product(Map<String, Probability> factors) {
        return factors.values().stream().reduce(Probability.ONE, Probability::times);
    }

    private List<String> masks(Map<String, String> expressions, Sex sex, Condition box) {
        Expressed one = expressed(expressions, sex, box);
        Set<String> masks = new LinkedHashSet<>();
        view.traits()
                .forEach(trait ->
                        Optional.ofNullable(one.traits().get(trait)).ifPresent(trace -> masks.addAll(trace.masks())));
        return new ArrayList<>(masks);
    }

    private Expressed expressed(Map<String, String> expressions, Sex sex, Condition box) {
        return compiled.ways(expressions, sex, view.stage(), drawn(box), view.traits())
                .outcomes()
                .iterator()
                .next();
    }

    /** One outcome of each draw that a way goes through, as it stands now. */
    private Map<String, String> drawn(Condition box) {
        Map<String, String> drawn = new LinkedHashMap<>();
        draws.forEach((name, draw) -> {
            Allowed allowed = box.variables().get(name);
            if (allowed != null && before.isEmpty()) {
                draw.values().stream().filter(allowed::allows).findFirst().ifPresent(value -> drawn.put(name, value));
            }
        });
        return drawn;
    }

    private List<Behind> behindLook(Phenotype look) {
        return Objects.requireNonNull(behind.getOrDefault(look, ImmutableList.of()));
    }

    /** How one animal with a look came by it. */
    List<Reason> example(Phenotype look) {
        Behind first = behindLook(look).get(0);
        GenotypeSet.Box box = first.boxes().get(0);
        Sex sex = box.sexes().iterator().next();
        List<AllelePair> pairs = new ArrayList<>();
        box.pairs()
                .values()
                .forEach(allowed -> allowed.stream()
                        .filter(pair ->
                                compiled.model().locus(pair.locus()).pairs(sex).contains(pair))
                        .findFirst()
                        .ifPresent(pairs::add));
        for (CoatExplanation way : CoatExplanation.of(compiled, Genotype.of(compiled.model(), pairs), sex, view)
                .outcomes()) {
            if (way.phenotype().equals(look)) {
                return ImmutableList.copyOf(way.looks());
            }
        }
        return ImmutableList.of();
    }

    /** The loci at which more than one genotype lies behind a look. */
    List<Hidden> hidden(Phenotype look) {
        List<Hidden> hidden = new ArrayList<>();
        List<Behind> ways = behindLook(look);
        List<Example> examples = examples(ways);
        for (String name : diagram.loci()) {
            Set<AllelePair> found = new HashSet<>();
            ways.forEach(way -> way.boxes().forEach(box -> found.addAll(box.at(name))));
            List<AllelePair> alternatives = compiled.model().locus(name).pairs().stream()
                    .filter(found::contains)
                    .toList();
            if (alternatives.size() > 1) {
                hidden.add(new Hidden(
                        name, look, alternatives, Optional.empty(), causes(name, alternatives, ways, examples)));
            }
        }
        return hidden;
    }

    /** Box by box, since what hides a locus may differ from one box to the next. */
    private List<Example> examples(List<Behind> ways) {
        List<Example> examples = new ArrayList<>();
        for (Behind way : ways) {
            for (GenotypeSet.Box box : way.boxes()) {
                for (Sex sex : box.sexes()) {
                    if (examples.size() < MOST_EXAMPLES) {
                        expressions(box, sex).ifPresent(shown -> examples.add(new Example(way.box(), box, sex, shown)));
                    }
                }
            }
        }
        return examples;
    }

    private Optional<Map<String, String>> expressions(GenotypeSet.Box box, Sex sex) {
        ImmutableMap.Builder<String, String> expressions = ImmutableMap.builder();
        for (String read : diagram.loci()) {
            Locus locus = compiled.model().locus(read);
            Optional<AllelePair> pair =
                    box.at(read).stream().filter(locus.pairs(sex)::contains).findFirst();
            if (pair.isEmpty()) {
                return Optional.empty();
            }
            expressions.put(read, locus.expression(pair.get(), sex));
        }
        return Optional.of(expressions.buildOrThrow());
    }

    private List<Cause> causes(String name, List<AllelePair> alternatives, List<Behind> ways, List<Example> examples) {
        Set<Cause> causes = new LinkedHashSet<>();
        examples.forEach(one -> causes.addAll(causes(name, one)));
        if (Causes.leaveOpen(compiled.model().locus(name), alternatives, causes)) {
            causes.add(Causes.across(
                    ways.stream().map(Behind::box).toList(),
                    view,
                    compiled.model().loci().keySet(),
                    name));
        }
        return new ArrayList<>(causes);
    }

    private List<Cause> causes(String name, Example one) {
        Locus at = compiled.model().locus(name);
        Sex sex = one.sex();
        Allowed allowed = one.way().variables().getOrDefault(name, Allowed.allBut());
        List<AllelePair> alternatives = one.box().at(name).stream()
                .filter(pair -> at.pairs(sex).contains(pair) && allowed.allows(at.expression(pair, sex)))
                .toList();
        return alternatives.size() < 2
                ? ImmutableList.of()
                : finders.computeIfAbsent(
                                new Drawn(sex, drawn(one.way())),
                                drawn -> Causes.in(compiled, view, drawn.sex(), drawn.draws()))
                        .of(one.expressions(), name, alternatives);
    }
}
