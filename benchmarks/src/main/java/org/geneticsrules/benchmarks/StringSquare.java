package org.geneticsrules.benchmarks;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;

/**
 * Frozen baseline 1, the way matings are taught: a square of all gametes of one parent against all of the other, every box filled
 * in with a genotype and then a phenotype, and the boxes counted.
 *
 * <p>Everything is text. An allele is one letter or digit, a genotype two of them per locus, such as {@code AaBbcc}. A parent
 * heterozygous at n loci has 2^n gametes, so the square has 4^n boxes. The file is never changed, so that ratios of different
 * versions of the engine compare.
 *
 * <p>Immutable and thread-safe if the rule is.
 */
public final class StringSquare {

    private final String sire;
    private final String dam;
    private final UnaryOperator<String> phenotypeOf;

    /**
     * Describes a mating.
     *
     * @param sire the father's genotype, two characters per locus
     * @param dam the mother's genotype, the same loci in the same order
     * @param phenotypeOf reads the phenotype off a genotype whose two characters of each locus are in ascending order
     */
    public StringSquare(String sire, String dam, UnaryOperator<String> phenotypeOf) {
        this.sire = sire;
        this.dam = dam;
        this.phenotypeOf = phenotypeOf;
    }

    /**
     * Fills in the square and counts its boxes.
     *
     * @return the number of boxes of each phenotype
     */
    public Map<String, Integer> count() {
        List<String> fromSire = gametes(sire);
        List<String> fromDam = gametes(dam);
        Map<String, Integer> boxes = new HashMap<>();
        for (String row : fromSire) {
            for (String column : fromDam) {
                boxes.merge(phenotypeOf.apply(union(row, column)), 1, Integer::sum);
            }
        }
        return boxes;
    }

    private static List<String> gametes(String genotype) {
        List<String> gametes = List.of("");
        for (int at = 0; at < genotype.length(); at += 2) {
            List<String> longer = new ArrayList<>();
            for (String gamete : gametes) {
                longer.add(gamete + genotype.charAt(at));
                longer.add(gamete + genotype.charAt(at + 1));
            }
            gametes = longer;
        }
        return gametes;
    }

    private static String union(String egg, String sperm) {
        StringBuilder genotype = new StringBuilder();
        for (int locus = 0; locus < egg.length(); locus++) {
            char one = egg.charAt(locus);
            char other = sperm.charAt(locus);
            genotype.append(one < other ? one : other).append(one < other ? other : one);
        }
        return genotype.toString();
    }
}
