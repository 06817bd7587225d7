package org.geneticsrules.testing.brute;

import static org.geneticsrules.testing.brute.Texts.animal;
import static org.geneticsrules.testing.brute.Texts.certain;
import static org.geneticsrules.testing.brute.Texts.genome;
import static org.geneticsrules.testing.brute.Texts.map;
import static org.geneticsrules.testing.brute.Texts.ratio;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.probability.Probability;
import org.junit.jupiter.api.Test;

/** Uncertain parents of the reference, held against the arithmetic of carriers. Every number is calculated exactly. */
class LittersTest {

    private static final String RECESSIVE = """
            "loci": {"C": {"alleles": ["C", "c"], "dominance": {"order": ["C > c"], "shows": {"C": "yes", "c": "no"}}}},
            "traits": {"skin": {"cases": {"no": {"when": {"C": ["no"]}, "state": "affected"}}, "otherwise": "healthy"}},
            "populations": {"half": {"frequencies": {"C": {"C": "1/2", "c": "1/2"}}},
              "rare": {"frequencies": {"C": {"C": "49/50", "c": "1/50"}}}}""";

    private static final Genome AUTOSOMAL = genome(RECESSIVE);

    private static final Genome X_LINKED = genome(RECESSIVE, """
            "groups": {"g": {"transmission": "X", "loci": ["C"]}}""");

    private static Seen.Kit kit(String sex, String state) {
        return new Seen.Kit(sex, List.of(new Seen(Map.of(), map("skin", state))));
    }

    /** An unaffected sib of an affected animal, both parents carriers: 1/3 to 2/3. */
    private static Map<Animal, Probability> sib(String sex) {
        return Founders.of(
                AUTOSOMAL,
                sex,
                AUTOSOMAL.genotypes(sex),
                Map.of(),
                "half",
                "scored",
                List.of(new Seen(Map.of(), map("skin", "healthy"))));
    }

    private static Map<Animal, Probability> parent(String sex, String pair) {
        return certain(animal(AUTOSOMAL, sex, "C", pair));
    }

    /** The chance that the next kit is affected, before and after some unaffected ones, and twice that: see the callers. */
    private static List<Probability> nextAffected(
            Map<Animal, Probability> sires, Map<Animal, Probability> dams, int healthy) {
        Litters litters = Litters.of(AUTOSOMAL, sires, dams, "scored");
        List<Probability> chances = new ArrayList<>();
        for (int n = 0; n <= healthy; n++) {
            List<Seen.Kit> seen = new ArrayList<>();
            for (int i = 0; i < n; i++) {
                seen.add(kit("", "healthy"));
            }
            chances.add(litters.given(seen).looks(Map.of(), List.of("skin")).get(map("skin", "affected")));
        }
        return chances;
    }

    private static List<Probability> times(Probability factor, Probability... chances) {
        List<Probability> products = new ArrayList<>();
        for (Probability chance : chances) {
            products.add(chance.times(factor));
        }
        return products;
    }

    @Test
    void an_unaffected_sib_is_a_carrier_with_two_thirds() {
        Map<Map<String, String>, Probability> genotypes = new LinkedHashMap<>();
        sib("male").forEach((animal, chance) -> genotypes.put(AUTOSOMAL.genotype(animal), chance));
        ratio(genotypes, map("C", "C/C"), 1, map("C", "C/c"), 2);
    }

    /** Carrier with 2/3, 1/2, 1/3, 1/5 after unaffected young by an affected mate, half of whose next young are affected. */
    @Test
    void unaffected_young_of_an_affected_mate_make_a_carrier_less_likely() {
        assertEquals(
                times(
                        Probability.of(1, 2),
                        Probability.of(2, 3),
                        Probability.of(1, 2),
                        Probability.of(1, 3),
                        Probability.of(1, 5)),
                nextAffected(sib("male"), parent("female", "c/c"), 3));
    }

    /** Carrier with 2/3, 3/5, 9/17, 27/59 after unaffected young by a known carrier, a quarter of whose next young are affected. */
    @Test
    void unaffected_young_of_a_carrier_say_less() {
        assertEquals(
                times(
                        Probability.of(1, 4),
                        Probability.of(2, 3),
                        Probability.of(3, 5),
                        Probability.of(9, 17),
                        Probability.of(27, 59)),
                nextAffected(sib("male"), parent("female", "C/c"), 3));
    }

    /** Both sibs: 1/9; after unaffected young both carry with 3/8 and 9/29. */
    @Test
    void two_sibs_of_affected_animals_are_both_in_doubt() {
        assertEquals(
                times(Probability.of(1, 4), Probability.of(4, 9), Probability.of(3, 8), Probability.of(9, 29)),
                nextAffected(sib("male"), sib("female"), 2));
    }

    @Test
    void kits_of_one_litter_are_a_mixture() {
        Litters litters = Litters.of(AUTOSOMAL, sib("male"), parent("female", "C/c"), "scored");
        Map<Integer, Probability> expected = new LinkedHashMap<>();
        expected.put(0, Probability.of(17, 24)); // 1/3 + 2/3 (3/4)^2
        expected.put(1, Probability.of(1, 4)); // 2/3 x 2 x 1/4 x 3/4
        expected.put(2, Probability.of(1, 24)); // 2/3 (1/4)^2
        assertEquals(expected, litters.counts(2, "", Map.of(), map("skin", "affected")));
        ratio(litters.chances("", Map.of(), map("skin", "affected")), Probability.ZERO, 1, Probability.of(1, 4), 2);
        assertEquals(
                Probability.of(1, 12),
                litters.counts(1, "male", Map.of(), map("skin", "affected")).get(1));
    }

    /** A daughter of a carrier, with n unaffected sons: carrier with 1/(2^n + 1), and half of her sons are affected then. */
    @Test
    void unaffected_sons_clear_the_daughter_of_an_x_linked_carrier() {
        Map<Animal, Probability> daughter = new LinkedHashMap<>();
        daughter.put(animal(X_LINKED, "female", "C", "C/C"), Probability.of(1, 2));
        daughter.put(animal(X_LINKED, "female", "C", "C/c"), Probability.of(1, 2));
        Litters litters = Litters.of(X_LINKED, certain(animal(X_LINKED, "male", "C", "C")), daughter, "scored");
        List<Seen.Kit> sons = new ArrayList<>();
        sons.add(kit("female", "healthy"));
        for (int n = 0; n < 4; n++) {
            Probability carrier = Probability.of(1, (1 << n) + 1);
            assertEquals(
                    carrier.times(Probability.of(1, 4)),
                    litters.given(sons).looks(Map.of(), List.of("skin")).get(map("skin", "affected")));
            sons.add(kit("male", "healthy"));
        }
        assertTrue(litters.given(List.of(kit("female", "affected"))).isEmpty());
    }

    /** Recessive at 1/2500: 2/51 of the unaffected carry. On the X, 1/50 of the males are affected. */
    @Test
    void founders_are_p2_and_2pq_and_males_p_on_the_x() {
        assertEquals(Probability.of(49 * 49, 2500), Founders.frequency(AUTOSOMAL, map("C", "C/C"), "rare"));
        List<Seen> healthy = List.of(new Seen(Map.of(), map("skin", "healthy")));
        Map<Animal, Probability> unaffected =
                Founders.of(AUTOSOMAL, "male", AUTOSOMAL.genotypes("male"), Map.of(), "rare", "conceived", healthy);
        assertEquals(Probability.of(2, 51), unaffected.get(animal(AUTOSOMAL, "male", "C", "C/c")));
        Map<Animal, Probability> males =
                Founders.of(X_LINKED, "male", X_LINKED.genotypes("male"), Map.of(), "rare", "conceived", List.of());
        assertEquals(Probability.of(1, 50), males.get(animal(X_LINKED, "male", "C", "c")));
        Map<Animal, Probability> females =
                Founders.of(X_LINKED, "female", X_LINKED.genotypes("female"), Map.of(), "rare", "conceived", List.of());
        assertEquals(Probability.of(98, 2500), females.get(animal(X_LINKED, "female", "C", "C/c")));
    }

    /** Dominant with penetrance K, parent a heterozygote, other parent free: an unaffected young carries with (1-K)/(2-K). */
    @Test
    void an_unaffected_animal_may_carry_what_does_not_always_show() {
        Genome genome = genome("""
                "loci": {"D": {"alleles": ["D", "d"], "dominance": {"order": ["D > d"], "shows": {"D": "yes", "d": "no"}}}},
                "traits": {"gait": {"cases": {"yes": {"when": {"D": ["yes"]}, "chance": {"affected": "4/5", "healthy": "1/5"}}},
                  "otherwise": "healthy"}},
                "populations": {"young": {"frequencies": {"D": {"D": "1/2", "d": "1/2"}}}}""");
        List<Map<String, String>> young = List.of(map("D", "D/d"), map("D", "d/d"));
        Map<Animal, Probability> weights = new LinkedHashMap<>();
        for (Map<String, String> genotype : young) {
            Animal animal = animal(genome, "male", "D", genotype.get("D"));
            weights.put(
                    animal,
                    Probability.of(1, 2)
                            .times(Life.agrees(genome, animal, List.of(new Seen(Map.of(), map("gait", "healthy"))))));
        }
        assertEquals(Probability.of(1, 6), Founders.normalised(weights).get(animal(genome, "male", "D", "D/d")));
    }

    private static final Genome YELLOW = genome("""
            "loci": {"Y": {"alleles": ["Y", "y"], "dominance": {"shows": {"Y": "two doses", "Y/y": "one dose", "y": "none"}}}},
            "traits": {"coat": {"cases": {"plain": {"when": {"Y": ["none"]}, "state": "plain"}}, "otherwise": "yellow"}},
            "populations": {"town": {"frequencies": {"Y": {"Y": "1/4", "y": "3/4"}}}},
            "viability": {"lethal": {"locus": "Y", "expressions": ["two doses"], "birth": "0"}}""");

    /** 6/16 to 9/16 among the born, and no Y/Y. Pairs of two yellow ones have 2 : 1, which is averaged as it stands. */
    @Test
    void founders_are_those_that_live_and_pairs_are_renormalised_one_by_one() {
        Map<Animal, Probability> hobs =
                Founders.of(YELLOW, "male", YELLOW.genotypes("male"), Map.of(), "town", "born", List.of());
        Map<Animal, Probability> jills =
                Founders.of(YELLOW, "female", YELLOW.genotypes("female"), Map.of(), "town", "born", List.of());
        assertEquals(2, hobs.size());
        assertEquals(Probability.of(2, 5), hobs.get(animal(YELLOW, "male", "Y", "Y/y")));
        Litters litters = Litters.of(YELLOW, hobs, jills, "born");
        // 4/25 x 2/3 + 12/25 x 1/2
        assertEquals(
                Probability.of(26, 75), litters.looks(Map.of(), List.of("coat")).get(map("coat", "yellow")));
        assertEquals(Probability.of(1, 25), litters.lost()); // 4/25 x 1/4
    }

    @Test
    void an_unrecorded_kit_changes_nothing() {
        Litters litters = Litters.of(AUTOSOMAL, sib("male"), sib("female"), "scored");
        Seen.Kit unseen = new Seen.Kit("", List.of());
        assertEquals(
                litters.looks(Map.of(), List.of("skin")),
                litters.given(List.of(unseen)).looks(Map.of(), List.of("skin")));
    }

    /** Looked at twice, a kit is more likely to be one that keeps its draw; the draw itself is not inherited. */
    @Test
    void sightings_of_one_kit_share_its_draws() {
        Genome genome = genome("""
                "loci": {"D": {"alleles": ["D", "d"], "dominance": {"order": ["D > d"], "shows": {"D": "yes", "d": "no"}}}},
                "traits": {"gait": {"cases": {"yes": {"when": {"D": ["yes"]}, "chance": {"affected": "4/5", "healthy": "1/5"}}},
                  "otherwise": "healthy"}}""");
        Map<Animal, Probability> sires = new LinkedHashMap<>();
        sires.put(animal(genome, "male", "D", "D/D"), Probability.of(1, 2));
        sires.put(animal(genome, "male", "D", "d/d"), Probability.of(1, 2));
        Litters litters = Litters.of(genome, sires, certain(animal(genome, "female", "D", "d/d")), "scored");
        Seen healthy = new Seen(Map.of(), map("gait", "healthy"));
        Map<String, String> affected = map("gait", "affected");
        List<String> gait = List.of("gait");
        // D/D with 1/5 : 1, so 1/6, however often the same kit is looked at; 1/25 : 1 with two kits.
        Probability once = litters.given(List.of(new Seen.Kit("", List.of(healthy))))
                .looks(Map.of(), gait)
                .get(affected);
        assertEquals(Probability.of(1, 6).times(Probability.of(4, 5)), once);
        assertEquals(
                once,
                litters.given(List.of(new Seen.Kit("", List.of(healthy, healthy))))
                        .looks(Map.of(), gait)
                        .get(affected));
        Seen.Kit kit = new Seen.Kit("", List.of(healthy));
        assertEquals(
                Probability.of(1, 26).times(Probability.of(4, 5)),
                litters.given(List.of(kit, kit)).looks(Map.of(), gait).get(affected));
    }
}
