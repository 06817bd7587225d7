package org.geneticsrules.model;

import com.google.common.collect.ImmutableList;
import java.util.List;

/**
 * What one part of a genotype text says of one locus.
 *
 * @param locus the locus
 * @param pairs the pairs it allows
 * @param column where it begins, from 1
 * @param phased whether it stood in brackets
 */
record GenotypePart(Locus locus, List<AllelePair> pairs, int column, boolean phased) {
    GenotypePart {
        pairs = ImmutableList.copyOf(pairs);
    }
}
