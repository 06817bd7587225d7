package org.geneticsrules.inference;

import com.google.common.collect.ImmutableMap;
import java.util.LinkedHashMap;
import java.util.Map;
import org.geneticsrules.model.AllelePair;

/** Whether an animal can have a genotype, by all records of its pedigree; how likely that is, is another question. */
public sealed interface Possibility {

    /** It cannot, if the records and the model are right. */
    record Excluded() implements Possibility {}

    /**
     * It can: here is one way in which everything fits.
     *
     * @param witness by id of an animal and id of a locus, genotypes of all recorded relatives at once; of loci of which records say nothing
     *     in common with the one that was asked about there are none
     */
    record Possible(Map<String, Map<String, AllelePair>> witness) implements Possibility {
        /**
         * Copies the witness.
         *
         * @param witness genotypes of all relatives
         */
        public Possible {
            Map<String, Map<String, AllelePair>> copy = new LinkedHashMap<>();
            witness.forEach((id, pairs) -> copy.put(id, ImmutableMap.copyOf(pairs)));
            witness = ImmutableMap.copyOf(copy);
        }
    }

    /**
     * It was not found out: relations form loops, and to follow all of them would take more room than allowed.
     *
     * @param cells how many cells that would take at least, to be compared with {@link Inference#within}
     */
    record Undecided(double cells) implements Possibility {}

    /** The records contradict one another already without it, so nothing fits ({@link Inference#contradictions}). */
    record Contradicted() implements Possibility {}
}
