package org.geneticsrules.probability;

import java.math.BigInteger;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;

/** Random chances and distributions. */
final class Chances {

    private Chances() {}

    /** Fractions with small denominators, where sums often meet, and with denominators beyond a long. */
    static Arbitrary<Probability> chances() {
        Arbitrary<BigInteger> small = Arbitraries.bigIntegers().between(BigInteger.ONE, BigInteger.valueOf(24));
        Arbitrary<BigInteger> large = Arbitraries.bigIntegers().between(BigInteger.ONE, BigInteger.TEN.pow(40));
        return Arbitraries.oneOf(small, small, large)
                .flatMap(denominator -> Arbitraries.bigIntegers()
                        .between(BigInteger.ZERO, denominator)
                        .map(numerator -> Probability.of(numerator, denominator)));
    }

    /** Distributions over some of four outcomes. */
    static Arbitrary<Distribution<String>> distributions() {
        return Arbitraries.integers()
                .between(0, 12)
                .list()
                .ofSize(4)
                .filter(weights -> weights.stream().anyMatch(weight -> weight > 0))
                .map(Chances::weighted)
                .withoutEdgeCases();
    }

    /** Functions from the four outcomes to distributions. */
    static Arbitrary<Map<String, Distribution<String>>> kernels() {
        return Combinators.combine(distributions(), distributions(), distributions(), distributions())
                .as((a, b, c, d) -> {
                    Map<String, Distribution<String>> kernel = new LinkedHashMap<>();
                    kernel.put("w", a);
                    kernel.put("x", b);
                    kernel.put("y", c);
                    kernel.put("z", d);
                    return kernel;
                });
    }

    private static Distribution<String> weighted(List<Integer> weights) {
        Map<String, Integer> named = new LinkedHashMap<>();
        List<String> names = List.of("w", "x", "y", "z");
        for (int i = 0; i < weights.size(); i++) {
            named.put(names.get(i), weights.get(i));
        }
        return Distribution.ofWeights(named);
    }
}
