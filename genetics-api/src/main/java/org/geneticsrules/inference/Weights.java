package org.geneticsrules.inference;

import java.util.function.DoubleSupplier;

/**
 * Arithmetic on weights of which only the ratios matter: what becomes small is divided by the largest, and the logarithms of what it was
 * divided by are added up.
 *
 * <p>What is possible never becomes 0. No weight beside one of 1 becomes smaller than 1e-100, so that what is very
 * unlikely, as that a male of a thousand dark young of light females carries light, is never taken for impossible. Where that makes a
 * difference, to the likelihood or to a chance, a second look with a smaller least weight differs from the first, and there is no number.
 *
 * <p>Not thread-safe: it belongs to whoever sends the messages of one part.
 */
final class Weights {

    /** The least weight beside one of 1. Three such weights can still be multiplied. */
    private static final double LEAST = 1e-90;

    /** The same for a second look, whose numbers are given. */
    private static final double SMALLER_LEAST = 1e-100;

    /** Weights are divided by the largest when one becomes smaller than this. The product of two that are not is no 0. */
    private static final double SMALL = 1e-150;

    /** Scales are multiplied while they are between this and its inverse, so that logarithms are few. */
    private static final double SMALL_SCALE = 1e-150;

    /** How much a logarithm may differ by rounding, and how much a chance. */
    private static final double ROUNDING = 1e-7;

    private static final double ROUNDING_OF_CHANCE = 1e-9;

    private double least = LEAST;
    private boolean raised;
    private boolean again;
    private boolean moved;
    private double log;
    private double scales = 1;

    /**
     * Sends messages, and a second time with a smaller least weight if one was raised to it.
     *
     * @param send sends all messages and returns the logarithm of the likelihood
     * @return that logarithm; not a number if it, or a chance, depends on the least weight, which is beyond the range of
     *     numbers
     */
    double settle(DoubleSupplier send) {
        again = false;
        begin(LEAST);
        double found = send.getAsDouble();
        if (!raised) {
            return found;
        }
        again = true;
        moved = false;
        begin(SMALLER_LEAST);
        double finer = send.getAsDouble();
        boolean same = !moved && (found == finer || Math.abs(found - finer) < ROUNDING);
        return !raised || same ? finer : Double.NaN;
    }

    /** A chance that was found; in a second look it is compared with that of the first. */
    double found(double before, double now) {
        if (again && !(Math.abs(before - now) < ROUNDING_OF_CHANCE)) {
            moved = true;
        }
        return now;
    }

    private void begin(double smallest) {
        least = smallest;
        raised = false;
        log = 0;
        scales = 1;
    }

    /** Whether a weight is so small that all beside it have to be divided by the largest before the next product; 0 is not. */
    static boolean isSmall(double weight) {
        return weight < SMALL && weight > 0;
    }

    /** Multiplies, and tells whether something that is possible has become small. */
    static boolean times(double[] product, int at, double[] one, int from, int count) {
        boolean small = false;
        for (int i = 0; i < count; i++) {
            double next = product[at + i] * one[from + i];
            product[at + i] = next;
            small |= next < SMALL && next > 0;
        }
        return small;
    }

    /** Multiplies by the same so many times, and scales what becomes small. */
    void times(double[] product, int at, double[] one, int from, int count, int often) {
        for (int time = 0; time < often; time++) {
            if (times(product, at, one, from, count)) {
                scale(product, at, count);
            }
        }
    }

    /** Divides by the largest weight, and returns it; 0 if there is none. What is possible stays so. */
    double scale(double[] weights, int from, int count) {
        double most = 0;
        for (int i = from; i < from + count; i++) {
            most = Math.max(most, weights[i]);
        }
        if (most > 0) {
            double share = 1 / most;
            for (int i = from; i < from + count; i++) {
                double weight = weights[i] * share;
                if (weight < least && weights[i] > 0) {
                    weight = least;
                    raised = true;
                }
                weights[i] = weight;
            }
        }
        return most;
    }

    /** Divides by the largest of all weights, and notes it; false if there is none. */
    boolean noted(double[] weights) {
        double most = scale(weights, 0, weights.length);
        note(most);
        return most > 0;
    }

    /** Notes that the likelihood is so many times what the weights now say. */
    void note(double scale) {
        if (scale < SMALL_SCALE || scale > 1 / SMALL_SCALE || scales < SMALL_SCALE || scales > 1 / SMALL_SCALE) {
            log += Math.log(scale) + Math.log(scales);
            scales = 1;
        } else {
            scales *= scale;
        }
    }

    /** The logarithm of all that was noted. */
    double log() {
        return log + Math.log(scales);
    }
}
