package org.geneticsrules.render;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import org.geneticsrules.answer.estimated.EstimateAnswer;
import org.geneticsrules.answer.estimated.EstimateTest;
import org.geneticsrules.answer.estimated.EstimatedNumber;
import org.geneticsrules.answer.estimated.LinkageScores;
import org.geneticsrules.estimation.Estimate;
import org.geneticsrules.statistics.Interval;

/**
 * What counts or records say of a number as plain text: the verdict, the numbers with their intervals, tests, LOD scores, what was counted, what
 * it takes for granted, the cautions and the evidence.
 *
 * <p>Stateless and thread-safe.
 */
public final class EstimateText {

    /** More families than these are told by their number. */
    private static final int MOST = 24;

    private EstimateText() {}

    /**
     * Returns an answer in the standard style.
     *
     * @param answer what counts or records say of a number
     * @return lines that end in a newline
     */
    public static String of(EstimateAnswer answer) {
        return of(answer, TextStyle.standard());
    }

    /**
     * Returns an answer in a style.
     *
     * @param answer what counts or records say of a number
     * @param style how it is laid out
     * @return lines that end in a newline
     */
    public static String of(EstimateAnswer answer, TextStyle style) {
        TextLines text = new TextLines(style.width());
        text.paragraph(answer.verdict());
        AnswerText.rivals(answer.rivals().size(), text);
        text.heading("Estimates");
        answer.numbers().forEach(one -> number(one, text));
        answer.reckonings().forEach(one -> text.item("Beside it: " + one.words() + ": " + number(one.value())));
        answer.linkage().ifPresent(linkage -> linkage(linkage, text));
        if (!answer.tests().isEmpty() && answer.informative()) {
            text.heading("Tests");
            answer.tests().forEach(one -> test(one, text));
        }
        AnswerText.asked(answer.notices(), answer.question(), answer.given(), MOST, text);
        AnswerText.changes(answer.assumptions(), text);
        AnswerText.cautions(answer.cautions(), text);
        if (answer.model().isPresent()) {
            AnswerText.evidence(answer.evidence(), answer.model().get(), text);
        } else {
            text.heading("Evidence");
            text.paragraph("This answer rests on the counts and on what is taken for granted, and on no model.");
        }
        return text.toString();
    }

    private static void number(EstimatedNumber number, TextLines text) {
        Estimate estimate = number.estimate();
        if (estimate.flat()) {
            text.item(CarrySection.capital(number.words()) + ": nothing is known of it.");
            return;
        }
        List<String> words = new ArrayList<>();
        words.add(number(estimate.value()) + (estimate.atBoundary() ? ", an end of what it can be" : ""));
        estimate.standardError().ifPresent(error -> words.add("standard error " + number(error)));
        text.item(CarrySection.capital(number.words()) + ": " + String.join("; ", words));
        if (number.exact().filter(estimate.interval()::equals).isEmpty()) {
            text.hanging("    ", "      ", interval(estimate.interval()));
        }
        number.exact().ifPresent(exact -> text.hanging("    ", "      ", interval(exact)));
    }

    private static String interval(Interval interval) {
        // an interval without width is what remains where no value goes with the counts
        String values = interval.low() == interval.high()
                ? "no value goes with the records"
                : number(interval.low()) + " to " + number(interval.high());
        String level = number(100 * interval.level());
        return values + " (" + interval.method().words() + ", "
                + (level.equals("100") ? Double.toString(100 * interval.level()) : level) + " %)";
    }

    private static void linkage(LinkageScores linkage, TextLines text) {
        text.heading("LOD scores");
        text.item("Highest: " + number(linkage.highest()) + ", "
                + switch (linkage.verdict()) {
                    case FOR_LINKAGE -> "by convention for linkage (3 or more)";
                    case INCONCLUSIVE -> "by convention neither for linkage (3 or more) nor against it";
                    case AGAINST_LINKAGE -> "by convention against linkage (-2 or less)";
                });
        text.item("One unit of support: " + number(linkage.support().low()) + " to "
                + number(linkage.support().high()));
        linkage.families().stream()
                .limit(MOST)
                .forEach(one -> text.item(one.name() + ": "
                        + (one.informative() ? number(one.score()) : "says nothing of linkage")
                        + (one.phaseKnown()
                                ? ""
                                : "; phase not known"
                                        + (one.openPhase().isEmpty()
                                                ? ""
                                                : " of " + String.join(", ", one.openPhase())))));
        if (linkage.families().size() > MOST) {
            text.item("and " + (linkage.families().size() - MOST) + " more");
        }
    }

    private static void test(EstimateTest test, TextLines text) {
        StringBuilder words = new StringBuilder();
        test.statistic().ifPresent(statistic -> words.append(String.format(Locale.ROOT, " %.4f", statistic)));
        OptionalInt degrees = test.degreesOfFreedom();
        if (degrees.isPresent() && test.statistic().isPresent()) {
            words.append(", ").append(degrees.getAsInt()).append(" df");
        }
        text.item("That " + test.hypothesis() + ": p "
                + (test.p() == 0 ? "0" : String.format(Locale.ROOT, test.p() < 0.0005 ? "%.1e" : "%.4f", test.p()))
                + " ("
                + test.method() + words + (test.atEnd() ? "; at an end of what the number can be" : "")
                + (degrees.isPresent() && test.statistic().isEmpty() && test.p() == 0 ? ", impossible" : "") + ")");
    }

    /** Four decimals, or as many as show two digits, without zeros at the end. */
    private static String number(double value) {
        if (Double.isInfinite(value)) {
            return value > 0 ? "infinity" : "-infinity";
        }
        double size = Math.abs(value);
        int decimals = size >= 0.001 || size == 0 ? 4 : size >= 0.0001 ? 5 : 6;
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }
}
