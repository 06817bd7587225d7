package org.geneticsrules.answer.recorded;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.answer.Answer;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.Assumption;
import org.geneticsrules.answer.CoatQuestion;
import org.geneticsrules.answer.MatingQuestion;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.inference.Notice;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.CalledName;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.NamedRecords;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.render.RegistryText;
import org.geneticsrules.render.TextStyle;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.geneticsrules.trait.Trait;
import org.geneticsrules.vocabulary.Facet;
import org.geneticsrules.vocabulary.Name;
import org.geneticsrules.vocabulary.Sense;
import org.geneticsrules.vocabulary.Vocabulary;
import org.junit.jupiter.api.Test;

/** The light in which an animal was looked at: a look in a light in which a trait cannot be told is kept and is no evidence. */
class LightTest {

    private static final Model MODEL = Model.builder(
                    "lit",
                    "1",
                    Catalogue.builder("lit.traits", "1")
                            .lights("daylight", "lamplight")
                            .trait(Trait.of("eye", "dark", "pink").judgeableIn(List.of("daylight")))
                            .trait("size", "small", "large")
                            .build())
            .locus(
                    "C",
                    locus -> locus.alleles("C", "c")
                            .dominant("C", "c")
                            .shows("C", "pigment")
                            .shows("c", "albino"))
            .locus(
                    "S",
                    locus -> locus.alleles("S", "s")
                            .dominant("S", "s")
                            .shows("S", "large")
                            .shows("s", "small"))
            .trait(
                    "eye",
                    rule -> rule.when(Condition.where("C", "albino"), "pink").otherwise("dark"))
            .trait(
                    "size",
                    rule -> rule.when(Condition.where("S", "small"), "small").otherwise("large"))
            .population(
                    "yard",
                    population -> population
                            .frequency("C", "C", Probability.of(9, 10))
                            .frequency("C", "c", Probability.of(1, 10))
                            .frequency("S", "S", Probability.of(1, 2))
                            .frequency("S", "s", Probability.of(1, 2)))
            .build();

    private static final CompiledModel COMPILED = CompiledModel.of(MODEL);
    private static final Answers ANSWERS = Answers.of(COMPILED, List.of());
    private static final Observation PINK =
            Observation.of(LifeStage.unstated(), Phenotype.parse("eye: pink, size: small"));

    private static final Vocabulary WORDS = Vocabulary.builder("names.words", "1", MODEL.catalogue())
            .facet(Facet.of("colour"))
            .name(Name.of("rosy", "colour")
                    .withSense(Sense.of("only").withLook("pink", Condition.where("eye", "pink"))))
            .name(Name.of("ember", "colour")
                    .withSense(Sense.of("only")
                            .withLook("dark", Condition.where("eye", "dark").and("size", "small"))
                            .withLook("pink", Condition.where("eye", "pink").and("size", "large"))))
            .build();

    /** Covers eyes of either colour, by the size of the animal. */
    private static final CalledName EMBER = CalledName.of("ember", "words");

    private static Pedigree kennel(Observation... ofKit) {
        Individual kit = Individual.of("Kit");
        for (Observation seen : ofKit) {
            kit = kit.with(seen);
        }
        return Pedigree.builder("kennel", "1")
                .add(Individual.of("Dam", Sex.FEMALE))
                .add(Individual.of("Sire", Sex.MALE))
                .add(kit)
                .add(Litter.of("litter", "Dam", "Sire", "Kit"))
                .build();
    }

    private static RecordedAnswer dam(Observation... ofKit) {
        return RecordedAnswers.of(ANSWERS, kennel(ofKit)).from("yard").mayCarry("Dam", Set.of());
    }

    private static List<String> ids(List<Assumption> assumptions) {
        return assumptions.stream().map(Assumption::id).toList();
    }

    @Test
    void a_look_by_lamplight_is_told_and_says_of_the_other_traits_what_it_says() {
        RecordedAnswer lamp = dam(PINK.in("lamplight"));
        RecordedAnswer without = dam(Observation.of(LifeStage.unstated(), Phenotype.of("size", "small")));
        assertEquals(without.finding(), lamp.finding());
        assertEquals(
                List.of("no evidence in the records of \"Kit\": eye cannot be told in lamplight, only in daylight"),
                lamp.notices());
        assertFalse(ids(lamp.assumptions()).contains("told-in-its-light"));
        assertEquals(without.evidence(), lamp.evidence());
    }

    @Test
    void a_look_by_daylight_counts_without_further_ado() {
        RecordedAnswer day = dam(PINK.in("daylight"));
        RecordedAnswer unstated = dam(PINK);
        assertEquals(unstated.finding(), day.finding());
        assertEquals(List.of(), day.notices());
        assertFalse(ids(day.assumptions()).contains("told-in-its-light"));
        assertEquals(
                List.of("Where no light is stated, it was one in which the trait can be told: eye in daylight."),
                unstated.assumptions().stream()
                        .filter(one -> one.id().equals("told-in-its-light"))
                        .map(Assumption::text)
                        .toList());
    }

    @Test
    void the_engine_hands_on_what_it_did_not_believe() {
        assertEquals(
                List.of(Notice.Kind.NOT_JUDGEABLE, Notice.Kind.TAKEN_AS_LIT),
                Inference.of(COMPILED, kennel(PINK.in("lamplight"), PINK)).notices().stream()
                        .map(Notice::kind)
                        .toList());
        assertTrue(Notice.Kind.TAKEN_AS_LIT.isEvidence());
        assertFalse(Notice.Kind.NOT_JUDGEABLE.isEvidence());
    }

    @Test
    void who_looked_is_in_no_answer() {
        RecordedAnswer answer = dam(PINK.by("A. Keeper").in("lamplight"), PINK.by("A. Keeper"));
        assertFalse(answer.toString().contains("Keeper"), answer.toString());
    }

    @Test
    void a_registry_asks_to_look_again_where_it_can_be_told() {
        RegistryReport report = RecordedAnswers.of(ANSWERS, kennel(PINK.in("lamplight")))
                .check(RegistryQuestion.ofRecords(), Progress.NONE);
        RegistryReport.Entry kit = report.entries().get(2);
        assertEquals(RegistryReport.Verdict.LOOK_AGAIN, kit.verdict());
        assertEquals(
                "Please look again when and where it can be told: eye cannot be told in lamplight, only in daylight.",
                kit.reason());
        String text = RegistryText.of(report, TextStyle.standard()).replaceAll("\\s+", " ");
        assertTrue(text.contains("something was recorded too early, or in a light in which it"), text);
    }

    @Test
    void a_name_for_several_looks_is_told_of_without_a_state_that_nobody_said() {
        Animal lamp = Animal.unknown(COMPILED).called(EMBER.in("lamplight"), List.of(WORDS));
        assertEquals(
                List.of(
                        "what \"ember\" says of eye was said in lamplight, in which it cannot be told; it is kept but is no"
                                + " evidence; look again in daylight"),
                lamp.notices().stream().filter(one -> one.contains("lamplight")).toList());
        assertFalse(lamp.notices().toString().contains("the look"), lamp.notices()::toString);
    }

    @Test
    void a_name_that_the_light_rules_out_altogether_is_no_assumption() {
        CalledName rosy = CalledName.of("rosy", "words");
        RecordedAnswer day = named(rosy.in("daylight"));
        assertTrue(ids(day.assumptions()).contains("names-as-said"), day::toString);
        RecordedAnswer lamp = named(rosy.in("lamplight"));
        assertFalse(ids(lamp.assumptions()).contains("names-as-said"), lamp::toString);
        assertEquals(dam().finding(), lamp.finding());
        RecordedAnswer partly = named(EMBER.in("lamplight"));
        assertTrue(ids(partly.assumptions()).contains("names-as-said"), partly::toString);
    }

    private static RecordedAnswer named(CalledName name) {
        Pedigree kennel = Pedigree.builder("kennel", "1")
                .add(Individual.of("Dam", Sex.FEMALE))
                .add(Individual.of("Sire", Sex.MALE))
                .add(Individual.of("Kit").with(name))
                .add(Litter.of("litter", "Dam", "Sire", "Kit"))
                .build();
        return RecordedAnswers.of(ANSWERS, NamedRecords.of(kennel, List.of(WORDS)))
                .from("yard")
                .mayCarry("Dam", Set.of());
    }

    @Test
    void a_single_animal_is_read_alike() {
        Animal lamp = Animal.unknown(COMPILED)
                .seen(Sighting.of(Phenotype.parse("eye: pink, size: small")).in("lamplight"));
        assertEquals(COMPILED.showing(Phenotype.of("size", "small")), lamp.genotypes());
        assertEquals(List.of("look eye: pink, size: small (in lamplight)"), lamp.given());
        assertEquals(
                List.of("the look \"eye: pink\" was read in lamplight, in which it cannot be told; it is kept but is no"
                        + " evidence; look again in daylight"),
                lamp.notices());
        Answer coat = ANSWERS.coat(
                new CoatQuestion(Animal.unknown(COMPILED).withLooks(Phenotype.of("eye", "dark")), Set.of("size")));
        assertTrue(
                ids(coat.assumptions()).contains("told-in-its-light"),
                coat.assumptions().toString());
    }

    @Test
    void of_all_animals_of_a_mating_the_light_is_spoken_of_once() {
        Animal dark = Animal.unknown(COMPILED)
                .withLooks(Phenotype.of("eye", "dark"))
                .from(Objects.requireNonNull(MODEL.populations().get("yard")));
        Answer mating = ANSWERS.mating(MatingQuestion.of(dark, dark)
                .inTraits(List.of("size"))
                .havingSeen(List.of(Phenotype.of("eye", "dark"))));
        assertEquals(
                1,
                ids(mating.assumptions()).stream()
                        .filter("told-in-its-light"::equals)
                        .count());
    }
}
