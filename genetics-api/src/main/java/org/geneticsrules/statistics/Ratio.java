package org.geneticsrules.statistics;

import com.google.common.collect.ImmutableList;
import java.math.BigInteger;
import java.util.Arrays;
import java.util.List;
import org.geneticsrules.probability.Probability;

/**
 * The exact share of each class that is expected, such as 9:3:3:1.
 *
 * <pre>{@code
 * Ratio.of(9, 3, 3, 1).shares();   // 9/16, 3/16, 3/16, 1/16
 * }</pre>
 *
 * @param shares one chance for each class; a class of chance 0 is impossible
 */
public record Ratio(List<Probability> shares) {

    /**
     * Copies and checks the shares.
     *
     * @param shares one chance for each class
     * @throws IllegalArgumentException if there is none, or they do not sum to exactly 1
     */
    public Ratio {
        shares = ImmutableList.copyOf(shares);
        String total = Probability.total(shares);
        if (!total.equals("1")) {
            throw new IllegalArgumentException("the shares of a ratio sum to 1, but " + shares + " sum to " + total);
        }
    }

    /**
     * Returns the shares of a ratio of whole numbers.
     *
     * @param parts at least one number of 0 or more, not all of them 0
     * @return each as a share of their sum
     * @throws IllegalArgumentException if a part is negative or all are 0
     */
    public static Ratio of(long... parts) {
        BigInteger sum = BigInteger.ZERO;
        for (long part : parts) {
            sum = sum.add(BigInteger.valueOf(part));
        }
        ImmutableList.Builder<Probability> shares = ImmutableList.builder();
        for (long part : parts) {
            if (part < 0 || sum.signum() <= 0) {
                throw new IllegalArgumentException(
                        "the parts of a ratio are 0 or more and not all 0, but were " + Arrays.toString(parts));
            }
            shares.add(Probability.of(BigInteger.valueOf(part), sum));
        }
        return new Ratio(shares.build());
    }

    /**
     * Returns how many classes there are.
     *
     * @return the number of classes, impossible ones too
     */
    public int size() {
        return shares.size();
    }

    /** Refuses counts of another number of classes. */
    void requireFits(Counts counts) {
        if (counts.byClass().size() != size()) {
            throw new IllegalArgumentException("the ratio has " + size() + " classes " + shares
                    + ", but the counts have " + counts.byClass().size() + ": " + counts.byClass());
        }
    }
}
