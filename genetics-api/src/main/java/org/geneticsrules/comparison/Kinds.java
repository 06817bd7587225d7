package org.geneticsrules.comparison;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.RecordKinds;
import org.geneticsrules.trait.Sex;

/** Numbers animals by what makes a difference under some model: what was recorded of them, their sex and their population. */
final class Kinds {

    private final Pedigree pedigree;
    private final RecordKinds records;
    private final Map<Kind, Integer> numbers = new HashMap<>();
    private final List<Individual> examples = new ArrayList<>();

    private record Kind(int records, Optional<Sex> sex, Optional<String> population) {}

    Kinds(Pedigree pedigree) {
        this.pedigree = pedigree;
        this.records = pedigree.recordKinds();
    }

    /** The number of an animal of the pedigree. */
    int of(Individual one) {
        return of(one, records.of(pedigree.positionOf(one.id())));
    }

    /** The number of an animal of which nothing is recorded. */
    int unrecorded(Individual one) {
        return of(one, 0);
    }

    private int of(Individual one, int recorded) {
        Kind kind = new Kind(recorded, one.sex(), one.population());
        Integer number = numbers.get(kind);
        if (number == null) {
            number = examples.size();
            numbers.put(kind, number);
            examples.add(one);
        }
        return number;
    }

    /** The first animal met of a kind. */
    Individual example(int number) {
        return examples.get(number);
    }
}
