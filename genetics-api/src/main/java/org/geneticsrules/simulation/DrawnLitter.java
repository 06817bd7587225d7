package org.geneticsrules.simulation;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.pedigree.Ascertainment;

/**
 * A litter that was drawn, and how many kits came to nothing.
 *
 * @param dam the mother
 * @param sires the sire of each kit; or one alone, of the whole litter
 * @param kits those that lived until the litter was scored
 * @param conceived how many kits were conceived
 * @param born how many of these were born
 * @param probands the kits because of which the litter is known; none if all are {@linkplain Simulation#keeping kept}
 * @param earlier the kit that its parents had before and by which they were chosen, which is not among the records; empty if they were not
 * @param ascertainment how it came to be recorded: complete, at least one, the probands with their number, or parents chosen
 * @param tried how many litters were drawn until one was kept, this one included; 1 in a pedigree, which is kept or not as a whole
 */
public record DrawnLitter(
        DrawnAnimal dam,
        List<DrawnAnimal> sires,
        List<DrawnAnimal> kits,
        long conceived,
        long born,
        List<DrawnAnimal> probands,
        Optional<DrawnAnimal> earlier,
        Ascertainment ascertainment,
        long tried) {

    /**
     * Copies the lists.
     *
     * @param dam the mother
     * @param sires the sire of each kit, or of all
     * @param kits the kits
     * @param conceived how many were conceived
     * @param born how many were born
     * @param probands the probands
     * @param earlier the earlier kit
     * @param ascertainment how it came to be recorded
     * @param tried how many litters were drawn
     */
    public DrawnLitter {
        sires = ImmutableList.copyOf(sires);
        kits = ImmutableList.copyOf(kits);
        probands = ImmutableList.copyOf(probands);
    }

    /**
     * Returns the sire of a kit.
     *
     * @param kit number of the kit, from 0
     * @return its sire
     * @throws IndexOutOfBoundsException if there is no such kit
     */
    public DrawnAnimal sire(int kit) {
        return sires.get(sires.size() == 1 ? 0 : kit);
    }

    /**
     * Returns how many kits were lost: before they were born, or later but before the litter was scored.
     *
     * @return a number from 0
     */
    public long lost() {
        return conceived - kits.size();
    }

    DrawnLitter after(long tries) {
        return new DrawnLitter(dam, sires, kits, conceived, born, probands, earlier, ascertainment, tries);
    }
}
