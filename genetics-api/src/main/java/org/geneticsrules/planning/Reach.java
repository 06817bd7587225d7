package org.geneticsrules.planning;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.geneticsrules.planning.KitsNeeded.Design;
import org.geneticsrules.planning.KitsNeeded.Standing;

/**
 * How many animals it takes until the likelihood ratio of one mixture over another reaches a bar with a stated chance, if the first is true.
 *
 * <p>With n animals, the chance is the sum of those of all counts at which the ratio is high enough. In the long run the animals show which part
 * of the mixture they come from; the ratio then tends to (weight of that part in the first) / (weight of the same distribution in the other), and to
 * infinity where the other has none like it. So the chance tends to the weight of the parts whose ratio ends above the bar. It may be larger
 * on the way, but not for long: from a part a whose ratio ends below, the bar is reached only if the parts a' of the first make up the rest,
 * {@code sum of w(a') L(a') / L(a) >= d}, with {@code d = bar w'(a) - w(a)}; since {@code E sqrt(L(a') / L(a)) = r^n} with
 * {@code r = sum of sqrt(q(a) q(a'))} (Bhattacharyya 1943, from memory), Markov's inequality bounds the chance of that by
 * {@code sum of sqrt(m w(a') / d) r^n}, for m such parts. Where limit and bound together stay below the chance asked for, no larger number is enough.
 */
final class Reach {

    private static final double ROUNDING = 1e-9;

    /** Numbers of animals beyond this are not tried. */
    private static final int MOST = 1000;

    /** So much work is done for one design. */
    private static final double MOST_WORK = 3e7;

    private final List<Mixture> mixtures;
    private final double[] held;
    private final double logBar;
    private final Runnable tick;
    private final Counts.Orders orders = new Counts.Orders();

    /**
     * @param held the natural logarithm of how likely each model made what is held before
     * @param logBar that of the bar
     */
    Reach(List<Mixture> mixtures, double[] held, double logBar, Runnable tick) {
        this.mixtures = Mixture.reduced(mixtures);
        this.held = held;
        this.logBar = logBar;
        this.tick = tick;
    }

    /** Looks for the smallest numbers that are multiples of a step. */
    List<KitsNeeded> search(Design design, int step, int kitsOfEach, List<Double> surenesses) {
        List<Open> open = new ArrayList<>();
        for (int truth = 0; truth < mixtures.size(); truth++) {
            for (int rival = 0; rival < mixtures.size(); rival++) {
                for (double sureness : surenesses) {
                    if (truth != rival) {
                        open.add(new Open(truth, rival, sureness));
                    }
                }
            }
        }
        double parts = mixtures.stream().mapToInt(Mixture::size).sum();
        int classes = mixtures.get(0).classes();
        double work = 0;
        for (int n = 0; n <= MOST && open.stream().anyMatch(one -> one.standing == Standing.NOT_FOUND); n += step) {
            work += Counts.size(n, classes) * classes * parts;
            if (work > MOST_WORK) {
                break;
            }
            double[][] chances = chances(n);
            for (Open one : open) {
                one.see(n, chances[one.truth][one.rival], step);
            }
            tick.run();
        }
        return open.stream().map(one -> one.told(design, step, kitsOfEach)).toList();
    }

    /** By truth and rival, the chance that so many animals reach the bar. */
    double[][] chances(int n) {
        int count = mixtures.size();
        double[][] chances = new double[count][count];
        double[] logs = new double[count];
        Counts.each(n, mixtures.get(0).classes(), counts -> {
            double sequences = orders.log(counts);
            for (int m = 0; m < count; m++) {
                logs[m] = mixtures.get(m).log(counts);
            }
            for (int truth = 0; truth < count; truth++) {
                if (logs[truth] == Double.NEGATIVE_INFINITY) {
                    continue;
                }
                for (int rival = 0; rival < count; rival++) {
                    if (logs[truth] - logs[rival] + held[truth] - held[rival] >= logBar - ROUNDING) {
                        chances[truth][rival] += Math.exp(sequences + logs[truth]);
                    }
                }
            }
        });
        return chances;
    }

    /** The logarithm of what the ratio of a part tends to. */
    private double ends(int truth, int rival, int part) {
        Mixture one = mixtures.get(truth);
        return Math.log(one.weight(part)) - Math.log(like(rival, one.chances(part))) + held[truth] - held[rival];
    }

    /** The weight, in a mixture, of a distribution. */
    private double like(int mixture, double[] chances) {
        Mixture one = mixtures.get(mixture);
        double weight = 0;
        for (int b = 0; b < one.size(); b++) {
            weight += Mixture.same(one.chances(b), chances) ? one.weight(b) : 0;
        }
        return weight;
    }

    double limit(int truth, int rival) {
        double limit = 0;
        for (int a = 0; a < mixtures.get(truth).size(); a++) {
            limit += ends(truth, rival, a) >= logBar - ROUNDING
                    ? mixtures.get(truth).weight(a)
                    : 0;
        }
        return limit;
    }

    /** What the chance cannot exceed with so many animals or more. */
    double atMost(int truth, int rival, int n) {
        Mixture one = mixtures.get(truth);
        double most = 0;
        for (int a = 0; a < one.size(); a++) {
            if (ends(truth, rival, a) >= logBar - ROUNDING) {
                most += one.weight(a);
                continue;
            }
            double lacking = Math.exp(logBar - held[truth] + held[rival]) * like(rival, one.chances(a)) - one.weight(a);
            double above = 0;
            for (int other = 0; other < one.size(); other++) {
                if (other != a) {
                    double overlap = 0;
                    for (int x = 0; x < one.classes(); x++) {
                        overlap += Math.sqrt(one.chances(a)[x] * one.chances(other)[x]);
                    }
                    above += Math.sqrt((one.size() - 1) * one.weight(other) / lacking) * Math.pow(overlap, n);
                }
            }
            most += one.weight(a) * Math.min(1, above);
        }
        return most;
    }

    /** A question about two models and a chance, until it is answered. */
    private final class Open {
        private final int truth;
        private final int rival;
        private final double sureness;
        private Standing standing = Standing.NOT_FOUND;
        private int tried;
        private double chance;

        Open(int truth, int rival, double sureness) {
            this.truth = truth;
            this.rival = rival;
            this.sureness = sureness;
        }

        void see(int n, double here, int step) {
            if (standing != Standing.NOT_FOUND) {
                return;
            }
            tried = n;
            chance = here;
            if (here >= sureness - ROUNDING) {
                standing = Standing.REACHED;
            } else if (atMost(truth, rival, n + step) < sureness - ROUNDING) {
                standing = Standing.NEVER;
            }
        }

        KitsNeeded told(Design design, int step, int kitsOfEach) {
            boolean reached = standing == Standing.REACHED;
            int kits = tried * kitsOfEach;
            int litters = design == Design.JILLS ? tried : tried / step;
            return new KitsNeeded(
                    truth,
                    rival,
                    design,
                    sureness,
                    standing,
                    reached && design != Design.COUPLE ? OptionalInt.of(litters) : OptionalInt.empty(),
                    reached ? OptionalInt.of(kits) : OptionalInt.empty(),
                    chance,
                    limit(truth, rival),
                    kits);
        }
    }
}
