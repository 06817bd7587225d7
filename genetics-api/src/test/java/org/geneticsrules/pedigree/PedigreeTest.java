package org.geneticsrules.pedigree;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.statistics.Statistics;
import org.geneticsrules.document.Reference;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PedigreeTest {

    private static final LocalDate DAY = LocalDate.of(2020, 5, 1);

    private static PedigreeBuilder family() {
        return Pedigree.builder("family", "1")
                .add(Individual.of("jill", Sex.FEMALE))
                .add(Individual.of("hob", Sex.MALE))
                .add(Individual.of("kit"))
                .add(Litter.of("spring", "jill", "hob", "kit").bornOn(DAY));
    }

    @Test
    void positions_tell_what_ids_tell() {
        Pedigree pedigree = Pedigree.builder("family", "1")
                .add(Individual.of("kit"))
                .add(Individual.of("jill", Sex.FEMALE))
                .add(Individual.of("hob", Sex.MALE))
                .add(Litter.of("spring", "jill", "hob", "kit"))
                .build();
        Links links = pedigree.links();
        assertEquals(3, links.count());
        int kit = pedigree.positionOf("kit");
        assertEquals(0, kit);
        assertEquals(kit, links.inOrder(2));
        assertEquals("kit", pedigree.individualAt(kit).id());
        assertEquals(0, links.litterOf(kit));
        assertEquals("spring", pedigree.litterAt(0).id());
        assertEquals(Links.NONE, links.litterOf(pedigree.positionOf("hob")));
        assertEquals(pedigree.positionOf("jill"), links.dam(0));
        assertEquals(1, links.males(0));
        assertEquals(pedigree.positionOf("hob"), links.male(0, 0));
        assertThrows(IllegalArgumentException.class, () -> pedigree.positionOf("nobody"));
    }

    @Test
    void records_are_of_one_kind_but_for_ids_and_dates() {
        Observation dark = Observation.of(LifeStage.unstated(), Phenotype.of("hue", "dark"));
        Observation later = new Observation(Optional.of(DAY), dark.stage(), dark.looks());
        Observation light = Observation.of(LifeStage.unstated(), Phenotype.of("hue", "light"));
        Observation old = Observation.of(LifeStage.atMoult(3), Phenotype.of("hue", "dark"));
        RecordKinds kinds = RecordKinds.of(List.of(
                Individual.of("one").with(dark),
                Individual.of("two"),
                Individual.of("three", Sex.MALE).with(later),
                Individual.of("four").with(light),
                Individual.of("five").with(old),
                Individual.of("six").with(dark).with(light)));
        assertEquals(5, kinds.count());
        assertEquals(0, kinds.of(1));
        assertEquals(Optional.empty(), kinds.example(0));
        assertEquals(kinds.of(0), kinds.of(2));
        assertEquals("one", kinds.example(kinds.of(2)).orElseThrow().id());
        assertEquals(
                5,
                Set.of(kinds.of(0), kinds.of(1), kinds.of(3), kinds.of(4), kinds.of(5))
                        .size());
    }

    @Test
    void relations_are_found_from_both_ends() {
        Pedigree pedigree = family().build();
        assertEquals(List.of("jill", "hob"), pedigree.founders());
        assertEquals("spring", pedigree.litterOf("kit").orElseThrow().id());
        assertEquals(Optional.empty(), pedigree.litterOf("hob"));
        assertEquals(List.of("kit"), pedigree.kitsOf("hob"));
        assertEquals(List.of("jill", "hob"), pedigree.parentsOf("kit"));
        assertEquals(Set.of("jill", "hob", "kit"), pedigree.withAncestors("kit"));
        assertEquals(Set.of("hob"), pedigree.withAncestors("hob"));
        assertEquals(Optional.of(DAY), pedigree.bornOf("kit"));
        assertEquals(Optional.empty(), pedigree.bornOf("jill"));
        assertThrows(IllegalArgumentException.class, () -> pedigree.litterOf("nobody"));
    }

    @Test
    void all_problems_of_a_stage_are_told_at_once() {
        ProblemsException thrown = assertThrows(
                ProblemsException.class,
                () -> family().add(Litter.of("autumn", "jil", "hop", "kat")).build());
        assertEquals(
                List.of("unknown-parent", "unknown-parent", "unknown-kit"),
                thrown.problems().stream().map(Problem::code).toList());
        assertEquals(Optional.of("jill"), thrown.problems().get(0).nearest());
        assertEquals("/litters/autumn/kits/0", thrown.problems().get(2).pointer());
    }

    @Test
    void an_id_that_is_added_twice_is_a_problem() {
        ProblemsException thrown = assertThrows(
                ProblemsException.class,
                () -> family().add(Individual.of("kit"))
                        .add(Litter.of("spring", "jill", "hob"))
                        .build());
        assertEquals(
                List.of("/individuals/kit", "/litters/spring"),
                thrown.problems().stream().map(Problem::pointer).toList());
        assertThrows(ProblemsException.class, () -> Pedigree.builder(" ", "1").build());
    }

    @Test
    void circles_are_told_once_each_and_not_those_who_descend_from_them() {
        PedigreeBuilder builder = Pedigree.builder("circles", "1");
        for (String id : List.of("a", "b", "c", "d", "e", "self")) {
            builder.add(Individual.of(id));
        }
        ProblemsException thrown = assertThrows(
                ProblemsException.class,
                () -> builder.add(Litter.of("1", Optional.of("c"), Paternity.unknown(), "a"))
                        .add(Litter.of("2", Optional.of("a"), Paternity.unknown(), "b"))
                        .add(Litter.of("3", Optional.of("b"), Paternity.unknown(), "c"))
                        .add(Litter.of("4", Optional.of("c"), Paternity.unknown(), "d"))
                        .add(Litter.of("5", Optional.of("d"), Paternity.unknown(), "e"))
                        .add(Litter.of("6", Optional.empty(), Paternity.of("self"), "self"))
                        .build());
        List<String> messages = thrown.problems().stream().map(Problem::message).toList();
        assertEquals(2, messages.size(), messages::toString);
        assertTrue(messages.get(0).contains("\"b\", \"c\", \"a\""), messages::toString);
        assertEquals("\"self\" is its own parent", messages.get(1));
    }

    @Test
    void a_candidate_among_the_young_is_a_circle_too() {
        ProblemsException thrown = assertThrows(
                ProblemsException.class,
                () -> family().add(Individual.of("other", Sex.MALE))
                        .add(Litter.of(
                                "old",
                                Optional.empty(),
                                Paternity.oneOf(
                                        Paternity.Candidate.of("kit", Probability.of(1, 2)),
                                        Paternity.Candidate.of("other", Probability.of(1, 2))),
                                "hob"))
                        .build());
        assertEquals("cycle", thrown.problems().get(0).code());
    }

    @Test
    void in_a_registry_unknown_names_are_near_those_that_begin_alike() {
        PedigreeBuilder builder = Pedigree.builder("large", "1");
        for (int i = 0; i < 3000; i++) {
            builder.add(Individual.of("n" + i));
        }
        ProblemsException thrown = assertThrows(
                ProblemsException.class,
                () -> builder.add(Litter.of("l", "n12x", "n13")).build());
        assertTrue(thrown.problems().get(0).nearest().orElseThrow().startsWith("n12"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " a", "a ", "\u00a0a", "a\u2028", "a\tb", "x-own", "\ud800", "a\ufeff"})
    void what_is_no_id_is_refused(String id) {
        assertFalse(Individual.isId(id));
        assertThrows(IllegalArgumentException.class, () -> Individual.of(id));
        assertThrows(IllegalArgumentException.class, () -> Litter.of(id, "a", "b"));
        assertThrows(IllegalArgumentException.class, () -> Paternity.of(id));
    }

    @ParameterizedTest
    @ValueSource(strings = {"a", "Größe 7", "=1+1", "a/b~c", "\ud83e\udda6"})
    void other_text_is_an_id(String id) {
        assertTrue(Individual.isId(id));
        assertEquals(id, Individual.of(id).id());
    }

    @Test
    void ids_have_eighty_characters_at_most() {
        assertTrue(Individual.isId("a".repeat(80)));
        assertFalse(Individual.isId("a".repeat(81)));
    }

    @Test
    void shares_sum_to_one_and_name_each_male_once() {
        Paternity.Candidate hob = Paternity.Candidate.of("hob", Probability.of(1, 2));
        Paternity.Candidate wild = Paternity.Candidate.unrecorded("wild", Probability.of(1, 2));
        assertEquals(List.of("hob"), Paternity.oneOf(hob, wild).males());
        assertThrows(IllegalArgumentException.class, () -> Paternity.oneOf(hob));
        assertThrows(IllegalArgumentException.class, () -> Paternity.oneOf(hob, hob));
        assertThrows(IllegalArgumentException.class, () -> Paternity.perKit(wild, wild));
        assertThrows(IllegalArgumentException.class, () -> Paternity.perKit());
        assertThrows(IllegalArgumentException.class, () -> Paternity.Candidate.of("hob", Probability.ZERO));
    }

    @Test
    void looks_of_which_one_was_seen_speak_of_the_same_traits() {
        Observation either = new Observation(
                Optional.empty(),
                LifeStage.unstated(),
                new LinkedHashSet<>(List.of(Phenotype.of("hue", "black"), Phenotype.of("hue", "brown"))));
        assertEquals(Set.of("hue"), either.traits());
        assertThrows(
                IllegalArgumentException.class,
                () -> new Observation(
                        Optional.empty(),
                        LifeStage.unstated(),
                        new LinkedHashSet<>(List.of(Phenotype.of("hue", "black"), Phenotype.of("eye", "pink")))));
        assertThrows(
                IllegalArgumentException.class, () -> Observation.of(LifeStage.unstated(), Phenotype.unspecified()));
        assertThrows(IllegalArgumentException.class, () -> either.in("day, light"));
        assertThrows(IllegalArgumentException.class, () -> either.by(" "));
    }

    @Test
    void records_are_told_in_words() {
        assertTrue(HearingTest.of(Hearing.HEARS, Hearing.DEAF).isDeafInAnEar());
        assertFalse(HearingTest.of(Hearing.HEARS, Hearing.NOT_JUDGED).isDeafInAnEar());
        for (String word : Hearing.words()) {
            assertEquals(word, Hearing.of(word).orElseThrow().word());
        }
        for (String word : Fertility.words()) {
            Fertility status = Fertility.of(word).orElseThrow();
            assertEquals(word, status.word());
            assertEquals(status != Fertility.UNKNOWN && status != Fertility.FERTILE, status.excludesYoung());
        }
        assertEquals(Optional.empty(), Fertility.of("speyed"));
    }

    /** A model with an autosomal locus, one on the X, a trait and a population. */
    private static Model model() {
        Catalogue catalogue = Catalogue.builder("traits", "1")
                .trait("hue", "black", "brown")
                .seasons("winter")
                .lights("daylight", "dusk")
                .build();
        return Model.builder("model", "1", catalogue)
                .locus(
                        "C",
                        locus -> locus.alleles("C", "c")
                                .expressions("full", "pale")
                                .shows("C", "full")
                                .shows("c", "pale")
                                .dominant("C", "c"))
                .locus(
                        "O",
                        locus -> locus.alleles("O", "o")
                                .expressions("red", "not")
                                .shows("O", "red")
                                .shows("o", "not")
                                .dominant("O", "o"))
                .group(LinkageGroup.single(Transmission.X, "O"))
                .build();
    }

    @Test
    void a_test_is_read_under_a_model() {
        Model model = model();
        AllelePair pair = model.locus("C").pair("C", "c");
        assertEquals(Set.of(pair), GenotypeTest.of(pair).pairs(model));
        GenotypeTest carrier = new GenotypeTest(Optional.empty(), "C", Set.of("c/-"), Probability.of(1, 100));
        assertEquals(Set.of(pair, model.locus("C").pair("c", "c")), carrier.pairs(model));
        AllelePair male = model.locus("O").hemizygous("O");
        assertEquals(Set.of(male), GenotypeTest.of(male).pairs(model));
        assertThrows(
                ProblemsException.class,
                () -> new GenotypeTest(Optional.empty(), "C", Set.of("O/o"), Probability.ZERO).pairs(model));
        assertThrows(
                IllegalArgumentException.class,
                () -> new GenotypeTest(Optional.empty(), "C", Set.of("C/c B/b"), Probability.ZERO));
        assertThrows(
                IllegalArgumentException.class,
                () -> new GenotypeTest(Optional.empty(), "C", Set.of("C/c"), Probability.ONE));
    }

    @Test
    void what_a_model_does_not_know_is_told_at_once() {
        Model model = model();
        Individual odd = Individual.of("odd", Sex.FEMALE)
                .from("nowhere")
                .with(Observation.of(LifeStage.unstated().in("autumn"), Phenotype.parse("hue: blak, eye: pink"))
                        .in("daylihgt"))
                .with(new GenotypeTest(Optional.empty(), "D", Set.of("D/d"), Probability.ZERO))
                .with(new GenotypeTest(Optional.empty(), "C", Set.of("C/k"), Probability.ZERO))
                .with(GenotypeTest.of(model.locus("O").hemizygous("O")));
        Pedigree pedigree = Pedigree.builder("odd", "1")
                .catalogue(Reference.of("traits", "2"))
                .add(odd)
                .add(Individual.of("kit"))
                .add(Litter.of(
                        "l",
                        Optional.of("odd"),
                        Paternity.oneOf(Paternity.Candidate.unrecorded("moor", Probability.ONE)),
                        "kit"))
                .build();
        List<Problem> problems = pedigree.problemsUnder(model);
        assertEquals(
                List.of(
                        "other-catalogue",
                        "unknown-population",
                        "unknown-season",
                        "unknown-light",
                        "unknown-state",
                        "unknown-trait",
                        "unknown-locus",
                        "unknown-allele",
                        "genotype-sex",
                        "unknown-population"),
                problems.stream().map(Problem::code).toList(),
                problems::toString);
        assertEquals("/individuals/odd/observations/0/light", problems.get(3).pointer());
        assertEquals(Optional.of("daylight"), problems.get(3).nearest());
        assertEquals("/individuals/odd/tests/1/result", problems.get(7).pointer());
        assertEquals(List.of(), family().build().problemsUnder(model));
    }

    @Property(tries = 150)
    void undoing_all_corrections_gives_the_original(@ForAll long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Pedigree original = RandomPedigree.recorded(seed, 8);
        Pedigree now = original;
        List<Pedigree> versions = new ArrayList<>(List.of(original));
        for (int i = 0; i < 5; i++) {
            List<Change> changes = new ArrayList<>();
            String id = now.order().get(random.nextInt(now.order().size()));
            changes.add(now.change(now.individual(id)
                    .with(HearingTest.of(Hearing.HEARS, Hearing.DEAF))
                    .from("moor" + i)));
            if (random.nextBoolean()) {
                changes.add(now.change(Individual.of("new" + i, Sex.MALE)));
                List<Litter> litters = new ArrayList<>(now.litters().values());
                if (!litters.isEmpty()) {
                    changes.add(now.change(
                            litters.get(random.nextInt(litters.size())).with(Paternity.of("new" + i))));
                }
            } else if (i > 2 && !now.litters().isEmpty()) {
                Litter last = new ArrayList<>(now.litters().values())
                        .get(now.litters().size() - 1);
                changes.add(new Change.OfLitter(Optional.of(last), Optional.empty()));
            }
            now = now.corrected(new Correction(DAY.plusDays(i), Optional.of("registrar"), "looked at again", changes));
            versions.add(now);
        }
        assertEquals(original, now.original());
        assertEquals(5, now.corrections().size());
        for (int i = 5; i >= 0; i--) {
            assertEquals(versions.get(i), now);
            now = now.beforeLastCorrection();
        }
        assertSame(now, now.beforeLastCorrection());
        boolean sires = versions.get(5).corrections().stream()
                .flatMap(one -> one.changes().stream())
                .anyMatch(change ->
                        change instanceof Change.OfLitter one && one.after().isPresent());
        Statistics.label("sires corrected")
                .collect(sires)
                .coverage(c -> c.check(true).percentage(p -> p > 50));
    }

    @Test
    void a_correction_of_another_record_is_refused() {
        Pedigree pedigree = family().build();
        Individual other = Individual.of("kit", Sex.MALE);
        Change change = new Change.OfIndividual(Optional.of(other), Optional.of(Individual.of("kit", Sex.FEMALE)));
        Correction correction = new Correction(DAY, Optional.empty(), "typing error", List.of(change));
        ProblemsException thrown = assertThrows(ProblemsException.class, () -> pedigree.corrected(correction));
        assertEquals("/individuals/kit", thrown.problems().get(0).pointer());
        assertThrows(IllegalArgumentException.class, () -> pedigree.change(pedigree.individual("kit")));
        assertThrows(IllegalArgumentException.class, () -> new Correction(DAY, Optional.empty(), " ", List.of(change)));
        assertThrows(
                IllegalArgumentException.class,
                () -> new Correction(DAY, Optional.empty(), "twice", List.of(change, change)));
        assertThrows(
                IllegalArgumentException.class,
                () -> new Change.OfIndividual(Optional.of(other), Optional.of(Individual.of("kat"))));
    }

    @Test
    void a_correction_that_makes_the_pedigree_unsound_changes_nothing() {
        Pedigree pedigree = family().build();
        Change change = new Change.OfIndividual(Optional.of(pedigree.individual("hob")), Optional.empty());
        Correction correction = new Correction(DAY, Optional.empty(), "struck out", List.of(change));
        assertThrows(ProblemsException.class, () -> pedigree.corrected(correction));
        assertEquals(family().build(), pedigree);
    }

    @Test
    void a_trail_that_does_not_lead_to_the_records_is_a_problem() {
        Change change = new Change.OfIndividual(
                Optional.of(Individual.of("kit", Sex.MALE)), Optional.of(Individual.of("kit", Sex.FEMALE)));
        ProblemsException thrown = assertThrows(
                ProblemsException.class,
                () -> family().add(new Correction(DAY, Optional.empty(), "typing error", List.of(change)))
                        .build());
        assertEquals("broken-trail", thrown.problems().get(0).code());
    }

    @Test
    void an_observation_in_words_says_what_was_seen_and_not_by_whom() {
        Observation seen = new Observation(
                        Optional.of(LocalDate.of(2020, 1, 2)),
                        LifeStage.atMoult(2),
                        Set.of(Phenotype.of("eye", "pink")))
                .in("daylight")
                .by("A. Keeper");
        assertEquals("eye: pink, 2020-01-02, at moult 2, in daylight", seen.toString());
        assertEquals(
                "eye: pink",
                Observation.of(LifeStage.unstated(), Phenotype.of("eye", "pink"))
                        .toString());
    }
}
