package org.geneticsrules.examples.textbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.inference.ChiSquareTest;
import org.apache.commons.statistics.inference.SignificanceResult;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Phenotype;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Published counts of young against the chances computed from the parents, by Pearson's chi-squared. */
class SegregationCountsTest {

    static List<Map<String, String>> rows() {
        return Textbook.rows("segregation-counts");
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("rows")
    void the_statistic_and_its_p_are_as_published(Map<String, String> row) {
        assertTrue(row.get("source").length() > 10 && !row.get("tag").isEmpty(), row::toString);
        Counts counts = Counts.of(row);
        assertEquals(row.get("statistic"), counts.statistic().toString());
        int fitted = Integer.parseInt(row.get("fitted"));
        int df = Integer.parseInt(row.get("df"));
        assertEquals(df, counts.observed().size() - 1 - fitted);
        double p = Double.NaN;
        if (df == 0) {
            assertEquals("0/1", row.get("statistic"), "as many numbers were fitted as there are classes to fit");
        } else {
            SignificanceResult test = ChiSquareTest.withDefaults()
                    .withDegreesOfFreedomAdjustment(fitted)
                    .test(
                            counts.expected(),
                            counts.observed().stream()
                                    .mapToLong(Long::longValue)
                                    .toArray());
            p = test.getPValue();
            assertEquals(counts.statistic().toDouble(), test.getStatistic(), 1e-9);
            assertEquals(Double.parseDouble(row.get("p")), p, 1e-13);
        }
        for (String printed : row.get("printed").isEmpty()
                ? new String[0]
                : row.get("printed").split("; ", -1)) {
            String[] nameAndValue = printed.split(" ", -1);
            double value = nameAndValue[0].equals("p") ? p : counts.statistic().toDouble();
            assertEquals(nameAndValue[1], Textbook.rounded(value, nameAndValue[1]), row::toString);
        }
    }

    /** Fisher R. A. (1936) Annals of Science 1:115-137 prints 2.1389 with 7 degrees of freedom; the exact sum rounds to 2.1389 too. */
    @Test
    void the_seven_ratios_of_mendel_fit_together_too_well() {
        Ratio sum = rows().subList(0, 7).stream()
                .map(row -> Counts.of(row).statistic())
                .reduce(Ratio::plus)
                .orElseThrow();
        assertEquals("2.13887", Textbook.rounded(sum.toDouble(), "2.13887"));
        assertEquals("2.1389", Textbook.rounded(sum.toDouble(), "2.1389"));
        double p = ChiSquaredDistribution.of(7).survivalProbability(sum.toDouble());
        assertEquals("0.95176", Textbook.rounded(p, "0.95176"));
    }

    /**
     * A whole number over another in lowest terms; unlike a probability it may exceed 1.
     *
     * @param numerator the number above
     * @param denominator the number below, positive
     */
    record Ratio(BigInteger numerator, BigInteger denominator) {

        static Ratio of(BigInteger numerator, BigInteger denominator) {
            BigInteger divisor = numerator.gcd(denominator);
            return new Ratio(numerator.divide(divisor), denominator.divide(divisor));
        }

        Ratio plus(Ratio other) {
            return of(
                    numerator.multiply(other.denominator).add(other.numerator.multiply(denominator)),
                    denominator.multiply(other.denominator));
        }

        double toDouble() {
            return new BigDecimal(numerator)
                    .divide(new BigDecimal(denominator), 30, RoundingMode.HALF_EVEN)
                    .doubleValue();
        }

        @Override
        public String toString() {
            return numerator + "/" + denominator;
        }
    }

    /**
     * Counts of young beside their computed chances.
     *
     * @param observed counts
     * @param chances the chance of each class
     */
    record Counts(List<Long> observed, List<Probability> chances) {

        static Counts of(Map<String, String> row) {
            Model model = Textbook.model(row.get("model"));
            Cross cross =
                    Cross.of(model, Genotype.parse(model, row.get("sire")), Genotype.parse(model, row.get("dam")));
            Map<Phenotype, Probability> kits = cross.phenotypes(
                            View.of(Arrays.asList(row.get("traits").split("; ", -1)))
                                    .among(row.get("counted").equals("born") ? Census.BORN : Census.CONCEIVED))
                    .asMap();
            Map<Phenotype, Long> counted = new LinkedHashMap<>();
            for (String entry : row.get("counts").split("; ", -1)) {
                int colon = entry.lastIndexOf(": ");
                Phenotype look = Textbook.look(entry.substring(0, colon));
                counted.put(look, Long.parseLong(entry.substring(colon + 2)));
            }
            assertEquals(kits.keySet(), counted.keySet(), row::toString);
            return new Counts(
                    List.copyOf(counted.values()),
                    counted.keySet().stream().map(kits::get).toList());
        }

        private long total() {
            return observed.stream().mapToLong(Long::longValue).sum();
        }

        double[] expected() {
            long total = total();
            return chances.stream()
                    .mapToDouble(chance -> chance.toDouble() * total)
                    .toArray();
        }

        /** Sum of (observed - n p)^2 / (n p) over the classes, exactly. */
        Ratio statistic() {
            BigInteger total = BigInteger.valueOf(total());
            Ratio sum = Ratio.of(BigInteger.ZERO, BigInteger.ONE);
            for (int i = 0; i < observed.size(); i++) {
                BigInteger up = chances.get(i).numerator().multiply(total);
                BigInteger down = chances.get(i).denominator();
                BigInteger difference =
                        BigInteger.valueOf(observed.get(i)).multiply(down).subtract(up);
                sum = sum.plus(Ratio.of(difference.pow(2), up.multiply(down)));
            }
            return sum;
        }
    }
}
