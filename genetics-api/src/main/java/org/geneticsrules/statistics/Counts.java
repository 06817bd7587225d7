package org.geneticsrules.statistics;

import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.Map;

/**
 * How many animals were counted in each class.
 *
 * @param byClass the counts by name of the class, in the order in which the classes are declared
 */
public record Counts(Map<String, Long> byClass) {

    /** More than this cannot be told apart by a double. */
    private static final long MOST = 1L << 53;

    /**
     * Copies and checks the counts.
     *
     * @param byClass the counts by name of the class
     * @throws IllegalArgumentException if there is no class, a count is negative, all are 0, or they sum to more than 2^53
     */
    public Counts {
        byClass = ImmutableMap.copyOf(byClass);
        if (byClass.isEmpty()) {
            throw new IllegalArgumentException("counts need at least one class, but there is none");
        }
        long total = 0;
        for (Map.Entry<String, Long> one : byClass.entrySet()) {
            if (one.getValue() < 0) {
                throw new IllegalArgumentException("a count is 0 or more, but class \"" + one.getKey() + "\" has "
                        + one.getValue() + ", in " + byClass);
            }
            if (one.getValue() > MOST - total) {
                throw new IllegalArgumentException("counts sum to at most 2^53, but found " + byClass);
            }
            total += one.getValue();
        }
        if (total == 0) {
            throw new IllegalArgumentException("nothing was counted: all of " + byClass.keySet() + " are 0");
        }
    }

    /**
     * Returns counts of classes that are called by their position.
     *
     * @param counts at least one count, each 0 or more
     * @return counts of the classes {@code 1}, {@code 2} and so on
     * @throws IllegalArgumentException if a count is negative or all are 0
     */
    public static Counts of(long... counts) {
        ImmutableMap.Builder<String, Long> named = ImmutableMap.builder();
        for (int i = 0; i < counts.length; i++) {
            named.put(Integer.toString(i + 1), counts[i]);
        }
        return new Counts(named.buildOrThrow());
    }

    /**
     * Returns how many animals there are in all classes together.
     *
     * @return the total, at least 1
     */
    public long total() {
        return values().stream().mapToLong(Long::longValue).sum();
    }

    /**
     * Returns the names of the classes.
     *
     * @return names in declared order
     */
    public List<String> names() {
        return ImmutableMap.copyOf(byClass).keySet().asList(); // no copy: it is immutable
    }

    /**
     * Returns the counts without the names.
     *
     * @return one count for each class, in declared order
     */
    public List<Long> values() {
        return ImmutableMap.copyOf(byClass).values().asList();
    }
}
