package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.answer.Answer;
import org.geneticsrules.answer.Assumption;
import org.geneticsrules.answer.EvidenceLevel;
import org.geneticsrules.answer.RivalVerdict;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.caution.QuestionKind;
import org.geneticsrules.document.Reference;
import org.geneticsrules.evidence.Evidence;
import org.geneticsrules.model.Statement;

/**
 * An answer as plain text: the verdict first, then what rival models say instead and whether others hold differing views, the numbers, why, what would change it, the
 * cautions and the evidence. To whoever takes an animal over the cautions are told first.
 *
 * <p>Stateless and thread-safe.
 */
public final class AnswerText {

    /** The verdicts of more rivals than this are in documents only. */
    private static final int MOST_RIVALS = 3;

    private AnswerText() {}

    /**
     * Returns an answer in the standard style.
     *
     * @param answer an answer
     * @return lines that end in a newline
     */
    public static String of(Answer answer) {
        return of(answer, TextStyle.standard());
    }

    /**
     * Returns an answer in a style.
     *
     * @param answer an answer
     * @param style how it is laid out
     * @return lines that end in a newline
     */
    public static String of(Answer answer, TextStyle style) {
        TextLines text = new TextLines(style.width());
        text.paragraph(answer.verdict());
        otherwise(answer.rivalVerdicts(), text);
        rivals(answer.rivals().size(), text);
        boolean cautionsFirst = answer.question().kind().equals(QuestionKind.SALE.word());
        if (cautionsFirst) {
            cautions(answer.cautions(), text);
        }
        new NumberSection(answer, style).write(text);
        new TestSection(answer, style).write(text);
        new WhySection(answer, style).write(text);
        changes(answer.assumptions(), text);
        if (!cautionsFirst) {
            cautions(answer.cautions(), text);
        }
        evidence(answer.evidence(), answer.model(), text);
        return text.toString();
    }

    /** What rival models answer, right after the verdict. */
    static void otherwise(List<RivalVerdict> verdicts, TextLines text) {
        if (verdicts.size() == 1) {
            text.paragraph("Otherwise if \"" + verdicts.get(0).title() + "\" is true: "
                    + verdicts.get(0).verdict());
        } else if (!verdicts.isEmpty()) {
            text.paragraph("Otherwise if one of " + verdicts.size() + " rival models is true:");
            verdicts.stream().limit(MOST_RIVALS).forEach(one -> text.item("\"" + one.title() + "\": " + one.verdict()));
            if (verdicts.size() > MOST_RIVALS) {
                text.item("and otherwise again by "
                        + verdicts.stream()
                                .skip(MOST_RIVALS)
                                .map(one -> "\"" + one.title() + "\"")
                                .collect(Collectors.joining(", ")));
            }
        }
    }

    static void rivals(int views, TextLines text) {
        if (views > 0) {
            text.paragraph(
                    views == 1
                            ? "One differing view of what this rests on is on record; see \"Evidence\"."
                            : views + " differing views of what this rests on are on record; see \"Evidence\".");
        }
    }

    /** What says nothing or was left out, and the question with what was stated; of many facts, the first and how many more there are. */
    static void asked(List<String> notices, String question, List<String> given, int most, TextLines text) {
        if (!notices.isEmpty()) {
            text.heading("Please note");
            notices.forEach(notice -> text.item(CarrySection.capital(notice) + "."));
        }
        text.heading("Asked");
        text.paragraph(question);
        given.stream().limit(most).forEach(fact -> text.item("given: " + fact));
        if (given.size() > most) {
            text.item("and " + (given.size() - most) + " more");
        }
    }

    static void changes(List<Assumption> assumptions, TextLines text) {
        if (!assumptions.isEmpty()) {
            text.heading("What would change it");
            assumptions.forEach(assumption -> text.item(assumption.text() + " " + assumption.otherwise()));
        }
    }

    /** Each caution with its own first line; what several have in common is said once, under the first of them. */
    static void cautions(List<Caution> cautions, TextLines text) {
        if (!cautions.isEmpty()) {
            text.heading("Cautions");
            Set<String> said = new LinkedHashSet<>();
            for (Caution caution : cautions) {
                text.item(caution.line());
                boolean repeats = caution.detail().stream().anyMatch(said::contains);
                caution.detail().stream().filter(said::add).forEach(sentence -> text.hanging("    ", "    ", sentence));
                if (repeats) {
                    text.hanging("    ", "    ", "What is said above of the same goes for this too.");
                }
                String source = (caution.sources().isEmpty()
                                ? "Common practice"
                                : "Source: " + String.join("; ", caution.sources()))
                        + ". Written " + caution.date() + ".";
                if (!repeats || said.add(source)) {
                    text.hanging("    ", "    ", source);
                    said.add(source);
                }
            }
        }
    }

    static void evidence(EvidenceLevel level, Reference model, TextLines text) {
        support(level, "model", text);
        text.paragraph("Model: " + model + ".");
    }

    /** The statements that an answer rests on, those of one support together. */
    static void support(EvidenceLevel level, String whose, TextLines text) {
        text.heading("Evidence");
        if (level.grade().isPresent()) {
            text.paragraph("As strong as its weakest part: " + level.grade().get() + " ("
                    + level.grade().get().meaning() + "). It rests on:");
        } else {
            text.paragraph("This answer rests on no statement of the " + whose + ".");
        }
        Map<Optional<Evidence>, List<Statement>> bySupport = new LinkedHashMap<>();
        level.statements()
                .forEach(statement -> bySupport
                        .computeIfAbsent(statement.evidence(), support -> new ArrayList<>())
                        .add(statement));
        bySupport.forEach((support, statements) -> {
            text.item("[" + statements.get(0).grade() + "] "
                    + support.map(Evidence::claim).orElse("No evidence is stated."));
            text.hanging(
                    "    Used for: ",
                    "      ",
                    statements.stream().map(Statement::text).collect(Collectors.joining("; ")));
            support.ifPresent(known -> support(known, text));
        });
    }

    private static void support(Evidence support, TextLines text) {
        support.sources().forEach(source -> text.hanging("    Source: ", "      ", source));
        support.dissent().forEach(view -> text.hanging("    Others hold: ", "      ", view));
    }
}
