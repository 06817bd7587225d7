package org.geneticsrules.testing.brute;

import static org.geneticsrules.testing.brute.Texts.genome;
import static org.geneticsrules.testing.brute.Texts.map;
import static org.geneticsrules.testing.brute.Texts.ratio;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.DocumentMaps;
import org.geneticsrules.testing.KnownPedigrees;
import org.geneticsrules.testing.KnownPedigrees.Known;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Pedigrees small enough to be reckoned by hand. Numbers without a source are calculated by hand, as the comments say. */
class WorldsTest {

    private static final String LOCUS = """
            "loci": {"A": {"alleles": ["A","a"], "expressions": ["full","none"],
              "dominance": {"order": ["A > a"], "shows": {"A":"full","a":"none"}} %s}}""";

    private static final String COAT = """
            "traits": {"coat": {"cases": {"white": {"when": {"A":["none"]}, "state":"white"}}, "otherwise": "black"}}""";

    /** In population p, p(a) = 1/4: A/A 9/16, A/a 6/16, a/a 1/16. In population r, p(a) = 1/2. */
    private static final String POPULATIONS = """
            "populations": {"p": {"frequencies": {"A": {"A":"3/4","a":"1/4"}}},
              "r": {"frequencies": {"A": {"A":"1/2","a":"1/2"}}}}""";

    private static final String ON_X = """
            "groups": {"x": {"transmission": "X", "loci": ["A"]}}""";

    private static final Genome COATS = genome(LOCUS.formatted(""), COAT, POPULATIONS);

    static List<Known> known() {
        return KnownPedigrees.all();
    }

    @ParameterizedTest
    @MethodSource("known")
    void known_answers(Known known) {
        Worlds worlds = Worlds.of(new Genome(DocumentMaps.of(known.model())), known.kindred());
        List<String> members = List.copyOf(known.event().keySet());
        Probability chance = Probability.ZERO;
        for (Map.Entry<List<Map<String, String>>, Probability> one :
                worlds.jointly(members).entrySet()) {
            boolean meant = true;
            for (int i = 0; i < members.size(); i++) {
                String genotype = one.getKey().get(i).get(known.locus());
                meant = meant && known.event().get(members.get(i)).contains(genotype);
            }
            chance = meant ? chance.plus(one.getValue()) : chance;
        }
        assertEquals(known.chance(), chance, known.source());
    }

    private static Worlds worlds(Genome genome, KindredBuilder kindred) {
        return Worlds.of(genome, kindred.build());
    }

    private static KindredBuilder pair() {
        return new KindredBuilder().member("dam", "female", "p").member("sire", "male", "p");
    }

    // ---- founders and kits
    // ----------------------------------------------------------------------------------------------------

    @Test
    void a_founder_is_in_hardy_weinberg_proportions() {
        Worlds worlds = worlds(COATS, new KindredBuilder().member("animal", "female", "p"));
        ratio(worlds.genotypes("animal", "A"), "A/A", 9, "A/a", 6, "a/a", 1);
        assertEquals(Probability.ONE, worlds.likelihood());
        ratio(worlds.sexes("animal"), "female", 1);
    }

    @Test
    void kits_of_two_heterozygotes_are_1_2_1_and_the_fourth_is_white() {
        KindredBuilder kindred = pair().has("dam", "A", "A/a")
                .has("sire", "A", "A/a")
                .litter("dam", "sire", "", "seen", "next")
                .shows("coat", "white", "seen");
        Worlds worlds = worlds(COATS, kindred);
        ratio(worlds.genotypes("next", "A"), "A/A", 1, "A/a", 2, "a/a", 1);
        ratio(worlds.genotypes("seen", "A"), "a/a", 1);
        ratio(worlds.sexes("next"), "female", 1, "male", 1);
        // Each parent is A/a in 6 of 16, a kit of such parents white in 1 of 4.
        assertEquals(Probability.of(6 * 6, 16 * 16 * 4), worlds.likelihood());
    }

    @Test
    void an_unrecorded_sire_comes_from_the_population_of_the_dam_unless_stated() {
        KindredBuilder kindred =
                new KindredBuilder().member("dam", "female", "p").has("dam", "A", "a/a");
        // He passes a on with 1/4 or 1/2.
        assertEquals(
                Probability.of(1, 4),
                worlds(COATS, kindred.litter("dam", "", "", "kit"))
                        .genotypes("kit", "A")
                        .get("a/a"));
        KindredBuilder stated = new KindredBuilder()
                .member("dam", "female", "p")
                .has("dam", "A", "a/a")
                .litter("dam", "", "r", "kit");
        assertEquals(
                Probability.of(1, 2),
                worlds(COATS, stated).genotypes("kit", "A").get("a/a"));
    }

    @Test
    void an_unrecorded_sire_is_one_animal_for_a_litter_and_another_for_the_next() {
        KindredBuilder kindred = new KindredBuilder()
                .member("dam", "female", "r")
                .has("dam", "A", "a/a")
                .litter("dam", "", "", "white", "sib")
                .litter("dam", "", "", "half sib")
                .shows("coat", "white", "white");
        Worlds worlds = worlds(COATS, kindred);
        // The sire of a white kit is A/a : a/a as 1 : 1, and passes a on with 3/4.
        assertEquals(Probability.of(3, 4), worlds.genotypes("sib", "A").get("a/a"));
        assertEquals(Probability.of(1, 2), worlds.genotypes("half sib", "A").get("a/a"));
    }

    @Test
    void parents_neither_of_whom_is_recorded_are_two_animals() {
        KindredBuilder kindred =
                new KindredBuilder().litter("", "", "r", "white", "sib").shows("coat", "white", "white");
        // Each parent passes a on with 3/4, as above.
        ratio(worlds(COATS, kindred).genotypes("sib", "A"), "A/A", 1, "A/a", 6, "a/a", 9);
    }

    @Test
    void half_sibs_depend_on_one_another_through_the_parent_they_share() {
        KindredBuilder kindred = new KindredBuilder()
                .member("dam 1", "female", "r")
                .member("dam 2", "female", "r")
                .member("sire", "male", "r")
                .litter("dam 1", "sire", "", "one")
                .litter("dam 2", "sire", "", "other")
                .has("dam 1", "A", "a/a")
                .has("dam 2", "A", "a/a")
                .shows("coat", "white", "one");
        Worlds worlds = worlds(COATS, kindred);
        ratio(worlds.genotypes("sire", "A"), "A/a", 1, "a/a", 1);
        // Jointly: a sire A/a (1/2) has white and black alike, one a/a white only.
        ratio(
                worlds.jointly(List.of("sire", "other")),
                List.of(map("A", "A/a"), map("A", "A/a")),
                1,
                List.of(map("A", "A/a"), map("A", "a/a")),
                1,
                List.of(map("A", "a/a"), map("A", "a/a")),
                2);
    }

    @Test
    void records_that_cannot_be_have_no_posterior() {
        KindredBuilder kindred =
                pair().has("dam", "A", "A/A").litter("dam", "sire", "", "kit").shows("coat", "white", "kit");
        Worlds worlds = worlds(COATS, kindred);
        assertEquals(Probability.ZERO, worlds.likelihood());
        assertEquals(Map.of(), worlds.genotypes("dam", "A"));
        assertEquals(Map.of(), worlds.sexes("kit"));
        assertEquals(0, worlds.size());
    }

    // ---- strands
    // --------------------------------------------------------------------------------------------------------------

    /** Two loci a tenth of recombination apart; every allele is as common as its partner. */
    private static final Genome LINKED = genome("""
            "loci": {
              "A": {"alleles": ["A","a"], "dominance": {"order": ["A > a"], "shows": {"A":"full","a":"none"}}},
              "B": {"alleles": ["B","b"], "dominance": {"order": ["B > b"], "shows": {"B":"full","b":"none"}}}}""", """
            "groups": {"g": {"transmission": "autosomal", "loci": ["A","B"], "recombination": ["1/10"]}}""", """
            "populations": {"p": {"frequencies": {"A": {"A":"1/2","a":"1/2"}, "B": {"B":"1/2","b":"1/2"}}}}""");

    private static KindredBuilder has(KindredBuilder kindred, String id, String a, String b) {
        return kindred.has(id, "A", a).has(id, "B", b);
    }

    @Test
    void a_kit_tells_the_phase_of_its_dam() {
        KindredBuilder kindred = pair().litter("dam", "sire", "", "kit", "next");
        has(has(has(kindred, "dam", "A/a", "B/b"), "sire", "a/a", "b/b"), "kit", "A/a", "B/b");
        Worlds worlds = worlds(LINKED, kindred);
        // In coupling 9/20 of the kits are such, in repulsion 1/20.
        Probability coupling = Probability.ZERO;
        for (Map.Entry<Animal, Probability> dam : worlds.animals("dam").entrySet()) {
            boolean both = dam.getKey().egg().get("A").equals("A")
                    == dam.getKey().egg().get("B").equals("B");
            coupling = both ? coupling.plus(dam.getValue()) : coupling;
        }
        assertEquals(Probability.of(9, 10), coupling);
        // 9/10 x 9/20 + 1/10 x 1/20 twice over, the rest halved.
        ratio(
                worlds.genotypes("next"),
                map("A", "A/a", "B", "B/b"),
                41,
                map("A", "A/a", "B", "b/b"),
                9,
                map("A", "a/a", "B", "B/b"),
                9,
                map("A", "a/a", "B", "b/b"),
                41);
    }

    @Test
    void grandparents_tell_the_phase() {
        KindredBuilder kindred = pair().member("mate", "male", "p")
                .litter("dam", "sire", "", "mother")
                .litter("mother", "mate", "", "kit");
        has(has(has(kindred, "dam", "A/A", "B/B"), "sire", "a/a", "b/b"), "mate", "a/a", "b/b");
        ratio(
                worlds(LINKED, kindred).genotypes("kit"),
                map("A", "A/a", "B", "B/b"),
                9,
                map("A", "A/a", "B", "b/b"),
                1,
                map("A", "a/a", "B", "B/b"),
                1,
                map("A", "a/a", "B", "b/b"),
                9);
    }

    @Test
    void a_mutation_happens_between_parent_and_kit() {
        Genome mutable = genome(LOCUS.formatted(", \"mutation\": {\"A\": {\"a\": \"1/10\"}}"), COAT, POPULATIONS);
        KindredBuilder kindred =
                pair().has("dam", "A", "A/A").has("sire", "A", "A/A").litter("dam", "sire", "", "kit");
        ratio(worlds(mutable, kindred).genotypes("kit", "A"), "A/A", 81, "A/a", 18, "a/a", 1);
    }

    // ---- sires
    // ----------------------------------------------------------------------------------------------------------------

    private static KindredBuilder twoHobs(boolean sirePerKit, String... kits) {
        List<Kindred.Candidate> hobs = List.of(
                new Kindred.Candidate("hob 1", "", Probability.of(1, 3)),
                new Kindred.Candidate("hob 2", "", Probability.of(2, 3)));
        return new KindredBuilder()
                .member("dam", "female", "p")
                .member("hob 1", "male", "p")
                .member("hob 2", "male", "p")
                .has("dam", "A", "a/a")
                .has("hob 1", "A", "A/a")
                .has("hob 2", "A", "A/A")
                .litter("dam", "", hobs, sirePerKit, kits);
    }

    @Test
    void one_of_two_hobs_is_the_sire_of_a_litter() {
        Worlds worlds = worlds(COATS, twoHobs(false, "one", "two", "next").shows("coat", "black", "one", "two"));
        // 1/3 x 1/4 against 2/3 x 1.
        ratio(worlds.sires("one"), 0, 1, 1, 8);
        ratio(worlds.sires("next"), 0, 1, 1, 8);
        assertEquals(Probability.of(1, 18), worlds.genotypes("next", "A").get("a/a"));
    }

    @Test
    void either_of_two_hobs_is_the_sire_of_a_kit() {
        Worlds worlds = worlds(COATS, twoHobs(true, "one", "two", "next").shows("coat", "black", "one", "two"));
        // 1/3 x 1/2 against 2/3 x 1, and the next kit tells nothing yet.
        ratio(worlds.sires("one"), 0, 1, 1, 4);
        ratio(worlds.sires("next"), 0, 1, 1, 2);
        assertEquals(Probability.of(1, 6), worlds.genotypes("next", "A").get("a/a"));
        assertEquals(
                Probability.of(6, 16)
                        .times(Probability.of(9, 16))
                        .times(Probability.of(1, 16))
                        .times(Probability.of(25, 36)),
                worlds.likelihood());
    }

    @Test
    void a_white_kit_leaves_one_hob_and_a_litter_of_one_sire_no_other() {
        Worlds one = worlds(COATS, twoHobs(false, "one", "two").shows("coat", "white", "one"));
        ratio(one.sires("two"), 0, 1);
        Worlds each = worlds(COATS, twoHobs(true, "one", "two").shows("coat", "white", "one"));
        ratio(each.sires("one"), 0, 1);
        ratio(each.sires("two"), 0, 1, 1, 2);
    }

    @Test
    void an_unrecorded_candidate_comes_from_his_own_population() {
        List<Kindred.Candidate> hobs = List.of(
                new Kindred.Candidate("hob", "", Probability.of(1, 2)),
                new Kindred.Candidate("", "r", Probability.of(1, 2)));
        KindredBuilder kindred = pair().member("hob", "male", "p")
                .has("dam", "A", "a/a")
                .has("hob", "A", "A/a")
                .litter("dam", "", hobs, false, "one", "two")
                .shows("coat", "white", "one", "two");
        // Both white: 1/4 by the hob; by another 1/2 x 1/4 + 1/4 = 3/8.
        ratio(worlds(COATS, kindred).sires("one"), 0, 2, 1, 3);
    }

    // ---- sexes
    // ----------------------------------------------------------------------------------------------------------------

    @Test
    void a_look_tells_the_sex_where_only_males_can_show_it() {
        Genome onX = genome(LOCUS.formatted(""), ON_X, COAT, POPULATIONS);
        KindredBuilder kindred = pair().has("dam", "A", "A/a")
                .has("sire", "A", "A")
                .litter("dam", "sire", "", "black", "white")
                .shows("coat", "black", "black")
                .shows("coat", "white", "white");
        Worlds worlds = worlds(onX, kindred);
        // Daughters are all black, and so is every other son.
        ratio(worlds.sexes("black"), "female", 2, "male", 1);
        ratio(worlds.sexes("white"), "male", 1);
        ratio(worlds.genotypes("black", "A"), "A/A", 1, "A/a", 1, "A", 1);
    }

    @Test
    void a_founder_of_unknown_sex_is_of_the_sex_that_lives() {
        Genome weak = genome(LOCUS.formatted(""), COAT, POPULATIONS, """
                "viability": {"weak": {"locus": "A", "expressions": ["full"], "sex": "male", "scored": "1/3"}}""");
        Worlds worlds = worlds(weak, new KindredBuilder().member("animal", "", "r"));
        // Females 4 of 4; males 3 of 4 x 1/3 + 1 of 4 = 1/2.
        ratio(worlds.sexes("animal"), "female", 2, "male", 1);
        ratio(
                worlds(weak, new KindredBuilder().member("animal", "male", "r")).genotypes("animal", "A"),
                "A/A",
                1,
                "A/a",
                2,
                "a/a",
                3);
    }

    @Test
    void the_sex_of_a_kit_is_evidence_and_that_of_a_founder_is_not() {
        Genome weak = genome(LOCUS.formatted(""), COAT, POPULATIONS, """
                "viability": {"lethal": {"locus": "A", "expressions": ["full"], "sex": "male", "birth": "0"}}""");
        KindredBuilder kindred = new KindredBuilder()
                .member("dam", "female", "r")
                .member("sire", "male", "r")
                .member("son", "male", "")
                .litter("dam", "sire", "", "son");
        Worlds worlds = worlds(weak, kindred);
        // The sire is a/a. By A/A no son lives, by A/a one of three kits is a son, by a/a one of two.
        ratio(worlds.genotypes("dam", "A"), "A/a", 4, "a/a", 3);
        assertEquals(Probability.of(2, 4).times(Probability.of(1, 3)).plus(Probability.of(1, 8)), worlds.likelihood());
    }

    @Test
    void a_parent_is_of_its_sex() {
        KindredBuilder kindred = new KindredBuilder()
                .member("dam", "", "r")
                .member("sire", "", "r")
                .litter("dam", "sire", "", "kit");
        Worlds worlds = worlds(COATS, kindred);
        ratio(worlds.sexes("dam"), "female", 1);
        ratio(worlds.sexes("sire"), "male", 1);
        assertThrows(
                IllegalArgumentException.class,
                () -> new KindredBuilder()
                        .member("dam", "male", "r")
                        .member("sire", "", "r")
                        .litter("dam", "sire", "", "kit")
                        .build());
    }

    // ---- life
    // -----------------------------------------------------------------------------------------------------------------

    private static final String LETHAL = """
            "viability": {"lethal": {"locus": "A", "expressions": ["none"], "birth": "0"}}""";

    @Test
    void lethals_are_missing_among_founders_and_kits() {
        Genome lethal = genome(LOCUS.formatted(""), COAT, POPULATIONS, LETHAL);
        Worlds worlds = worlds(lethal, pair().litter("dam", "sire", "", "kit"));
        // Founders 9 : 6, so a = 1/5; kits 4/5 x 4/5, but of two carriers, 4/25 of the pairs, 1/3 : 2/3.
        ratio(worlds.genotypes("dam", "A"), "A/A", 3, "A/a", 2);
        // A/A: 9/25 + 12/25 x 1/2 + 4/25 x 1/3 = 49/75.
        ratio(worlds.genotypes("kit", "A"), "A/A", 49, "A/a", 26);
        assertEquals(Probability.ONE, worlds.likelihood());
    }

    @Test
    void who_has_kits_can_have_kits() {
        Genome mixed = genome("""
                "loci": {"A": {"alleles": ["A","a"], "dominance": {"shows": {"A":"full","A/a":"mixed","a":"none"}}}}""", POPULATIONS, """
                "viability": {"lethal": {"locus": "A", "expressions": ["mixed"], "birth": "0"}}""");
        List<Kindred.Candidate> hobs = List.of(
                new Kindred.Candidate("hob 1", "", Probability.of(1, 3)),
                new Kindred.Candidate("hob 2", "", Probability.of(2, 3)));
        for (boolean sirePerKit : new boolean[] {false, true}) {
            KindredBuilder kindred = new KindredBuilder()
                    .member("dam", "female", "r")
                    .member("hob 1", "male", "r")
                    .member("hob 2", "male", "r")
                    .has("dam", "A", "a/a")
                    .has("hob 1", "A", "A/A")
                    .has("hob 2", "A", "a/a")
                    .litter("dam", "", hobs, sirePerKit, "kit");
            Worlds worlds = worlds(mixed, kindred);
            // Hob 1 has no kits with her that live. A litter might have been his, but a kit that is there is not.
            ratio(worlds.sires("kit"), 1, 1);
            assertEquals(
                    Probability.of(1, 8).times(sirePerKit ? Probability.ONE : Probability.of(2, 3)),
                    worlds.likelihood());
        }
        KindredBuilder pair = new KindredBuilder()
                .member("dam", "female", "r")
                .member("sire", "male", "r")
                .litter("dam", "sire", "", "kit");
        assertEquals(Probability.of(1, 2), worlds(mixed, pair).likelihood());
    }

    @Test
    void kits_that_were_only_born_are_not_weighed_for_later_losses_unless_they_became_parents() {
        Genome weak = genome(LOCUS.formatted(""), COAT, POPULATIONS, """
                "viability": {"weak": {"locus": "A", "expressions": ["none"], "scored": "1/3"}}""");
        KindredBuilder kindred = pair().member("mate", "male", "p")
                .has("dam", "A", "A/a")
                .has("sire", "A", "A/a")
                .litter("dam", "sire", "", "kit", "mother")
                .census("born")
                .litter("mother", "mate", "", "grandkit");
        Worlds worlds = worlds(weak, kindred);
        ratio(worlds.genotypes("kit", "A"), "A/A", 1, "A/a", 2, "a/a", 1);
        ratio(worlds.genotypes("mother", "A"), "A/A", 3, "A/a", 6, "a/a", 1);
    }

    @Test
    void a_look_weighs_chance_and_two_looks_at_one_animal_share_it() {
        Genome chance = genome(LOCUS.formatted(""), POPULATIONS, """
                "traits": {"coat": {"cases": {"pale": {"when": {"A":["none"]}, "chance": {"white":"1/2","black":"1/2"}}}, "otherwise": "black"}}""");
        KindredBuilder once =
                new KindredBuilder().member("animal", "female", "r").shows("coat", "black", "animal");
        // A/A 1/4, A/a 1/2, a/a 1/4 x 1/2.
        ratio(worlds(chance, once).genotypes("animal", "A"), "A/A", 2, "A/a", 4, "a/a", 1);
        ratio(
                worlds(chance, once.shows("coat", "black", "animal")).genotypes("animal", "A"),
                "A/A",
                2,
                "A/a",
                4,
                "a/a",
                1);
        assertEquals(
                Probability.ZERO,
                worlds(chance, once.shows("coat", "white", "animal")).likelihood());
    }

    @Test
    void one_of_several_looks_is_as_likely_as_they_are_together() {
        Genome chance = genome(LOCUS.formatted(""), POPULATIONS, """
                "traits": {"coat": {"cases": {
                  "pale": {"when": {"A":["none"]}, "chance": {"white":"1/2","cream":"1/4","black":"1/4"}}}, "otherwise": "black"}}""");
        KindredBuilder kindred = new KindredBuilder()
                .member("animal", "female", "r")
                .seen("animal", Map.of(), List.of(Map.of("coat", "cream"), Map.of("coat", "black")));
        Worlds worlds = worlds(chance, kindred);
        ratio(worlds.genotypes("animal", "A"), "A/A", 2, "A/a", 4, "a/a", 1);
        assertEquals(Probability.of(7, 8), worlds.likelihood());
    }

    @Test
    void a_trait_of_which_the_model_says_nothing_is_no_evidence() {
        Genome partly = genome(LOCUS.formatted(""), POPULATIONS, """
                "traits": {"coat": {"cases": {"white": {"when": {"A":["none"]}, "state":"white"}}}}""");
        KindredBuilder kindred = new KindredBuilder()
                .member("animal", "female", "r")
                .seen("animal", Map.of(), List.of(Map.of("coat", "black"), Map.of("coat", "cream")));
        Worlds worlds = worlds(partly, kindred);
        ratio(worlds.genotypes("animal", "A"), "A/A", 1, "A/a", 2);
        assertEquals(Probability.of(3, 4), worlds.likelihood());
    }

    // ---- errors
    // ---------------------------------------------------------------------------------------------------------------

    @Test
    void a_test_that_errs_reads_any_other_genotype_alike() {
        KindredBuilder kindred = new KindredBuilder()
                .member("animal", "female", "r")
                .tested("animal", "A", Set.of("a/a"), Probability.of(1, 10));
        // a/a 1/4 x 9/10; A/a 1/2 x 1/20; A/A 1/4 x 1/20.
        ratio(worlds(COATS, kindred).genotypes("animal", "A"), "A/A", 1, "A/a", 2, "a/a", 18);
        KindredBuilder twice = kindred.tested("animal", "A", Set.of("a/a"), Probability.of(1, 10));
        ratio(worlds(COATS, twice).genotypes("animal", "A"), "A/A", 1, "A/a", 2, "a/a", 324);
    }

    @Test
    void a_reported_set_adds_up() {
        KindredBuilder kindred = new KindredBuilder()
                .member("animal", "female", "r")
                .tested("animal", "A", Set.of("A/a", "a/a"), Probability.of(1, 10));
        // 9/10 + 1/20 = 19/20 of each that is named, 2/20 of A/A.
        ratio(worlds(COATS, kindred).genotypes("animal", "A"), "A/A", 2, "A/a", 38, "a/a", 19);
    }

    @Test
    void a_test_of_a_male_has_the_genotypes_that_males_can_have() {
        Genome onX = genome(LOCUS.formatted(""), ON_X, COAT, POPULATIONS);
        KindredBuilder kindred = new KindredBuilder()
                .member("animal", "", "r")
                .tested("animal", "A", Set.of("a"), Probability.of(1, 10));
        Worlds worlds = worlds(onX, kindred);
        ratio(worlds.sexes("animal"), "male", 1);
        ratio(worlds.genotypes("animal", "A"), "A", 1, "a", 9);
    }

    @Test
    void a_state_taken_for_another() {
        KindredBuilder kindred = new KindredBuilder()
                .member("animal", "female", "r")
                .confused("coat", "white", "black", Probability.of(1, 10))
                .shows("coat", "white", "animal");
        // a/a 1/4, the others 3/4 x 1/10.
        ratio(worlds(COATS, kindred).genotypes("animal", "A"), "A/A", 1, "A/a", 2, "a/a", 10);
        KindredBuilder black = new KindredBuilder()
                .member("animal", "female", "r")
                .confused("coat", "white", "black", Probability.of(1, 10))
                .shows("coat", "black", "animal");
        // White is never taken for black.
        assertEquals(Probability.of(27, 40), worlds(COATS, black).likelihood());
        ratio(worlds(COATS, black).genotypes("animal", "A"), "A/A", 1, "A/a", 2);
        // Each sighting is read by itself.
        KindredBuilder twice = kindred.shows("coat", "white", "animal");
        ratio(worlds(COATS, twice).genotypes("animal", "A"), "A/A", 1, "A/a", 2, "a/a", 100);
    }

    // ---- possible
    // -------------------------------------------------------------------------------------------------------------

    @Test
    void possible_leaves_frequencies_mutation_and_confusions_out_and_tests_that_err_exclude_nothing() {
        Genome mutable = genome(LOCUS.formatted(", \"mutation\": {\"A\": {\"a\": \"1/10\"}}"), COAT, """
                "populations": {"p": {"frequencies": {"A": {"A":"1","a":"0"}}}}""");
        KindredBuilder kindred = pair().litter("dam", "sire", "", "kit")
                .has("sire", "A", "A/A")
                .confused("coat", "white", "black", Probability.of(1, 10));
        Kindred plain = kindred.build();
        assertEquals(
                Set.of("A/A"), Worlds.of(mutable, plain).genotypes("dam", "A").keySet());
        assertEquals(
                Set.of("A/A", "A/a", "a/a"),
                Worlds.of(mutable, plain).genotypes("kit", "A").keySet());
        Worlds possible = Worlds.possible(mutable, plain);
        assertEquals(Set.of("A/A", "A/a", "a/a"), possible.genotypes("dam", "A").keySet());
        assertEquals(Set.of("A/A", "A/a"), possible.genotypes("kit", "A").keySet());
        Kindred white = kindred.shows("coat", "white", "kit").build();
        assertTrue(Worlds.of(mutable, white).size() > 0);
        assertEquals(0, Worlds.possible(mutable, white).size());
        Kindred tested =
                pair().tested("dam", "A", Set.of("a/a"), Probability.of(1, 100)).build();
        assertEquals(
                Set.of("A/A", "A/a", "a/a"),
                Worlds.possible(mutable, tested).genotypes("dam", "A").keySet());
    }

    // ---- order
    // ----------------------------------------------------------------------------------------------------------------

    @Test
    void facts_may_come_in_any_order_but_not_in_a_circle() {
        KindredBuilder kindred = new KindredBuilder()
                .member("daughter", "female", "")
                .member("mate", "male", "r")
                .member("dam", "female", "r")
                .member("sire", "male", "r")
                .litter("daughter", "mate", "", "grandkit")
                .litter("dam", "sire", "", "daughter")
                .shows("coat", "white", "grandkit");
        // The daughter of two animals of unknown genotype has alleles as common as they have.
        ratio(worlds(COATS, kindred).genotypes("daughter", "A"), "A/a", 1, "a/a", 1);
        KindredBuilder circle = new KindredBuilder()
                .member("one", "female", "r")
                .member("other", "female", "r")
                .litter("one", "", "", "other")
                .litter("other", "", "", "one");
        assertThrows(IllegalArgumentException.class, () -> worlds(COATS, circle));
    }
}
