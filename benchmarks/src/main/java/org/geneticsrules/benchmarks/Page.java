package org.geneticsrules.benchmarks;

import java.util.Locale;

/** The report while it is written. */
final class Page {

    private final StringBuilder text = new StringBuilder();

    Page say(String words) {
        text.append(words);
        return this;
    }

    void row(String... cells) {
        text.append("| ").append(String.join(" | ", cells)).append(" |\n");
    }

    /** The head of a table with its rule. */
    void head(String... cells) {
        row(cells);
        text.append("|---".repeat(cells.length)).append("|\n");
    }

    /** Three digits. */
    static String number(double value) {
        int decimals = value < 1 ? 3 : value < 10 ? 2 : value < 100 ? 1 : 0;
        return String.format(Locale.ROOT, "%,." + decimals + "f", value);
    }

    static String whole(double value) {
        return String.format(Locale.ROOT, "%,.0f", value);
    }

    @Override
    public String toString() {
        return text.toString();
    }
}
