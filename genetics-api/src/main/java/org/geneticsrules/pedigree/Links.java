package org.geneticsrules.pedigree;

import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;

/**
 * Who comes from whom, by positions: individuals and litters are numbered from 0 as they were stated, and {@link #NONE} is nobody. A
 * registry of many individuals is walked along numbers, not along maps.
 *
 * <p>Immutable and thread-safe.
 */
public final class Links {

    /** Nobody, or no litter. */
    public static final int NONE = -1;

    final ImmutableMap<String, Integer> position;

    /** The litter of each individual. */
    final int[] litterOf;

    /** The dam of each litter. */
    final int[] dam;

    /** The recorded males of each litter. */
    final int[][] males;

    /** The kits of each litter. */
    final int[][] kits;

    /** The litters of each individual as dam or as a male: those of i stand from {@code first[i]} to before {@code first[i + 1]}. */
    private final int[] litters;

    private final int[] first;

    private final int[] order;

    private Links(ImmutableMap<String, Integer> position, List<Litter> all) {
        this.position = position;
        litterOf = new int[position.size()];
        Arrays.fill(litterOf, NONE);
        dam = new int[all.size()];
        males = new int[all.size()][];
        kits = new int[all.size()][];
        for (int i = 0; i < all.size(); i++) {
            Litter litter = all.get(i);
            dam[i] = litter.dam().map(this::at).orElse(NONE);
            males[i] = litter.sires().males().stream().mapToInt(this::at).toArray();
            kits[i] = litter.kits().stream().mapToInt(this::at).toArray();
            for (int kit : kits[i]) {
                litterOf[kit] = i;
            }
        }
        first = new int[position.size() + 1];
        for (int i = 0; i < all.size(); i++) {
            for (int parent : parents(i)) {
                first[parent + 1]++;
            }
        }
        for (int i = 0; i < position.size(); i++) {
            first[i + 1] += first[i];
        }
        litters = new int[first[position.size()]];
        int[] next = first.clone();
        for (int i = 0; i < all.size(); i++) {
            for (int parent : parents(i)) {
                litters[next[parent]++] = i;
            }
        }
        order = sort();
    }

    /** Takes records whose references are known to be sound. */
    static Links of(Collection<Individual> individuals, Collection<Litter> litters) {
        ImmutableMap.Builder<String, Integer> positions = ImmutableMap.builder();
        int next = 0;
        for (Individual individual : individuals) {
            positions.put(individual.id(), next++);
        }
        return new Links(positions.buildOrThrow(), new ArrayList<>(litters));
    }

    /**
     * Returns the position of the individual that stands at a place when all are put so that those who are or may be parents come before
     * their young.
     *
     * @param place a place, from 0 up to the number of individuals
     * @return its position
     */
    public int inOrder(int place) {
        return order[place];
    }

    /**
     * Returns how many individuals there are.
     *
     * @return their number
     */
    public int count() {
        return litterOf.length;
    }

    /**
     * Returns the litter that an individual comes from.
     *
     * @param individual position of an individual
     * @return position of its litter; {@link #NONE} for a founder
     */
    public int litterOf(int individual) {
        return litterOf[individual];
    }

    /**
     * Returns the dam of a litter.
     *
     * @param litter position of a litter
     * @return position of the dam; {@link #NONE} if she is not recorded
     */
    public int dam(int litter) {
        return dam[litter];
    }

    /**
     * Returns the recorded males who are or may be the sire of a litter.
     *
     * @param litter position of a litter
     * @return how many
     */
    public int males(int litter) {
        return males[litter].length;
    }

    /**
     * Returns a recorded male who is or may be the sire of a litter.
     *
     * @param litter position of a litter
     * @param number which of them, from 0 up to {@link #males(int)}
     * @return position of the male
     */
    public int male(int litter, int number) {
        return males[litter][number];
    }

    /** The position of an individual that is known to be recorded. */
    int at(String id) {
        Integer at = position.get(id);
        if (at == null) {
            throw new IllegalStateException("\"" + id + "\" was checked to be recorded");
        }
        return at;
    }

    /** The dam, if recorded, and every male that is or may be the sire; an individual of no recorded sex may stand in both places. */
    int[] parents(int litter) {
        if (dam[litter] == NONE) {
            return males[litter];
        }
        int[] all = Arrays.copyOf(males[litter], males[litter].length + 1);
        all[males[litter].length] = dam[litter];
        return all;
    }

    /** The parents that an individual has or may have. */
    int[] parentsOf(int individual) {
        return litterOf[individual] == NONE ? new int[0] : parents(litterOf[individual]);
    }

    /** The litters that an individual has or may have. */
    int[] littersOf(int individual) {
        return Arrays.copyOfRange(litters, first[individual], first[individual + 1]);
    }

    /** The order in which parents come before their young. */
    int[] order() {
        return order;
    }

    /**
     * Puts parents before their young, and otherwise keeps the order in which they were stated as far as that allows. Individuals that are
     * among their own possible ancestors, and all that descend from them, are left out.
     */
    private int[] sort() {
        int count = litterOf.length;
        int[] missing = new int[dam.length];
        for (int i = 0; i < dam.length; i++) {
            missing[i] = parents(i).length;
        }
        int[] order = new int[count];
        int size = 0;
        for (int i = 0; i < count; i++) {
            if (litterOf[i] == NONE || missing[litterOf[i]] == 0) {
                order[size++] = i;
            }
        }
        for (int done = 0; done < size; done++) {
            int parent = order[done];
            for (int at = first[parent]; at < first[parent + 1]; at++) {
                int litter = litters[at];
                if (--missing[litter] == 0) {
                    for (int kit : kits[litter]) {
                        order[size++] = kit;
                    }
                }
            }
        }
        return Arrays.copyOf(order, size);
    }
}
