package org.geneticsrules.cross;

import com.google.common.collect.ImmutableList;
import java.math.BigInteger;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Sex;

/**
 * What two uncertain parents pass on: at each locus, averaged over what they may be, or class by class.
 *
 * <p>Parents whose young are distributed alike at a locus are one class. Averages serve questions about one kit; classes serve
 * questions about several kits, which share their parents.
 */
final class ParentPairs {

    /** More combinations of classes than this are not gone through. */
    private static final double MOST_COMBINATIONS = 1 << 18;

    private final Model model;
    private final List<ParentBox> sires;
    private final List<ParentBox> dams;

    ParentPairs(Model model, List<ParentBox> sires, List<ParentBox> dams) {
        this.model = model;
        this.sires = sires;
        this.dams = dams;
    }

    /** Receives one combination of boxes or classes. */
    interface Visitor {
        /**
         * Receives one combination.
         *
         * @param weight its weight among all combinations
         * @param young by locus, the weights of the expressions of the young
         */
        void visit(BigInteger weight, Map<String, BigInteger[]> young);
    }

    /** Visits every pair of boxes with its average young; the weights of the young already carry the weight of the boxes. */
    void averages(Set<String> read, Visitor visitor) {
        for (ParentBox sire : sires) {
            for (ParentBox dam : dams) {
                BigInteger outside = mass(sire, read).multiply(mass(dam, read));
                Map<String, BigInteger[]> young = new LinkedHashMap<>();
                for (String name : read) {
                    Locus locus = model.locus(name);
                    young.put(name, young(locus, gametes(locus, sire.at(name)), gametes(locus, dam.at(name))));
                }
                visitor.visit(outside, young);
            }
        }
    }

    /** Visits every combination of classes of parents over the loci read. */
    void classes(Set<String> read, Visitor visitor) {
        List<String> loci = ImmutableList.copyOf(read);
        for (ParentBox sire : sires) {
            for (ParentBox dam : dams) {
                List<Map<List<BigInteger>, BigInteger>> byLocus = loci.stream()
                        .map(name -> classes(model.locus(name), sire.at(name), dam.at(name)))
                        .toList();
                double combinations = byLocus.stream().mapToDouble(Map::size).reduce(1, (a, b) -> a * b);
                if (combinations * sires.size() * dams.size() > MOST_COMBINATIONS) {
                    throw new TooLargeException(
                            "combinations of what the parents may be",
                            combinations * sires.size() * dams.size(),
                            MOST_COMBINATIONS,
                            "ask about fewer traits, or state more of the parents' genotypes.");
                }
                BigInteger outside = mass(sire, read).multiply(mass(dam, read));
                combine(loci, byLocus, 0, outside, new LinkedHashMap<>(), visitor);
            }
        }
    }

    private static void combine(
            List<String> loci,
            List<Map<List<BigInteger>, BigInteger>> byLocus,
            int level,
            BigInteger weight,
            Map<String, BigInteger[]> young,
            Visitor visitor) {
        if (level == loci.size()) {
            visitor.visit(weight, young);
            return;
        }
        byLocus.get(level).forEach((shares, share) -> {
            young.put(loci.get(level), shares.toArray(BigInteger[]::new));
            combine(loci, byLocus, level + 1, weight.multiply(share), young, visitor);
        });
    }

    private static Map<List<BigInteger>, BigInteger> classes(Locus locus, BigInteger[] sire, BigInteger[] dam) {
        Map<List<BigInteger>, BigInteger> classes = new LinkedHashMap<>();
        for (int s = 0; s < sire.length; s++) {
            for (int d = 0; d < dam.length; d++) {
                BigInteger weight = sire[s].multiply(dam[d]);
                if (weight.signum() > 0) {
                    BigInteger[] shares = young(locus, gametes(locus, only(s, sire)), gametes(locus, only(d, dam)));
                    BigInteger common = Arrays.stream(shares).reduce(BigInteger.ZERO, BigInteger::gcd);
                    Arrays.setAll(shares, e -> shares[e].divide(common));
                    classes.merge(ImmutableList.copyOf(shares), weight, BigInteger::add);
                }
            }
        }
        return classes;
    }

    private static BigInteger[] only(int index, BigInteger[] pairs) {
        BigInteger[] one = new BigInteger[pairs.length];
        Arrays.fill(one, BigInteger.ZERO);
        one[index] = BigInteger.ONE;
        return one;
    }

    /** Each pair passes on both its alleles equally often. */
    private static BigInteger[] gametes(Locus locus, BigInteger[] pairs) {
        BigInteger[] gametes = new BigInteger[locus.alleles().size()];
        Arrays.fill(gametes, BigInteger.ZERO);
        for (int i = 0; i < pairs.length; i++) {
            for (int position : locus.positions(locus.pairs().get(i))) {
                gametes[position] = gametes[position].add(pairs[i]);
            }
        }
        return gametes;
    }

    private static BigInteger[] young(Locus locus, BigInteger[] fromSire, BigInteger[] fromDam) {
        BigInteger[] shares = new BigInteger[locus.expressions().size()];
        Arrays.fill(shares, BigInteger.ZERO);
        for (int a = 0; a < fromSire.length; a++) {
            for (int b = 0; b < fromDam.length; b++) {
                int expression = locus.expressionPosition(locus.pair(a, b), Sex.FEMALE);
                shares[expression] = shares[expression].add(fromSire[a].multiply(fromDam[b]));
            }
        }
        return shares;
    }

    /** The weight that loci outside the question give to a box. */
    private static BigInteger mass(ParentBox box, Set<String> read) {
        BigInteger mass = BigInteger.ONE;
        for (Map.Entry<String, BigInteger[]> locus : box.weights().entrySet()) {
            if (!read.contains(locus.getKey())) {
                mass = mass.multiply(Arrays.stream(locus.getValue()).reduce(BigInteger.ZERO, BigInteger::add));
            }
        }
        return mass;
    }
}
