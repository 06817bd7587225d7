package org.geneticsrules.pedigree;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problems;
import org.jspecify.annotations.Nullable;

/** Walks along a trail of corrections. */
final class Trail {

    private Trail() {}

    /** Checks, from the last correction back, that each left what the records or the next correction found. */
    static void check(
            Map<String, Individual> individuals,
            Map<String, Litter> litters,
            List<Correction> corrections,
            Problems problems) {
        Map<String, Optional<?>> later = new HashMap<>();
        for (int i = corrections.size() - 1; i >= 0; i--) {
            List<Change> changes = corrections.get(i).changes();
            for (int k = 0; k < changes.size(); k++) {
                Change change = changes.get(k);
                Optional<?> found = later.get(change.pointer());
                if (found == null) {
                    found = change instanceof Change.OfIndividual
                            ? Optional.ofNullable(individuals.get(change.id()))
                            : Optional.ofNullable(litters.get(change.id()));
                }
                if (!found.equals(after(change))) {
                    problems.add(
                            "broken-trail",
                            Pointer.of("corrections", Integer.toString(i), "changes", Integer.toString(k)),
                            "what this change leaves of " + change.pointer()
                                    + " is neither what is recorded nor what the next change of it began with",
                            "a trail that leads to the records");
                }
                later.put(change.pointer(), before(change));
            }
        }
    }

    static Optional<?> before(Change change) {
        return change instanceof Change.OfIndividual one ? one.before() : ((Change.OfLitter) change).before();
    }

    static Optional<?> after(Change change) {
        return change instanceof Change.OfIndividual one ? one.after() : ((Change.OfLitter) change).after();
    }

    /** Puts one record in the place of another: at its place if there was one, at the end if not. */
    static void apply(Change change, boolean undo, Map<String, Individual> individuals, Map<String, Litter> litters) {
        if (change instanceof Change.OfIndividual one) {
            put(individuals, one.id(), (undo ? one.before() : one.after()).orElse(null));
        } else if (change instanceof Change.OfLitter one) {
            put(litters, one.id(), (undo ? one.before() : one.after()).orElse(null));
        }
    }

    private static <T> void put(Map<String, T> records, String id, @Nullable T record) {
        if (record == null) {
            records.remove(id);
        } else {
            records.put(id, record);
        }
    }
}
