package org.geneticsrules.table;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.geneticsrules.problem.Position;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;

/** A table as text: a header, rows of cells, and where each stands. The one class that knows Commons CSV. */
final class Sheet {

    /** Most bytes of a file. */
    static final int MOST_BYTES = 64 << 20;

    private static final int MOST_COLUMNS = 1_000;
    private static final int MOST_ROWS = 1_000_000;
    private static final int LONGEST_CELL = 20_000;

    private final String text;
    private final List<String> header;
    private final List<Row> rows;
    private final Row headerRow;

    /**
     * A row that is not blank.
     *
     * @param start where it begins in the text
     * @param line the line on which it begins, from 1
     * @param cells its cells without blanks at both ends
     */
    record Row(int start, int line, List<String> cells) {
        /** A cell, empty if the row ends before it. */
        String cell(int column) {
            return column < cells.size() ? cells.get(column) : "";
        }
    }

    private Sheet(String text, List<Row> all) {
        this.text = text;
        this.header = all.get(0).cells;
        this.headerRow = all.get(0);
        this.rows = all.subList(1, all.size());
    }

    List<String> header() {
        return header;
    }

    List<Row> rows() {
        return rows;
    }

    static Sheet read(byte[] bytes) {
        if (bytes.length > MOST_BYTES) {
            throw syntax(
                    "too-many-bytes", "the table is larger than " + MOST_BYTES + " bytes", "a smaller table", 1, 1);
        }
        try {
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .onUnmappableCharacter(CodingErrorAction.REPORT)
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
            return read(text);
        } catch (CharacterCodingException e) {
            throw syntax("not-utf-8", "the bytes are not UTF-8", "a table saved as CSV in UTF-8", 1, 1);
        }
    }

    /** Reads a text; a byte order mark at its start is passed over. */
    static Sheet read(String withMark) {
        String text = withMark.startsWith("\uFEFF") ? withMark.substring(1) : withMark;
        List<Row> rows = new ArrayList<>();
        Map<String, String> same = new HashMap<>(); // most cells say what others say: one text for all takes less room
        long line = 0;
        try (CSVParser parser = CSVParser.builder()
                .setReader(new StringReader(text))
                .setFormat(CSVFormat.RFC4180)
                .get()) {
            for (CSVRecord record : parser) {
                Row row = row(record, line + 1, same);
                line = parser.getCurrentLineNumber();
                if (row.cells.stream().anyMatch(cell -> !cell.isEmpty())) {
                    rows.add(row);
                }
                if (rows.size() > MOST_ROWS) {
                    throw syntax("too-many-rows", "more than " + MOST_ROWS + " rows", "fewer", line, 1);
                }
            }
        } catch (IOException | UncheckedIOException | IllegalStateException e) {
            throw syntax(
                    "not-csv",
                    "from this row on this is not CSV: a quotation mark is not closed, or text follows one that is",
                    "CSV by RFC 4180, in which a quotation mark within quotation marks is written twice",
                    line + 1,
                    1);
        }
        if (rows.isEmpty()) {
            throw syntax("empty-table", "the table is empty", "a header line and rows", 1, 1);
        }
        return new Sheet(text, rows);
    }

    private static Row row(CSVRecord record, long line, Map<String, String> same) {
        if (record.size() > MOST_COLUMNS) {
            throw syntax(
                    "too-many-columns", "a row has " + record.size() + " cells", "at most " + MOST_COLUMNS, line, 1);
        }
        List<String> cells = new ArrayList<>(record.size());
        for (String cell : record) {
            if (cell.length() > LONGEST_CELL) {
                throw syntax(
                        "too-long-cell",
                        "a cell has " + cell.length() + " characters",
                        "at most " + LONGEST_CELL,
                        line,
                        1);
            }
            cells.add(cell.isEmpty() ? "" : same.computeIfAbsent(cell.strip(), text -> text));
        }
        return new Row((int) record.getCharacterPosition(), (int) line, cells);
    }

    private static ProblemsException syntax(String code, String message, String expected, long line, int column) {
        return new ProblemsException(
                Problem.of(Stage.SYNTAX, code, "", message).expecting(expected).at(new Position((int) line, column)));
    }

    /** Where a cell of the header begins. */
    Position placeOfHeader(int column) {
        return place(headerRow, column);
    }

    /** Where a cell begins, or the row if it ends before that cell. */
    Position place(int row, int column) {
        return place(rows.get(row), column < rows.get(row).cells.size() ? column : 0);
    }

    private Position place(Row row, int column) {
        int at = row.start;
        int line = row.line;
        int lineStart = row.start;
        boolean quoted = false;
        for (int passed = 0; passed < column && at < text.length(); at++) {
            char c = text.charAt(at);
            if (c == '"') {
                quoted = !quoted;
            } else if (c == ',' && !quoted) {
                passed++;
            } else if (c == '\n' || (c == '\r' && !text.startsWith("\n", at + 1))) {
                line++;
                lineStart = at + 1;
            }
        }
        return new Position(line, at - lineStart + 1);
    }
}
