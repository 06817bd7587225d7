package org.geneticsrules.simulation;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.pedigree.Pedigree;

/**
 * A pedigree that was drawn: what was written down, and the truth behind it.
 *
 * @param records the animals, who comes from whom, and what was recorded of them, as a breeder would have written it down
 * @param animals the truth of each animal, by its id, in the order of the records
 * @param litters the truth of each litter, by its id: who were the parents, recorded or not, and how many kits were lost
 * @param probands the animals because of which the pedigree is known, where {@linkplain Ascertainment such} were asked for
 * @param tried how many pedigrees were drawn until one was kept, this one included
 * @param randomness where the chance of all draws in a row came from, of which this is one
 */
public record DrawnPedigree(
        Pedigree records,
        Map<String, DrawnAnimal> animals,
        Map<String, DrawnLitter> litters,
        List<DrawnAnimal> probands,
        long tried,
        Randomness randomness) {

    /**
     * Copies the collections.
     *
     * @param records what was written down
     * @param animals the truth of each animal
     * @param litters the truth of each litter
     * @param probands the probands
     * @param tried how many pedigrees were drawn
     * @param randomness where chance came from
     */
    public DrawnPedigree {
        animals = ImmutableMap.copyOf(animals);
        litters = ImmutableMap.copyOf(litters);
        probands = ImmutableList.copyOf(probands);
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

    DrawnPedigree with(List<DrawnAnimal> found, long tries) {
        return new DrawnPedigree(records, animals, litters, found, tries, randomness);
    }
}
