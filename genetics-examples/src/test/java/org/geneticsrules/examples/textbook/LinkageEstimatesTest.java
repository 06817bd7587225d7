package org.geneticsrules.examples.textbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.statistics.inference.ChiSquareTest;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Published counts of a second generation, and the recombination fractions estimated from them: the shares that the library computes are
 * linear in t, which is (1-r)^2 in coupling and r^2 in repulsion, and are the likeliest at the printed fraction (Fisher and Balmukand
 * 1928).
 */
class LinkageEstimatesTest {

    private static final List<Phenotype> CLASSES = List.of(
            Phenotype.parse("first: A, second: B"),
            Phenotype.parse("first: A, second: b"),
            Phenotype.parse("first: a, second: B"),
            Phenotype.parse("first: a, second: b"));

    static List<Map<String, String>> rows() {
        return Textbook.rows("linkage");
    }

    /** Shares of the four classes of the second generation, in whole numbers over one denominator as fractions. */
    private static List<Probability> shares(String phase, Probability r) {
        Model model = Model.builder(
                        "pair",
                        "1.0.0",
                        Catalogue.builder("pair.traits", "1.0.0")
                                .trait("first", "A", "a")
                                .trait("second", "B", "b")
                                .build())
                .locus(
                        "A",
                        locus -> locus.alleles("A", "a")
                                .dominant("A", "a")
                                .shows("A", "A")
                                .shows("a", "a"))
                .locus(
                        "B",
                        locus -> locus.alleles("B", "b")
                                .dominant("B", "b")
                                .shows("B", "B")
                                .shows("b", "b"))
                .group(LinkageGroup.autosomal("pair", List.of("A", "B"), List.of(r)))
                .trait(
                        "first",
                        rule -> rule.when(Condition.where("A", "A"), "A").otherwise("a"))
                .trait(
                        "second",
                        rule -> rule.when(Condition.where("B", "B"), "B").otherwise("b"))
                .build();
        Genotype parent = Genotype.parse(model, phase.equals("coupling") ? "[A B]/[a b]" : "[A b]/[a B]");
        Distribution<Phenotype> kits = Cross.of(model, parent, parent).phenotypes();
        return CLASSES.stream().map(kits::probability).toList();
    }

    private static Probability r(String text) {
        return Probability.from(new BigDecimal(text));
    }

    private static double[] doubles(List<Probability> shares) {
        return shares.stream().mapToDouble(Probability::toDouble).toArray();
    }

    private static long[] counts(Map<String, String> row) {
        return Arrays.stream(row.get("counts").split("; ", -1))
                .mapToLong(Long::parseLong)
                .toArray();
    }

    private static Probability t(String phase, Probability r) {
        return phase.equals("coupling") ? r.complement().pow(2) : r.pow(2);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("rows")
    void the_shares_are_linear_in_t(Map<String, String> row) {
        String phase = row.get("phase");
        for (Probability r : List.of(r(row.get("r")), Probability.ZERO, Probability.of(1, 2), Probability.of(1, 10))) {
            Probability quarter = Probability.of(1, 4);
            Probability t = t(phase, r);
            Probability double0 = t.times(quarter);
            Probability single = t.complement().times(quarter);
            assertEquals(List.of(Probability.of(1, 2).plus(double0), single, single, double0), shares(phase, r));
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("rows")
    void the_printed_fraction_is_the_likeliest(Map<String, String> row) {
        String phase = row.get("phase");
        long[] counts = counts(row);
        Probability printed = r(row.get("r"));
        Probability step = r("0.000001");
        // the likelihood rises up to the printed fraction and falls beyond it, to its last decimal
        assertTrue(score(phase, counts, printed.minus(step)) > 0, row::toString);
        assertTrue(score(phase, counts, printed.plus(step)) < 0, row::toString);
    }

    /** The slope of the log-likelihood over r at r, from computed shares just beside it. */
    private static double score(String phase, long[] counts, Probability r) {
        Probability h = r("0.0000001");
        double[] before = doubles(shares(phase, r.minus(h)));
        double[] here = doubles(shares(phase, r));
        double[] after = doubles(shares(phase, r.plus(h)));
        double sum = 0;
        for (int i = 0; i < counts.length; i++) {
            sum += counts[i] * (after[i] - before[i]) / here[i];
        }
        return sum;
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("rows")
    void the_standard_errors_follow_from_the_shares(Map<String, String> row) {
        String phase = row.get("phase");
        Probability printed = r(row.get("r"));
        Probability h = r("0.0001");
        double t = t(phase, printed).toDouble();
        double step = t(phase, printed.plus(h)).toDouble()
                - t(phase, printed.minus(h)).toDouble();
        double[] before = doubles(shares(phase, printed.minus(h)));
        double[] here = doubles(shares(phase, printed));
        double[] after = doubles(shares(phase, printed.plus(h)));
        double information = 0;
        for (int i = 0; i < here.length; i++) {
            double slope = (after[i] - before[i]) / step;
            information += slope * slope / here[i];
        }
        assertEquals((1 + 2 * t) / (2 * t * (1 - t) * (2 + t)), information, 1e-6 * information);
        double seOfT = 1 / Math.sqrt(information * Arrays.stream(counts(row)).sum());
        Map<String, Double> computed = new LinkedHashMap<>();
        computed.put("t", t);
        computed.put("se of t", seOfT);
        computed.put("se of r", seOfT / (2 * Math.sqrt(t)));
        computed.forEach((name, value) -> {
            if (!row.get(name).isEmpty()) {
                assertEquals(Double.parseDouble(row.get(name)), value, 1e-6, name);
            }
        });
    }

    /** The fraction at which b c / (a d) of the computed shares is that of the counts. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("rows")
    void the_product_ratio_gives_the_printed_fraction(Map<String, String> row) {
        if (!row.get("product ratio r").isEmpty()) {
            long[] counts = counts(row);
            double counted = (double) counts[1] * counts[2] / ((double) counts[0] * counts[3]);
            Probability printed = r(row.get("product ratio r"));
            double below = productRatio(row.get("phase"), printed.minus(r("0.000001")));
            double above = productRatio(row.get("phase"), printed.plus(r("0.000001")));
            assertTrue((below - counted) * (above - counted) < 0, row::toString);
        }
    }

    private static double productRatio(String phase, Probability r) {
        double[] shares = doubles(shares(phase, r));
        return shares[1] * shares[2] / (shares[0] * shares[3]);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("rows")
    void without_linkage_the_counts_do_not_fit(Map<String, String> row) {
        if (!row.get("chi2 of 9:3:3:1").isEmpty()) {
            long[] counts = counts(row);
            long total = Arrays.stream(counts).sum();
            double[] expected = Arrays.stream(doubles(shares(row.get("phase"), Probability.of(1, 2))))
                    .map(share -> share * total)
                    .toArray();
            double statistic =
                    ChiSquareTest.withDefaults().test(expected, counts).getStatistic();
            assertEquals(
                    row.get("chi2 of 9:3:3:1"), Textbook.rounded(statistic, row.get("chi2 of 9:3:3:1")), row::toString);
        }
    }
}
