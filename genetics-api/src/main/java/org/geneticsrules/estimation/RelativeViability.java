package org.geneticsrules.estimation;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.statistics.Counts;
import org.geneticsrules.statistics.Interval;
import org.geneticsrules.statistics.LikelihoodRatio;
import org.geneticsrules.statistics.ProfileLikelihood;
import org.geneticsrules.statistics.Ratio;

/**
 * How well animals of some genotypes live until they are counted, compared with the others, by counts against the ratio among all that are conceived.
 *
 * <p>Of a class with the share s, of which b are of the genotypes in question, the share among those counted is (s - b + w b) / (1 - B + w B), where B is the
 * sum of all b. The likelihood is maximised over w / (1 + w), from 0 to 1, since w itself has no upper end.
 *
 * <pre>{@code
 * // Of yellow mice a third are homozygous, if they live.
 * RelativeViability.of(Counts.of(800, 435), Ratio.of(3, 1), List.of(Probability.of(1, 4), Probability.ZERO));
 * }</pre>
 *
 * <p>A low number of animals of a class may have other causes: classes that are mistaken for one another, or a penetrance below 1. Immutable and thread-safe.
 */
public final class RelativeViability {

    private final Counts counts;
    private final double[] others;
    private final double[] concerned;
    private final ProfileLikelihood profile;

    private RelativeViability(Counts counts, double[] others, double[] concerned) {
        this.counts = counts;
        this.others = others;
        this.concerned = concerned;
        this.profile = ProfileLikelihood.of(this::atShare, 0, 1);
    }

    /**
     * Compares the viability of some genotypes with that of the others.
     *
     * @param counts the classes as counted
     * @param conceived the share of each class among all that are conceived
     * @param concerned for each class, the share of all conceived that is of the class and of the genotypes in question: the whole share of the class, or a
     *     part of it
     * @return the question
     * @throws IllegalArgumentException if the classes differ, a part is more than its class, either all or none are concerned, or animals of an impossible class were counted
     */
    public static RelativeViability of(Counts counts, Ratio conceived, List<Probability> concerned) {
        if (counts.values().size() != conceived.size() || concerned.size() != conceived.size()) {
            throw new IllegalArgumentException("expected as many counts, shares and parts, but found "
                    + counts.byClass() + ", " + conceived.shares() + " and " + concerned);
        }
        double[] rest = new double[conceived.size()];
        double[] parts = new double[conceived.size()];
        boolean all = true;
        boolean none = true;
        for (int c = 0; c < rest.length; c++) {
            Probability whole = conceived.shares().get(c);
            Probability part = concerned.get(c);
            if (part.compareTo(whole) > 0) {
                throw new IllegalArgumentException(
                        "the part of class \"" + counts.names().get(c) + "\" that is concerned, " + part
                                + ", is more than the class, " + whole);
            }
            if (whole.isZero() && counts.values().get(c) > 0) {
                throw new IllegalArgumentException(
                        "class \"" + counts.names().get(c) + "\" is impossible at any viability, but has "
                                + counts.values().get(c) + " animals");
            }
            rest[c] = whole.minus(part).toDouble();
            parts[c] = part.toDouble();
            all &= part.equals(whole);
            none &= part.isZero();
        }
        if (all || none) {
            throw new IllegalArgumentException("some genotypes are compared with others, but " + (all ? "all" : "none")
                    + " are concerned: " + concerned);
        }
        return new RelativeViability(counts, rest, parts);
    }

    /** The log-likelihood of w / (1 + w). */
    private double atShare(double u) {
        double total = 0;
        for (int c = 0; c < others.length; c++) {
            total += (1 - u) * others[c] + u * concerned[c];
        }
        double sum = 0;
        for (int c = 0; c < others.length; c++) {
            sum += Terms.log(counts.values().get(c), ((1 - u) * others[c] + u * concerned[c]) / total);
        }
        return sum;
    }

    private static double viability(double u) {
        return u == 1 ? Double.POSITIVE_INFINITY : u / (1 - u);
    }

    /**
     * Estimates the relative viability.
     *
     * @param level confidence level, above 0 and below 1
     * @return 1 if the genotypes live as well as the others, 0 if none live, infinite if only they do; with the profile interval
     * @throws IllegalArgumentException if the level is outside its range
     */
    public Estimate estimate(double level) {
        Estimate share = Estimate.of(profile, level);
        double u = share.value();
        Interval found = share.interval();
        OptionalDouble error = share.standardError().isPresent()
                ? OptionalDouble.of(
                        share.standardError().getAsDouble() / ((1 - u) * (1 - u))) // the slope of u / (1 - u)
                : OptionalDouble.empty();
        List<String> notes = new ArrayList<>(share.notes());
        notes.add(
                "the ratio among all that are conceived is taken to be as stated, and classes to be told apart without error.");
        return new Estimate(
                viability(u),
                error,
                new Interval(
                        viability(found.low()),
                        viability(found.high()),
                        level,
                        found.method(),
                        found.lowIsBoundary(),
                        found.highIsBoundary()),
                share.logLikelihood(),
                share.atBoundary(),
                share.flat(),
                ImmutableList.copyOf(notes));
    }

    /**
     * Tests whether the genotypes live as well as the others.
     *
     * @return the likelihood ratio against a relative viability of 1
     */
    public LikelihoodRatio equal() {
        return LikelihoodRatio.of(atShare(0.5), profile.maximum().logLikelihood());
    }

    /**
     * Tests whether none of the genotypes live.
     *
     * @return the likelihood ratio against a relative viability of 0, which is an end of what it can be
     */
    public LikelihoodRatio lethal() {
        return LikelihoodRatio.atBoundary(atShare(0), profile.maximum().logLikelihood());
    }
}
