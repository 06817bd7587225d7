package org.geneticsrules.benchmarks;

/**
 * Frozen baseline 2, the best simple way: equal genotypes of each locus are merged first, then the product of the loci is walked
 * through like a mixed-radix counter, and whole-number weights are added up in an array by phenotype code.
 *
 * <p>No object is made per combination. The weight of the loci before the one that moved is kept, and the phenotype code comes from
 * arithmetic written by hand for one model. Parents that differ or are heterozygous at n loci have 3^n to 4^n combinations. The file
 * is never changed, so that ratios of different versions of the engine compare.
 *
 * <p>Immutable and thread-safe if the rule is.
 */
public final class IntegerProduct {

    /** The masking rule of one model as arithmetic. */
    @FunctionalInterface
    public interface Rule {
        /**
         * Returns the phenotype of a combination.
         *
         * @param expressions the expression of each locus, from 0
         * @return its code, from 0
         */
        int code(int[] expressions);
    }

    private final int[][][] shown;
    private final int[][] sire;
    private final int[][] dam;
    private final Rule rule;
    private final int codes;

    /**
     * Describes a mating.
     *
     * @param shown for each locus, the expression of each pair of alleles, {@code shown[locus][one][other]}
     * @param sire the father's two alleles at each locus
     * @param dam the mother's two alleles at each locus
     * @param rule the phenotype of a combination
     * @param codes number of phenotype codes
     */
    public IntegerProduct(int[][][] shown, int[][] sire, int[][] dam, Rule rule, int codes) {
        this.shown = shown;
        this.sire = sire;
        this.dam = dam;
        this.rule = rule;
        this.codes = codes;
    }

    /**
     * Walks through all combinations of genotypes.
     *
     * @return the weight of each phenotype code; together 4 to the number of loci
     */
    public long[] count() {
        int loci = shown.length;
        int[][] expression = new int[loci][];
        int[][] weight = new int[loci][];
        for (int locus = 0; locus < loci; locus++) {
            merge(locus, expression, weight);
        }
        long[] counts = new long[codes];
        int[] digit = new int[loci];
        int[] combination = new int[loci];
        long[] before = new long[loci + 1]; // product of the weights of the loci before each
        before[0] = 1;
        int moved = 0;
        while (moved >= 0) {
            for (int locus = moved; locus < loci; locus++) {
                combination[locus] = expression[locus][digit[locus]];
                before[locus + 1] = before[locus] * weight[locus][digit[locus]];
            }
            counts[rule.code(combination)] += before[loci];
            moved = loci - 1;
            while (moved >= 0 && ++digit[moved] == weight[moved].length) {
                digit[moved--] = 0;
            }
        }
        return counts;
    }

    /** Finds the distinct genotypes of one locus among the four unions of gametes. */
    private void merge(int locus, int[][] expression, int[][] weight) {
        int[] first = new int[4];
        int[] second = new int[4];
        int[] found = new int[4];
        int distinct = 0;
        for (int mine : sire[locus]) {
            for (int theirs : dam[locus]) {
                int low = Math.min(mine, theirs);
                int high = Math.max(mine, theirs);
                int at = 0;
                while (at < distinct && (first[at] != low || second[at] != high)) {
                    at++;
                }
                first[at] = low;
                second[at] = high;
                found[at]++;
                distinct = Math.max(distinct, at + 1);
            }
        }
        expression[locus] = new int[distinct];
        weight[locus] = new int[distinct];
        for (int at = 0; at < distinct; at++) {
            expression[locus][at] = shown[locus][first[at]][second[at]];
            weight[locus][at] = found[at];
        }
    }
}
