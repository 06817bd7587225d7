package org.geneticsrules.trait;

import java.util.Optional;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;

/**
 * The kind of organism that a catalogue, model or plug-in is about.
 *
 * @param name scientific name, for example {@code Pisum sativum}
 * @param ncbi identifier in the NCBI Taxonomy, for example 9669, if known
 * @param young what its young are called, if they have a name of their own
 */
public record Taxon(String name, Optional<Integer> ncbi, Optional<Young> young) {

    /**
     * What the young of a kind of animal are called.
     *
     * @param one the word for one, for example {@code kit}
     * @param many the word for several
     */
    public record Young(String one, String many) {

        /** The words for any kind of animal. */
        public static final Young NEUTRAL = new Young("young", "young");

        /**
         * Returns the word for a number of them.
         *
         * @param count how many
         * @return the word for one or for several
         */
        public String of(int count) {
            return count == 1 ? one : many;
        }

        /**
         * Returns words for any one of them.
         *
         * @return for example {@code a kit}, or {@code one of the young}
         */
        public String any() {
            return isNeutral() ? "one of the young" : ("aeiou".indexOf(one.charAt(0)) < 0 ? "a " : "an ") + one;
        }

        /**
         * Returns words for each of them.
         *
         * @return for example {@code every kit}, or {@code each of the young}
         */
        public String every() {
            return isNeutral() ? "each of the young" : "every " + one;
        }

        /**
         * Returns words for none of them.
         *
         * @return for example {@code no kit}, or {@code none of the young}
         */
        public String none() {
            return isNeutral() ? "none of the young" : "no " + one;
        }

        private boolean isNeutral() {
            return equals(NEUTRAL);
        }
    }

    /**
     * Returns a taxon with its NCBI Taxonomy identifier.
     *
     * @param name scientific name
     * @param ncbi the identifier
     * @return the taxon
     */
    public static Taxon of(String name, int ncbi) {
        return new Taxon(name, Optional.of(ncbi), Optional.empty());
    }

    /**
     * Returns the document form.
     *
     * @return an object with {@code name} and, if known, {@code ncbi} and {@code young}
     */
    public Node toNode() {
        ObjectBuilder node = new ObjectBuilder().with("name", name);
        ncbi.ifPresent(number -> node.with("ncbi", Node.number(number)));
        young.ifPresent(words -> node.with(
                "young",
                new ObjectBuilder()
                        .with("one", words.one())
                        .with("many", words.many())
                        .build()));
        return node.build();
    }

    /** Returns the name, with the identifier if it is known. */
    @Override
    public String toString() {
        return name + ncbi.map(number -> " (NCBI Taxonomy " + number + ")").orElse("");
    }
}
