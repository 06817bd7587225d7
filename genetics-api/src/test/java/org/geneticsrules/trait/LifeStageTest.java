package org.geneticsrules.trait;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.OptionalInt;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LifeStageTest {

    @ParameterizedTest
    @CsvSource({
        "'moult 3, winter', 'moult 3, winter'",
        "' winter ,week 8,moult 1 ', 'week 8, moult 1, winter'",
        "week 0, week 0",
        "'', ''",
        "'  ', ''",
        "late summer, late summer"
    })
    void what_is_read_and_how_it_is_printed(String text, String printed) {
        assertEquals(printed, LifeStage.parse(text).toString());
    }

    @ParameterizedTest
    @ValueSource(strings = {"week 3 moult 4", "moult -1", "week 1234567890", "8", ",winter", "a1", "x,,y"})
    void what_is_no_stage(String text) {
        assertThrows(IllegalArgumentException.class, () -> LifeStage.parse(text));
    }

    @Test
    void a_word_is_a_season_known_or_not() {
        assertEquals(Optional.of("week"), LifeStage.parse("week").season());
    }

    @Test
    void counts_and_seasons_have_ranges() {
        assertThrows(IllegalArgumentException.class, () -> LifeStage.atWeek(-1));
        assertThrows(IllegalArgumentException.class, () -> LifeStage.atMoult(1_000_000_000));
        assertThrows(IllegalArgumentException.class, () -> LifeStage.atBirth().in("week 3"));
        assertThrows(IllegalArgumentException.class, () -> LifeStage.atBirth().in(""));
        assertEquals(
                OptionalInt.of(LifeStage.MOST),
                LifeStage.parse("week 999999999").weeks());
        assertEquals(OptionalInt.of(0), LifeStage.atBirth().count(Clock.WEEK));
        assertEquals(OptionalInt.empty(), LifeStage.atWeek(4).count(Clock.MOULT));
    }

    @Test
    void a_stage_is_before_another_by_a_count_that_both_state() {
        assertTrue(LifeStage.atWeek(3).isBefore(LifeStage.atWeek(4)));
        assertFalse(LifeStage.atWeek(4).isBefore(LifeStage.atWeek(4)));
        assertFalse(LifeStage.atWeek(3).isBefore(LifeStage.atMoult(4)));
        assertTrue(LifeStage.atBirth().isBefore(LifeStage.atMoult(1)));
        assertFalse(LifeStage.unstated().isBefore(LifeStage.atBirth()));
    }

    static void textReadsBack(LifeStage stage) {
        assertEquals(stage, LifeStage.parse(stage.toString()));
    }

    @Property
    void text(@ForAll("stages") LifeStage stage) {
        textReadsBack(stage);
    }

    @Provide
    Arbitrary<LifeStage> stages() {
        Arbitrary<Optional<Integer>> counts =
                Arbitraries.integers().between(0, LifeStage.MOST).optional();
        Arbitrary<Optional<String>> seasons = Arbitraries.of("winter", "late summer", "d\u00e9but-printemps", "week")
                .optional();
        return Combinators.combine(counts, counts, seasons)
                .as((weeks, moult, season) -> new LifeStage(optional(weeks), optional(moult), season));
    }

    private static OptionalInt optional(Optional<Integer> count) {
        return count.map(OptionalInt::of).orElse(OptionalInt.empty());
    }
}
