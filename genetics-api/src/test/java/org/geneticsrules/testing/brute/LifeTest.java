package org.geneticsrules.testing.brute;

import static org.geneticsrules.testing.brute.Texts.animal;
import static org.geneticsrules.testing.brute.Texts.bySex;
import static org.geneticsrules.testing.brute.Texts.genome;
import static org.geneticsrules.testing.brute.Texts.looks;
import static org.geneticsrules.testing.brute.Texts.map;
import static org.geneticsrules.testing.brute.Texts.ratio;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.geneticsrules.probability.Probability;
import org.junit.jupiter.api.Test;

/** Own states, chance, masks and stages of the reference. Every number is calculated, unless the test says otherwise. */
class LifeTest {

    private static final String ONE_LOCUS = """
            "loci": {"A": {"alleles": ["A", "a"], "dominance": {"shows": {"A": "two", "A/a": "one", "a": "no"}}}}""";

    private static Animal of(Genome genome, String pair) {
        return animal(genome, "female", "A", pair);
    }

    @Test
    void chances_are_those_of_the_case_that_holds() {
        Genome genome = genome(ONE_LOCUS, """
                "traits": {"mark": {"cases": {"one": {"when": {"A": ["one"]}, "chance": {"bib": "1/4", "none": 0.75}},
                  "two": {"when": {"A": ["two"]}, "state": "bib"}},
                  "otherwise": {"chance": {"none": "1", "bib": "0"}, "evidence": "seen"}}}""");
        ratio(Life.looks(genome, of(genome, "A/A"), Map.of(), List.of("mark")), map("mark", "bib"), 1);
        ratio(Life.looks(genome, of(genome, "a/a"), Map.of(), List.of("mark")), map("mark", "none"), 1);
        ratio(
                Life.looks(genome, of(genome, "A/a"), Map.of(), List.of("mark")),
                map("mark", "bib"),
                1,
                map("mark", "none"),
                3);
    }

    @Test
    void what_two_traits_read_is_drawn_once_and_what_two_cases_state_is_drawn_twice() {
        String mark =
                "\"%s\": {\"cases\": {\"one\": {\"when\": {%s}, \"chance\": {\"yes\": \"1/2\", \"no\": \"1/2\"}}}}";
        Genome apart = genome(
                ONE_LOCUS,
                "\"traits\": {" + mark.formatted("left", "\"A\": [\"one\"]") + ", "
                        + mark.formatted("right", "\"A\": [\"one\"]") + "}");
        assertEquals(
                4,
                Life.looks(apart, of(apart, "A/a"), Map.of(), List.of("left", "right"))
                        .size());
        String read =
                "\"%s\": {\"cases\": {\"one\": {\"when\": {\"spread\": [\"yes\"]}, \"state\": \"yes\"}}, \"otherwise\": \"no\"}";
        Genome together = genome(
                ONE_LOCUS,
                "\"traits\": {" + read.formatted("left") + ", " + read.formatted("right") + ", "
                        + mark.formatted("spread", "\"A\": [\"one\"]") + "}");
        ratio(
                Life.looks(together, of(together, "A/a"), Map.of(), List.of("left", "right")),
                map("left", "yes", "right", "yes"),
                1,
                map("left", "no", "right", "no"),
                1);
    }

    private static final String GREYING = """
            "traits": {"grey": {"cases": {"one": {"when": {"A": ["one"]}, "progression": {"clock": "moult",
              "start": {"none": "1"}, "step": {"none": {"none": "1/2", "some": "1/2"}, "some": {"some": "2/3", "all": "1/3"}}}}},
              "otherwise": "none"}}""";

    @Test
    void a_progression_steps_at_every_count() {
        Genome genome = genome(ONE_LOCUS, GREYING);
        Animal animal = of(genome, "A/a");
        ratio(Life.looks(genome, animal, map("moult", "0"), List.of("grey")), map("grey", "none"), 1);
        ratio(
                Life.looks(genome, animal, map("moult", "2"), List.of("grey")),
                map("grey", "none"),
                3,
                map("grey", "some"),
                7,
                map("grey", "all"),
                2);
        ratio(Life.looks(genome, of(genome, "a/a"), Map.of(), List.of("grey")), map("grey", "none"), 1);
        IllegalStateException refused = assertThrows(
                IllegalStateException.class, () -> Life.looks(genome, animal, map("week", "8"), List.of("grey")));
        assertTrue(refused.getMessage().startsWith("/traits/grey/cases/one needs the moult"), refused.getMessage());
    }

    @Test
    void looks_at_two_stages_are_of_one_path_in_whatever_order_they_are_asked_for() {
        Genome genome = genome(ONE_LOCUS, GREYING);
        Map<List<Map<String, String>>, Probability> histories = Life.histories(
                genome, of(genome, "A/a"), List.of(map("moult", "2"), map("moult", "1")), List.of("grey"));
        ratio(
                histories,
                List.of(map("grey", "none"), map("grey", "none")),
                3,
                List.of(map("grey", "some"), map("grey", "none")),
                3,
                List.of(map("grey", "some"), map("grey", "some")),
                4,
                List.of(map("grey", "all"), map("grey", "some")),
                2);
        List<Seen> twice = List.of(
                new Seen(map("moult", "1"), map("grey", "some")), new Seen(map("moult", "2"), map("grey", "all")));
        assertEquals(Probability.of(1, 6), Life.agrees(genome, of(genome, "A/a"), twice));
        assertEquals(Probability.ZERO, Life.agrees(genome, of(genome, "a/a"), twice));
    }

    @Test
    void a_draw_is_kept_when_the_season_turns() {
        Genome genome = genome(ONE_LOCUS, """
                "traits": {"mark": {"cases": {
                  "winter": {"when": {"season": ["winter"]}, "state": "none"},
                  "summer": {"when": {"season": {"not": ["winter"]}}, "chance": {"bib": "1/2", "none": "1/2"}}}}}""");
        ratio(
                Life.histories(
                        genome,
                        of(genome, "A/a"),
                        List.of(map("season", "summer"), map("season", "winter"), map("season", "summer")),
                        List.of("mark")),
                List.of(map("mark", "bib"), map("mark", "none"), map("mark", "bib")),
                1,
                List.of(map("mark", "none"), map("mark", "none"), map("mark", "none")),
                1);
        assertThrows(
                IllegalStateException.class, () -> Life.looks(genome, of(genome, "A/a"), Map.of(), List.of("mark")));
    }

    /** Source: Nilsson-Ehle 1909, published as a ratio: three additive loci, 63 with any dose to 1 without. */
    @Test
    void a_threshold_of_three_additive_loci_is_63_to_1() {
        String locus =
                "{\"alleles\": [\"R\", \"r\"], \"dominance\": {\"shows\": {\"R\": \"2\", \"R/r\": \"1\", \"r\": \"0\"}}}";
        String dose = "{\"1\": 1, \"2\": 2}";
        Genome genome = genome(
                "\"loci\": {\"R\": " + locus + ", \"S\": " + locus + ", \"T\": " + locus + "}",
                "\"traits\": {\"grain\": {\"cases\": {}, \"otherwise\": {\"threshold\": {\"doses\": {\"R\": " + dose
                        + ", \"S\": " + dose + ", \"T\": " + dose
                        + "}, \"below\": \"white\", \"cuts\": {\"pale\": 1, \"red\": 4}}}}}");
        ratio(
                looks(
                        genome,
                        animal(genome, "male", "R", "R/r", "S", "R/r", "T", "R/r"),
                        animal(genome, "female", "R", "R/r", "S", "R/r", "T", "R/r"),
                        Map.of(),
                        "grain"),
                map("grain", "white"),
                1,
                map("grain", "pale"),
                6 + 15 + 20,
                map("grain", "red"),
                15 + 6 + 1);
    }

    @Test
    void a_residual_moves_an_animal_over_a_cut() {
        Genome genome = genome(ONE_LOCUS, """
                "traits": {"size": {"cases": {}, "otherwise": {"threshold": {"doses": {"A": {"one": 1, "two": 3}},
                  "residual": {"-1": "1/5", "0": "3/5", "1": "1/5"}, "below": "small", "cuts": {"middle": 1, "large": 3}}}}}""");
        ratio(
                Life.looks(genome, of(genome, "A/a"), Map.of(), List.of("size")),
                map("size", "small"),
                1,
                map("size", "middle"),
                4);
        ratio(
                Life.looks(genome, of(genome, "A/A"), Map.of(), List.of("size")),
                map("size", "middle"),
                1,
                map("size", "large"),
                4);
        ratio(
                Life.looks(genome, of(genome, "a/a"), Map.of(), List.of("size")),
                map("size", "small"),
                4,
                map("size", "middle"),
                1);
    }

    /** Source: Wood 1905, Journal of Agricultural Science 1:364 (from memory): horns are dominant in rams, recessive in ewes. */
    @Test
    void dominance_that_differs_by_sex_is_3_to_1_in_one_and_1_to_3_in_the_other() {
        Genome sheep = genome("""
                "loci": {"H": {"alleles": ["H", "h"], "expressions": ["horns", "none"], "dominance": {
                  "male": {"order": ["H > h"], "shows": {"H": "horns", "h": "none"}},
                  "female": {"order": ["h > H"], "shows": {"H": "horns", "h": "none"}}}}}""", """
                "traits": {"head": {"cases": {"horns": {"when": {"H": ["horns"]}, "state": "horned"}}, "otherwise": "polled"}}""");
        ratio(
                bySex(sheep, animal(sheep, "male", "H", "H/h"), animal(sheep, "female", "H", "H/h"), "head"),
                "female horned",
                1,
                "female polled",
                3,
                "male horned",
                3,
                "male polled",
                1);
    }

    @Test
    void conditions_read_the_sex() {
        Genome fowl = genome(ONE_LOCUS, """
                "traits": {"tail": {"cases": {"long": {"when": {"sex": ["male"], "A": {"not": ["two"]}}, "state": "long"}}, "otherwise": "short"}}""");
        ratio(
                bySex(fowl, animal(fowl, "male", "A", "A/A"), animal(fowl, "female", "A", "A/a"), "tail"),
                "female short",
                2,
                "male short",
                1,
                "male long",
                1);
    }

    private static final String GREYING_COVERS = """
            "masks": {"grey": {"when": {"grey": ["some"]}, "covers": {"hue": {"black": "steel"}}, "over": ["white"]},
              "white": {"when": {"grey": ["some", "all"]}, "covers": {"hue": "white"}}}""";

    @Test
    void a_mask_that_reads_a_progressing_trait_comes_and_goes_with_it() {
        Genome genome = genome(
                ONE_LOCUS,
                GREYING.replaceFirst("\\}$", ", \"hue\": {\"cases\": {}, \"otherwise\": \"black\"}}"),
                GREYING_COVERS);
        ratio(
                Life.looks(genome, of(genome, "A/a"), map("moult", "2"), List.of("hue")),
                map("hue", "black"),
                3,
                map("hue", "steel"),
                7,
                map("hue", "white"),
                2);
        Life life = Choices.all(chance -> new Life(genome, of(genome, "a/a"), chance))
                .keySet()
                .iterator()
                .next();
        assertEquals(List.of(), life.activeMasks(map("moult", "2")));
    }

    @Test
    void what_is_not_modelled_makes_conditions_unknown_and_is_no_evidence() {
        Genome genome = genome(ONE_LOCUS, """
                "traits": {
                  "depth": {"cases": {"one": {"when": {"A": ["one"]}, "chance": {"deep": "1/2", "pale": "1/2"}}}},
                  "mark": {"cases": {"deep": {"when": {"depth": ["deep"]}, "state": "bib"}}, "otherwise": "plain"}}""");
        List<String> traits = List.of("depth", "mark");
        ratio(Life.looks(genome, of(genome, "a/a"), Map.of(), traits), Map.of(), 1);
        ratio(
                Life.looks(genome, of(genome, "A/a"), Map.of(), traits),
                map("depth", "deep", "mark", "bib"),
                1,
                map("depth", "pale", "mark", "plain"),
                1);
        List<Seen> pale = List.of(new Seen(Map.of(), map("depth", "pale")));
        assertEquals(Probability.of(1, 2), Life.agrees(genome, of(genome, "A/a"), pale));
        assertEquals(Probability.ONE, Life.agrees(genome, of(genome, "A/A"), pale));
    }

    @Test
    void a_locus_is_hidden_where_another_genotype_looks_the_same() {
        Genome genome = genome(ONE_LOCUS, """
                "traits": {"mark": {"cases": {"one": {"when": {"A": ["one"]}, "chance": {"bib": "1/4", "none": "3/4"}},
                  "two": {"when": {"A": ["two"]}, "state": "bib"}}, "otherwise": "none"}}""");
        List<String> mark = List.of("mark");
        assertEquals(List.of(), Hidden.alike(genome, "female", map("A", "A/a"), Map.of(), mark));
        assertEquals(
                List.of("A"), Hidden.mayShow(genome, "female", map("A", "A/a"), Map.of(), map("mark", "bib"), mark));
        assertEquals(List.of("A"), Hidden.alike(genome, "female", map("A", "A/a"), Map.of(), List.of()));
    }
}
