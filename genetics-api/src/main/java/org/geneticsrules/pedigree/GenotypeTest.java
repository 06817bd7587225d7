package org.geneticsrules.pedigree;

import com.google.common.collect.ImmutableSet;
import java.time.LocalDate;
import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.GenotypeText;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;

/**
 * What a test of one locus reported.
 *
 * <p>The result is kept as it was reported, in genotype text of that locus alone: {@code C/c}, {@code C/-} if the test tells one allele
 * only, {@code O/Y} of a male at a locus on the X. It names no model, so that it outlives the model; {@link #pairs} reads it under one.
 * Several results mean <i>one of these</i>.
 *
 * <p><b>Error.</b> With chance {@code error} the report is wrong. Then every other genotype that an animal of that sex can have at this
 * locus is reported equally often; a report that leaves several genotypes open is right if the true one is among them.
 *
 * @param date when it was tested, if recorded
 * @param locus id of the locus
 * @param result genotype text of this locus, or of each genotype it may be
 * @param error chance that the report is wrong, from 0 to less than 1
 */
public record GenotypeTest(Optional<LocalDate> date, String locus, Set<String> result, Probability error) {

    private static final Pattern RESULT = Pattern.compile("[^\\x00-\\x20;\\x7F-\\x9F]{1,200}");

    /**
     * Checks and copies the result.
     *
     * @param date when it was tested
     * @param locus id of the locus
     * @param result genotype text
     * @param error chance of a wrong report
     * @throws IllegalArgumentException if the locus is no id, there is no result, a result is blank, longer than 200 characters or holds
     *     a space or semicolon, as only texts of several loci do, or an error is certain
     */
    public GenotypeTest {
        result = ImmutableSet.copyOf(result);
        Ids.check("a locus", locus);
        if (result.isEmpty()) {
            throw new IllegalArgumentException("a test has at least one result");
        }
        for (String text : result) {
            if (!isResult(text)) {
                throw new IllegalArgumentException(
                        "\"" + text + "\" is no genotype of one locus; expected, for example, C/c");
            }
        }
        if (error.isOne()) {
            throw new IllegalArgumentException("the chance of a wrong report must be less than 1");
        }
    }

    /**
     * Tells whether a text can be the result of a test, before any model is asked.
     *
     * @param text a text
     * @return true if it is 1 to 200 characters without spaces, semicolons and control characters
     */
    public static boolean isResult(String text) {
        return RESULT.matcher(text).matches();
    }

    /**
     * Returns a test without a date that is never wrong.
     *
     * @param pair the genotype reported
     * @return the test
     */
    public static GenotypeTest of(AllelePair pair) {
        return of(pair, Probability.ZERO);
    }

    /**
     * Returns a test without a date.
     *
     * @param pair the genotype reported, with at least one allele
     * @param error chance that the report is wrong
     * @return the test
     * @throws IllegalArgumentException if the genotype has no allele, because there is nothing to test
     */
    public static GenotypeTest of(AllelePair pair, Probability error) {
        if (pair.alleles().isEmpty()) {
            throw new IllegalArgumentException("an animal without the chromosome cannot be tested at " + pair.locus());
        }
        return new GenotypeTest(Optional.empty(), pair.locus(), ImmutableSet.of(pair.toString()), error);
    }

    /**
     * Returns the genotypes that the result leaves open, under a model.
     *
     * @param model a model
     * @return genotypes of the locus, in the order of the results, at least one
     * @throws ProblemsException if the result names an allele that the model's locus does not have, or is not of this locus
     * @throws IllegalArgumentException if the model has no such locus
     */
    public Set<AllelePair> pairs(Model model) {
        Locus at = model.locus(locus);
        GenotypeText text = GenotypeText.of(model);
        Set<AllelePair> pairs = new LinkedHashSet<>();
        for (String one : result) {
            String whole =
                    one.startsWith(at.symbol() + ":") || one.startsWith(locus + ":") ? one : at.symbol() + ":" + one;
            pairs.addAll(text.parse(whole, OmittedLoci.UNKNOWN).genotypes().pairs(locus));
        }
        return ImmutableSet.copyOf(pairs);
    }
}
