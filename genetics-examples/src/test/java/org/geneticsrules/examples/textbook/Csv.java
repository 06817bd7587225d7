package org.geneticsrules.examples.textbook;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads a table of check values: CSV by RFC 4180 with a header, one row per line. */
final class Csv {

    private static final Pattern CELL = Pattern.compile("(?:\"((?:[^\"]|\"\")*)\"|([^,\"]*))(,|$)");

    private Csv() {}

    static List<Map<String, String>> rows(Path file) {
        try {
            List<String> lines = Files.readAllLines(file);
            List<String> header = cells(lines.get(0));
            List<Map<String, String>> rows = new ArrayList<>();
            for (String line : lines.subList(1, lines.size())) {
                List<String> cells = cells(line);
                if (cells.size() != header.size()) {
                    throw new AssertionError(cells.size() + " cells, not " + header.size() + ", in: " + line);
                }
                Map<String, String> row = new LinkedHashMap<>();
                for (int i = 0; i < cells.size(); i++) {
                    row.put(header.get(i), cells.get(i));
                }
                rows.add(row);
            }
            return rows;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<String> cells(String line) {
        List<String> cells = new ArrayList<>();
        Matcher matcher = CELL.matcher(line);
        int end = 0;
        boolean more = true;
        while (more) {
            if (!matcher.find(end) || matcher.start() != end) {
                throw new AssertionError("not a row of CSV from column " + (end + 1) + ": " + line);
            }
            String quoted = matcher.group(1);
            cells.add(quoted == null ? matcher.group(2) : quoted.replace("\"\"", "\""));
            more = ",".equals(matcher.group(3));
            end = matcher.end();
        }
        return cells;
    }
}
