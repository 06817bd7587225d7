package org.geneticsrules.pedigree;

import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.TooLargeException;

/**
 * Exact coefficients of kinship and of inbreeding (Wright 1922, Am. Nat. 56:330).
 *
 * <p>The <b>coefficient of kinship</b> of two individuals is the chance that an allele drawn at random from one and an allele drawn at
 * random from the other, of one autosomal locus, descend from one allele of one ancestor. The <b>coefficient of inbreeding</b> of an
 * individual is the chance that its own two alleles do; it is the kinship of its parents. Both are relative to the founders: these, and
 * every parent that is not recorded, are taken as unrelated to all others and as not inbred. If they were related, the true coefficients
 * are higher; {@link #range} says by how much at most, and {@link Completeness} what the number rests on.
 *
 * <p>Where sires are not certain, coefficients are expectations by the shares of the candidates, as stated; what kits look like does not
 * change the shares here. A parent that is not recorded is one animal for its litter, so that litter-mates are full sibs.
 *
 * <pre>{@code
 * Kinship kinship = Kinship.of(pedigree);
 * Probability f = kinship.between("jill", "hob");   // what their young's inbreeding would be
 * }</pre>
 *
 * <p>A number is not advice. How closely mates may be related is a matter of the health of the animals, the size of the population and the
 * law of the place; ask a veterinarian.
 *
 * <p>Immutable and thread-safe.
 */
public final class Kinship {

    /** More than so many pairs of ancestors are refused. */
    private static final int MOST_PAIRS = 200_000;

    /** More than so many binary digits in all pairs together are refused. */
    private static final double MOST_DIGITS = 5e8;

    private static final Probability HALF = Probability.of(1, 2);

    private final Pedigree pedigree;
    private final KinNodes nodes;

    private Kinship(Pedigree pedigree) {
        this.pedigree = pedigree;
        this.nodes = KinNodes.of(pedigree);
    }

    /**
     * Prepares a pedigree. Nothing is computed yet but who comes from whom.
     *
     * @param pedigree the pedigree
     * @return its kinship
     */
    public static Kinship of(Pedigree pedigree) {
        return new Kinship(pedigree);
    }

    /**
     * Returns the coefficient of kinship of two individuals. It is the inbreeding that their young would have.
     *
     * @param one id of an individual
     * @param other id of another, or of the same: then two draws from one individual, with replacement
     * @return from 0 to 1; a fraction whose denominator is a power of 2 if all sires are certain
     * @throws IllegalArgumentException if one is not recorded
     * @throws TooLargeException if they have more than about 600 ancestors together; ask {@link RegistryKinship} then
     */
    public Probability between(String one, String other) {
        return between(nodes.node(pedigree, one), nodes.node(pedigree, other));
    }

    /**
     * Returns the coefficient of inbreeding of an individual.
     *
     * @param individual id of an individual
     * @return the kinship of its parents; 0 if it is a founder
     * @throws IllegalArgumentException if it is not recorded
     * @throws TooLargeException if it has more than about 600 ancestors; ask {@link RegistryKinship} then
     */
    public Probability inbreeding(String individual) {
        int node = nodes.node(pedigree, individual);
        return nodes.isFounder(node) ? Probability.ZERO : between(nodes.dam[node], nodes.sire[node]);
    }

    /**
     * Returns what share of an individual's alleles is expected to come from each founder.
     *
     * @param individual id of an individual
     * @return founders with a share of more than 0, in the order stated; what is missing to 1 comes from parents that are not recorded
     * @throws IllegalArgumentException if it is not recorded
     */
    public Map<String, Probability> founderShares(String individual) {
        int start = nodes.node(pedigree, individual);
        Probability[] share = new Probability[start + 1];
        Arrays.fill(share, Probability.ZERO);
        share[start] = Probability.ONE;
        Map<Integer, Probability> found = new LinkedHashMap<>();
        for (int node = start; node >= 0; node--) {
            if (share[node].isZero()) {
                continue;
            }
            int[] sources = nodes.sources(node);
            List<Probability> chances = nodes.shares(node);
            for (int i = 0; i < sources.length; i++) {
                Probability part = chances.isEmpty() ? HALF : chances.get(i);
                share[sources[i]] = share[sources[i]].plus(share[node].times(part));
            }
            if (nodes.isFounder(node) && nodes.individualOf[node] != KinNodes.NONE) {
                found.put(nodes.individualOf[node], share[node]);
            }
        }
        ImmutableMap.Builder<String, Probability> shares = ImmutableMap.builder();
        List<String> ids = new ArrayList<>(pedigree.individuals().keySet());
        found.keySet().stream()
                .sorted()
                .forEach(position -> shares.put(ids.get(position), found.getOrDefault(position, Probability.ZERO)));
        return shares.buildOrThrow();
    }

    /**
     * Returns between which bounds the kinship of two individuals lies if parents that are not recorded may be recorded animals.
     *
     * <p>The lower end is {@link #between}: parents that are not recorded are unrelated to everyone. For the upper end each of them, and each
     * parent of a founder, is either such a stranger or any recorded animal that could have been: of the right sex or of none recorded, not
     * a descendant, and not known to be as young. It is an upper bound: no such assignment gives more, but none need give as much, above
     * all where dates of birth are missing. Candidate sires keep their shares in both ends.
     *
     * @param one id of an individual
     * @param other id of another, or of the same
     * @return the two ends
     * @throws IllegalArgumentException if one is not recorded
     * @throws TooLargeException if the pedigree has more than about 200 individuals
     */
    public KinshipRange range(String one, String other) {
        Probability low = between(one, other);
        RangeBound bound = RangeBound.of(pedigree);
        double high = bound.between(
                pedigree.links.at(pedigree.individual(one).id()),
                pedigree.links.at(pedigree.individual(other).id()));
        return new KinshipRange(low, Math.max(low.toDouble(), high));
    }

    /** The kinship of two nodes, by the table of all that they come from, row by row: a row needs earlier rows only. */
    private Probability between(int one, int other) {
        int[] all = nodes.closure(one, other);
        refuseIfTooLarge(all);
        Probability[][] table = new Probability[all.length][];
        for (int i = 0; i < all.length; i++) {
            table[i] = row(all, i, table);
        }
        return at(table, Arrays.binarySearch(all, one), Arrays.binarySearch(all, other));
    }

    private Probability[] row(int[] all, int i, Probability[][] table) {
        int node = all[i];
        int[] sources = Arrays.stream(nodes.sources(node))
                .map(source -> Arrays.binarySearch(all, source))
                .toArray();
        List<Probability> shares = nodes.shares(node);
        Probability[] row = new Probability[i + 1];
        for (int j = 0; j < i; j++) {
            Probability sum = Probability.ZERO;
            for (int k = 0; k < sources.length; k++) {
                Probability part = shares.isEmpty() ? HALF : shares.get(k);
                sum = sum.plus(part.times(at(table, sources[k], j)));
            }
            row[j] = sum;
        }
        row[i] = self(sources, shares, table);
        return row;
    }

    private static Probability self(int[] sources, List<Probability> shares, Probability[][] table) {
        if (sources.length == 0) {
            return HALF;
        }
        if (shares.isEmpty()) {
            return HALF.plus(HALF.times(at(table, sources[0], sources[1])));
        }
        Probability sum = Probability.ZERO;
        for (int k = 0; k < sources.length; k++) {
            sum = sum.plus(shares.get(k).times(at(table, sources[k], sources[k])));
        }
        return sum;
    }

    private static Probability at(Probability[][] table, int i, int j) {
        return i < j ? table[j][i] : table[i][j];
    }

    private void refuseIfTooLarge(int[] all) {
        double pairs = all.length * (all.length + 1.0) / 2;
        String instead = "ask for it in floating point, which has no such limit";
        if (pairs > MOST_PAIRS) {
            throw new TooLargeException("pairs of ancestors", pairs, MOST_PAIRS, instead);
        }
        double digits = 2.0 * all.length;
        for (int node : all) {
            for (Probability share : nodes.shares(node)) {
                digits += 2.0 * share.denominator().bitLength();
            }
        }
        if (digits * pairs > MOST_DIGITS) {
            throw new TooLargeException("binary digits", digits * pairs, MOST_DIGITS, instead);
        }
    }
}
