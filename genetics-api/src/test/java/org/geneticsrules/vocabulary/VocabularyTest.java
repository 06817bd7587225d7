package org.geneticsrules.vocabulary;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.evidence.Evidence;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class VocabularyTest {

    private static final Catalogue TRAITS = Catalogue.builder("example.traits", "1")
            .seasons("summer", "winter")
            .trait("hue", "black", "brown", "white")
            .trait("eye", "dark", "pink")
            .build();

    private static Sense sense(String hue) {
        return Sense.of("only").withLook("only", Condition.where("hue", hue));
    }

    private static VocabularyBuilder builder() {
        return Vocabulary.builder("example.names", "1", TRAITS)
                .facet(Facet.of("colour"))
                .facet(Facet.of("other"));
    }

    private static Problem only(Executable attempt) {
        List<Problem> problems = assertThrows(ProblemsException.class, attempt).problems();
        assertEquals(1, problems.size(), problems::toString);
        return problems.get(0);
    }

    @Test
    void all_problems_of_a_stage_are_told_at_once() {
        VocabularyBuilder wrong = builder()
                .name(Name.of("coal", "color").withSense(sense("blak")))
                .name(Name.of("milk", "colour")
                        .withEvidence("heard")
                        .withSense(Sense.of("only").withLook("only", Condition.where("hues", "white"))));
        List<Problem> problems =
                assertThrows(ProblemsException.class, wrong::build).problems();
        assertEquals(
                List.of("unknown-facet", "unknown-evidence", "unknown-state", "unknown-trait"),
                problems.stream().map(Problem::code).toList());
        assertEquals(
                List.of(Optional.of("colour"), Optional.empty(), Optional.of("black"), Optional.of("hue")),
                problems.stream().map(Problem::nearest).toList());
    }

    @Test
    void what_is_added_twice_is_refused() {
        VocabularyBuilder some = builder().name(Name.of("coal", "colour").withSense(sense("black")));
        assertThrows(IllegalArgumentException.class, () -> some.facet(Facet.of("colour")));
        assertThrows(IllegalArgumentException.class, () -> some.name(Name.of("coal", "other")));
        Evidence heard = Evidence.of("heard", Grade.PRACTICE, "People say so.");
        some.evidence(heard);
        assertThrows(IllegalArgumentException.class, () -> some.evidence(heard));
        assertThrows(IllegalArgumentException.class, () -> sense("black").withLook("only", Condition.always()));
        assertThrows(
                IllegalArgumentException.class,
                () -> Name.of("coal", "colour").withSense(sense("black")).withSense(sense("brown")));
        assertEquals(
                "blank-id",
                only(() -> Vocabulary.builder(" ", "1", TRAITS).build()).code());
    }

    @Test
    void a_sense_is_judgeable_from_one_count_only() {
        assertThrows(IllegalArgumentException.class, () -> sense("black").withJudgeableFrom(LifeStage.unstated()));
        assertThrows(
                IllegalArgumentException.class,
                () -> sense("black").withJudgeableFrom(LifeStage.atMoult(1).in("winter")));
        assertThrows(IllegalArgumentException.class, () -> sense("black").withJudgeableFrom(LifeStage.atBirth()));
    }

    @Test
    void capitals_blanks_and_composed_accents_make_no_other_word() {
        VocabularyBuilder names = builder()
                .name(Name.of("Größe  é", "colour").withSense(sense("black")))
                .name(Name.of("GRÖSSE e\u0301", "colour").withSense(sense("brown")));
        Problem problem = only(names::build);
        assertEquals("same-word", problem.code());
        assertEquals("/names/GRÖSSE e\u0301", problem.pointer());
    }

    @Test
    void one_word_may_stand_for_two_names_at_different_times_or_of_different_facets() {
        Vocabulary names = builder()
                .name(Name.of("coal", "colour")
                        .withSynonyms("ink")
                        .withSense(sense("black").withPeriod(Period.parse("../1999"))))
                .name(Name.of("ink", "colour").withSense(sense("brown").withPeriod(Period.parse("2000/.."))))
                .name(Name.of("Ink", "other").withSense(sense("white")))
                .build();
        assertEquals(3, names.find(" INK ").size());
        assertEquals(
                List.of("coal", "ink"),
                names.names("colour").stream().map(Name::word).toList());
        Occasion old = Occasion.unstated().on(LocalDate.of(1980, 1, 1));
        assertEquals(
                "coal",
                Meaning.of(names, "colour", "ink", old).readings().get(0).name().word());
        Meaning either = Meaning.of(names, "colour", "ink", Occasion.unstated());
        assertEquals("hue: black or brown", either.set().toString().replace(" | hue: ", " or "));
        assertEquals("several-facets", only(() -> Meaning.of(names, "ink", old)).code());
    }

    @Test
    void a_name_that_is_not_there_or_not_in_use_is_told_with_what_is() {
        Vocabulary names = builder()
                .name(Name.of("coal", "colour")
                        .withSynonyms("ink")
                        .withSense(sense("black").withPeriod(Period.parse("1985/1999"))))
                .build();
        Occasion unstated = Occasion.unstated();
        assertEquals(
                Optional.of("coal"),
                only(() -> Meaning.of(names, "cool", unstated)).nearest());
        assertEquals(
                "unknown-name",
                only(() -> Meaning.of(names, "other", "coal", unstated)).code());
        assertEquals(
                Optional.of("colour"),
                only(() -> Meaning.of(names, "color", "coal", unstated)).nearest());
        Problem late = only(() -> Meaning.of(names, "coal", unstated.on(LocalDate.of(2000, 1, 1))));
        assertEquals("not-in-use", late.code());
        assertEquals(Optional.of("a date in 1985/1999"), late.expected());
        assertEquals(
                "unknown-season",
                only(() -> Meaning.of(
                                names, "coal", unstated.at(LifeStage.unstated().in("wintre"))))
                        .code());
        assertThrows(ProblemsException.class, () -> Naming.of(names, Phenotype.of("hue", "blak"), unstated));
        assertThrows(
                IllegalArgumentException.class,
                () -> Naming.of(names, Phenotype.unspecified(), unstated).facet("color"));
    }

    @Test
    void a_sense_rests_on_its_own_evidence_or_on_that_of_its_name_or_on_nothing() {
        Vocabulary names = builder()
                .evidence(Evidence.of("heard", Grade.PRACTICE, "People say so."))
                .evidence(Evidence.of("read", Grade.ONE_STUDY, "It was written."))
                .name(Name.of("coal", "colour")
                        .withEvidence("heard")
                        .withSense(sense("black"))
                        .withSense(new Sense(
                                        "other",
                                        sense("brown").looks(),
                                        Period.always(),
                                        Optional.empty(),
                                        Optional.empty(),
                                        Optional.empty())
                                .withEvidence("read")))
                .name(Name.of("milk", "colour")
                        .withSense(sense("white").withNote("Rare."))
                        .withNote("Old."))
                .build();
        Name coal = names.find("coal").get(0);
        assertEquals(
                Grade.PRACTICE, names.grade(coal, coal.inUse(Optional.empty()).get(0)));
        assertEquals(
                Grade.ONE_STUDY, names.grade(coal, coal.inUse(Optional.empty()).get(1)));
        Name milk = names.find("milk").get(0);
        assertEquals(
                Grade.CONJECTURE, names.grade(milk, milk.inUse(Optional.empty()).get(0)));
        assertEquals(
                Optional.empty(),
                names.support(milk, milk.inUse(Optional.empty()).get(0)));
    }

    @Test
    void a_vocabulary_is_told_apart_by_what_it_says() {
        VocabularyBuilder one = builder().name(Name.of("coal", "colour").withSense(sense("black")));
        Vocabulary first = one.build();
        assertEquals(first, one.title("").build().equals(first) ? null : first);
        assertNotEquals(first, one.title("Names").build());
        assertEquals("example.names 1", first.toString());
        assertEquals(
                first.hashCode(),
                builder()
                        .name(Name.of("coal", "colour").withSense(sense("black")))
                        .build()
                        .hashCode());
        assertEquals(
                "other-catalogue",
                only(() -> one.writtenFor(Catalogue.builder("example.traits", "2")
                                        .trait("hue", "black")
                                        .build()
                                        .reference())
                                .build())
                        .code());
    }

    @Test
    void a_name_of_sex_and_season_says_what_is_weak_about_it() {
        Vocabulary names = builder()
                .name(Name.of("bride", "colour")
                        .withSense(Sense.of("only")
                                .withLook(
                                        "only",
                                        Condition.where("hue", "white")
                                                .and(Sex.VARIABLE, "female")
                                                .and("season", "winter"))))
                .build();
        Meaning bare = Meaning.of(names, "bride", Occasion.unstated());
        assertEquals(3, bare.notices().size(), bare.notices()::toString);
        assertEquals(1, bare.evidence().orElseThrow().size());
        Occasion groom = Occasion.unstated().of(Sex.MALE).on(LocalDate.of(2000, 1, 1));
        Meaning wrong = Meaning.of(names, "bride", groom);
        assertTrue(wrong.set().isEmpty());
        assertEquals(Optional.empty(), wrong.evidence());
        assertTrue(wrong.notices().stream().anyMatch(notice -> notice.contains("tells nothing")));
        assertEquals(
                "names-exclude-each-other",
                only(() -> Conversion.of(List.of(wrong), names, Optional.empty()))
                        .code());
    }

    @Test
    void a_conversion_needs_names_facets_and_one_catalogue() {
        Vocabulary names = builder()
                .name(Name.of("coal", "colour").withSense(sense("black")))
                .build();
        Meaning coal = Meaning.of(names, "coal", Occasion.unstated());
        assertThrows(IllegalArgumentException.class, () -> Conversion.of(List.of(), names, Optional.empty()));
        assertThrows(
                IllegalArgumentException.class, () -> Conversion.of(List.of(coal), names, List.of(), Optional.empty()));
        assertEquals(
                Optional.of("colour"),
                only(() -> Conversion.of(List.of(coal), names, List.of("color"), Optional.empty()))
                        .nearest());
        Vocabulary foreign = Vocabulary.builder(
                        "example.foreign",
                        "1",
                        Catalogue.builder("example.other", "1")
                                .trait("hue", "black", "brown")
                                .build())
                .facet(Facet.of("colour"))
                .build();
        assertEquals(
                "other-catalogue",
                only(() -> Conversion.of(List.of(coal), foreign, Optional.empty()))
                        .code());
        Conversion other = Conversion.of(List.of(coal), names, List.of("other", "colour", "colour"), Optional.empty());
        assertEquals(1, other.candidates().size());
        assertEquals(coal.set(), other.uncovered().get("other"));
    }

    @Test
    void nothing_can_be_unnamed_where_nothing_can_occur() {
        Vocabulary names = builder().build();
        assertThrows(
                IllegalArgumentException.class,
                () -> Unnamed.of(names, "colour", names.space().nothing(), Optional.empty()));
        assertThrows(
                IllegalArgumentException.class,
                () -> Unnamed.of(names, "color", names.space().everything(), Optional.empty()));
        assertThrows(ProblemsException.class, () -> names.setOf(List.of(Phenotype.of("hue", "blak"))));
        assertTrue(names.setOf(List.of()).isEmpty());
    }

    /** A vocabulary over many traits of two states. */
    private static VocabularyBuilder wide(int traits) {
        Catalogue.Builder catalogue = Catalogue.builder("example.wide", "1");
        for (int i = 0; i < traits; i++) {
            catalogue.trait("t" + i, "no", "yes", "so");
        }
        return Vocabulary.builder("example.wide.names", "1", catalogue.build())
                .facet(Facet.of("colour"))
                .facet(Facet.of("other"));
    }

    @Test
    void a_name_that_covers_too_many_looks_is_no_record() {
        Condition vague = Condition.always();
        for (int i = 0; i < 13; i++) {
            vague = vague.and("t" + i, Allowed.allBut("so"));
        }
        Condition look = vague;
        Vocabulary names = wide(40).name(
                        Name.of("vague", "colour").withSense(Sense.of("only").withLook("only", look)))
                .name(Name.of("wider", "colour")
                        .withSense(Sense.of("only").withLook("only", look.and("t13", Allowed.allBut("so")))))
                .build();
        Occasion unstated = Occasion.unstated();
        assertEquals(
                8_192,
                Meaning.of(names, "vague", unstated).evidence().orElseThrow().size());
        Meaning wider = Meaning.of(names, "wider", unstated);
        TooLargeException refused = assertThrows(TooLargeException.class, wider::evidence);
        assertEquals(16_384, refused.estimate());
    }

    @Test
    void too_many_names_of_whole_coats_are_refused() {
        VocabularyBuilder names = wide(60);
        for (int i = 0; i < 60; i++) {
            names.name(Name.of("name " + i, i % 2 == 0 ? "colour" : "other")
                    .withSense(Sense.of("only").withLook("only", Condition.where("t" + i, "yes"))));
        }
        names.facet(Facet.of("third"))
                .name(Name.of("a", "third").withSense(Sense.of("only").withLook("a", Condition.where("t0", "yes"))))
                .name(Name.of("b", "third").withSense(Sense.of("only").withLook("b", Condition.where("t0", "no"))))
                .name(Name.of("c", "third").withSense(Sense.of("only").withLook("c", Condition.where("t2", "no"))))
                .name(Name.of("d", "third").withSense(Sense.of("only").withLook("d", Condition.where("t4", "no"))))
                .name(Name.of("e", "third").withSense(Sense.of("only").withLook("e", Condition.where("t6", "no"))));
        Vocabulary built = names.build();
        List<Meaning> said = List.of(Meaning.of(built, "name 8", Occasion.unstated()));
        assertEquals(
                30 * 30,
                Conversion.of(said, built, List.of("colour", "other"), Optional.empty())
                        .candidates()
                        .size());
        assertThrows(
                TooLargeException.class,
                () -> Conversion.of(said, built, List.of("colour", "other", "third"), Optional.empty()));
    }

    @Test
    void the_smallest_reason_is_found_where_taking_the_most_telling_first_fails() {
        // Trait 0 rules out the most looks, but 1 and 2 together rule out all.
        assertEquals(
                BitSet.valueOf(new long[] {0b110}),
                SmallestReason.of(List.of(bits(0, 1), bits(0, 1), bits(0, 2), bits(0, 2), bits(1), bits(2))));
        assertEquals(BitSet.valueOf(new long[] {0b101}), SmallestReason.of(List.of(bits(0, 1), bits(2, 3))));
        assertThrows(IllegalArgumentException.class, () -> SmallestReason.of(List.of(bits(0), bits())));
    }

    @Test
    void a_reason_that_takes_too_long_to_find_is_refused() {
        List<BitSet> tangled = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            for (int j = i + 1; j < 60; j++) {
                tangled.add(bits(i, j, (i * 7 + j * 11) % 60));
            }
        }
        assertThrows(TooLargeException.class, () -> SmallestReason.of(tangled));
    }

    private static BitSet bits(int... numbers) {
        BitSet bits = new BitSet();
        for (int number : numbers) {
            bits.set(number);
        }
        return bits;
    }
}
