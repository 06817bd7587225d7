package org.geneticsrules.document;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;

/**
 * What is otherwise between two versions of a document, such as two answers to one question.
 *
 * <pre>{@code
 * Differences moved = Differences.between(lastYear, today);
 * moved.all().forEach(one -> System.out.println(one.kind().word() + " " + one.place()));
 * }</pre>
 *
 * <p>How it is found stands in the package's description. Immutable and thread-safe.
 *
 * @param all the differences, in the order of the documents
 * @param identical whether the two have one canonical text, so that not even a number differs within the tolerance
 * @param tolerance by how much numbers may differ, relative to the larger
 */
public record Differences(List<Difference> all, boolean identical, double tolerance) {

    /**
     * One in the last of twelve digits, to which documents of this library round what is not exact. Java leaves the last bit of logarithms
     * and powers to the platform, so that much may differ from one machine to another without anything having moved.
     */
    public static final double USUAL_TOLERANCE = 1e-11;

    /**
     * Copies the list.
     *
     * @param all the differences
     * @param identical whether the two have one canonical text
     * @param tolerance by how much numbers may differ
     */
    public Differences {
        all = ImmutableList.copyOf(all);
    }

    /**
     * Compares two documents with the usual tolerance.
     *
     * @param before the first
     * @param after the second
     * @return what is otherwise in the second
     */
    public static Differences between(Node before, Node after) {
        return between(before, after, USUAL_TOLERANCE);
    }

    /**
     * Compares two documents.
     *
     * @param before the first
     * @param after the second
     * @param tolerance by how much numbers may differ, relative to the larger of the two: 0 to less than 1
     * @return what is otherwise in the second
     * @throws IllegalArgumentException if the tolerance is out of range
     */
    public static Differences between(Node before, Node after, double tolerance) {
        if (!(tolerance >= 0 && tolerance < 1)) {
            throw new IllegalArgumentException("a tolerance is 0 to less than 1, but was " + tolerance);
        }
        boolean identical = Canonical.text(before).equals(Canonical.text(after));
        List<Difference> found = new ArrayList<>();
        if (!identical) {
            new TreeComparison(tolerance, found).compare(Spot.ROOT, before, after);
        }
        return new Differences(found, identical, tolerance);
    }

    /**
     * Tells whether nothing is otherwise but numbers within the tolerance.
     *
     * @return true if there is no difference
     */
    public boolean isEmpty() {
        return all.isEmpty();
    }
}
