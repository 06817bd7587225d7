package org.geneticsrules.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.explanation.AnimalCase;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.model.Population;
import org.geneticsrules.model.Statement;
import org.geneticsrules.model.Viability;
import org.geneticsrules.pedigree.CalledName;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Clock;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.geneticsrules.trait.Taxon;
import org.geneticsrules.trait.Trait;
import org.geneticsrules.vocabulary.Facet;
import org.geneticsrules.vocabulary.Name;
import org.geneticsrules.vocabulary.Sense;
import org.geneticsrules.vocabulary.Vocabulary;
import org.junit.jupiter.api.Test;

/** What goes with the numbers of an answer: readings that are no evidence, refusals, assumptions. Model and animals are invented. */
class AnswersTest {

    private static final Catalogue TRAITS = Catalogue.builder("invented.traits", "1.0.0")
            .taxon(new Taxon("Inventum novum", Optional.empty(), Optional.of(new Taxon.Young("pup", "pups"))))
            .trait(Trait.of("hue", "dark", "pale").judgeableFrom(LifeStage.atWeek(8)))
            .trait("eye", "brown", "blue")
            .trait("white hairs", "few", "half", "all")
            .build();

    private static final CompiledModel COMPILED = CompiledModel.of(model());
    private static final Answers ANSWERS = Answers.of(COMPILED, List.of());

    private static Model model() {
        return Model.builder("invented.model", "1.0.0", TRAITS)
                .locus(
                        "H",
                        locus -> locus.alleles("H", "h")
                                .dominant("H", "h")
                                .shows("H", "dark")
                                .shows("h", "pale"))
                .locus(
                        "E",
                        locus -> locus.alleles("E", "e")
                                .dominant("E", "e")
                                .shows("E", "brown")
                                .shows("e", "blue"))
                .locus(
                        "W",
                        locus -> locus.alleles("W", "w")
                                .dominant("W", "w")
                                .shows("W", "whitening")
                                .shows("w", "not"))
                .group(LinkageGroup.autosomal("g", List.of("H", "E"), List.of(Probability.of(1, 10))))
                .viability(Viability.lethal("pale young die", "H", "pale"))
                .trait(
                        "hue",
                        rule -> rule.when(Condition.where("H", "dark"), "dark").otherwise("pale"))
                .trait(
                        "eye",
                        rule -> rule.when(Condition.where("E", "brown"), "brown")
                                .otherwise("blue"))
                .trait(
                        "white hairs",
                        rule -> rule.when("whitening", Condition.where("W", "whitening"), whitening())
                                .otherwise("few"))
                .population(
                        "stock",
                        stock -> stock.frequency("H", "H", Probability.of(3, 4))
                                .frequency("H", "h", Probability.of(1, 4))
                                .frequency("E", "E", Probability.of(1, 2))
                                .frequency("E", "e", Probability.of(1, 2))
                                .frequency("W", "W", Probability.of(1, 2))
                                .frequency("W", "w", Probability.of(1, 2)))
                .build();
    }

    /** Few or half at first; few becomes half, and half becomes all, with 1/2 each at a moult. */
    private static CaseState whitening() {
        Probability half = Probability.of(1, 2);
        return new CaseState.Progression(
                Clock.MOULT,
                Distribution.of(Map.of("few", half, "half", half)),
                Map.of(
                        "few", Distribution.of(Map.of("few", half, "half", half)),
                        "half", Distribution.of(Map.of("half", half, "all", half))),
                true);
    }

    private static Animal animal(String genotype) {
        return Animal.unknown(COMPILED).withGenotype(genotype, OmittedLoci.UNKNOWN);
    }

    private static Set<String> ids(Answer answer) {
        return new LinkedHashSet<>(
                answer.assumptions().stream().map(Assumption::id).toList());
    }

    @Test
    void a_reading_made_too_early_is_kept_but_is_no_evidence() {
        Animal early = Animal.unknown(COMPILED).seen(new Sighting(LifeStage.atWeek(3), Phenotype.of("hue", "pale")));
        assertEquals(COMPILED.showing(Phenotype.unspecified()), early.genotypes());
        assertEquals(List.of("look hue: pale (week 3)"), early.given());
        assertEquals(
                List.of(
                        "the look \"hue: pale\" was read at week 3, before it can be told; it is kept but is no evidence; look"
                                + " again from week 8 on"),
                early.notices());
        assertEquals(Phenotype.of("hue", "pale"), early.looks());
        Animal late = Animal.unknown(COMPILED).seen(new Sighting(LifeStage.atWeek(9), Phenotype.of("hue", "dark")));
        assertEquals(COMPILED.showing(Phenotype.of("hue", "dark")), late.genotypes());
    }

    @Test
    void a_kit_read_too_early_changes_nothing_and_a_late_one_does() {
        MatingQuestion question = MatingQuestion.of(
                        animal("H/H e/e").from(stock()), animal("H/H E/-").from(stock()))
                .inTraits(List.of("eye"))
                .lookingFor(Phenotype.of("eye", "blue"));
        Probability before = ANSWERS.mating(question).probability().orElseThrow();
        Answer early = ANSWERS.mating(
                question.withSightings(List.of(new Sighting(LifeStage.atWeek(3), Phenotype.of("hue", "pale")))));
        assertEquals(Optional.of(before), early.probability());
        assertTrue(
                early.notices().get(0).contains("of a pup seen was read at week 3"),
                early.notices().toString());
        Answer told = ANSWERS.mating(question.havingSeen(List.of(Phenotype.of("eye", "blue"))));
        assertTrue(told.probability().orElseThrow().compareTo(before) > 0);
        assertTrue(
                told.verdict().startsWith("Given the pups already seen, the next pup shows eye blue"), told.verdict());
    }

    private static Population stock() {
        return COMPILED.model().populations().get("stock");
    }

    @Test
    void a_question_that_needs_a_stage_is_refused_with_what_to_state_and_when_to_look_again() {
        Animal parent = animal("H/H E/E W/w");
        ProblemsException missing = assertThrows(
                ProblemsException.class,
                () -> ANSWERS.mating(MatingQuestion.of(parent, parent).inTraits(List.of("white hairs"))));
        Problem moult = missing.problems().get(0);
        assertEquals("stage-needed", moult.code());
        assertTrue(moult.message().startsWith("the pups of this mating: what is asked depends on the moult"));
        assertTrue(moult.expected().orElseThrow().contains("states the moult"));
        ProblemsException early = assertThrows(
                ProblemsException.class,
                () -> ANSWERS.coat(new CoatQuestion(parent, Set.of("hue")).at(LifeStage.atWeek(2))));
        assertEquals("stage-needed", early.problems().get(0).code());
        assertEquals(
                Optional.of("a stage from week 8 on; look again then"),
                early.problems().get(0).expected());
        ProblemsException seen = assertThrows(
                ProblemsException.class, () -> Animal.unknown(COMPILED).withLooks(Phenotype.of("white hairs", "all")));
        assertEquals("stage-needed", seen.problems().get(0).code());
    }

    @Test
    void of_all_traits_those_that_cannot_be_told_yet_are_left_out_and_named() {
        Answer answer = ANSWERS.coat(new CoatQuestion(animal("H/H E/E W/w"), Set.of()).at(LifeStage.atWeek(2)));
        assertEquals(List.of("eye"), answer.question().traits());
        assertEquals(2, answer.notices().size(), answer.notices().toString());
        assertTrue(answer.notices().get(0).startsWith("\"hue\" is left out: \"hue\" cannot be told at week 2"));
    }

    @Test
    void an_animal_seen_half_white_is_not_few_a_moult_later() {
        Animal seen =
                animal("H/H E/E W/w").seen(new Sighting(LifeStage.atMoult(0), Phenotype.of("white hairs", "half")));
        Answer answer = ANSWERS.coat(new CoatQuestion(seen, Set.of("white hairs")).at(LifeStage.atMoult(1)));
        assertEquals(
                List.of(Phenotype.of("white hairs", "half"), Phenotype.of("white hairs", "all")),
                answer.outcomes().stream().map(Outcome::phenotype).toList());
        assertEquals(Optional.of(Probability.of(1, 2)), answer.outcomes().get(0).probability());
        AnimalCase animal = (AnimalCase) answer.because().get(0);
        assertEquals(Probability.of(1, 2), animal.counted());
        assertTrue(ids(answer).contains("independent-chances"));
    }

    @Test
    void assumptions_follow_from_what_is_asked() {
        Animal heterozygous = animal("H/h E/e");
        Answer linked = ANSWERS.mating(MatingQuestion.of(heterozygous, heterozygous)
                .inTraits(List.of("hue", "eye"))
                .at(LifeStage.atWeek(9)));
        assertTrue(
                ids(linked)
                        .containsAll(Set.of(
                                "recombination-g", "unknown-phase-sire", "unknown-phase-dam", "viability", "stage")),
                ids(linked).toString());
        assertTrue(linked.lost().orElseThrow().equals(Probability.of(1, 4)));
        Animal phased = animal("[H E]/[h e]");
        Answer known = ANSWERS.mating(MatingQuestion.of(phased, phased).inTraits(List.of("hue", "eye")));
        assertTrue(!ids(known).contains("unknown-phase-sire"));
        assertTrue(ids(known).contains("told-in-time-hue"));
        Answer weighted =
                ANSWERS.mating(MatingQuestion.of(Animal.unknown(COMPILED).from(stock()), animal("H/h E/e W/w"))
                        .inTraits(List.of("hue", "eye")));
        assertTrue(
                ids(weighted).containsAll(Set.of("population-stock", "hardy-weinberg", "linkage-equilibrium")),
                ids(weighted).toString());
        Answer alone =
                ANSWERS.mating(MatingQuestion.of(heterozygous, heterozygous).inTraits(List.of("eye")));
        assertTrue(!ids(alone).contains("unlinked-loci"));
    }

    /** The white hairs of those that live are inherited apart from what kills; the share that is lost is told all the same. */
    @Test
    void the_share_lost_rests_on_who_is_lost() {
        Set<String> behind =
                Set.of("/viability/pale young die", "/loci/H/dominance/order/0", "/loci/H/dominance/shows/h");
        Answer some = ANSWERS.mating(MatingQuestion.of(animal("H/h E/E W/w"), animal("H/h E/E W/w"))
                .inTraits(List.of("white hairs"))
                .at(LifeStage.atMoult(0)));
        assertEquals(Optional.of(Probability.of(1, 4)), some.lost());
        assertTrue(pointers(some).containsAll(behind), () -> pointers(some).toString());
        Answer none = ANSWERS.mating(MatingQuestion.of(animal("H/H E/E W/w"), animal("H/h E/E W/w"))
                .inTraits(List.of("white hairs"))
                .at(LifeStage.atMoult(0)));
        assertTrue(
                pointers(none).stream().noneMatch(behind::contains),
                () -> pointers(none).toString());
    }

    private static List<String> pointers(Answer answer) {
        return answer.evidence().statements().stream().map(Statement::pointer).toList();
    }

    @Test
    void a_parent_known_by_chance_look_is_weighed_by_that_chance_and_rests_on_its_rule() {
        Animal sire = Animal.unknown(COMPILED)
                .withGenotype("H/H E/E", OmittedLoci.UNKNOWN)
                .from(stock())
                .seen(new Sighting(LifeStage.atMoult(0), Phenotype.of("white hairs", "few")));
        Answer answer = ANSWERS.mating(MatingQuestion.of(sire, animal("H/H E/E w/w"))
                .inTraits(List.of("white hairs"))
                .at(LifeStage.atMoult(0))
                .lookingFor(Phenotype.of("white hairs", "half")));
        // W/W 1/4 and W/w 1/2 show few with 1/2, w/w 1/4 always: 1/8, 2/8, 2/8, so W passes with 2/5, and shows half
        // with 1/2
        assertEquals(Optional.of(Probability.of(1, 5)), answer.probability());
        assertTrue(answer.evidence().statements().stream()
                .anyMatch(statement -> statement.pointer().equals("/traits/white hairs/cases/whitening")));
    }

    @Test
    void a_litter_without_a_look_and_parents_of_the_wrong_sex_are_refused() {
        Animal parent = animal("H/H E/E W/w");
        assertEquals(
                "litter-without-look",
                refused(MatingQuestion.of(parent, parent)
                        .inTraits(List.of("eye"))
                        .inLitterOf(3)));
        assertEquals(
                "litter-size",
                refused(MatingQuestion.of(parent, parent)
                        .lookingFor(Phenotype.of("eye", "blue"))
                        .inLitterOf(LitterSize.of(31))));
        assertEquals(
                "wrong-sex",
                refused(MatingQuestion.of(parent.ofSex(Sex.FEMALE), parent).inTraits(List.of("eye"))));
    }

    private static String refused(MatingQuestion question) {
        return assertThrows(ProblemsException.class, () -> ANSWERS.mating(question))
                .problems()
                .get(0)
                .code();
    }

    @Test
    void an_animal_known_to_be_of_both_sexes_contradicts_itself() {
        Animal both = Animal.unknown(COMPILED).ofSex(Sex.MALE).ofSex(Sex.FEMALE);
        assertEquals(
                Status.UNDECIDED,
                ANSWERS.coat(new CoatQuestion(both, Set.of("eye"))).status());
    }

    @Test
    void an_animal_is_known_by_what_it_was_called() {
        Vocabulary words = Vocabulary.builder("names.north", "1", TRAITS)
                .facet(Facet.of("colour"))
                .name(Name.of("dusk", "colour")
                        .withSense(Sense.of("only")
                                .withLook("dark", Condition.where("hue", "dark").and("eye", "blue"))
                                .withLook("pale", Condition.where("hue", "pale").and("eye", "brown"))))
                .name(Name.of("sky", "colour")
                        .withSense(Sense.of("only").withLook("blue", Condition.where("eye", "blue"))))
                .build();
        CalledName dusk = CalledName.of("dusk", "north").at(LifeStage.atWeek(9));
        Animal called = Animal.unknown(COMPILED).called(dusk, List.of(words));
        assertEquals(
                COMPILED.showing(Phenotype.parse("hue: dark, eye: blue"))
                        .or(COMPILED.showing(Phenotype.parse("hue: pale, eye: brown"))),
                called.genotypes());
        assertEquals(List.of("called \"dusk\" (north, at week 9)"), called.given());
        assertEquals(1, called.notices().size());
        assertTrue(
                called.notices().get(0).contains("without a date"),
                called.notices().toString());
        assertEquals(Phenotype.unspecified(), called.looks());
        assertEquals(1, called.readings().size());
        assertEquals(List.of(), called.sightings());
        Animal blue = called.called(CalledName.of("sky", "north"), List.of(words));
        assertEquals(COMPILED.showing(Phenotype.parse("hue: dark, eye: blue")), blue.genotypes());
        assertEquals(Phenotype.of("eye", "blue"), blue.looks());
        assertEquals(blue.genotypes(), blue.under(COMPILED).genotypes());
        Animal early = Animal.unknown(COMPILED).called(dusk.at(LifeStage.atWeek(3)), List.of(words));
        assertEquals(COMPILED.showing(Phenotype.unspecified()), early.genotypes());
        assertTrue(
                early.notices().toString().contains("hue is left out"),
                early.notices().toString());
        Answer coat = ANSWERS.coat(new CoatQuestion(called, Set.of("eye")));
        assertTrue(ids(coat).contains("names-as-said"), coat.assumptions().toString());
        assertEquals( // pale young are not born, so of the two looks one is left
                Set.of(Phenotype.of("eye", "blue")),
                coat.outcomes().stream().map(Outcome::phenotype).collect(Collectors.toSet()));
        Answer mating = ANSWERS.mating(
                MatingQuestion.of(blue.from(stock()), animal("H/H e/e").from(stock()))
                        .inTraits(List.of("eye"))
                        .lookingFor(Phenotype.of("eye", "blue")));
        assertEquals(Optional.of(Probability.ONE), mating.probability());
        ProblemsException wrong = assertThrows(
                ProblemsException.class, () -> called.called(CalledName.of("sku", "north"), List.of(words)));
        assertEquals(Optional.of("sky"), wrong.problems().get(0).nearest());
        assertEquals("", wrong.problems().get(0).pointer());
    }
}
