package org.geneticsrules.vocabulary;

import java.time.LocalDate;
import java.util.Optional;

/**
 * The time in which a sense of a name was in use, its first and last date included. A side without a date is open: the sense has always
 * been in use, or still is.
 *
 * <p>A date that names a year or a month includes all of it: {@code 1985/2009-06} begins on 1 January 1985 and ends on 30 June 2009.
 *
 * <p>Immutable and thread-safe.
 *
 * @param from the first date of use, if there was one
 * @param to the last date of use, if it came
 */
public record Period(Optional<PartialDate> from, Optional<PartialDate> to) {

    /** How ISO 8601-2 spells an open side of an interval. */
    private static final String OPEN = "..";

    /**
     * Returns the period without beginning and end.
     *
     * @return a period that includes every day
     */
    public static Period always() {
        return new Period(Optional.empty(), Optional.empty());
    }

    /**
     * Reads an interval of dates, {@code 1985/2009-06}; two points stand for an open side.
     *
     * @param text the text form
     * @return the period
     * @throws IllegalArgumentException if the text is no such interval, or there is no such date
     */
    public static Period parse(String text) {
        String[] sides = text.split("/", -1);
        if (sides.length != 2) {
            throw new IllegalArgumentException(
                    "\"" + text + "\" is no period; expected two dates such as 1985/2009-06, or 1985/.. if it is open");
        }
        return new Period(side(sides[0]), side(sides[1]));
    }

    private static Optional<PartialDate> side(String text) {
        return OPEN.equals(text) ? Optional.empty() : Optional.of(PartialDate.parse(text));
    }

    /**
     * Tells whether the period ends before it begins.
     *
     * @return true if it includes no day
     */
    public boolean isEmpty() {
        return from.isPresent()
                && to.isPresent()
                && from.get().first().isAfter(to.get().last());
    }

    /**
     * Tells whether what is used in this period is in use on a day.
     *
     * @param day a day
     * @return true if the period includes it
     */
    public boolean includes(LocalDate day) {
        return includes(day, day);
    }

    /**
     * Tells whether what is used in this period is in use throughout.
     *
     * @param date a day, month or year; without one, today, whichever day that is
     * @return true if the period includes every day of the date, or, without one, if it has no end
     */
    public boolean includes(Optional<PartialDate> date) {
        return date.map(some -> includes(some.first(), some.last())).orElse(to.isEmpty());
    }

    private boolean includes(LocalDate first, LocalDate last) {
        return from.map(PartialDate::first)
                        .filter(begin -> begin.isAfter(first))
                        .isEmpty()
                && to.map(PartialDate::last).filter(end -> end.isBefore(last)).isEmpty();
    }

    /**
     * Tells whether what is used in this period may be in use, as far as the date is known.
     *
     * @param date a day, month or year; without one, today, whichever day that is
     * @return true if the period includes some day of the date, or, without one, if it has no end
     */
    public boolean meets(Optional<PartialDate> date) {
        return date.map(some -> overlaps(new Period(date, date))).orElse(to.isEmpty());
    }

    /**
     * Tells whether some day belongs to both periods.
     *
     * @param other another period
     * @return true if they overlap
     */
    public boolean overlaps(Period other) {
        return !isEmpty() && !other.isEmpty() && beginsBeforeEndOf(other) && other.beginsBeforeEndOf(this);
    }

    private boolean beginsBeforeEndOf(Period other) {
        return from.isEmpty()
                || other.to.isEmpty()
                || !from.get().first().isAfter(other.to.get().last());
    }

    /**
     * Returns the period in words.
     *
     * @return for example {@code from 1985 until 2009-06}, {@code from 1985 on}, {@code until 2009-06} or {@code always}
     */
    public String inWords() {
        String end = to.map(date -> "until " + date).orElse("");
        return from.map(date -> "from " + date + (end.isEmpty() ? " on" : " " + end))
                .orElse(end.isEmpty() ? "always" : end);
    }

    /** Returns the text form, {@code 1985/2009-06} or {@code 1985/..} (ISO 8601-2); {@link #parse} reads it back. */
    @Override
    public String toString() {
        return from.map(PartialDate::toString).orElse(OPEN) + "/"
                + to.map(PartialDate::toString).orElse(OPEN);
    }
}
