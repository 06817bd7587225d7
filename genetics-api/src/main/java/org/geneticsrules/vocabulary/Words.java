package org.geneticsrules.vocabulary;

import java.text.Normalizer;
import java.util.Locale;
import java.util.regex.Pattern;

/** The spelling of names. Stateless and thread-safe. */
final class Words {

    static final String EXPECTED =
            "1 to 80 characters without control characters, not beginning or ending with a blank, not beginning with x-";

    private static final String EDGE = "[^\\p{Cc}\\p{Cs}\\p{Z}\\x{FEFF}]";

    /** The schema has the same pattern. */
    private static final Pattern WORD =
            Pattern.compile("(?!x-)" + EDGE + "(?:[^\\p{Cc}\\p{Cs}\\p{Zl}\\p{Zp}]{0,78}" + EDGE + ")?");

    private static final Pattern BLANKS = Pattern.compile("[\\s\\p{Z}]+");

    private Words() {}

    static boolean isWord(String text) {
        return WORD.matcher(text).matches();
    }

    /** What two spellings of one word have in common: neither capitals nor blanks nor the composition of accents make another word. */
    static String folded(String text) {
        String composed = Normalizer.normalize(text, Normalizer.Form.NFC);
        String even = BLANKS.matcher(composed).replaceAll(" ").strip();
        return even.toUpperCase(Locale.ROOT).toLowerCase(Locale.ROOT);
    }
}
