package org.geneticsrules.answer.described;

import com.google.common.collect.ImmutableList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.trait.LifeStage;

/**
 * What was seen of an animal, sorted.
 *
 * @param readings every reading, look by look
 * @param courses traits that were read more than once in comparable circumstances, in catalogue order
 * @param apart readings of which each is needed to make it impossible that all are of one animal; empty if it is possible or not known
 * @param fit whether it can all be one animal under the model
 * @param open traits that were not looked at, or only when they could not be told, in catalogue order
 */
public record Description(List<Reading> readings, List<Course> courses, List<Reading> apart, Fit fit, List<Open> open) {

    /** Whether all that was seen can be one animal. */
    public enum Fit {
        /** There is a genotype, and a course of its life, that shows all of it. */
        ONE_ANIMAL,
        /** No animal shows all of it under the model. */
        NOT_ONE_ANIMAL,
        /** The model makes no claim about anything that was seen. */
        NO_CLAIM,
        /** It depends on a stage that is not stated, or would take too much work. */
        NOT_FOUND_OUT;

        /**
         * Returns this in words.
         *
         * @return for example {@code one animal}
         */
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    /**
     * One trait as it was read at one look.
     *
     * @param stage when
     * @param light in which light, if stated
     * @param trait the trait
     * @param state what was read
     * @param tooEarly the age or moult from which the trait can be told, if it was read before that: then it counts for nothing
     * @param otherLight the lights in which the trait can be told, if it was read in another: then it counts for nothing
     * @param unruled why the model makes no claim about the trait, if it makes none
     * @param note what the catalogue says of the trait: how to look, or what it does not mean
     */
    public record Reading(
            LifeStage stage,
            Optional<String> light,
            String trait,
            String state,
            Optional<LifeStage> tooEarly,
            List<String> otherLight,
            Optional<String> unruled,
            Optional<String> note) {

        /**
         * Copies the lights.
         *
         * @param stage when
         * @param light in which light
         * @param trait the trait
         * @param state what was read
         * @param tooEarly from when it can be told
         * @param otherLight the lights it can be told in
         * @param unruled why the model makes no claim
         * @param note what the catalogue says
         */
        public Reading {
            otherLight = ImmutableList.copyOf(otherLight);
        }

        /**
         * Tells whether the reading counts: it was made late enough and in a light in which the trait can be told.
         *
         * @return false if it is only kept
         */
        public boolean counts() {
            return tooEarly.isEmpty() && otherLight.isEmpty();
        }

        /** Returns the reading and its stage, for example {@code hue: black (moult 2)}. */
        @Override
        public String toString() {
            return trait + ": " + state + (stage.equals(LifeStage.unstated()) ? "" : " (" + stage + ")");
        }
    }

    /**
     * Readings of one trait that can be compared: of the same season, or of unknown season.
     *
     * @param trait the trait
     * @param season the season of all of them, if stated
     * @param readings at least two, in the order stated
     * @param change how they differ
     */
    public record Course(String trait, Optional<String> season, List<Reading> readings, Change change) {

        /**
         * Copies the readings.
         *
         * @param trait the trait
         * @param season the season
         * @param readings the readings
         * @param change how they differ
         */
        public Course {
            readings = ImmutableList.copyOf(readings);
        }
    }

    /** How readings of one trait differ, in the order stated. */
    public enum Change {
        /** All are the same. */
        NONE,
        /** They differ in a trait whose states are no order. */
        CHANGED,
        /** Each is as the one before, or a later state of the trait's order. */
        FORWARD,
        /** Each is as the one before, or an earlier state of the trait's order. */
        BACK,
        /** They go forward and back. */
        BOTH_WAYS;

        /**
         * Returns this in words.
         *
         * @return for example {@code both ways}
         */
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    /**
     * A trait that is not known yet.
     *
     * @param trait the trait
     * @param from the age or moult from which it can be told, if it cannot be told at once
     * @param in the lights in which it can be told; empty if any will do
     * @param note what the catalogue says of it
     */
    public record Open(String trait, Optional<LifeStage> from, List<String> in, Optional<String> note) {

        /**
         * Copies the lights.
         *
         * @param trait the trait
         * @param from from when it can be told
         * @param in the lights
         * @param note what the catalogue says
         */
        public Open {
            in = ImmutableList.copyOf(in);
        }

        /** Returns the trait, and the lights it needs in brackets. */
        @Override
        public String toString() {
            return trait + (in.isEmpty() ? "" : " (in " + String.join(" or ", in) + ")");
        }
    }

    /**
     * Copies the lists.
     *
     * @param readings every reading
     * @param courses traits read more than once
     * @param apart what makes it impossible
     * @param fit whether it can be one animal
     * @param open traits that are not known
     */
    public Description {
        readings = ImmutableList.copyOf(readings);
        courses = ImmutableList.copyOf(courses);
        apart = ImmutableList.copyOf(apart);
        open = ImmutableList.copyOf(open);
    }

    /**
     * Returns what was read last of each trait, not counting what could not be told.
     *
     * @return readings, in the order in which their traits were first read
     */
    public List<Reading> last() {
        return last(readings);
    }

    static List<Reading> last(List<Reading> readings) {
        Map<String, Reading> last = new LinkedHashMap<>();
        readings.stream().filter(Reading::counts).forEach(one -> last.put(one.trait(), one));
        return ImmutableList.copyOf(last.values());
    }
}
