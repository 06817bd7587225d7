package org.geneticsrules.estimation;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.statistics.ChiSquared;
import org.geneticsrules.statistics.Counts;
import org.geneticsrules.statistics.ProfileLikelihood;
import org.geneticsrules.trait.Sex;
import org.jspecify.annotations.Nullable;

/**
 * How frequent the alleles of a locus are, by how many unrelated animals show each of its expressions, whatever the dominance.
 *
 * <p>Animals whose look leaves several genotypes are shared out among them in proportion to how likely these are at the present frequencies (Hardy-Weinberg), then
 * alleles are counted, and so on until nothing changes: gene counting (Ceppellini, Siniscalco and Smith 1955, from memory), an instance of the EM algorithm
 * (Dempster, Laird and Rubin 1977). No step makes the counts less likely.
 *
 * <p>The animals are taken to be unrelated and of one population in Hardy-Weinberg proportions. Counts of kennels are of relatives: their
 * standard errors are larger than what is given here. Immutable and thread-safe.
 */
public final class GeneCounting {

    private static final int MOST_ITERATIONS = 100_000;

    private static final int MOST_STRIDES = 2_000;

    /** Frequencies that change by less are settled. */
    private static final double SETTLED = 1e-14;

    /** By how many shares more the frequent allele begins. */
    private static final int FREQUENT = 7;

    /** Below this a frequency is taken for 0. */
    private static final double NONE = 1e-9;

    private final Counts counts;
    private final List<String> alleles;

    /** By class, the genotypes in it: two positions of alleles each. */
    private final List<List<int[]>> classes;

    private final double[] frequencies;
    private final int iterations;

    private GeneCounting(Counts counts, List<String> alleles, List<List<int[]>> classes) {
        this.counts = counts;
        this.alleles = alleles;
        this.classes = classes;
        Settled found = highest(-1, 0);
        this.iterations = found.iterations();
        this.frequencies = found.frequencies();
    }

    /** Where counting came to rest. */
    @SuppressWarnings("ArrayRecordComponent") // read, never compared
    private record Settled(double[] frequencies, int iterations) {}

    /**
     * The likeliest of the places where counting comes to rest: from equal frequencies, and from others where each allele in turn is frequent, since what may
     * be one genotype or another can be likeliest with either, and counting from equal frequencies then stays in between. One frequency may be held.
     */
    private Settled highest(int held, double value) {
        int k = alleles.size();
        @Nullable Settled best = null;
        double top = 0;
        for (int frequent = -1; frequent < k; frequent++) {
            if (frequent >= 0 && frequent == held) {
                continue;
            }
            double[] now = new double[k];
            double share = 1 - (held < 0 ? 0 : value);
            double parts = k - (held < 0 ? 0 : 1) + (frequent < 0 ? 0 : FREQUENT);
            Arrays.fill(now, share / parts);
            if (frequent >= 0) {
                now[frequent] = share * (1 + FREQUENT) / parts;
            }
            if (held >= 0) {
                now[held] = value;
            }
            int steps = held < 0 && frequent < 0 ? settle(now, held) : hasten(now, held);
            double log = logLikelihood(now);
            if (best == null || log > top + 1e-9 * (1 + Math.abs(top))) {
                best = new Settled(now, steps);
                top = log;
            }
        }
        return Objects.requireNonNull(best);
    }

    /**
     * Counts the alleles of a locus.
     *
     * @param locus an autosomal locus whose dominance is the same in both sexes
     * @param counts by expression, how many unrelated animals show it; every expression that some genotype has is named
     * @return the frequencies
     * @throws IllegalArgumentException if the locus has one allele or is handed down or shown by sex, an expression is missing or unknown, or no genotype shows one
     *     that was counted
     */
    public static GeneCounting of(Locus locus, Counts counts) {
        if (locus.transmission() != Transmission.AUTOSOMAL
                || locus.dependsOnSex()
                || locus.alleles().size() < 2) {
            throw new IllegalArgumentException(
                    "alleles are counted at autosomal loci of two or more alleles that are shown alike in both sexes, but locus "
                            + locus.id() + " is not one");
        }
        List<String> alleles = ImmutableList.copyOf(locus.alleles().keySet());
        List<List<int[]>> classes = new ArrayList<>();
        for (Map.Entry<String, Long> one : counts.byClass().entrySet()) {
            List<int[]> pairs = new ArrayList<>();
            for (AllelePair pair : locus.pairs(Sex.FEMALE)) {
                if (locus.expression(pair, Sex.FEMALE).equals(one.getKey())) {
                    pairs.add(locus.positions(pair));
                }
            }
            if (pairs.isEmpty() && (one.getValue() > 0 || !locus.expressions().contains(one.getKey()))) {
                throw new IllegalArgumentException("no genotype at locus " + locus.id() + " shows \"" + one.getKey()
                        + "\", of which there are " + one.getValue() + "; its expressions are " + locus.expressions());
            }
            classes.add(pairs);
        }
        for (AllelePair pair : locus.pairs(Sex.FEMALE)) {
            String shown = locus.expression(pair, Sex.FEMALE);
            if (!counts.byClass().containsKey(shown)) {
                throw new IllegalArgumentException("animals of " + pair + " show \"" + shown
                        + "\", of which no number is stated, not even 0; stated are "
                        + counts.byClass().keySet());
            }
        }
        return new GeneCounting(counts, alleles, classes);
    }

    /**
     * Counts the alleles of a locus by animals of each of which it is known which genotypes it may have: by its look, by a test of its DNA, or
     * both. Sets of genotypes that no dominance makes may leave several tops of the likelihood; the highest that is met from several starts is given.
     *
     * @param locus an autosomal locus of two or more alleles
     * @param animals by the genotypes that are left, how many unrelated animals there are; a set of all genotypes says nothing
     * @return the frequencies
     * @throws IllegalArgumentException if the locus has one allele or is handed down by sex, a set is empty or has genotypes of another locus, a
     *     count is negative, or all are 0
     */
    public static GeneCounting ofGenotypes(Locus locus, Map<Set<AllelePair>, Long> animals) {
        if (locus.transmission() != Transmission.AUTOSOMAL || locus.alleles().size() < 2) {
            throw new IllegalArgumentException(
                    "alleles are counted at autosomal loci of two or more alleles, but locus " + locus.id()
                            + " is not one");
        }
        Map<String, Long> counts = new LinkedHashMap<>();
        List<List<int[]>> classes = new ArrayList<>();
        animals.forEach((pairs, number) -> {
            if (pairs.isEmpty() || !locus.pairs().containsAll(pairs)) {
                throw new IllegalArgumentException("expected genotypes of locus " + locus.id() + ", " + locus.pairs()
                        + ", but " + number + " animals have one of " + pairs);
            }
            List<AllelePair> ordered =
                    locus.pairs().stream().filter(pairs::contains).toList();
            counts.put(ordered.stream().map(AllelePair::toString).collect(Collectors.joining(" or ")), number);
            classes.add(ordered.stream().map(locus::positions).toList());
        });
        return new GeneCounting(
                new Counts(counts), ImmutableList.copyOf(locus.alleles().keySet()), classes);
    }

    /**
     * Returns the same with alleles that none of the classes tells apart taken as one: of those only the sum of the frequencies can be known.
     *
     * @return alleles of one such set are called {@code C or d}; the counts as they are if all are told apart
     */
    public GeneCounting toldApart() {
        List<List<Integer>> sets = new ArrayList<>();
        int[] setOf = new int[alleles.size()];
        for (int a = 0; a < setOf.length; a++) {
            int s = 0;
            while (s < sets.size() && !isSame(sets.get(s).get(0), a)) {
                s++;
            }
            if (s == sets.size()) {
                sets.add(new ArrayList<>());
            }
            sets.get(s).add(a);
            setOf[a] = s;
        }
        if (sets.size() == alleles.size() || sets.size() < 2) {
            return this;
        }
        List<String> names = sets.stream()
                .map(set -> set.stream().map(alleles::get).collect(Collectors.joining(" or ")))
                .toList();
        List<List<int[]>> merged = classes.stream()
                .map(pairs -> pairs.stream()
                        .map(pair -> List.of(
                                Math.min(setOf[pair[0]], setOf[pair[1]]), Math.max(setOf[pair[0]], setOf[pair[1]])))
                        .distinct()
                        .map(pair -> new int[] {pair.get(0), pair.get(1)})
                        .toList())
                .toList();
        return new GeneCounting(counts, names, merged);
    }

    /** Whether one allele in place of another makes no difference to what class any genotype is in. */
    private boolean isSame(int one, int other) {
        for (List<int[]> pairs : classes) {
            for (int with = 0; with < alleles.size(); with++) {
                if (has(pairs, one, with) != has(pairs, other, with)) {
                    return false;
                }
            }
        }
        return true;
    }

    private static boolean has(List<int[]> pairs, int one, int other) {
        return pairs.stream().anyMatch(pair -> pair[0] == Math.min(one, other) && pair[1] == Math.max(one, other));
    }

    /** Repeats the two steps until nothing changes; one frequency may be held. */
    private int settle(double[] now, int held) {
        for (int i = 1; i <= MOST_ITERATIONS; i++) {
            double[] next = next(now, held);
            double change = 0;
            for (int a = 0; a < now.length; a++) {
                change = Math.max(change, Math.abs(next[a] - now[a]));
                now[a] = next[a];
            }
            if (change < SETTLED) {
                return i;
            }
        }
        return MOST_ITERATIONS;
    }

    /**
     * The same in longer strides, for the many values that a profile asks for: from two steps it is foreseen where they lead to, and if the counts are likelier
     * there, counting goes on from there (Varadhan and Roland 2008, Scand. J. Statist. 35:335, from memory). Where alleles vanish, plain steps become shorter and shorter.
     */
    private int hasten(double[] now, int held) {
        for (int i = 1; i <= MOST_STRIDES; i++) {
            double[] one = next(now, held);
            double[] two = next(one, held);
            double first = 0;
            double bend = 0;
            for (int a = 0; a < now.length; a++) {
                double step = one[a] - now[a];
                double curve = two[a] - one[a] - step;
                first += step * step;
                bend += curve * curve;
            }
            double[] to = two;
            if (bend > 0) {
                double stride = Math.max(1, Math.sqrt(first / bend));
                double[] far = new double[now.length];
                boolean inside = true;
                for (int a = 0; a < now.length; a++) {
                    double step = one[a] - now[a];
                    far[a] = now[a] + 2 * stride * step + stride * stride * (two[a] - one[a] - step);
                    inside &= far[a] >= 0;
                }
                if (inside) {
                    double[] beyond = next(far, held);
                    to = logLikelihood(beyond) >= logLikelihood(two) ? beyond : two;
                }
            }
            System.arraycopy(to, 0, now, 0, now.length);
            if (first < SETTLED * SETTLED) {
                return i;
            }
        }
        return MOST_STRIDES;
    }

    /** Shares animals out and counts their alleles, once. */
    private double[] next(double[] now, int held) {
        double[] counted = counted(now);
        double share = held < 0 ? 1 : 1 - now[held];
        double total = 0;
        for (int a = 0; a < now.length; a++) {
            total += a == held ? 0 : counted[a];
        }
        double[] next = now.clone();
        for (int a = 0; a < now.length; a++) {
            if (a != held && total > 0) {
                next[a] = share * counted[a] / total;
            }
        }
        return next;
    }

    /** How many alleles of each kind are expected in the animals counted. */
    private double[] counted(double[] now) {
        double[] counted = new double[now.length];
        for (int c = 0; c < classes.size(); c++) {
            double whole = chance(c, now);
            long animals = counts.values().get(c);
            if (animals > 0 && whole > 0) {
                for (int[] pair : classes.get(c)) {
                    double each = animals * chance(pair, now) / whole;
                    counted[pair[0]] += each;
                    counted[pair[1]] += each;
                }
            }
        }
        return counted;
    }

    private static double chance(int[] pair, double[] now) {
        return (pair[0] == pair[1] ? 1 : 2) * now[pair[0]] * now[pair[1]];
    }

    private double chance(int position, double[] now) {
        double sum = 0;
        for (int[] pair : classes.get(position)) {
            sum += chance(pair, now);
        }
        return sum;
    }

    private double logLikelihood(double[] now) {
        double sum = 0;
        for (int c = 0; c < classes.size(); c++) {
            sum += Terms.log(counts.values().get(c), chance(c, now));
        }
        return sum;
    }

    /**
     * Returns the frequencies at which the counts are likeliest.
     *
     * @return frequencies by allele, in declared order; they sum to 1 but for rounding
     */
    public Map<String, Double> frequencies() {
        ImmutableMap.Builder<String, Double> found = ImmutableMap.builder();
        for (int a = 0; a < alleles.size(); a++) {
            found.put(alleles.get(a), frequencies[a]);
        }
        return found.buildOrThrow();
    }

    /**
     * Returns how often alleles were counted until nothing changed.
     *
     * @return at least 1; at 100,000 counting ends, and frequencies may not be settled to their last digits
     */
    public int iterations() {
        return iterations;
    }

    /**
     * Estimates the frequency of one allele.
     *
     * @param allele an allele of the locus
     * @param level confidence level, above 0 and below 1
     * @return its frequency, with the standard error by the observed information of all frequencies together, and the profile interval over the others
     * @throws IllegalArgumentException if there is no such allele, or the level is outside its range
     */
    public Estimate estimate(String allele, double level) {
        int position = alleles.indexOf(allele);
        if (position < 0) {
            throw new IllegalArgumentException("there is no allele \"" + allele + "\" among " + alleles);
        }
        ProfileLikelihood profile = ProfileLikelihood.of(
                held -> logLikelihood(highest(position, held).frequencies()), 0, 1);
        return Estimate.of(
                profile,
                frequencies[position],
                error(position),
                level,
                List.of("the animals are taken to be unrelated, and of one population in Hardy-Weinberg proportions."));
    }

    private OptionalDouble error(int position) {
        List<Integer> there = new ArrayList<>();
        for (int a = 0; a < frequencies.length; a++) {
            if (a != position && frequencies[a] > NONE) {
                there.add(a);
            }
        }
        if (there.isEmpty() || frequencies[position] <= NONE) {
            return OptionalDouble.empty();
        }
        // The frequency asked for is what the others leave; so its variance is the sum over all their covariances.
        int n = there.size();
        double[][] information = new double[n][n];
        for (int c = 0; c < classes.size(); c++) {
            long animals = counts.values().get(c);
            if (animals > 0) {
                add(information, c, animals, there, position);
            }
        }
        Optional<double[]> solved = solve(information);
        double variance = solved.map(x -> Arrays.stream(x).sum()).orElse(0.0);
        return variance > 0 ? OptionalDouble.of(Math.sqrt(variance)) : OptionalDouble.empty();
    }

    /** Adds what the animals of one class tell: n (g g' / P^2 - H / P), with one frequency as the rest of the others. */
    private void add(double[][] information, int position, long animals, List<Integer> there, int rest) {
        int k = frequencies.length;
        double[] slope = new double[k];
        double[][] curvature = new double[k][k];
        for (int[] pair : classes.get(position)) {
            int i = pair[0];
            int j = pair[1];
            slope[i] += 2 * frequencies[j];
            curvature[i][j] += 2;
            if (i != j) {
                slope[j] += 2 * frequencies[i];
                curvature[j][i] += 2;
            }
        }
        double chance = chance(position, frequencies);
        for (int x = 0; x < there.size(); x++) {
            for (int y = 0; y < there.size(); y++) {
                int i = there.get(x);
                int j = there.get(y);
                double g = (slope[i] - slope[rest]) * (slope[j] - slope[rest]);
                double h = curvature[i][j] - curvature[i][rest] - curvature[rest][j] + curvature[rest][rest];
                information[x][y] += animals * (g / (chance * chance) - h / chance);
            }
        }
    }

    /** The sums over the rows of the inverse of a matrix; empty if it has none. */
    private static Optional<double[]> solve(double[][] matrix) {
        int n = matrix.length;
        double[] sums = new double[n];
        Arrays.fill(sums, 1);
        double largest = 0;
        for (double[] row : matrix) {
            for (double cell : row) {
                largest = Math.max(largest, Math.abs(cell));
            }
        }
        for (int column = 0; column < n; column++) {
            int best = column;
            for (int row = column; row < n; row++) {
                best = Math.abs(matrix[row][column]) > Math.abs(matrix[best][column]) ? row : best;
            }
            double[] pivot = matrix[best];
            if (!(Math.abs(pivot[column]) > 1e-10 * largest)) {
                return Optional.empty();
            }
            matrix[best] = matrix[column];
            matrix[column] = pivot;
            double swapped = sums[best];
            sums[best] = sums[column];
            sums[column] = swapped;
            for (int row = 0; row < n; row++) {
                if (row != column) {
                    double factor = matrix[row][column] / pivot[column];
                    for (int c = column; c < n; c++) {
                        matrix[row][c] -= factor * pivot[c];
                    }
                    sums[row] -= factor * sums[column];
                }
            }
        }
        for (int row = 0; row < n; row++) {
            sums[row] /= matrix[row][row];
        }
        return Optional.of(sums);
    }

    /**
     * Holds the counts against what the frequencies lead to be expected in Hardy-Weinberg proportions.
     *
     * @return chi-squared with classes - alleles degrees of freedom; empty if there are no more classes than alleles, as with one completely dominant allele: then
     *     any counts fit, and the proportions cannot be tested; empty too if more is known of some animals than of others, or some genotype is in
     *     no class
     */
    public Optional<ChiSquared> fit() {
        long genotypes = classes.stream().flatMap(List::stream).count();
        long different = classes.stream()
                .flatMap(List::stream)
                .map(pair -> List.of(pair[0], pair[1]))
                .distinct()
                .count();
        if (genotypes != different || different != alleles.size() * (alleles.size() + 1L) / 2) {
            return Optional.empty();
        }
        int degrees = (int) classes.stream().filter(pairs -> !pairs.isEmpty()).count() - alleles.size();
        if (degrees < 1) {
            return Optional.empty();
        }
        double sum = 0;
        for (int c = 0; c < classes.size(); c++) {
            double expected = counts.total() * chance(c, frequencies);
            double off = counts.values().get(c) - expected;
            sum += expected > 0
                    ? off * off / expected
                    : 0; // what is not expected at the likeliest frequencies was not counted
        }
        return Optional.of(new ChiSquared(sum, degrees));
    }
}
