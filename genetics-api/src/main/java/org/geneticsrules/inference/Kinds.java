package org.geneticsrules.inference;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.trait.Sex;

/**
 * Animals sorted by what is known of them by themselves: their records, their sex, and of founders the population. Animals of one kind
 * share all that is calculated for one.
 */
final class Kinds {

    private static final int SEXES = 3; // not known, female, male

    /** By animal, the number of its kind. */
    private final int[] of;

    /** By kind, an animal of it. */
    private final List<Integer> examples = new ArrayList<>();

    private Kinds(Members members, List<Evidence> records) {
        this.of = new int[records.size()];
        IdentityHashMap<Evidence, int[]> byRecords = new IdentityHashMap<>();
        Map<String, Integer> populations = new HashMap<>();
        for (int m = 0; m < of.length; m++) {
            Member member = members.all().get(m);
            int sex = member.sex().map(one -> one == Sex.FEMALE ? 1 : 2).orElse(0);
            int origin = member.isFounder()
                    ? populations.computeIfAbsent(member.population().orElse(""), key -> populations.size() + 1)
                    : 0;
            int column = SEXES * origin + sex;
            int[] row = byRecords.get(records.get(m));
            if (row == null || row.length <= column) {
                int[] longer = new int[Math.max(2 * SEXES, column + SEXES)];
                Arrays.fill(longer, -1);
                if (row != null) {
                    System.arraycopy(row, 0, longer, 0, row.length);
                }
                row = longer;
                byRecords.put(records.get(m), row);
            }
            if (row[column] < 0) {
                row[column] = examples.size();
                examples.add(m);
            }
            of[m] = row[column];
        }
    }

    /**
     * Sorts animals.
     *
     * @param members the animals
     * @param records what is known of each; what is equal is the same object
     */
    static Kinds of(Members members, List<Evidence> records) {
        return new Kinds(members, records);
    }

    int count() {
        return examples.size();
    }

    /** The kind of an animal. */
    int of(int member) {
        return of[member];
    }

    /** All animals, those of one kind after those of another. */
    int[] sorted() {
        int[] next = new int[count() + 1];
        for (int kind : of) {
            next[kind + 1]++;
        }
        for (int kind = 0; kind < count(); kind++) {
            next[kind + 1] += next[kind];
        }
        int[] sorted = new int[of.length];
        for (int m = 0; m < of.length; m++) {
            sorted[next[of[m]]++] = m;
        }
        return sorted;
    }

    /** An animal of a kind. */
    int example(int kind) {
        return examples.get(kind);
    }
}
