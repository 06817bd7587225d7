package org.geneticsrules.simulation;

import java.util.ArrayList;
import java.util.List;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Recombination;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Sex;

/**
 * A linkage group, or a locus that stands alone, as it is read when a gamete is made: either strand first, each equally often; then, from
 * locus to locus, the other strand with a chance of its own, or as a pattern of crossovers says that is drawn for the whole group.
 *
 * @param transmission how it is handed down
 * @param from the number of its first locus
 * @param to the number after that of its last locus
 * @param changes by number of the sex of the parent, the chance to change strands in each interval; none where patterns are stated
 * @param patterns bit i for a change in interval i; none where fractions are stated
 * @param sums the sums of the chances of the patterns up to each
 */
@SuppressWarnings("ArrayRecordComponent") // tables that are read, never compared
record Chromosome(Transmission transmission, int from, int to, double[][] changes, int[] patterns, double[] sums) {

    static Chromosome of(LinkageGroup group, int from) {
        int to = from + group.loci().size();
        if (group.recombination() instanceof Recombination.Fractions fractions) {
            double[][] changes = new double[Sex.values().length][];
            for (Sex sex : Sex.values()) {
                changes[Genome.number(sex)] = fractions.of(sex).stream()
                        .mapToDouble(Probability::toDouble)
                        .toArray();
            }
            return new Chromosome(group.transmission(), from, to, changes, new int[0], new double[0]);
        }
        List<Integer> patterns = new ArrayList<>();
        List<Double> chances = new ArrayList<>();
        group.patterns(Sex.FEMALE).forEach((pattern, chance) -> { // they are the same in males
            if (!chance.isZero()) {
                patterns.add(pattern);
                chances.add(chance.toDouble());
            }
        });
        return new Chromosome(
                group.transmission(),
                from,
                to,
                new double[0][],
                patterns.stream().mapToInt(pattern -> pattern).toArray(),
                Chance.sums(chances.stream().mapToDouble(chance -> chance).toArray()));
    }

    boolean isPatterned() {
        return patterns.length > 0;
    }

    /** Whether a parent of a sex reads one of two strands. */
    boolean isRead(Sex parent) {
        return transmission.strands(parent) == 2;
    }

    /** The chance to change strands between a locus and the one before. */
    double change(Sex parent, int locus) {
        return changes[Genome.number(parent)][locus - from - 1];
    }

    /** Whether a pattern changes strands between a locus and the one before. */
    boolean changes(int pattern, int locus) {
        return (pattern >> (locus - from - 1) & 1) == 1;
    }

    /** The chance of one of the patterns. */
    double chance(int number) {
        return number == 0 ? sums[0] : sums[number] - sums[number - 1];
    }
}
