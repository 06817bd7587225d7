package org.geneticsrules.planning;

import java.util.ArrayList;
import java.util.List;

/**
 * Animals that fall into classes independently of one another, given something that is not known for certain, such as what their parents
 * carry: a weighted list of distributions, all of them different.
 */
final class Mixture {

    /** Chances nearer than this are the same; what has no chance is never the same as what has one. */
    static final double SAME = 1e-10;

    private final double[] weights;
    private final double[] logWeights;
    private final double[][] chances;
    private final double[][] logs;

    private Mixture(double[] weights, double[][] chances) {
        this.weights = weights;
        this.chances = chances;
        this.logWeights = new double[weights.length];
        this.logs = new double[weights.length][];
        for (int a = 0; a < weights.length; a++) {
            logWeights[a] = Math.log(weights[a]);
            logs[a] = new double[chances[a].length];
            for (int x = 0; x < logs[a].length; x++) {
                logs[a][x] = Math.log(chances[a][x]);
            }
        }
    }

    /** Puts together what has the same distribution, and makes the weights sum to 1. */
    static Mixture of(List<Double> weights, List<double[]> chances) {
        List<double[]> different = new ArrayList<>();
        List<Double> sums = new ArrayList<>();
        double total = 0;
        for (int i = 0; i < weights.size(); i++) {
            total += weights.get(i);
            int at = 0;
            while (at < different.size() && !same(different.get(at), chances.get(i))) {
                at++;
            }
            if (at == different.size()) {
                different.add(chances.get(i));
                sums.add(weights.get(i));
            } else {
                sums.set(at, sums.get(at) + weights.get(i));
            }
        }
        if (!(total > 0)) {
            throw new IllegalArgumentException("a mixture has parts of some weight, but theirs sum to " + total);
        }
        double[] shares = new double[sums.size()];
        for (int a = 0; a < shares.length; a++) {
            shares[a] = sums.get(a) / total;
        }
        return new Mixture(shares, different.toArray(double[][]::new));
    }

    static boolean same(double[] one, double[] other) {
        for (int x = 0; x < one.length; x++) {
            if ((one[x] == 0) != (other[x] == 0) || Math.abs(one[x] - other[x]) > SAME) {
                return false;
            }
        }
        return true;
    }

    int size() {
        return weights.length;
    }

    int classes() {
        return chances[0].length;
    }

    double weight(int part) {
        return weights[part];
    }

    double[] chances(int part) {
        return chances[part];
    }

    /** The natural logarithm of the chance that so many animals fall into each class, in one order. */
    double log(int[] counts) {
        double most = Double.NEGATIVE_INFINITY;
        double[] terms = new double[weights.length];
        for (int a = 0; a < terms.length; a++) {
            double term = logWeights[a];
            for (int x = 0; x < counts.length; x++) {
                if (counts[x] > 0) {
                    term += counts[x] * logs[a][x];
                }
            }
            terms[a] = term;
            most = Math.max(most, term);
        }
        if (most == Double.NEGATIVE_INFINITY) {
            return most;
        }
        double sum = 0;
        for (double term : terms) {
            sum += Math.exp(term - most);
        }
        return most + Math.log(sum);
    }

    /**
     * The same mixtures with classes put together that say the same of everything: where the chances of two classes stand in one proportion
     * in all parts of all mixtures, which of the two an animal falls into tells nothing (they are no part of a sufficient statistic). Classes
     * that no part has are left out.
     */
    static List<Mixture> reduced(List<Mixture> mixtures) {
        int classes = mixtures.get(0).classes();
        List<double[]> profiles = new ArrayList<>();
        int[] to = new int[classes];
        for (int x = 0; x < classes; x++) {
            double[] profile = profile(mixtures, x);
            to[x] = -1;
            if (profile.length > 0) {
                int at = 0;
                while (at < profiles.size() && !same(profiles.get(at), profile)) {
                    at++;
                }
                if (at == profiles.size()) {
                    profiles.add(profile);
                }
                to[x] = at;
            }
        }
        List<Mixture> reduced = new ArrayList<>();
        for (Mixture one : mixtures) {
            double[][] less = new double[one.size()][profiles.size()];
            for (int a = 0; a < less.length; a++) {
                for (int x = 0; x < classes; x++) {
                    if (to[x] >= 0) {
                        less[a][to[x]] += one.chances[a][x];
                    }
                }
            }
            reduced.add(new Mixture(one.weights, less));
        }
        return reduced;
    }

    /** What the chances of a class are in all parts, up to a factor; empty if they are 0. */
    private static double[] profile(List<Mixture> mixtures, int x) {
        double[] profile = mixtures.stream()
                .flatMap(one -> List.of(one.chances).stream())
                .mapToDouble(part -> part[x])
                .toArray();
        double sum = 0;
        for (double one : profile) {
            sum += one;
        }
        if (sum == 0) {
            return new double[0];
        }
        for (int i = 0; i < profile.length; i++) {
            profile[i] /= sum;
        }
        return profile;
    }
}
