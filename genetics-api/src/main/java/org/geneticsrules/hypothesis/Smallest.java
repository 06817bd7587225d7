package org.geneticsrules.hypothesis;

import com.google.common.collect.ImmutableList;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.function.Predicate;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/**
 * Finds what moves, smallest first, or proves that nothing does; see the package's description.
 *
 * <p>Not thread-safe.
 */
final class Smallest {

    /** A way to see a difference from some position on: what has to be read, and what is then weighed how. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    private record Test(BigInteger[] weights, Word word) {}

    /** What was read so far, the weights of the states it leads to, and the smallest difference that it is part of. */
    @SuppressWarnings("ArrayRecordComponent") // compared by the word alone
    private record Begun(Word prefix, int position, BigInteger[] weights, Word whole) {}

    /** Something that moves. */
    record Found(Word word, Map<Which, Map<Sex, Map<Optional<Phenotype>, BigInteger>>> looks) {}

    private final Reading reading;
    private final int animals;
    private final int[] declared;
    private final List<List<Test>> tests = new ArrayList<>();
    private final PriorityQueue<Begun> queue =
            new PriorityQueue<>(Comparator.comparing(Begun::whole, Word.SMALLEST_FIRST));

    /**
     * Prepares a search.
     *
     * @param reading the two models side by side
     * @param animals how many animals are read about
     * @param declared for each position read, that of its locus in declared order
     */
    Smallest(Reading reading, int animals, int[] declared) {
        this.reading = reading;
        this.animals = animals;
        this.declared = declared;
        Span.Work work = new Span.Work();
        tests.add(ends(work));
        for (int position = reading.positions() - 1; position >= 0; position--) {
            tests.add(0, before(position, tests.get(0), work));
        }
        enqueue(Word.empty(reading.positions(), animals), 0, reading.start());
    }

    /** The next that moves, in order; empty if there is no more. */
    Optional<Found> next(Predicate<Word> wanted) {
        while (!queue.isEmpty()) {
            Begun begun = queue.poll();
            int position = begun.position();
            if (position == reading.positions()) {
                if (wanted.test(begun.prefix())) {
                    return Optional.of(new Found(begun.prefix(), looks(begun.weights())));
                }
                continue;
            }
            List<Carried.Letter> letters = reading.letters(position);
            for (int letter = 0; letter < letters.size(); letter++) {
                enqueue(
                        begun.prefix().with(position, letter, letters.get(letter), declared[position]),
                        position + 1,
                        forwards(position, letter, begun.weights()));
            }
        }
        return Optional.empty();
    }

    private void enqueue(Word prefix, int position, BigInteger[] weights) {
        tests.get(position).stream()
                .filter(test -> product(test.weights(), weights).signum() != 0)
                .findFirst()
                .ifPresent(test -> queue.add(new Begun(prefix, position, weights, prefix.and(test.word()))));
    }

    private static BigInteger product(BigInteger[] one, BigInteger[] other) {
        BigInteger sum = BigInteger.ZERO;
        for (int i = 0; i < one.length; i++) {
            if (one[i].signum() != 0 && other[i].signum() != 0) {
                sum = sum.add(one[i].multiply(other[i]));
            }
        }
        return sum;
    }

    private BigInteger[] forwards(int position, int letter, BigInteger[] weights) {
        Reading.Steps steps = reading.steps(position, letter);
        BigInteger[] next = zeros(reading.places(position + 1).size());
        for (int from = 0; from < weights.length; from++) {
            if (weights[from].signum() != 0) {
                for (int i = 0; i < steps.to()[from].length; i++) {
                    int to = steps.to()[from][i];
                    next[to] = next[to].add(weights[from].multiply(steps.weights()[from][i]));
                }
            }
        }
        return next;
    }

    /** At the end, one model's share of a look less the other's. */
    private List<Test> ends(Span.Work work) {
        List<Reading.Place> places = reading.places(reading.positions());
        Map<List<Object>, BigInteger[]> byLook = new LinkedHashMap<>();
        for (int i = 0; i < places.size(); i++) {
            Side side = reading.side(places.get(i));
            Optional<Phenotype> look = side.look(places.get(i).state());
            if (look.isPresent()) {
                byLook.computeIfAbsent(List.of(side.sex(), look.get()), key -> zeros(places.size()))[i] =
                        side.model() == Which.BEFORE ? BigInteger.ONE : BigInteger.ONE.negate();
            }
        }
        Span span = new Span(places.size(), work);
        List<Test> found = new ArrayList<>();
        for (BigInteger[] weights : byLook.values()) {
            if (span.add(weights)) {
                found.add(new Test(weights, Word.empty(reading.positions(), animals)));
            }
        }
        return found;
    }

    /** Whatever can be told from a position on, by the smallest words that tell it. */
    private List<Test> before(int position, List<Test> after, Span.Work work) {
        List<Test> candidates = new ArrayList<>();
        List<Carried.Letter> letters = reading.letters(position);
        for (int letter : distinct(position)) {
            for (Test test : after) {
                Word word = test.word().with(position, letter, letters.get(letter), declared[position]);
                candidates.add(new Test(test.weights(), word));
            }
        }
        candidates.sort(Comparator.comparing(Test::word, Word.SMALLEST_FIRST));
        Span span = new Span(reading.places(position).size(), work);
        List<Test> found = new ArrayList<>();
        for (Test candidate : candidates) {
            if (span.isFull()) {
                break;
            }
            BigInteger[] weights = backwards(position, candidate.word().letters()[position], candidate.weights(), work);
            if (span.add(weights)) {
                found.add(new Test(weights, candidate.word()));
            }
        }
        return found;
    }

    /** Of letters that do the same, the smallest. */
    private List<Integer> distinct(int position) {
        List<Carried.Letter> letters = reading.letters(position);
        Word none = Word.empty(reading.positions(), animals);
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < letters.size(); i++) {
            order.add(i);
        }
        order.sort(Comparator.comparing(
                letter -> none.with(position, letter, letters.get(letter), declared[position]), Word.SMALLEST_FIRST));
        List<Integer> kept = new ArrayList<>();
        for (int letter : order) {
            Reading.Steps steps = reading.steps(position, letter);
            if (kept.stream().noneMatch(other -> reading.steps(position, other).doesTheSame(steps))) {
                kept.add(letter);
            }
        }
        return kept;
    }

    private BigInteger[] backwards(int position, int letter, BigInteger[] weights, Span.Work work) {
        Reading.Steps steps = reading.steps(position, letter);
        BigInteger[] before = zeros(reading.places(position).size());
        for (int from = 0; from < before.length; from++) {
            for (int i = 0; i < steps.to()[from].length; i++) {
                BigInteger weight = weights[steps.to()[from][i]];
                if (weight.signum() != 0) {
                    before[from] = before[from].add(weight.multiply(steps.weights()[from][i]));
                }
            }
            work.add(steps.to()[from].length);
        }
        return Span.primitive(before);
    }

    private Map<Which, Map<Sex, Map<Optional<Phenotype>, BigInteger>>> looks(BigInteger[] weights) {
        Map<Which, Map<Sex, Map<Optional<Phenotype>, BigInteger>>> looks = new LinkedHashMap<>();
        List<Reading.Place> places = reading.places(reading.positions());
        for (int i = 0; i < weights.length; i++) {
            if (weights[i].signum() > 0) {
                Side side = reading.side(places.get(i));
                looks.computeIfAbsent(side.model(), key -> new LinkedHashMap<>())
                        .computeIfAbsent(side.sex(), key -> new LinkedHashMap<>())
                        .merge(side.look(places.get(i).state()), weights[i], BigInteger::add);
            }
        }
        return looks;
    }

    private static BigInteger[] zeros(int size) {
        BigInteger[] zeros = new BigInteger[size];
        Arrays.fill(zeros, BigInteger.ZERO);
        return zeros;
    }

    /** The letters of a word. */
    ImmutableList<Carried.Letter> read(Word word) {
        ImmutableList.Builder<Carried.Letter> letters = ImmutableList.builder();
        for (int position = 0; position < word.letters().length; position++) {
            letters.add(reading.letters(position).get(word.letters()[position]));
        }
        return letters.build();
    }
}
