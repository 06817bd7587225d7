package org.geneticsrules.model;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.BoxSet;
import org.geneticsrules.trait.Clock;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;

/**
 * Looks for an animal in a region: a sex, a genotype that shows what the region asks for in this sex, an age at which every
 * progression can have its state, and doses that give every threshold its state.
 *
 * <p>Thresholds are met one after the other, each by a choice of what it still finds free; that may miss an example where several
 * share loci, but never gives a wrong one.
 */
final class WitnessSearch {

    /** Progressions whose states keep changing are followed so far; the sets of possible states repeat long before. */
    private static final int MOST_STEPS = 1_000;

    private final Model model;
    private final Map<String, Case> draws;

    WitnessSearch(Model model, Map<String, Case> draws) {
        this.model = model;
        this.draws = draws;
    }

    Optional<Regions.Witness> find(BoxSet region) {
        for (Condition box : region.boxes()) {
            for (Sex sex : Sex.values()) {
                Allowed sexes = box.variables().getOrDefault(Sex.VARIABLE, Allowed.allBut());
                if (sexes.allows(sex.word())) {
                    Optional<Regions.Witness> found = new Attempt(box, sex).animal();
                    if (found.isPresent()) {
                        return found;
                    }
                }
            }
        }
        return Optional.empty();
    }

    /** One box and one sex. */
    private final class Attempt {
        private final Condition box;
        private final Sex sex;
        private final Map<String, AllelePair> chosen = new LinkedHashMap<>();
        private final Set<String> settled = new LinkedHashSet<>();
        private final Map<String, String> drawn = new LinkedHashMap<>();
        private final Map<Clock, Integer> ages = new EnumMap<>(Clock.class);

        Attempt(Condition box, Sex sex) {
            this.box = box;
            this.sex = sex;
        }

        Optional<Regions.Witness> animal() {
            boolean found = choosePairs() && chooseChances() && chooseAges() && meetThresholds();
            return found ? Optional.of(witness()) : Optional.empty();
        }

        private Regions.Witness witness() {
            List<String> parts = new ArrayList<>();
            boolean sexMatters = box.names().contains(Sex.VARIABLE);
            for (Locus locus : model.loci().values()) {
                AllelePair pair = chosen.get(locus.id());
                if (pair != null) {
                    sexMatters |= locus.dependsOnSex()
                            || locus.transmission().heterogametic().isPresent();
                    if (!pair.alleles().isEmpty()) {
                        parts.add(pair.toString());
                    }
                }
            }
            Map<String, String> inOrder = new LinkedHashMap<>();
            draws.keySet().forEach(draw -> Optional.ofNullable(drawn.get(draw)).ifPresent(s -> inOrder.put(draw, s)));
            return new Regions.Witness(
                    String.join(" ", parts), sexMatters ? Optional.of(sex) : Optional.empty(), stage(), inOrder);
        }

        private LifeStage stage() {
            LifeStage stage = new LifeStage(age(Clock.WEEK), age(Clock.MOULT), Optional.empty());
            Allowed seasons = box.variables().get(LifeStage.SEASON);
            return seasons == null
                    ? stage
                    : stage.in(seasons.among(model.catalogue().seasons()).get(0));
        }

        private OptionalInt age(Clock clock) {
            Integer age = ages.get(clock);
            return age == null ? OptionalInt.empty() : OptionalInt.of(age);
        }

        private boolean choosePairs() {
            for (Map.Entry<String, Allowed> variable : box.variables().entrySet()) {
                Locus locus = model.loci().get(variable.getKey());
                if (locus != null) {
                    Optional<AllelePair> pair = locus.pairs(sex).stream()
                            .filter(one -> variable.getValue().allows(locus.expression(one, sex)))
                            .findFirst();
                    if (pair.isEmpty()) {
                        return false;
                    }
                    chosen.put(locus.id(), pair.get());
                }
            }
            return true;
        }

        /** Any state of a plain chance can be drawn. */
        private boolean chooseChances() {
            restricted(CaseState.Chance.class)
                    .forEach((draw, chance) ->
                            drawn.put(draw, allowed(draw).among(chance.states()).get(0)));
            return true;
        }

        private boolean chooseAges() {
            Map<String, CaseState.Progression> progressions = restricted(CaseState.Progression.class);
            for (Clock clock : Clock.values()) {
                Map<String, CaseState.Progression> ticking = new LinkedHashMap<>(progressions);
                ticking.values().removeIf(progression -> progression.clock() != clock);
                if (!ticking.isEmpty() && !chooseAge(clock, ticking)) {
                    return false;
                }
            }
            return true;
        }

        /** The first age at which each progression can be in one of its allowed states. */
        private boolean chooseAge(Clock clock, Map<String, CaseState.Progression> ticking) {
            Map<String, Set<String>> possible = new LinkedHashMap<>();
            ticking.forEach((draw, progression) ->
                    possible.put(draw, new LinkedHashSet<>(progression.start().outcomes())));
            Set<Map<String, Set<String>>> seen = new LinkedHashSet<>();
            for (int age = 0; age < MOST_STEPS && seen.add(new LinkedHashMap<>(possible)); age++) {
                if (possible.entrySet().stream()
                        .noneMatch(one ->
                                allowed(one.getKey()).among(one.getValue()).isEmpty())) {
                    possible.forEach((draw, states) ->
                            drawn.put(draw, allowed(draw).among(states).get(0)));
                    ages.put(clock, age);
                    return true;
                }
                ticking.forEach((draw, progression) -> {
                    Set<String> next = new LinkedHashSet<>();
                    Objects.requireNonNull(possible.get(draw))
                            .forEach(state ->
                                    next.addAll(progression.after(state).outcomes()));
                    possible.put(draw, next);
                });
            }
            return false;
        }

        private boolean meetThresholds() {
            for (Map.Entry<String, CaseState.Threshold> threshold :
                    restricted(CaseState.Threshold.class).entrySet()) {
                Allowed states = allowed(threshold.getKey());
                Optional<String> met = new DoseSearch(threshold.getValue(), this::candidates).meet(states, chosen);
                if (met.isEmpty()) {
                    return false;
                }
                drawn.put(threshold.getKey(), met.get());
                settled.addAll(threshold.getValue().doses().keySet());
            }
            return true;
        }

        /** The genotypes that are still free at a locus, with what each shows. */
        private Map<AllelePair, String> candidates(String name) {
            Locus locus = model.locus(name);
            Allowed asked = box.variables().getOrDefault(name, Allowed.allBut());
            Map<AllelePair, String> free = new LinkedHashMap<>();
            for (AllelePair pair : locus.pairs(sex)) {
                String shown = locus.expression(pair, sex);
                if (asked.allows(shown) && (!settled.contains(name) || pair.equals(chosen.getOrDefault(name, pair)))) {
                    free.put(pair, shown);
                }
            }
            return free;
        }

        private Allowed allowed(String draw) {
            return Objects.requireNonNull(box.variables().get(draw));
        }

        private <T extends CaseState> Map<String, T> restricted(Class<T> kind) {
            Map<String, T> found = new LinkedHashMap<>();
            draws.forEach((draw, one) -> {
                if (box.names().contains(draw) && kind.isInstance(one.gives())) {
                    found.put(draw, kind.cast(one.gives()));
                }
            });
            return found;
        }
    }
}
