package org.geneticsrules.render;

import java.util.List;
import org.geneticsrules.answer.recorded.CarrierTrail;
import org.geneticsrules.answer.recorded.Cited;
import org.geneticsrules.answer.recorded.Conflict;
import org.geneticsrules.answer.recorded.DnaTest;
import org.geneticsrules.answer.recorded.Finding;
import org.geneticsrules.answer.recorded.HowSure;
import org.geneticsrules.answer.recorded.Later;
import org.geneticsrules.answer.recorded.LookNext;
import org.geneticsrules.answer.recorded.MayCarry;
import org.geneticsrules.answer.recorded.NextLitter;
import org.geneticsrules.answer.recorded.Parentage;
import org.geneticsrules.answer.recorded.RecordedAnswer;

/**
 * An answer about recorded animals as plain text: the verdict first, then what rival models say instead and whether others hold differing views, the numbers, the records
 * that do not fit one another, why, what would change it, the cautions and the evidence.
 *
 * <p>Stateless and thread-safe.
 */
public final class RecordedText {

    private RecordedText() {}

    /**
     * Returns an answer in the standard style.
     *
     * @param answer an answer
     * @return lines that end in a newline
     */
    public static String of(RecordedAnswer answer) {
        return of(answer, TextStyle.standard());
    }

    /**
     * Returns an answer in a style.
     *
     * @param answer an answer
     * @param style how it is laid out
     * @return lines that end in a newline
     */
    public static String of(RecordedAnswer answer, TextStyle style) {
        TextLines text = new TextLines(style.width());
        text.paragraph(answer.verdict());
        AnswerText.otherwise(answer.rivalVerdicts(), text);
        AnswerText.rivals(answer.rivals().size(), text);
        finding(answer.finding(), answer, style, text);
        conflicts(answer.conflicts(), text);
        if (!answer.notices().isEmpty()) {
            text.heading("Please note");
            answer.notices().forEach(notice -> text.item(CarrySection.capital(notice) + "."));
        }
        text.heading("Why");
        text.paragraph("Asked: " + answer.question());
        answer.given().forEach(fact -> text.item("given: " + fact));
        AnswerText.changes(answer.assumptions(), text);
        AnswerText.cautions(answer.cautions(), text);
        AnswerText.evidence(answer.evidence(), answer.model(), text);
        text.paragraph("Pedigree: " + answer.pedigree() + ".");
        return text.toString();
    }

    private static void finding(Finding finding, RecordedAnswer answer, TextStyle style, TextLines text) {
        if (finding instanceof MayCarry found) {
            new CarrySection(style).write(found, text);
        } else if (finding instanceof CarrierTrail found) {
            new TrailSection(style).write(found, text);
        } else if (finding instanceof HowSure found) {
            new SureSection(style, answer.young()).write(found, text);
        } else if (finding instanceof Parentage found) {
            new ParentageSection(style).write(found, text);
        } else if (finding instanceof NextLitter found) {
            new NextLitterSection(style, answer.young()).write(found, text);
        } else if (finding instanceof LookNext found) {
            new LookNextSection(style).write(found, text);
        } else if (finding instanceof Later found) {
            new LaterSection(style).write(found, text);
        } else if (finding instanceof DnaTest found) {
            new DnaTestSection(style).write(found, text);
        }
    }

    /** The choice that contradictory records leave, and that it accuses nobody. */
    static void conflicts(List<Conflict> conflicts, TextLines text) {
        if (conflicts.isEmpty()) {
            return;
        }
        text.heading("Records that do not fit one another");
        conflicts.forEach(conflict -> conflict(conflict, text));
        text.paragraph(
                "Each of these sets is as small as it can be: leave any one record out, and the others fit. Which one is"
                        + " mistaken cannot be told from this, and it is no ground for doubting anybody.");
    }

    /** One thing for each line, because each is to be looked at by itself. */
    private static void conflict(Conflict conflict, TextLines text) {
        List<Cited> records = conflict.records();
        for (int i = 0; i < records.size(); i++) {
            text.hanging(
                    i == 0 ? "- " : "  ",
                    "    ",
                    (i == 0 ? "either " : "or ") + records.get(i).words() + ",");
        }
        text.hanging("  ", "    ", "or the model is mistaken.");
    }
}
