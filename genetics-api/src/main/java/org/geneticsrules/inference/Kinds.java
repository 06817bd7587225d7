package org.geneticsrules.inference;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.Sex;

/**
 * Animals sorted by what is known of them by themselves: their records, their sex, and of founders the population. Animals of one kind
 * share all that is calculated for one.
 */
final class Kinds {

    private static final Optional<Sex> MALE = Optional.of(Sex.MALE);

    private static final int SEXES = 3; // not known, female, male

    private static final int NONE = -1;

    /** By animal, the number of its kind. */
    private final int[] of;

    /** By kind, an animal of it. */
    private final List<Integer> examples = new ArrayList<>();

    /** By kind, what the records say of each animal of it. */
    private final List<Evidence> records = new ArrayList<>();

    private Kinds(Model model, Members members, List<Evidence> evidence) {
        this.of = new int[evidence.size()];
        int[] numbers = new int[members.recordKinds().count()];
        Arrays.fill(numbers, NONE);
        IdentityHashMap<Evidence, Integer> different = new IdentityHashMap<>();
        boolean sexed = model.distinguishesSex();
        for (int m = 0; m < of.length; m++) {
            int recorded = members.recordKind(m);
            if (numbers[recorded] == NONE) {
                numbers[recorded] = different.computeIfAbsent(evidence.get(m), key -> different.size());
                sexed |= evidence.get(m).readsSex();
            }
        }
        int[][] rows = new int[different.size()][0];
        Map<Optional<String>, Integer> origins = new HashMap<>();
        Optional<String> last = Optional.empty();
        int origin = 0;
        for (int m = 0; m < of.length; m++) {
            Member member = members.all().get(m);
            boolean male = sexed && member.sex().equals(MALE);
            int column = member.sex().isEmpty() ? 0 : male ? 2 : 1;
            if (member.isFounder()) {
                if (origin == 0 || !member.population().equals(last)) {
                    last = member.population();
                    origin = origins.computeIfAbsent(last, key -> origins.size() + 1);
                }
                column += SEXES * origin;
            }
            int number = numbers[members.recordKind(m)];
            if (rows[number].length <= column) {
                int length = rows[number].length;
                rows[number] = Arrays.copyOf(rows[number], Math.max(2 * SEXES, column + SEXES));
                Arrays.fill(rows[number], length, rows[number].length, NONE);
            }
            int[] row = rows[number];
            if (row[column] == NONE) {
                row[column] = examples.size();
                examples.add(m);
                records.add(evidence.get(m));
            }
            of[m] = row[column];
        }
    }

    /**
     * Sorts animals. Sexes are told apart only where they make a difference.
     *
     * @param model the model
     * @param members the animals
     * @param evidence what the records say of each; what is equal is the same object
     */
    static Kinds of(Model model, Members members, List<Evidence> evidence) {
        return new Kinds(model, members, evidence);
    }

    /** What the records say of animals of a kind. */
    Evidence records(int kind) {
        return records.get(kind);
    }

    /** What records say of animals of all kinds. */
    List<Evidence> records() {
        return records;
    }

    int count() {
        return examples.size();
    }

    /** The kind of an animal. */
    int of(int member) {
        return of[member];
    }

    /** All animals, those of one kind after those of another. */
    int[] sorted() {
        int[] next = new int[count() + 1];
        for (int kind : of) {
            next[kind + 1]++;
        }
        for (int kind = 0; kind < count(); kind++) {
            next[kind + 1] += next[kind];
        }
        int[] sorted = new int[of.length];
        for (int m = 0; m < of.length; m++) {
            sorted[next[of[m]]++] = m;
        }
        return sorted;
    }

    /** An animal of a kind. */
    int example(int kind) {
        return examples.get(kind);
    }
}
