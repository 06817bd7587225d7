package org.geneticsrules.evidence;

import java.util.Arrays;
import java.util.Optional;

/**
 * The strength of the support for a statement, strongest first; this declared order is the published total order.
 *
 * <p>A grade tells what kind of support there is, not how likely the statement is to be true.
 */
public enum Grade {
    /** Two or more independent data sets agree. */
    PROVEN("proven", "two or more independent data sets agree"),
    /** A causal variant was found by one laboratory and its mechanism is established in other species. */
    MOLECULAR("molecular", "a variant was found by one laboratory; the mechanism is established in other species"),
    /** One published study. */
    ONE_STUDY("one study", "one published study"),
    /** Pedigrees scored by look, without molecular evidence. */
    BREEDING_DATA("breeding data", "pedigrees scored by look"),
    /** Common practice, attested in at least two public sources independent of each other. */
    PRACTICE("practice", "common practice, attested by at least two independent public sources"),
    /** An analogy, an assumption, a single source, or no stated evidence at all. */
    CONJECTURE("conjecture", "an analogy, an assumption or a single source");

    private final String word;
    private final String meaning;

    Grade(String word, String meaning) {
        this.word = word;
        this.meaning = meaning;
    }

    /**
     * Returns the word for this grade in documents and answers.
     *
     * @return for example {@code one study}
     */
    public String word() {
        return word;
    }

    /**
     * Returns what the grade means, as a phrase.
     *
     * @return a phrase without a full stop
     */
    public String meaning() {
        return meaning;
    }

    /**
     * Tells whether this grade is weaker than another.
     *
     * @param other the grade to compare with
     * @return true if the other is stronger
     */
    public boolean isWeakerThan(Grade other) {
        return compareTo(other) > 0;
    }

    /**
     * Returns the weaker of two grades: what rests on both rests on the weaker.
     *
     * @param other the other grade
     * @return the weaker
     */
    public Grade weaker(Grade other) {
        return isWeakerThan(other) ? this : other;
    }

    /**
     * Finds the grade with the given word.
     *
     * @param word a word as printed by {@link #word()}
     * @return the grade, or empty if no grade has this word
     */
    public static Optional<Grade> of(String word) {
        return Arrays.stream(values()).filter(grade -> grade.word.equals(word)).findFirst();
    }

    /** Returns {@link #word()}. */
    @Override
    public String toString() {
        return word;
    }
}
