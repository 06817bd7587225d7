package org.geneticsrules.statistics;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.geneticsrules.probability.Probability;

/** The law of counts under a mixture of ratios: the chance of each outcome, their sum over all that are no more likely, and draws. */
final class Outcomes {

    /** Outcomes that differ by less than this share are equally likely. */
    private static final double TIE = 1e-9;

    private static final int BETWEEN_LOOKS = 1 << 12;

    private final int total;
    private final int classes;
    private final Runnable watch;

    /** By ratio, the logarithm of its weight and of total factorial. */
    private final double[] start;

    /** By ratio, class and count x, the logarithm of p^x / x!. */
    private final double[][][] terms;

    /** By ratio, the chances up to and with each class. */
    private final double[][] upTo;

    private final double[] mixing;

    Outcomes(List<Probability> weights, List<Ratio> ratios, int total, Runnable watch) {
        this.total = total;
        this.classes = ratios.get(0).size();
        this.watch = watch;
        double[] factorials = new double[total + 1];
        for (int x = 1; x <= total; x++) {
            factorials[x] = factorials[x - 1] + Math.log(x);
        }
        int n = ratios.size();
        start = new double[n];
        terms = new double[n][classes][total + 1];
        upTo = new double[n][classes];
        mixing = new double[n];
        double weighed = 0;
        for (int m = 0; m < n; m++) {
            start[m] = Math.log(weights.get(m).toDouble()) + factorials[total];
            weighed += weights.get(m).toDouble();
            mixing[m] = weighed;
            double sum = 0;
            for (int c = 0; c < classes; c++) {
                double chance = ratios.get(m).shares().get(c).toDouble();
                sum += chance;
                upTo[m][c] = sum;
                double log = Math.log(chance);
                for (int x = 0; x <= total; x++) {
                    terms[m][c][x] = x == 0 ? 0 : x * log - factorials[x]; // 0 times the logarithm of 0 is 0 here
                }
            }
        }
    }

    double logChance(int[] counts) {
        double[] logs = start.clone();
        for (int m = 0; m < logs.length; m++) {
            for (int c = 0; c < classes; c++) {
                logs[m] += terms[m][c][counts[c]];
            }
        }
        return sum(logs);
    }

    private static double sum(double[] logs) {
        if (logs.length == 1) {
            return logs[0];
        }
        double greatest = Double.NEGATIVE_INFINITY;
        for (double log : logs) {
            greatest = Math.max(greatest, log);
        }
        if (greatest == Double.NEGATIVE_INFINITY) {
            return greatest;
        }
        double sum = 0;
        for (double log : logs) {
            sum += Math.exp(log - greatest);
        }
        return greatest + Math.log(sum);
    }

    /** The chance of all outcomes that are no more likely than one of this chance. */
    double noMoreLikely(double logChance) {
        return Math.min(1, new Listing(logChance + TIE).sum());
    }

    /** All outcomes, one class after another. */
    private final class Listing {
        private final double limit;
        private final double[][] logs = new double[classes + 1][];
        private double sum;
        private double lost;
        private int seen;

        Listing(double limit) {
            this.limit = limit;
            for (int c = 0; c <= classes; c++) {
                logs[c] = new double[start.length];
            }
        }

        double sum() {
            System.arraycopy(start, 0, logs[0], 0, start.length);
            list(0, total);
            return sum;
        }

        private void list(int position, int left) {
            boolean last = position == classes - 1;
            for (int x = last ? left : 0; x <= left; x++) {
                boolean possible = false;
                for (int m = 0; m < start.length; m++) {
                    double log = logs[position][m] + terms[m][position][x];
                    logs[position + 1][m] = log;
                    possible |= log > Double.NEGATIVE_INFINITY;
                }
                if (!possible) {
                    return; // nor are more animals of this class
                }
                if (last) {
                    add(Outcomes.sum(logs[classes]));
                } else {
                    list(position + 1, left - x);
                }
            }
        }

        private void add(double log) {
            if ((++seen & (BETWEEN_LOOKS - 1)) == 0) {
                watch.run();
            }
            if (log <= limit) { // what rounding loses is kept (Kahan)
                double term = Math.exp(log) - lost;
                double next = sum + term;
                lost = next - sum - term;
                sum = next;
            }
        }
    }

    /** How many of some drawn outcomes are no more likely than one of this chance. */
    long hits(double logChance, long draws, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int[] counts = new int[classes];
        long hits = 0;
        for (long d = 0; d < draws; d++) {
            if ((d & 63) == 0) {
                watch.run();
            }
            Arrays.fill(counts, 0);
            double[] law = upTo[position(mixing, random.nextDouble())];
            for (int i = 0; i < total; i++) {
                counts[position(law, random.nextDouble())]++;
            }
            if (logChance(counts) <= logChance + TIE) {
                hits++;
            }
        }
        return hits;
    }

    private static int position(double[] upTo, double at) {
        int found = 0;
        while (at >= upTo[found] && found < upTo.length - 1) {
            found++;
        }
        while (found > 0 && upTo[found] == upTo[found - 1]) { // rounding below 1 must not lead into a class of chance 0
            found--;
        }
        return found;
    }
}
