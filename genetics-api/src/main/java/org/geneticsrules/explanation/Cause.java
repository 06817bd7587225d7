package org.geneticsrules.explanation;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Locale;

/**
 * Why two genotypes of one locus look the same.
 *
 * @param kind what kind of cause
 * @param names the dominant allele, the masks, the traits about which chance decides, or the other loci; may be empty where no rule
 *     tells the genotypes apart
 */
public record Cause(Kind kind, List<String> names) {

    /** The kinds of cause. */
    public enum Kind {
        /** A dominant allele shows alone, whatever its partner. */
        DOMINANCE,
        /** A mask covers what the locus would show. */
        MASK,
        /** Rules tell the genotypes apart, but chance may give the same look with either. */
        CHANCE,
        /** Another locus gives the same look, or no rule tells the genotypes apart. */
        SAME_LOOK;

        /**
         * Returns the word for the kind in documents.
         *
         * @return for example {@code same look}
         */
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    /**
     * Copies the names.
     *
     * @param kind what kind of cause
     * @param names what causes it
     */
    public Cause {
        names = ImmutableList.copyOf(names);
    }

    /** Returns the cause as a phrase. */
    @Override
    public String toString() {
        String listed = String.join(", ", names);
        return switch (kind) {
            case DOMINANCE -> names.isEmpty() ? "genotypes that show alike" : "dominant allele " + listed;
            case MASK -> "mask " + listed;
            case CHANCE -> "chance, which may give the same " + listed + " either way";
            case SAME_LOOK -> names.isEmpty() ? "no rule tells them apart" : "the same look through locus " + listed;
        };
    }
}
