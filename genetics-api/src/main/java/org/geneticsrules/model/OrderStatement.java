package org.geneticsrules.model;

import java.util.Optional;

/**
 * States that one allele is dominant over another: the two together look like the first alone. Transitive.
 *
 * @param dominant id of the allele that shows
 * @param recessive id of the allele that does not
 * @param evidence id of the evidence, if stated for this line
 */
public record OrderStatement(String dominant, String recessive, Optional<String> evidence) {

    /** Returns {@code dominant > recessive}. */
    @Override
    public String toString() {
        return dominant + " > " + recessive;
    }
}
