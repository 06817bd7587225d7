package org.geneticsrules.problem;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** Finds the known name that a misspelt one most likely meant. */
public final class Nearest {

    private Nearest() {}

    /**
     * Returns the known name with the smallest edit distance (insert, delete, replace, swap neighbours), if it is close.
     *
     * <p>Close means at most a third of the longer name's letters differ, or one letter in short names. Capitals count as a
     * smaller difference than other letters, so {@code hue} is found for {@code Hue}, and of {@code c} and {@code C} the second is
     * nearer to {@code C'}. Ties go to the first in the given order.
     *
     * @param name the name that is not known
     * @param known the names that are
     * @return the nearest, or empty if none is close
     */
    public static Optional<String> to(String name, Collection<String> known) {
        String best = null;
        int bestDistance = Integer.MAX_VALUE;
        for (String candidate : known) {
            int allowed = Math.max(1, Math.max(name.length(), candidate.length()) / 3);
            int folded = distance(name.toLowerCase(Locale.ROOT), candidate.toLowerCase(Locale.ROOT));
            int distance = 2 * folded + (distance(name, candidate) > folded ? 1 : 0);
            if (folded <= allowed && distance < bestDistance) {
                best = candidate;
                bestDistance = distance;
            }
        }
        return Optional.ofNullable(best);
    }

    /** Optimal string alignment distance by dynamic programming over prefixes. */
    private static int distance(String a, String b) {
        int[][] d = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            for (int j = 0; j <= b.length(); j++) {
                if (i == 0 || j == 0) {
                    d[i][j] = i + j;
                    continue;
                }
                int replace = d[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                d[i][j] = Math.min(replace, 1 + Math.min(d[i - 1][j], d[i][j - 1]));
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
                    d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
                }
            }
        }
        return d[a.length()][b.length()];
    }
}
