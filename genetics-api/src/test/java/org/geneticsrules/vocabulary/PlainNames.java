package org.geneticsrules.vocabulary;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * A vocabulary as plain lists and maps, from which both the library's own and its twin are made.
 *
 * @param states the states of each trait
 * @param judgeable the stage from which a trait can be told, for some
 * @param seasons the seasons; may be none
 * @param facets the facets
 * @param names the names
 */
record PlainNames(
        Map<String, List<String>> states,
        Map<String, From> judgeable,
        List<String> seasons,
        List<String> facets,
        List<Word> names) {

    /** A count of weeks or moults. */
    record From(boolean weeks, int count) {}

    /** A name. */
    record Word(String word, String facet, List<Reading> senses) {}

    /**
     * A sense; a look gives the allowed values of some variables.
     *
     * @param id its id
     * @param looks its looks
     * @param first first day of use
     * @param last last day of use
     * @param from the stage from which it is said
     */
    record Reading(
            String id,
            List<Map<String, Set<String>>> looks,
            Optional<Day> first,
            Optional<Day> last,
            Optional<From> from) {

        boolean isUsed(Day day) {
            return first.map(Day::number).orElse(0) <= day.number()
                    && day.number() <= last.map(Day::lastNumber).orElse(99_999_999);
        }

        /** Whether it is in use on some day of a date; without one, whether it has no end. */
        boolean isUsed(Optional<Day> date) {
            return date.map(some -> some.days().stream().anyMatch(this::isUsed)).orElse(last.isEmpty());
        }

        /** Whether it is in use on some days of a date, and not on others. */
        boolean isPartlyUsed(Optional<Day> date) {
            return isUsed(date)
                    && date.isPresent()
                    && !date.get().days().stream().allMatch(this::isUsed);
        }
    }

    /**
     * A day, or a month (day 0) or a year (month 0). As a first day of use it is the first that it may mean, as a last day the last.
     *
     * @param year the year
     * @param month the month, from 1 on, or 0
     * @param day the day, from 1 on, or 0
     */
    record Day(int year, int month, int day) {

        int number() {
            return 10_000 * year + 100 * month + day;
        }

        int lastNumber() {
            List<Day> days = days();
            return days.get(days.size() - 1).number();
        }

        /** Every day that this may mean. */
        List<Day> days() {
            List<Day> days = new ArrayList<>();
            for (int m = 1; m <= 12; m++) {
                for (int d = 1; d <= lengthOf(year, m); d++) {
                    if ((month == 0 || month == m) && (day == 0 || day == d)) {
                        days.add(new Day(year, m, d));
                    }
                }
            }
            return days;
        }

        private static int lengthOf(int year, int month) {
            if (month == 2) {
                return year % 4 == 0 && (year % 100 != 0 || year % 400 == 0) ? 29 : 28;
            }
            return month == 4 || month == 6 || month == 9 || month == 11 ? 30 : 31;
        }

        @Override
        public String toString() {
            return "%04d".formatted(year)
                    + (month == 0 ? "" : "-%02d".formatted(month))
                    + (day == 0 ? "" : "-%02d".formatted(day));
        }
    }

    /** Every variable with its values: the traits, the sex and, if there are any, the seasons. */
    Map<String, List<String>> variables() {
        Map<String, List<String>> all = new LinkedHashMap<>(states);
        all.put("sex", List.of("female", "male"));
        if (!seasons.isEmpty()) {
            all.put("season", seasons);
        }
        return all;
    }

    /** Everything that an animal can look like, in either sex and every season. */
    List<Map<String, String>> points() {
        List<Map<String, String>> points = new ArrayList<>();
        points.add(new LinkedHashMap<>());
        for (Map.Entry<String, List<String>> variable : variables().entrySet()) {
            List<Map<String, String>> longer = new ArrayList<>();
            for (Map<String, String> point : points) {
                for (String value : variable.getValue()) {
                    Map<String, String> more = new LinkedHashMap<>(point);
                    more.put(variable.getKey(), value);
                    longer.add(more);
                }
            }
            points = longer;
        }
        return points;
    }
}
