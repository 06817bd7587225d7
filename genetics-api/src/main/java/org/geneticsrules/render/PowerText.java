package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.geneticsrules.answer.compared.PowerAnswer;
import org.geneticsrules.planning.EstimatedPower;

/**
 * How often litters of a plan would tell models apart as plain text: the verdict, how it went against each rival, how many litters it took,
 * the cautions and the evidence.
 *
 * <p>Stateless and thread-safe.
 */
public final class PowerText {

    /** Numbers of litters after which it is told how far it had come. */
    private static final int LINES = 8;

    private PowerText() {}

    /**
     * Returns an answer in the standard style.
     *
     * @param answer what was found
     * @return lines that end in a newline
     */
    public static String of(PowerAnswer answer) {
        return of(answer, TextStyle.standard());
    }

    /**
     * Returns an answer in a style.
     *
     * @param answer what was found
     * @param style how it is laid out
     * @return lines that end in a newline
     */
    public static String of(PowerAnswer answer, TextStyle style) {
        TextLines text = new TextLines(style.width());
        text.paragraph(answer.verdict());
        AnswerText.rivals(answer.rivals().size(), text);
        EstimatedPower power = answer.power();
        text.heading("Of " + power.sets() + " sets of drawn litters");
        text.item("in " + sets(answer, power.reached()) + " the true model reaches the bar of " + bar(power)
                + " over every rival");
        text.item("in " + sets(answer, power.misled()) + " a wrong model reaches it");
        text.item("in " + sets(answer, power.neither()) + " neither happens");
        text.paragraph("Each chance is told with its exact 95 % interval. The ratio is looked at after every litter.");
        text.heading("How many litters it takes");
        int all = power.reachedAfter().size();
        int step = (all + LINES - 1) / LINES;
        for (int t = step; t < all + step; t += step) {
            int litters = Math.min(t, all);
            text.item("by " + litters + (litters == 1 ? " litter: " : " litters: ")
                    + answer.share(power.reachedAfter().get(litters - 1)));
        }
        text.heading("Against each rival");
        List<PowerAnswer.Compared> models = answer.models();
        List<String> level = new ArrayList<>();
        for (EstimatedPower.AgainstRival one : power.rivals()) {
            boolean apart = !answer.inseparable().contains(one.rival());
            if (apart && one.reached() == 0 && one.misled() == 0) {
                level.add(models.get(one.rival()).title());
                continue;
            }
            text.item(models.get(one.rival()).title() + ": left behind in " + sets(answer, one.reached())
                    + "; still so after all litters in " + answer.share(one.atTheEnd())
                    + "; itself at the bar, though wrong, in " + answer.share(one.misled())
                    + (apart ? "" : "; no mating tells it apart by these looks"));
        }
        if (!level.isEmpty()) {
            text.item("never left behind and never at the bar, with so many litters: " + String.join("; ", level));
        }
        AnswerText.asked(answer.notices(), answer.question(), answer.given(), Integer.MAX_VALUE, text);
        AnswerText.changes(answer.assumptions(), text);
        AnswerText.cautions(answer.cautions(), text);
        AnswerText.evidence(answer.evidence(), answer.model(), text);
        return text.toString();
    }

    private static String bar(EstimatedPower power) {
        return String.format(Locale.ROOT, "%.0f : 1", power.bar());
    }

    private static String sets(PowerAnswer answer, int sets) {
        return answer.share(sets) + " (" + answer.least(sets) + " to " + answer.most(sets) + ")";
    }
}
