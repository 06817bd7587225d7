package org.geneticsrules.vocabulary;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.Year;
import java.time.YearMonth;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A date as people remember it: a year, a month of a year, or a day (ISO 8601, with reduced precision where less is known).
 *
 * <pre>{@code
 * PartialDate.parse("2009-02").last();   // 2009-02-28
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 *
 * @param year the year, 0 to 9999
 * @param month the month, 1 to 12, if it is known
 * @param day the day of the month, if it is known; only with a month
 */
public record PartialDate(int year, OptionalInt month, OptionalInt day) {

    private static final int LAST_YEAR = 9999;

    private static final Pattern TEXT = Pattern.compile("([0-9]{4})(?:-([0-9]{2})(?:-([0-9]{2}))?)?");

    /**
     * Checks that there is such a date.
     *
     * @param year the year
     * @param month the month
     * @param day the day of the month
     * @throws IllegalArgumentException if a number is out of its range, the calendar has no such day, or there is a day and no month
     */
    public PartialDate {
        if (year < 0 || year > LAST_YEAR) {
            throw new IllegalArgumentException("a year is 0 to " + LAST_YEAR + ", but was " + year);
        }
        if (day.isPresent() && month.isEmpty()) {
            throw new IllegalArgumentException("day " + day.getAsInt() + " of no month");
        }
        try {
            LocalDate.of(year, month.orElse(1), day.orElse(1));
        } catch (DateTimeException e) {
            throw new IllegalArgumentException("there is no " + text(year, month, day), e);
        }
    }

    /**
     * Returns a year.
     *
     * @param year the year, 0 to 9999
     * @return the date
     * @throws IllegalArgumentException if the year is out of its range
     */
    public static PartialDate of(int year) {
        return new PartialDate(year, OptionalInt.empty(), OptionalInt.empty());
    }

    /**
     * Returns a month.
     *
     * @param year the year, 0 to 9999
     * @param month the month, 1 to 12
     * @return the date
     * @throws IllegalArgumentException if one is out of its range
     */
    public static PartialDate of(int year, int month) {
        return new PartialDate(year, OptionalInt.of(month), OptionalInt.empty());
    }

    /**
     * Returns a day.
     *
     * @param date the day
     * @return the date
     * @throws IllegalArgumentException if its year is out of its range
     */
    public static PartialDate of(LocalDate date) {
        return new PartialDate(
                date.getYear(), OptionalInt.of(date.getMonthValue()), OptionalInt.of(date.getDayOfMonth()));
    }

    /**
     * Reads {@code 1985}, {@code 1985-06} or {@code 1985-06-30}.
     *
     * @param text the text form
     * @return the date
     * @throws IllegalArgumentException if the text is none of these, or there is no such date
     */
    public static PartialDate parse(String text) {
        Matcher parts = TEXT.matcher(text);
        if (!parts.matches()) {
            throw new IllegalArgumentException("\"" + text
                    + "\" is no date; expected a year, a month or a day, such as 1985, 1985-06 or 1985-06-30");
        }
        return new PartialDate(Integer.parseInt(parts.group(1)), number(parts.group(2)), number(parts.group(3)));
    }

    private static OptionalInt number(@Nullable String digits) {
        return digits == null ? OptionalInt.empty() : OptionalInt.of(Integer.parseInt(digits));
    }

    /**
     * Returns the day, if it is known.
     *
     * @return the day; empty if only the month or the year is known
     */
    public Optional<LocalDate> exact() {
        return day.isPresent() ? Optional.of(first()) : Optional.empty();
    }

    /**
     * Returns the first day that this may mean.
     *
     * @return the day itself, or the first of the month or year
     */
    public LocalDate first() {
        return LocalDate.of(year, month.orElse(1), day.orElse(1));
    }

    /**
     * Returns the last day that this may mean.
     *
     * @return the day itself, or the last of the month or year
     */
    public LocalDate last() {
        if (month.isEmpty()) {
            return Year.of(year).atDay(Year.of(year).length());
        }
        return day.isPresent() ? first() : YearMonth.of(year, month.getAsInt()).atEndOfMonth();
    }

    /**
     * Returns the date as a sentence says it.
     *
     * @return for example {@code in 1985}, {@code in 1985-06} or {@code on 1985-06-30}
     */
    public String inWords() {
        return (day.isPresent() ? "on " : "in ") + this;
    }

    /** Returns the text form, {@code 1985-06}; {@link #parse} reads it back. */
    @Override
    public String toString() {
        return text(year, month, day);
    }

    private static String text(int year, OptionalInt month, OptionalInt day) {
        StringBuilder text = new StringBuilder(digits(year, 4));
        month.ifPresent(number -> text.append('-').append(digits(number, 2)));
        day.ifPresent(number -> text.append('-').append(digits(number, 2)));
        return text.toString();
    }

    private static String digits(int number, int least) {
        String digits = Integer.toString(number);
        return "0".repeat(Math.max(0, least - digits.length())) + digits;
    }
}
