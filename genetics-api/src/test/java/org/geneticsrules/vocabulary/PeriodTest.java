package org.geneticsrules.vocabulary;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PeriodTest {

    @ParameterizedTest
    @CsvSource({
        "1985, 1985-01-01, 1985-12-31",
        "2009-06, 2009-06-01, 2009-06-30",
        "2000-02, 2000-02-01, 2000-02-29",
        "1900-02, 1900-02-01, 1900-02-28",
        "2009-06-07, 2009-06-07, 2009-06-07",
        "0000, 0000-01-01, 0000-12-31",
        "0987-12, 0987-12-01, 0987-12-31"
    })
    void a_date_means_all_its_days_and_reads_back(String text, LocalDate first, LocalDate last) {
        PartialDate date = PartialDate.parse(text);
        assertEquals(first, date.first());
        assertEquals(last, date.last());
        assertEquals(text, date.toString());
    }

    @Test
    void dates_are_made_from_numbers_and_days() {
        assertEquals("1985", PartialDate.of(1985).toString());
        assertEquals("1985-06", PartialDate.of(1985, 6).toString());
        assertEquals("1985-06-30", PartialDate.of(LocalDate.of(1985, 6, 30)).toString());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "85",
                "1985-6",
                "1985-13",
                "1985-00",
                "2009-02-29",
                "2009-06-31",
                "1985-06-1",
                "1985/06",
                "+1985"
            })
    void what_is_no_date_is_refused(String text) {
        assertThrows(IllegalArgumentException.class, () -> PartialDate.parse(text));
    }

    @Test
    void a_day_of_no_month_and_a_year_out_of_range_are_refused() {
        assertThrows(
                IllegalArgumentException.class, () -> new PartialDate(1985, OptionalInt.empty(), OptionalInt.of(1)));
        assertThrows(IllegalArgumentException.class, () -> PartialDate.of(10_000));
        assertThrows(IllegalArgumentException.class, () -> PartialDate.of(-1));
        assertThrows(IllegalArgumentException.class, () -> PartialDate.of(LocalDate.of(10_000, 1, 1)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"1985/2009-06", "1985/..", "../2009-06-30", "../.."})
    void a_period_reads_back(String text) {
        assertEquals(text, Period.parse(text).toString());
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "1985", "1985/2009/2010", "1985/", "/..", "1985-1990"})
    void what_is_no_period_is_refused(String text) {
        assertThrows(IllegalArgumentException.class, () -> Period.parse(text));
    }

    @ParameterizedTest
    @CsvSource({
        "1985/2009-06, 1984-12-31, false",
        "1985/2009-06, 1985-01-01, true",
        "1985/2009-06, 2009-06-30, true",
        "1985/2009-06, 2009-07-01, false",
        "1985/.., 2999-01-01, true",
        "../1985, 1985-12-31, true",
        "../1985, 1986-01-01, false",
        "../.., 0001-01-01, true"
    })
    void a_period_includes_its_first_and_last_day(String period, LocalDate day, boolean included) {
        assertEquals(included, Period.parse(period).includes(day));
        Optional<PartialDate> date = Optional.of(PartialDate.of(day));
        assertEquals(included, Period.parse(period).includes(date));
        assertEquals(included, Period.parse(period).meets(date));
    }

    @ParameterizedTest
    @CsvSource({
        "1985/2009-06, 2009, true, false",
        "1985/2009-06, 2009-06, true, true",
        "1985/2009-06, 2009-07, false, false",
        "1985/2009-06, 1985, true, true",
        "1985-01-02/.., 1985, true, false",
        "1985-01-02/.., 1985-01, true, false",
        "1985-01-02/.., 1985-02, true, true",
        "../2000-02-28, 2000-02, true, false",
        "../2001-02-28, 2001-02, true, true",
        "1985-03/1985-04, 1985, true, false",
        "1985-12-31/1986-01-01, 1985, true, false",
        "1985-12-31/1986-01-01, 1986, true, false",
        "1985-12-31/1986-01-01, 1987, false, false",
        "1990/1985, 1987, false, false",
        "../.., 1985, true, true"
    })
    void a_year_or_month_may_belong_to_a_period_in_part(String period, String date, boolean meets, boolean includes) {
        Optional<PartialDate> some = Optional.of(PartialDate.parse(date));
        assertEquals(meets, Period.parse(period).meets(some));
        assertEquals(includes, Period.parse(period).includes(some));
    }

    @ParameterizedTest
    @CsvSource({
        "1985/2009-06, from 1985 until 2009-06",
        "1985/.., from 1985 on",
        "../2009-06-30, until 2009-06-30",
        "../.., always"
    })
    void a_period_is_told_in_words(String period, String words) {
        assertEquals(words, Period.parse(period).inWords());
    }

    @ParameterizedTest
    @CsvSource({"1985, in 1985", "1985-06, in 1985-06", "1985-06-30, on 1985-06-30"})
    void a_date_is_told_in_words(String date, String words) {
        assertEquals(words, PartialDate.parse(date).inWords());
    }

    @Test
    void without_a_date_what_has_no_end_is_in_use() {
        assertTrue(Period.always().includes(Optional.empty()));
        assertTrue(Period.parse("1985/..").includes(Optional.empty()));
        assertFalse(Period.parse("1985/2999").includes(Optional.empty()));
        assertTrue(Period.parse("1985/..").meets(Optional.empty()));
        assertFalse(Period.parse("1985/2999").meets(Optional.empty()));
    }

    @ParameterizedTest
    @CsvSource({
        "1985/1990, 1990/1995, true",
        "1985/1990-06, 1990-06-30/.., true",
        "1985/1990-06, 1990-07/.., false",
        "../1985, 1985-12-31/.., true",
        "../1985, 1986/.., false",
        "../.., ../.., true",
        "1990/1985, ../.., false"
    })
    void periods_overlap_if_they_share_a_day(String one, String other, boolean overlap) {
        assertEquals(overlap, Period.parse(one).overlaps(Period.parse(other)));
        assertEquals(overlap, Period.parse(other).overlaps(Period.parse(one)));
    }

    @Test
    void a_period_that_ends_before_it_begins_is_empty() {
        assertTrue(Period.parse("1990/1985").isEmpty());
        assertFalse(Period.parse("1990/1990").isEmpty());
        assertFalse(Period.parse("1990-06/1990").isEmpty());
        assertFalse(Period.parse("../1985").isEmpty());
    }
}
