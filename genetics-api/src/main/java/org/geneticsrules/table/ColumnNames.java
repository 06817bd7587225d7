package org.geneticsrules.table;

import com.google.common.collect.ImmutableMap;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/**
 * The words in the header of a table.
 *
 * <pre>{@code
 * ColumnNames.standard().with(Column.ID, "ring").with(Column.DAM, "mother")
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class ColumnNames {

    /** Columns that begin so are for whoever wrote them. */
    static final String OWN_USE = "x-";

    private static final ColumnNames STANDARD = new ColumnNames(words(), "trait: ", "locus: ");

    private final ImmutableMap<Column, String> words;
    private final String trait;
    private final String locus;

    private ColumnNames(Map<Column, String> words, String trait, String locus) {
        this.words = ImmutableMap.copyOf(words);
        this.trait = trait;
        this.locus = locus;
        Set<String> seen = new HashSet<>();
        for (String word : words.values()) {
            if (!isWord(word) || !seen.add(word) || word.startsWith(trait) || word.startsWith(locus)) {
                throw new IllegalArgumentException(
                        "\"" + word + "\" cannot be the word of a column: it is blank, begins with " + OWN_USE
                                + ", or is that of another");
            }
        }
        if (!isWord(trait.strip()) || !isWord(locus.strip()) || trait.startsWith(locus) || locus.startsWith(trait)) {
            throw new IllegalArgumentException(
                    "\"" + trait + "\" and \"" + locus + "\" cannot begin the columns of traits and of loci");
        }
    }

    private static boolean isWord(String word) {
        return !word.isEmpty() && word.equals(word.strip()) && !word.startsWith(OWN_USE);
    }

    private static Map<Column, String> words() {
        Map<Column, String> words = new EnumMap<>(Column.class);
        for (Column column : Column.values()) {
            words.put(column, column.word());
        }
        return words;
    }

    /**
     * Returns the words of the library.
     *
     * @return the words that the package's description lists
     */
    public static ColumnNames standard() {
        return STANDARD;
    }

    /**
     * Returns these names with another word for a column.
     *
     * @param column the column
     * @param word its word in the header, compared letter by letter
     * @return a copy
     * @throws IllegalArgumentException if the word is blank at either end or begins with {@code x-}, or another column has it
     */
    public ColumnNames with(Column column, String word) {
        Map<Column, String> changed = new EnumMap<>(words);
        changed.put(column, word);
        return new ColumnNames(changed, trait, locus);
    }

    /**
     * Returns these names with other beginnings for the columns of traits and of loci.
     *
     * @param beforeTrait what stands before the id of a trait, {@code "trait: "} unless changed
     * @param beforeLocus what stands before the id of a locus, {@code "locus: "} unless changed
     * @return a copy
     * @throws IllegalArgumentException if one is empty, or one begins with the other
     */
    public ColumnNames withBeginnings(String beforeTrait, String beforeLocus) {
        return new ColumnNames(words, beforeTrait, beforeLocus);
    }

    /**
     * Returns the word of a column.
     *
     * @param column the column
     * @return its word in the header
     */
    public String word(Column column) {
        return words.getOrDefault(column, column.word());
    }

    /** What stands before the id of a trait. */
    String beforeTrait() {
        return trait;
    }

    /** What stands before the id of a locus. */
    String beforeLocus() {
        return locus;
    }
}
