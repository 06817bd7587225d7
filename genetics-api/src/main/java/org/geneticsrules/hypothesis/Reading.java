package org.geneticsrules.hypothesis;

import com.google.common.collect.ImmutableList;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.TooLargeException;

/**
 * All that the sides may go through: the states that can be reached before each position, and the steps between them for each letter,
 * in whole numbers.
 *
 * <p>The steps of one letter are over one common total, the same for all sides, so that sums over sides compare.
 */
final class Reading {

    private static final int MOST_STEPS = 2_000_000;

    /** A state of one of the sides. */
    record Place(int side, Side.State state) {}

    /** For each state before a position, the states after it and the weights of the steps there. */
    @SuppressWarnings("ArrayRecordComponent") // compared by contents where that matters
    record Steps(int[][] to, BigInteger[][] weights, BigInteger total) {
        boolean doesTheSame(Steps other) {
            return total.equals(other.total)
                    && Arrays.deepEquals(to, other.to)
                    && Arrays.deepEquals(weights, other.weights);
        }
    }

    private final List<? extends Side> sides;
    private final List<? extends List<Carried.Letter>> letters;
    private final List<List<Place>> places = new ArrayList<>();
    private final List<List<Steps>> steps = new ArrayList<>();
    private final BigInteger[] start;
    private int count;

    /**
     * Goes through all that may be read.
     *
     * @param sides the automata, which read together
     * @param letters for each position, all that may be read there
     */
    Reading(List<? extends Side> sides, List<? extends List<Carried.Letter>> letters) {
        this.sides = sides;
        this.letters = letters;
        Map<Place, Integer> numbers = new LinkedHashMap<>();
        List<Map<Place, Probability>> first = new ArrayList<>();
        Map<Place, Probability> begun = new LinkedHashMap<>();
        for (int side = 0; side < sides.size(); side++) {
            int number = side;
            sides.get(side).start().forEach((state, chance) -> begun.put(new Place(number, state), chance));
        }
        first.add(begun);
        begun.keySet().forEach(place -> numbers.put(place, numbers.size()));
        places.add(ImmutableList.copyOf(numbers.keySet()));
        start = whole(first, numbers).weights()[0];
        for (int position = 0; position < letters.size(); position++) {
            explore(position);
        }
    }

    private void explore(int position) {
        List<List<Map<Place, Probability>>> found = new ArrayList<>();
        Map<Place, Integer> numbers = new LinkedHashMap<>();
        for (Carried.Letter letter : letters.get(position)) {
            List<Map<Place, Probability>> rows = new ArrayList<>();
            for (Place from : places.get(position)) {
                Map<Place, Probability> row = new LinkedHashMap<>();
                sides.get(from.side()).read(position, from.state(), letter).forEach((state, chance) -> {
                    if (!chance.isZero()) {
                        Place to = new Place(from.side(), state);
                        row.put(to, chance);
                        numbers.putIfAbsent(to, numbers.size());
                    }
                });
                rows.add(row);
                count += row.size();
            }
            if (count > MOST_STEPS) {
                throw new TooLargeException(
                        "steps of reading both models side by side",
                        (double) count * letters.size() / (position + 1),
                        MOST_STEPS,
                        "ask about fewer traits, or about genotypes alone.");
            }
            found.add(rows);
        }
        places.add(ImmutableList.copyOf(numbers.keySet()));
        steps.add(found.stream().map(rows -> whole(rows, numbers)).toList());
    }

    /** Chances over their least common denominator. */
    private static Steps whole(List<Map<Place, Probability>> rows, Map<Place, Integer> numbers) {
        BigInteger common = BigInteger.ONE;
        for (Map<Place, Probability> row : rows) {
            for (Probability chance : row.values()) {
                common = common.divide(common.gcd(chance.denominator())).multiply(chance.denominator());
            }
        }
        int[][] to = new int[rows.size()][];
        BigInteger[][] weights = new BigInteger[rows.size()][];
        for (int i = 0; i < to.length; i++) {
            to[i] = rows.get(i).keySet().stream().mapToInt(numbers::get).toArray();
            BigInteger total = common;
            weights[i] = rows.get(i).values().stream()
                    .map(chance -> chance.numerator().multiply(total.divide(chance.denominator())))
                    .toArray(BigInteger[]::new);
        }
        return new Steps(to, weights, common);
    }

    int positions() {
        return letters.size();
    }

    List<Carried.Letter> letters(int position) {
        return ImmutableList.copyOf(letters.get(position));
    }

    /** The states before a position; after the last, the ends. */
    List<Place> places(int position) {
        return places.get(position);
    }

    /** The steps of a letter. */
    Steps steps(int position, int letter) {
        return steps.get(position).get(letter);
    }

    Side side(Place place) {
        return sides.get(place.side());
    }

    /** The weights of the states before anything is read. */
    BigInteger[] start() {
        return start;
    }
}
