package org.geneticsrules.answer.estimated;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Map;
import org.geneticsrules.estimation.LodScores;
import org.geneticsrules.statistics.Interval;

/**
 * LOD scores of families, at the estimate.
 *
 * @param highest the highest score of all families together, 0 or more
 * @param support the fractions whose score is at most one below it
 * @param verdict what the highest score says by convention: 3 or more speaks for linkage
 * @param families each family
 */
public record LinkageScores(double highest, Interval support, LodScores.Verdict verdict, List<Family> families) {

    /**
     * One family.
     *
     * @param name what it is called; of a pedigree, its first animal
     * @param score its score at the estimate; minus infinity if its records are impossible there
     * @param informative whether it says anything of linkage
     * @param phaseKnown whether it is known which alleles lie together in each parent
     * @param openPhase the parents of whom that is not known, where they are named
     */
    public record Family(String name, double score, boolean informative, boolean phaseKnown, List<String> openPhase) {
        /**
         * Copies the names.
         *
         * @param name what it is called
         * @param score its score
         * @param informative whether it says anything
         * @param phaseKnown whether the phase of each parent is known
         * @param openPhase parents whose phase is not known
         */
        public Family {
            openPhase = ImmutableList.copyOf(openPhase);
        }
    }

    /**
     * Copies the families.
     *
     * @param highest the highest score
     * @param support the fractions within one unit
     * @param verdict what the score says
     * @param families each family
     */
    public LinkageScores {
        families = ImmutableList.copyOf(families);
    }

    /** The scores at an estimate. */
    static LinkageScores of(LodScores scores, double at, Map<String, List<String>> open) {
        List<Family> families = scores.families().stream()
                .map(one -> new Family(
                        one,
                        scores.at(one, at),
                        !scores.uninformative().contains(one),
                        !open.containsKey(one),
                        open.getOrDefault(one, ImmutableList.of())))
                .toList();
        return new LinkageScores(
                scores.highest(),
                scores.oneUnitOfSupport(),
                scores.highest() >= LodScores.FOR ? LodScores.Verdict.FOR_LINKAGE : LodScores.Verdict.INCONCLUSIVE,
                families);
    }

    /**
     * Returns the families that say something of linkage.
     *
     * @return how many there are
     */
    public long informative() {
        return families.stream().filter(Family::informative).count();
    }
}
