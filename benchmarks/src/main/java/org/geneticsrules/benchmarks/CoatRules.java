package org.geneticsrules.benchmarks;

import java.util.List;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.Phenotype;

/** {@link Models#coat()} written by hand for the baselines: two heterozygotes that share few alleles. */
final class CoatRules {

    private static final String SIRE = "151313121223";
    private static final String DAM = "252323121213";

    private static final List<String> DEPTHS = List.of("full", "medium", "light", "points");
    private static final List<String> HUES = List.of("black", "brown", "tan");
    private static final List<String> PATTERNS = List.of("solid", "banded", "flecked");
    private static final List<String> TONES = List.of("dense", "dilute");
    private static final List<String> HAIRS = List.of("short", "long");
    private static final List<String> MARKINGS = List.of("plain", "marked", "broad");

    /** Coloured phenotypes of one hair length: 4 depths, 3 hues, 3 patterns, 2 tones, 3 markings. */
    private static final int COLOURED = 216;

    private static final int CODES = 2 * (COLOURED + 1);

    private CoatRules() {}

    static Contest contest() {
        Model model = Models.coat();
        Genotype sire = Models.coat(model, SIRE);
        Genotype dam = Models.coat(model, DAM);
        int[][][] shown = {series(5), series(3), series(3), series(2), series(2), {{0, 1, 0}, {1, 2, 2}, {0, 2, 3}}};
        return Contest.of(
                model,
                sire,
                dam,
                new StringSquare(SIRE, DAM, CoatRules::phenotype),
                new IntegerProduct(shown, alleles(SIRE), alleles(DAM), CoatRules::code, CODES),
                new NetworkMating(shown, alleles(SIRE), alleles(DAM), traits(), CoatRules::codeOfStates, CODES),
                CoatRules::word,
                CoatRules::code);
    }

    private static int[][] alleles(String digits) {
        int[][] alleles = new int[digits.length() / 2][];
        for (int i = 0; i < alleles.length; i++) {
            alleles[i] = new int[] {digits.charAt(2 * i) - '1', digits.charAt(2 * i + 1) - '1'};
        }
        return alleles;
    }

    /** Earlier alleles are dominant over later ones. */
    private static int[][] series(int alleles) {
        int[][] shown = new int[alleles][alleles];
        for (int one = 0; one < alleles; one++) {
            for (int other = 0; other < alleles; other++) {
                shown[one][other] = Math.min(one, other);
            }
        }
        return shown;
    }

    /** The text rule: of each locus but the last, the earlier allele is seen. */
    private static String phenotype(String genotype) {
        String hair = HAIRS.get(genotype.charAt(8) - '1');
        if (genotype.startsWith("55") || genotype.endsWith("33")) {
            return "white " + hair;
        }
        String marking = switch (genotype.substring(10)) {
            case "11", "13" -> "plain";
            case "12" -> "marked";
            default -> "broad";
        };
        return DEPTHS.get(genotype.charAt(0) - '1') + " " + HUES.get(genotype.charAt(2) - '1') + " "
                + PATTERNS.get(genotype.charAt(4) - '1') + " " + TONES.get(genotype.charAt(6) - '1') + " " + hair
                + " " + marking;
    }

    /** The same as arithmetic. */
    private static int code(int[] e) {
        if (e[0] == 4 || e[5] == 3) {
            return e[4] * (COLOURED + 1) + COLOURED;
        }
        return e[4] * (COLOURED + 1) + (((e[0] * 3 + e[1]) * 3 + e[2]) * 2 + e[3]) * 3 + e[5];
    }

    /** What is seen of each trait, in the order of the loci: depth and the bottom of the last locus hide all but the hair. */
    private static List<NetworkMating.Trait> traits() {
        return List.of(
                new NetworkMating.Trait(List.of(0, 5), 5, e -> e[1] == 3 ? 4 : e[0]),
                new NetworkMating.Trait(List.of(1, 0, 5), 4, e -> hides(e) ? 3 : e[0]),
                new NetworkMating.Trait(List.of(2, 0, 5), 4, e -> hides(e) ? 3 : e[0]),
                new NetworkMating.Trait(List.of(3, 0, 5), 3, e -> hides(e) ? 2 : e[0]),
                new NetworkMating.Trait(List.of(4), 2, e -> e[0]),
                new NetworkMating.Trait(List.of(5, 0), 4, e -> e[1] == 4 || e[0] == 3 ? 3 : e[0]));
    }

    private static boolean hides(int[] e) {
        return e[1] == 4 || e[2] == 3;
    }

    private static int codeOfStates(int[] states) {
        return code(states);
    }

    private static String word(Phenotype phenotype) {
        if (state(phenotype, "depth").equals("white")) {
            return "white " + state(phenotype, "hair");
        }
        return String.join(" ", phenotype.asMap().values());
    }

    private static int code(Phenotype phenotype) {
        int hair = HAIRS.indexOf(state(phenotype, "hair"));
        if (state(phenotype, "depth").equals("white")) {
            return code(new int[] {4, 0, 0, 0, hair, 0});
        }
        return code(new int[] {
            DEPTHS.indexOf(state(phenotype, "depth")),
            HUES.indexOf(state(phenotype, "hue")),
            PATTERNS.indexOf(state(phenotype, "pattern")),
            TONES.indexOf(state(phenotype, "tone")),
            hair,
            MARKINGS.indexOf(state(phenotype, "marking"))
        });
    }

    private static String state(Phenotype phenotype, String trait) {
        return phenotype.state(trait).orElseThrow();
    }
}
