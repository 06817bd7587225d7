package org.geneticsrules.probability;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.List;

/**
 * The possible outcomes that many distributions have in common, such as all phenotypes of a model: listed and indexed once.
 *
 * <p>Distributions over it ({@link Distribution#ofWeights(Outcomes, long[])}) hold nothing but their weights.
 *
 * <p>Immutable and thread-safe if the outcomes are.
 *
 * @param <T> the type of an outcome, with {@code equals} and {@code hashCode} by value
 */
public final class Outcomes<T> {

    private final ImmutableList<T> list;
    private final ImmutableMap<T, Integer> positions;

    private Outcomes(ImmutableList<T> list, ImmutableMap<T, Integer> positions) {
        this.list = list;
        this.positions = positions;
    }

    /**
     * Returns the given outcomes.
     *
     * @param <T> the type of an outcome
     * @param outcomes distinct outcomes in display order
     * @return the outcomes with their positions
     * @throws IllegalArgumentException if two outcomes are equal
     */
    public static <T> Outcomes<T> of(List<? extends T> outcomes) {
        ImmutableList<T> list = ImmutableList.copyOf(outcomes);
        ImmutableMap.Builder<T, Integer> positions = ImmutableMap.builder();
        for (int i = 0; i < list.size(); i++) {
            positions.put(list.get(i), i);
        }
        return new Outcomes<>(list, positions.buildOrThrow());
    }

    /**
     * Returns the outcomes.
     *
     * @return distinct outcomes in display order, unmodifiable
     */
    public List<T> list() {
        return list;
    }

    /** The position of a value in the list, or -1. */
    int position(Object value) {
        Integer position = positions.get(value);
        return position == null ? -1 : position;
    }

    /** Returns the outcomes as a list. */
    @Override
    public String toString() {
        return list.toString();
    }
}
