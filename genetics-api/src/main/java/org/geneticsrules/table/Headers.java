package org.geneticsrules.table;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.PlainWords;

/** What each column of a table is. */
final class Headers {

    static final int NONE = -1;

    private final Map<Column, Integer> fixed = new EnumMap<>(Column.class);

    /** Columns of traits and loci by id, in the order of the header. */
    final Map<String, Integer> traits = new LinkedHashMap<>();

    final Map<String, Integer> loci = new LinkedHashMap<>();

    /** Columns without a word, which must be empty. */
    final Set<Integer> unnamed = new HashSet<>();

    private final Sheet sheet;
    private final ColumnNames names;
    private final List<Problem> problems = new ArrayList<>();

    Headers(Sheet sheet, ColumnNames names) {
        this.sheet = sheet;
        this.names = names;
        List<String> header = sheet.header();
        Set<String> seen = new HashSet<>();
        for (int i = 0; i < header.size(); i++) {
            String word = header.get(i);
            if (word.isEmpty()) {
                unnamed.add(i);
            } else if (!seen.add(word)) {
                add("duplicate-column", i, "the column \"" + word + "\" stands twice in the header", "each once");
            } else if (!word.startsWith(ColumnNames.OWN_USE)) {
                name(word, i);
            }
        }
        if (!fixed.containsKey(Column.ID) && !fixed.containsKey(Column.COUNT)) {
            String id = names.word(Column.ID);
            boolean other = header.size() == 1
                    && (header.get(0).contains(";") || header.get(0).contains("\t"));
            add(
                    "missing-column",
                    0,
                    other ? "the cells are not parted by commas" : "the column \"" + id + "\" is missing",
                    other ? "a table saved with commas between its cells" : "a header with this column");
        }
    }

    private void name(String word, int column) {
        for (Column one : Column.values()) {
            if (names.word(one).equals(word)) {
                fixed.put(one, column);
                return;
            }
        }
        String trait = names.beforeTrait().strip();
        String locus = names.beforeLocus().strip();
        if (word.startsWith(trait)) {
            String id = word.substring(trait.length()).strip();
            put(traits, id, PlainWords.are(id), "trait", column);
        } else if (word.startsWith(locus)) {
            String id = word.substring(locus.length()).strip();
            put(loci, id, Individual.isId(id), "locus", column);
        } else {
            List<String> known = new ArrayList<>();
            for (Column one : Column.values()) {
                known.add(names.word(one));
            }
            problems.add(Problems.unknown(Stage.SHAPE, "unknown-column", "", "column", word, known)
                    .expecting("a column of the library, one that begins with \"" + names.beforeTrait() + "\" or \""
                            + names.beforeLocus() + "\", or with x- for one's own use")
                    .at(sheet.placeOfHeader(column)));
        }
    }

    private void put(Map<String, Integer> columns, String id, boolean good, String what, int column) {
        if (!good) {
            add("bad-name", column, "\"" + id + "\" cannot name a " + what, "the id of a " + what);
        } else if (columns.putIfAbsent(id, column) != null) {
            add("duplicate-column", column, "the " + what + " \"" + id + "\" has two columns", "each once");
        }
    }

    private void add(String code, int column, String message, String expected) {
        problems.add(
                Problem.of(Stage.SHAPE, code, "", message).expecting(expected).at(sheet.placeOfHeader(column)));
    }

    List<Problem> problems() {
        return problems;
    }

    /** The place of a column, or {@link #NONE}. */
    int of(Column column) {
        return fixed.getOrDefault(column, NONE);
    }

    /** The word of a column by its place. */
    Optional<String> word(int column) {
        return column >= 0 && column < sheet.header().size()
                ? Optional.of(sheet.header().get(column))
                : Optional.empty();
    }

    /** The place of a column by its word. */
    int find(String word) {
        return sheet.header().indexOf(word);
    }
}
