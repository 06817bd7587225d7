package org.geneticsrules.answer.recorded;

import static org.geneticsrules.answer.recorded.Carriers.ANSWERS;
import static org.geneticsrules.answer.recorded.Carriers.MODEL;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.answer.Assumption;
import org.geneticsrules.pedigree.CalledName;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.NamedRecords;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Confusion;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.vocabulary.Facet;
import org.geneticsrules.vocabulary.Name;
import org.geneticsrules.vocabulary.Sense;
import org.geneticsrules.vocabulary.Vocabulary;
import org.junit.jupiter.api.Test;

/** Answers about animals that are known by what they were called. Names and animals are invented. */
class NamesAsRecordsTest {

    private static final Vocabulary NORTH = words("names.north", "The North", "pearl", "pink");
    private static final Vocabulary SOUTH = words("names.south", "The South", "pearl", "dark");
    private static final CalledName PEARL =
            CalledName.of("pearl", "The North").on(LocalDate.of(1998, 11, 2)).by("A. Keeper");
    private static final CalledName DARK_PEARL = CalledName.of("pearl", "The South");

    private static Vocabulary words(String id, String region, String word, String eye) {
        return Vocabulary.builder(id, "1", MODEL.catalogue())
                .region(region)
                .facet(Facet.of("colour"))
                .name(Name.of(word, "colour").withSense(Sense.of("only").withLook("eye", Condition.where("eye", eye))))
                .name(Name.of("late", "colour")
                        .withSense(Sense.of("only")
                                .withLook("eye", Condition.where("eye", eye))
                                .withJudgeableFrom(LifeStage.atMoult(1))))
                .build();
    }

    private static Pedigree kennel(Individual kit) {
        return Pedigree.builder("kennel", "1")
                .add(Individual.of("Dam", Sex.FEMALE))
                .add(Individual.of("Sire", Sex.MALE))
                .add(kit)
                .add(Litter.of("litter", "Dam", "Sire", "Kit"))
                .build();
    }

    private static RecordedAnswers about(Individual kit) {
        return RecordedAnswers.of(ANSWERS, NamedRecords.of(kennel(kit), List.of(NORTH, SOUTH)))
                .from("rare");
    }

    private static RecordedAnswer dam(Individual kit) {
        return about(kit).mayCarry("Dam", Set.of("C"));
    }

    private static Individual kit(CalledName... names) {
        Individual kit = Individual.of("Kit");
        for (CalledName name : names) {
            kit = kit.with(name);
        }
        return kit;
    }

    private static Individual seen(String eye) {
        return Individual.of("Kit").with(Observation.of(LifeStage.unstated(), Phenotype.of("eye", eye)));
    }

    @Test
    void a_name_tells_of_relatives_what_the_look_would_tell() {
        RecordedAnswer named = dam(kit(PEARL));
        assertEquals(dam(seen("pink")).finding(), named.finding());
        assertEquals(dam(seen("pink")).verdict(), named.verdict());
        assertEquals(List.of(), named.notices());
        Assumption said = named.assumptions().stream()
                .filter(one -> one.id().equals("names-as-said"))
                .findFirst()
                .orElseThrow();
        assertEquals(
                "Names that animals were called by mean what the vocabularies say they did: The North. The weakest sense that"
                        + " was read is graded conjecture.",
                said.text());
        assertFalse(named.toString().contains("Keeper"), "who said it is told to nobody");
        assertFalse(dam(seen("pink")).assumptions().stream()
                .anyMatch(one -> one.id().equals("names-as-said")));
    }

    @Test
    void the_animal_itself_is_given_with_its_name_and_what_that_says() {
        RecordedAnswer own = about(kit(PEARL)).mayCarry("Kit", Set.of("C"));
        assertTrue(
                own.given().contains("\"Kit\": called \"pearl\" (The North, 1998-11-02), which says eye: pink"),
                own.given().toString());
    }

    @Test
    void names_of_two_regions_that_cannot_both_be_right_contradict_each_other_and_are_named() {
        RecordedAnswer answer = dam(kit(PEARL, DARK_PEARL));
        List<Cited> cited = answer.conflicts().get(0).records();
        assertEquals(
                List.of("/individuals/Kit/names/0", "/individuals/Kit/names/1"),
                cited.stream().map(Cited::pointer).toList());
        assertEquals(
                "that \"Kit\" was called \"pearl\" (The North, 1998-11-02), which says eye: pink",
                cited.get(0).words());
        RegistryReport report = about(kit(PEARL, DARK_PEARL)).check(RegistryQuestion.ofRecords(), Progress.NONE);
        assertTrue(report.entries().toString().contains("was called \"pearl\" (The South)"), report.toString());
    }

    @Test
    void errors_of_naming_go_on_being_reckoned_with() {
        Confusions errors =
                Confusions.of(List.of(new Confusion("eye", "dark", "pink", Optional.empty(), Probability.of(1, 50))));
        assertEquals(
                about(seen("pink")).with(errors).mayCarry("Dam", Set.of("C")).finding(),
                about(kit(PEARL)).with(errors).mayCarry("Dam", Set.of("C")).finding());
    }

    @Test
    void what_is_weak_about_a_name_or_says_nothing_is_told() {
        assertEquals(
                List.of(
                        "of what \"Kit\" was called: \"pearl\" was said without a date, so every sense that it ever had is"
                                + " allowed for; it is weak evidence (The South)"),
                dam(kit(DARK_PEARL)).notices());
        CalledName early =
                CalledName.of("late", "The North").on(LocalDate.of(1998, 11, 2)).at(LifeStage.atMoult(0));
        RecordedAnswer nothing = dam(kit(early));
        assertEquals(
                List.of(
                        "no evidence in what \"Kit\" was called: \"late\" cannot be said before moult 1, so that it was said"
                                + " tells nothing (The North)"),
                nothing.notices());
        assertEquals(dam(Individual.of("Kit")).finding(), nothing.finding());
        RegistryReport report = about(kit(early)).check(RegistryQuestion.ofRecords(), Progress.NONE);
        assertTrue(
                report.entries().toString().contains("of what it was called, \"late\" cannot be said"),
                report.toString());
    }

    @Test
    void names_that_nobody_read_are_told_of_too() {
        RecordedAnswer unread =
                RecordedAnswers.of(ANSWERS, kennel(kit(PEARL))).from("rare").mayCarry("Dam", Set.of("C"));
        assertEquals(dam(Individual.of("Kit")).finding(), unread.finding());
        assertEquals(
                List.of("no evidence in what \"Kit\" was called: no vocabulary was at hand to read them"),
                unread.notices());
    }
}
