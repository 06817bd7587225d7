package org.geneticsrules.examples;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.geneticsrules.estimation.Penetrance;
import org.geneticsrules.estimation.Sibship;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Stage;

/** Reads counts from the command line. Stateless and thread-safe. */
final class CountTexts {

    private static final Pattern SOME_OF = Pattern.compile("\\s*(\\d{1,15})\\s+of\\s+(\\d{1,15})\\s*");
    private static final Pattern SOME_OF_AT = Pattern.compile("(.*)\\s+at\\s+(\\S+)\\s*");
    private static final Pattern FAMILY =
            Pattern.compile("\\s*(\\d{1,4})\\s*:\\s*(\\d{1,4})(?:\\s*:\\s*(\\d{1,4}))?(?:\\s*x\\s*(\\d{1,9}))?\\s*");

    private CountTexts() {}

    /** So many of so many. */
    record Some(long some, long of) {}

    /** Counts of classes between colons. */
    static long[] classes(String option, String given, int number, String example) {
        String[] parts = given.split(":", -1);
        if (number > 0 && parts.length != number) {
            throw wrong(option, given, "expected " + number + " counts, but found " + parts.length, example);
        }
        long[] counts = new long[parts.length];
        for (int i = 0; i < parts.length; i++) {
            String part = parts[i].strip();
            if (!part.matches("\\d{1,15}")) {
                throw wrong(option, given, "\"" + part + "\" is no count", example);
            }
            counts[i] = Long.parseLong(part);
        }
        return counts;
    }

    /** Chances between colons. */
    static List<Probability> chances(String option, String given) {
        return Arrays.stream(given.split(":", -1))
                .map(part -> Inputs.chance(option, part))
                .toList();
    }

    static Some some(String option, String given) {
        Matcher matcher = SOME_OF.matcher(given);
        if (!matcher.matches()) {
            throw wrong(option, given, "\"" + given + "\" is no such count", "for example \"12 of 100\"");
        }
        return new Some(Long.parseLong(matcher.group(1)), Long.parseLong(matcher.group(2)));
    }

    /** Young of a mating of which each has a genotype with a chance. */
    static Penetrance.Mating mating(String option, String given) {
        Matcher matcher = SOME_OF_AT.matcher(given);
        if (!matcher.matches()) {
            throw wrong(option, given, "\"" + given + "\" states no chance", "for example \"3 of 20 at 1/4\"");
        }
        Some some = some(option, matcher.group(1));
        Probability chance = Inputs.chance(option, matcher.group(2));
        return of(option, given, () -> new Penetrance.Mating(chance, some.some(), some.of()));
    }

    /** Families: young, affected, those who came to notice by themselves, and how many families there are. */
    static List<Sibship> families(String option, String given, boolean probands) {
        List<Sibship> found = new ArrayList<>();
        for (String part : given.split(",", -1)) {
            Matcher matcher = FAMILY.matcher(part);
            if (!matcher.matches() || (probands && matcher.group(3) == null)) {
                throw wrong(
                        option,
                        given,
                        "\"" + part.strip() + "\" is no family",
                        probands
                                ? "young, affected and probands, and how many such families: \"7:3:2, 5:2:1 x 5\""
                                : "young and affected, and how many such families: \"7:3, 5:2 x 5\"");
            }
            int siblings = Integer.parseInt(matcher.group(1));
            int affected = Integer.parseInt(matcher.group(2));
            int noticed = matcher.group(3) == null ? affected : Integer.parseInt(matcher.group(3));
            long families = matcher.group(4) == null ? 1 : Long.parseLong(matcher.group(4));
            found.add(of(option, part.strip(), () -> new Sibship(siblings, affected, noticed, families)));
        }
        return found;
    }

    /** What counts do not allow is a problem of the option that states them. */
    static <T> T of(String option, String given, Supplier<T> reading) {
        try {
            return reading.get();
        } catch (IllegalArgumentException e) {
            Problem problem = Problem.of(Stage.MEANING, "counts-unlike-question", "", String.valueOf(e.getMessage()));
            throw new InputException(ProblemText.of(option, given, List.of(problem)));
        }
    }

    static InputException wrong(String option, String given, String what, String expected) {
        Problem problem = Problem.of(Stage.SYNTAX, "count-syntax", "", what).expecting(expected);
        return new InputException(ProblemText.of(option, given, List.of(problem)));
    }
}
