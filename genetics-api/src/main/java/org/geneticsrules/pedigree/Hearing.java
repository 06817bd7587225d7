package org.geneticsrules.pedigree;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;

/** What a hearing test found of one ear. */
public enum Hearing {
    /** The ear responds to sound. */
    HEARS("hears"),
    /** The ear does not respond. */
    DEAF("deaf"),
    /** The ear was not tested, or the result could not be judged. */
    NOT_JUDGED("not judged");

    private final String word;

    Hearing(String word) {
        this.word = word;
    }

    /**
     * Returns the word for this result in documents.
     *
     * @return {@code hears}, {@code deaf} or {@code not judged}
     */
    public String word() {
        return word;
    }

    /**
     * Returns the words of all results.
     *
     * @return {@code hears}, {@code deaf}, {@code not judged}
     */
    public static List<String> words() {
        return ImmutableList.of(HEARS.word, DEAF.word, NOT_JUDGED.word);
    }

    /**
     * Finds a result by its word.
     *
     * @param word a word
     * @return the result, or empty if the word names none
     */
    public static Optional<Hearing> of(String word) {
        int position = words().indexOf(word);
        return position < 0 ? Optional.empty() : Optional.of(values()[position]);
    }
}
