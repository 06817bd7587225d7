package org.geneticsrules.pedigree;

import java.util.Arrays;
import java.util.BitSet;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import org.geneticsrules.probability.Probability;

/**
 * Coefficients of kinship and of inbreeding in whole registries, in floating point. They mean what those of {@link Kinship} mean, and
 * differ from them by rounding alone.
 *
 * <p>The matrix of kinship is never built. It is the product T d T', where T(i, j) is the share of i's alleles that come from j along all
 * lines of descent, and d(j) is what the draws of alleles from the sources of j to j add: 1/2 for a founder, 1/2 - (f(dam, dam) + f(sire,
 * sire)) / 4 for a kit, and the variance of kinship among its parts for a mixture.
 *
 * <ul>
 *   <li>The inbreeding of all is found litter by litter, walking up from both parents to their ancestors (after Meuwissen and Luo 1992, Genet.
 *       Sel. Evol. 24:305): for n individuals with a ancestors each, n a steps and memory for n.
 *   <li>The kinship of one, or of a weighted group, with all others takes one walk up and one walk down (Colleau 2002, Genet. Sel. Evol.
 *       34:409, from memory): n steps.
 * </ul>
 *
 * <p>Immutable and thread-safe.
 */
public final class RegistryKinship {

    private static final double[] NO_SHARES = {};

    private final Pedigree pedigree;
    private final KinNodes nodes;

    /** Shares of the parts of mixtures, as doubles; none for other nodes. */
    private final double[][] shares;

    /** The kinship of each node with itself. */
    private final double[] self;

    /** The diagonal d. */
    private final double[] added;

    /** How many complete generations the known ancestors of each node add up to; those of a mixture, itself included. */
    private final double[] generations;

    private RegistryKinship(Pedigree pedigree) {
        this.pedigree = pedigree;
        this.nodes = KinNodes.of(pedigree);
        int size = nodes.size();
        this.shares = new double[size][];
        Arrays.fill(shares, NO_SHARES);
        this.self = new double[size];
        this.added = new double[size];
        this.generations = new double[size];
        Walk walk = new Walk(size);
        int lastDam = KinNodes.NONE;
        int lastSire = KinNodes.NONE;
        double last = 0;
        int lastMixture = KinNodes.NONE;
        for (int node = 0; node < size; node++) {
            int[] parts = nodes.parts[node];
            generations[node] = generations(node, parts);
            if (parts.length > 0) {
                if (lastMixture != KinNodes.NONE && nodes.parts[lastMixture] == parts) { // kits of one litter
                    shares[node] = shares[lastMixture];
                    self[node] = self[lastMixture];
                    added[node] = added[lastMixture];
                } else {
                    shares[node] = nodes.shares(node).stream()
                            .mapToDouble(Probability::toDouble)
                            .toArray();
                    mixture(node, parts, walk);
                }
                lastMixture = node;
            } else if (nodes.dam[node] == KinNodes.NONE) {
                self[node] = 0.5;
                added[node] = 0.5;
            } else {
                int dam = nodes.dam[node];
                int sire = nodes.sire[node];
                if (dam != lastDam || sire != lastSire) { // litter-mates mostly stand together and share all
                    last = walk.kinship(dam, sire);
                    lastDam = dam;
                    lastSire = sire;
                }
                self[node] = (1 + last) / 2;
                added[node] = 0.5 - (self[dam] + self[sire]) / 4;
            }
        }
    }

    /**
     * Computes the inbreeding of all individuals.
     *
     * @param pedigree the pedigree
     * @return its kinship
     */
    public static RegistryKinship of(Pedigree pedigree) {
        return new RegistryKinship(pedigree);
    }

    private void mixture(int node, int[] parts, Walk walk) {
        double mean = 0;
        double explained = 0;
        for (int i = 0; i < parts.length; i++) {
            double weight = shares[node][i];
            mean += weight * self[parts[i]];
            explained += weight * weight * self[parts[i]];
            for (int j = 0; j < i; j++) {
                explained += 2 * weight * shares[node][j] * walk.kinship(parts[i], parts[j]);
            }
        }
        self[node] = mean;
        added[node] = Math.max(0, mean - explained);
    }

    /**
     * Returns the coefficient of inbreeding of an individual.
     *
     * @param individual id of an individual
     * @return from 0 to 1
     * @throws IllegalArgumentException if it is not recorded
     */
    public double inbreeding(String individual) {
        return Math.max(0, 2 * self[nodes.node(pedigree, individual)] - 1);
    }

    /**
     * Returns to how many complete generations the recorded ancestors of an individual add up, as {@link
     * Completeness#equivalentGenerations} does with as many generations as there are. A low inbreeding means little where few are recorded.
     *
     * @param individual id of an individual
     * @return 0 if no parent is recorded, 1 if both are and none of theirs, and so on
     * @throws IllegalArgumentException if it is not recorded
     */
    public double generations(String individual) {
        return generations[nodes.node(pedigree, individual)];
    }

    /** What the sources of a node add to it: those of a kit half each, those of a mixture by their shares. */
    private double generations(int node, int[] parts) {
        double sum = 0;
        for (int i = 0; i < parts.length; i++) {
            sum += nodes.shares(node).get(i).toDouble() * known(parts[i]);
        }
        return nodes.dam[node] == KinNodes.NONE ? sum : (known(nodes.dam[node]) + known(nodes.sire[node])) / 2;
    }

    /** The generations known with a node as the first of them: none of a parent that is not recorded. */
    private double known(int node) {
        boolean recorded = nodes.individualOf[node] != KinNodes.NONE;
        return recorded ? 1 + generations[node] : generations[node];
    }

    /**
     * Returns the coefficient of kinship of two individuals.
     *
     * @param one id of an individual
     * @param other id of another, or of the same
     * @return from 0 to 1
     * @throws IllegalArgumentException if one is not recorded
     */
    public double between(String one, String other) {
        int here = nodes.node(pedigree, one);
        int there = nodes.node(pedigree, other);
        return here == there ? self[here] : new Walk(nodes.size()).kinship(here, there);
    }

    /**
     * Returns the coefficients of kinship of one individual with all.
     *
     * @param individual id of an individual
     * @return for every individual its kinship with this one, in the order stated
     * @throws IllegalArgumentException if it is not recorded
     */
    public Map<String, Double> withAll(String individual) {
        double[] weight = new double[nodes.size()];
        weight[nodes.node(pedigree, individual)] = 1;
        double[] product = product(weight);
        Map<String, Double> all = new LinkedHashMap<>();
        pedigree.individuals().keySet().forEach(id -> all.put(id, product[nodes.node(pedigree, id)]));
        return Collections.unmodifiableMap(all);
    }

    /**
     * Returns the mean kinship of each member of a group with the group, itself included (Ballou and Lacy 1995, from memory). Who has a low
     * mean has few close relatives in the group, and carries what is rare there.
     *
     * @param group ids of individuals, for example of all that may have young; each once
     * @return for each member the mean of its kinships with all members, in the order given
     * @throws IllegalArgumentException if the group is empty, names one twice, or one is not recorded
     */
    public Map<String, Double> meanKinship(Collection<String> group) {
        double[] weight = new double[nodes.size()];
        for (String id : group) {
            int node = nodes.node(pedigree, id);
            if (weight[node] != 0) {
                throw new IllegalArgumentException("the group names \"" + id + "\" twice");
            }
            weight[node] = 1.0 / group.size();
        }
        if (group.isEmpty()) {
            throw new IllegalArgumentException("an empty group has no mean kinship");
        }
        double[] product = product(weight);
        Map<String, Double> means = new LinkedHashMap<>();
        group.forEach(id -> means.put(id, product[nodes.node(pedigree, id)]));
        return Collections.unmodifiableMap(means);
    }

    /** Multiplies the matrix with a vector: T' goes from young to old, d scales, T comes back from old to young. */
    private double[] product(double[] weight) {
        double[] vector = weight.clone();
        for (int node = vector.length - 1; node >= 0; node--) {
            int[] parts = nodes.parts[node];
            if (parts.length > 0) {
                for (int i = 0; i < parts.length; i++) {
                    vector[parts[i]] += shares[node][i] * vector[node];
                }
            } else if (nodes.dam[node] != KinNodes.NONE) {
                vector[nodes.dam[node]] += vector[node] / 2;
                vector[nodes.sire[node]] += vector[node] / 2;
            }
        }
        for (int node = 0; node < vector.length; node++) {
            double sum = vector[node] * added[node];
            int[] parts = nodes.parts[node];
            if (parts.length > 0) {
                for (int i = 0; i < parts.length; i++) {
                    sum += shares[node][i] * vector[parts[i]];
                }
            } else if (nodes.dam[node] != KinNodes.NONE) {
                sum += (vector[nodes.dam[node]] + vector[nodes.sire[node]]) / 2;
            }
            vector[node] = sum;
        }
        return vector;
    }

    /** Walks up from two nodes to all that they come from, the youngest first; the arrays are cleared as it goes. */
    private final class Walk {
        private final double[] fromOne;
        private final double[] fromOther;
        private final BitSet open;

        Walk(int size) {
            fromOne = new double[size];
            fromOther = new double[size];
            open = new BitSet(size);
        }

        double kinship(int one, int other) {
            if (one == other) {
                return self[one];
            }
            fromOne[one] = 1;
            fromOther[other] = 1;
            open.set(one);
            open.set(other);
            double sum = 0;
            for (int node = Math.max(one, other); node >= 0; node = node == 0 ? -1 : open.previousSetBit(node - 1)) {
                double mine = fromOne[node];
                double theirs = fromOther[node];
                fromOne[node] = 0;
                fromOther[node] = 0;
                open.clear(node);
                sum += mine * theirs * added[node];
                int[] parts = nodes.parts[node];
                if (parts.length > 0) {
                    for (int i = 0; i < parts.length; i++) {
                        up(parts[i], shares[node][i], mine, theirs);
                    }
                } else if (nodes.dam[node] != KinNodes.NONE) {
                    up(nodes.dam[node], 0.5, mine, theirs);
                    up(nodes.sire[node], 0.5, mine, theirs);
                }
            }
            return sum;
        }

        private void up(int node, double share, double mine, double theirs) {
            fromOne[node] += share * mine;
            fromOther[node] += share * theirs;
            open.set(node);
        }
    }
}
