package org.geneticsrules.vocabulary;

import java.math.BigInteger;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.BoxSet;

/**
 * What a facet of a vocabulary has no name for.
 *
 * <p>Looks are never listed: what is left is a set of boxes, and its size is worked out.
 *
 * <p>Immutable and thread-safe.
 *
 * @param facet the facet
 * @param visible the looks that can occur
 * @param unnamed those of them that no name of the facet covers
 */
public record Unnamed(Facet facet, BoxSet visible, BoxSet unnamed) {

    /**
     * Finds what a facet has no name for.
     *
     * @param vocabulary a vocabulary
     * @param facet id of one of its facets
     * @param visible the looks that can occur, in the vocabulary's space; see {@link Vocabulary#setOf}
     * @param date the day on which the names are used, or a month or year: senses used on any day of it; without a date, today: senses that
     *     have no end
     * @return the looks without a name
     * @throws IllegalArgumentException if the vocabulary has no such facet, no look can occur, or the set is of another space
     * @throws TooLargeException if it takes too many boxes
     */
    public static Unnamed of(Vocabulary vocabulary, String facet, BoxSet visible, Optional<PartialDate> date) {
        Facet found = vocabulary.facets().get(facet);
        if (found == null) {
            throw new IllegalArgumentException("vocabulary " + vocabulary + " has no facet \"" + facet + "\"; it has "
                    + vocabulary.facets().keySet());
        }
        if (visible.isEmpty()) {
            throw new IllegalArgumentException("no look can occur, so none has or lacks a name");
        }
        BoxSet left = visible;
        for (Name name : vocabulary.names(facet)) {
            left = left.minus(vocabulary.meaning(name.inUse(date)));
        }
        return new Unnamed(found, visible, left);
    }

    /**
     * Finds what each facet has no name for.
     *
     * @param vocabulary a vocabulary
     * @param visible the looks that can occur, in the vocabulary's space; see {@link Vocabulary#setOf}
     * @param date the day on which the names are used, or a month or year: senses used on any day of it; without a date, today: senses that
     *     have no end
     * @return the looks without a name for each facet, in declared order
     * @throws IllegalArgumentException if no look can occur, or the set is of another space
     * @throws TooLargeException if it takes too many boxes
     */
    public static List<Unnamed> ofAll(Vocabulary vocabulary, BoxSet visible, Optional<PartialDate> date) {
        return vocabulary.facets().keySet().stream()
                .map(facet -> of(vocabulary, facet, visible, date))
                .toList();
    }

    /**
     * Returns how much of what can occur has a name. Each look counts once, however common it is.
     *
     * @return the number of named looks, divided by that of all looks
     */
    public Probability named() {
        BigInteger all = visible.size();
        return Probability.of(all.subtract(unnamed.size()), all);
    }
}
