package org.geneticsrules.cross;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.BiConsumer;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Sex;
import org.jspecify.annotations.Nullable;

/**
 * What a parent may carry at the loci of a unit; the loci are independent of one another, except that alleles of known strands lie
 * together.
 *
 * @param sex sex of the parent
 * @param pairs for each locus of the unit, the weight of each of {@link Locus#pairs()}
 * @param strands for each locus the positions of the alleles on the two strands; null where the strands are not known
 */
@SuppressWarnings("ArrayRecordComponent") // read in the inner loops, never compared
record AtUnit(Sex sex, BigInteger[][] pairs, int[] @Nullable [] strands) {

    /** More ways in which a parent's alleles may lie on its strands than this are not gone through. */
    private static final int MOST_WAYS = 1 << 16;

    /** The weight of all that the parent may carry here. */
    BigInteger mass() {
        BigInteger mass = BigInteger.ONE;
        for (BigInteger[] weights : pairs) {
            BigInteger sum = BigInteger.ZERO;
            for (BigInteger weight : weights) {
                sum = sum.add(weight);
            }
            mass = mass.multiply(sum);
        }
        return mass;
    }

    boolean hasStrands() {
        return Arrays.stream(strands).anyMatch(at -> at != null);
    }

    /**
     * Visits all that the parent may carry, each with certain strands. All weights are over one total, the mass times two to the number
     * of loci: a heterozygote may lie either way round on its strands, and each neighbouring pair is in coupling or in repulsion
     * equally often.
     */
    void each(Unit unit, BiConsumer<AtUnit, BigInteger> visitor) {
        List<AtUnit> all = new ArrayList<>();
        List<BigInteger> weights = new ArrayList<>();
        all.add(this);
        weights.add(BigInteger.ONE);
        boolean twoStrands = unit.isLinked() && unit.transmission().strands(sex) == 2;
        for (int l = 0; l < pairs.length; l++) {
            Locus locus = unit.loci().get(l);
            List<AtUnit> longer = new ArrayList<>();
            List<BigInteger> longerWeights = new ArrayList<>();
            for (int i = 0; i < all.size(); i++) {
                for (int p = 0; p < locus.pairs().size(); p++) {
                    BigInteger weight = weights.get(i).multiply(pairs[l][p]);
                    if (weight.signum() > 0) {
                        AllelePair pair = locus.pairs().get(p);
                        AtUnit one = all.get(i).only(l, p);
                        boolean turns = twoStrands && pair.isHeterozygous() && strands[l] == null;
                        if (turns) {
                            int[] at = locus.positions(pair);
                            longer.add(one.lying(l, at[0], at[1]));
                            longer.add(one.lying(l, at[1], at[0]));
                            longerWeights.add(weight);
                            longerWeights.add(weight);
                        } else {
                            longer.add(one);
                            longerWeights.add(weight.shiftLeft(1));
                        }
                    }
                }
            }
            if (longer.size() > MOST_WAYS) {
                throw new TooLargeException(
                        "ways in which a parent's alleles may lie on its strands",
                        longer.size(),
                        MOST_WAYS,
                        "state the phase of the linked loci, or more of the parent's genotype.");
            }
            all = longer;
            weights = longerWeights;
        }
        for (int i = 0; i < all.size(); i++) {
            visitor.accept(all.get(i), weights.get(i));
        }
    }

    private AtUnit only(int locus, int pair) {
        BigInteger[][] changed = pairs.clone();
        changed[locus] = new BigInteger[pairs[locus].length];
        Arrays.fill(changed[locus], BigInteger.ZERO);
        changed[locus][pair] = BigInteger.ONE;
        return new AtUnit(sex, changed, strands);
    }

    private AtUnit lying(int locus, int one, int other) {
        int[] @Nullable [] changed = strands.clone();
        changed[locus] = new int[] {one, other};
        return new AtUnit(sex, pairs, changed);
    }

    /** How many strands the parent has here. */
    int strandCount(Transmission transmission) {
        return transmission.strands(sex);
    }
}
