package org.geneticsrules.explanation;

import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Expressed;
import org.geneticsrules.expression.TraitTrace;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/**
 * Whether an animal could look the same with another pair at one locus.
 *
 * <p>The looks that chance may give are as many as the product of its draws. They are not listed: draws are independent, so once
 * those that several traits depend on are held fixed, each trait can be asked by itself.
 */
final class Exchange {

    private final CompiledModel compiled;
    private final Genotype genotype;
    private final Sex sex;
    private final View view;
    private final Map<AllelePair, Alone> alone = new LinkedHashMap<>();

    Exchange(CompiledModel compiled, Genotype genotype, Sex sex, View view) {
        this.compiled = compiled;
        this.genotype = genotype;
        this.sex = sex;
        this.view = view;
    }

    /** Whether the animal with that pair instead of its own may show a look. */
    boolean mayShow(AllelePair pair, Phenotype look) {
        Alone traits = alone.computeIfAbsent(pair, Alone::new);
        return traits.mayShow(look, new LinkedHashMap<>(), 0);
    }

    /** The traits of the animal with another pair, each by itself. */
    private final class Alone {

        private final Genotype other;

        /** For each trait, the draws it may depend on with their outcomes. */
        private final Map<String, Map<String, Set<String>>> draws = new LinkedHashMap<>();

        /** The draws that several traits may depend on. */
        private final List<String> shared = new ArrayList<>();

        private final Map<String, Set<String>> outcomes = new LinkedHashMap<>();
        private final Map<String, Map<Map<String, String>, Set<Phenotype>>> looks = new LinkedHashMap<>();

        Alone(AllelePair pair) {
            this.other = genotype.with(pair);
            for (String trait : view.traits()) {
                Map<String, Set<String>> met = new LinkedHashMap<>();
                for (Expressed way : ways(trait, Map.of())) {
                    for (TraitTrace trace : way.traits().values()) {
                        trace.draw()
                                .ifPresent(outcome -> met.computeIfAbsent(
                                                trace.rule().orElseThrow(), key -> new LinkedHashSet<>())
                                        .add(outcome));
                    }
                }
                met.forEach((draw, found) -> {
                    if (outcomes.containsKey(draw) && !shared.contains(draw)) {
                        shared.add(draw);
                    }
                    outcomes.computeIfAbsent(draw, key -> new LinkedHashSet<>()).addAll(found);
                });
                draws.put(trait, met);
            }
        }

        /** Whether the look is possible, the first few of the shared draws being fixed. */
        boolean mayShow(Phenotype look, Map<String, String> fixed, int next) {
            for (String trait : view.traits()) {
                if (!looks(trait, fixed).contains(look.restrictedTo(Set.of(trait)))) {
                    return false;
                }
            }
            if (next == shared.size()) {
                return true;
            }
            String draw = shared.get(next);
            for (String outcome : Objects.requireNonNull(outcomes.get(draw))) {
                fixed.put(draw, outcome);
                boolean found = mayShow(look, fixed, next + 1);
                fixed.remove(draw);
                if (found) {
                    return true;
                }
            }
            return false;
        }

        private Set<Phenotype> looks(String trait, Map<String, String> fixed) {
            Map<String, String> mine = new LinkedHashMap<>(fixed);
            mine.keySet().retainAll(Objects.requireNonNull(draws.get(trait)).keySet());
            return looks.computeIfAbsent(trait, key -> new LinkedHashMap<>())
                    .computeIfAbsent(
                            mine,
                            known -> ways(trait, known).stream()
                                    .map(Expressed::phenotype)
                                    .collect(ImmutableSet.toImmutableSet()));
        }

        private Set<Expressed> ways(String trait, Map<String, String> known) {
            return compiled.ways(other, sex, view.stage(), known, List.of(trait))
                    .outcomes();
        }
    }
}
