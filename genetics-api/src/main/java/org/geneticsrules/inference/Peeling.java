package org.geneticsrules.inference;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Exact posteriors where relations form no loop: messages from family to family, up and down (Elston &amp; Stewart 1971, Hum. Hered.
 * 21:523; Cannings, Thompson &amp; Skolnick 1978, Adv. Appl. Probab. 10:26).
 *
 * <p>A family is a pair of parents with all their kits. It hears from each member what all else is known of that one, and tells each what
 * the others say. What a family or an animal tells one of its neighbours is the product of what it heard from all others, taken from
 * products over those before and those after, so that nothing is divided.
 */
final class Peeling {

    /** A product is scaled after so many factors, so that those of large families do not underflow. */
    private static final int OFTEN = 8;

    /** A pair of parents and their kits, by numbers of variables. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    private record Family(int sire, int dam, int[] kits, SparseTable[] tables) {

        int size() {
            return kits.length + 2;
        }

        int member(int place) {
            return place == 0 ? sire : place == 1 ? dam : kits[place - 2];
        }
    }

    private final double[][] own;
    private final List<Family> families;

    /** For each variable, its families. */
    private final int[][] familiesOf;

    /** Families from the root on, each after the one that it is reached from. */
    private final int[] order;

    /** For each family, the place of the member through which it is reached. */
    private final int[] entrance;

    private final int root;
    private final double atFirst;
    private double log;

    private Peeling(
            double[][] own, List<Family> families, int[][] familiesOf, int[] order, int[] entrance, double log) {
        this.own = own;
        this.families = families;
        this.familiesOf = familiesOf;
        this.order = order;
        this.entrance = entrance;
        this.root = 0;
        this.atFirst = log;
    }

    /**
     * Prepares a connected graph for peeling.
     *
     * @param graph the graph
     * @param tables tables without zeros, shared by graphs
     * @return empty if it has other factors than those of single variables and of two parents and a kit, or a loop
     */
    static Optional<Peeling> of(FactorGraph graph, IdentityHashMap<double[], SparseTable> tables) {
        double[][] own = new double[graph.size()][];
        for (int v = 0; v < own.length; v++) {
            own[v] = new double[graph.states(v)];
            Arrays.fill(own[v], 1);
        }
        double log = 0;
        Map<Long, List<Factor>> byParents = new LinkedHashMap<>();
        for (Factor factor : graph.factors()) {
            int[] variables = factor.variables();
            if (variables.length == 1) {
                double[] mine = own[variables[0]];
                for (int state = 0; state < mine.length; state++) {
                    mine[state] *= factor.table()[state];
                }
                double scale = scale(mine);
                log += Math.log(scale);
            } else if (variables.length == 3) {
                byParents
                        .computeIfAbsent((long) variables[0] << 32 | variables[1], key -> new ArrayList<>())
                        .add(factor);
            } else {
                return Optional.empty();
            }
        }
        List<Family> families = new ArrayList<>();
        byParents.values().forEach(kits -> families.add(family(kits, graph, tables)));
        return ordered(own, families, log);
    }

    private static Family family(List<Factor> kits, FactorGraph graph, IdentityHashMap<double[], SparseTable> tables) {
        int sire = kits.get(0).variables()[0];
        int dam = kits.get(0).variables()[1];
        int[] numbers = new int[kits.size()];
        SparseTable[] sparse = new SparseTable[kits.size()];
        for (int k = 0; k < numbers.length; k++) {
            numbers[k] = kits.get(k).variables()[2];
            double[] table = kits.get(k).table();
            int states = graph.states(numbers[k]);
            sparse[k] = tables.computeIfAbsent(
                    table, key -> SparseTable.of(key, graph.states(sire), graph.states(dam), states));
        }
        return new Family(sire, dam, numbers, sparse);
    }

    /** The cells of all tables that are made, a measure of the work. */
    double cells() {
        double cells = 0;
        for (Family family : families) {
            cells += (double) own[family.sire()].length * own[family.dam()].length * (family.kits().length + 1);
        }
        return cells;
    }

    /** New shared tables. */
    static IdentityHashMap<double[], SparseTable> tables() {
        return new IdentityHashMap<>();
    }

    private static Optional<Peeling> ordered(double[][] own, List<Family> families, double log) {
        int[] counts = new int[own.length];
        int links = 0;
        for (Family family : families) {
            for (int place = 0; place < family.size(); place++) {
                counts[family.member(place)]++;
                links++;
            }
        }
        if (links != own.length + families.size() - 1) {
            return Optional.empty(); // a tree has one link less than it has nodes
        }
        int[][] familiesOf = new int[own.length][];
        Arrays.setAll(familiesOf, v -> new int[counts[v]]);
        for (int f = 0; f < families.size(); f++) {
            for (int place = 0; place < families.get(f).size(); place++) {
                int member = families.get(f).member(place);
                familiesOf[member][--counts[member]] = f;
            }
        }
        int[] order = new int[families.size()];
        int[] entrance = new int[families.size()];
        Arrays.fill(entrance, -1);
        int found = enter(0, -1, familiesOf, families, order, entrance, 0);
        for (int i = 0; i < found; i++) {
            Family family = families.get(order[i]);
            for (int place = 0; place < family.size(); place++) {
                if (place != entrance[order[i]]) {
                    found = enter(family.member(place), order[i], familiesOf, families, order, entrance, found);
                }
            }
        }
        return found == families.size()
                ? Optional.of(new Peeling(own, families, familiesOf, order, entrance, log))
                : Optional.empty();
    }

    private static int enter(
            int member, int from, int[][] familiesOf, List<Family> families, int[] order, int[] entrance, int before) {
        int found = before;
        for (int family : familiesOf[member]) {
            if (family != from && entrance[family] < 0) {
                Family one = families.get(family);
                for (int place = 0; place < one.size(); place++) {
                    if (one.member(place) == member) {
                        entrance[family] = place;
                    }
                }
                order[found++] = family;
            }
        }
        return found;
    }

    /** Sends all messages. */
    Posteriors propagate() {
        log = atFirst;
        int count = families.size();
        double[] @Nullable [] up = new double[count][]; // from each family to the member it is reached through
        double[] @Nullable [] heard =
                new double[own.length][]; // by each animal from the families below it, with its own
        for (int i = count - 1; i >= 0; i--) {
            Family family = families.get(order[i]);
            double[][] messages = new double[family.size()][];
            for (int place = 0; place < messages.length; place++) {
                if (place != entrance[order[i]]) {
                    messages[place] = below(family.member(place), order[i], up, heard);
                }
            }
            double[] message = told(family, messages, entrance[order[i]]);
            if (!scaled(message)) {
                return Posteriors.impossible(own.length);
            }
            up[order[i]] = message;
        }
        double[] atRoot = below(root, -1, up, heard);
        double total = Arrays.stream(atRoot).sum();
        if (total == 0) {
            return Posteriors.impossible(own.length);
        }
        double logLikelihood = log + Math.log(total);
        double[][] found = new double[own.length][];
        double[] @Nullable [] down = new double[own.length][]; // to each animal from the family above it
        finish(root, up, down, found);
        for (int f : order) {
            Family family = families.get(f);
            double[][] messages = new double[family.size()][];
            for (int place = 0; place < messages.length; place++) {
                int member = family.member(place);
                messages[place] =
                        place == entrance[f] ? others(member, f, up, down) : Objects.requireNonNull(heard[member]);
            }
            List<double[]> all = toldAll(family, messages, entrance[f]);
            for (int place = 0; place < messages.length; place++) {
                if (place != entrance[f]) {
                    int member = family.member(place);
                    scale(all.get(place));
                    down[member] = all.get(place);
                    finish(member, up, down, found);
                }
            }
        }
        return new Posteriors(found, logLikelihood);
    }

    /** What an animal itself and the families reached through it say. */
    private double[] below(int member, int above, double[] @Nullable [] up, double[] @Nullable [] heard) {
        double[] product = own[member].clone();
        int multiplied = 0;
        for (int family : familiesOf[member]) {
            if (family != above) {
                times(product, Objects.requireNonNull(up[family]));
                if (++multiplied % OFTEN == 0) {
                    scaled(product);
                }
            }
        }
        heard[member] = product;
        return product;
    }

    /** What all but one family of an animal say of it. */
    private double[] others(int member, int except, double[] @Nullable [] up, double[] @Nullable [] down) {
        double[] product = own[member].clone();
        double[] above = down[member];
        if (above != null) {
            times(product, above);
        }
        int multiplied = 0;
        for (int family : familiesOf[member]) {
            if (family != except && families.get(family).member(entrance[family]) == member) {
                times(product, Objects.requireNonNull(up[family]));
                if (++multiplied % OFTEN == 0) {
                    scale(product);
                }
            }
        }
        return product;
    }

    private void finish(int member, double[] @Nullable [] up, double[] @Nullable [] down, double[][] found) {
        double[] product = others(member, -1, up, down);
        double total = Arrays.stream(product).sum();
        for (int state = 0; state < product.length; state++) {
            product[state] /= total;
        }
        found[member] = product;
    }

    private static void times(double[] product, double[] other) {
        for (int i = 0; i < product.length; i++) {
            product[i] *= other[i];
        }
    }

    /** What a family tells one of its members. */
    private double[] told(Family family, double[][] messages, int place) {
        double[] pairs = ones(family);
        double[] one = new double[pairs.length];
        for (int k = 0; k < family.kits().length; k++) {
            if (place != k + 2) {
                family.tables()[k].likelihoods(messages[k + 2], one);
                times(pairs, one);
                if ((k + 1) % OFTEN == 0) {
                    scaled(pairs);
                }
            }
        }
        return tell(family, pairs, messages, place);
    }

    /** What weights of pairs of parents, and what is known of the parents, say of a member. */
    private double[] tell(Family family, double[] pairs, double[][] messages, int place) {
        int dams = own[family.dam()].length;
        int sires = pairs.length / dams;
        if (place > 1) {
            double[] weighed = pairs.clone();
            for (int pair = 0; pair < weighed.length; pair++) {
                weighed[pair] *= messages[0][pair / dams] * messages[1][pair % dams];
            }
            return family.tables()[place - 2].kit(weighed);
        }
        double[] message = new double[place == 0 ? sires : dams];
        for (int s = 0; s < sires; s++) {
            for (int d = 0; d < dams; d++) {
                double weight = pairs[s * dams + d];
                if (place == 0) {
                    message[s] += weight * messages[1][d];
                } else {
                    message[d] += weight * messages[0][s];
                }
            }
        }
        return message;
    }

    /** What a family tells all its members but one, in their places. */
    private List<double[]> toldAll(Family family, double[][] messages, int except) {
        int kits = family.kits().length;
        double[][] before = new double[kits + 1][];
        double[][] likelihoods = new double[kits][];
        before[0] = ones(family);
        for (int k = 0; k < kits; k++) {
            likelihoods[k] = new double[before[0].length];
            family.tables()[k].likelihoods(messages[k + 2], likelihoods[k]);
            before[k + 1] = before[k].clone();
            times(before[k + 1], likelihoods[k]);
            if ((k + 1) % OFTEN == 0) {
                scale(before[k + 1]);
            }
        }
        double[][] told = new double[family.size()][0];
        for (int place = 0; place < 2; place++) {
            if (place != except) {
                told[place] = tell(family, before[kits], messages, place);
            }
        }
        double[] after = ones(family);
        for (int k = kits - 1; k >= 0; k--) {
            if (k + 2 != except) {
                double[] others = before[k].clone();
                times(others, after);
                told[k + 2] = tell(family, others, messages, k + 2);
            }
            times(after, likelihoods[k]);
            if ((kits - k) % OFTEN == 0) {
                scale(after);
            }
        }
        return Arrays.asList(told);
    }

    private double[] ones(Family family) {
        double[] pairs = new double[own[family.sire()].length * own[family.dam()].length];
        Arrays.fill(pairs, 1);
        return pairs;
    }

    /** Divides by the largest weight and notes it in the likelihood; false if there is none. */
    private boolean scaled(double[] weights) {
        double most = scale(weights);
        log += most > 0 ? Math.log(most) : 0;
        return most > 0;
    }

    private static double scale(double[] weights) {
        double most = 0;
        for (double weight : weights) {
            most = Math.max(most, weight);
        }
        if (most > 0 && most != 1) {
            for (int i = 0; i < weights.length; i++) {
                weights[i] /= most;
            }
        }
        return most;
    }
}
