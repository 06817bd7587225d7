package org.geneticsrules.hypothesis;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;

/**
 * What moves of one kind, genotypes or matings, at the first moment at which any does.
 *
 * @param first the moment; empty if nothing moves at any moment examined, which is then proved
 * @param smallest the smallest examples, the smallest first; empty if and only if nothing moves
 * @param more whether there are more than these
 * @param <T> the kind
 */
public record Moved<T>(Optional<Moment> first, List<T> smallest, boolean more) {

    /**
     * Copies the list.
     *
     * @param first the moment
     * @param smallest the smallest examples
     * @param more whether there are more
     */
    public Moved {
        smallest = ImmutableList.copyOf(smallest);
    }

    static <T> Moved<T> nothing() {
        return new Moved<>(Optional.empty(), ImmutableList.of(), false);
    }

    /**
     * Tells whether nothing moves.
     *
     * @return true if the two models agree here at every moment examined
     */
    public boolean isEmpty() {
        return smallest.isEmpty();
    }
}
