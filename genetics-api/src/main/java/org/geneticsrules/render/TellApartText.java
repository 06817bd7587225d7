package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.geneticsrules.answer.compared.ApartStep;
import org.geneticsrules.answer.compared.TellApartAnswer;
import org.geneticsrules.planning.Effort;
import org.geneticsrules.planning.Step;
import org.geneticsrules.planning.ToldApart;

/**
 * What can be done next to tell models apart as plain text: the verdict, the models, the steps by what they ask of animals, what is not
 * proposed, the cautions and the evidence.
 *
 * <p>Stateless and thread-safe.
 */
public final class TellApartText {

    /** More steps than these that are not proposed for one reason are told by their number. */
    private static final int MOST = 24;

    private TellApartText() {}

    /**
     * Returns an answer in the standard style.
     *
     * @param answer what can be done next
     * @return lines that end in a newline
     */
    public static String of(TellApartAnswer answer) {
        return of(answer, TextStyle.standard());
    }

    /**
     * Returns an answer in a style.
     *
     * @param answer what can be done next
     * @param style how it is laid out
     * @return lines that end in a newline
     */
    public static String of(TellApartAnswer answer, TextStyle style) {
        TextLines text = new TextLines(style.width());
        text.paragraph(answer.verdict());
        AnswerText.rivals(answer.rivals().size(), text);
        models(answer, text);
        for (TellApartAnswer.Tried tried : answer.tried()) {
            steps(tried, answer.steps(), text);
        }
        leftOut(answer.leftOut(), text);
        AnswerText.asked(answer.notices(), answer.question(), answer.given(), Integer.MAX_VALUE, text);
        AnswerText.changes(answer.assumptions(), text);
        AnswerText.cautions(answer.cautions(), text);
        AnswerText.evidence(answer.evidence(), answer.model(), text);
        return text.toString();
    }

    private static void models(TellApartAnswer answer, TextLines text) {
        text.heading("The models, and what the records say so far");
        List<TellApartAnswer.OfModel> models = answer.models();
        for (int m = 0; m < models.size(); m++) {
            TellApartAnswer.OfModel one = models.get(m);
            text.item("model " + (m + 1) + ": " + one.title()
                    + (m == 0 ? "" : "; over the first: " + LitterText.ratio(one.logRatio())) + "; belief "
                    + LitterText.share(one.belief()));
        }
        answer.excluded().forEach(one -> text.item("excluded by the records: " + one.title()));
        for (ToldApart pair : answer.apart()) {
            String both = (pair.first() + 1) + " and " + (pair.second() + 1);
            if (pair.verdict() == ToldApart.Verdict.NEVER) {
                text.item("no look and no mating tells " + both + " apart by these traits, which is proved");
            } else if (pair.verdict() == ToldApart.Verdict.UNDECIDED
                    && answer.steps().isEmpty()) {
                text.item("whether looks can tell " + both + " apart at all was not found out: "
                        + pair.limits().stream()
                                .map(limit -> limit.endsWith(".") ? limit.substring(0, limit.length() - 1) : limit)
                                .collect(Collectors.joining("; ")));
            }
        }
        if (!answer.steps().isEmpty()) {
            text.paragraph("A likelihood ratio of " + String.format(Locale.ROOT, "%.0f", answer.bar())
                    + " : 1 is evidence here, 20 for each rival tried; what the records say already counts towards it. Averages are those"
                    + " of the logarithm of the ratio.");
        }
    }

    private static String heading(Effort effort) {
        return switch (effort) {
            case RECORD -> "Looks at animals that are there";
            case DNA_TEST -> "DNA tests of animals that are there";
            case PLANNED_MATING -> "Kits of matings that are planned in any case";
            case NEW_MATING -> "Kits of matings that would be made for this alone; no advice to make them";
        };
    }

    private static void steps(TellApartAnswer.Tried tried, List<ApartStep> all, TextLines text) {
        text.heading(heading(tried.effort()));
        all.stream()
                .filter(one -> one.worth().step().effort() == tried.effort())
                .forEach(one -> step(one, text));
        text.item(tried.tried() + " tried"
                + (tried.nothing() == 0 ? "" : "; " + tried.nothing() + tells(tried.nothing()) + " nothing")
                + (tried.little() == 0 ? "" : "; " + tried.little() + tells(tried.little()) + " less than those listed")
                + (tried.left() == 0
                        ? ""
                        : "; " + tried.left() + (tried.left() == 1 ? " more was" : " more were") + " not tried"));
    }

    private static String tells(int count) {
        return count == 1 ? " tells" : " tell";
    }

    private static void step(ApartStep one, TextLines text) {
        text.item(one.words() + alike(one));
        one.says().forEach(words -> text.hanging("    ", "      ", words));
        if (one.worth().step() instanceof Step.Kits kits && kits.effort().breeds()) {
            text.hanging("    ", "      ", cost(one, kits));
        }
    }

    private static String alike(ApartStep one) {
        return one.alike().isEmpty()
                ? ""
                : ", or in " + one.alike().stream().limit(6).collect(Collectors.joining(", "))
                        + (one.alike().size() > 6 ? " and " + (one.alike().size() - 6) + " more" : "")
                        + ", recorded alike";
    }

    private static String cost(ApartStep one, Step.Kits kits) {
        return one.worth().kitsBorn() + " kits are born"
                + (kits.effort() == Effort.NEW_MATING ? " for it, who need homes" : " of it in any case")
                + one.concerns()
                        .map(found ->
                                "; relation of the two: " + found.relation().word()
                                        + found.inbreeding()
                                                .map(f ->
                                                        ", coefficient of inbreeding of the kits, as far back as is recorded: "
                                                                + f)
                                                .orElse(""))
                        .orElse("");
    }

    private static void leftOut(List<TellApartAnswer.LeftOut> all, TextLines text) {
        if (all.isEmpty()) {
            return;
        }
        text.heading("Not proposed");
        Map<String, List<String>> reasons = new LinkedHashMap<>();
        all.forEach(one -> reasons.computeIfAbsent(
                        one.reason()
                                + one.caution()
                                        .map(name -> " (left out by \"" + name + "\")")
                                        .orElse(""),
                        key -> new ArrayList<>())
                .add(one.step()));
        reasons.forEach((reason, steps) -> text.item(reason + ": "
                + steps.stream().limit(MOST).collect(Collectors.joining("; "))
                + (steps.size() > MOST ? "; and " + (steps.size() - MOST) + " more" : "")));
    }
}
