package org.geneticsrules.testing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.junit.jupiter.api.Test;
import tools.jackson.core.type.TypeReference;
import tools.jackson.databind.json.JsonMapper;

/**
 * The reference itself, held against ratios of the literature and against hand-made cases.
 *
 * <p>Every ratio is of the cross between two animals heterozygous at all loci, unless the test says otherwise.
 */
class BruteForceTest {

    /** Two loci of two alleles each, dominance complete, as most classical two-factor ratios have. */
    private static final String TWO_LOCI = """
            "loci": {
              "A": {"alleles": ["A", "a"], "dominance": {"order": ["A > a"], "shows": {"A": "dominant", "a": "recessive"}}},
              "B": {"alleles": ["B", "b"], "dominance": {"order": ["B > b"], "shows": {"B": "dominant", "b": "recessive"}}}}""";

    private static Map<String, Object> document(String... members) {
        return JsonMapper.shared()
                .readValue(
                        "{" + String.join(", ", members) + "}", new TypeReference<LinkedHashMap<String, Object>>() {});
    }

    private static Map<String, String> genotype(String... locusAndPair) {
        Map<String, String> genotype = new LinkedHashMap<>();
        for (int i = 0; i < locusAndPair.length; i += 2) {
            genotype.put(locusAndPair[i], locusAndPair[i + 1]);
        }
        return genotype;
    }

    private static final Map<String, String> DIHYBRID = genotype("A", "A/a", "B", "B/b");

    /** The weights of the states of one trait among the young. */
    private static void ratio(
            Map<String, Object> model,
            Map<String, String> sire,
            Map<String, String> dam,
            String trait,
            Object... weights) {
        Map<Map<String, String>, Integer> expected = new LinkedHashMap<>();
        for (int i = 0; i < weights.length; i += 2) {
            expected.put(Map.of(trait, (String) weights[i]), (Integer) weights[i + 1]);
        }
        assertEquals(
                Distribution.ofWeights(expected),
                BruteForce.phenotypes(model, BruteForce.offspring(model, sire, dam), List.of(trait)));
    }

    /** Source: Morgan, A Critique of the Theory of Evolution (published): comb shapes, walnut, rose, pea and single. */
    @Test
    void four_combs_are_9_3_3_1() {
        Map<String, Object> model = document(TWO_LOCI, """
                "traits": {"comb": {"cases": {
                  "walnut": {"when": {"A": ["dominant"], "B": ["dominant"]}, "state": "walnut"},
                  "rose": {"when": {"A": ["dominant"], "B": ["recessive"]}, "state": "rose"},
                  "pea": {"when": {"A": ["recessive"], "B": ["dominant"]}, "state": "pea"}}, "otherwise": "single"}}""");
        ratio(model, DIHYBRID, DIHYBRID, "comb", "walnut", 9, "rose", 3, "pea", 3, "single", 1);
    }

    /** Source: Little 1957, published as a ratio: recessive epistasis, here by a mask. */
    @Test
    void recessive_epistasis_by_a_mask_is_9_3_4() {
        Map<String, Object> model = document(TWO_LOCI, """
                "traits": {"coat": {"cases": {"dark": {"when": {"B": ["dominant"]}, "state": "agouti"}}, "otherwise": "black"}},
                "masks": {"albino": {"when": {"A": ["recessive"]}, "covers": {"coat": "white"}}}""");
        ratio(model, DIHYBRID, DIHYBRID, "coat", "agouti", 9, "black", 3, "white", 4);
    }

    /** Source: Bateson 1909 (published): sweet pea, colour needs both dominants. */
    @Test
    void complementary_factors_are_9_7() {
        Map<String, Object> model = document(TWO_LOCI, """
                "traits": {"flower": {"cases": {
                  "both": {"when": {"A": ["dominant"], "B": ["dominant"]}, "state": "coloured"}}, "otherwise": "white"}}""");
        ratio(model, DIHYBRID, DIHYBRID, "flower", "coloured", 9, "white", 7);
    }

    /** Source: Bateson 1909 (published): the same with a third locus for purple and red. */
    @Test
    void complementary_factors_with_a_third_locus_are_27_9_28() {
        Map<String, Object> model = document("""
                "loci": {
                  "C": {"alleles": ["C", "c"], "dominance": {"order": ["C > c"], "shows": {"C": "yes", "c": "no"}}},
                  "R": {"alleles": ["R", "r"], "dominance": {"order": ["R > r"], "shows": {"R": "yes", "r": "no"}}},
                  "B": {"alleles": ["B", "b"], "dominance": {"order": ["B > b"], "shows": {"B": "yes", "b": "no"}}}}""", """
                "traits": {
                  "pigment": {"visible": false, "states": ["some", "none"], "cases": {
                    "both": {"when": {"C": ["yes"], "R": ["yes"]}, "state": "some"}}, "otherwise": "none"},
                  "flower": {"cases": {
                    "blue": {"when": {"pigment": ["some"], "B": ["yes"]}, "state": "purple"},
                    "plain": {"when": {"pigment": ["some"], "B": {"not": ["yes"]}}, "state": "red"},
                    "none": {"when": {"pigment": {"not": ["some"]}}, "state": "white"}}}}""");
        Map<String, String> trihybrid = genotype("C", "C/c", "R", "R/r", "B", "B/b");
        ratio(model, trihybrid, trihybrid, "flower", "purple", 27, "red", 9, "white", 28);
        assertEquals(List.of("flower"), BruteForce.visibleTraits(model));
    }

    /** Source: Sinnott and Durham 1922, Journal of Heredity 13:177 (from memory): fruit of the summer squash. */
    @Test
    void dominant_epistasis_is_12_3_1() {
        Map<String, Object> model = document(TWO_LOCI, """
                "traits": {"fruit": {"cases": {
                  "white": {"when": {"A": ["dominant"]}, "state": "white"},
                  "yellow": {"when": {"A": ["recessive"], "B": ["dominant"]}, "state": "yellow"},
                  "green": {"when": {"A": ["recessive"], "B": ["recessive"]}, "state": "green"}}}}""");
        ratio(model, DIHYBRID, DIHYBRID, "fruit", "white", 12, "yellow", 3, "green", 1);
    }

    /** Source: published as a ratio in textbooks: a dominant inhibitor of colour. */
    @Test
    void dominant_inhibitor_is_13_3() {
        Map<String, Object> model = document(TWO_LOCI, """
                "traits": {"plumage": {"cases": {"colour": {"when": {"B": ["dominant"]}, "state": "coloured"}},
                  "otherwise": "white"}},
                "masks": {"inhibitor": {"when": {"A": ["dominant"]}, "covers": {"plumage": {"coloured": "white"}}}}""");
        ratio(model, DIHYBRID, DIHYBRID, "plumage", "white", 13, "coloured", 3);
    }

    /** Source: Shull 1914 (from memory): capsules of the shepherd's purse. */
    @Test
    void duplicate_dominant_factors_are_15_1() {
        Map<String, Object> model = document(TWO_LOCI, """
                "traits": {"capsule": {"cases": {
                  "ovoid": {"when": {"A": ["recessive"], "B": ["recessive"]}, "state": "ovoid"}}, "otherwise": "triangular"}}""");
        ratio(model, DIHYBRID, DIHYBRID, "capsule", "triangular", 15, "ovoid", 1);
    }

    /** Source: Morgan, A Critique of the Theory of Evolution (published): Andalusian fowl. */
    @Test
    void incomplete_dominance_is_1_2_1() {
        Map<String, Object> model = document("""
                "loci": {"B": {"alleles": ["B", "b"],
                  "dominance": {"shows": {"B": "black", "b/B": "blue", "b": {"shows": "splash", "evidence": "seen"}}}}}""", """
                "traits": {"plumage": {"cases": {
                  "black": {"when": {"B": ["black"]}, "state": "black"},
                  "blue": {"when": {"B": ["blue"]}, "state": "blue"},
                  "splash": {"when": {"B": ["splash"]}, "state": "splashed white"}}}}""");
        Map<String, String> blue = genotype("B", "B/b");
        ratio(model, blue, blue, "plumage", "black", 1, "blue", 2, "splashed white", 1);
    }

    private static Map<String, Object> bloodGroups() {
        return document("""
                "loci": {"ABO": {"alleles": [{"id": "A", "title": "A antigen"}, "B", "O"], "dominance": {
                  "order": ["A > O", {"order": "B > O", "evidence": "seen"}],
                  "shows": {"A": "A", "B": "B", "O": "O", "A/B": "AB"}}}}""", """
                "traits": {"group": {"cases": {
                  "A": {"when": {"ABO": ["A"]}, "state": "A"}, "B": {"when": {"ABO": ["B"]}, "state": "B"},
                  "AB": {"when": {"ABO": ["AB"]}, "state": "AB"}}, "otherwise": {"state": "O", "evidence": "seen"}}}""", """
                "populations": {"town": {"frequencies": {"ABO": {"A": "3/10", "B": "1/10", "O": "6/10"}}}}""");
    }

    /** Calculated: two heterozygotes with O have young of all four groups alike. */
    @Test
    void blood_groups_of_AO_and_BO_are_1_1_1_1() {
        ratio(bloodGroups(), genotype("ABO", "A/O"), genotype("ABO", "B/O"), "group", "A", 1, "B", 1, "AB", 1, "O", 1);
    }

    /** Calculated: Hardy-Weinberg restricted to the set, p^2 : 2pq. */
    @Test
    void a_person_of_group_A_is_AA_or_AO_as_p_to_2q() {
        List<Map<String, String>> groupA = List.of(genotype("ABO", "A/A"), genotype("ABO", "A/O"));
        Map<Map<String, String>, Long> expected = new LinkedHashMap<>();
        expected.put(groupA.get(0), 9L);
        expected.put(groupA.get(1), 36L);
        assertEquals(Optional.of(Distribution.ofWeights(expected)), BruteForce.founders(bloodGroups(), groupA, "town"));
    }

    @Test
    void a_set_that_cannot_occur_in_the_population_has_no_weights() {
        Map<String, Object> model = document(TWO_LOCI, """
                "traits": {}, "populations": {"town": {"frequencies": {"A": {"A": "1", "a": "0"}, "B": {"B": "1/2", "b": "1/2"}}}}""");
        assertEquals(Optional.empty(), BruteForce.founders(model, List.of(genotype("A", "a/a", "B", "B/b")), "town"));
    }

    /** Calculated exactly: an unaffected sib of an affected animal carries with 2/3, mated to a known carrier. */
    @Test
    void kits_of_an_uncertain_sire_depend_on_each_other() {
        Map<String, Object> model = document("""
                "loci": {"C": {"alleles": ["C", "c"], "dominance": {"order": ["C > c"], "shows": {"C": "yes", "c": "no"}}}}""", """
                "traits": {"pigment": {"cases": {"no": {"when": {"C": ["no"]}, "state": "none"}}, "otherwise": "full"}}""");
        Map<Map<String, String>, Integer> weights = new LinkedHashMap<>();
        weights.put(genotype("C", "C/C"), 1);
        weights.put(genotype("C", "C/c"), 2);
        Distribution<Map<String, String>> sire = Distribution.ofWeights(weights);
        Distribution<Map<String, String>> dam = Distribution.certain(genotype("C", "C/c"));
        Distribution<Integer> affected = BruteForce.counts(model, sire, dam, 2, Map.of("pigment", "none"));
        assertEquals(Probability.of(17, 24), affected.probability(0)); // 1/3 + 2/3 (3/4)^2
        assertEquals(Probability.of(1, 4), affected.probability(1)); // 2/3 x 2 x 1/4 x 3/4
        assertEquals(Probability.of(1, 24), affected.probability(2)); // 2/3 (1/4)^2
        assertEquals(
                Distribution.ofWeights(Map.of("full", 5, "none", 1)),
                BruteForce.phenotypes(model, BruteForce.offspring(model, sire, dam), List.of("pigment"))
                        .map(seen -> seen.get("pigment")));
        Map<Map<String, String>, Integer> oneEach = new LinkedHashMap<>();
        oneEach.put(Map.of("pigment", "none"), 1);
        oneEach.put(Map.of("pigment", "full"), 1);
        assertEquals(
                Probability.of(1, 4),
                BruteForce.litters(model, sire, dam, 2, List.of("pigment")).probability(oneEach));
    }

    /** One locus of three looks, so that a rule can leave one of them out. */
    private static Map<String, Object> threeValued(String masks) {
        return document("""
                "loci": {
                  "A": {"alleles": ["A", "a"], "dominance": {"shows": {"A": "high", "A/a": "middle", "a": "low"}}},
                  "B": {"alleles": ["B", "b"], "dominance": {"order": ["B > b"], "shows": {"B": "yes", "b": "no"}}}}""", """
                "traits": {
                  "depth": {"cases": {"high": {"when": {"A": ["high"]}, "state": "deep"},
                    "middle": {"when": {"A": ["middle"]}, "state": "pale"}}},
                  "mark": {"cases": {"deep": {"when": {"depth": ["deep"], "B": ["yes"]}, "state": "bib"}}, "otherwise": "plain"}}""", "\"masks\": {" + masks + "}");
    }

    private static Map<String, String> look(Map<String, Object> model, String a, String b) {
        return BruteForce.phenotype(model, genotype("A", a, "B", b), List.of("depth", "mark"));
    }

    @Test
    void a_condition_on_what_is_not_modelled_is_unknown_unless_another_variable_fails() {
        Map<String, Object> model = threeValued("");
        assertEquals(Map.of("depth", "deep", "mark", "bib"), look(model, "A/A", "B/b"));
        assertEquals(Map.of("depth", "pale", "mark", "plain"), look(model, "A/a", "B/b"));
        assertEquals(Map.of(), look(model, "a/a", "B/b"));
        assertEquals(Map.of("mark", "plain"), look(model, "a/a", "b/b"));
    }

    @Test
    void an_unknown_mask_makes_what_it_covers_not_modelled() {
        Map<String, Object> model = threeValued("""
                "veil": {"when": {"depth": ["deep"]}, "covers": {"mark": "plain"}}""");
        assertEquals(Map.of(), look(model, "a/a", "b/b"));
        assertEquals(Map.of("depth", "pale", "mark", "plain"), look(model, "A/a", "B/B"));
        assertEquals(Map.of("depth", "deep", "mark", "plain"), look(model, "A/A", "B/B"));
    }

    @Test
    void a_constant_cover_shows_over_what_is_not_modelled_and_a_table_of_changes_does_not() {
        Map<String, Object> constant = threeValued("""
                "veil": {"when": {"B": ["no"]}, "covers": {"depth": "pale"}}""");
        assertEquals(Map.of("depth", "pale", "mark", "plain"), look(constant, "a/a", "b/b"));
        Map<String, Object> changing = threeValued("""
                "veil": {"when": {"B": ["no"]}, "covers": {"depth": {"deep": "pale"}}}""");
        assertEquals(Map.of("mark", "plain"), look(changing, "a/a", "b/b"));
        assertEquals(Map.of("depth", "pale", "mark", "plain"), look(changing, "A/A", "b/b"));
    }

    @Test
    void of_masks_in_a_chain_the_uppermost_active_one_decides() {
        Map<String, Object> model = threeValued("""
                "low": {"when": {"A": {"not": ["low"]}}, "covers": {"mark": "plain"}},
                "mid": {"when": {"A": ["high"]}, "covers": {"depth": "pale"}, "over": ["low"]},
                "top": {"when": {"A": ["high", "middle"], "B": ["yes"]}, "covers": {"mark": "bib"}, "over": ["mid"]}""");
        assertEquals(List.of("low", "mid", "top"), BruteForce.activeMasks(model, genotype("A", "A/A", "B", "B/b")));
        assertEquals(Map.of("depth", "pale", "mark", "bib"), look(model, "A/A", "B/b"));
        // The one between is not active here, but top lies over low all the same.
        assertEquals(Map.of("depth", "pale", "mark", "bib"), look(model, "A/a", "B/b"));
        assertEquals(Map.of("depth", "pale", "mark", "plain"), look(model, "A/a", "b/b"));
    }

    @Test
    void masks_that_disagree_without_order_are_reported() {
        Map<String, Object> model = threeValued("""
                "one": {"when": {"B": ["yes"]}, "covers": {"mark": "plain"}},
                "two": {"when": {"A": ["high"]}, "covers": {"mark": "bib"}}""");
        IllegalStateException refused = assertThrows(IllegalStateException.class, () -> look(model, "A/A", "B/B"));
        assertTrue(refused.getMessage().contains("[one, two] show mark as [plain, bib]"), refused.getMessage());
    }

    @Test
    void a_locus_is_hidden_where_another_genotype_looks_the_same() {
        Map<String, Object> model = document(TWO_LOCI, """
                "traits": {"coat": {"cases": {"dark": {"when": {"B": ["dominant"]}, "state": "agouti"}}, "otherwise": "black"}},
                "masks": {"albino": {"when": {"A": ["recessive"]}, "covers": {"coat": "white"}}}""");
        List<String> coat = List.of("coat");
        assertEquals(List.of("A"), BruteForce.hiddenLoci(model, genotype("A", "A/a", "B", "b/b"), coat));
        assertEquals(List.of("A", "B"), BruteForce.hiddenLoci(model, genotype("A", "A/A", "B", "B/B"), coat));
        assertEquals(List.of("B"), BruteForce.hiddenLoci(model, genotype("A", "a/a", "B", "b/b"), coat));
    }

    @Test
    void genotypes_of_all_loci_are_listed_once() {
        Map<String, Object> model = bloodGroups();
        assertEquals(List.of("A/A", "A/B", "A/O", "B/B", "B/O", "O/O"), BruteForce.pairs(model, "ABO"));
        assertEquals(6, BruteForce.genotypes(model).size());
        assertEquals(9, BruteForce.genotypes(document(TWO_LOCI)).size());
        assertEquals(
                9, BruteForce.genotypes(document(TWO_LOCI)).stream().distinct().count());
    }
}
