package org.geneticsrules.json;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The kinds of document that can be read and written. */
public enum DocumentKind {
    /** Traits with their states. */
    CATALOGUE,
    /** Rules of inheritance. */
    MODEL,
    /** Cautions with what raises them. */
    CAUTIONS,
    /** What is otherwise in a model. */
    PATCH,
    /** Individuals, litters and corrections. */
    PEDIGREE,
    /** What the people of one region call what they see. */
    VOCABULARY,
    /** A question with all that its answer hangs on, and the answer. */
    ANALYSIS;

    /**
     * Returns the word that a document states as its {@code kind}.
     *
     * @return for example {@code model}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * Finds a kind.
     *
     * @param word a word as returned by {@link #word()}
     * @return the kind, or empty if there is none of this word
     */
    public static Optional<DocumentKind> of(String word) {
        return Arrays.stream(values()).filter(kind -> kind.word().equals(word)).findFirst();
    }

    static List<String> words() {
        return Arrays.stream(values()).map(DocumentKind::word).toList();
    }
}
