package org.geneticsrules.estimation;

import java.util.List;
import java.util.OptionalInt;
import org.geneticsrules.pedigree.Ascertainment;

/**
 * The scored young of one couple, in one litter or several, and how they came to be among the records.
 *
 * @param name what they are called
 * @param siblings how many young were looked at
 * @param affected how many of them show what is asked about
 * @param how how they came to be recorded: {@link Ascertainment.Complete} or {@link Ascertainment.ParentsChosen} if they would have been whatever they
 *     showed, and their parents are of the kind asked about for certain
 */
public record RecordedFamily(String name, int siblings, int affected, Ascertainment how) {

    /**
     * Checks the counts.
     *
     * @param name what they are called
     * @param siblings how many young were looked at
     * @param affected how many show it
     * @param how how they came to be recorded
     * @throws IllegalArgumentException if a count is outside its range, or does not go with how they came to be recorded; and if that is not stated
     */
    public RecordedFamily {
        if (siblings < 1 || affected < 0 || affected > siblings) {
            throw new IllegalArgumentException(
                    "expected at least 1 of the young and 0 to as many affected, but family \"" + name + "\" has "
                            + siblings + " and " + affected);
        }
        if (how instanceof Ascertainment.Unknown) {
            throw new IllegalArgumentException(
                    "how family \"" + name
                            + "\" came to be recorded is not stated; expected complete, at least one, probands or parents chosen");
        }
        int noticed = how instanceof Ascertainment.AtLeastOne
                ? 1
                : how instanceof Ascertainment.Probands probands
                        ? probands.count().orElse(1)
                        : 0;
        if (affected < noticed) {
            throw new IllegalArgumentException(
                    "family \"" + name + "\" is recorded (" + how + "), but " + affected + " of its young show it");
        }
    }

    /** The counts; who came to notice, where that is recorded. */
    Sibship sibship() {
        OptionalInt probands = how instanceof Ascertainment.Probands stated ? stated.count() : OptionalInt.empty();
        return new Sibship(siblings, affected, probands.orElse(affected), 1);
    }

    static long siblings(List<RecordedFamily> families) {
        return families.stream().mapToLong(RecordedFamily::siblings).sum();
    }

    static long affected(List<RecordedFamily> families) {
        return families.stream().mapToLong(RecordedFamily::affected).sum();
    }
}
