package org.geneticsrules.planning;

import com.google.common.collect.ImmutableSet;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.hypothesis.WhatMoves;

/**
 * Whether any look at any animal or mating can tell two models apart.
 *
 * @param first number of the first model
 * @param second number of the second
 * @param traits the traits that every model speaks of, to which this is restricted
 * @param verdict what was found out
 * @param moves the genotypes and matings of which the two foretell different things, the smallest first; empty if they were not compared
 * @param limits why the comparison is no proof, or why there is none
 */
public record ToldApart(
        int first, int second, Set<String> traits, Verdict verdict, Optional<WhatMoves> moves, Set<String> limits) {

    /** What was found out. */
    public enum Verdict {
        /** Some genotype or mating looks otherwise under one model than under the other. */
        BY_LOOKS,
        /**
         * It is proved that of every genotype and every mating both foretell the same looks: nobody can tell them apart by the looks of
         * animals whose genotypes are known. They may still suppose different frequencies of alleles.
         */
        NEVER,
        /** It was not found out; the limits say why. */
        UNDECIDED
    }

    /**
     * Copies the sets.
     *
     * @param first number of the first model
     * @param second number of the second
     * @param traits the traits
     * @param verdict what was found out
     * @param moves what moves
     * @param limits why it is no proof
     */
    public ToldApart {
        traits = ImmutableSet.copyOf(traits);
        limits = ImmutableSet.copyOf(limits);
    }
}
