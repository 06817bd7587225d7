package org.geneticsrules.trait;

import java.util.regex.Pattern;
import org.geneticsrules.problem.Problems;

/**
 * The spelling of names of traits, states, expressions, cases and masks: plain words, so that the text form of a phenotype can be
 * read back and a name can stand in a sentence. Stateless and thread-safe.
 */
public final class PlainWords {

    private static final Pattern WORDS =
            Pattern.compile("(?!x-)[\\p{L}\\p{N}](?:[\\p{L}\\p{N} .'-]{0,78}[\\p{L}\\p{N}.'])?");

    private PlainWords() {}

    /**
     * Tells whether a name is made of plain words.
     *
     * @param name a name
     * @return true if it is 1 to 80 letters, digits, spaces, hyphens, points and apostrophes, does not begin or
     *     end in a space, and does not begin with {@code x-}, which documents leave to their authors' own use
     */
    public static boolean are(String name) {
        return WORDS.matcher(name).matches();
    }

    /**
     * Reports a name that is not made of plain words.
     *
     * @param name the name
     * @param what what it names
     * @param pointer where it stands
     * @param problems where to report
     */
    public static void check(String name, String what, String pointer, Problems problems) {
        if (!are(name)) {
            problems.add(
                    "bad-name",
                    pointer,
                    "\"" + name + "\" cannot name a " + what,
                    "1 to 80 letters, digits, spaces, hyphens, points or apostrophes, not beginning with x-");
        }
    }
}
