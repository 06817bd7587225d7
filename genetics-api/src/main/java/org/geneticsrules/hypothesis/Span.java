package org.geneticsrules.hypothesis;

import java.math.BigInteger;
import java.util.Arrays;
import org.geneticsrules.problem.TooLargeException;
import org.jspecify.annotations.Nullable;

/**
 * The vectors that are sums of multiples of some vectors of whole numbers, by elimination without fractions. Grows only. Not
 * thread-safe.
 */
final class Span {

    /** Refuses work that grows beyond bounds; shared by the spans of one question. */
    static final class Work {
        private static final long MOST = 40_000_000;
        private long steps;

        void add(long more) {
            steps += more;
            if (steps > MOST) {
                throw new TooLargeException(
                        "steps of elimination",
                        steps,
                        MOST,
                        "ask about fewer traits, or about one stage of life, or about genotypes alone.");
            }
        }
    }

    private final BigInteger[] @Nullable [] rows; // by the first column that is not 0
    private final Work work;
    private int rank;

    Span(int columns, Work work) {
        this.rows = new BigInteger[columns][];
        this.work = work;
    }

    /** Whether the vectors are all there are. */
    boolean isFull() {
        return rank == rows.length;
    }

    /** Adds a vector; false if it was in the span already. The vector is not kept. */
    boolean add(BigInteger[] vector) {
        BigInteger[] left = vector.clone();
        for (int column = 0; column < left.length; column++) {
            if (left[column].signum() == 0) {
                continue;
            }
            BigInteger @Nullable [] row = rows[column];
            if (row == null) {
                rows[column] = primitive(left);
                rank++;
                return true;
            }
            subtract(left, row, column);
            work.add(left.length - column);
        }
        return false;
    }

    private static void subtract(BigInteger[] left, BigInteger[] row, int column) {
        BigInteger common = left[column].gcd(row[column]);
        BigInteger mine = row[column].divide(common);
        BigInteger theirs = left[column].divide(common);
        boolean same = mine.equals(BigInteger.ONE);
        for (int i = column; i < left.length; i++) {
            BigInteger kept = same || left[i].signum() == 0 ? left[i] : left[i].multiply(mine);
            left[i] = row[i].signum() == 0 ? kept : kept.subtract(row[i].multiply(theirs));
        }
    }

    /** The same direction in the smallest whole numbers. */
    static BigInteger[] primitive(BigInteger[] vector) {
        BigInteger common = BigInteger.ZERO;
        for (BigInteger entry : vector) {
            if (entry.signum() != 0) {
                common = common.gcd(entry);
                if (common.equals(BigInteger.ONE)) {
                    return vector;
                }
            }
        }
        BigInteger divisor = common;
        BigInteger[] smaller = vector.clone();
        if (divisor.signum() != 0) {
            Arrays.setAll(smaller, i -> vector[i].divide(divisor));
        }
        return smaller;
    }
}
