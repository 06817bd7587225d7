package org.geneticsrules.benchmarks;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.Phenotype;

/** {@link Models#visible} and {@link Models#chain} written by hand for the baselines: two heterozygotes at up to 26 loci. */
final class SimpleRules {

    private SimpleRules() {}

    static Contest contest(Model model, boolean masking) {
        int loci = model.loci().size();
        Genotype parent = Models.heterozygote(model);
        StringBuilder letters = new StringBuilder();
        for (int i = 0; i < loci; i++) {
            letters.append((char) ('A' + i)).append((char) ('a' + i));
        }
        int[][] alleles = new int[loci][];
        Arrays.setAll(alleles, locus -> new int[] {0, 1});
        int[][][] shown = new int[loci][][];
        Arrays.setAll(shown, locus -> new int[][] {{0, 0}, {0, 1}});
        return Contest.of(
                model,
                parent,
                parent,
                new StringSquare(
                        letters.toString(), letters.toString(), masking ? SimpleRules::chain : SimpleRules::visible),
                masking
                        ? new IntegerProduct(shown, alleles, alleles, SimpleRules::chain, loci + 1)
                        : new IntegerProduct(shown, alleles, alleles, SimpleRules::visible, 1 << loci),
                new NetworkMating(
                        shown,
                        alleles,
                        alleles,
                        traits(loci, masking),
                        masking ? SimpleRules::chain : SimpleRules::visible,
                        masking ? loci + 1 : 1 << loci),
                phenotype -> word(phenotype, masking),
                phenotype -> masking ? chain(expressions(phenotype)) : visible(expressions(phenotype)));
    }

    /** {@code AaBBcc} shows {@code A-B-cc}. */
    private static String visible(String genotype) {
        StringBuilder phenotype = new StringBuilder();
        for (int at = 0; at < genotype.length(); at += 2) {
            phenotype.append(one(genotype, at));
        }
        return phenotype.toString();
    }

    /** {@code AabbCc} shows {@code A-bb}: what comes after a recessive is hidden. */
    private static String chain(String genotype) {
        StringBuilder phenotype = new StringBuilder();
        for (int at = 0; at < genotype.length(); at += 2) {
            String shown = one(genotype, at);
            phenotype.append(shown);
            if (!shown.endsWith("-")) {
                break;
            }
        }
        return phenotype.toString();
    }

    private static String one(String genotype, int at) {
        return Character.isUpperCase(genotype.charAt(at))
                ? genotype.substring(at, at + 1) + "-"
                : genotype.substring(at, at + 2);
    }

    /** One binary digit per locus. */
    private static int visible(int[] expressions) {
        int code = 0;
        for (int expression : expressions) {
            code = 2 * code + expression;
        }
        return code;
    }

    /** The number of loci before the first recessive. */
    private static int chain(int[] expressions) {
        int locus = 0;
        while (locus < expressions.length && expressions[locus] == 0) {
            locus++;
        }
        return locus;
    }

    /** One trait for each locus; in a chain a recessive before it hides it, the third state. */
    private static List<NetworkMating.Trait> traits(int loci, boolean masking) {
        List<NetworkMating.Trait> traits = new ArrayList<>();
        for (int i = 0; i < loci; i++) {
            int own = i;
            traits.add(
                    masking
                            ? new NetworkMating.Trait(
                                    IntStream.rangeClosed(0, own).boxed().toList(), 3, e -> chain(e) < own ? 2 : e[own])
                            : new NetworkMating.Trait(List.of(own), 2, e -> e[0]));
        }
        return traits;
    }

    private static String word(Phenotype phenotype, boolean masking) {
        StringBuilder genotype = new StringBuilder();
        int[] expressions = expressions(phenotype);
        for (int i = 0; i < expressions.length; i++) {
            char first = (char) ((expressions[i] == 0 ? 'A' : 'a') + i);
            genotype.append(first).append((char) ('a' + i));
        }
        return masking ? chain(genotype.toString()) : visible(genotype.toString());
    }

    /** What is hidden counts as dominant here: the rules never look at it. */
    private static int[] expressions(Phenotype phenotype) {
        return phenotype.asMap().values().stream()
                .mapToInt(state -> state.equals(Models.RECESSIVE) ? 1 : 0)
                .toArray();
    }
}
