package org.geneticsrules.inference;

import com.google.common.collect.ImmutableList;
import java.util.List;

/**
 * What it would cost to conclude about some relatives.
 *
 * @param animals ids of the recorded animals that relations connect, in the order of the pedigree
 * @param cells the cells of all tables of the part of it that needs most, eight bytes each; 0 if all is found from family to family,
 *     because no relations form loops there or the records open them
 * @param within whether that is allowed ({@link Inference#within}); if not, {@code cells} may be less than would be needed
 */
public record Cost(List<String> animals, double cells, boolean within) {

    /**
     * Copies the ids.
     *
     * @param animals ids of the animals
     * @param cells the cells of tables
     * @param within whether they are allowed
     */
    public Cost {
        animals = ImmutableList.copyOf(animals);
    }
}
