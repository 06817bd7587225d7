package org.geneticsrules.trait;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.geneticsrules.problem.TooLargeException;
import org.jspecify.annotations.Nullable;

/**
 * A set of points of a {@link BoxSpace}, kept as disjoint boxes; a box is a product of one set of values per variable.
 *
 * <p>The points are never listed: a set over sixty loci costs as much as its boxes. Equality is equality of the sets of points,
 * whatever the boxes.
 *
 * <p>Immutable and thread-safe.
 */
public final class BoxSet {

    /** More boxes than this are not a description anybody could read or an engine should carry. */
    private static final int MOST_BOXES = 200_000;

    /** Sets of few boxes in the end may take many comparisons on the way; this many take about a second. */
    private static final long MOST_COMPARISONS = 10_000_000;

    private final BoxSpace space;

    /** Disjoint boxes, each with the allowed values of every variable. The bit sets are never changed once stored. */
    private final ImmutableList<BitSet[]> boxes;

    BoxSet(BoxSpace space, ImmutableList<BitSet[]> boxes) {
        this.space = space;
        this.boxes = boxes;
    }

    /**
     * Returns the space of this set.
     *
     * @return the variables with all their values
     */
    public BoxSpace space() {
        return space;
    }

    /**
     * Tells whether the set has no point.
     *
     * @return true if empty
     */
    public boolean isEmpty() {
        return boxes.isEmpty();
    }

    /**
     * Returns the boxes.
     *
     * @return disjoint conditions that together make up the set; a variable without restriction is not named
     */
    public List<Condition> boxes() {
        ImmutableList.Builder<Condition> conditions = ImmutableList.builder();
        for (BitSet[] box : boxes) {
            ImmutableMap.Builder<String, Allowed> variables = ImmutableMap.builder();
            for (int v = 0; v < box.length; v++) {
                BitSet bits = box[v];
                List<String> values = space.values(v);
                if (bits.cardinality() < values.size()) {
                    variables.put(
                            space.names().get(v),
                            Allowed.only(bits.stream().mapToObj(values::get).toArray(String[]::new)));
                }
            }
            conditions.add(new Condition(variables.buildOrThrow()));
        }
        return conditions.build();
    }

    /**
     * Returns the points in both sets.
     *
     * @param other a set of the same space
     * @return the intersection
     * @throws TooLargeException if it needs too many boxes or comparisons
     */
    public BoxSet and(BoxSet other) {
        requireSameSpace(other);
        limitWork((long) boxes.size() * other.boxes.size());
        List<BitSet[]> common = new ArrayList<>();
        for (BitSet[] mine : boxes) {
            for (BitSet[] theirs : other.boxes) {
                BitSet @Nullable [] box = intersect(mine, theirs);
                if (box != null) {
                    add(common, box);
                }
            }
        }
        return new BoxSet(space, ImmutableList.copyOf(common));
    }

    /**
     * Returns the points of this set that are not in the other.
     *
     * @param other a set of the same space
     * @return the difference
     * @throws TooLargeException if it needs too many boxes or comparisons
     */
    public BoxSet minus(BoxSet other) {
        requireSameSpace(other);
        List<BitSet[]> left = new ArrayList<>(boxes);
        long comparisons = 0;
        for (BitSet[] taken : other.boxes) {
            comparisons += left.size();
            limitWork(comparisons);
            List<BitSet[]> next = new ArrayList<>();
            for (BitSet[] box : left) {
                subtract(box, taken, next);
            }
            left = next;
        }
        return new BoxSet(space, ImmutableList.copyOf(left));
    }

    /**
     * Returns the points in either set.
     *
     * @param other a set of the same space
     * @return the union
     * @throws TooLargeException if it needs too many boxes or comparisons
     */
    public BoxSet or(BoxSet other) {
        List<BitSet[]> all = new ArrayList<>(boxes);
        all.addAll(other.minus(this).boxes);
        return new BoxSet(space, ImmutableList.copyOf(all));
    }

    /**
     * Tells whether a point belongs to the set.
     *
     * @param point the value of every variable of the space
     * @return true if one of the boxes holds it
     * @throws IllegalArgumentException if a variable has no value or an unknown one
     */
    public boolean contains(Map<String, String> point) {
        int[] values = new int[space.names().size()];
        for (int v = 0; v < values.length; v++) {
            String value = point.get(space.names().get(v));
            values[v] = value == null ? -1 : space.values(v).indexOf(value);
            if (values[v] < 0) {
                throw new IllegalArgumentException(
                        "\"" + value + "\" is no value of " + space.names().get(v) + ": " + space.values(v));
            }
        }
        return boxes.stream().anyMatch(box -> holds(box, values));
    }

    /**
     * Returns the number of points.
     *
     * @return an exact count, which may be far larger than the number of boxes
     */
    public BigInteger size() {
        BigInteger total = BigInteger.ZERO;
        for (BitSet[] box : boxes) {
            BigInteger points = BigInteger.ONE;
            for (int v = 0; v < box.length; v++) {
                points = points.multiply(BigInteger.valueOf(box[v].cardinality()));
            }
            total = total.add(points);
        }
        return total;
    }

    ImmutableList<BitSet[]> boxList() {
        return boxes;
    }

    private static boolean holds(BitSet[] box, int[] values) {
        for (int v = 0; v < values.length; v++) {
            if (!box[v].get(values[v])) {
                return false;
            }
        }
        return true;
    }

    private static boolean overlap(BitSet[] a, BitSet[] b) {
        for (int v = 0; v < a.length; v++) {
            if (!a[v].intersects(b[v])) {
                return false;
            }
        }
        return true;
    }

    private static BitSet @Nullable [] intersect(BitSet[] a, BitSet[] b) {
        if (!overlap(a, b)) {
            return null;
        }
        BitSet[] box = new BitSet[a.length];
        for (int v = 0; v < box.length; v++) {
            box[v] = common(a[v], b[v]);
        }
        return box;
    }

    /** Splits what is left of a box variable by variable: values outside the taken set, then the rest goes on within it. */
    private void subtract(BitSet[] box, BitSet[] taken, List<BitSet[]> into) {
        if (!overlap(box, taken)) {
            add(into, box);
            return;
        }
        BitSet[] within = Arrays.copyOf(box, box.length);
        for (int v = 0; v < box.length; v++) {
            if (!isWithin(box[v], taken[v])) {
                BitSet outside = (BitSet) box[v].clone();
                outside.andNot(taken[v]);
                BitSet[] piece = Arrays.copyOf(within, within.length);
                piece[v] = outside;
                add(into, piece);
                within[v] = common(box[v], taken[v]);
            }
        }
    }

    /** Values are never changed once they are in a box, so boxes share them: most variables of most boxes allow everything. */
    private static BitSet common(BitSet a, BitSet b) {
        if (isWithin(a, b)) {
            return a;
        }
        BitSet both = (BitSet) a.clone();
        both.and(b);
        return both;
    }

    @SuppressWarnings("ReferenceEquality") // identity first: shared values need not be gone through
    private static boolean isWithin(BitSet some, BitSet others) {
        if (some == others) {
            return true;
        }
        for (int value = some.nextSetBit(0); value >= 0; value = some.nextSetBit(value + 1)) {
            if (!others.get(value)) {
                return false;
            }
        }
        return true;
    }

    private static void limitWork(long comparisons) {
        if (comparisons > MOST_COMPARISONS) {
            throw new TooLargeException(
                    "comparisons of boxes",
                    comparisons,
                    MOST_COMPARISONS,
                    "ask about fewer traits or simplify the rules that join loci.");
        }
    }

    private static void add(List<BitSet[]> boxes, BitSet[] box) {
        if (boxes.size() >= MOST_BOXES) {
            throw new TooLargeException(
                    "boxes",
                    boxes.size() + 1.0,
                    MOST_BOXES,
                    "ask about fewer traits or simplify the rules that join loci.");
        }
        boxes.add(box);
    }

    private void requireSameSpace(BoxSet other) {
        if (!space.equals(other.space)) {
            throw new IllegalArgumentException(
                    "the sets range over different variables: " + space + " and " + other.space);
        }
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof BoxSet that
                && space.equals(that.space)
                && minus(that).isEmpty()
                && that.minus(this).isEmpty();
    }

    @Override
    public int hashCode() {
        return 31 * space.hashCode() + size().hashCode();
    }

    /** Returns the boxes joined by {@code or}; {@code nothing} for the empty set. */
    @Override
    public String toString() {
        return isEmpty() ? "nothing" : boxes().stream().map(Condition::toString).collect(Collectors.joining(" | "));
    }
}
