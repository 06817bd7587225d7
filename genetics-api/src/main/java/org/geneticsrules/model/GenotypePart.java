package org.geneticsrules.model;

import com.google.common.collect.ImmutableList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.trait.Sex;

/**
 * What one part of a genotype text says of one locus.
 *
 * @param locus the locus
 * @param pairs the genotypes it allows
 * @param strands its alleles in the order in which they are written; empty if one is not known or there is only one
 * @param written the alleles as they are written
 */
record GenotypePart(Locus locus, List<AllelePair> pairs, Optional<Phase.Strands> strands, WrittenPair written) {
    GenotypePart {
        pairs = ImmutableList.copyOf(pairs);
    }

    /** The sexes of animals that can have one of the genotypes. */
    Set<Sex> sexes() {
        Set<Sex> sexes = new LinkedHashSet<>();
        for (Sex sex : Sex.values()) {
            if (pairs.stream()
                    .anyMatch(pair ->
                            pair.alleles().size() == locus.transmission().strands(sex))) {
                sexes.add(sex);
            }
        }
        return sexes;
    }
}
