package org.geneticsrules.trait;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** What a progressing trait counts from birth on. */
public enum Clock {
    /** Moults since the juvenile coat, which is moult 0. */
    MOULT,
    /** Weeks of age, from 0. */
    WEEK;

    /**
     * Returns the words of all clocks.
     *
     * @return {@code moult}, {@code week}
     */
    public static List<String> words() {
        return Stream.of(values()).map(Clock::word).toList();
    }

    /**
     * Finds a clock by its word.
     *
     * @param word a word
     * @return the clock, or empty if the word names none
     */
    public static Optional<Clock> of(String word) {
        int position = words().indexOf(word);
        return position < 0 ? Optional.empty() : Optional.of(values()[position]);
    }

    /**
     * Returns the word for this clock in documents.
     *
     * @return {@code moult} or {@code week}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
