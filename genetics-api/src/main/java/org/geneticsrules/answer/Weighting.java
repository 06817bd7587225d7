package org.geneticsrules.answer;

import com.google.common.collect.ImmutableList;
import java.util.List;
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
 * @param tippings where the frequency of an allele turns the look asked for (in a litter: at least one that shows it) from less likely
 *     than not to likely
 */
public record Weighting(
        Population population,
        Optional<Distribution<Phenotype>> outcomes,
        Optional<Probability> event,
        Optional<Litter> litter,
        Optional<Probability> lost,
        List<Tipping> tippings) {

    /**
     * Copies the list.
     *
     * @param population the population assumed
     * @param outcomes the chances of the looks
     * @param event the chance of the look asked for
     * @param litter the litter asked for
     * @param lost the share of kits lost
     * @param tippings where a frequency turns the look asked for
     */
    public Weighting {
        tippings = ImmutableList.copyOf(tippings);
    }
}
