package org.geneticsrules.model;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.BoxSet;
import org.geneticsrules.trait.BoxSpace;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;

/**
 * Where, in the space of all that decides a look, each own state of each trait lies and each condition holds.
 *
 * <p>The variables of the space are the loci with their expressions, the sex where the model distinguishes it, the season where a
 * condition reads it, and one draw for each case that leaves a state to chance, age or a threshold. A draw is named by the pointer of
 * its case. Conditions may read traits, and traits read traits; here all is traced back to these variables. The regions are unions of
 * boxes and are combined box by box; genotypes are never listed. They range over <i>declared</i> expressions, so they do not depend
 * on the dominance hypothesis.
 *
 * <p>A draw may have any state that its case can give at some age, from any sum of doses. So the regions of progressions and
 * thresholds hold more than can happen: two states that come at different ages only, or an expression whose dose excludes the state,
 * may seem to meet. What is found not to meet never does; what is found to meet is shown by an example where there is one (see
 * {@link #witness}).
 *
 * <p>Where a trait that a condition reads is not modelled, it is unknown whether the condition holds; {@link #holds} excludes such
 * expressions and {@link #mayHold} includes them.
 *
 * <p>Immutable and thread-safe.
 */
public final class Regions {

    private final Model model;
    private final BoxSpace space;
    private final Map<String, List<Held>> held = new LinkedHashMap<>();
    private final ImmutableMap<String, Case> draws;

    /** A case and where it holds. */
    private record Held(Case one, BoxSet where) {}

    private Regions(Model model) {
        this.model = model;
        Set<String> inOrder = new LinkedHashSet<>();
        model.rules().keySet().forEach(trait -> order(trait, inOrder));
        this.draws = draws(inOrder);
        ImmutableMap.Builder<String, List<String>> variables = ImmutableMap.builder();
        model.loci().forEach((name, locus) -> variables.put(name, locus.expressions()));
        if (model.distinguishesSex()) {
            variables.put(Sex.VARIABLE, Sex.words());
        }
        if (readsSeason()) {
            variables.put(LifeStage.SEASON, model.catalogue().seasons());
        }
        draws.forEach((pointer, one) ->
                variables.put(pointer, ImmutableList.copyOf(one.gives().states())));
        this.space = BoxSpace.of(variables.buildOrThrow());
        inOrder.forEach(this::trace);
    }

    private boolean readsSeason() {
        return Stream.concat(
                        model.rules().values().stream()
                                .flatMap(rule -> rule.cases().stream().map(Case::when)),
                        model.masks().values().stream().map(Mask::when))
                .anyMatch(when -> when.names().contains(LifeStage.SEASON));
    }

    /** Puts each trait after those it reads; the rules have no circle. */
    private void order(String trait, Set<String> inOrder) {
        TraitRule rule = model.rules().get(trait);
        if (rule == null || inOrder.contains(trait)) {
            return;
        }
        rule.cases().forEach(one -> one.when().names().forEach(name -> order(name, inOrder)));
        inOrder.add(trait);
    }

    /**
     * The cases that draw a state. Each comes after the draws that its condition reads, so a box that restricts a draw lies within the
     * condition of its case: boxes are split variable by variable in this order.
     */
    private ImmutableMap<String, Case> draws(Set<String> inOrder) {
        ImmutableMap.Builder<String, Case> found = ImmutableMap.builder();
        for (String trait : inOrder) {
            TraitRule rule = Objects.requireNonNull(model.rules().get(trait));
            rule.allCases().stream()
                    .filter(one -> !(one.gives() instanceof CaseState.Certain))
                    .forEach(one -> found.put(rule.pointer(one), one));
        }
        return found.buildOrThrow();
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
     * Returns the space.
     *
     * @return loci with their declared expressions, then the sex and the season where they matter, then draws with their states
     */
    public BoxSpace space() {
        return space;
    }

    /**
     * Returns the cases whose state is drawn.
     *
     * @return cases by pointer, which is the name of the draw in {@link #space()}, each after those it reads
     */
    public Map<String, Case> draws() {
        return draws;
    }

    /**
     * Returns where a trait has one of some own states.
     *
     * @param trait id of a trait with a rule
     * @param states the own states
     * @return the region, without the expressions at which the trait is not modelled
     */
    public BoxSet own(String trait, Allowed states) {
        TraitRule rule = Objects.requireNonNull(model.rules().get(trait), trait);
        BoxSet region = space.nothing();
        for (Held each : casesOf(trait)) {
            String draw = rule.pointer(each.one());
            if (draws.containsKey(draw)) {
                region = region.or(each.where().and(space.where(draw, states)));
            } else if (each.one().gives().states().stream().anyMatch(states::allows)) {
                region = region.or(each.where());
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
            for (Held each : casesOf(trait)) {
                region = region.minus(each.where());
            }
        }
        return region;
    }

    /**
     * Returns where a condition is known to hold.
     *
     * @param condition a condition over variables of this space and traits with rules
     * @return the region
     */
    public BoxSet holds(Condition condition) {
        return region(condition, false);
    }

    /**
     * Returns where a condition is not known to fail.
     *
     * @param condition a condition over variables of this space and traits with rules
     * @return the region, at least {@link #holds}
     */
    public BoxSet mayHold(Condition condition) {
        return region(condition, true);
    }

    /**
     * Returns an animal that lies in a region, as an example that a person can check.
     *
     * <p>An example is given only if it is sure: its genotype exists in its sex, and at one age its draws can all have the states named,
     * those of thresholds by the doses of the genotype named. One may be missed where several thresholds share
     * loci, else none is given only if there is none.
     *
     * @param region a region of this space
     * @return an example that names what the region restricts, or empty if none was found
     */
    public Optional<Witness> witness(BoxSet region) {
        return new WitnessSearch(model, draws).find(region);
    }

    /**
     * Tells whether a region is restricted by draws of progressions or thresholds, so that it may hold more than can happen.
     *
     * @param region a region of this space
     * @return true if a missing {@link #witness} does not prove that there is none
     */
    boolean isWide(BoxSet region) {
        return region.boxes().stream()
                .flatMap(box -> box.names().stream())
                .anyMatch(name -> draws.containsKey(name)
                        && !(Objects.requireNonNull(draws.get(name)).gives() instanceof CaseState.Chance));
    }

    /**
     * An animal as an example.
     *
     * @param genotype genotype text over the loci that matter; empty if any genotype will do
     * @param sex its sex, where that matters
     * @param stage the age and season, as far as they matter
     * @param draws the drawn states that matter, by the pointer of their case
     */
    public record Witness(String genotype, Optional<Sex> sex, LifeStage stage, Map<String, String> draws) {

        /**
         * Copies the draws.
         *
         * @param genotype genotype text
         * @param sex its sex
         * @param stage the age and season
         * @param draws the drawn states
         */
        public Witness {
            draws = ImmutableMap.copyOf(draws);
        }

        /** Returns {@code genotype B/b of a male at moult 3 in winter, where /traits/spread/cases/marked gives low}. */
        @Override
        public String toString() {
            StringBuilder words = new StringBuilder(genotype.isEmpty() ? "any genotype" : "genotype " + genotype);
            sex.ifPresent(one -> words.append(" of a ").append(one.word()));
            LifeStage age = new LifeStage(stage.weeks(), stage.moult(), Optional.empty());
            if (!age.equals(LifeStage.unstated())) {
                words.append(" at ").append(age);
            }
            stage.season().ifPresent(season -> words.append(" in ").append(season));
            if (!draws.isEmpty()) {
                words.append(", where ")
                        .append(draws.entrySet().stream()
                                .map(draw -> draw.getKey() + " gives " + draw.getValue())
                                .collect(Collectors.joining(" and ")));
            }
            return words.toString();
        }
    }

    private BoxSet region(Condition condition, boolean countUnknown) {
        BoxSet region = space.everything();
        for (Map.Entry<String, Allowed> variable : condition.variables().entrySet()) {
            String name = variable.getKey();
            if (!model.rules().containsKey(name)) {
                region = region.and(space.where(name, variable.getValue()));
            } else {
                BoxSet known = own(name, variable.getValue());
                region = region.and(countUnknown ? known.or(notModelled(name)) : known);
            }
        }
        return region;
    }

    private List<Held> casesOf(String trait) {
        return Objects.requireNonNull(held.get(trait), trait);
    }

    /** Finds where the cases of a trait hold, those of the traits it reads being known. */
    private void trace(String trait) {
        TraitRule rule = Objects.requireNonNull(model.rules().get(trait));
        ImmutableList.Builder<Held> cases = ImmutableList.builder();
        BoxSet left = space.everything();
        for (Case one : rule.cases()) {
            cases.add(new Held(one, holds(one.when())));
            left = left.minus(mayHold(one.when()));
        }
        if (rule.otherwise().isPresent()) {
            cases.add(new Held(rule.otherwise().get(), left));
        }
        held.put(trait, cases.build());
    }
}
