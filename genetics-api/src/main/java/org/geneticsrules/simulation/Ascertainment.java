package org.geneticsrules.simulation;

import java.util.ArrayList;
import java.util.List;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Phenotype;

/**
 * How litters or pedigrees come to be studied: because of young recorded with a certain look, the probands. Each that is recorded so is
 * noticed with one chance, by itself; what has no proband is never heard of.
 *
 * <p>With chance 1 every litter that holds such a kit is kept (truncate selection); with a small chance nearly every litter that is kept has
 * one proband (single selection). In either case such kits are more frequent among those kept than among all that are born (Weinberg 1912;
 * Fisher 1934, Annals of Eugenics 6:13; from memory).
 *
 * @param look what a proband is recorded to show, at some look planned
 * @param noticed the chance of each such animal to become a proband, above 0
 */
public record Ascertainment(Phenotype look, Probability noticed) {

    /**
     * Checks the chance.
     *
     * @param look what a proband shows
     * @param noticed the chance to become one
     * @throws IllegalArgumentException if the look names no trait or nobody is noticed
     */
    public Ascertainment {
        if (look.traits().isEmpty() || noticed.isZero()) {
            throw new IllegalArgumentException(
                    "probands show something and are noticed at least sometimes, but the look was \"" + look
                            + "\" and the chance " + noticed);
        }
    }

    /**
     * Returns the way to keep all that holds an animal recorded with a look.
     *
     * @param look the look
     * @return each such animal is a proband
     */
    public static Ascertainment by(Phenotype look) {
        return new Ascertainment(look, Probability.ONE);
    }

    /** The probands among some animals. */
    List<DrawnAnimal> probands(List<DrawnAnimal> young, Chance chance) {
        List<DrawnAnimal> probands = new ArrayList<>();
        double often = noticed.toDouble();
        for (DrawnAnimal one : young) {
            if (one.isRecordedWith(look) && chance.happens(often)) {
                probands.add(one);
            }
        }
        return probands;
    }

    /** Returns the condition in words. */
    @Override
    public String toString() {
        return look + (noticed.isOne() ? "" : ", noticed with chance " + noticed);
    }
}
