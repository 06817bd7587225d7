package org.geneticsrules.model;

import java.util.Optional;

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
public record ShowsStatement(String first, Optional<String> second, String expression, Optional<String> evidence) {

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
