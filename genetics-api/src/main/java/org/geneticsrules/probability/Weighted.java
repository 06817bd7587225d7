package org.geneticsrules.probability;

import java.math.BigInteger;
import java.util.AbstractMap;
import java.util.AbstractSet;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Set;
import java.util.function.BiConsumer;
import org.jspecify.annotations.Nullable;

/**
 * The positive chances of shared outcomes: an unmodifiable map that works a chance out when it is read, and not before. Most callers of
 * a mating read a few chances of many.
 */
final class Weighted<T> extends AbstractMap<T, Probability> {

    private static final int UNKNOWN = -1;

    private final Outcomes<T> outcomes;
    private final Weighing weights;

    /** The number of outcomes that can happen, once it is counted; threads that race count the same. */
    private int positive = UNKNOWN;

    Weighted(Outcomes<T> outcomes, Weighing weights) {
        this.outcomes = outcomes;
        this.weights = weights;
    }

    /** Weights that fit longs together with their total. */
    @SuppressWarnings("ArrayRecordComponent") // owned, never compared
    record Small(long[] weights, long total) implements Weighing {
        @Override
        public boolean isPositive(int outcome) {
            return weights[outcome] > 0;
        }

        @Override
        public Probability chance(int outcome) {
            return Probability.of(weights[outcome], total);
        }
    }

    /** Weights of any size. */
    @SuppressWarnings("ArrayRecordComponent") // owned, never compared
    record Large(BigInteger[] weights, BigInteger total) implements Weighing {
        @Override
        public boolean isPositive(int outcome) {
            return weights[outcome].signum() > 0;
        }

        @Override
        public Probability chance(int outcome) {
            return Probability.of(weights[outcome], total);
        }
    }

    @Override
    public int size() {
        int count = positive;
        if (count == UNKNOWN) {
            count = 0;
            for (int i = 0; i < outcomes.list().size(); i++) {
                count += weights.isPositive(i) ? 1 : 0;
            }
            positive = count;
        }
        return count;
    }

    @Override
    public boolean containsKey(@Nullable Object key) {
        return get(key) != null;
    }

    @Override
    public @Nullable Probability get(@Nullable Object key) {
        int position = key == null ? -1 : outcomes.position(key);
        return position >= 0 && weights.isPositive(position) ? weights.chance(position) : null;
    }

    @Override
    public void forEach(BiConsumer<? super T, ? super Probability> action) {
        List<T> list = outcomes.list();
        for (int i = 0; i < list.size(); i++) {
            if (weights.isPositive(i)) {
                action.accept(list.get(i), weights.chance(i));
            }
        }
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
                return Weighted.this.size();
            }
        };
    }

    private final class Walk implements Iterator<Map.Entry<T, Probability>> {
        private final List<T> list = outcomes.list();
        private int at = -1;
        private int left = Weighted.this.size();

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
            } while (!weights.isPositive(at));
            return Map.entry(list.get(at), weights.chance(at));
        }
    }
}
