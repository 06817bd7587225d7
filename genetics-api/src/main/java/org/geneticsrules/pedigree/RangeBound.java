package org.geneticsrules.pedigree;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Sex;

/**
 * An upper bound of kinship if each parent that is not recorded may be any recorded animal that could have been.
 *
 * <p>Nodes are the individuals, the mixtures, and the <i>open</i> parents: those not recorded, each one animal for its litter or, above a
 * founder, for that founder. Every coefficient begins with the bound 1 and is lowered, pass by pass, to what the others allow:
 *
 * <pre>
 *   kit i:      f(i, j) = (f(dam, j) + f(sire, j)) / 2    if i is no ancestor of j
 *   mixture m:  f(m, j) = sum of shares f(s, j)           if no kit of m is j or an ancestor of j
 *   open p:     f(p, j) is that of a recorded animal which p may be; or p is a stranger, and j's own sources decide
 * </pre>
 *
 * <p>If it is not known which of i and j is no ancestor of the other, the larger of both ways is taken; if neither can be, the smaller.
 * Whatever animals the open parents are, the true coefficients satisfy these rules, so after any pass they are at most the bounds. Where
 * dates of birth order all animals, the passes end by themselves; else they are ended when little changes.
 */
final class RangeBound {

    private static final int MOST_INDIVIDUALS = 400;
    private static final double MOST_STEPS = 3e7;
    private static final int MOST_PASSES = 100;
    private static final double LITTLE = 1e-9;

    /**
     * A node.
     *
     * @param kits the individual that it is, or those that come from it
     * @param sources the nodes it comes from, with shares; none for an open parent and for a founder whose parents can be nobody recorded
     * @param mayBe the individuals that an open parent may be
     */
    private record Node(
            Kind kind, List<Integer> kits, List<Integer> sources, List<Double> shares, List<Integer> mayBe) {}

    private enum Kind {
        INDIVIDUAL,
        MIXTURE,
        OPEN
    }

    private final Links links;
    private final List<Individual> individuals;
    private final List<Litter> litters;
    private final List<Node> nodes = new ArrayList<>();
    private final List<Optional<LocalDate>> born = new ArrayList<>();

    /** For each individual all that it descends from, or may. */
    private final List<BitSet> ancestors = new ArrayList<>();

    private double[][] bound = new double[0][];

    private RangeBound(Pedigree pedigree) {
        links = pedigree.links;
        individuals = new ArrayList<>(pedigree.individuals().values());
        litters = new ArrayList<>(pedigree.litters().values());
        if (individuals.size() > MOST_INDIVIDUALS) {
            throw tooLarge("individuals", individuals.size(), MOST_INDIVIDUALS);
        }
        for (Individual one : individuals) {
            born.add(pedigree.bornOf(one.id()));
            ancestors.add(new BitSet());
        }
        for (String id : pedigree.order()) {
            int at = links.at(id);
            for (int parent : links.parentsOf(at)) {
                ancestors.get(at).set(parent);
                ancestors.get(at).or(ancestors.get(parent));
            }
        }
    }

    static RangeBound of(Pedigree pedigree) {
        RangeBound range = new RangeBound(pedigree);
        range.nodes();
        double candidates = 0;
        for (Node node : range.nodes) {
            candidates += 1 + node.mayBe.size();
        }
        double steps = candidates * range.nodes.size();
        if (steps > MOST_STEPS) {
            throw tooLarge("comparisons for each pass", steps, MOST_STEPS);
        }
        range.lower();
        return range;
    }

    private static TooLargeException tooLarge(String what, double estimate, double limit) {
        return new TooLargeException(what, estimate, limit, "ask it of the part of the pedigree that matters");
    }

    /** The bound for two individuals, by their positions. */
    double between(int one, int other) {
        return Math.min(1, bound[one][other]);
    }

    private void nodes() {
        for (int i = 0; i < individuals.size(); i++) {
            nodes.add(new Node(Kind.INDIVIDUAL, List.of(i), List.of(), List.of(), List.of()));
        }
        for (int i = 0; i < individuals.size(); i++) {
            if (links.litterOf[i] == Links.NONE) {
                List<Integer> self = List.of(i);
                List<Integer> dams = mayBe(self, Sex.FEMALE);
                List<Integer> sires = mayBe(self, Sex.MALE);
                if (!dams.isEmpty() || !sires.isEmpty()) {
                    kit(i, open(self, dams), open(self, sires));
                }
            }
        }
        for (int litter = 0; litter < litters.size(); litter++) {
            family(litter);
        }
    }

    private void family(int litter) {
        List<Integer> kits = new ArrayList<>();
        for (int kit : links.kits[litter]) {
            kits.add(kit);
        }
        if (kits.isEmpty()) {
            return;
        }
        int dam = links.dam[litter] == Links.NONE ? open(kits, mayBe(kits, Sex.FEMALE)) : links.dam[litter];
        if (litters.get(litter).sires() instanceof Paternity.Candidates several) {
            List<Integer> sources = new ArrayList<>();
            List<Double> shares = new ArrayList<>();
            for (Paternity.Candidate candidate : several.candidates()) {
                sources.add(candidate.male().map(links::at).orElseGet(() -> open(kits, mayBe(kits, Sex.MALE))));
                shares.add(candidate.share().toDouble());
            }
            int whole = several.perKit() ? Links.NONE : mixture(kits, sources, shares);
            for (int kit : kits) {
                kit(kit, dam, several.perKit() ? mixture(List.of(kit), sources, shares) : whole);
            }
            return;
        }
        int[] male = links.males[litter];
        int sire = male.length == 1 ? male[0] : open(kits, mayBe(kits, Sex.MALE));
        kits.forEach(kit -> kit(kit, dam, sire));
    }

    private void kit(int individual, int dam, int sire) {
        nodes.set(
                individual,
                new Node(Kind.INDIVIDUAL, List.of(individual), List.of(dam, sire), List.of(0.5, 0.5), List.of()));
    }

    private int open(List<Integer> kits, List<Integer> mayBe) {
        nodes.add(new Node(Kind.OPEN, kits, List.of(), List.of(), mayBe));
        return nodes.size() - 1;
    }

    private int mixture(List<Integer> kits, List<Integer> sources, List<Double> shares) {
        if (sources.size() == 1) {
            return sources.get(0);
        }
        nodes.add(new Node(Kind.MIXTURE, kits, sources, shares, List.of()));
        return nodes.size() - 1;
    }

    /** The recorded animals that could be the parent, of one sex, of some kits. */
    private List<Integer> mayBe(List<Integer> kits, Sex sex) {
        List<Integer> found = new ArrayList<>();
        for (int i = 0; i < individuals.size(); i++) {
            int candidate = i;
            if (sexOf(i).filter(other -> other != sex).isEmpty()
                    && kits.stream().noneMatch(kit -> cannotDescend(kit, candidate))) {
                found.add(i);
            }
        }
        return found;
    }

    private Optional<Sex> sexOf(int individual) {
        for (int litter : links.littersOf(individual)) {
            return Optional.of(links.dam[litter] == individual ? Sex.FEMALE : Sex.MALE);
        }
        return individuals.get(individual).sex();
    }

    /** Whether the first can in no case descend from the second: it is not younger, is its ancestor, its litter-mate or the same. */
    private boolean cannotDescend(int young, int old) {
        boolean notYounger = born.get(young).isPresent()
                && born.get(old).isPresent()
                && !born.get(young).get().isAfter(born.get(old).get());
        return young == old
                || notYounger
                || ancestors.get(old).get(young)
                || (links.litterOf[young] != Links.NONE && links.litterOf[young] == links.litterOf[old]);
    }

    private boolean cannotDescend(Node young, Node old) {
        for (int kit : old.kits) {
            for (int other : young.kits) {
                boolean own = other == kit && old.kind != Kind.INDIVIDUAL;
                if (own || !cannotDescend(other, kit)) {
                    return false;
                }
            }
        }
        return true;
    }

    private void lower() {
        int count = nodes.size();
        bound = new double[count][count];
        for (double[] row : bound) {
            Arrays.fill(row, 1);
        }
        boolean[][] fromFirst = new boolean[count][count];
        for (int i = 0; i < count; i++) {
            for (int j = 0; j < count; j++) {
                fromFirst[i][j] = cannotDescend(nodes.get(j), nodes.get(i));
            }
        }
        double change = 1;
        for (int pass = 0; pass < MOST_PASSES && change > LITTLE; pass++) {
            change = 0;
            for (int i = 0; i < count; i++) {
                for (int j = 0; j <= i; j++) {
                    double now = i == j ? self(i) : pair(i, j, fromFirst[i][j], fromFirst[j][i]);
                    change = Math.max(change, bound[i][j] - now);
                    double lower = Math.min(now, bound[i][j]);
                    bound[i][j] = lower;
                    bound[j][i] = lower;
                }
            }
        }
    }

    private double self(int i) {
        Node node = nodes.get(i);
        double most = 0.5;
        switch (node.kind) {
            case INDIVIDUAL -> {
                if (!node.sources.isEmpty()) {
                    most = (1 + bound[node.sources.get(0)][node.sources.get(1)]) / 2;
                }
            }
            case MIXTURE -> {
                most = 0;
                for (int k = 0; k < node.sources.size(); k++) {
                    int source = node.sources.get(k);
                    most += node.shares.get(k) * bound[source][source];
                }
            }
            case OPEN -> {
                for (int one : node.mayBe) {
                    most = Math.max(most, bound[one][one]);
                }
            }
        }
        return most;
    }

    /**
     * The bound of two nodes.
     *
     * @param fromI whether nothing of j descends from i, so that i's sources decide
     * @param fromJ whether nothing of i descends from j
     */
    private double pair(int i, int j, boolean fromI, boolean fromJ) {
        Node one = nodes.get(i);
        Node other = nodes.get(j);
        if (one.kind == Kind.OPEN || other.kind == Kind.OPEN) {
            return Math.max(open(one, i, j), open(other, j, i));
        }
        boolean founderI = one.sources.isEmpty();
        boolean founderJ = other.sources.isEmpty();
        if (founderI || founderJ) {
            return founderI && founderJ ? 0 : founderI ? mean(other, i) : mean(one, j);
        }
        double byI = mean(one, j);
        double byJ = mean(other, i);
        if (fromI && fromJ) {
            return Math.min(byI, byJ);
        }
        return fromI ? byI : fromJ ? byJ : Math.max(byI, byJ);
    }

    /** What a node allows if it is an open parent: it is one of the recorded, or a stranger, and then the other's sources decide. */
    private double open(Node node, int self, int other) {
        if (node.kind != Kind.OPEN) {
            return 0;
        }
        double most = mean(nodes.get(other), self);
        for (int one : node.mayBe) {
            most = Math.max(most, bound[one][other]);
        }
        return most;
    }

    /** The mean over a node's sources; 0 if it has none. */
    private double mean(Node node, int other) {
        double sum = 0;
        for (int k = 0; k < node.sources.size(); k++) {
            sum += node.shares.get(k) * bound[node.sources.get(k)][other];
        }
        return sum;
    }
}
