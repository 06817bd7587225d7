package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.answer.described.DescribedAnswer;
import org.geneticsrules.answer.described.Description;
import org.geneticsrules.answer.described.Description.Change;
import org.geneticsrules.answer.described.Description.Course;
import org.geneticsrules.answer.described.Description.Open;
import org.geneticsrules.answer.described.Description.Reading;
import org.geneticsrules.trait.LifeStage;

/**
 * A description as plain text: the verdict, what rivals say, what was seen with what is to be known of each trait, what changed, what is
 * not known yet, the cautions and the evidence.
 *
 * <p>Stateless and thread-safe.
 */
public final class DescriptionText {

    private DescriptionText() {}

    /**
     * Returns a description in the standard style.
     *
     * @param answer a description
     * @return lines that end in a newline
     */
    public static String of(DescribedAnswer answer) {
        return of(answer, TextStyle.standard());
    }

    /**
     * Returns a description in a style.
     *
     * @param answer a description
     * @param style how it is laid out
     * @return lines that end in a newline
     */
    public static String of(DescribedAnswer answer, TextStyle style) {
        TextLines text = new TextLines(style.width());
        text.paragraph(answer.verdict());
        AnswerText.otherwise(answer.rivalVerdicts(), text);
        AnswerText.rivals(answer.rivals().size(), text);
        seen(answer.description(), text);
        courses(answer.description(), text);
        open(answer.description().open(), text);
        AnswerText.asked(answer.notices(), answer.question(), answer.given(), Integer.MAX_VALUE, text);
        AnswerText.changes(answer.assumptions(), text);
        AnswerText.cautions(answer.cautions(), text);
        AnswerText.evidence(answer.evidence(), answer.model(), text);
        return text.toString();
    }

    /** Every reading; what is to be known of a trait stands below its first one. */
    private static void seen(Description description, TextLines text) {
        Map<LifeStage, List<Reading>> looks = new LinkedHashMap<>();
        description
                .readings()
                .forEach(one -> looks.computeIfAbsent(one.stage(), stage -> new ArrayList<>())
                        .add(one));
        Set<String> said = new LinkedHashSet<>();
        looks.forEach((stage, readings) -> {
            text.heading(
                    "Seen " + (stage.equals(LifeStage.unstated()) ? "at a time that is not stated" : "at " + stage));
            for (Reading one : readings) {
                text.item(one.trait() + ": " + one.state()
                        + one.light().map(light -> ", in " + light).orElse("")
                        + one.tooEarly()
                                .map(from ->
                                        " - too early to be told, and no evidence; look again from " + from + " on")
                                .orElse("")
                        + (one.otherLight().isEmpty()
                                ? ""
                                : " - not to be told in " + one.light().orElse("that light")
                                        + ", and no evidence; look again in " + String.join(" or ", one.otherLight())));
                if (said.add(one.trait())) {
                    one.note().ifPresent(note -> text.hanging("    ", "    ", note));
                    one.unruled().ifPresent(reason -> text.hanging("    Inheritance: ", "      ", reason));
                }
            }
        });
    }

    private static void courses(Description description, TextLines text) {
        if (description.courses().isEmpty()) {
            return;
        }
        text.heading("The same trait at several looks");
        for (Course course : description.courses()) {
            text.item(course.trait()
                    + course.season().map(season -> " in " + season).orElse("") + ": "
                    + course.readings().stream()
                            .map(one -> one.state()
                                    + (one.stage().equals(LifeStage.unstated()) ? "" : " (" + one.stage() + ")"))
                            .collect(Collectors.joining(", "))
                    + " - " + words(course.change())
                    + (course.season().isPresent() || course.change() == Change.NONE
                            ? ""
                            : "; the season is not stated, so these may be a summer and a winter coat"));
        }
        if (description.courses().stream().anyMatch(course -> course.season().isPresent())) {
            text.paragraph(
                    "Looks of one season are compared by themselves: summer and winter are two coats of one animal.");
        }
    }

    private static String words(Change change) {
        return switch (change) {
            case NONE -> "the same each time";
            case CHANGED -> "changed";
            case FORWARD -> "more each time, or the same";
            case BACK -> "less each time, or the same";
            case BOTH_WAYS -> "now more, now less";
        };
    }

    private static void open(List<Open> open, TextLines text) {
        if (open.isEmpty()) {
            return;
        }
        text.heading("Not known yet");
        List<Open> now = open.stream().filter(one -> one.from().isEmpty()).toList();
        if (!now.isEmpty()) {
            text.paragraph(now.stream().map(Open::toString).collect(Collectors.joining(", ")) + ".");
        }
        Map<LifeStage, List<Open>> later = new LinkedHashMap<>();
        open.forEach(one -> one.from()
                .ifPresent(from ->
                        later.computeIfAbsent(from, none -> new ArrayList<>()).add(one)));
        later.forEach((from, traits) -> text.item("From " + from + " on: "
                + traits.stream().map(Open::toString).collect(Collectors.joining(", ")) + "."));
    }
}
