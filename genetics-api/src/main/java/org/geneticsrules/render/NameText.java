package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.geneticsrules.answer.named.NameFinding.Called;
import org.geneticsrules.answer.named.NameFinding.Converted;
import org.geneticsrules.answer.named.NameFinding.Meant;
import org.geneticsrules.answer.named.NamedAnswer;
import org.geneticsrules.trait.BoxSet;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.vocabulary.Conversion;
import org.geneticsrules.vocabulary.Meaning;
import org.geneticsrules.vocabulary.Name;
import org.geneticsrules.vocabulary.Naming;
import org.geneticsrules.vocabulary.Naming.InFacet;
import org.geneticsrules.vocabulary.Naming.OfName;
import org.geneticsrules.vocabulary.Naming.Standing;
import org.geneticsrules.vocabulary.Period;
import org.geneticsrules.vocabulary.Vocabulary;

/**
 * An answer about names as plain text: the verdict first, then the names of each vocabulary with what speaks for and against them, the cautions
 * and the evidence.
 *
 * <p>Stateless and thread-safe.
 */
public final class NameText {

    private static final int MOST_LISTED = 8;

    private NameText() {}

    /**
     * Returns an answer in the standard style.
     *
     * @param answer an answer
     * @return lines that end in a newline
     */
    public static String of(NamedAnswer answer) {
        return of(answer, TextStyle.standard());
    }

    /**
     * Returns an answer in a style.
     *
     * @param answer an answer
     * @param style how it is laid out
     * @return lines that end in a newline
     */
    public static String of(NamedAnswer answer, TextStyle style) {
        TextLines text = new TextLines(style.width());
        text.paragraph(answer.verdict());
        if (answer.finding() instanceof Called found) {
            found.namings().forEach(naming -> called(naming, text));
        } else if (answer.finding() instanceof Meant found) {
            meant(found.meaning(), text);
        } else if (answer.finding() instanceof Converted found) {
            converted(found.conversion(), text);
        }
        if (!answer.notices().isEmpty()) {
            text.heading("Please note");
            answer.notices().forEach(notice -> text.item(sentence(notice)));
        }
        text.heading("Asked");
        text.paragraph(answer.question());
        answer.given().forEach(fact -> text.item("given: " + fact));
        AnswerText.cautions(answer.cautions(), text);
        AnswerText.support(answer.evidence(), "vocabulary", text);
        text.paragraph((answer.vocabularies().size() == 1 ? "Vocabulary: " : "Vocabularies: ")
                + answer.vocabularies().stream().map(Object::toString).collect(Collectors.joining("; ")) + ".");
        return text.toString();
    }

    private static void called(Naming naming, TextLines text) {
        text.heading(where(naming.vocabulary()));
        for (InFacet facet : naming.facets()) {
            List<String> lines = new ArrayList<>();
            facet.narrowest().forEach(one -> lines.add("is " + quoted(one.name()) + senses(one)));
            facet.of(Standing.CERTAIN).stream()
                    .filter(one -> !one.narrower().isEmpty())
                    .forEach(one -> lines.add("also " + quoted(one.name()) + ", which is broader" + senses(one)));
            few(facet.of(Standing.POSSIBLE), "names more are possible").forEach(line -> lines.add("perhaps " + line));
            few(facet.of(Standing.TOO_EARLY), "names more cannot be told yet")
                    .forEach(line -> lines.add("too early for " + line));
            facet.nearest().stream()
                    .limit(MOST_LISTED)
                    .forEach(one -> lines.add("not " + quoted(one.name()) + ": " + why(one)));
            if (lines.isEmpty()) {
                continue;
            }
            text.paragraph(capital(facet.facet().title().orElse(facet.facet().id())) + ":");
            lines.forEach(text::item);
        }
    }

    private static List<String> few(List<OfName> names, String more) {
        List<String> lines = new ArrayList<>();
        names.stream().limit(MOST_LISTED).forEach(one -> lines.add(quoted(one.name()) + look(one)));
        if (names.size() > MOST_LISTED) {
            lines.add((names.size() - MOST_LISTED) + " " + more);
        }
        return lines;
    }

    private static String look(OfName one) {
        return (one.lookAt().isEmpty() ? "" : "; look at " + String.join(", ", one.lookAt()))
                + one.lookAgain()
                        .map(from -> "; look again from " + from + " on")
                        .orElse("");
    }

    private static String senses(OfName one) {
        if (!one.isAmbiguous()) {
            return "";
        }
        return ", a word of " + one.senses().size() + " senses; in "
                + one.senses().entrySet().stream()
                        .filter(sense -> sense.getValue() == Standing.CERTAIN)
                        .map(sense -> "\"" + sense.getKey() + "\"")
                        .collect(Collectors.joining(" and "))
                + " it applies";
    }

    private static String why(OfName one) {
        return one.differences().stream()
                .map(difference -> difference.trait() + " is " + difference.seen() + ", and would have to be "
                        + String.join(" or ", difference.needed()))
                .collect(Collectors.joining("; "));
    }

    private static void meant(Meaning meaning, TextLines text) {
        text.heading("What it may mean");
        for (Meaning.Reading one : meaning.readings()) {
            text.item(quoted(one.name()) + ", sense \"" + one.sense().id() + "\""
                    + (one.sense().period().equals(Period.always())
                            ? ""
                            : " (" + one.sense().period() + ")")
                    + ": "
                    + one.sense().looks().values().stream()
                            .map(Condition::toString)
                            .collect(Collectors.joining("; or ")));
            one.sense().note().ifPresent(note -> text.hanging("    ", "    ", note));
            one.name().note().ifPresent(note -> text.hanging("    ", "    ", note));
        }
    }

    private static void converted(Conversion found, TextLines text) {
        text.heading("Called in " + where(found.target()));
        if (found.candidates().isEmpty()) {
            text.paragraph("No name.");
        }
        for (Conversion.Candidate one : found.candidates()
                .subList(0, Math.min(MOST_LISTED, found.candidates().size()))) {
            text.item(one.names().stream().map(NameText::quoted).collect(Collectors.joining(" and ")) + ": "
                    + (one.isLossy() ? one.match().word() + ", so something is lost" : "exactly the same"));
            set("    It means also: ", one.alsoMeans(), text);
            set("    It does not mean: ", one.leavesOut(), text);
        }
        if (found.candidates().size() > MOST_LISTED) {
            text.paragraph(
                    "And " + (found.candidates().size() - MOST_LISTED) + " further names or combinations of names.");
        }
        for (Map.Entry<String, BoxSet> one : found.uncovered().entrySet()) {
            if (!one.getValue().isEmpty()) {
                text.paragraph("Of what was said, \"" + one.getKey() + "\" there has no name for:");
                set("    ", one.getValue(), text);
            }
        }
    }

    /** Boxes in words, as many as are easily read. */
    private static void set(String before, BoxSet set, TextLines text) {
        List<Condition> boxes = set.boxes();
        if (!boxes.isEmpty()) {
            text.hanging(
                    before,
                    "      ",
                    boxes.stream().limit(MOST_LISTED).map(Condition::toString).collect(Collectors.joining("; or "))
                            + (boxes.size() > MOST_LISTED
                                    ? "; and " + (boxes.size() - MOST_LISTED) + " further combinations"
                                    : ""));
        }
    }

    private static String quoted(Name name) {
        return "\"" + name.word() + "\"";
    }

    private static String where(Vocabulary vocabulary) {
        return vocabulary.region().or(vocabulary::title).orElse(vocabulary.id());
    }

    private static String sentence(String notice) {
        return capital(notice) + (notice.endsWith(".") ? "" : ".");
    }

    private static String capital(String text) {
        return CarrySection.capital(text);
    }
}
