package org.geneticsrules.inference;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.inference.Member.Parents;

/**
 * The shape of a pedigree: its families, pairs of parents with all their kits, and its parts, which no relation connects. The same for all
 * loci.
 *
 * <p>In a part whose relations form no loop, and all of whose sires are certain, families are put in an order: from the part's first animal
 * outwards, each after the one that it is reached from.
 */
final class Families {

    private static final int NONE = -1;

    /** By family, the numbers of the sire and of the dam. */
    final int[] sires;

    final int[] dams;

    /** The kits of family f are those from {@code firstKit[f]} up to that of the next. */
    final int[] firstKit;

    final int[] kits;

    /** The families of animal m are those from {@code firstFamily[m]} up to that of the next. */
    final int[] firstFamily;

    final int[] familiesOf;

    /** By animal, the number of its part. */
    final int[] part;

    /** By part, its first animal. */
    final int[] root;

    /** By part, whether it has no loop and no uncertain sire. */
    final boolean[] tree;

    /** The families of part p in order are those from {@code firstOrdered[p]} up to that of the next, if it is a tree. */
    final int[] firstOrdered;

    final int[] ordered;

    /** By family of a tree, the animal through which it is reached. */
    final int[] entrance;

    private Families(Members members) {
        List<Member> all = members.all();
        int[] familyOf = new int[all.size()];
        boolean[] uncertain = new boolean[all.size()];
        int count = sort(all, members.broods(), familyOf, uncertain);
        this.sires = new int[count];
        this.dams = new int[count];
        int[] sizes = new int[count];
        for (int m = 0; m < familyOf.length; m++) {
            if (familyOf[m] >= 0) {
                Parents parents = all.get(m).parents().orElseThrow();
                sires[familyOf[m]] = parents.sires().get(0).male();
                dams[familyOf[m]] = parents.dam();
                sizes[familyOf[m]]++;
            }
        }
        this.firstKit = starts(sizes);
        this.kits = new int[firstKit[count]];
        int[] next = firstKit.clone();
        int[] belongs = new int[familyOf.length];
        for (int m = 0; m < familyOf.length; m++) {
            if (familyOf[m] >= 0) {
                kits[next[familyOf[m]]++] = m;
                belongs[m]++;
            }
        }
        for (int f = 0; f < count; f++) {
            belongs[sires[f]]++;
            belongs[dams[f]]++;
        }
        this.firstFamily = starts(belongs);
        this.familiesOf = new int[firstFamily[familyOf.length]];
        next = firstFamily.clone();
        for (int f = 0; f < count; f++) {
            familiesOf[next[sires[f]]++] = f;
            familiesOf[next[dams[f]]++] = f;
            for (int k = firstKit[f]; k < firstKit[f + 1]; k++) {
                familiesOf[next[kits[k]]++] = f;
            }
        }
        this.part = new int[familyOf.length];
        this.root = parts(all);
        this.tree = trees(uncertain);
        this.firstOrdered = new int[root.length + 1];
        this.ordered = new int[count];
        this.entrance = new int[count];
        Arrays.fill(entrance, NONE);
        for (int p = 0; p < root.length; p++) {
            firstOrdered[p + 1] = tree[p] ? order(p) : firstOrdered[p];
        }
    }

    static Families of(Members members) {
        return new Families(members);
    }

    /** Gives each kit of a certain sire the number of its family, and returns how many there are. */
    private static int sort(List<Member> all, int broods, int[] familyOf, boolean[] uncertain) {
        Map<Long, Integer> numbers = new HashMap<>();
        int[] ofBrood = new int[broods];
        Arrays.fill(ofBrood, NONE);
        Arrays.fill(familyOf, NONE);
        for (int m = 0; m < familyOf.length; m++) {
            Parents parents = all.get(m).parents().orElse(null);
            if (parents == null) {
                continue;
            }
            if (!parents.isCertain()) {
                uncertain[m] = true;
                continue;
            }
            int known = ofBrood[parents.brood()];
            if (known < 0) {
                long pair = (long) parents.sires().get(0).male() << 32 | parents.dam();
                known = numbers.computeIfAbsent(pair, key -> numbers.size());
                ofBrood[parents.brood()] = known;
            }
            familyOf[m] = known;
        }
        return numbers.size();
    }

    private static int[] starts(int[] sizes) {
        int[] starts = new int[sizes.length + 1];
        for (int i = 0; i < sizes.length; i++) {
            starts[i + 1] = starts[i] + sizes[i];
        }
        return starts;
    }

    /** Numbers the parts, and returns the first animal of each. */
    private int[] parts(List<Member> all) {
        int[] link = new int[part.length];
        Arrays.setAll(link, m -> m);
        for (int f = 0; f < sires.length; f++) {
            join(link, sires[f], dams[f]);
            for (int k = firstKit[f]; k < firstKit[f + 1]; k++) {
                join(link, sires[f], kits[k]);
            }
        }
        for (int m = 0; m < link.length; m++) {
            Parents parents = all.get(m).parents().orElse(null);
            if (parents != null && !parents.isCertain()) {
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

    private boolean[] trees(boolean[] uncertain) {
        int[] surplus = new int[root.length]; // of animals and families over their links
        boolean[] trees = new boolean[root.length];
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

    /** Puts the families of a part in order, and returns where the next part begins. */
    private int order(int number) {
        int end = enter(root[number], NONE, firstOrdered[number]);
        for (int i = firstOrdered[number]; i < end; i++) {
            int f = ordered[i];
            end = enter(sires[f], f, end);
            end = enter(dams[f], f, end);
            for (int k = firstKit[f]; k < firstKit[f + 1]; k++) {
                end = enter(kits[k], f, end);
            }
        }
        return end;
    }

    /** Reaches the families of an animal but the one that it is reached from. */
    private int enter(int member, int from, int before) {
        int end = before;
        for (int i = firstFamily[member]; i < firstFamily[member + 1]; i++) {
            int family = familiesOf[i];
            if (family != from && entrance[family] == NONE) {
                entrance[family] = member;
                ordered[end++] = family;
            }
        }
        return end;
    }

    int parts() {
        return root.length;
    }

    /** Whether an animal belongs to one family only. */
    boolean isLeaf(int member) {
        return firstFamily[member + 1] - firstFamily[member] == 1;
    }
}
