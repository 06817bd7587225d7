package org.geneticsrules.estimation;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.DoubleUnaryOperator;
import java.util.function.UnaryOperator;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.inference.Conclusions;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.pedigree.Kindreds;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.statistics.LikelihoodRatio;
import org.geneticsrules.statistics.ProfileLikelihood;

/**
 * One number of a model, estimated by all records of a pedigree: for each value a model is made anew, and the chance of the records is calculated
 * exactly, but for rounding, as {@link Inference} does it.
 *
 * <pre>{@code
 * PedigreeLikelihood.of(ModelParameter.recombination(model, "g", "B-W"), pedigree, one -> one.from("even")).estimate(0.95);
 * }</pre>
 *
 * <p>All other numbers of the model, and the frequencies among founders, are taken to be as stated; so is how the animals came to be recorded: for kindreds that were
 * recorded because of what they show, chances of showing it are overestimated.
 *
 * <p>Immutable and thread-safe.
 */
public final class PedigreeLikelihood {

    /** Each value costs a model and an inference, so the grid is coarser than the usual one. */
    private static final int STEPS = 16;

    private final ModelParameter parameter;
    private final Map<String, Pedigree> families;
    private final UnaryOperator<Inference> settings;

    /** What was calculated before, by value: the log-likelihood of each family. */
    private final Map<Double, Map<String, Double>> known = new ConcurrentHashMap<>();

    private final ProfileLikelihood total;

    private PedigreeLikelihood(
            ModelParameter parameter, Map<String, Pedigree> families, UnaryOperator<Inference> settings) {
        this.parameter = parameter;
        this.families = ImmutableMap.copyOf(families);
        this.settings = settings;
        this.total = ProfileLikelihood.of(
                value -> at(value).values().stream()
                        .mapToDouble(Double::doubleValue)
                        .sum(),
                0,
                parameter.greatest(),
                STEPS);
    }

    /**
     * Asks about a number by the records of a pedigree.
     *
     * @param parameter the number
     * @param pedigree the animals and what was recorded of them
     * @param settings what is to be set for the questions, such as the population of founders, naming errors and limits
     * @return the question
     * @throws IllegalArgumentException if the pedigree is empty, or its records contradict the model whatever the number is
     * @throws TooLargeException if the chance of some records cannot be calculated exactly within the limits
     * @throws org.geneticsrules.problem.ProblemsException if records name what the model does not know, or frequencies are missing
     */
    public static PedigreeLikelihood of(
            ModelParameter parameter, Pedigree pedigree, UnaryOperator<Inference> settings) {
        if (pedigree.individuals().isEmpty()) {
            throw new IllegalArgumentException("pedigree " + pedigree + " has no animals");
        }
        Map<String, Pedigree> families = new LinkedHashMap<>();
        Kindreds.of(pedigree)
                .each()
                .forEach(one -> families.put(one.individualAt(0).id(), one));
        return new PedigreeLikelihood(parameter, families, settings);
    }

    private Map<String, Double> at(double value) {
        Map<String, Double> before = known.get(value);
        if (before != null) {
            return before;
        }
        CompiledModel compiled = CompiledModel.of(parameter.at(value));
        Map<String, Double> found = new LinkedHashMap<>();
        Optional<Inference> questions = Optional.empty();
        for (Map.Entry<String, Pedigree> family : families.entrySet()) {
            Pedigree of = family.getValue();
            Inference asked =
                    questions.isPresent() ? questions.get().about(of) : settings.apply(Inference.of(compiled, of));
            questions = Optional.of(asked); // what was found out about the model is not worked out again
            found.put(family.getKey(), logLikelihood(asked.conclude(List.of()), family.getKey(), of));
        }
        known.put(value, found);
        return found;
    }

    private static double logLikelihood(Conclusions conclusions, String first, Pedigree family) {
        if (!conclusions.isExact()) {
            throw new TooLargeException(
                    "animals at once, those related to " + first,
                    family.individuals().size(),
                    0,
                    "allow larger tables (Inference.within), or leave records out.");
        }
        return conclusions.isConsistent() ? conclusions.logLikelihood() : Double.NEGATIVE_INFINITY;
    }

    /**
     * Returns the sets of relatives in which the phase of a parent is not known: it may have the alleles of the two loci on its chromosomes in
     * either of two ways, by the records of all its relatives. Such a set says less of recombination than one of known phase, and nothing at
     * all where each such parent has one of the young.
     *
     * @return by the first animal of a set, the parents of open phase; none where all are known, and if the number is no recombination fraction
     */
    public Map<String, List<String>> phaseUnknown() {
        if (parameter.between().isEmpty()) {
            return ImmutableMap.of();
        }
        CompiledModel compiled = CompiledModel.of(parameter.at(parameter.greatest() / 2));
        ImmutableMap.Builder<String, List<String>> found = ImmutableMap.builder();
        families.forEach((first, family) -> {
            Set<String> parents = new LinkedHashSet<>();
            for (Litter litter : family.litters().values()) {
                if (!litter.kits().isEmpty()) {
                    litter.dam().ifPresent(parents::add);
                    parents.addAll(litter.sires().males());
                }
            }
            Conclusions conclusions =
                    settings.apply(Inference.of(compiled, family)).conclude(parameter.between());
            List<String> open = parents.stream()
                    .filter(parent -> conclusions.isPhaseOpen(
                            parent,
                            parameter.between().get(0),
                            parameter.between().get(1)))
                    .collect(ImmutableList.toImmutableList());
            if (!open.isEmpty()) {
                found.put(first, open);
            }
        });
        return found.buildOrThrow();
    }

    /**
     * Returns the number that is estimated.
     *
     * @return the parameter
     */
    public ModelParameter parameter() {
        return parameter;
    }

    /**
     * Returns the log-likelihood of a value.
     *
     * @param value from 0 to the greatest value of the number
     * @return the natural logarithm of the chance of all records; minus infinity if they contradict one another there
     * @throws IllegalArgumentException if the value is outside its range
     */
    public double logLikelihood(double value) {
        return total.at(value);
    }

    /**
     * Estimates the number.
     *
     * @param level confidence level, above 0 and below 1
     * @return the value at which the records are likeliest, with the profile interval
     * @throws IllegalArgumentException if the level is outside its range
     */
    public Estimate estimate(double level) {
        List<String> notes = new ArrayList<>();
        notes.add("all other numbers of the model are taken to be as stated.");
        if (!total.isFlat()
                && total.interval(level).lowIsBoundary()
                && total.interval(level).highIsBoundary()) {
            notes.add("at this level the records rule out no value of the number.");
        }
        return Estimate.of(total, level, notes.toArray(String[]::new));
    }

    /**
     * Tests a value that a hypothesis states.
     *
     * @param stated from 0 to the greatest value of the number
     * @return the likelihood ratio, at a boundary if the value is an end of what the number can be
     * @throws IllegalArgumentException if the value is outside its range
     */
    public LikelihoodRatio test(double stated) {
        double log = total.at(stated);
        double best = total.maximum().logLikelihood();
        return stated == 0 || stated == parameter.greatest()
                ? LikelihoodRatio.atBoundary(log, best)
                : LikelihoodRatio.of(log, best);
    }

    /**
     * Returns the LOD scores of the sets of relatives, of a recombination fraction.
     *
     * @return scores of sets of relatives by the first animal of each in the order of the pedigree
     * @throws IllegalStateException if the number is no recombination fraction
     */
    public LodScores lodScores() {
        if (parameter.greatest() != 0.5) {
            throw new IllegalStateException("LOD scores are of recombination fractions, not of " + parameter.words());
        }
        Map<String, DoubleUnaryOperator> scores = new LinkedHashMap<>();
        for (String family : families.keySet()) {
            scores.put(family, value -> at(value).getOrDefault(family, Double.NEGATIVE_INFINITY));
        }
        return LodScores.of(scores, STEPS);
    }
}
