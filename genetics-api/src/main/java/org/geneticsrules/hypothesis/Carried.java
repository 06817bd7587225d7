package org.geneticsrules.hypothesis;

import com.google.common.collect.ImmutableList;
import java.util.Optional;
import org.geneticsrules.model.AllelePair;

/**
 * What an animal may carry at one locus, in the terms of both models.
 *
 * @param before its genotype there in the first model; empty if that has no such locus
 * @param after its genotype there in the second model; empty if that has no such locus
 * @param differs whether it is another than the reference
 * @param lives whether both models let an animal live that carries it
 */
record Carried(Optional<AllelePair> before, Optional<AllelePair> after, boolean differs, boolean lives) {

    Optional<AllelePair> in(Which model) {
        return model == Which.BEFORE ? before : after;
    }

    boolean isHeterozygous() {
        return before.or(() -> after).orElseThrow().isHeterozygous();
    }

    /**
     * What an animal carries, with its strands.
     *
     * @param carried what it carries
     * @param turned whether the allele declared later lies on the first strand
     * @param rank its place among all that an animal of that sex may carry there
     */
    record Held(Carried carried, boolean turned, int rank) {}

    /**
     * What one animal, or each of two, carries at one locus.
     *
     * @param held the animals in question
     */
    record Letter(ImmutableList<Held> held) {
        int differing() {
            return (int) held.stream().filter(one -> one.carried().differs()).count();
        }

        int heterozygous() {
            return (int)
                    held.stream().filter(one -> one.carried().isHeterozygous()).count();
        }
    }
}
