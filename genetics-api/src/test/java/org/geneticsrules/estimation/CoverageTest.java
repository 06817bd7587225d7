package org.geneticsrules.estimation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeSet;
import org.geneticsrules.estimation.IntercrossLinkage.Phase;
import org.geneticsrules.statistics.Counts;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * How often intervals of 95 % hold the true value. Where all samples can be gone through, that is exact; else 2,000 samples are drawn with a seed. The table in {@code
 * coverage.txt} is what was found, and is compared with what is found now; {@code -Dcoverage.write=true} writes it anew.
 */
@Tag("default-jdk")
class CoverageTest {

    private static final double LEVEL = 0.95;
    private static final double[] FRACTIONS = {0.05, 0.2, 0.4};
    private static final int[] SIZES = {40, 160, 640};
    private static final int SETS = 2000;
    private static final Path TABLE = Path.of("src/test/resources/org/geneticsrules/estimation/coverage.txt");

    /** Where the approximate interval does not do what it says, and why. */
    private static final Map<String, String> DEPARTURES = Map.of(
            "test cross 40 0.05", "two recombinants are expected, and none are found in one of eight samples",
            "coupling 40 0.05", "four recombinant gametes are expected",
            "repulsion 40 0.05", "hardly ever is there a double recessive, so most estimates are 0",
            "repulsion 40 0.2", "two of three estimates are at an end",
            "repulsion 160 0.05", "nine of ten estimates are 0",
            "repulsion 640 0.05", "two of three estimates are 0");

    /** Shares of samples, by what became of them. */
    private static final class Tally {
        double profile;
        double exact;
        double boundary;
        double inside;
        double wald;

        void add(double weight, double truth, Estimate approximate, boolean exactHolds) {
            profile += approximate.interval().contains(truth) ? weight : 0;
            exact += exactHolds ? weight : 0;
            if (approximate.atBoundary()) {
                boundary += weight;
            } else {
                inside += weight;
                double error = approximate.standardError().orElseThrow();
                wald += Math.abs(approximate.value() - truth) <= 1.959963984540054 * error ? weight : 0;
            }
        }

        String row(String design, String how, boolean withExact) {
            return String.format(
                    Locale.ROOT,
                    "%-22s %-8s %.3f   %s   %.3f    %.3f",
                    design,
                    how,
                    profile,
                    withExact ? String.format(Locale.ROOT, "%.3f", exact) : "  -  ",
                    boundary,
                    wald / inside);
        }
    }

    private final Map<IntercrossLinkage, Estimate> exactly = new HashMap<>();
    private final List<String> departing = new ArrayList<>();
    private final List<String> table = new ArrayList<>(
            List.of(
                    "How often intervals of 95 % hold the true recombination fraction: 2,000 samples drawn with a seed, or all samples listed.",
                    "design n r             how      profile exact  at an end  estimate +- 1.96 errors, of those not at an end"));

    @Test
    void intervals_hold_the_truth_as_often_as_they_say() throws IOException {
        for (int n : SIZES) {
            for (double r : FRACTIONS) {
                judge("test cross " + n + " " + r, testCross(n, r), "listed", true);
            }
        }
        for (Phase phase : Phase.values()) {
            for (int n : SIZES) {
                for (double r : FRACTIONS) {
                    boolean all = n == SIZES[0];
                    judge(
                            phase.name().toLowerCase(Locale.ROOT) + " " + n + " " + r,
                            all ? listed(phase, n, r) : drawn(phase, n, r),
                            all ? "listed" : "drawn",
                            all);
                }
            }
        }
        assertEquals(new TreeSet<>(DEPARTURES.keySet()), new TreeSet<>(departing));
        if (Boolean.getBoolean("coverage.write")) {
            Files.createDirectories(TABLE.getParent());
            Files.write(TABLE, table);
        }
        assertEquals(String.join("\n", Files.readAllLines(TABLE)), String.join("\n", table));
    }

    private void judge(String design, Tally found, String how, boolean withExact) {
        String row = found.row(design, how, withExact);
        table.add(row);
        if (found.profile < 0.93 || found.profile > 0.97) {
            departing.add(design);
        }
        assertTrue(!withExact || found.exact >= LEVEL, row);
    }

    private static Tally testCross(int n, double r) {
        Tally tally = new Tally();
        double chance = Math.pow(1 - r, n);
        for (int k = 0; k <= n; k++) {
            TestCross cross = new TestCross(k, n);
            if (chance > 1e-12) {
                tally.add(
                        chance,
                        r,
                        cross.profile(LEVEL),
                        cross.exact(LEVEL).interval().contains(r));
            }
            chance *= (double) (n - k) / (k + 1) * r / (1 - r);
        }
        return tally;
    }

    private static double[] classes(Phase phase, double r) {
        double t = phase == Phase.COUPLING ? (1 - r) * (1 - r) : r * r;
        return new double[] {(2 + t) / 4, (1 - t) / 2, t / 4};
    }

    /** The two middle classes count together, since only their sum matters. */
    private Tally listed(Phase phase, int n, double r) {
        double[] law = classes(phase, r);
        double[] logFactorials = new double[n + 1];
        for (int i = 2; i <= n; i++) {
            logFactorials[i] = logFactorials[i - 1] + Math.log(i);
        }
        Tally tally = new Tally();
        for (int a = 0; a <= n; a++) {
            for (int b = 0; a + b <= n; b++) {
                int d = n - a - b;
                double chance = Math.exp(logFactorials[n]
                        - logFactorials[a]
                        - logFactorials[b]
                        - logFactorials[d]
                        + a * Math.log(law[0])
                        + b * Math.log(law[1])
                        + d * Math.log(law[2]));
                if (chance > 1e-12) {
                    IntercrossLinkage cross = new IntercrossLinkage(Counts.of(a, b, 0, d), phase);
                    Estimate exact = exactly.computeIfAbsent(cross, one -> one.exact(LEVEL));
                    tally.add(chance, r, cross.estimate(LEVEL), exact.interval().contains(r));
                }
            }
        }
        return tally;
    }

    private static Tally drawn(Phase phase, int n, double r) {
        double[] law = classes(phase, r);
        SplittableRandom random = new SplittableRandom(n + Math.round(100 * r) + (phase == Phase.COUPLING ? 0L : 7L));
        Map<List<Integer>, Integer> samples = new HashMap<>();
        for (int s = 0; s < SETS; s++) {
            int a = 0;
            int b = 0;
            for (int i = 0; i < n; i++) {
                double u = random.nextDouble();
                a += u < law[0] ? 1 : 0;
                b += u >= law[0] && u < law[0] + law[1] ? 1 : 0;
            }
            samples.merge(List.of(a, b, n - a - b), 1, Integer::sum);
        }
        Tally tally = new Tally();
        samples.forEach((counts, times) -> tally.add(
                times / (double) SETS,
                r,
                new IntercrossLinkage(Counts.of(counts.get(0), counts.get(1), 0, counts.get(2)), phase).estimate(LEVEL),
                false));
        return tally;
    }
}
