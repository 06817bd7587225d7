package org.geneticsrules.comparison;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * What a litter might have shown: how likely each outcome is, or what was drawn of them.
 *
 * @param observed logarithm of the chance of what it did show
 * @param logs of each outcome
 * @param chances of each outcome, or equal shares if they were drawn
 * @param listed whether these are all outcomes
 */
@SuppressWarnings("ArrayRecordComponent") // never compared
record LitterOutcomes(double observed, double[] logs, double[] chances, boolean listed) {

    /** Outcomes whose chances differ by less than this, relatively, are equally likely. */
    private static final double SAME = 1e-9;

    /** The chance of an outcome no likelier than what was observed. */
    double p() {
        if (!listed) {
            long hits =
                    Arrays.stream(logs).filter(log -> log <= observed + SAME).count();
            return (hits + 1.0) / (logs.length + 1.0);
        }
        double p = 0;
        for (int at = 0; at < logs.length; at++) {
            p += logs[at] <= observed + SAME ? chances[at] : 0;
        }
        return Math.min(1, p);
    }

    double standardError() {
        double p = p();
        return listed ? 0 : Math.sqrt(p * (1 - p) / logs.length);
    }

    /** The logarithm of an outcome drawn by its chance. */
    double draw(SplittableRandom random) {
        double left = random.nextDouble();
        for (int at = 0; at < logs.length; at++) {
            left -= chances[at];
            if (left < 0) {
                return logs[at];
            }
        }
        return logs[logs.length - 1];
    }
}
