package org.geneticsrules.testing.brute;

import static org.geneticsrules.testing.brute.Texts.animal;
import static org.geneticsrules.testing.brute.Texts.genome;
import static org.geneticsrules.testing.brute.Texts.looks;
import static org.geneticsrules.testing.brute.Texts.map;
import static org.geneticsrules.testing.brute.Texts.phased;
import static org.geneticsrules.testing.brute.Texts.ratio;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.LinkedHashMap;
import java.util.Map;
import org.geneticsrules.probability.Probability;
import org.junit.jupiter.api.Test;

/** One model that uses linkage, chance, progression and masks together. Every number is calculated by hand. */
class SketchTest {

    private static final String LOCI = """
            "loci": {
              "C": {"alleles": ["C","c"], "dominance": {"order": ["C > c"], "shows": {"C":"pigment","c":"albino"}, "evidence": "tyr"}},
              "B": {"alleles": ["B","b"], "dominance": {"order": ["B > b"], "shows": {"B":"dark","b":"brown"}}},
              "M": {"alleles": ["M","m"], "dominance": {"shows": {"M":"plain","M/m":"one dose","m":"two doses"}}},
              "W": {"alleles": ["W","w"], "dominance": {"order": ["W > w"], "shows": {"W":"marked","w":"unmarked"}}} },
            "groups": { "g": {"transmission": "autosomal", "loci": ["B","W"], "recombination": ["1/10"]} }""";

    private static final String RULES = """
            "traits": {
              "hue": {"cases": {"dark": {"when": {"B":["dark"]}, "state":"black"}, "brown": {"when": {"B":["brown"]}, "state":"chocolate"}}},
              "eye": {"cases": {"pink": {"when": {"C":["albino"]}, "state":"pink"}}, "otherwise": "black"},
              "white hairs": {"cases": { "plain": {"when": {"M":["plain"]}, "state":"none"}, "two": {"when": {"M":["two doses"]}, "state":"all"},
                "one": {"when": {"M":["one dose"]}, "progression": {"clock":"moult", "start": {"few":"3/4","half":"1/4"},
                  "step": {"few": {"few":"1/2","half":"1/2"}, "half": {"half":"2/3","all":"1/3"}}}}}},
              "spread": {"visible": false, "cases": {"marked": {"when": {"W":["marked"]},
                "chance": {"none":"1/10","low":"6/10","high":"3/10"}}}, "otherwise": "none"},
              "throat": {"cases": {"bib": {"when": {"spread":["low","high"]}, "state":"bib"}}, "otherwise": "none"},
              "head": {"cases": {"stripe": {"when": {"spread":["high"]}, "state":"stripe"}}, "otherwise": "none"} },
            "masks": {
              "albino": {"when": {"C":["albino"]}, "covers": {"hue":"none","white hairs":"all","throat":"none","head":"none"}, "over": ["whitened"]},
              "whitened": {"when": {"white hairs":["all"]}, "covers": {"hue":"none","throat":"none","head":"none"}} }""";

    private static final Genome SKETCH = genome(LOCI, RULES);

    @Test
    void two_loci_and_the_albino_mask_are_9_3_4() {
        Animal sire = animal(SKETCH, "male", "C", "C/c", "B", "B/b", "M", "M/M", "W", "w/w");
        Animal dam = animal(SKETCH, "female", "C", "C/c", "B", "B/b", "M", "M/M", "W", "w/w");
        ratio(
                looks(SKETCH, sire, dam, Map.of(), "hue", "eye"),
                map("hue", "black", "eye", "black"),
                9,
                map("hue", "chocolate", "eye", "black"),
                3,
                map("hue", "none", "eye", "pink"),
                4);
    }

    /** How many kits of C/c M/m x same show no hue: dark-eyed, and pink-eyed. */
    private static Probability[] white(Genome genome, int moult) {
        Animal sire = animal(genome, "male", "C", "C/c", "B", "B/B", "M", "M/m", "W", "w/w");
        Animal dam = animal(genome, "female", "C", "C/c", "B", "B/B", "M", "M/m", "W", "w/w");
        Map<Map<String, String>, Probability> looks =
                looks(genome, sire, dam, map("moult", String.valueOf(moult)), "hue", "eye");
        return new Probability[] {
            looks.get(map("hue", "none", "eye", "black")), looks.get(map("hue", "none", "eye", "pink"))
        };
    }

    private static void white(int moult, Probability darkEyed) {
        Probability[] found = white(SKETCH, moult);
        assertEquals(darkEyed, found[0], "moult " + moult);
        assertEquals(Probability.of(1, 4), found[1], "moult " + moult);
    }

    @Test
    void whitening_covers_the_hue_of_more_animals_with_every_moult() {
        white(0, Probability.of(3, 16));
        white(1, Probability.of(7, 32));
        white(3, Probability.of(409, 1152));
    }

    @Test
    void with_whitening_recessive_the_cross_is_9_3_4_at_every_moult() {
        Genome recessive = genome(
                LOCI.replace(
                        "\"shows\": {\"M\":\"plain\",\"M/m\":\"one dose\",\"m\":\"two doses\"}",
                        "\"order\": [\"M > m\"], \"shows\": {\"M\":\"plain\",\"m\":\"two doses\"}"),
                RULES);
        for (int moult = 0; moult < 4; moult++) {
            Probability[] found = white(recessive, moult);
            assertEquals(Probability.of(3, 16), found[0]);
            assertEquals(Probability.of(4, 16), found[1]);
        }
    }

    @Test
    void a_coupling_test_cross_with_incomplete_penetrance() {
        Animal sire =
                phased(SKETCH, "male", map("C", "C/C", "B", "B/b", "M", "M/M", "W", "W/w"), "B", "B|b", "W", "W|w");
        Animal dam = animal(SKETCH, "female", "C", "C/C", "B", "b/b", "M", "M/M", "W", "w/w");
        Map<Map<String, String>, Probability> expected = new LinkedHashMap<>();
        expected.put(map("hue", "black", "throat", "bib", "head", "stripe"), Probability.of(27, 200));
        expected.put(map("hue", "black", "throat", "bib", "head", "none"), Probability.of(27, 100));
        expected.put(map("hue", "black", "throat", "none", "head", "none"), Probability.of(19, 200));
        expected.put(map("hue", "chocolate", "throat", "bib", "head", "stripe"), Probability.of(3, 200));
        expected.put(map("hue", "chocolate", "throat", "bib", "head", "none"), Probability.of(3, 100));
        expected.put(map("hue", "chocolate", "throat", "none", "head", "none"), Probability.of(91, 200));
        assertEquals(expected, looks(SKETCH, sire, dam, map("moult", "0"), "hue", "throat", "head"));
    }
}
