package org.geneticsrules.pedigree;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.geneticsrules.probability.Probability;

/**
 * The pedigree as kinship sees it: nodes of three kinds, each after those it comes from.
 *
 * <ul>
 *   <li>a <b>founder</b> comes from nobody: an individual in no litter, or a parent that is not recorded, one for its litter;
 *   <li>a <b>kit</b> comes from two nodes;
 *   <li>a <b>mixture</b> is one of several nodes, each with its share: the sire of a litter, or of one kit, who is not certain.
 * </ul>
 */
final class KinNodes {

    static final int NONE = -1;

    private static final int[] NOBODY = {};

    /** The node of each individual, by its position in the pedigree. */
    final int[] nodeOf;

    /** The individual of each node; {@link #NONE} for parents that are not recorded and for mixtures. */
    final int[] individualOf;

    /** The parents of each node that is a kit; {@link #NONE} for others. */
    final int[] dam;

    final int[] sire;

    /** The nodes that each mixture is one of; none for others. */
    final int[][] parts;

    private final List<List<Probability>> shares = new ArrayList<>();

    private int size;

    private KinNodes(int individuals, int most) {
        nodeOf = new int[individuals];
        individualOf = new int[most];
        dam = new int[most];
        sire = new int[most];
        parts = new int[most][];
        Arrays.fill(parts, NOBODY);
        Arrays.fill(nodeOf, NONE);
        Arrays.fill(individualOf, NONE);
        Arrays.fill(dam, NONE);
        Arrays.fill(sire, NONE);
    }

    static KinNodes of(Pedigree pedigree) {
        int count = pedigree.individuals().size();
        int most = count;
        for (Litter litter : pedigree.litters().values()) {
            boolean several = litter.sires() instanceof Paternity.Candidates;
            int unrecorded = litter.sires() instanceof Paternity.Candidates candidates
                    ? candidates.candidates().size()
                    : 1;
            most += 1 + unrecorded + (several ? Math.max(1, litter.kits().size()) : 0);
        }
        KinNodes nodes = new KinNodes(count, most);
        Family[] families = new Family[pedigree.litters().size()];
        List<Litter> litters = new ArrayList<>(pedigree.litters().values());
        for (String id : pedigree.order()) {
            int individual = pedigree.links.at(id);
            int litter = pedigree.links.litterOf[individual];
            if (litter == Links.NONE) {
                nodes.add(individual, NONE, NONE);
                continue;
            }
            Family family = families[litter];
            if (family == null) {
                family = nodes.family(litters.get(litter), pedigree.links);
                families[litter] = family;
            }
            int father = family.sire == NONE ? nodes.mixture(family.candidates) : family.sire;
            nodes.add(individual, family.dam, father);
        }
        return nodes;
    }

    /**
     * The parents of a litter as nodes.
     *
     * @param dam the dam
     * @param sire the sire of all kits; {@link #NONE} if each has its own, which is one of the candidates
     */
    private record Family(int dam, int sire, Mixture candidates) {}

    /** Several nodes with their shares; all kits whose sires are drawn alike have one. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    private record Mixture(int[] of, List<Probability> shares) {
        static final Mixture NONE = new Mixture(NOBODY, List.of());
    }

    private Family family(Litter litter, Links links) {
        int mother = litter.dam().map(id -> nodeOf[links.at(id)]).orElseGet(this::unrecorded);
        if (litter.sires() instanceof Paternity.Known known) {
            return new Family(mother, nodeOf[links.at(known.sire())], Mixture.NONE);
        }
        if (litter.sires() instanceof Paternity.Candidates several) {
            List<Paternity.Candidate> males = several.candidates();
            int[] of = new int[males.size()];
            for (int i = 0; i < of.length; i++) {
                of[i] = males.get(i).male().map(id -> nodeOf[links.at(id)]).orElseGet(this::unrecorded);
            }
            if (of.length == 1) {
                return new Family(mother, of[0], Mixture.NONE);
            }
            Mixture candidates = new Mixture(
                    of, males.stream().map(Paternity.Candidate::share).toList());
            return several.perKit()
                    ? new Family(mother, NONE, candidates)
                    : new Family(mother, mixture(candidates), Mixture.NONE);
        }
        return new Family(mother, unrecorded(), Mixture.NONE);
    }

    private int unrecorded() {
        shares.add(List.of());
        return size++;
    }

    private int mixture(Mixture candidates) {
        parts[size] = candidates.of;
        shares.add(candidates.shares);
        return size++;
    }

    private void add(int individual, int mother, int father) {
        nodeOf[individual] = size;
        individualOf[size] = individual;
        dam[size] = mother;
        sire[size] = father;
        shares.add(List.of());
        size++;
    }

    int size() {
        return size;
    }

    /** Whether a node comes from nobody. */
    boolean isFounder(int node) {
        return dam[node] == NONE && parts[node].length == 0;
    }

    /** The shares of the parts of a mixture. */
    List<Probability> shares(int mixture) {
        return shares.get(mixture);
    }

    /** The nodes that a node comes from. */
    int[] sources(int node) {
        return dam[node] == NONE ? parts[node] : new int[] {dam[node], sire[node]};
    }

    /** The given nodes and all they come from, in order. */
    int[] closure(int... from) {
        boolean[] reached = new boolean[size];
        int count = 0;
        for (int node : from) {
            reached[node] = true;
        }
        for (int node = size - 1; node >= 0; node--) {
            if (reached[node]) {
                count++;
                for (int source : sources(node)) {
                    reached[source] = true;
                }
            }
        }
        int[] all = new int[count];
        int next = 0;
        for (int node = 0; node < size; node++) {
            if (reached[node]) {
                all[next++] = node;
            }
        }
        return all;
    }

    /** The node of an individual. */
    int node(Pedigree pedigree, String id) {
        return nodeOf[pedigree.links.at(pedigree.individual(id).id())];
    }
}
