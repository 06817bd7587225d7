package org.geneticsrules.vocabulary;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.BoxSet;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Trait;
import org.geneticsrules.vocabulary.Naming.Difference;
import org.geneticsrules.vocabulary.Naming.InFacet;
import org.geneticsrules.vocabulary.Naming.OfName;
import org.geneticsrules.vocabulary.Naming.Standing;
import org.junit.jupiter.api.Test;

/**
 * A worked example. The six names of cats without agouti are from memory of a textbook (Vella, Shelton, McGonagle and Stanglein 1999,
 * Robinson's Genetics for Cat Breeders and Veterinarians, 4th edition): black, chocolate and cinnamon in full density; blue, lilac and
 * fawn if dilute. Everything else here is invented: the second vocabulary, all dates and ages, and the white marks.
 */
class CatNamesTest {

    private static final Catalogue CATS = Catalogue.builder("example.cats", "1")
            .seasons("summer", "winter")
            .trait("pigment", "black", "chocolate", "cinnamon")
            .trait(Trait.of("density", "full", "dilute").judgeableFrom(LifeStage.atWeek(6)))
            .trait("white", "none", "paws", "half", "all")
            .build();

    private static final Vocabulary TEXTBOOK = Vocabulary.builder("example.textbook", "1", CATS)
            .facet(Facet.of("colour"))
            .facet(Facet.of("marks"))
            .name(colour("black", "black", "full"))
            .name(colour("blue", "black", "dilute"))
            .name(colour("chocolate", "chocolate", "full"))
            .name(colour("lilac", "chocolate", "dilute").withSynonyms("lavender"))
            .name(colour("cinnamon", "cinnamon", "full"))
            .name(colour("fawn", "cinnamon", "dilute"))
            .name(Name.of("mitted", "marks")
                    .withSense(Sense.of("only").withLook("paws", Condition.where("white", "paws"))))
            .build();

    /** Invented: one name for all that is pale and brownish, renamed in 2001; a name that is two things; and a broader one. */
    private static final Vocabulary INVENTED = Vocabulary.builder("example.invented", "1", CATS)
            .facet(Facet.of("colour"))
            .facet(Facet.of("marks"))
            .name(Name.of("dove", "colour").withSense(pale().withPeriod(Period.parse("../2000"))))
            .name(Name.of("mushroom", "colour").withSense(pale().withPeriod(Period.parse("2001/.."))))
            .name(Name.of("ink", "colour")
                    .withSense(Sense.of("only").withLook("black", Condition.where("pigment", "black"))))
            .name(Name.of("night", "colour")
                    .withSense(Sense.of("only")
                            .withLook(
                                    "black", Condition.where("pigment", "black").and("density", "full"))))
            .name(Name.of("magpie", "marks")
                    .withSense(Sense.of("pattern").withLook("half", Condition.where("white", "half")))
                    .withSense(Sense.of("any").withLook("some", Condition.where("white", "paws", "half"))))
            .name(Name.of("frost", "marks")
                    .withSense(Sense.of("only")
                            .withLook("winter", Condition.where("white", "half").and("season", "winter"))
                            .withJudgeableFrom(LifeStage.atMoult(2))))
            .build();

    private static Name colour(String word, String pigment, String density) {
        return Name.of(word, "colour")
                .withSense(Sense.of("only")
                        .withLook("only", Condition.where("pigment", pigment).and("density", density)));
    }

    private static Sense pale() {
        return Sense.of("only")
                .withLook("pale", Condition.where("density", "dilute").and("pigment", "chocolate", "cinnamon"));
    }

    private static InFacet colours(Vocabulary names, String seen, Occasion occasion) {
        return Naming.of(names, Phenotype.parse(seen), occasion).facet("colour");
    }

    private static List<String> words(List<OfName> names) {
        return names.stream().map(one -> one.name().word()).toList();
    }

    @Test
    void a_cat_seen_whole_has_one_colour_and_the_reasons_against_the_others() {
        InFacet colours = colours(TEXTBOOK, "pigment: chocolate, density: dilute", Occasion.unstated());
        assertEquals(List.of("lilac"), words(colours.of(Standing.CERTAIN)));
        OfName black = colours.names().get(0);
        assertEquals(Standing.EXCLUDED, black.standing());
        assertEquals(Map.of("pigment", "chocolate"), black.against());
        assertEquals(
                List.of(
                        new Difference("pigment", "chocolate", List.of("black")),
                        new Difference("density", "dilute", List.of("full"))),
                black.differences());
        assertEquals(List.of("blue", "chocolate", "fawn"), words(colours.nearest()));
    }

    @Test
    void a_cat_of_which_little_was_seen_has_names_left_open_and_is_told_what_to_look_at() {
        InFacet colours = colours(TEXTBOOK, "pigment: black", Occasion.unstated());
        assertEquals(List.of("black", "blue"), words(colours.of(Standing.POSSIBLE)));
        assertEquals(Set.of("density"), colours.of(Standing.POSSIBLE).get(0).lookAt());
        assertEquals(List.of(), colours.of(Standing.CERTAIN));
    }

    @Test
    void a_kitten_is_too_young_for_its_name_and_when_to_look_again_is_told() {
        Naming kitten = Naming.of(
                TEXTBOOK,
                Phenotype.parse("pigment: black, density: dilute"),
                Occasion.unstated().at(LifeStage.atWeek(2)));
        assertEquals(Phenotype.of("pigment", "black"), kitten.told());
        assertEquals(
                List.of("what was seen of density is left out: it cannot be told before week 6"), kitten.notices());
        List<OfName> early = kitten.facet("colour").of(Standing.TOO_EARLY);
        assertEquals(List.of("black", "blue"), words(early));
        assertEquals(Optional.of(LifeStage.atWeek(6)), early.get(0).lookAgain());
        assertEquals(
                List.of("chocolate", "lilac", "cinnamon", "fawn"),
                words(kitten.facet("colour").of(Standing.EXCLUDED)));
    }

    @Test
    void a_broader_name_is_told_beside_the_narrower_one() {
        InFacet colours = colours(INVENTED, "pigment: black, density: full", Occasion.unstated());
        assertEquals(List.of("ink", "night"), words(colours.of(Standing.CERTAIN)));
        assertEquals(List.of("night"), colours.of(Standing.CERTAIN).get(0).narrower());
        assertEquals(List.of("night"), words(colours.narrowest()));
    }

    @Test
    void a_date_picks_the_names_and_no_date_means_today() {
        String seen = "pigment: cinnamon, density: dilute";
        Occasion then = Occasion.unstated().on(LocalDate.of(2000, 12, 31));
        assertEquals(List.of("dove"), words(colours(INVENTED, seen, then).of(Standing.CERTAIN)));
        Occasion later = Occasion.unstated().on(LocalDate.of(2001, 1, 1));
        assertEquals(List.of("mushroom"), words(colours(INVENTED, seen, later).of(Standing.CERTAIN)));
        assertEquals(
                List.of("mushroom"),
                words(colours(INVENTED, seen, Occasion.unstated()).of(Standing.CERTAIN)));
    }

    @Test
    void an_ambiguous_name_says_in_which_sense_it_applies() {
        InFacet marks = Naming.of(INVENTED, Phenotype.of("white", "paws"), Occasion.unstated())
                .facet("marks");
        OfName magpie = marks.names().get(0);
        assertTrue(magpie.isAmbiguous());
        assertEquals(Standing.CERTAIN, magpie.standing());
        assertEquals(Map.of("pattern", Standing.EXCLUDED, "any", Standing.CERTAIN), magpie.senses());
        OfName frost = marks.names().get(1);
        assertFalse(frost.isAmbiguous());
        assertEquals(Map.of("white", "paws"), frost.against());
    }

    @Test
    void a_name_may_wait_for_a_moult_and_ask_for_the_season() {
        Occasion young = Occasion.unstated().at(LifeStage.atMoult(1));
        OfName frost = Naming.of(INVENTED, Phenotype.of("white", "half"), young)
                .facet("marks")
                .names()
                .get(1);
        assertEquals(Standing.TOO_EARLY, frost.standing());
        assertEquals(Set.of("season"), frost.lookAt());
        assertEquals(Optional.of(LifeStage.atMoult(2)), frost.lookAgain());
        Occasion summer = Occasion.unstated().at(LifeStage.atMoult(3).in("summer"));
        OfName never = Naming.of(INVENTED, Phenotype.of("white", "half"), summer)
                .facet("marks")
                .names()
                .get(1);
        assertEquals(Map.of("season", "summer"), never.against());
        Naming unstated = Naming.of(INVENTED, Phenotype.of("white", "half"), Occasion.unstated());
        assertTrue(
                unstated.notices().get(0).contains("\"frost\" could be said by then, which is so from moult 2 on"),
                unstated.notices()::toString);
    }

    @Test
    void lilac_and_fawn_become_one_name_and_what_is_lost_is_told() {
        Meaning lilac = Meaning.of(TEXTBOOK, "Lavender", Occasion.unstated());
        Conversion converted = Conversion.of(List.of(lilac), INVENTED, Optional.empty());
        assertTrue(converted.isLossy());
        assertEquals(1, converted.candidates().size());
        Conversion.Candidate mushroom = converted.candidates().get(0);
        assertEquals(Match.BROADER, mushroom.match());
        assertEquals("mushroom", mushroom.names().get(0).word());
        assertEquals("pigment: cinnamon, density: dilute", mushroom.alsoMeans().toString());
        assertTrue(mushroom.leavesOut().isEmpty());
        assertTrue(converted.uncovered().get("colour").isEmpty());
    }

    @Test
    void a_renamed_class_is_found_by_what_it_means() {
        Meaning dove = Meaning.of(INVENTED, "dove", Occasion.unstated().on(LocalDate.of(1990, 5, 1)));
        Conversion today = Conversion.of(List.of(dove), INVENTED, Optional.empty());
        assertFalse(today.isLossy());
        assertEquals(Match.EXACT, today.candidates().get(0).match());
        assertEquals("mushroom", today.candidates().get(0).names().get(0).word());
    }

    @Test
    void a_whole_coat_is_converted_facet_by_facet_and_together() {
        Occasion unstated = Occasion.unstated();
        List<Meaning> coat = List.of(Meaning.of(TEXTBOOK, "black", unstated), Meaning.of(TEXTBOOK, "mitted", unstated));
        Conversion converted = Conversion.of(coat, INVENTED, Optional.empty());
        assertEquals(
                List.of(List.of("night", "magpie"), List.of("ink", "magpie")),
                converted.candidates().stream()
                        .map(one -> one.names().stream().map(Name::word).toList())
                        .toList());
        assertEquals(
                "pigment: black, density: full, white: half",
                converted.candidates().get(0).alsoMeans().toString());
        Conversion chocolate =
                Conversion.of(List.of(Meaning.of(TEXTBOOK, "chocolate", unstated)), INVENTED, Optional.empty());
        assertEquals(List.of(), chocolate.candidates());
        assertEquals(chocolate.meaning(), chocolate.uncovered().get("colour"));
    }

    @Test
    void what_the_invented_names_do_not_cover_is_told_without_listing_it() {
        BoxSet all = INVENTED.space().everything();
        Unnamed colours = Unnamed.of(INVENTED, "colour", all, Optional.empty());
        assertEquals(
                "pigment: chocolate or cinnamon, density: full",
                colours.unnamed().toString());
        assertEquals(Probability.of(2, 3), colours.named());
        assertEquals(
                Probability.ONE,
                Unnamed.of(TEXTBOOK, "colour", all, Optional.empty()).named());
        assertEquals(
                List.of("colour", "marks"),
                Unnamed.ofAll(INVENTED, all, Optional.empty()).stream()
                        .map(one -> one.facet().id())
                        .toList());
    }

    @Test
    void a_name_becomes_a_record_of_the_traits_that_it_speaks_of() {
        Meaning blue = Meaning.of(TEXTBOOK, "blue", Occasion.unstated().on(LocalDate.of(2020, 1, 1)));
        assertEquals(Optional.of(Set.of(Phenotype.parse("pigment: black, density: dilute"))), blue.evidence());
        assertEquals(
                List.of("it is taken for granted that density could be told, which is so from week 6 on"),
                blue.notices());
        Meaning kitten = Meaning.of(TEXTBOOK, "blue", Occasion.unstated().at(LifeStage.atWeek(1)));
        assertEquals(Optional.of(Set.of(Phenotype.of("pigment", "black"))), kitten.evidence());
        Meaning dove = Meaning.of(INVENTED, "dove", Occasion.unstated());
        assertEquals(2, dove.evidence().orElseThrow().size());
        assertTrue(dove.notices().get(0).contains("without a date"), dove.notices()::toString);
    }
}
