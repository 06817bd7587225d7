package org.geneticsrules.comparison;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.statistics.GoodnessOfFit;
import org.geneticsrules.statistics.Interval;
import org.geneticsrules.statistics.MultinomialTest;

/**
 * How the kits of all litters whose parents were recorded alike go with one model.
 *
 * <p>Only litters are counted that would have been recorded whatever they showed, or of which nobody wrote down why they were.
 *
 * @param litters ids of the litters
 * @param parents what was recorded of the sire and the dam, in words
 * @param test counts and expected shares by look, with chi-squared, G and small expectations
 * @param independent whether kits are independent of one another; they are not if parents alike may differ in what they hand down, and then
 *     chi-squared and G do not apply
 * @param exact the exact multinomial test, where kits are independent and outcomes few enough or drawn
 * @param shares for each look in order, the share of kits that show it, with its exact interval (Clopper and Pearson 1934)
 */
public record MatingFit(
        List<String> litters,
        String parents,
        GoodnessOfFit test,
        boolean independent,
        Optional<MultinomialTest.Result> exact,
        List<Interval> shares) {

    /**
     * Copies the lists.
     *
     * @param litters ids of the litters
     * @param parents what was recorded of the parents
     * @param test counts and expected shares
     * @param independent whether kits are independent
     * @param exact the exact test
     * @param shares shares with intervals
     */
    public MatingFit {
        litters = ImmutableList.copyOf(litters);
        shares = ImmutableList.copyOf(shares);
    }
}
