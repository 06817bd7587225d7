package org.geneticsrules.vocabulary;

import java.time.LocalDate;
import java.util.Optional;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;

/**
 * The occasion on which an animal is looked at, or a name is said of it. What is not stated is not known.
 *
 * <pre>{@code
 * Occasion.unstated().at(LifeStage.atMoult(2).in("winter")).on(PartialDate.parse("1998-11"));
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 *
 * @param stage age, moults and season of the animal, as far as known
 * @param sex its sex, if known; few names ask for it
 * @param date the day, or the month or year of which it was some day, if known
 */
public record Occasion(LifeStage stage, Optional<Sex> sex, Optional<PartialDate> date) {

    /**
     * Returns the occasion of which nothing is known.
     *
     * @return an occasion without stage, sex and date
     */
    public static Occasion unstated() {
        return new Occasion(LifeStage.unstated(), Optional.empty(), Optional.empty());
    }

    /**
     * Returns this occasion at a stage of life.
     *
     * @param when age, moults and season, as far as known
     * @return a copy
     */
    public Occasion at(LifeStage when) {
        return new Occasion(when, sex, date);
    }

    /**
     * Returns this occasion with the sex of the animal.
     *
     * @param known its sex
     * @return a copy
     */
    public Occasion of(Sex known) {
        return new Occasion(stage, Optional.of(known), date);
    }

    /**
     * Returns this occasion on a day.
     *
     * @param day the day
     * @return a copy
     * @throws IllegalArgumentException if its year is not one of 0 to 9999
     */
    public Occasion on(LocalDate day) {
        return on(PartialDate.of(day));
    }

    /**
     * Returns this occasion on some day of a date.
     *
     * @param known a day, or a month or year of which no more is known than that it was some day of it
     * @return a copy
     */
    public Occasion on(PartialDate known) {
        return new Occasion(stage, sex, Optional.of(known));
    }
}
