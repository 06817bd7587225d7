package org.geneticsrules.pedigree;

/** The spelling of ids of individuals and litters. */
final class Ids {

    /** What an id must be, for messages. */
    static final String EXPECTED =
            "1 to 80 characters without control characters, not beginning or ending with a blank, not beginning with x-";

    private static final int LONGEST = 80;

    private Ids() {}

    static boolean isId(String id) {
        return !id.isEmpty()
                && id.length() <= LONGEST
                && !id.startsWith("x-")
                && !blank(id.codePointAt(0))
                && !blank(id.codePointBefore(id.length()))
                && id.codePoints().allMatch(Ids::isAllowed);
    }

    private static boolean isAllowed(int c) {
        return !Character.isISOControl(c)
                && Character.getType(c) != Character.SURROGATE
                && Character.getType(c) != Character.LINE_SEPARATOR
                && Character.getType(c) != Character.PARAGRAPH_SEPARATOR;
    }

    /** White space of any script, and the no-break spaces and the byte order mark that spreadsheets leave behind. */
    private static boolean blank(int c) {
        return Character.isWhitespace(c) || Character.isSpaceChar(c) || c == 0xFEFF;
    }

    /** Refuses what is no id. */
    static void check(String what, String id) {
        if (!isId(id)) {
            throw new IllegalArgumentException("\"" + id + "\" cannot be the id of " + what + "; expected " + EXPECTED);
        }
    }
}
