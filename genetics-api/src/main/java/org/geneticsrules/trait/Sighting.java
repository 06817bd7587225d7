package org.geneticsrules.trait;

/**
 * What was seen of one animal at one stage of its life.
 *
 * @param stage when it was looked at
 * @param look what it showed; a full or partial phenotype
 */
public record Sighting(LifeStage stage, Phenotype look) {

    /**
     * Returns a sighting whose stage is not known.
     *
     * @param look what was seen
     * @return the sighting
     */
    public static Sighting of(Phenotype look) {
        return new Sighting(LifeStage.unstated(), look);
    }

    /** Returns the look, and the stage in brackets where it is known. */
    @Override
    public String toString() {
        return look + (stage.equals(LifeStage.unstated()) ? "" : " (" + stage + ")");
    }
}
