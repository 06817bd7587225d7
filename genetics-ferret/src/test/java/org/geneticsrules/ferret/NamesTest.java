package org.geneticsrules.ferret;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.trait.BoxSet;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.vocabulary.Conversion;
import org.geneticsrules.vocabulary.Match;
import org.geneticsrules.vocabulary.Meaning;
import org.geneticsrules.vocabulary.Name;
import org.geneticsrules.vocabulary.Naming;
import org.geneticsrules.vocabulary.Naming.Standing;
import org.geneticsrules.vocabulary.Occasion;
import org.geneticsrules.vocabulary.PartialDate;
import org.geneticsrules.vocabulary.Sense;
import org.geneticsrules.vocabulary.Unnamed;
import org.geneticsrules.vocabulary.Vocabulary;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The names that people of three regions say. What each clash of names comes to (clashes.csv) was worked out by a program that counts out
 * all states of the traits that both names read, and shares nothing with the library; the senses themselves are graded and sourced in the
 * documents.
 */
class NamesTest {

    /** Standard sable without white marks, from which the examples depart. */
    private static final Map<String, String> BASE = Phenotype.parse("hue: black, dilution: full, eye colour: dark, "
                    + "white guard hairs: none, trunk suppression: absent, trunk depth: standard, mask: full, "
                    + "history of white: unknown, head white: none, throat: none, belly: none, knees: none, tail tip: none, "
                    + "body patches: none, coat length: normal, undercoat trunk: cream, "
                    + "pigmented length trunk: outer half or more, chin: coloured, left front foot: none, "
                    + "right front foot: none, left hind foot: none, right hind foot: none")
            .asMap();

    /** What is no part of any name, by common practice: nobody names a ferret by these. */
    private static final Set<String> NEVER_NAMED =
            Set.of("pads", "staining", "hearing left ear", "hearing right ear", "chin");

    static List<Vocabulary> vocabularies() {
        return Ferret.REGISTRY.vocabularies(Ferret.catalogue());
    }

    static Stream<Map<String, String>> clashes() {
        return Csv.rows(Ferret.CHECKS.resolve("clashes.csv")).stream();
    }

    @ParameterizedTest
    @MethodSource("vocabularies")
    void at_least_25_names_of_each_region_are_attested_twice(Vocabulary vocabulary) {
        long twice = vocabulary.names().values().stream()
                .filter(name -> name.senses().values().stream()
                        .anyMatch(sense -> vocabulary.grade(name, sense) == Grade.PRACTICE))
                .count();
        assertTrue(twice >= 25, vocabulary + " has " + twice);
    }

    @Test
    void three_regions_have_at_least_25_names_each() {
        assertEquals(
                Set.of("British Isles", "Continental Europe", "North America"),
                new HashSet<>(vocabularies().stream()
                        .map(one -> one.region().orElseThrow())
                        .toList()));
        for (Vocabulary one : vocabularies()) {
            assertTrue(one.names().size() >= 25, one + " has " + one.names().size());
        }
    }

    @ParameterizedTest
    @MethodSource("vocabularies")
    void each_sense_allows_a_look_and_excludes_one(Vocabulary vocabulary) {
        senses(vocabulary, (name, sense) -> {
            BoxSet meant = meant(vocabulary, sense);
            String which = name + ", " + sense.id();
            assertFalse(meant.isEmpty(), which);
            assertFalse(vocabulary.space().everything().minus(meant).isEmpty(), which);
        });
    }

    @ParameterizedTest
    @MethodSource("vocabularies")
    void every_sense_has_a_source_and_practice_has_two(Vocabulary vocabulary) {
        senses(vocabulary, (name, sense) -> {
            List<String> sources = vocabulary.support(name, sense).orElseThrow().sources();
            int distinct = new HashSet<>(sources).size();
            int least = vocabulary.grade(name, sense) == Grade.PRACTICE ? 2 : 1;
            assertTrue(distinct >= least, name + ", " + sense.id() + " has " + sources);
            assertEquals(sources.size(), distinct, name + ", " + sense.id() + " counts a source twice");
        });
    }

    @ParameterizedTest
    @MethodSource("vocabularies")
    void pads_staining_hearing_and_chin_are_no_part_of_a_name(Vocabulary vocabulary) {
        NEVER_NAMED.forEach(trait -> assertTrue(vocabulary.catalogue().traits().containsKey(trait), trait));
        senses(
                vocabulary,
                (name, sense) -> sense.looks()
                        .values()
                        .forEach(look -> NEVER_NAMED.forEach(
                                trait -> assertFalse(look.variables().containsKey(trait), name + " reads " + trait))));
    }

    @ParameterizedTest
    @MethodSource("clashes")
    void names_clash_as_the_list_says(Map<String, String> row) {
        Vocabulary firstIn = vocabulary(cell(row, "first vocabulary"));
        Vocabulary secondIn = vocabulary(cell(row, "second vocabulary"));
        BoxSet first = meant(firstIn, sense(firstIn, cell(row, "first name"), cell(row, "first sense")));
        BoxSet second = meant(secondIn, sense(secondIn, cell(row, "second name"), cell(row, "second sense")));
        BoxSet example = firstIn.setOf(List.of(Phenotype.from(departing(cell(row, "example")))));
        String message = cell(row, "clash");
        assertEquals(cell(row, "relation"), Match.of(first, second).word(), message);
        assertEquals(mirrored(cell(row, "relation")), Match.of(second, first).word(), message);
        assertEquals("yes".equals(cell(row, "first")), belongs(example, first), message + ": the first");
        assertEquals("yes".equals(cell(row, "second")), belongs(example, second), message + ": the second");
    }

    @Test
    void the_list_of_clashes_is_long_and_has_every_relation() {
        assertTrue(clashes().count() >= 60);
        assertEquals(
                new TreeSet<>(List.of("exact", "broader", "narrower", "overlapping", "none")),
                new TreeSet<>(clashes().map(row -> cell(row, "relation")).toList()));
    }

    @ParameterizedTest
    @MethodSource("vocabularies")
    void white_on_the_chin_alone_is_unnamed(Vocabulary vocabulary) {
        Naming naming = Naming.of(
                vocabulary,
                Phenotype.from(departing("chin: white")),
                Occasion.unstated().at(winter(2)));
        for (String facet : List.of("white marks", "whole coat")) {
            if (!vocabulary.facets().containsKey(facet)) {
                continue;
            }
            for (Naming.OfName one : naming.facet(facet).names()) {
                assertEquals(Standing.EXCLUDED, one.standing(), one.name()::toString);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({
        "continental-europe, self, 2",
        "continental-europe, solid, 2",
        "continental-europe, siamois, 2",
        "continental-europe, pearl, 2",
        "continental-europe, badger, 2",
        "continental-europe, putoisé, 3",
        "continental-europe, zibeline, 3",
        "continental-europe, cannelle, 2",
        "continental-europe, mitts, 2",
        "continental-europe, rouan, 2",
        "continental-europe, sandy, 2",
        "north-america, cinnamon, 2",
        "north-america, mitts, 2",
        "british-isles, sandy, 2",
        "british-isles, fitch, 2",
        "british-isles, white, 2",
        "british-isles, coloured, 2",
        "british-isles, black-eyed white, 2",
        "continental-europe, Harlekin, 3",
        "continental-europe, chocolat, 2",
        "continental-europe, pastel, 3",
        "continental-europe, black-eyed white, 2",
        "north-america, Siamese, 2",
        "north-america, roan, 2",
        "north-america, black, 2",
        "north-america, black-eyed white, 2"
    })
    void some_names_have_several_senses_and_say_so(String id, String word, int senses) {
        Meaning meaning = Meaning.of(
                vocabulary(id), word, Occasion.unstated().at(winter(2)).on(LocalDate.of(2020, 1, 15)));
        assertEquals(senses, meaning.readings().size());
        assertTrue(meaning.notices().stream().anyMatch(notice -> notice.contains("is ambiguous")), meaning::toString);
    }

    @Test
    void a_name_without_date_and_season_is_weak_evidence_and_says_so() {
        Vocabulary continent = vocabulary("continental-europe");
        List<String> notices =
                Meaning.of(continent, "Iltis", Occasion.unstated()).notices();
        assertTrue(notices.stream().anyMatch(notice -> notice.contains("without a date")), notices::toString);
        assertEquals(
                List.of(),
                Meaning.of(continent, "Iltis", Occasion.unstated().at(winter(2)).on(LocalDate.of(2020, 1, 15)))
                        .notices());
    }

    @Test
    void a_class_renamed_long_ago_is_found_by_its_date() {
        Vocabulary america = vocabulary("north-america");
        LocalDate before = LocalDate.of(1997, 6, 1);
        LocalDate after = LocalDate.of(2005, 6, 1);
        Phenotype striped = Phenotype.from(departing("head white: narrow stripe"));
        assertTrue(certain(america, striped, before).containsAll(Set.of("shetland", "blaze")));
        assertTrue(certain(america, striped, after).contains("blaze"));
        assertFalse(certain(america, striped, after).contains("shetland"));
        Conversion renamed = Conversion.of(
                List.of(Meaning.of(america, "shetland", Occasion.unstated().on(before))),
                america,
                Optional.of(PartialDate.of(after)));
        assertTrue(
                renamed.candidates().stream()
                        .filter(one -> one.match() == Match.EXACT)
                        .flatMap(one -> one.names().stream())
                        .anyMatch(name -> name.word().equals("blaze")),
                renamed.candidates()::toString);
    }

    @Test
    void of_the_year_in_which_a_class_was_renamed_its_old_name_is_only_possible() {
        Vocabulary america = vocabulary("north-america");
        Phenotype striped = Phenotype.from(departing("head white: narrow stripe"));
        for (String date : List.of("1996", "1997-11", "1997", "1998")) {
            Optional<Standing> standing = Naming.of(
                            america, striped, Occasion.unstated().at(winter(2)).on(PartialDate.parse(date)))
                    .facet("white marks")
                    .names()
                    .stream()
                    .filter(one -> one.name().word().equals("shetland"))
                    .map(Naming.OfName::standing)
                    .findFirst();
            Optional<Standing> expected = switch (date) {
                case "1997" -> Optional.of(Standing.POSSIBLE);
                case "1998" -> Optional.empty();
                default -> Optional.of(Standing.CERTAIN);
            };
            assertEquals(expected, standing, date);
        }
        List<String> notices = Meaning.of(
                        america, "shetland", Occasion.unstated().at(winter(2)).on(PartialDate.of(1997)))
                .notices();
        assertTrue(
                notices.stream().anyMatch(notice -> notice.contains("\"shetland\" (usual) until 1997-11")),
                notices::toString);
    }

    @Test
    void a_class_of_the_italian_list_is_a_name_only_since_2001() {
        Vocabulary continent = vocabulary("continental-europe");
        Phenotype standard = Phenotype.from(BASE);
        assertFalse(certain(continent, standard, LocalDate.of(1999, 6, 1)).contains("zibellino"));
        assertTrue(certain(continent, standard, LocalDate.of(2010, 6, 1)).contains("zibellino"));
        assertEquals(
                1,
                Meaning.of(continent, "sandy", Occasion.unstated().on(LocalDate.of(1999, 6, 1)))
                        .readings()
                        .size());
    }

    @Test
    void a_mask_of_winter_has_another_name_in_summer() {
        Vocabulary continent = vocabulary("continental-europe");
        LocalDate day = LocalDate.of(2020, 1, 15);
        String nearSolid = "trunk depth: near-solid, mask: ";
        Set<String> winter = certain(continent, Phenotype.from(departing(nearSolid + "V")), day);
        Set<String> summer = certain(continent, Phenotype.from(departing(nearSolid + "full")), day);
        assertTrue(winter.containsAll(Set.of("masque en V", "self")), winter::toString);
        assertTrue(summer.containsAll(Set.of("masque plein", "self")), summer::toString);
    }

    @ParameterizedTest
    @MethodSource("vocabularies")
    void silver_is_not_to_be_judged_before_the_first_moult(Vocabulary vocabulary) {
        Phenotype silver = Phenotype.from(departing("white guard hairs: about half"));
        Naming young = Naming.of(
                vocabulary,
                silver,
                Occasion.unstated().at(new LifeStage(OptionalInt.of(6), OptionalInt.of(0), Optional.empty())));
        assertTrue(young.told().state("white guard hairs").isEmpty());
        Naming grown = Naming.of(vocabulary, silver, Occasion.unstated().at(winter(2)));
        assertEquals(Optional.of("about half"), grown.told().state("white guard hairs"));
    }

    private static LifeStage winter(int moult) {
        return new LifeStage(OptionalInt.of(40 * moult), OptionalInt.of(moult), Optional.of("winter"));
    }

    private static Set<String> certain(Vocabulary vocabulary, Phenotype seen, LocalDate day) {
        Set<String> words = new LinkedHashSet<>();
        Naming.of(vocabulary, seen, Occasion.unstated().at(winter(2)).on(day))
                .facets()
                .forEach(facet -> facet.of(Standing.CERTAIN)
                        .forEach(one -> words.add(one.name().word())));
        return words;
    }

    private interface OfSense {
        void check(Name name, Sense sense);
    }

    private static void senses(Vocabulary vocabulary, OfSense each) {
        for (Name name : vocabulary.names().values()) {
            name.senses().values().forEach(sense -> each.check(name, sense));
        }
    }

    private static Vocabulary vocabulary(String id) {
        return vocabularies().stream()
                .filter(one -> one.id().equals("geneticsrules.ferret.names." + id))
                .findFirst()
                .orElseThrow();
    }

    private static Sense sense(Vocabulary vocabulary, String word, String sense) {
        Name name = Objects.requireNonNull(vocabulary.names().get(word), word);
        return Objects.requireNonNull(name.senses().get(sense), word + ", " + sense);
    }

    private static BoxSet meant(Vocabulary vocabulary, Sense sense) {
        BoxSet all = vocabulary.space().nothing();
        for (Condition look : sense.looks().values()) {
            all = all.or(vocabulary.space().ofDisjoint(List.of(look)));
        }
        return all;
    }

    /** An example says all that the senses read, so it lies within a sense or outside of it. */
    private static boolean belongs(BoxSet example, BoxSet sense) {
        boolean within = example.minus(sense).isEmpty();
        assertTrue(within || example.and(sense).isEmpty(), "the example leaves it open");
        return within;
    }

    private static Map<String, String> departing(String example) {
        Map<String, String> states = new LinkedHashMap<>(BASE);
        if (!example.isEmpty()) {
            states.putAll(Phenotype.parse(example).asMap());
        }
        return states;
    }

    private static String cell(Map<String, String> row, String column) {
        return Objects.requireNonNull(row.get(column), column);
    }

    private static String mirrored(String relation) {
        return relation.equals("broader") ? "narrower" : relation.equals("narrower") ? "broader" : relation;
    }

    /**
     * The classes counted are the looks that the default model can show, in the traits that the names of the colour facet read and the model
     * speaks of, in winter or summer, after none to three moults; each counts once, however rare it is. A class is named if a name of the
     * colour facet in use today covers it, whatever pattern and marks it has besides. The last column counts only senses that are graded
     * practice or better, so it tells how much hangs on words attested once.
     */
    @ParameterizedTest
    @CsvSource({"british-isles, 1128, 0, 150", "continental-europe, 228, 0, 0", "north-america, 228, 0, 1"})
    void at_most_a_fifth_of_the_colours_that_can_be_seen_is_unnamed(
            String id, int classes, int unnamed, int unnamedInPractice) {
        Vocabulary vocabulary = vocabulary(id);
        Set<Phenotype> looks = visible(vocabulary);
        BoxSet visible = vocabulary.setOf(looks);
        BoxSet left =
                Unnamed.of(vocabulary, "colour", visible, Optional.empty()).unnamed();
        BoxSet attestedOnce = visible;
        for (Name name : vocabulary.names("colour")) {
            for (Sense sense : name.inUse(Optional.empty())) {
                if (vocabulary.grade(name, sense) != Grade.CONJECTURE) {
                    attestedOnce = attestedOnce.minus(meant(vocabulary, sense));
                }
            }
        }
        BoxSet once = attestedOnce;
        assertEquals(
                List.of(classes, unnamed, unnamedInPractice),
                List.of(looks.size(), classes(left, visible, looks.size()), classes(once, visible, looks.size())),
                () -> "without a name: " + left + "; without one that is attested twice: " + once);
        assertTrue(5 * unnamed <= classes, () -> "without a name: " + left);
    }

    /** As every look counted says the same traits, each stands for equally many points. */
    private static int classes(BoxSet part, BoxSet whole, int looks) {
        BigInteger[] found = part.size().multiply(BigInteger.valueOf(looks)).divideAndRemainder(whole.size());
        assertEquals(BigInteger.ZERO, found[1], "whole classes");
        return found[0].intValueExact();
    }

    private static Set<Phenotype> visible(Vocabulary vocabulary) {
        Set<String> read = new TreeSet<>();
        for (Name name : vocabulary.names("colour")) {
            name.senses()
                    .values()
                    .forEach(sense -> sense.looks()
                            .values()
                            .forEach(look -> read.addAll(look.variables().keySet())));
        }
        read.retainAll(Ferret.common().visibleTraits());
        CompiledModel compiled = Ferret.compiled();
        Set<Phenotype> looks = new LinkedHashSet<>();
        for (String season : Ferret.catalogue().seasons()) {
            for (int moult = 0; moult <= 3; moult++) {
                looks.addAll(compiled.diagram(
                                View.of(read).at(LifeStage.atMoult(moult).in(season)))
                        .outcomes());
            }
        }
        looks.forEach(look -> assertEquals(read, look.traits(), "no class is left open"));
        return looks;
    }
}
