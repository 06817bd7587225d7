package org.geneticsrules.probability;

import java.math.BigInteger;
import java.util.AbstractMap;
import java.util.AbstractSet;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The positive chances of shared outcomes as whole-number weights over one total: an unmodifiable map that reduces a fraction when
 * it is read, and not before. Most callers of a mating read a few chances of many.
 */
abstract class Weighted<T> extends AbstractMap<T, Probability> {

    private final Outcomes<T> outcomes;
    private final int positive;

    private Weighted(Outcomes<T> outcomes, int positive) {
        this.outcomes = outcomes;
        this.positive = positive;
    }

    /** Weights that fit longs together with their total. */
    static final class Small<T> extends Weighted<T> {
        private final long[] weights;
        private final long total;

        Small(Outcomes<T> outcomes, long[] weights, long total, int positive) {
            super(outcomes, positive);
            this.weights = weights;
            this.total = total;
        }

        @Override
        boolean isPositive(int position) {
            return weights[position] > 0;
        }

        @Override
        Probability chance(int position) {
            return Probability.of(weights[position], total);
        }
    }

    /** Weights of any size. */
    static final class Large<T> extends Weighted<T> {
        private final BigInteger[] weights;
        private final BigInteger total;

        Large(Outcomes<T> outcomes, BigInteger[] weights, BigInteger total, int positive) {
            super(outcomes, positive);
            this.weights = weights;
            this.total = total;
        }

        @Override
        boolean isPositive(int position) {
            return weights[position].signum() > 0;
        }

        @Override
        Probability chance(int position) {
            return Probability.of(weights[position], total);
        }
    }

    abstract boolean isPositive(int position);

    abstract Probability chance(int position);

    @Override
    public int size() {
        return positive;
    }

    @Override
    public boolean containsKey(@Nullable Object key) {
        return get(key) != null;
    }

    @Override
    public @Nullable Probability get(@Nullable Object key) {
        int position = key == null ? -1 : outcomes.position(key);
        return position >= 0 && isPositive(position) ? chance(position) : null;
    }

    @Override
    public Set<Map.Entry<T, Probability>> entrySet() {
        return new AbstractSet<>() {
            @Override
            public Iterator<Map.Entry<T, Probability>> iterator() {
                return new Walk();
            }

            @Override
            public int size() {
                return positive;
            }
        };
    }

    private final class Walk implements Iterator<Map.Entry<T, Probability>> {
        private final List<T> list = outcomes.list();
        private int at = -1;
        private int left = positive;

        @Override
        public boolean hasNext() {
            return left > 0;
        }

        @Override
        public Map.Entry<T, Probability> next() {
            if (left == 0) {
                throw new NoSuchElementException();
            }
            left--;
            do {
                at++;
            } while (!isPositive(at));
            return Map.entry(list.get(at), chance(at));
        }
    }
}
