package org.geneticsrules.table;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.geneticsrules.probability.Probability;

/** How values stand in cells. */
final class Cells {

    /** Between the alternatives in one cell; no state, and no result of a test, holds a blank before a stroke. */
    static final String OR = " | ";

    /** Texts that a spreadsheet runs as formulas, and the apostrophe itself. */
    private static final Pattern FORMULA = Pattern.compile("['=+\\-@][\\s\\S]*");

    /** Texts that a spreadsheet takes for numbers, dates or times and writes in its own way; whole numbers it leaves as they are. */
    private static final Pattern NUMBER_LIKE =
            Pattern.compile("(?!(0|[1-9][0-9]{0,14})$)[0-9][0-9 .,:/-]*([eE][0-9]+)?( ?[aApP][mM]?)?");

    private static final Pattern GUARDED = Pattern.compile("'['=+\\-@0-9][\\s\\S]*");
    private static final Pattern ONE_IN = Pattern.compile("([0-9]{1,400}) in ([0-9]{1,400})");

    /** Longer decimals are hard to read. */
    private static final int MOST_DECIMALS = 9;

    private Cells() {}

    /** A text, guarded against spreadsheets. */
    static String guarded(String text) {
        return FORMULA.matcher(text).matches() || NUMBER_LIKE.matcher(text).matches() ? "'" + text : text;
    }

    /** The text that was guarded, or that stands there without. */
    static String unguarded(String cell) {
        return cell.startsWith("'") && GUARDED.matcher(cell).matches() ? cell.substring(1) : cell;
    }

    /** A chance as a decimal if that is exact and short, else as {@code 1 in 3}, which is neither a date nor a formula. */
    static String chance(Probability chance) {
        for (int decimals = 0; decimals <= MOST_DECIMALS; decimals++) {
            String decimal = chance.toDecimal(decimals);
            if (Probability.from(new BigDecimal(decimal)).equals(chance)) {
                return decimal;
            }
        }
        return chance.numerator() + " in " + chance.denominator();
    }

    /** Reads a chance; refuses what is none. */
    static Probability chance(String cell) {
        Matcher one = ONE_IN.matcher(cell);
        return one.matches()
                ? Probability.of(new BigInteger(one.group(1)), new BigInteger(one.group(2)))
                : Probability.parse(cell);
    }

    /** The alternatives of a cell. */
    static List<String> alternatives(String cell) {
        return cell.contains(OR) ? List.of(cell.split(Pattern.quote(OR), -1)) : List.of(cell);
    }
}
