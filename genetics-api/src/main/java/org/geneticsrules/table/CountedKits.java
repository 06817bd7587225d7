package org.geneticsrules.table;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/**
 * Gives ids to kits that a row counts and does not name: the id of the litter, a stroke and a number.
 *
 * <p>No id that stands in the table, nor one that was given before, is given again; the next number is taken then. Where the id of a litter
 * is so long that nothing would fit behind it, its end is left out.
 */
final class CountedKits {

    /** Most kits that all rows together may count; as many as a table may have rows. */
    static final int MOST = 1_000_000;

    private static final int LONGEST = 80; // characters of an id

    private final Set<String> taken = new HashSet<>();
    private final Map<String, Integer> numbers = new HashMap<>();
    private int counted;

    /** Notes an id that stands in the table. */
    void take(String id) {
        taken.add(id);
    }

    /** Notes that so many more are counted; tells whether that many may be. */
    boolean add(int kits) {
        boolean fits = kits <= MOST - counted;
        counted += fits ? kits : 0;
        return fits;
    }

    /** An id for one more kit of a litter. */
    String next(String litter) {
        String id;
        do {
            String number = "/" + numbers.merge(litter, 1, Integer::sum);
            int most = LONGEST - number.length();
            id = litter.codePointCount(0, litter.length()) <= most
                    ? litter + number
                    : litter.substring(0, litter.offsetByCodePoints(0, most)) + number;
        } while (!taken.add(id));
        return id;
    }
}
