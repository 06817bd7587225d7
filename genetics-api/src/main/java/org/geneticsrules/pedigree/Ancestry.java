package org.geneticsrules.pedigree;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Collectors;
import org.geneticsrules.problem.Problems;

/**
 * Finds individuals that are among their own possible ancestors.
 *
 * <p>What cannot be put in an order descends from a circle or lies on one, so from each such individual a walk along parents who cannot be
 * ordered either must come back on itself. Each circle found this way is reported once; walks that end in one already met add none.
 */
final class Ancestry {

    private static final int MOST_NAMED = 12;

    private final Links links;
    private final List<String> ids;
    private final List<Litter> litters;

    Ancestry(Links links, List<String> ids, List<Litter> litters) {
        this.links = links;
        this.ids = ids;
        this.litters = litters;
    }

    void check(Problems problems) {
        int count = ids.size();
        boolean[] ordered = new boolean[count];
        for (int i : links.order()) {
            ordered[i] = true;
        }
        int[] walk = new int[count];
        for (int start = 0; start < count; start++) {
            if (ordered[start] || walk[start] != 0) {
                continue;
            }
            List<Integer> path = new ArrayList<>();
            int at = start;
            while (walk[at] == 0) {
                walk[at] = start + 1;
                path.add(at);
                at = unorderedParent(at, ordered);
            }
            if (walk[at] == start + 1) {
                report(path.subList(path.indexOf(at), path.size()), problems);
            }
        }
    }

    private int unorderedParent(int individual, boolean[] ordered) {
        for (int parent : links.parentsOf(individual)) {
            if (!ordered[parent]) {
                return parent;
            }
        }
        throw new IllegalStateException("an individual without such parents would be ordered");
    }

    /** Told from the oldest on, as descent runs. */
    private void report(List<Integer> circle, Problems problems) {
        List<String> names = circle.stream().map(ids::get).collect(Collectors.toCollection(ArrayList::new));
        Collections.reverse(names);
        String first = names.get(0);
        String shown =
                names.stream().limit(MOST_NAMED).map(name -> "\"" + name + "\"").collect(Collectors.joining(", "));
        Litter litter = litters.get(links.litterOf[links.at(first)]);
        problems.add(
                "cycle",
                PedigreeChecks.pointer(litter),
                names.size() == 1
                        ? "\"" + first + "\" is its own parent"
                        : "each of these is, or may be, a parent of the next, and the last of the first: " + shown
                                + (names.size() > MOST_NAMED ? " and " + (names.size() - MOST_NAMED) + " more" : ""),
                "nobody among its own ancestors");
    }
}
