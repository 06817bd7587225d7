package org.geneticsrules.inference;

/**
 * A single record of a pedigree that may be mistaken: the least that can be looked at again by itself.
 *
 * <p>That an animal exists, and which kits are litter-mates, is taken for granted; so is how many males may have sired a litter where
 * there are several. Everything else that bears on a contradiction is one of these.
 */
public sealed interface RecordRef {

    /**
     * An observation of an individual.
     *
     * @param individual id of the individual
     * @param index place among its observations, from 0
     */
    record Observed(String individual, int index) implements RecordRef {
        /** Returns a short text, such as {@code observation 1 of "Kit"}; counted from 1. */
        @Override
        public String toString() {
            return "observation " + (index + 1) + " of \"" + individual + "\"";
        }
    }

    /**
     * A genotype test of an individual.
     *
     * @param individual id of the individual
     * @param index place among its tests, from 0
     */
    record Tested(String individual, int index) implements RecordRef {
        /** Returns a short text, such as {@code test 1 of "Kit"}; counted from 1. */
        @Override
        public String toString() {
            return "test " + (index + 1) + " of \"" + individual + "\"";
        }
    }

    /**
     * The recorded sex of an individual; a record only where the model or what was recorded makes a difference between the sexes.
     *
     * @param individual id of the individual
     */
    record SexOf(String individual) implements RecordRef {
        /** Returns a short text, such as {@code sex of "Kit"}. */
        @Override
        public String toString() {
            return "sex of \"" + individual + "\"";
        }
    }

    /**
     * The recorded dam of a litter.
     *
     * @param litter id of the litter
     */
    record DamOf(String litter) implements RecordRef {
        /** Returns a short text, such as {@code dam of litter "2026/3"}. */
        @Override
        public String toString() {
            return "dam of litter \"" + litter + "\"";
        }
    }

    /**
     * The recorded sire of a litter, or all males recorded as perhaps its sires.
     *
     * @param litter id of the litter
     */
    record SiresOf(String litter) implements RecordRef {
        /** Returns a short text, such as {@code sire of litter "2026/3"}. */
        @Override
        public String toString() {
            return "sire of litter \"" + litter + "\"";
        }
    }
}
