package org.geneticsrules.pedigree;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;

/**
 * Individuals sorted by what was recorded of them: those of one kind looked alike at the same stages and in the same light, and the same was reported of their
 * loci, on whatever day. What follows from records by themselves is worked out once for each kind.
 *
 * <p>Of kind 0 are those of whom nothing was recorded: no look and no test.
 *
 * <p>Immutable and thread-safe.
 */
public final class RecordKinds {

    private final int[] of;
    private final List<Optional<Individual>> examples = new ArrayList<>();

    private record Look(LifeStage stage, Optional<String> light, Set<Phenotype> looks) {}

    private record Reported(String locus, Set<String> result, Probability error) {}

    private RecordKinds(Collection<Individual> individuals) {
        this.of = new int[individuals.size()];
        examples.add(Optional.empty());
        Map<List<Object>, Integer> numbers = new HashMap<>();
        int next = 0;
        for (Individual one : individuals) {
            int kind = 0;
            if (!one.observations().isEmpty() || !one.tests().isEmpty()) {
                kind = numbers.computeIfAbsent(key(one), key -> {
                    examples.add(Optional.of(one));
                    return examples.size() - 1;
                });
            }
            of[next++] = kind;
        }
    }

    private static List<Object> key(Individual one) {
        List<Object> key = new ArrayList<>(2);
        one.observations().forEach(seen -> key.add(new Look(seen.stage(), seen.light(), seen.looks())));
        one.tests().forEach(test -> key.add(new Reported(test.locus(), test.result(), test.error())));
        return key;
    }

    /**
     * Sorts individuals.
     *
     * @param individuals the individuals
     * @return their kinds, by position among these
     */
    public static RecordKinds of(Collection<Individual> individuals) {
        return new RecordKinds(individuals);
    }

    /**
     * Returns how many kinds there are.
     *
     * @return their number, at least 1
     */
    public int count() {
        return examples.size();
    }

    /**
     * Returns the kind of an individual.
     *
     * @param position its position
     * @return the number of its kind
     */
    public int of(int position) {
        return of[position];
    }

    /**
     * Returns an individual of a kind.
     *
     * @param kind number of a kind
     * @return the first of it; none of kind 0
     */
    public Optional<Individual> example(int kind) {
        return examples.get(kind);
    }
}
