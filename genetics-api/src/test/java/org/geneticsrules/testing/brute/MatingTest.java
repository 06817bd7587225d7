package org.geneticsrules.testing.brute;

import static org.geneticsrules.testing.brute.Texts.animal;
import static org.geneticsrules.testing.brute.Texts.bySex;
import static org.geneticsrules.testing.brute.Texts.genome;
import static org.geneticsrules.testing.brute.Texts.looks;
import static org.geneticsrules.testing.brute.Texts.map;
import static org.geneticsrules.testing.brute.Texts.phased;
import static org.geneticsrules.testing.brute.Texts.ratio;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.probability.Probability;
import org.junit.jupiter.api.Test;

/** Gametes and kits of the reference, held against published ratios and calculation. */
class MatingTest {

    private static final String TWO_LOCI = """
            "loci": {
              "A": {"alleles": ["A", "a"], "dominance": {"order": ["A > a"], "shows": {"A": "upper", "a": "lower"}}},
              "B": {"alleles": ["B", "b"], "dominance": {"order": ["B > b"], "shows": {"B": "upper", "b": "lower"}}}},
            "traits": {
              "first": {"cases": {"a": {"when": {"A": ["lower"]}, "state": "a"}}, "otherwise": "A"},
              "second": {"cases": {"b": {"when": {"B": ["lower"]}, "state": "b"}}, "otherwise": "B"}}""";

    private static final Map<String, String> BOTH = map("A", "A/a", "B", "B/b");

    private static Genome linked(String recombination) {
        return genome(TWO_LOCI, "\"groups\": {\"g\": {\"loci\": [\"A\", \"B\"], " + recombination + "}}");
    }

    private static void fourClasses(
            Map<Map<String, String>, Probability> found, Probability ab, Probability aOnly, Probability bOnly) {
        assertEquals(ab, found.get(map("first", "a", "second", "b")));
        assertEquals(aOnly, found.get(map("first", "a", "second", "B")));
        assertEquals(bOnly, found.get(map("first", "A", "second", "b")));
        assertEquals(4, found.size());
    }

    /** Calculated: (1-r)/2 of each parental class and r/2 of each recombinant one. */
    @Test
    void a_test_cross_shows_the_gametes() {
        Genome genome = linked("\"recombination\": [\"1/10\"]");
        Animal dam = animal(genome, "female", "A", "a/a", "B", "b/b");
        Animal coupling = phased(genome, "male", BOTH, "A", "A|a", "B", "B|b");
        Probability often = Probability.of(9, 20);
        Probability rarely = Probability.of(1, 20);
        fourClasses(looks(genome, coupling, dam, Map.of(), "first", "second"), often, rarely, rarely);
        Animal repulsion = phased(genome, "male", BOTH, "A", "a|A", "B", "B|b");
        fourClasses(looks(genome, repulsion, dam, Map.of(), "first", "second"), rarely, often, often);
        Map<Animal, Probability> unknown =
                Founders.of(genome, "male", List.of(BOTH), Map.of(), "", "scored", List.of());
        assertEquals(2, unknown.size());
        fourClasses(
                Litters.of(genome, unknown, Texts.certain(dam), "scored").looks(Map.of(), List.of("first", "second")),
                Probability.of(1, 4),
                Probability.of(1, 4),
                Probability.of(1, 4));
    }

    /** Source: Fisher and Balmukand 1928, Journal of Genetics 20:79 (published): F2 classes (2+t), (1-t), (1-t), t of 4. */
    @Test
    void an_f2_in_coupling_has_t_the_product_of_both_sexes() {
        Genome genome = linked("\"recombination\": {\"male\": [\"1/10\"], \"female\": [\"1/5\"]}");
        Animal sire = phased(genome, "male", BOTH, "A", "A|a", "B", "B|b");
        Animal dam = phased(genome, "female", BOTH, "A", "A|a", "B", "B|b");
        Probability t = Probability.of(9, 10).times(Probability.of(4, 5));
        Probability quarter = Probability.of(1, 4);
        fourClasses(
                looks(genome, sire, dam, Map.of(), "first", "second"),
                t.times(quarter),
                t.complement().times(quarter),
                t.complement().times(quarter));
        Animal crossed = phased(genome, "female", BOTH, "A", "A|a", "B", "b|B");
        Probability mixed = Probability.of(9, 10).times(Probability.of(1, 5));
        assertEquals(
                mixed.times(quarter),
                looks(genome, sire, crossed, Map.of(), "first", "second").get(map("first", "a", "second", "b")));
    }

    private static Genome threeLoci(String recombination) {
        String locus = "{\"alleles\": [\"+\", \"-\"], \"dominance\": {\"order\": [\"+ > -\"], "
                + "\"shows\": {\"+\": \"wild\", \"-\": \"mutant\"}}}";
        return genome(
                "\"loci\": {\"v\": " + locus + ", \"ct\": " + locus + ", \"cv\": " + locus + "}",
                "\"groups\": {\"g\": {\"loci\": [\"v\", \"ct\", \"cv\"], " + recombination + "}}");
    }

    private static Map<Map<String, String>, Probability> threePoint(Genome genome) {
        Map<String, String> all = map("v", "+/-", "ct", "+/-", "cv", "+/-");
        assertEquals(4, genome.phases("female", all, Map.of()).size());
        assertEquals(
                2, genome.phases("female", all, map("v", "-|+", "cv", "+|-")).size());
        return Mating.gametes(genome, phased(genome, "female", all, "v", "+|-", "ct", "+|-", "cv", "+|-"), "male");
    }

    /** Source: Griffiths et al., An Introduction to Genetic Analysis (published): the three-point cross v, ct, cv, 1448 young. */
    @Test
    void a_table_of_crossovers_gives_the_classes_of_a_three_point_cross() {
        Map<Map<String, String>, Probability> gametes =
                threePoint(threeLoci("\"crossovers\": {\"none\": \"1172/1448\", \"v-ct\": \"183/1448\", "
                        + "\"ct-cv\": \"85/1448\", \"v-ct ct-cv\": \"8/1448\"}"));
        assertEquals(8, gametes.size());
        assertEquals(Probability.of(586, 1448), gametes.get(map("v", "+", "ct", "+", "cv", "+")));
        assertEquals(Probability.of(4, 1448), gametes.get(map("v", "-", "ct", "+", "cv", "-")));
        assertEquals(Probability.of(191, 1448), recombinants(gametes, "v", "ct"));
        assertEquals(Probability.of(93, 1448), recombinants(gametes, "ct", "cv"));
    }

    /** Source: Haldane 1919 (from memory): without interference r13 = r12 + r23 - 2 r12 r23. */
    @Test
    void fractions_add_up_without_interference() {
        Map<Map<String, String>, Probability> gametes = threePoint(threeLoci("\"recombination\": [\"1/10\", \"1/5\"]"));
        assertEquals(Probability.of(1, 10), recombinants(gametes, "v", "ct"));
        assertEquals(Probability.of(1, 5), recombinants(gametes, "ct", "cv"));
        assertEquals(Probability.of(26, 100), recombinants(gametes, "v", "cv"));
        assertEquals(
                2, threePoint(threeLoci("\"title\": \"nothing recombines\"")).size());
    }

    private static Probability recombinants(Map<Map<String, String>, Probability> gametes, String one, String other) {
        Probability sum = Probability.ZERO;
        for (Map.Entry<Map<String, String>, Probability> gamete : gametes.entrySet()) {
            if (!gamete.getKey().get(one).equals(gamete.getKey().get(other))) {
                sum = sum.plus(gamete.getValue());
            }
        }
        return sum;
    }

    private static Genome oneLocus(String transmission, String dominance, String more) {
        return genome(
                "\"loci\": {\"O\": {\"alleles\": [\"O\", \"o\"], \"dominance\": " + dominance + more + "}}",
                "\"groups\": {\"g\": {\"transmission\": \"" + transmission + "\", \"loci\": [\"O\"]}}",
                """
                "traits": {"coat": {"cases": {"O": {"when": {"O": ["O"]}, "state": "O"}, "both": {"when": {"O": ["both"]}, "state": "both"},
                  "o": {"when": {"O": ["o"]}, "state": "o"}}, "otherwise": "none"}}""");
    }

    private static final String CODOMINANT = "{\"shows\": {\"O\": \"O\", \"O/o\": \"both\", \"o\": \"o\"}}";

    /** Common practice, no source: a black queen and a red tom have tortoiseshell daughters and black sons. */
    @Test
    void x_linked_daughters_have_both_strands_and_sons_the_dam_s() {
        Genome cat = oneLocus("X", CODOMINANT, "");
        ratio(
                bySex(cat, animal(cat, "male", "O", "O"), animal(cat, "female", "O", "o/o"), "coat"),
                "female both",
                1,
                "male o",
                1);
        assertEquals(List.of("O", "o"), cat.pairs("O", "male"));
        assertEquals(List.of("O/O", "O/o", "o/o"), cat.pairs("O", "female"));
    }

    /** Source: Morgan 1910, Science 32:120 (from memory): F2 of a white-eyed male is 2 : 1 : 1, no white-eyed female. */
    @Test
    void white_eyed_flies_of_the_f2_are_all_males() {
        Genome fly = oneLocus("X", "{\"order\": [\"O > o\"], \"shows\": {\"O\": \"O\", \"o\": \"o\"}}", "");
        ratio(
                bySex(fly, animal(fly, "male", "O", "O"), animal(fly, "female", "O", "O/o"), "coat"),
                "female O",
                2,
                "male O",
                1,
                "male o",
                1);
    }

    /** From memory (Spillman 1908): barred hen by black cock, sons barred and daughters black. */
    @Test
    void z_linked_daughters_have_the_sire_s_strand() {
        Genome fowl = oneLocus("Z", "{\"order\": [\"O > o\"], \"shows\": {\"O\": \"O\", \"o\": \"o\"}}", "");
        ratio(
                bySex(fowl, animal(fowl, "male", "O", "o/o"), animal(fowl, "female", "O", "O"), "coat"),
                "female o",
                1,
                "male O",
                1);
    }

    @Test
    void a_hemizygote_may_be_tabled_apart() {
        String tabled = "{\"shows\": {\"O\": \"O\", \"O/o\": \"both\", \"o\": \"o\", \"O/%s\": \"both\"}}";
        assertEquals("both", Life.expression(oneLocus("X", tabled.formatted("Y"), ""), "O", "O", "male"));
        assertEquals("o", Life.expression(oneLocus("X", tabled.formatted("Y"), ""), "O", "o", "male"));
        assertEquals("O", Life.expression(oneLocus("X", tabled.formatted("Y"), ""), "O", "O/O", "female"));
        assertEquals("both", Life.expression(oneLocus("Z", tabled.formatted("W"), ""), "O", "O", "female"));
    }

    @Test
    void y_goes_from_sire_to_sons_and_w_from_dam_to_daughters() {
        String shows = "{\"shows\": {\"O\": \"O\", \"o\": \"o\"}}";
        Genome y = oneLocus("Y", shows, ", \"absent\": \"neither\"");
        ratio(
                bySex(y, animal(y, "male", "O", "o"), animal(y, "female", "O", ""), "coat"),
                "female none",
                1,
                "male o",
                1);
        Genome w = oneLocus("W", shows, ", \"absent\": \"neither\"");
        ratio(
                bySex(w, animal(w, "male", "O", ""), animal(w, "female", "O", "o"), "coat"),
                "female o",
                1,
                "male none",
                1);
    }

    @Test
    void what_lies_outside_the_nucleus_comes_from_the_dam() {
        Genome genome = oneLocus("maternal", "{\"shows\": {\"O\": \"O\", \"o\": \"o\"}}", "");
        ratio(
                bySex(genome, animal(genome, "male", "O", "O"), animal(genome, "female", "O", "o"), "coat"),
                "female o",
                1,
                "male o",
                1);
    }

    @Test
    void x_linked_loci_recombine_in_the_dam_only() {
        Genome genome = genome(TWO_LOCI, """
                "groups": {"g": {"transmission": "X", "loci": ["B", "A"], "recombination": ["1/10"]}}""");
        Animal sire = animal(genome, "male", "A", "A", "B", "B");
        assertEquals(Map.of(map("B", "B", "A", "A"), Probability.ONE), Mating.gametes(genome, sire, "female"));
        assertEquals(Map.of(Map.of(), Probability.ONE), Mating.gametes(genome, sire, "male"));
        Animal dam = phased(genome, "female", BOTH, "A", "A|a", "B", "b|B");
        assertEquals(map("B", "B|b", "A", "a|A"), genome.phase(dam));
        Map<Map<String, String>, Probability> expected = new LinkedHashMap<>();
        expected.put(map("A", "A", "B", "b"), Probability.of(9, 20));
        expected.put(map("A", "a", "B", "B"), Probability.of(9, 20));
        expected.put(map("A", "A", "B", "B"), Probability.of(1, 20));
        expected.put(map("A", "a", "B", "b"), Probability.of(1, 20));
        assertEquals(expected, Mating.gametes(genome, dam, "male"));
    }

    /** Calculated: 1/10 of the gametes of A/A carry a. */
    @Test
    void mutation_happens_in_every_gamete() {
        Genome genome = genome("""
                "loci": {"A": {"alleles": ["A", "a"], "dominance": {"order": ["A > a"], "shows": {"A": "A", "a": "a"}},
                  "mutation": {"A": {"a": "1/10"}}}}""", "\"traits\": {}");
        Map<Map<String, String>, Probability> found = new LinkedHashMap<>();
        new Mating(genome, animal(genome, "male", "A", "A/A"), animal(genome, "female", "A", "A/A"))
                .conceived()
                .forEach((kit, chance) -> found.merge(genome.genotype(kit), chance, Probability::plus));
        ratio(found, map("A", "A/A"), 81, map("A", "A/a"), 18, map("A", "a/a"), 1);
    }

    private static final String YELLOW = """
            "loci": {
              "Y": {"alleles": ["Y", "y"], "dominance": {"shows": {"Y": "two doses", "Y/y": "one dose", "y": "none"}}},
              "B": {"alleles": ["B", "b"], "dominance": {"order": ["B > b"], "shows": {"B": "upper", "b": "lower"}}}},
            "traits": {
              "coat": {"cases": {"plain": {"when": {"Y": ["none"]}, "state": "plain"}}, "otherwise": "yellow"},
              "second": {"cases": {"b": {"when": {"B": ["lower"]}, "state": "b"}}, "otherwise": "B"}}""";

    /** Source: Castle and Little 1910, Science 32:868 (from memory): 2 yellow to 1, a quarter lost. Calculated: 6 : 2 : 3 : 1. */
    @Test
    void a_lethal_double_dose_leaves_2_to_1_and_an_independent_locus_its_3_to_1() {
        Genome mouse = genome(YELLOW, """
                "viability": {"lethal": {"locus": "Y", "expressions": ["two doses"], "birth": "0"}}""");
        Animal sire = animal(mouse, "male", "Y", "Y/y", "B", "B/b");
        Animal dam = animal(mouse, "female", "Y", "Y/y", "B", "B/b");
        ratio(looks(mouse, sire, dam, Map.of(), "coat"), map("coat", "yellow"), 2, map("coat", "plain"), 1);
        ratio(
                looks(mouse, sire, dam, Map.of(), "coat", "second"),
                map("coat", "yellow", "second", "B"),
                6,
                map("coat", "yellow", "second", "b"),
                2,
                map("coat", "plain", "second", "B"),
                3,
                map("coat", "plain", "second", "b"),
                1);
        assertEquals(Probability.of(3, 4), new Mating(mouse, sire, dam).share("born"));
        assertEquals(Probability.ONE, new Mating(mouse, sire, dam).share("conceived"));
    }

    /** Calculated: in coupling without recombination, B/B dies with Y/Y, so that 2 B/b are left to 1 b/b. */
    @Test
    void a_locus_linked_to_a_lethal_one_does_not_keep_its_ratio() {
        Genome mouse = genome(YELLOW, """
                "groups": {"g": {"loci": ["Y", "B"], "recombination": ["0"]}},
                "viability": {"lethal": {"locus": "Y", "expressions": ["two doses"], "birth": "0"}}""");
        Map<String, String> both = map("Y", "Y/y", "B", "B/b");
        ratio(
                looks(
                        mouse,
                        phased(mouse, "male", both, "Y", "Y|y", "B", "B|b"),
                        phased(mouse, "female", both, "Y", "Y|y", "B", "B|b"),
                        Map.of(),
                        "second"),
                map("second", "B"),
                2,
                map("second", "b"),
                1);
    }

    /** Calculated: of 2 yellow and 1 plain born of 4, half of the plain males are scored: 4 yellow, 1 plain female, 1/2 plain male. */
    @Test
    void viability_may_differ_by_sex_and_between_birth_and_scoring() {
        Genome mouse = genome(YELLOW, """
                "viability": {"lethal": {"locus": "Y", "expressions": ["two doses"], "birth": "0"},
                  "weak": {"locus": "Y", "expressions": ["none"], "sex": "male", "scored": "1/2"}}""");
        Animal sire = animal(mouse, "male", "Y", "Y/y", "B", "B/B");
        Animal dam = animal(mouse, "female", "Y", "Y/y", "B", "B/B");
        ratio(
                bySex(mouse, sire, dam, "coat"),
                "female yellow",
                4,
                "female plain",
                2,
                "male yellow",
                4,
                "male plain",
                1);
        assertEquals(Probability.of(3, 4), new Mating(mouse, sire, dam).share("born"));
        assertEquals(Probability.of(11, 16), new Mating(mouse, sire, dam).share("scored"));
    }

    @Test
    void parents_all_of_whose_kits_are_lost_have_none() {
        Genome mouse = genome(YELLOW, """
                "viability": {"lethal": {"locus": "B", "expressions": ["lower"], "birth": "0"}}""");
        Mating mating = new Mating(
                mouse, animal(mouse, "male", "Y", "y/y", "B", "b/b"), animal(mouse, "female", "Y", "y/y", "B", "b/b"));
        assertEquals(Probability.ZERO, mating.share("born"));
        assertEquals(Map.of(), mating.kits("born"));
    }
}
