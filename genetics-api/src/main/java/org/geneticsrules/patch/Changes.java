package org.geneticsrules.patch;

import com.google.common.collect.ImmutableMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** What is changed, by the pointers of statements. A statement lies at most four names deep, so looking above is cheap. */
final class Changes {

    private final Map<String, String> places = new LinkedHashMap<>();

    /** Notes a change; false if this statement is changed already. */
    boolean add(String pointer, String place) {
        return places.putIfAbsent(pointer, place) == null;
    }

    ImmutableMap<String, String> all() {
        return ImmutableMap.copyOf(places);
    }

    /** The nearest changed statement that a part lies inside, itself not counted. */
    Optional<String> above(String pointer) {
        return above(pointer, places);
    }

    static Optional<String> above(String pointer, Map<String, ?> changes) {
        for (int slash = pointer.lastIndexOf('/'); slash > 0; slash = pointer.lastIndexOf('/', slash - 1)) {
            String outer = pointer.substring(0, slash);
            if (changes.containsKey(outer)) {
                return Optional.of(outer);
            }
        }
        return Optional.empty();
    }
}
