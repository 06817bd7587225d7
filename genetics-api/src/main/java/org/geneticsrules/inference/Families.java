package org.geneticsrules.inference;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.inference.Member.Parents;

/**
 * The shape of a pedigree: its parts, which no relation connects, and the families of those parts that are trees, pairs of parents with all
 * their kits. The same for all loci.
 *
 * <p>A part is a tree if its relations form no loop and all of its sires are certain. Its families are numbered from its first animal
 * outwards, each after the one that it is reached from, so that messages run along arrays. The kits of a family that have no young and were
 * recorded alike are next to one another: what holds for one of them holds for all.
 */
final class Families {

    private static final int NONE = -1;

    /** By animal, the number of its part. */
    final int[] part;

    /** By part, its first animal. */
    final int[] root;

    /** By part, whether it is a tree. */
    final boolean[] tree;

    /** The families of part p, if it is a tree, are those from {@code firstOfPart[p]} up to that of the next. */
    final int[] firstOfPart;

    /** By family, the numbers of the sire and of the dam. */
    final int[] sires;

    final int[] dams;

    /** By family, the animal through which it is reached. */
    final int[] entrance;

    /** The kits of family f with young of their own, but for that through which it is reached, are from {@code firstGrown[f]} up to that of the next. */
    final int[] firstGrown;

    final int[] grown;

    /** The kits of family f without young are in the runs from {@code firstRun[f]} up to that of the next. */
    final int[] firstRun;

    /** The kits of run r, which are of one kind, are from {@code firstLeaf[r]} up to that of the next. */
    final int[] firstLeaf;

    final int[] leaves;

    /** By animal, the families that are reached through it: they are from {@code firstBelow[m]} up to {@code endBelow[m]}. */
    final int[] firstBelow;

    final int[] endBelow;

    private Families(Members members, Kinds kinds) {
        Couples all = new Couples(members);
        this.part = new int[all.familyOf.length];
        this.root = all.parts(part);
        this.tree = all.trees(part, root.length);
        this.firstOfPart = new int[root.length + 1];
        this.firstBelow = new int[part.length];
        this.endBelow = new int[part.length];
        int[] ordered = new int[all.sires.length];
        this.entrance = new int[ordered.length];
        int count = order(all, ordered);
        this.sires = new int[count];
        this.dams = new int[count];
        int[] numbers = new int[all.sires.length];
        Arrays.fill(numbers, NONE);
        for (int f = 0; f < count; f++) {
            sires[f] = all.sires[ordered[f]];
            dams[f] = all.dams[ordered[f]];
            numbers[ordered[f]] = f;
        }
        int[] familyOf = new int[part.length];
        int[] sizes = new int[count];
        for (int m = 0; m < familyOf.length; m++) {
            int family = all.familyOf[m] == NONE ? NONE : numbers[all.familyOf[m]];
            // the kit through which a family is reached is kept apart
            familyOf[m] = family == NONE || entrance[family] == m ? NONE : family;
            if (familyOf[m] != NONE && hasBelow(m)) {
                sizes[familyOf[m]]++;
            }
        }
        this.firstGrown = starts(sizes);
        this.grown = new int[firstGrown[count]];
        int[] next = firstGrown.clone();
        Arrays.fill(sizes, 0);
        for (int m = 0; m < familyOf.length; m++) {
            if (familyOf[m] != NONE) {
                if (hasBelow(m)) {
                    grown[next[familyOf[m]]++] = m;
                } else {
                    sizes[familyOf[m]]++;
                }
            }
        }
        int[] first = starts(sizes);
        this.leaves = new int[first[count]];
        next = first.clone();
        for (int m : kinds.sorted()) {
            if (familyOf[m] != NONE && !hasBelow(m)) {
                leaves[next[familyOf[m]]++] = m;
            }
        }
        int[] runs = new int[leaves.length + 1];
        this.firstRun = new int[count + 1];
        int run = 0;
        for (int f = 0; f < count; f++) {
            for (int i = first[f]; i < first[f + 1]; i++) {
                if (i == first[f] || kinds.of(leaves[i]) != kinds.of(leaves[i - 1])) {
                    runs[run++] = i;
                }
            }
            firstRun[f + 1] = run;
        }
        runs[run] = leaves.length;
        this.firstLeaf = Arrays.copyOf(runs, run + 1);
    }

    /**
     * Finds the shape of a pedigree.
     *
     * @param members its animals
     * @param kinds the same, sorted by what is known of them
     */
    static Families of(Members members, Kinds kinds) {
        return new Families(members, kinds);
    }

    /** Puts the families of all trees in order, and returns how many there are. */
    private int order(Couples all, int[] ordered) {
        boolean[] reached = new boolean[ordered.length];
        int end = 0;
        for (int p = 0; p < root.length; p++) {
            int begun = end;
            if (tree[p]) {
                end = enter(all, root[p], reached, ordered, end);
                for (int i = begun; i < end; i++) {
                    int f = ordered[i];
                    end = enter(all, all.sires[f], reached, ordered, end);
                    end = enter(all, all.dams[f], reached, ordered, end);
                    for (int k = all.firstKit[f]; k < all.firstKit[f + 1]; k++) {
                        end = enter(all, all.kits[k], reached, ordered, end);
                    }
                }
            }
            firstOfPart[p + 1] = end;
        }
        return end;
    }

    /** Reaches the families of an animal but the one that it is reached from. */
    private int enter(Couples all, int member, boolean[] reached, int[] ordered, int before) {
        if (endBelow[member] > 0) {
            return before; // it is the one through which its family was reached
        }
        int end = before;
        for (int i = all.firstFamily[member]; i < all.firstFamily[member + 1]; i++) {
            int family = all.familiesOf[i];
            if (!reached[family]) {
                reached[family] = true;
                entrance[end] = member;
                ordered[end++] = family;
            }
        }
        firstBelow[member] = before;
        endBelow[member] = end;
        return end;
    }

    int parts() {
        return root.length;
    }

    int count() {
        return sires.length;
    }

    /** Whether families are reached through an animal. */
    boolean hasBelow(int member) {
        return endBelow[member] > firstBelow[member];
    }

    private static int[] starts(int[] sizes) {
        int[] starts = new int[sizes.length + 1];
        for (int i = 0; i < sizes.length; i++) {
            starts[i + 1] = starts[i] + sizes[i];
        }
        return starts;
    }

    /** All pairs of parents with kits whose sire is certain, as they come. */
    private static final class Couples {

        private final List<Member> members;

        /** By animal, the number of its family; none for founders and kits of an uncertain sire. */
        private final int[] familyOf;

        private final boolean[] uncertain;
        private final int[] sires;
        private final int[] dams;
        private final int[] firstKit;
        private final int[] kits;

        /** The families of animal m, as a kit or as a parent, are those from {@code firstFamily[m]} up to that of the next. */
        private final int[] firstFamily;

        private final int[] familiesOf;

        Couples(Members all) {
            this.members = all.all();
            this.familyOf = new int[members.size()];
            this.uncertain = new boolean[members.size()];
            int count = sort(all.broods());
            this.sires = new int[count];
            this.dams = new int[count];
            int[] sizes = new int[count];
            int[] belongs = new int[familyOf.length];
            for (int m = 0; m < familyOf.length; m++) {
                if (familyOf[m] != NONE) {
                    Parents parents = members.get(m).parents().orElseThrow();
                    sires[familyOf[m]] = parents.sires().get(0).male();
                    dams[familyOf[m]] = parents.dam();
                    sizes[familyOf[m]]++;
                    belongs[m]++;
                }
            }
            this.firstKit = starts(sizes);
            for (int f = 0; f < count; f++) {
                belongs[sires[f]]++;
                belongs[dams[f]]++;
            }
            this.firstFamily = starts(belongs);
            this.kits = new int[firstKit[count]];
            int[] next = firstKit.clone();
            for (int m = 0; m < familyOf.length; m++) {
                if (familyOf[m] != NONE) {
                    kits[next[familyOf[m]]++] = m;
                }
            }
            this.familiesOf = new int[firstFamily[familyOf.length]];
            next = firstFamily.clone();
            for (int f = 0; f < count; f++) {
                familiesOf[next[sires[f]]++] = f;
                familiesOf[next[dams[f]]++] = f;
                for (int k = firstKit[f]; k < firstKit[f + 1]; k++) {
                    familiesOf[next[kits[k]]++] = f;
                }
            }
        }

        /** Gives each kit of a certain sire the number of its family, and returns how many there are. */
        private int sort(int broods) {
            Map<Long, Integer> numbers = new HashMap<>();
            int[] ofBrood = new int[broods];
            Arrays.fill(ofBrood, NONE);
            Arrays.fill(familyOf, NONE);
            for (int m = 0; m < familyOf.length; m++) {
                Parents parents = members.get(m).parents().orElse(null);
                if (parents == null) {
                    continue;
                }
                if (!parents.isCertain()) {
                    uncertain[m] = true;
                    continue;
                }
                int known = ofBrood[parents.brood()];
                if (known == NONE) {
                    long pair = (long) parents.sires().get(0).male() << 32 | parents.dam();
                    known = numbers.computeIfAbsent(pair, key -> numbers.size());
                    ofBrood[parents.brood()] = known;
                }
                familyOf[m] = known;
            }
            return numbers.size();
        }

        /** Numbers the parts, and returns the first animal of each. */
        int[] parts(int[] part) {
            int[] link = new int[part.length];
            Arrays.setAll(link, m -> m);
            for (int f = 0; f < sires.length; f++) {
                join(link, sires[f], dams[f]);
                for (int k = firstKit[f]; k < firstKit[f + 1]; k++) {
                    join(link, sires[f], kits[k]);
                }
            }
            for (int m = 0; m < link.length; m++) {
                if (uncertain[m]) {
                    Parents parents = members.get(m).parents().orElseThrow();
                    join(link, m, parents.dam());
                    for (Member.Candidate one : parents.sires()) {
                        join(link, m, one.male());
                    }
                }
            }
            int[] firsts = new int[link.length];
            int count = 0;
            for (int m = 0; m < link.length; m++) {
                int first = find(link, m); // the lowest number of the part, since lower ones stay at the head
                if (first == m) {
                    firsts[count] = m;
                    part[m] = count++;
                } else {
                    part[m] = part[first];
                }
            }
            return Arrays.copyOf(firsts, count);
        }

        private static int find(int[] link, int member) {
            int at = member;
            while (link[at] != at) {
                link[at] = link[link[at]];
                at = link[at];
            }
            return at;
        }

        private static void join(int[] link, int one, int other) {
            int a = find(link, one);
            int b = find(link, other);
            link[Math.max(a, b)] = Math.min(a, b);
        }

        boolean[] trees(int[] part, int parts) {
            int[] surplus = new int[parts]; // of animals and families over their links
            boolean[] trees = new boolean[parts];
            Arrays.fill(trees, true);
            for (int m = 0; m < part.length; m++) {
                surplus[part[m]] += 1 - (firstFamily[m + 1] - firstFamily[m]);
                trees[part[m]] &= !uncertain[m];
            }
            for (int f = 0; f < sires.length; f++) {
                surplus[part[sires[f]]]++;
            }
            for (int p = 0; p < trees.length; p++) {
                trees[p] &= surplus[p] == 1; // a tree has one link less than it has nodes
            }
            return trees;
        }
    }
}
