package org.geneticsrules.inference;

/**
 * Something about a record that whoever reads the conclusions should know.
 *
 * @param individual id of the animal
 * @param trait id of the trait that was recorded
 * @param kind what is the matter
 * @param message a sentence for people
 */
public record Notice(String individual, String trait, Kind kind, String message) {

    /** What may be the matter with a record. */
    public enum Kind {
        /** It was made too early to tell the trait, or in a light in which it cannot be told, and is no evidence. */
        NOT_JUDGEABLE,
        /** It does not state the stage from which the trait can be told, and is taken to be late enough. */
        TAKEN_AS_JUDGEABLE,
        /** It does not state the light, on which it depends whether the trait can be told, and is taken to be one to tell it in. */
        TAKEN_AS_LIT,
        /** What the trait looks like depends on a stage that the record does not state, and it is no evidence. */
        STAGE_MISSING,
        /** The model has no rule for the trait, and the record is no evidence. */
        NOT_MODELLED;

        /**
         * Tells whether the record is evidence nevertheless.
         *
         * @return true if something about it was taken for granted
         */
        public boolean isEvidence() {
            return this == TAKEN_AS_JUDGEABLE || this == TAKEN_AS_LIT;
        }
    }
}
