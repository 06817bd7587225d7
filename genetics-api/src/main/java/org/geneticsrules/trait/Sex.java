package org.geneticsrules.trait;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The sex of an animal, as far as inheritance knows it. Conditions name it by the variable {@link #VARIABLE}. */
public enum Sex {
    /** Makes eggs. */
    FEMALE,
    /** Makes sperm. */
    MALE;

    /** The variable by which conditions read the sex; no locus and no trait may have this name. */
    public static final String VARIABLE = "sex";

    /**
     * Returns the words of both sexes.
     *
     * @return {@code female}, {@code male}
     */
    public static List<String> words() {
        return ImmutableList.of(FEMALE.word(), MALE.word());
    }

    /**
     * Finds a sex by its word.
     *
     * @param word a word
     * @return the sex, or empty if the word names none
     */
    public static Optional<Sex> of(String word) {
        int position = words().indexOf(word);
        return position < 0 ? Optional.empty() : Optional.of(values()[position]);
    }

    /**
     * Returns the word for this sex in documents and conditions.
     *
     * @return {@code female} or {@code male}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * Returns the other sex.
     *
     * @return the sex of a mate
     */
    public Sex other() {
        return this == FEMALE ? MALE : FEMALE;
    }
}
