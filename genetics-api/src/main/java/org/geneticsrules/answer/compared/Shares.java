package org.geneticsrules.answer.compared;

import java.util.Locale;
import org.geneticsrules.planning.EstimatedPower;

/** Shares of drawn sets in percent, with one digit after the point. Stateless and thread-safe. */
final class Shares {

    /** Less than any digit that is told, more than any rounding. */
    private static final double ROUNDING = 1e-9;

    private Shares() {}

    /** The nearest, but 100 only if it is all, and 0 only if it is none. */
    static String share(EstimatedPower power, int sets) {
        double thousandths = Math.rint(1000 * power.share(sets));
        return percent(sets == 0 || sets == power.sets() ? thousandths : Math.min(999, Math.max(1, thousandths)));
    }

    /** The lower end of the interval, never more than it is. */
    static String least(EstimatedPower power, int sets) {
        return percent(Math.floor(1000 * power.interval(sets).low() + ROUNDING));
    }

    /** The upper end of the interval, never less than it is. */
    static String most(EstimatedPower power, int sets) {
        return percent(Math.ceil(1000 * power.interval(sets).high() - ROUNDING));
    }

    private static String percent(double thousandths) {
        return String.format(Locale.ROOT, "%.1f %%", thousandths / 10);
    }
}
