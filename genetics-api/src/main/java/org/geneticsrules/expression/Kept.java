package org.geneticsrules.expression;

import com.google.common.cache.Cache;
import com.google.common.cache.CacheBuilder;
import java.util.function.Function;

/**
 * What was built before, as much of it as is worth keeping.
 *
 * <p>Thread-safe. Two threads may both build the same, and then either is kept.
 */
final class Kept<K, V> {

    private static final int MOST = 1_000;

    private final Cache<K, V> cache =
            CacheBuilder.newBuilder().maximumSize(MOST).build();

    /** What was asked for; it is built if it is not there. */
    V get(K asked, Function<K, V> build) {
        V before = cache.getIfPresent(asked);
        if (before != null) {
            return before;
        }
        V built = build.apply(asked);
        cache.put(asked, built);
        return built;
    }
}
