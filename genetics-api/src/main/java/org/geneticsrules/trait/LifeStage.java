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
 * @param weeks age in completed weeks, from 0
 * @param moult number of moults since the juvenile coat, from 0
 * @param season one of the catalogue's seasons
 */
public record LifeStage(OptionalInt weeks, OptionalInt moult, Optional<String> season) {

    /** The variable by which conditions read the season; no locus and no trait may have this name. */
    public static final String SEASON = "season";

    /** The largest count of weeks or moults. */
    public static final int MOST = 999_999_999;

    /** A season has no digits, so that it cannot be taken for an age or a moult. */
    private static final Pattern NAME = Pattern.compile("\\p{L}(?:[\\p{L} -]{0,78}\\p{L})?");

    private static final Pattern COUNT = Pattern.compile("(week|moult) ([0-9]{1,9})");

    /**
     * Checks the ranges.
     *
     * @param weeks age in completed weeks
     * @param moult number of moults
     * @param season the season
     * @throws IllegalArgumentException if a number is negative or above 999999999, or a season has no name of letters
     */
    public LifeStage {
        for (int count : new int[] {weeks.orElse(0), moult.orElse(0)}) {
            if (count < 0 || count > MOST) {
                throw new IllegalArgumentException(
                        "weeks and moults count from 0 to " + MOST + ", but one was " + count);
            }
        }
        season.filter(name -> !isSeasonName(name)).ifPresent(name -> {
            throw new IllegalArgumentException("\"" + name + "\" cannot name a season");
        });
    }

    /**
     * Tells whether a season may have a name.
     *
     * @param name a name
     * @return true if it is 1 to 80 letters, spaces and hyphens that begins and ends with a letter
     */
    public static boolean isSeasonName(String name) {
        return NAME.matcher(name).matches();
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
            Matcher counted = COUNT.matcher(part);
            if (counted.matches()) {
                OptionalInt count = OptionalInt.of(Integer.parseInt(counted.group(2)));
                stage = counted.group(1).equals("week")
                        ? new LifeStage(count, stage.moult, stage.season)
                        : new LifeStage(stage.weeks, count, stage.season);
            } else if (isSeasonName(part)) {
                stage = stage.in(part);
            } else {
                throw new IllegalArgumentException(
                        "\"" + part + "\" is no stage; expected, for example, \"week 8\", \"moult 3\" or a season");
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

    /**
     * Tells whether this stage states an age or a moult and nothing else, as the stage does from which on something can be told.
     *
     * @return true if exactly one count is stated, and no season
     */
    public boolean isOneCount() {
        return weeks.isPresent() != moult.isPresent() && season.isEmpty();
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
