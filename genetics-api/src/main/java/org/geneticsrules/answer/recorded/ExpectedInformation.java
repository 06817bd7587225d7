package org.geneticsrules.answer.recorded;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.answer.recorded.LookNext.Information;
import org.geneticsrules.inference.Conclusions;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.inference.JointPosterior;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;

/**
 * What a look at an animal is expected to tell, by the frequencies of one origin: Shannon's mutual information between what will be seen and
 * what the animal carries at some loci, given all records.
 *
 * <ol>
 *   <li>The look is put into the pedigree as if it had been made, once for each state s. The chance to see it is a ratio of the chances of
 *       all records, P(s) = L(records, s) / L(records); so draws that earlier looks shared with it, and naming errors, count.
 *   <li>The engine is asked what the animal carries at the loci, g, before and with each look.
 *   <li>What it tells is the mean, over what may be seen, of the information gained about g (Shannon 1948, <i>Bell System Technical
 *       Journal</i> 27:379, 27:623; as a divergence Kullback &amp; Leibler 1951, <i>Annals of Mathematical Statistics</i> 22:79),
 *       <pre>
 *   I = sum over s, g of P(s) P(g | s) log2 (P(g | s) / P(g))  =  H(look) - sum over g of P(g) H(look | g)
 *       </pre>
 *       in bits. No term is a difference of large numbers, so that nothing is told where nothing changes.
 *   <li>An animal for which the model makes no claim counts with every one of k states, so that the chances sum to 1 + (k - 1) q, q being
 *       how likely such an animal is. Then no information is defined, and none is given.
 * </ol>
 */
final class ExpectedInformation {

    /** What rounding may add to a sum of chances. */
    private static final double ROUNDING = 1e-9;

    private final Inference engine;
    private final Individual animal;
    private final LifeStage stage;
    private final Supposed supposed;

    /**
     * Prepares looks.
     *
     * @param engine the questions of the engine by this origin, about these relatives
     * @param loci all loci that any of the looks may tell of
     */
    ExpectedInformation(Inference engine, Pedigree kindred, String animal, LifeStage stage, Set<String> loci) {
        this.engine = engine;
        this.animal = kindred.individual(animal);
        this.stage = stage;
        this.supposed = new Supposed(engine, kindred, animal, loci);
    }

    /** What is known without the look. */
    Conclusions before() {
        return supposed.before();
    }

    /**
     * What a look tells.
     *
     * @param claims whether the model makes a claim for all that the animal may carry
     * @param information what it is expected to tell
     * @param states the states that may be seen
     */
    record Told(boolean claims, Information information, Map<String, Seen> states) {}

    /**
     * One state.
     *
     * @param chance how likely it is to be seen
     * @param genotypes the genotypes that it would leave; empty if that was not worked out
     */
    record Seen(double chance, Map<Map<String, AllelePair>, Double> genotypes) {}

    /** What the animal carries at some loci, genotype by genotype, without the look; empty if that would be too large. */
    Optional<Map<Map<String, AllelePair>, Double>> carried(Set<String> loci) {
        return carried(engine, loci);
    }

    /** Looks at a trait, to learn of some loci. */
    Told look(String trait, List<String> states, Set<String> loci) {
        Standing standing = supposed.standing(loci);
        Map<String, Seen> seen = new LinkedHashMap<>();
        if (standing != Standing.EXACT) {
            return new Told(true, Information.unsettled(standing), seen);
        }
        Map<String, Inference> engines = new LinkedHashMap<>();
        double sum = 0;
        for (String state : states) {
            Supposed.Then then = supposed.with(animal.with(Observation.of(stage, Phenotype.of(trait, state))), loci);
            if (then.standing() == Standing.CONTRADICTED) {
                continue; // it is never seen
            }
            if (then.standing() != Standing.EXACT) {
                return new Told(true, Information.unsettled(then.standing()), Map.of());
            }
            if (then.chance() > 0) {
                engines.put(state, then.engine());
                seen.put(state, new Seen(then.chance(), Map.of()));
                sum += then.chance();
            }
        }
        if (sum > 1 + ROUNDING) {
            return new Told(false, Information.unsettled(Standing.EXACT), Map.of());
        }
        return engines.size() == 1
                ? new Told(true, Information.exact(0), seen)
                : new Told(true, information(engines, loci, seen), seen);
    }

    private Information information(Map<String, Inference> engines, Set<String> loci, Map<String, Seen> seen) {
        Optional<Map<Map<String, AllelePair>, Double>> now = carried(engine, loci);
        double bits = 0;
        for (Map.Entry<String, Inference> one : engines.entrySet()) {
            Optional<Map<Map<String, AllelePair>, Double>> then = carried(one.getValue(), loci);
            if (now.isEmpty() || then.isEmpty()) {
                return Information.unsettled(Standing.TOO_LARGE);
            }
            double chance = Objects.requireNonNull(seen.get(one.getKey())).chance();
            seen.put(one.getKey(), new Seen(chance, then.get()));
            for (Map.Entry<Map<String, AllelePair>, Double> carries : then.get().entrySet()) {
                double was = now.get().getOrDefault(carries.getKey(), 0.0);
                if (carries.getValue() > 0 && was > 0) {
                    bits += chance * carries.getValue() * Math.log(carries.getValue() / was) / Math.log(2);
                }
            }
        }
        return Information.exact(bits);
    }

    private Optional<Map<Map<String, AllelePair>, Double>> carried(Inference asked, Set<String> loci) {
        try {
            JointPosterior found = asked.together(List.of(animal.id()), loci);
            if (found.standing() != Standing.EXACT) {
                return Optional.empty();
            }
            Map<Map<String, AllelePair>, Double> carried = new LinkedHashMap<>();
            found.combinations()
                    .forEach(one -> carried.merge(
                            one.genotypes().getOrDefault(animal.id(), Map.of()), one.chance(), Double::sum));
            return Optional.of(carried);
        } catch (TooLargeException manyGenotypes) {
            return Optional.empty();
        }
    }
}
