package org.geneticsrules.simulation;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.pedigree.Pedigree;

/**
 * A pedigree that was drawn: what was written down, and the truth behind it.
 *
 * @param records the animals, who comes from whom, what was recorded of them, and how each litter came to be recorded, as a breeder would
 *     have written it down
 * @param animals the truth of each animal, by its id, in the order of the records
 * @param litters the truth of each litter, by its id: who were the parents, recorded or not, and how many kits were lost
 * @param tried how many pedigrees were drawn until one was kept, this one included
 * @param randomness where the chance of all draws in a row came from, of which this is one
 */
public record DrawnPedigree(
        Pedigree records,
        Map<String, DrawnAnimal> animals,
        Map<String, DrawnLitter> litters,
        long tried,
        Randomness randomness) {

    /**
     * Copies the collections.
     *
     * @param records what was written down
     * @param animals the truth of each animal
     * @param litters the truth of each litter
     * @param tried how many pedigrees were drawn
     * @param randomness where chance came from
     */
    public DrawnPedigree {
        animals = ImmutableMap.copyOf(animals);
        litters = ImmutableMap.copyOf(litters);
    }

    /**
     * Returns the truth of an animal.
     *
     * @param id id of an animal
     * @return what it truly is
     * @throws IllegalArgumentException if there is no such animal
     */
    public DrawnAnimal animal(String id) {
        DrawnAnimal found = animals.get(id);
        if (found == null) {
            throw new IllegalArgumentException("no individual \"" + id + "\" was drawn; there are " + animals.keySet());
        }
        return found;
    }

    /**
     * Returns the animals because of which the litters are known.
     *
     * @return the probands of all litters, in order; none if all litters are {@linkplain Simulation#keeping kept}
     */
    public List<DrawnAnimal> probands() {
        return litters.values().stream()
                .flatMap(litter -> litter.probands().stream())
                .collect(ImmutableList.toImmutableList());
    }

    DrawnPedigree after(long tries) {
        return new DrawnPedigree(records, animals, litters, tries, randomness);
    }
}
