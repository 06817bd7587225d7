package org.geneticsrules.model;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Finds a circle among things that refer to one another. */
final class Circles {

    private Circles() {}

    /** Returns the members of a circle, the first repeated at the end, if there is one. */
    static Optional<List<String>> find(Map<String, Set<String>> references) {
        Set<String> finished = new LinkedHashSet<>();
        for (String start : references.keySet()) {
            Optional<List<String>> circle = follow(start, new ArrayList<>(), finished, references);
            if (circle.isPresent()) {
                return circle;
            }
        }
        return Optional.empty();
    }

    private static Optional<List<String>> follow(
            String at, List<String> path, Set<String> finished, Map<String, Set<String>> references) {
        int before = path.indexOf(at);
        if (before >= 0) {
            List<String> circle = new ArrayList<>(path.subList(before, path.size()));
            circle.add(at);
            return Optional.of(circle);
        }
        if (finished.contains(at)) {
            return Optional.empty();
        }
        path.add(at);
        for (String next : references.getOrDefault(at, Set.of())) {
            Optional<List<String>> circle = follow(next, path, finished, references);
            if (circle.isPresent()) {
                return circle;
            }
        }
        path.remove(path.size() - 1);
        finished.add(at);
        return Optional.empty();
    }
}
