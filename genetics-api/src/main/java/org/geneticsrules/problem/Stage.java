package org.geneticsrules.problem;

import java.util.Locale;

/** The stages in which input is checked; a stage is reached only if the earlier ones found nothing. */
public enum Stage {
    /** The text cannot be read as its file format; only the first such problem is reported. */
    SYNTAX,
    /** A part is missing, unknown, of the wrong kind, or too large. */
    SHAPE,
    /** A name refers to nothing. */
    REFERENCES,
    /** The parts are sound but contradict each other or leave something undecided. */
    MEANING;

    /**
     * Returns the word for this stage.
     *
     * @return for example {@code references}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
