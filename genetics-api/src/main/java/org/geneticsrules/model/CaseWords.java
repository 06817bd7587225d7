package org.geneticsrules.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.StringJoiner;
import java.util.stream.Collectors;
import org.geneticsrules.probability.Distribution;

/** Puts what a case makes of a trait into words. */
final class CaseWords {

    private CaseWords() {}

    /** The outcomes with their chances: {@code few (3/4) or half (1/4)}, or the only one by itself. */
    static <T> String of(Distribution<T> chances) {
        List<String> parts = new ArrayList<>();
        chances.asMap()
                .forEach((outcome, chance) -> parts.add(chance.isOne() ? "" + outcome : outcome + " (" + chance + ")"));
        return listed(parts, "or");
    }

    static String of(CaseState.Progression progression) {
        String clock = progression.clock().word();
        StringBuilder words = new StringBuilder(of(progression.start()) + " at " + clock + " 0");
        if (!progression.step().isEmpty()) {
            words.append(", and with each ").append(clock).append(' ');
            words.append(progression.step().entrySet().stream()
                    .map(step -> step.getKey() + " becomes " + of(step.getValue()))
                    .collect(Collectors.joining("; ")));
        }
        return words.append(progression.monotone() ? ", never going back" : "").toString();
    }

    static String of(CaseState.Threshold threshold) {
        List<Integer> least = new ArrayList<>(threshold.cuts().values());
        StringBuilder words = new StringBuilder("by the sum of doses " + threshold.below());
        if (!least.isEmpty()) {
            words.append(" below ").append(least.get(0));
        }
        threshold
                .cuts()
                .forEach((state, cut) ->
                        words.append(", ").append(state).append(" from ").append(cut));
        StringJoiner doses = new StringJoiner("; ", "; doses: ", "").setEmptyValue("");
        threshold.doses().forEach((locus, dose) -> doses.add(locus + " " + doses(dose)));
        words.append(doses);
        if (!threshold.residual().equals(Distribution.certain(0))) {
            words.append("; residual ").append(of(threshold.residual()));
        }
        return words.toString();
    }

    private static String doses(Map<String, Integer> dose) {
        return dose.entrySet().stream()
                .map(one -> one.getKey() + " " + one.getValue())
                .collect(Collectors.joining(", "));
    }

    /** Joins parts by commas, and the last two by a word. */
    static String listed(List<String> parts, String word) {
        int last = parts.size() - 1;
        return last < 1
                ? String.join("", parts)
                : String.join(", ", parts.subList(0, last)) + " " + word + " " + parts.get(last);
    }
}
