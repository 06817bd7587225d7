package org.geneticsrules.trait;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * When an animal is looked at: how old it is or how often it has moulted, and in which season. What is not stated is not known.
 *
 * <pre>{@code
 * LifeStage adult = LifeStage.atMoult(3).in("winter");
 * adult.toString();   // moult 3, winter
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 *
 * @param weeks age in completed weeks, at least 0
 * @param moult number of moults since the juvenile coat, at least 0
 * @param season one of the catalogue's seasons
 */
public record LifeStage(OptionalInt weeks, OptionalInt moult, Optional<String> season) {

    /** The variable by which conditions read the season; no locus and no trait may have this name. */
    public static final String SEASON = "season";

    private static final Pattern PART = Pattern.compile("(week|moult) ([0-9]{1,4})|([\\p{L}][\\p{L} -]*)");

    /**
     * Checks the ranges.
     *
     * @param weeks age in completed weeks
     * @param moult number of moults
     * @param season the season
     * @throws IllegalArgumentException if a number is negative
     */
    public LifeStage {
        if (weeks.orElse(0) < 0 || moult.orElse(0) < 0) {
            throw new IllegalArgumentException(
                    "weeks and moults are counted from 0, but were " + weeks + " and " + moult);
        }
    }

    /**
     * Returns the stage of which nothing is known.
     *
     * @return a stage without age, moult and season
     */
    public static LifeStage unstated() {
        return new LifeStage(OptionalInt.empty(), OptionalInt.empty(), Optional.empty());
    }

    /**
     * Returns the stage at birth.
     *
     * @return week 0 and moult 0
     */
    public static LifeStage atBirth() {
        return new LifeStage(OptionalInt.of(0), OptionalInt.of(0), Optional.empty());
    }

    /**
     * Returns the stage after some moults.
     *
     * @param moults number of moults since the juvenile coat
     * @return the stage
     */
    public static LifeStage atMoult(int moults) {
        return new LifeStage(OptionalInt.empty(), OptionalInt.of(moults), Optional.empty());
    }

    /**
     * Returns the stage at an age.
     *
     * @param weeks age in completed weeks
     * @return the stage
     */
    public static LifeStage atWeek(int weeks) {
        return new LifeStage(OptionalInt.of(weeks), OptionalInt.empty(), Optional.empty());
    }

    /**
     * Returns this stage in a season.
     *
     * @param named one of the catalogue's seasons
     * @return a copy
     */
    public LifeStage in(String named) {
        return new LifeStage(weeks, moult, Optional.of(named));
    }

    /**
     * Reads a stage such as {@code moult 3, winter}.
     *
     * @param text the text form
     * @return the stage
     * @throws IllegalArgumentException if the text is not understood
     */
    public static LifeStage parse(String text) {
        LifeStage stage = unstated();
        for (String part : text.isBlank() ? new String[0] : text.strip().split("\\s*,\\s*")) {
            Matcher matcher = PART.matcher(part);
            if (!matcher.matches()) {
                throw new IllegalArgumentException(
                        "\"" + part + "\" is no stage; expected, for example, \"week 8\", \"moult 3\" or a season");
            }
            if (matcher.group(3) != null) {
                stage = stage.in(matcher.group(3));
            } else {
                OptionalInt count = OptionalInt.of(Integer.parseInt(matcher.group(2)));
                stage = matcher.group(1).equals("week")
                        ? new LifeStage(count, stage.moult, stage.season)
                        : new LifeStage(stage.weeks, count, stage.season);
            }
        }
        return stage;
    }

    /**
     * Returns the count of a clock.
     *
     * @param clock moults or weeks
     * @return the count, if stated
     */
    public OptionalInt count(Clock clock) {
        return clock == Clock.MOULT ? moult : weeks;
    }

    /**
     * Tells whether this stage is known to be earlier than another, by any count that both state.
     *
     * @param other the stage compared with
     * @return true if an age or a moult stated by both is smaller here
     */
    public boolean isBefore(LifeStage other) {
        for (Clock clock : Clock.values()) {
            OptionalInt mine = count(clock);
            OptionalInt theirs = other.count(clock);
            if (mine.isPresent() && theirs.isPresent() && mine.getAsInt() < theirs.getAsInt()) {
                return true;
            }
        }
        return false;
    }

    /** Returns the text form, {@code week 8, moult 1, winter}; {@link #parse} reads it back. */
    @Override
    public String toString() {
        List<String> parts = new ArrayList<>();
        weeks.ifPresent(count -> parts.add("week " + count));
        moult.ifPresent(count -> parts.add("moult " + count));
        season.ifPresent(parts::add);
        return String.join(", ", parts);
    }
}
