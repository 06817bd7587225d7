package org.geneticsrules.pedigree;

import java.util.regex.Pattern;

/** The spelling of ids of individuals and litters, and of the names of populations and loci. */
final class Ids {

    /** What an id must be, for messages. */
    static final String EXPECTED =
            "1 to 80 characters without control characters, not beginning or ending with a blank, not beginning with x-";

    /** Blanks are those of any script, and the byte order mark that spreadsheets leave behind. The schema has the same pattern. */
    private static final String EDGE = "[^\\p{Cc}\\p{Cs}\\p{Z}\\x{FEFF}]";

    private static final Pattern ID =
            Pattern.compile("(?!x-)" + EDGE + "(?:[^\\p{Cc}\\p{Cs}\\p{Zl}\\p{Zp}]{0,78}" + EDGE + ")?");

    private Ids() {}

    static boolean isId(String id) {
        return ID.matcher(id).matches();
    }

    /** Refuses what is no id. */
    static void check(String what, String id) {
        if (!isId(id)) {
            throw new IllegalArgumentException("\"" + id + "\" cannot be the id of " + what + "; expected " + EXPECTED);
        }
    }
}
