package org.geneticsrules.estimation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleFunction;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Recombination;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Viability;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Sex;

/**
 * One number of a model that is not known: it yields a model for each value that the number may have.
 *
 * <pre>{@code
 * ModelParameter.recombination(model, "g", "B-W").at(0.1);   // the model with one tenth there
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class ModelParameter {

    private final String words;
    private final double high;
    private final DoubleFunction<Model> models;

    /** The loci between which recombination is asked about; else none. */
    private final List<String> between;

    private ModelParameter(String words, double high, DoubleFunction<Model> models, List<String> between) {
        this.words = words;
        this.high = high;
        this.models = models;
        this.between = between;
    }

    private ModelParameter(String words, DoubleFunction<Model> models) {
        this(words, 1, models, List.of());
    }

    /**
     * Returns the recombination fraction of an interval, the same in both sexes.
     *
     * @param model a model
     * @param group id of a linkage group that states fractions
     * @param interval one of its intervals, such as {@code B-W}
     * @return the number, from 0 to 1/2
     * @throws IllegalArgumentException if there is no such group or interval, or the group states patterns of crossovers
     */
    public static ModelParameter recombination(Model model, String group, String interval) {
        return recombination(model, group, interval, Optional.empty());
    }

    /**
     * Returns the recombination fraction of an interval in the gametes of one sex.
     *
     * @param model a model
     * @param group id of a linkage group that states fractions
     * @param interval one of its intervals, such as {@code B-W}
     * @param sex the sex whose gametes are meant; those of the other keep their fraction
     * @return the number, from 0 to 1/2
     * @throws IllegalArgumentException if there is no such group or interval, or the group states patterns of crossovers
     */
    public static ModelParameter recombination(Model model, String group, String interval, Sex sex) {
        return recombination(model, group, interval, Optional.of(sex));
    }

    private static ModelParameter recombination(Model model, String group, String interval, Optional<Sex> sex) {
        LinkageGroup found = model.groups().get(group);
        if (found == null) {
            throw unknown(model, "linkage group", group, model.groups().keySet());
        }
        int position = found.intervals().indexOf(interval);
        if (position < 0) {
            throw unknown(model, "interval of group " + group, interval, found.intervals());
        }
        if (!(found.recombination() instanceof Recombination.Fractions fractions)) {
            throw new IllegalArgumentException(
                    "group " + group + " states patterns of crossovers, not fractions of its intervals");
        }
        return new ModelParameter(
                "the recombination fraction of " + interval
                        + sex.map(one -> " in " + one.word() + "s").orElse(""),
                0.5,
                value -> {
                    Probability r = ModelCopy.chance(value);
                    List<Probability> female = new ArrayList<>(fractions.female());
                    List<Probability> male = new ArrayList<>(fractions.male());
                    if (sex.orElse(Sex.FEMALE) == Sex.FEMALE) {
                        female.set(position, r);
                    }
                    if (sex.orElse(Sex.MALE) == Sex.MALE) {
                        male.set(position, r);
                    }
                    LinkageGroup after = new LinkageGroup(
                            found.id(),
                            found.title(),
                            found.transmission(),
                            found.loci(),
                            new Recombination.Fractions(female, male),
                            found.evidence());
                    return ModelCopy.exchangingGroups(one -> one.id().equals(group) ? after : one)
                            .of(model);
                },
                found.loci().subList(position, position + 2));
    }

    /**
     * Returns the chance of a state in a case that leaves the state to chance: a penetrance. The other states of the case share what is left in the
     * proportions that the model states.
     *
     * @param model a model
     * @param trait id of a trait
     * @param rule id of a case of its rule, {@code otherwise} for that
     * @param state one of the states of the case
     * @return the number, from 0 to 1
     * @throws IllegalArgumentException if there is no such trait, case or state, or the case leaves nothing to chance
     */
    public static ModelParameter chance(Model model, String trait, String rule, String state) {
        List<Case> cases = ModelCopy.rule(model, trait).allCases();
        Case found = cases.stream()
                .filter(one -> one.id().equals(rule))
                .findFirst()
                .orElseThrow(() -> unknown(
                        model,
                        "case of trait " + trait,
                        rule,
                        cases.stream().map(Case::id).toList()));
        if (!(found.gives() instanceof CaseState.Chance stated)
                || stated.chances().outcomes().size() < 2) {
            throw new IllegalArgumentException(
                    "case " + rule + " of trait " + trait + " leaves no states to chance: " + found.gives());
        }
        if (!stated.chances().outcomes().contains(state)) {
            throw unknown(
                    model, "state of case " + rule, state, stated.chances().outcomes());
        }
        return new ModelParameter("the chance of " + trait + " " + state + " in case " + rule, value -> {
            Probability chance = ModelCopy.chance(value);
            Probability others = stated.chances().probability(state).complement();
            Map<String, Probability> chances = new LinkedHashMap<>();
            for (String each : stated.chances().outcomes()) {
                Probability before = stated.chances().probability(each);
                chances.put(
                        each,
                        each.equals(state) ? chance : before.dividedBy(others).times(chance.complement()));
            }
            chances.values().removeIf(Probability::isZero);
            CaseState after = new CaseState.Chance(Distribution.of(chances));
            return ModelCopy.exchanging(
                            (of, one) -> of.equals(trait) && one.id().equals(rule)
                                    ? new Case(one.id(), one.when(), after, one.evidence())
                                    : one)
                    .of(model);
        });
    }

    /**
     * Returns the chance to be scored, given born, that a statement of viability gives.
     *
     * @param model a model
     * @param viability id of a statement of viability
     * @return the number, from 0 to 1
     * @throws IllegalArgumentException if there is no such statement
     */
    public static ModelParameter viability(Model model, String viability) {
        Viability found = model.viability().get(viability);
        if (found == null) {
            throw unknown(
                    model,
                    "statement of viability",
                    viability,
                    model.viability().keySet());
        }
        return new ModelParameter(
                "the chance to be scored, for which the model says: " + found.words(),
                value -> ModelCopy.exchangingViability(one -> one.id().equals(viability)
                                ? new Viability(
                                        one.id(),
                                        one.locus(),
                                        one.expressions(),
                                        one.sex(),
                                        one.birth(),
                                        ModelCopy.chance(value),
                                        one.evidence())
                                : one)
                        .of(model));
    }

    private static IllegalArgumentException unknown(Model model, String what, String name, Iterable<String> known) {
        return new IllegalArgumentException(
                "model " + model + " has no " + what + " \"" + name + "\"; expected one of " + known);
    }

    /**
     * Returns the number in words.
     *
     * @return for example {@code the recombination fraction of B-W}
     */
    public String words() {
        return words;
    }

    /**
     * Returns the greatest value that the number may have; the least is 0.
     *
     * @return 1/2 for recombination fractions, else 1
     */
    public double greatest() {
        return high;
    }

    /**
     * Returns the loci between which recombination is asked about.
     *
     * @return two neighbouring loci; none if the number is no recombination fraction
     */
    public List<String> between() {
        return between;
    }

    /**
     * Returns the model with a value of the number.
     *
     * @param value from 0 to {@link #greatest}; it is rounded to twelve decimals
     * @return the model, otherwise unchanged
     * @throws IllegalArgumentException if the value is outside its range
     * @throws org.geneticsrules.problem.ProblemsException if the model is not sound with that value
     */
    public Model at(double value) {
        if (!(value >= 0 && value <= high)) {
            throw new IllegalArgumentException(words + " is from 0 to " + high + ", but was " + value);
        }
        return models.apply(value);
    }

    /** Returns the number in words. */
    @Override
    public String toString() {
        return words;
    }
}
