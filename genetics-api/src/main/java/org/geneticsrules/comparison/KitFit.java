package org.geneticsrules.comparison;

/**
 * How a kit's records go with all other records of its kindred, under one model.
 *
 * @param kit its id
 * @param litter id of its litter
 * @param standing impossible, unlikely, fine or not judged
 * @param chance of its records, given all others
 * @param rarer the chance that one more kit of its parents, who may be what all records say of them, shows a look no likelier than its own; NaN
 *     where that was not found
 */
public record KitFit(String kit, String litter, Standing standing, double chance, double rarer) {

    /** How records stand to a model. */
    public enum Standing {
        /** They have no chance, given the other records. */
        IMPOSSIBLE("impossible"),
        /** So rare a kit is in fewer than one of twenty litters of this size. */
        UNLIKELY("unlikely"),
        /** Neither. */
        FINE("fine"),
        /** It can have no chance anyway since other records exclude one another, or its relatives are too many to ask kit by kit. */
        NOT_JUDGED("not judged");

        private final String words;

        Standing(String words) {
            this.words = words;
        }

        /**
         * Returns the standing in words.
         *
         * @return for example {@code unlikely}
         */
        public String words() {
            return words;
        }
    }
}
