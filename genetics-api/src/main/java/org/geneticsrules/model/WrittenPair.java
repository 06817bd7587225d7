package org.geneticsrules.model;

import java.util.Optional;

/**
 * What is written in one place of a genotype text: a name on each of two strands, or on the only one. A name is the symbol of an
 * allele, {@code +}, {@code -}, {@code ?}, or the symbol of a partner chromosome.
 *
 * @param locus the locus before the colon as it is written, empty if there is none
 * @param one the first name
 * @param other the second name; empty if only one is written
 * @param phased whether it stands in brackets
 * @param column where it begins, from 1
 */
record WrittenPair(String locus, String one, Optional<String> other, boolean phased, int column) {

    /** The same with the locus before the colon. */
    String withLocus(String prefix) {
        return prefix + this;
    }

    /** Returns the names with a slash between them. */
    @Override
    public String toString() {
        return one + other.map(name -> "/" + name).orElse("");
    }
}
