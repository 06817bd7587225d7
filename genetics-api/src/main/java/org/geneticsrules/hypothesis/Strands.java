package org.geneticsrules.hypothesis;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Recombination;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Sex;

/**
 * Which of a parent's two strands is read at each of some loci of a linkage group, as hidden states.
 *
 * <p>Where the loci are read along the map, or against it, the state is the strand, and it changes between two loci with their
 * recombination fraction. Where patterns of crossovers are stated, or the loci are read in another order, the state is the whole pattern
 * of strands and never changes.
 */
final class Strands {

    private static final int MOST = 1 << 8;
    private static final Probability HALF = Probability.of(1, 2);

    /** For each state, the strand at each locus. */
    private final List<int[]> strands = new ArrayList<>();

    private final List<Probability> start = new ArrayList<>();

    /** For each interval, the chance of another strand; empty if states never change. */
    private final ImmutableList<Probability> changes;

    private Strands(LinkageGroup group, List<String> read, Sex parent) {
        int[] at = read.stream().mapToInt(group.loci()::indexOf).toArray();
        if (group.recombination() instanceof Recombination.Fractions fractions && isMonotone(at)) {
            ImmutableList.Builder<Probability> steps = ImmutableList.builder();
            for (int i = 1; i < at.length; i++) {
                steps.add(between(fractions.of(parent), Math.min(at[i - 1], at[i]), Math.max(at[i - 1], at[i])));
            }
            changes = steps.build();
            for (int strand = 0; strand < 2; strand++) {
                int[] same = new int[at.length];
                Arrays.fill(same, strand);
                strands.add(same);
                start.add(HALF);
            }
        } else {
            changes = ImmutableList.of();
            patterns(group, at, parent);
        }
    }

    static Strands of(LinkageGroup group, List<String> read, Sex parent) {
        return new Strands(group, read, parent);
    }

    int states() {
        return strands.size();
    }

    Probability start(int state) {
        return start.get(state);
    }

    /** The chance of a state at a locus, by its position, after a state at the one before. */
    Probability step(int position, int from, int to) {
        if (changes.isEmpty()) {
            return from == to ? Probability.ONE : Probability.ZERO;
        }
        Probability change = changes.get(position - 1);
        return from == to ? change.complement() : change;
    }

    int strand(int state, int position) {
        return strands.get(state)[position];
    }

    private static boolean isMonotone(int[] at) {
        boolean up = true;
        boolean down = true;
        for (int i = 1; i < at.length; i++) {
            up &= at[i - 1] < at[i];
            down &= at[i - 1] > at[i];
        }
        return up || down;
    }

    /** The chance of an odd number of changes. */
    private static Probability between(List<Probability> fractions, int from, int to) {
        Probability odd = Probability.ZERO;
        for (Probability next : fractions.subList(from, to)) {
            odd = odd.times(next.complement()).plus(next.times(odd.complement()));
        }
        return odd;
    }

    private void patterns(LinkageGroup group, int[] at, Sex parent) {
        Map<Integer, Probability> merged = new LinkedHashMap<>();
        group.patterns(parent).forEach((set, chance) -> {
            for (int first = 0; first < 2; first++) {
                int read = 0;
                for (int i = 0; i < at.length; i++) {
                    int strand = first ^ (Integer.bitCount(set & ((1 << at[i]) - 1)) & 1);
                    read |= strand << i;
                }
                merged.merge(read, chance.times(HALF), Probability::plus);
            }
        });
        merged.values().removeIf(Probability::isZero);
        if (merged.size() > MOST) {
            throw new TooLargeException(
                    "patterns of crossovers in group " + group.id(),
                    merged.size(),
                    MOST,
                    "ask about fewer traits, so that fewer loci of the group matter.");
        }
        merged.forEach((read, chance) -> {
            int[] strand = new int[at.length];
            Arrays.setAll(strand, i -> (read >> i) & 1);
            strands.add(strand);
            start.add(chance);
        });
    }
}
