package org.geneticsrules.answer.recorded;

import java.util.List;
import java.util.Set;
import org.geneticsrules.inference.Conclusions;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Pedigree;

/**
 * What follows if one thing more were recorded of an animal, by the frequencies of one origin. The record is put into the pedigree as if it
 * had been made, so that whatever ties it to earlier ones and to relatives is taken into account, and it is as likely as the ratio of the
 * chances of all records with it and without.
 */
final class Supposed {

    private final Inference engine;
    private final Pedigree kindred;
    private final String animal;
    private final Conclusions before;

    /**
     * Begins without the record.
     *
     * @param engine the questions of the engine by this origin, about these relatives
     * @param loci all loci that any record put in may speak of
     */
    Supposed(Inference engine, Pedigree kindred, String animal, Set<String> loci) {
        this.engine = engine;
        this.kindred = kindred;
        this.animal = animal;
        this.before = engine.conclude(loci);
    }

    /** What is known without it. */
    Conclusions before() {
        return before;
    }

    /** How far that is settled. */
    Standing standing(Set<String> loci) {
        return standing(before, loci);
    }

    /**
     * What follows from the records with one thing more.
     *
     * @param engine the questions of the engine then
     * @param found what is known then
     * @param standing how far that is settled at the loci
     * @param chance how likely the record is, where that is exact; 0 if it contradicts the others
     */
    record Then(Inference engine, Conclusions found, Standing standing, double chance) {
        /** How likely the record is. */
        Chance likely() {
            return switch (standing) {
                case EXACT, CONTRADICTED -> Chance.exact(chance);
                case SAMPLED, NOT_CONVERGED, TOO_LARGE, NOT_IN_TIME ->
                    Chance.unsettled(Standing.TOO_LARGE); // an estimate has no likelihood
            };
        }
    }

    /** Puts the animal in with one thing more, to learn of some loci; what is known before must be exact there. */
    Then with(Individual recorded, Set<String> loci) {
        Inference with = engine.about(put(kindred, recorded));
        Conclusions after = with.conclude(loci);
        Standing standing = standing(after, loci);
        boolean exact = standing == Standing.EXACT;
        return new Then(with, after, standing, exact ? Math.exp(after.logLikelihood() - before.logLikelihood()) : 0);
    }

    /** Relatives with one of them recorded otherwise. */
    static Pedigree put(Pedigree kindred, Individual recorded) {
        return Altered.with(kindred, List.of(recorded), List.of(), Set.of()).build();
    }

    private Standing standing(Conclusions found, Set<String> loci) {
        Standing worst = Standing.EXACT;
        for (String locus : loci) {
            worst = PlannedMating.worse(worst, found.standing(animal, locus));
        }
        return worst;
    }
}
