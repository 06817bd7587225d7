package org.geneticsrules.answer.compared;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.geneticsrules.comparison.ComparedModels;
import org.geneticsrules.comparison.LitterEvidence;
import org.geneticsrules.comparison.SharedRecords;
import org.geneticsrules.document.Reference;

/**
 * How several models compare on the same records. Logarithms are natural.
 *
 * @param models each model, the first being the one that others are held against
 * @param best number of the model that foretold the records best, from 0; none if all exclude them
 * @param bar the likelihood ratio that is evidence: 20 for each rival tried
 * @param kits how many kits have records that were compared
 * @param dropped what was recorded and left out, since not every model speaks of it
 * @param litters each litter, in the order in which they were looked at
 * @param alike pairs of models that foretell every litter alike, by number
 * @param inseparable those of them that foretell the compared traits alike of every mating, which is proved and not tried
 * @param otherwise how it comes out under other assumptions
 * @param leftOut how it comes out without each litter; none if there are too many to try
 */
public record Standings(
        List<Standing> models,
        OptionalInt best,
        double bar,
        int kits,
        List<SharedRecords.Dropped> dropped,
        List<LitterEvidence> litters,
        List<Pair> alike,
        List<Pair> inseparable,
        List<Otherwise> otherwise,
        List<ComparedModels.LeftOut> leftOut) {

    /**
     * Copies the lists.
     *
     * @param models each model
     * @param best number of the best
     * @param bar the ratio that is evidence
     * @param kits how many kits
     * @param dropped what was left out
     * @param litters each litter
     * @param alike pairs that are alike on these records
     * @param inseparable pairs that are alike on all
     * @param otherwise under other assumptions
     * @param leftOut without each litter
     */
    public Standings {
        models = ImmutableList.copyOf(models);
        dropped = ImmutableList.copyOf(dropped);
        litters = ImmutableList.copyOf(litters);
        alike = ImmutableList.copyOf(alike);
        inseparable = ImmutableList.copyOf(inseparable);
        otherwise = ImmutableList.copyOf(otherwise);
        leftOut = ImmutableList.copyOf(leftOut);
    }

    /**
     * One model.
     *
     * @param title what it is called
     * @param model which it is
     * @param log logarithm of the chance of the records; negative infinity if it excludes them
     * @param highest the highest logarithm that its running likelihood ratio over the first model reached
     * @param reached id of the litter with which that ratio reached the bar first, if it did
     * @param prior what was believed of it before
     * @param posterior what may be believed of it if one of these models is true
     * @param recheck where it excludes records, animals any one of whose records decides that
     * @param fitting how many numbers were fitted, and what that makes of the likelihood; empty where no compared model was fitted to these
     *     records
     */
    public record Standing(
            String title,
            Reference model,
            double log,
            double highest,
            Optional<String> reached,
            double prior,
            double posterior,
            List<ComparedModels.Recheck> recheck,
            Optional<Fitting> fitting) {

        /**
         * Copies the list.
         *
         * @param title what it is called
         * @param model which it is
         * @param log logarithm of the chance of the records
         * @param highest the highest running ratio
         * @param reached the litter with which it reached the bar
         * @param prior what was believed
         * @param posterior what may be believed
         * @param recheck animals to look at again
         * @param fitting what was fitted
         */
        public Standing {
            recheck = ImmutableList.copyOf(recheck);
        }

        /**
         * Tells whether the model excludes the records.
         *
         * @return true if they have no chance
         */
        public boolean isImpossible() {
            return log == Double.NEGATIVE_INFINITY;
        }
    }

    /**
     * What numbers that were fitted to the compared records make of a model. Of models that were fitted the one with the smaller criterion is
     * to be preferred; a likelihood ratio favours whatever has more numbers to fit.
     *
     * @param numbers how many numbers were fitted
     * @param aic Akaike's criterion, {@code 2 k - 2 log L} (Akaike 1974); infinite if the model excludes the records
     * @param bic Schwarz's criterion, {@code k log n - 2 log L} with n kits (Schwarz 1978); infinite if the model excludes the records
     */
    public record Fitting(int numbers, double aic, double bic) {}

    /**
     * Two models.
     *
     * @param one number of a model
     * @param other number of another
     */
    public record Pair(int one, int other) {}

    /**
     * How the comparison comes out under another assumption.
     *
     * @param assumed what is assumed
     * @param logs for each model, the logarithm of the chance of the records
     */
    public record Otherwise(String assumed, List<Double> logs) {

        /**
         * Copies the numbers.
         *
         * @param assumed what is assumed
         * @param logs for each model
         */
        public Otherwise {
            logs = ImmutableList.copyOf(logs);
        }

        /**
         * Returns the model that is best then.
         *
         * @return its number, the first of several that differ by no more than rounding; none if all exclude the records
         */
        public OptionalInt best() {
            return ComparedModels.best(logs);
        }
    }
}
