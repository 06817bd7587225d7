package org.geneticsrules.answer.recorded;

import java.util.Optional;
import org.geneticsrules.model.Population;

/**
 * Where founders and unrecorded parents are taken to come from, by which chances are weighed.
 *
 * @param assumed the population of all for whom the pedigree states none; empty if it states one for each
 */
public record Origin(Optional<Population> assumed) {

    /** Returns where they come from, in words that follow a number. */
    @Override
    public String toString() {
        return assumed.map(population -> "founders as in \"" + population.id() + "\"")
                .orElse("founders as recorded");
    }
}
