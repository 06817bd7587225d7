package org.geneticsrules.estimation;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.statistics.ChiSquared;
import org.geneticsrules.statistics.Counts;
import org.geneticsrules.statistics.GoodnessOfFit;
import org.geneticsrules.statistics.Ratio;

/**
 * Whether unrelated animals of one population have the genotypes of two alleles in the proportions p^2 : 2pq : q^2 (Hardy 1908, Weinberg 1908).
 *
 * <p>All three genotypes have to be told apart. Where one allele is completely dominant there are two classes and one frequency to be estimated, which
 * always fit: the proportions cannot be tested then ({@link GeneCounting#fit}).
 *
 * <p>Animals of kennels are related, and mated by their looks; a deviation says that some assumption does not hold, not which.
 *
 * @param first animals with two of the first allele
 * @param heterozygous animals with one of each
 * @param second animals with two of the second allele
 */
public record HardyWeinberg(long first, long heterozygous, long second) {

    /** Outcomes that differ by less than this share are equally likely. */
    private static final double TIE = 1e-9;

    /** More animals than this would have to be counted by hand for a while. */
    private static final long MOST = 10_000_000;

    /**
     * Checks the counts.
     *
     * @param first animals with two of the first allele
     * @param heterozygous animals with one of each
     * @param second animals with two of the second allele
     * @throws IllegalArgumentException if a count is negative, all are 0, or there are more than ten million animals
     */
    public HardyWeinberg {
        long total = Counts.of(first, heterozygous, second).total();
        if (total > MOST) {
            throw new IllegalArgumentException("at most " + MOST + " animals are looked at, but found " + total);
        }
    }

    private long animals() {
        return first + heterozygous + second;
    }

    /**
     * Returns the frequency of the first allele, counted.
     *
     * @return (2 first + heterozygous) / 2n, exactly
     */
    public Probability frequency() {
        return Probability.of(2 * first + heterozygous, 2 * animals());
    }

    /**
     * Holds the counts against the proportions of the counted frequency.
     *
     * @return the test, with one frequency estimated and so one degree of freedom
     */
    public GoodnessOfFit fit() {
        Probability p = frequency();
        Probability q = p.complement();
        Probability middle = p.times(q);
        return new GoodnessOfFit(
                Counts.of(first, heterozygous, second),
                new Ratio(List.of(p.times(p), middle.plus(middle), q.times(q))),
                1);
    }

    /**
     * Returns chi-squared.
     *
     * @return the statistic with one degree of freedom; empty if only one allele is there, which fits whatever the proportions
     */
    public Optional<ChiSquared> chiSquared() {
        return fit().chiSquared();
    }

    /**
     * Returns p of the exact test: given how many alleles there are of each kind, the chance of numbers of heterozygotes that are no more likely than
     * what was observed (Haldane 1954; Wigginton, Cutler and Abecasis 2005, Am. J. Hum. Genet. 76:887; from memory).
     *
     * @return p, from above 0 to 1; 1 if only one allele is there
     */
    public double exactP() {
        long ofFirst = 2 * first + heterozygous;
        long ofSecond = 2 * second + heterozygous;
        long rarer = Math.min(ofFirst, ofSecond);
        // Neighbours are two heterozygotes apart, and the ratio of their chances is 4 aa bb / ((ab + 2) (ab + 1)). All
        // are relative to what was observed.
        double sum = 1;
        double noMore = 1;
        double chance = 1;
        for (long ab = heterozygous; ab + 2 <= rarer; ab += 2) {
            double aa = (ofFirst - ab) / 2.0;
            double bb = (ofSecond - ab) / 2.0;
            chance *= 4 * aa * bb / ((ab + 2.0) * (ab + 1.0));
            sum += chance;
            noMore += chance <= 1 + TIE ? chance : 0;
        }
        chance = 1;
        for (long ab = heterozygous; ab >= 2; ab -= 2) {
            double aa = (ofFirst - ab) / 2.0 + 1;
            double bb = (ofSecond - ab) / 2.0 + 1;
            chance *= ab * (ab - 1.0) / (4 * aa * bb);
            sum += chance;
            noMore += chance <= 1 + TIE ? chance : 0;
        }
        return sum == Double.POSITIVE_INFINITY ? 0 : noMore / sum;
    }

    /**
     * Returns the deficit of heterozygotes, 1 - observed / expected, which is the inbreeding coefficient where inbreeding is its only cause.
     *
     * @return from -1 to 1, 0 in Hardy-Weinberg proportions; empty if only one allele is there
     */
    public OptionalDouble heterozygoteDeficit() {
        double expected = fit().expected().get(1);
        return expected == 0 ? OptionalDouble.empty() : OptionalDouble.of(1 - heterozygous / expected);
    }
}
