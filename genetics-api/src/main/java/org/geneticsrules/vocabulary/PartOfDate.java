package org.geneticsrules.vocabulary;

import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.geneticsrules.vocabulary.Meaning.Reading;

/** Dates of which the day is not known, while a sense began or ended in between. Stateless and thread-safe. */
final class PartOfDate {

    private static final int MOST_TOLD = 8;

    private PartOfDate() {}

    /**
     * The days on which some sense began to be in use or ceased to be so, and the first one: on each of the other days exactly the senses of
     * the last of these before it are in use.
     *
     * @param date the day, month or year
     * @param senses some senses
     * @return days of the date, in order
     */
    static List<LocalDate> changes(PartialDate date, Collection<Sense> senses) {
        TreeSet<LocalDate> days = new TreeSet<>();
        days.add(date.first());
        for (Sense sense : senses) {
            Stream.concat(
                            sense.period().from().map(PartialDate::first).stream(),
                            sense.period().to().map(to -> to.last().plusDays(1)).stream())
                    .filter(day -> day.isAfter(date.first()) && !day.isAfter(date.last()))
                    .forEach(days::add);
        }
        return List.copyOf(days);
    }

    /** Whether a sense that was in use on some day of the date was not so on every day of it. */
    static boolean isPartly(Sense sense, Optional<PartialDate> date) {
        return date.isPresent() && !sense.period().includes(date);
    }

    /** That some of these senses were in use on a part of the days only, if that is so. */
    static Optional<String> notice(Optional<PartialDate> date, Collection<Reading> readings) {
        List<Reading> partly = readings.stream()
                .filter(one -> isPartly(one.sense(), date))
                .distinct()
                .toList();
        if (partly.isEmpty()) {
            return Optional.empty();
        }
        String told = partly.stream()
                .limit(MOST_TOLD)
                .map(one -> "\"" + one.name() + "\" (" + one.sense().id() + ") "
                        + one.sense().period().inWords())
                .collect(Collectors.joining(", "));
        int more = partly.size() - MOST_TOLD;
        return Optional.of("which day " + date.orElseThrow().inWords()
                + " is not known, and these were in use on a part of the days only: " + told
                + (more > 0 ? ", and " + more + " more" : ""));
    }
}
