package org.geneticsrules.inference;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.expression.WeightedBox;
import org.geneticsrules.model.Locus;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Sex;

/**
 * Which units have to be looked at together.
 *
 * <p>One box says something of each unit by itself. Several boxes tie the units at which they differ, a sex that is not known those at
 * which the sexes differ, and a sire who is not known all.
 */
final class Ties {

    /**
     * Units that are tied.
     *
     * @param units their numbers
     * @param sexed whether unknown sexes are tied to them
     */
    record Group(List<Integer> units, boolean sexed) {}

    private final List<Heredity> heredity;
    private final int[] root;
    private final IdentityHashMap<List<WeightedBox>, List<Integer>> differing = new IdentityHashMap<>();

    private Ties(List<Heredity> heredity) {
        this.heredity = heredity;
        this.root = new int[heredity.size() + 1]; // the last stands for the sex
        for (int u = 0; u < root.length; u++) {
            root[u] = u;
        }
    }

    static List<Group> of(List<Heredity> heredity, Members members, Kinds kinds) {
        Ties ties = new Ties(heredity);
        for (int kind = 0; kind < kinds.count(); kind++) {
            ties.evidence(
                    kinds.records(kind), members.all().get(kinds.example(kind)).sex());
        }
        if (members.hasUncertain()) {
            ties.all();
        }
        ties.losses();
        return ties.groups();
    }

    private int find(int unit) {
        int at = unit;
        while (root[at] != at) {
            at = root[at];
        }
        return at;
    }

    private void tie(int one, int other) {
        root[Math.max(find(one), find(other))] = Math.min(find(one), find(other));
    }

    private void all() {
        for (int u = 1; u < heredity.size(); u++) {
            tie(0, u);
        }
    }

    private int sex() {
        return heredity.size();
    }

    private void evidence(Evidence evidence, Optional<Sex> sex) {
        List<Integer> tied = differing.computeIfAbsent(
                evidence.boxes(),
                boxes -> differing(heredity.stream().map(Heredity::unit).toList(), boxes));
        tied.forEach(u -> tie(tied.get(0), u));
        if (sex.isEmpty()) {
            if (evidence.readsSex()) {
                tied.forEach(u -> tie(sex(), u));
            }
            for (int u = 0; u < heredity.size(); u++) {
                boolean shows = heredity.get(u).unit().loci().stream().anyMatch(Locus::dependsOnSex);
                if (heredity.get(u).dependsOnSex() || shows) {
                    tie(sex(), u);
                }
            }
        }
    }

    /** The units at which boxes are not all the same. */
    static List<Integer> differing(List<Unit> units, List<WeightedBox> boxes) {
        List<Integer> found = new ArrayList<>();
        for (int u = 0; u < units.size() && boxes.size() > 1; u++) {
            Set<List<Optional<Allowed>>> told = new LinkedHashSet<>();
            for (WeightedBox box : boxes) {
                told.add(conditions(units.get(u), box));
            }
            if (told.size() > 1) {
                found.add(u);
            }
        }
        return found;
    }

    static List<Optional<Allowed>> conditions(Unit unit, WeightedBox box) {
        return unit.loci().stream()
                .map(locus -> Optional.ofNullable(box.box().variables().get(locus.id())))
                .toList();
    }

    /** Where more daughters than sons live, or fewer, the sex of a kit speaks of all such units at once. */
    private void losses() {
        int first = -1;
        for (int u = 0; u < heredity.size(); u++) {
            if (heredity.get(u).livingDependsOnSex()) {
                first = first < 0 ? u : first;
                tie(first, u);
            }
        }
    }

    private List<Group> groups() {
        Map<Integer, List<Integer>> byRoot = new LinkedHashMap<>();
        for (int u = 0; u < heredity.size(); u++) {
            byRoot.computeIfAbsent(find(u), key -> new ArrayList<>()).add(u);
        }
        List<Group> groups = new ArrayList<>();
        byRoot.forEach((at, units) -> groups.add(new Group(units, find(sex()) == at)));
        if (groups.stream().noneMatch(Group::sexed) && !groups.isEmpty()) {
            // the sex is told by nothing but records of it
            groups.set(0, new Group(groups.get(0).units(), true));
        }
        return groups;
    }
}
