package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.geneticsrules.answer.recorded.RegistryReport;
import org.geneticsrules.answer.recorded.RegistryReport.Kindred;
import org.geneticsrules.inference.Conclusions.Standing;

/** What the chances of a registry cost, and how far they are settled. */
final class RegistryWork {

    private static final int MOST_NAMED = 5;

    private static final double MOST_WRITTEN = 1e12;

    private RegistryWork() {}

    static void write(RegistryReport report, TextLines text, int width) {
        text.heading("How far chances are settled");
        TextTable settled = new TextTable("Standing", "What it means", "Chances");
        for (Standing standing : Standing.values()) {
            long count = report.count(standing);
            if (count > 0) {
                settled.row(word(standing), meaning(standing), Long.toString(count));
            }
        }
        text.lines(settled.lines(width));
        text.heading("What they cost");
        TextTable cost = new TextTable("Cells of tables", "Sets of relatives", "Animals", "In time").numbersFrom(1);
        row(cost, "none: family by family", report, 0, 0);
        row(cost, "up to 65,536", report, Double.MIN_VALUE, 1 << 16);
        row(cost, "up to 1,048,576", report, 1 << 16, 1 << 20);
        row(cost, "more, within the limit", report, 1 << 20, Double.POSITIVE_INFINITY);
        List<Kindred> beyond =
                report.kindreds().stream().filter(one -> !one.within()).toList();
        row(cost, "beyond the limit", beyond);
        text.lines(cost.lines(width));
        if (!beyond.isEmpty()) {
            text.blank();
        }
        beyond.stream()
                .limit(MOST_NAMED)
                .forEach(one -> text.item(String.format(
                        Locale.ROOT,
                        one.cells() < MOST_WRITTEN
                                ? "\"%s\" and %,d related animals would take at least %,.0f cells."
                                : "\"%s\" and %,d related animals would take at least %.0e cells.",
                        one.first(),
                        one.animals() - 1,
                        one.cells())));
        WhySection.more(beyond.size() - MOST_NAMED, "sets of relatives beyond the limit", text);
    }

    /** Those above one number of cells, or with just none, up to another. */
    private static void row(TextTable table, String what, RegistryReport report, double above, double most) {
        List<Kindred> here = new ArrayList<>();
        for (Kindred one : report.kindreds()) {
            boolean lower = most == 0 ? one.cells() >= 0 : one.cells() > above;
            if (one.within() && lower && one.cells() <= most) {
                here.add(one);
            }
        }
        row(table, what, here);
    }

    private static void row(TextTable table, String what, List<Kindred> here) {
        if (!here.isEmpty()) {
            table.row(
                    what,
                    Integer.toString(here.size()),
                    Integer.toString(here.stream().mapToInt(Kindred::animals).sum()),
                    Long.toString(here.stream().filter(Kindred::inTime).count()));
        }
    }

    private static String word(Standing standing) {
        return standing.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    private static String meaning(Standing standing) {
        return switch (standing) {
            case EXACT -> "calculated";
            case SAMPLED -> "estimated, with a standard error";
            case NOT_CONVERGED -> "the estimate did not become sure enough, so there is none";
            case TOO_LARGE -> "too large to be calculated; it was not estimated";
            case NOT_IN_TIME -> "not come to within the time";
            case CONTRADICTED -> "records of relatives do not fit one another";
        };
    }
}
