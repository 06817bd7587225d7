package org.geneticsrules.pedigree;

import java.util.Optional;
import org.geneticsrules.problem.Pointer;

/** What a correction puts in the place of a record, and what stood there before. */
public sealed interface Change {

    /**
     * A change of what is recorded of one individual.
     *
     * @param before the record until then, or empty if there was none
     * @param after the record since then, or empty if it was struck out
     */
    record OfIndividual(Optional<Individual> before, Optional<Individual> after) implements Change {
        /**
         * Checks that both are of one individual.
         *
         * @param before the record until then
         * @param after the record since then
         * @throws IllegalArgumentException if neither is stated, both are equal, or their ids differ
         */
        public OfIndividual {
            if (before.equals(after)) {
                throw new IllegalArgumentException("a correction changes something");
            }
            if (before.isPresent()
                    && after.isPresent()
                    && !before.get().id().equals(after.get().id())) {
                throw new IllegalArgumentException("a correction changes one record, but was of \""
                        + before.get().id() + "\" and \"" + after.get().id() + "\"");
            }
        }

        @Override
        public String id() {
            return before.or(() -> after).orElseThrow().id();
        }

        @Override
        public String pointer() {
            return Pointer.of("individuals", id());
        }
    }

    /**
     * A change of what is recorded of one litter.
     *
     * @param before the record until then, or empty if there was none
     * @param after the record since then, or empty if it was struck out
     */
    record OfLitter(Optional<Litter> before, Optional<Litter> after) implements Change {
        /**
         * Checks that both are of one litter.
         *
         * @param before the record until then
         * @param after the record since then
         * @throws IllegalArgumentException if neither is stated, both are equal, or their ids differ
         */
        public OfLitter {
            if (before.equals(after)) {
                throw new IllegalArgumentException("a correction changes something");
            }
            if (before.isPresent()
                    && after.isPresent()
                    && !before.get().id().equals(after.get().id())) {
                throw new IllegalArgumentException("a correction changes one record, but was of \""
                        + before.get().id() + "\" and \"" + after.get().id() + "\"");
            }
        }

        @Override
        public String id() {
            return before.or(() -> after).orElseThrow().id();
        }

        @Override
        public String pointer() {
            return Pointer.of("litters", id());
        }
    }

    /**
     * Returns whose record changes.
     *
     * @return id of the individual or of the litter
     */
    String id();

    /**
     * Returns where the record stands in the document of the pedigree.
     *
     * @return a JSON Pointer, such as {@code /individuals/17}
     */
    String pointer();
}
