package org.geneticsrules.model;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;

/**
 * One hypothesis of what the genotypes of a locus show as.
 *
 * @param order order statements, in document order
 * @param shows what alleles and pairs are stated to show, in document order
 * @param evidence id of the evidence of statements that name none of their own
 */
public record Dominance(List<Order> order, List<Shows> shows, Optional<String> evidence) {

    /**
     * Copies the lists.
     *
     * @param order order statements
     * @param shows what alleles and pairs show
     * @param evidence id of the default evidence
     */
    public Dominance {
        order = ImmutableList.copyOf(order);
        shows = ImmutableList.copyOf(shows);
    }

    /**
     * States that one allele is dominant over another: the two together look like the first alone. Transitive.
     *
     * @param dominant id of the allele that shows
     * @param recessive id of the allele that does not
     * @param evidence id of the evidence, if stated for this line
     */
    public record Order(String dominant, String recessive, Optional<String> evidence) {

        /** Returns {@code dominant > recessive}. */
        @Override
        public String toString() {
            return dominant + " > " + recessive;
        }
    }

    /**
     * States what an allele, or a pair of different alleles, shows.
     *
     * <p>For a single allele the statement covers its homozygote and every pair in which it is dominant.
     *
     * @param first id of the allele
     * @param second id of the other allele of a pair, or empty for a single allele
     * @param expression the declared expression it shows as
     * @param evidence id of the evidence, if stated for this line
     */
    public record Shows(String first, Optional<String> second, String expression, Optional<String> evidence) {

        /**
         * Returns the name of the statement in a document.
         *
         * @return {@code allele} or {@code allele/allele}
         */
        public String key() {
            return first + second.map(allele -> "/" + allele).orElse("");
        }

        /** Returns {@code key shows expression}. */
        @Override
        public String toString() {
            return key() + " shows " + expression;
        }
    }
}
