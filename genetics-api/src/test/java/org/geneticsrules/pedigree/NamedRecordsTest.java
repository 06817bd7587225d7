package org.geneticsrules.pedigree;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.geneticsrules.document.Reference;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.pedigree.NamedRecords.Reading;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.table.PedigreeTable;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Trait;
import org.geneticsrules.vocabulary.Facet;
import org.geneticsrules.vocabulary.Name;
import org.geneticsrules.vocabulary.Period;
import org.geneticsrules.vocabulary.Sense;
import org.geneticsrules.vocabulary.Vocabulary;
import org.junit.jupiter.api.Test;

/** Names that animals were called by, read as records of their looks. Traits and names are invented. */
class NamedRecordsTest {

    private static final Catalogue TRAITS = traits();

    private static final Vocabulary NORTH = Vocabulary.builder("invented.names.north", "1", TRAITS)
            .region("The North")
            .facet(Facet.of("colour"))
            .facet(Facet.of("marks"))
            .name(Name.of("dove", "colour")
                    .withSense(Sense.of("old")
                            .withLook("pale", Condition.where("hue", "grey", "pale"))
                            .withPeriod(Period.parse("../2000")))
                    .withSense(Sense.of("new")
                            .withLook("pale", Condition.where("hue", "pale"))
                            .withPeriod(Period.parse("2001/.."))))
            .name(Name.of("frost", "marks")
                    .withSense(Sense.of("only")
                            .withLook("white", Condition.where("white", "much"))
                            .withJudgeableFrom(LifeStage.atMoult(1))))
            .name(Name.of("star", "colour")
                    .withSense(Sense.of("only").withLook("grey", Condition.where("hue", "grey"))))
            .name(Name.of("white star", "marks")
                    .withSynonyms("star")
                    .withSense(Sense.of("only").withLook("white", Condition.where("white", "some"))))
            .name(Name.of("lady", "colour")
                    .withSense(Sense.of("only")
                            .withLook("grey", Condition.where("hue", "grey").and("sex", "female"))))
            .name(Name.of("odd", "marks").withSense(odd()))
            .build();

    private static final Vocabulary SOUTH = Vocabulary.builder("invented.names.south", "1", TRAITS)
            .facet(Facet.of("colour"))
            .name(Name.of("dove", "colour")
                    .withSense(Sense.of("only").withLook("black", Condition.where("hue", "black"))))
            .build();

    private static Catalogue traits() {
        Catalogue.Builder traits = Catalogue.builder("invented.traits", "1")
                .lights("daylight", "lamplight")
                .trait(Trait.of("hue", "black", "grey", "pale").judgeableIn(List.of("daylight")))
                .trait("white", "none", "some", "much")
                .seasons("summer", "winter");
        IntStream.range(0, 14).forEach(i -> traits.trait("spot " + i, "no", "yes"));
        return traits.build();
    }

    /** Not all of fourteen spots: 16383 looks. */
    private static Sense odd() {
        Sense sense = Sense.of("only");
        for (int i = 0; i < 14; i++) {
            sense = sense.withLook("without " + i, Condition.where("spot " + i, "no"));
        }
        return sense;
    }

    private static Pedigree of(Individual... animals) {
        PedigreeBuilder builder = Pedigree.builder("kennel", "1");
        for (Individual one : animals) {
            builder.add(one);
        }
        return builder.build();
    }

    private static NamedRecords read(CalledName... names) {
        Individual kit = Individual.of("Kit");
        for (CalledName name : names) {
            kit = kit.with(name);
        }
        return NamedRecords.of(of(kit), List.of(NORTH, SOUTH));
    }

    private static List<Problem> problems(CalledName... names) {
        return assertThrows(ProblemsException.class, () -> read(names)).problems();
    }

    @Test
    void a_name_says_what_it_meant_on_the_day() {
        CalledName then =
                CalledName.of("dove", "the north").on(LocalDate.of(1998, 11, 2)).at(LifeStage.atMoult(2));
        CalledName now = CalledName.of("Dove", "north").on(LocalDate.of(2024, 1, 1));
        NamedRecords read = read(then, now);
        Set<Phenotype> pale = Set.of(Phenotype.of("hue", "pale"));
        assertEquals(
                List.of(
                        new Observation(
                                Optional.of(LocalDate.of(1998, 11, 2)),
                                LifeStage.atMoult(2),
                                Set.of(Phenotype.of("hue", "grey"), Phenotype.of("hue", "pale")),
                                Optional.empty(),
                                Optional.empty(),
                                Optional.of(then)),
                        new Observation(
                                Optional.of(LocalDate.of(2024, 1, 1)),
                                now.stage(),
                                pale,
                                Optional.empty(),
                                Optional.empty(),
                                Optional.of(now))),
                read.pedigree().individual("Kit").observations());
        assertEquals(
                new Reading("Kit", 1, now, "The North", Optional.of(pale), List.of(), Grade.CONJECTURE),
                read.of("Kit").get(1));
        assertEquals(List.of(), read.of("somebody else"));
        assertEquals(2, read.readings().size());
    }

    @Test
    void without_a_date_it_may_mean_all_that_it_ever_did_and_that_is_told() {
        Reading reading = read(CalledName.of("dove", "The North")).of("Kit").get(0);
        assertEquals(2, reading.looks().orElseThrow().size());
        assertEquals(2, reading.notices().size());
        assertTrue(
                reading.notices().get(0).contains("without a date"),
                reading.notices().toString());
        assertTrue(
                reading.notices().get(1).contains("ambiguous"),
                reading.notices().toString());
    }

    @Test
    void what_says_nothing_is_kept_and_told() {
        NamedRecords read =
                read(CalledName.of("frost", "The North").at(LifeStage.atMoult(0)), CalledName.of("frost", "The North"));
        Reading early = read.of("Kit").get(0);
        assertEquals(Optional.empty(), early.looks());
        assertTrue(early.notices().stream().anyMatch(one -> one.contains("cannot be said before moult 1")));
        assertEquals(1, read.pedigree().individual("Kit").observations().size());
        assertEquals(2, read.pedigree().individual("Kit").names().size());
        NamedRecords male = NamedRecords.of(
                of(Individual.of("Hob", Sex.MALE).with(CalledName.of("lady", "The North"))), List.of(NORTH));
        assertEquals(Optional.empty(), male.of("Hob").get(0).looks());
        assertTrue(male.of("Hob").get(0).notices().toString().contains("tells nothing"));
    }

    @Test
    void light_and_observer_go_with_the_name_and_who_said_it_is_told_to_nobody() {
        CalledName name = CalledName.of("dove", "south").in("lamplight").by("A. Keeper");
        Observation seen =
                read(name).pedigree().individual("Kit").observations().get(0);
        assertEquals(Optional.of("lamplight"), seen.light());
        assertEquals(Optional.of("A. Keeper"), seen.observer());
        assertEquals("\"dove\" (south, in lamplight)", name.toString());
        assertEquals(
                "\"star\" (north, marks, 1998-11-02, at moult 2)",
                CalledName.of("star", "north")
                        .ofFacet("marks")
                        .on(LocalDate.of(1998, 11, 2))
                        .at(LifeStage.atMoult(2))
                        .by("B")
                        .toString());
    }

    @Test
    void everything_wrong_with_any_name_is_told_at_once_and_where() {
        List<Problem> found = problems(
                CalledName.of("dove", "The Nroth"),
                CalledName.of("dov", "The North"),
                CalledName.of("star", "The North"),
                CalledName.of("star", "The North").ofFacet("mark"),
                CalledName.of("dove", "south").in("lamp light"),
                CalledName.of("dove", "south").at(LifeStage.unstated().in("autumn")),
                CalledName.of("odd", "The North"));
        assertEquals(
                List.of(
                        "unknown-vocabulary /individuals/Kit/names/0/vocabulary The North",
                        "unknown-name /individuals/Kit/names/1/word dove",
                        "several-facets /individuals/Kit/names/2/facet ",
                        "unknown-facet /individuals/Kit/names/3/facet marks",
                        "unknown-light /individuals/Kit/names/4/light lamplight",
                        "unknown-season /individuals/Kit/names/5/stage/season ",
                        "too-many-looks /individuals/Kit/names/6/word "),
                found.stream()
                        .map(one -> one.code() + " " + one.pointer() + " "
                                + one.nearest().orElse(""))
                        .toList());
        assertEquals(
                "\"odd\" covers about 16383 looks, more than the 10000 that a record may list",
                found.get(6).message());
        assertEquals(
                Set.of(Phenotype.of("white", "some")),
                read(CalledName.of("star", "The North").ofFacet("marks"))
                        .of("Kit")
                        .get(0)
                        .looks()
                        .orElseThrow());
    }

    @Test
    void a_name_that_nobody_said_then_is_a_problem_of_its_date() {
        Vocabulary late = Vocabulary.builder("late", "1", TRAITS)
                .facet(Facet.of("colour"))
                .name(Name.of("dove", "colour")
                        .withSense(Sense.of("new")
                                .withLook("pale", Condition.where("hue", "pale"))
                                .withPeriod(Period.parse("2001/.."))))
                .build();
        Individual kit = Individual.of("Kit").with(CalledName.of("dove", "late").on(LocalDate.of(1990, 1, 1)));
        ProblemsException refused =
                assertThrows(ProblemsException.class, () -> NamedRecords.of(of(kit), List.of(late)));
        assertEquals("not-in-use", refused.problems().get(0).code());
        assertEquals("/individuals/Kit/names/0/date", refused.problems().get(0).pointer());
    }

    @Test
    void of_two_vocabularies_of_one_name_none_is_chosen() {
        Vocabulary again = Vocabulary.builder("invented.names.south", "2", TRAITS)
                .facet(Facet.of("colour"))
                .name(Name.of("dove", "colour")
                        .withSense(Sense.of("only").withLook("grey", Condition.where("hue", "grey"))))
                .build();
        Individual kit = Individual.of("Kit").with(CalledName.of("dove", "south"));
        ProblemsException refused =
                assertThrows(ProblemsException.class, () -> NamedRecords.of(of(kit), List.of(SOUTH, again)));
        assertEquals("several-vocabularies", refused.problems().get(0).code());
        Pedigree elsewhere = Pedigree.builder("kennel", "1")
                .catalogue(Reference.of("other.traits", "1"))
                .add(kit)
                .build();
        ProblemsException other =
                assertThrows(ProblemsException.class, () -> NamedRecords.of(elsewhere, List.of(SOUTH)));
        assertEquals("other-catalogue", other.problems().get(0).code());
    }

    @Test
    void what_was_read_is_read_anew_and_never_written_down() {
        Individual kit = Individual.of("Kit")
                .with(CalledName.of("dove", "south"))
                .with(Observation.of(LifeStage.atMoult(1), Phenotype.of("white", "some")));
        Pedigree stated = of(kit);
        NamedRecords read = NamedRecords.of(stated, List.of(SOUTH));
        assertEquals(stated, read.stated());
        assertEquals(2, read.pedigree().individual("Kit").observations().size());
        assertEquals(
                read.pedigree(),
                NamedRecords.of(read.pedigree(), List.of(SOUTH)).pedigree());
        assertEquals(PedigreeDocument.of(stated), PedigreeDocument.of(read.pedigree()));
        assertEquals(PedigreeTable.write(stated), PedigreeTable.write(read.pedigree()));
        Pedigree silent = of(Individual.of("Kit"));
        assertSame(silent, NamedRecords.of(silent, List.of()).pedigree(), "nothing to read is nothing to copy");
    }

    @Test
    void names_are_corrected_as_other_records_are() {
        Pedigree stated = of(Individual.of("Kit").with(CalledName.of("dove", "south")));
        Individual right = Individual.of("Kit").with(CalledName.of("dove", "The North"));
        Pedigree corrected = stated.corrected(new Correction(
                LocalDate.of(2020, 1, 1), Optional.empty(), "the card says so", List.of(stated.change(right))));
        assertEquals(stated, corrected.beforeLastCorrection());
        assertEquals(
                "The North",
                NamedRecords.of(corrected, List.of(NORTH, SOUTH))
                        .of("Kit")
                        .get(0)
                        .whose());
        assertFalse(NamedRecords.of(corrected, List.of(NORTH, SOUTH))
                .stated()
                .corrections()
                .isEmpty());
    }

    @Test
    void a_name_said_before_birth_is_refused() {
        Individual kit = Individual.of("Kit")
                .bornOn(LocalDate.of(2020, 5, 1))
                .with(CalledName.of("dove", "south").on(LocalDate.of(2019, 5, 1)));
        ProblemsException refused = assertThrows(ProblemsException.class, () -> of(kit));
        assertEquals("/individuals/Kit/names/0/date", refused.problems().get(0).pointer());
        assertThrows(IllegalArgumentException.class, () -> CalledName.of("", "south"));
        assertThrows(
                IllegalArgumentException.class,
                () -> CalledName.of("dove", "south").in("a;b"));
    }
}
