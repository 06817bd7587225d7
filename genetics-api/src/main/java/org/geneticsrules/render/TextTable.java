package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** A table of aligned columns. Columns of text are narrowed and their cells wrapped until the table fits. Not thread-safe. */
final class TextTable {

    private static final String BETWEEN = "  ";
    private static final int NARROWEST_COLUMN = 8;

    private final List<String> header;
    private final boolean[] right;
    private final List<List<String>> rows = new ArrayList<>();

    TextTable(String... header) {
        this.header = List.of(header);
        this.right = new boolean[header.length];
    }

    TextTable(List<String> header) {
        this.header = List.copyOf(header);
        this.right = new boolean[header.size()];
    }

    /** Aligns the columns from this one on to the right, as numbers are. */
    TextTable numbersFrom(int column) {
        Arrays.fill(right, column, right.length, true);
        return this;
    }

    void row(String... cells) {
        row(List.of(cells));
    }

    void row(List<String> cells) {
        if (cells.size() != header.size()) {
            throw new IllegalArgumentException(cells + " does not fit the columns " + header);
        }
        rows.add(List.copyOf(cells));
    }

    boolean isEmpty() {
        return rows.isEmpty();
    }

    List<String> lines(int width) {
        int[] widths = fitted(width);
        List<String> lines = new ArrayList<>(row(header, widths));
        List<String> rules = Arrays.stream(widths).mapToObj("-"::repeat).toList();
        lines.add(String.join(BETWEEN, rules));
        rows.forEach(cells -> lines.addAll(row(cells, widths)));
        return lines;
    }

    private int[] fitted(int width) {
        int[] widths = new int[header.size()];
        for (int i = 0; i < widths.length; i++) {
            widths[i] = header.get(i).length();
            for (List<String> cells : rows) {
                widths[i] = Math.max(widths[i], cells.get(i).length());
            }
        }
        int room = width - BETWEEN.length() * (widths.length - 1);
        while (Arrays.stream(widths).sum() > room) {
            int widest = 0;
            for (int i = 1; i < widths.length; i++) {
                widest = widths[i] > widths[widest] ? i : widest;
            }
            if (widths[widest] <= NARROWEST_COLUMN) {
                break; // wider than asked, but readable
            }
            widths[widest]--;
        }
        return widths;
    }

    private List<String> row(List<String> cells, int[] widths) {
        List<List<String>> wrapped = new ArrayList<>();
        int height = 1;
        for (int i = 0; i < widths.length; i++) {
            List<String> parts = TextLines.wrap(cells.get(i), widths[i]);
            wrapped.add(parts);
            height = Math.max(height, parts.size());
        }
        List<String> lines = new ArrayList<>();
        for (int line = 0; line < height; line++) {
            StringBuilder text = new StringBuilder();
            for (int i = 0; i < widths.length; i++) {
                List<String> parts = wrapped.get(i);
                String part = line < parts.size() ? parts.get(line) : "";
                String padding = " ".repeat(widths[i] - part.length());
                text.append(i > 0 ? BETWEEN : "").append(right[i] ? padding + part : part + padding);
            }
            lines.add(text.toString().stripTrailing());
        }
        return lines;
    }
}
