package org.geneticsrules.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.statistics.Statistics;

/** What holds of all counts, ratios and intervals. */
class StatisticsLaws {

    private static long[] longs(List<Integer> numbers) {
        return numbers.stream().mapToLong(Integer::longValue).toArray();
    }

    /** The order in which classes are named does not matter. */
    @Property(tries = 200)
    void the_order_of_classes_does_not_matter(
            @ForAll @Size(min = 2, max = 4) List<@IntRange(max = 6) Integer> counts,
            @ForAll @Size(4) List<@IntRange(max = 4) Integer> parts,
            @ForAll Random random) {
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < counts.size(); i++) {
            order.add(i);
        }
        Collections.shuffle(order, random);
        List<Integer> ratio = parts.subList(0, counts.size());
        boolean sound =
                counts.stream().anyMatch(one -> one > 0) && ratio.stream().anyMatch(one -> one > 0);
        Statistics.label("sound")
                .collect(sound)
                .coverage(checker -> checker.check(true).percentage(share -> share > 60));
        if (!sound) {
            return;
        }
        Counts one = Counts.of(longs(counts));
        Counts other = Counts.of(longs(order.stream().map(counts::get).toList()));
        Ratio oneRatio = Ratio.of(longs(ratio));
        Ratio otherRatio = Ratio.of(longs(order.stream().map(ratio::get).toList()));
        MultinomialTest.Result found = MultinomialTest.of(oneRatio).test(one);
        assertEquals(found.p(), MultinomialTest.of(otherRatio).test(other).p(), 1e-12);
        GoodnessOfFit fit = GoodnessOfFit.of(one, oneRatio);
        assertEquals(
                fit.chiSquared().map(ChiSquared::statistic).orElse(-1.0),
                GoodnessOfFit.of(other, otherRatio)
                        .chiSquared()
                        .map(ChiSquared::statistic)
                        .orElse(-1.0),
                1e-9);
        // Both agree on what is impossible, and p is never 0 else.
        assertEquals(!fit.impossible().isEmpty(), found.isImpossible());
        assertEquals(found.isImpossible(), found.p() == 0);
        assertTrue(found.p() <= 1);
        Statistics.label("impossible").collect(found.isImpossible()).coverage(checker -> {
            checker.check(true).percentage(share -> share > 0.9);
            checker.check(false).percentage(share -> share > 40);
        });
    }

    /** The exact interval holds that of Wilson's estimate, the share itself, and grows with the level; what is left out is as likely as promised. */
    @Property(tries = 200)
    void exact_intervals_hold_the_share_and_grow_with_the_level(
            @ForAll @IntRange(max = 60) int successes,
            @ForAll @IntRange(max = 60) int failures,
            @ForAll @DoubleRange(min = 0.5, max = 0.99) double level) {
        int trials = successes + failures;
        Statistics.label("at an end").collect(successes == 0 || failures == 0).coverage(checker -> {
            checker.check(true).count(count -> count > 0);
            checker.check(false).percentage(share -> share > 20);
        });
        if (trials == 0) {
            return;
        }
        double share = (double) successes / trials;
        Interval narrow = BinomialInterval.clopperPearson(successes, trials, level);
        Interval wide = BinomialInterval.clopperPearson(successes, trials, 0.995);
        assertTrue(narrow.contains(share) && wide.low() <= narrow.low() && narrow.high() <= wide.high());
        assertTrue(BinomialInterval.wilson(successes, trials, level).contains(share));
    }

    /** An interval of tails is that of Clopper and Pearson where the tails are binomial. */
    @Property(tries = 60)
    void inverted_binomial_tails_are_the_exact_interval(
            @ForAll @IntRange(max = 20) int successes, @ForAll @IntRange(max = 20) int failures) {
        int trials = successes + failures;
        Statistics.label("some")
                .collect(trials > 0)
                .coverage(checker -> checker.check(true).percentage(share -> share > 50));
        if (trials == 0) {
            return;
        }
        Interval expected = BinomialInterval.clopperPearson(successes, trials, 0.95);
        Interval found = TestInversion.of(
                p -> between(successes, trials, trials, p), p -> between(0, successes, trials, p), 0, 1, 0.95);
        assertEquals(expected.low(), found.low(), 1e-9);
        assertEquals(expected.high(), found.high(), 1e-9);
        assertEquals(expected.lowIsBoundary(), found.lowIsBoundary());
        assertEquals(expected.highIsBoundary(), found.highIsBoundary());
    }

    private static double between(int from, int to, int trials, double p) {
        double sum = 0;
        double ways = 1;
        for (int x = 0; x <= to; x++) {
            sum += x >= from ? ways * Math.pow(p, x) * Math.pow(1 - p, trials - x) : 0;
            ways = ways * (trials - x) / (x + 1);
        }
        return Math.min(1, sum);
    }
}
