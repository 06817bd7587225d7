package org.geneticsrules.answer;

import java.util.Optional;
import org.geneticsrules.model.Population;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Phenotype;

/**
 * What is probable if the uncertain parents come from a named population.
 *
 * @param population the population assumed for every parent that names none of its own
 * @param outcomes the chances of the looks a kit may have; empty if what is known of a parent has no weight in the population
 * @param event the chance of the look asked for, if one was
 * @param litter the litter asked for, if one was
 * @param lost the share of the kits conceived that are lost before they are counted, where any may be
 */
public record Weighting(
        Population population,
        Optional<Distribution<Phenotype>> outcomes,
        Optional<Probability> event,
        Optional<Litter> litter,
        Optional<Probability> lost) {}
