package org.geneticsrules.trait;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What was seen of one animal at one stage of its life.
 *
 * @param stage when it was looked at
 * @param look what it showed; a full or partial phenotype
 * @param light the catalogue's word for the light it was seen in, if stated
 */
public record Sighting(LifeStage stage, Phenotype look, Optional<String> light) {

    /**
     * Makes a sighting in a light that is not stated.
     *
     * @param stage when it was looked at
     * @param look what it showed
     */
    public Sighting(LifeStage stage, Phenotype look) {
        this(stage, look, Optional.empty());
    }

    /**
     * Returns a sighting whose stage is not known.
     *
     * @param look what was seen
     * @return the sighting
     */
    public static Sighting of(Phenotype look) {
        return new Sighting(LifeStage.unstated(), look);
    }

    /**
     * Returns this sighting in a light.
     *
     * @param stated the catalogue's word for it
     * @return a copy
     */
    public Sighting in(String stated) {
        return new Sighting(stage, look, Optional.of(stated));
    }

    /** Returns the look, and stage and light in brackets where they are known. */
    @Override
    public String toString() {
        List<String> known = new ArrayList<>();
        if (!stage.equals(LifeStage.unstated())) {
            known.add(stage.toString());
        }
        light.ifPresent(stated -> known.add("in " + stated));
        return look + (known.isEmpty() ? "" : " (" + String.join(", ", known) + ")");
    }
}
