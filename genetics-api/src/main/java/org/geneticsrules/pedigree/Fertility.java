package org.geneticsrules.pedigree;

import com.google.common.collect.ImmutableList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Whether an individual can have young from now on. It says nothing of young that it had before, so a neutered animal may be a parent.
 */
public enum Fertility {
    /** Nothing is recorded. */
    UNKNOWN("unknown"),
    /** Known to be able to have young. */
    FERTILE("fertile"),
    /** Known to have no young, for whatever reason. */
    STERILE("sterile"),
    /** A male that mates but sires no young: his sperm ducts are cut. */
    VASECTOMISED("vasectomised"),
    /** A female that was spayed or a male that was castrated. */
    NEUTERED("neutered");

    private static final List<String> WORDS =
            Arrays.stream(values()).map(Fertility::word).collect(ImmutableList.toImmutableList());

    private final String word;

    Fertility(String word) {
        this.word = word;
    }

    /**
     * Returns the word for this status in documents.
     *
     * @return for example {@code neutered}
     */
    public String word() {
        return word;
    }

    /**
     * Returns the words of all statuses.
     *
     * @return {@code unknown}, {@code fertile}, {@code sterile}, {@code vasectomised}, {@code neutered}
     */
    public static List<String> words() {
        return WORDS;
    }

    /**
     * Finds a status by its word.
     *
     * @param word a word
     * @return the status, or empty if the word names none
     */
    public static Optional<Fertility> of(String word) {
        int position = WORDS.indexOf(word);
        return position < 0 ? Optional.empty() : Optional.of(values()[position]);
    }

    /**
     * Tells whether young are ruled out.
     *
     * @return true for sterile, vasectomised and neutered animals
     */
    public boolean excludesYoung() {
        return this == STERILE || this == VASECTOMISED || this == NEUTERED;
    }
}
