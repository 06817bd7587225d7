package org.geneticsrules.comparison;

import com.google.common.collect.ImmutableList;
import com.google.common.primitives.Doubles;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.geneticsrules.pedigree.Individual;

/**
 * How well each of several models foretold the records of litters.
 *
 * <p>Candidates are numbered from 0 as they were named; the first is the one that others are held against. Logarithms are natural.
 *
 * <p><b>What counts as evidence.</b> The running likelihood ratio multiplies, litter by litter, how much likelier a litter was under one
 * model than under another, each given the litters before. If the other model is true and was fully stated beforehand, the ratio reaches a
 * number 1/a at any time with a chance of at most a (Ville 1939; Robbins 1970, <i>Statistical methods related to the law of the iterated
 * logarithm</i>, Annals of Mathematical Statistics 41:1397, both from memory). So it may be looked at after every litter, as long as none is
 * left out. Whoever tries several rivals gives chance as many occasions, and the bar is that much higher ({@link #bar}). None of this holds
 * for a model whose numbers were fitted to the same records.
 *
 * <p>Immutable and thread-safe.
 */
public final class ComparedModels {

    /** How often at most a true model is rejected by one rival: 1 in 20. */
    public static final double USUAL_RISK = 0.05;

    /** Of more relatives than these, each record by itself is too much to leave out. */
    private static final int MOST_RELATED = 200;

    private final ModelComparison question;
    private final Prepared prepared;

    /** By candidate, kindred and litter; first what founders add. */
    private final List<double[][]> logs;

    /** By place in the order of all litters, its kindred and its number there. */
    private final int[] kindred;

    private final int[] number;
    private final double[] totals;

    ComparedModels(ModelComparison question, Prepared prepared, List<double[][]> logs) {
        this.question = question;
        this.prepared = prepared;
        this.logs = logs;
        int count = prepared.litters().stream().mapToInt(List::size).sum();
        kindred = new int[count];
        number = new int[count];
        order();
        totals = new double[logs.size()];
        for (int m = 0; m < totals.length; m++) {
            for (double[] of : logs.get(m)) {
                totals[m] += question.countsParents() ? of[0] : impossibleFounders(of);
                for (int t = 1; t < of.length; t++) {
                    totals[m] += of[t];
                }
            }
        }
    }

    /** What is given adds nothing, unless it cannot be. */
    private static double impossibleFounders(double[] of) {
        return of[0] == Double.NEGATIVE_INFINITY ? of[0] : 0;
    }

    private void order() {
        int[] at = new int[prepared.kindreds().size()];
        int[][] places = new int[kindred.length][];
        int size = 0;
        for (int k = 0; k < at.length; k++) {
            for (int t = 0; t < prepared.litters().get(k).size(); t++) {
                places[size++] = new int[] {prepared.kindreds().get(k).turns()[t], k, t};
            }
        }
        Arrays.sort(places, (one, other) -> Integer.compare(one[0], other[0]));
        for (int place = 0; place < places.length; place++) {
            kindred[place] = places[place][1];
            number[place] = places[place][2];
        }
    }

    /**
     * Returns the models.
     *
     * @return the candidates, in order
     */
    public List<Candidate> candidates() {
        return question.candidates();
    }

    /**
     * Returns the records as far as all models speak of them.
     *
     * @return what was compared, and what was left out
     */
    public SharedRecords records() {
        return question.records();
    }

    /**
     * Returns how many litters were looked at.
     *
     * @return their number
     */
    public int size() {
        return kindred.length;
    }

    /**
     * Returns how many kits have records that were compared.
     *
     * @return their number
     */
    public int kits() {
        return prepared.litters().stream()
                .flatMap(List::stream)
                .flatMap(litter -> litter.kits().stream())
                .mapToInt(kit -> kit.observations().isEmpty() && kit.tests().isEmpty() ? 0 : 1)
                .sum();
    }

    /**
     * Returns what one litter says.
     *
     * @param place its place in the order in which litters are looked at, from 0
     * @return the litter, with a number for each model
     */
    public LitterEvidence litter(int place) {
        Noticed litter = prepared.litters().get(kindred[place]).get(number[place]);
        List<Double> here = new ArrayList<>();
        List<Boolean> known = new ArrayList<>();
        for (double[][] of : logs) {
            double[] one = of[kindred[place]];
            here.add(one[number[place] + 1]);
            known.add(Arrays.stream(one, 0, number[place] + 1).allMatch(log -> log != Double.NEGATIVE_INFINITY));
        }
        return new LitterEvidence(litter.litter().id(), kindred[place], here, known);
    }

    /**
     * Returns what all litters say, in the order in which they are looked at: by date of birth if all have one, else as stated.
     *
     * @return the litters
     */
    public List<LitterEvidence> litters() {
        return IntStream.range(0, size()).mapToObj(this::litter).collect(ImmutableList.toImmutableList());
    }

    /**
     * Returns the chance of all records under a model.
     *
     * @param candidate number of the model
     * @return its logarithm, given the records of founders unless those count ({@link ModelComparison#countingParents}); negative infinity if
     *     the records cannot be
     */
    public double log(int candidate) {
        return totals[candidate];
    }

    /**
     * Returns how much better a model foretold all records than another.
     *
     * @param candidate number of the model
     * @param over number of the other
     * @return the logarithm of the likelihood ratio; infinite if one of them excludes the records; none if both do
     */
    public OptionalDouble logRatio(int candidate, int over) {
        return impossible(candidate) && impossible(over)
                ? OptionalDouble.empty()
                : OptionalDouble.of(candidate == over ? 0 : totals[candidate] - totals[over]);
    }

    /**
     * Returns the same to the base 10, as linkage studies state it.
     *
     * @param candidate number of the model
     * @param over number of the other
     * @return the LOD score; none if both exclude the records
     */
    public OptionalDouble lod(int candidate, int over) {
        OptionalDouble log = logRatio(candidate, over);
        return log.isPresent() ? OptionalDouble.of(log.getAsDouble() / Math.log(10)) : log;
    }

    /**
     * Tells whether a model excludes the records.
     *
     * @param candidate number of the model
     * @return true if they have no chance under it
     */
    public boolean impossible(int candidate) {
        return totals[candidate] == Double.NEGATIVE_INFINITY;
    }

    /**
     * Returns the running likelihood ratio of a model over another.
     *
     * @param candidate number of the model
     * @param over number of the other
     * @return its logarithm after each litter; from where both exclude the records on, it stays as it was
     */
    public double[] running(int candidate, int over) {
        double[] running = new double[size()];
        boolean[] mine = new boolean[prepared.kindreds().size()];
        double above = 0;
        double below = 0;
        double last = 0;
        for (int place = 0; place < running.length; place++) {
            double[] one = logs.get(candidate)[kindred[place]];
            double[] other = logs.get(over)[kindred[place]];
            if (!mine[kindred[place]]) {
                mine[kindred[place]] = true;
                above += question.countsParents() ? one[0] : impossibleFounders(one);
                below += question.countsParents() ? other[0] : impossibleFounders(other);
            }
            above += one[number[place] + 1];
            below += other[number[place] + 1];
            boolean both = (above == Double.NEGATIVE_INFINITY) && (below == Double.NEGATIVE_INFINITY);
            last = both ? last : above - below;
            running[place] = last;
        }
        return running;
    }

    /**
     * Returns the number that a running ratio has to reach to be evidence.
     *
     * @return 1 / {@link #USUAL_RISK} for each rival of a model: 20 where two are compared
     */
    public double bar() {
        return bar(USUAL_RISK, candidates().size() - 1);
    }

    /**
     * Returns the number that a running ratio has to reach.
     *
     * @param risk how often at most a true model may be rejected
     * @param tried how many rivals were tried on these records, those left out of the comparison included
     * @return the bar
     * @throws IllegalArgumentException if the risk is not between 0 and 1, or the number negative
     */
    public static double bar(double risk, int tried) {
        if (!(risk > 0 && risk < 1) || (tried < 0)) {
            throw new IllegalArgumentException(
                    "a risk is between 0 and 1 and the number of rivals not negative, but they were " + risk + " and "
                            + tried);
        }
        return Math.max(1, tried) / risk;
    }

    /**
     * Tells where the running ratio of a model over another reached a bar for the first time.
     *
     * @param candidate number of the model
     * @param over number of the other
     * @param bar the bar
     * @return place of the litter, from 0; none if it never did
     */
    public OptionalInt reached(int candidate, int over, double bar) {
        double[] running = running(candidate, over);
        double log = Math.log(bar);
        return IntStream.range(0, running.length)
                .filter(place -> running[place] >= log)
                .findFirst();
    }

    /**
     * Returns the model that foretold the records best.
     *
     * @return its number, the first of several that differ by no more than rounding; none if all exclude the records
     */
    public OptionalInt best() {
        return best(Doubles.asList(totals));
    }

    /**
     * Returns the best of several models.
     *
     * @param logs for each model, the logarithm of the chance of the same records
     * @return its number, the first of several that differ by no more than rounding; none if all exclude the records
     */
    public static OptionalInt best(List<Double> logs) {
        double most = Collections.max(logs);
        return most == Double.NEGATIVE_INFINITY
                ? OptionalInt.empty()
                : IntStream.range(0, logs.size())
                        .filter(m -> same(logs.get(m), most))
                        .findFirst();
    }

    /**
     * Returns what may be believed of each model if one of them is true, from what is stated as believed before ({@link Candidate#prior}).
     *
     * @return for each candidate its share; none if all exclude the records, or nothing is believed of any other
     */
    public List<Double> posteriors() {
        double[] sums = new double[totals.length];
        for (int m = 0; m < sums.length; m++) {
            sums[m] = totals[m] + Math.log(candidates().get(m).prior().toDouble());
        }
        double most = Doubles.max(sums);
        if (most == Double.NEGATIVE_INFINITY) {
            return ImmutableList.of();
        }
        double sum = Arrays.stream(sums).map(one -> Math.exp(one - most)).sum();
        return Arrays.stream(sums).mapToObj(one -> Math.exp(one - most) / sum).collect(ImmutableList.toImmutableList());
    }

    /**
     * Returns Akaike's information criterion, for models of which numbers were fitted to the records (Akaike 1974).
     *
     * @param candidate number of the model
     * @return 2 k - 2 log L; the smaller the better
     */
    public double aic(int candidate) {
        return 2.0 * candidates().get(candidate).fitted() - 2 * totals[candidate];
    }

    /**
     * Returns Schwarz's criterion, for models of which numbers were fitted to the records (Schwarz 1978). Kits count as observations, which
     * is more than they are where they share uncertain parents.
     *
     * @param candidate number of the model
     * @return k log n - 2 log L; the smaller the better
     */
    public double bic(int candidate) {
        return candidates().get(candidate).fitted() * Math.log(kits()) - 2 * totals[candidate];
    }

    /**
     * Tells whether two models foretold every litter alike.
     *
     * @param one number of a model
     * @param other number of another
     * @return true if no litter's chance differs by more than rounding
     */
    public boolean alike(int one, int other) {
        for (int k = 0; k < prepared.kindreds().size(); k++) {
            double[] mine = logs.get(one)[k];
            double[] others = logs.get(other)[k];
            if ((question.countsParents() && !same(mine[0], others[0]))
                    || (impossibleFounders(mine) != impossibleFounders(others))) {
                return false;
            }
            for (int t = 1; t < mine.length; t++) {
                if (!same(mine[t], others[t])) {
                    return false;
                }
            }
        }
        return true;
    }

    private static boolean same(double one, double other) {
        return one == other
                || (Double.isFinite(one)
                        && Double.isFinite(other)
                        && (Math.abs(one - other) <= 1e-9 * (1 + Math.abs(one))));
    }

    /**
     * Returns how many litters are related through more than one couple, which makes each of them costly to leave out.
     *
     * @return the number of litters of the largest kindred that is not one couple; 0 if there is none
     */
    public int related() {
        return prepared.kindreds().stream()
                .filter(kindred -> !kindred.isCouple(question.records().pedigree()))
                .mapToInt(kindred -> kindred.litters().length)
                .max()
                .orElse(0);
    }

    /**
     * Asks how the comparison comes out without each litter.
     *
     * @return for each litter, in order, the logarithm of the chance of all other records under each model
     */
    public List<LeftOut> leavingOut() {
        List<List<Double>> without = new ArrayList<>();
        IntStream.range(0, size()).forEach(place -> without.add(new ArrayList<>()));
        for (int m = 0; m < totals.length; m++) {
            ModelChances chances = question.chances(candidates().get(m));
            for (int place = 0; place < size(); place++) {
                int k = kindred[place];
                List<Noticed> litters = new ArrayList<>(prepared.litters().get(k));
                litters.set(number[place], litters.get(number[place]).blank());
                double others = 0;
                for (int other = 0; other < logs.get(m).length; other++) {
                    others += other == k ? 0 : sum(logs.get(m)[other]);
                }
                without.get(place)
                        .add(others + sum(chances.of(prepared.kindreds().get(k), litters)));
                question.tick();
            }
        }
        return IntStream.range(0, size())
                .mapToObj(place -> new LeftOut(litter(place).litter(), without.get(place)))
                .collect(ImmutableList.toImmutableList());
    }

    private double sum(double[] of) {
        double sum = question.countsParents() ? of[0] : impossibleFounders(of);
        for (int t = 1; t < of.length; t++) {
            sum += of[t];
        }
        return sum;
    }

    /**
     * Looks for single animals on whose records it rests that a model excludes the records.
     *
     * @param candidate number of the model
     * @return for each kindred whose records cannot be, the animals without any one of whose records the rest can; none for a kindred in
     *     which no single animal decides it, or which is not one couple and has so many kits that this is not tried
     */
    public List<Recheck> recheck(int candidate) {
        ModelChances chances = question.chances(candidates().get(candidate));
        ImmutableList.Builder<Recheck> all = ImmutableList.builder();
        for (int k = 0; k < prepared.kindreds().size(); k++) {
            if (sum(logs.get(candidate)[k]) == Double.NEGATIVE_INFINITY) {
                all.add(recheck(k, chances));
            }
        }
        return all.build();
    }

    private Recheck recheck(int k, ModelChances chances) {
        Kindred of = prepared.kindreds().get(k);
        List<Noticed> litters = prepared.litters().get(k);
        ImmutableList.Builder<String> animals = ImmutableList.builder();
        long recorded =
                litters.stream().mapToLong(litter -> litter.kits().size()).sum();
        if (!of.isCouple(question.records().pedigree()) && (recorded > MOST_RELATED)) {
            return new Recheck(litters.stream().map(one -> one.litter().id()).toList(), animals.build());
        }
        for (Individual founder : of.founders()) {
            if (Noticed.isRecorded(founder) && chances.possible(of.blank(founder), litters)) {
                animals.add(founder.id());
            }
        }
        for (int t = 0; t < litters.size(); t++) {
            for (Individual kit : litters.get(t).kits()) {
                if (Noticed.isRecorded(kit)) {
                    List<Noticed> others = new ArrayList<>(litters);
                    others.set(t, litters.get(t).blank(kit));
                    if (chances.possible(of, others)) {
                        animals.add(kit.id());
                    }
                    question.tick();
                }
            }
        }
        return new Recheck(litters.stream().map(one -> one.litter().id()).toList(), animals.build());
    }

    /**
     * How a comparison comes out without the records of one litter.
     *
     * @param litter id of the litter that is left out
     * @param logs for each candidate, the logarithm of the chance of all other records
     */
    public record LeftOut(String litter, List<Double> logs) {

        /**
         * Copies the numbers.
         *
         * @param litter id of the litter
         * @param logs for each candidate, the logarithm of a chance
         */
        public LeftOut {
            logs = ImmutableList.copyOf(logs);
        }
    }

    /**
     * Related litters whose records a model excludes.
     *
     * @param litters ids of the litters
     * @param animals ids of those without whose records, any one by itself, the others can be
     */
    public record Recheck(List<String> litters, List<String> animals) {

        /**
         * Copies the ids.
         *
         * @param litters ids of litters
         * @param animals ids of animals
         */
        public Recheck {
            litters = ImmutableList.copyOf(litters);
            animals = ImmutableList.copyOf(animals);
        }
    }

    /** Returns the models with their logarithms. */
    @Override
    public String toString() {
        List<String> words = new ArrayList<>();
        for (int m = 0; m < totals.length; m++) {
            words.add(candidates().get(m) + " " + totals[m]);
        }
        return String.join("; ", words);
    }
}
