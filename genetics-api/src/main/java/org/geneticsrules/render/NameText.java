package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.answer.EvidenceLevel;
import org.geneticsrules.answer.named.NameEvidence;
import org.geneticsrules.answer.named.NameFinding.Called;
import org.geneticsrules.answer.named.NameFinding.Converted;
import org.geneticsrules.answer.named.NameFinding.Meant;
import org.geneticsrules.answer.named.NamedAnswer;
import org.geneticsrules.trait.BoxSet;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.vocabulary.Conversion;
import org.geneticsrules.vocabulary.Match;
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
    private static final int MOST_BOXES = 3;

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
        AnswerText.support(
                new EvidenceLevel(
                        answer.evidence().grade(),
                        answer.evidence().senses().stream()
                                .map(NameEvidence.OfSense::statement)
                                .toList()),
                "vocabulary",
                text);
        text.paragraph((answer.vocabularies().size() == 1 ? "Vocabulary: " : "Vocabularies: ")
                + answer.vocabularies().stream().map(Object::toString).collect(Collectors.joining("; ")) + ".");
        return text.toString();
    }

    private static void called(Naming naming, TextLines text) {
        text.heading(where(naming.vocabulary()));
        List<String> untouched = new ArrayList<>();
        for (InFacet facet : naming.facets()) {
            String title = facet.facet().title().orElse(facet.facet().id());
            List<String> lines = lines(facet);
            if (!lines.isEmpty()) {
                text.paragraph(capital(title) + ":");
                lines.forEach(text::item);
            } else if (!facet.names().isEmpty()) {
                Set<String> lookAt = new LinkedHashSet<>();
                facet.of(Standing.POSSIBLE).forEach(one -> lookAt.addAll(one.lookAt()));
                untouched.add(capital(title) + ": look at " + String.join(", ", lookAt));
            }
        }
        if (!untouched.isEmpty()) {
            text.paragraph("Nothing was seen that bears on:");
            untouched.forEach(text::item);
        }
    }

    /** What is to be said of the names of a facet; nothing if all of them are as open as they were before anything was seen. */
    private static List<String> lines(InFacet facet) {
        List<String> lines = new ArrayList<>();
        List<OfName> possible = facet.of(Standing.POSSIBLE);
        if (possible.size() == facet.names().size()
                && possible.stream().noneMatch(one -> one.lookAt().isEmpty())) {
            return lines;
        }
        facet.narrowest().forEach(one -> lines.add("is " + quoted(one.name()) + senses(one) + used(one) + notes(one)));
        List<String> broader = facet.of(Standing.CERTAIN).stream()
                .filter(one -> !one.narrower().isEmpty())
                .map(one -> quoted(one.name()) + (one.isAmbiguous() ? " (in " + applying(one) + ")" : ""))
                .toList();
        if (!broader.isEmpty()) {
            lines.add("also, more broadly, " + joined(broader, ", "));
        }
        lines.addAll(few("perhaps ", possible, "more are possible"));
        lines.addAll(few("too early for ", facet.of(Standing.TOO_EARLY), "more cannot be told yet"));
        Map<String, List<String>> reasons = new LinkedHashMap<>();
        facet.nearest()
                .forEach(one -> reasons.computeIfAbsent(why(one), none -> new ArrayList<>())
                        .add(quoted(one.name())));
        reasons.forEach((why, names) -> lines.add("not " + joined(names, " or ") + ": " + why));
        return lines;
    }

    /** As many as are read through, and how many more there are. */
    private static String joined(List<String> words, String between) {
        int more = words.size() - MOST_LISTED;
        return words.stream().limit(MOST_LISTED).collect(Collectors.joining(between))
                + (more > 0 ? between + more + " more" : "");
    }

    private static List<String> few(String before, List<OfName> names, String more) {
        List<String> lines = new ArrayList<>();
        names.stream()
                .limit(MOST_LISTED)
                .forEach(one -> lines.add(before + quoted(one.name()) + used(one) + look(one)));
        if (names.size() > MOST_LISTED) {
            lines.add((names.size() - MOST_LISTED) + " " + more);
        }
        return lines;
    }

    /** When it was in use, where that was on a part of the days only. */
    private static String used(OfName one) {
        return one.partly().stream()
                .map(id -> "; in use " + (one.isAmbiguous() ? "as \"" + id + "\" " : "") + period(one.name(), id))
                .collect(Collectors.joining());
    }

    private static String period(Name name, String sense) {
        return Objects.requireNonNull(name.senses().get(sense)).period().inWords();
    }

    private static String look(OfName one) {
        return (one.lookAt().isEmpty() ? "" : "; look at " + String.join(", ", one.lookAt()))
                + one.lookAgain()
                        .map(from -> "; look again from " + from + " on")
                        .orElse("");
    }

    private static String senses(OfName one) {
        return one.isAmbiguous()
                ? ", a word of " + one.senses().size() + " senses; it applies in " + applying(one)
                : "";
    }

    private static String applying(OfName one) {
        return one.senses().keySet().stream()
                .filter(one::applies)
                .map(sense -> "\"" + sense + "\"")
                .collect(Collectors.joining(one.senses().containsValue(Standing.CERTAIN) ? " and " : " or "));
    }

    /** What is noted of a name that applies, and of the senses in which it does. */
    private static String notes(OfName one) {
        return one.notes().stream().map(note -> ". " + note).collect(Collectors.joining());
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
                            : " (" + one.sense().period().inWords() + ")")
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
        List<Conversion.Candidate> shown = found.candidates().stream()
                .filter(one -> found.isLossy() || one.match() != Match.OVERLAPPING)
                .limit(MOST_LISTED)
                .toList();
        for (Conversion.Candidate one : shown) {
            text.item(one.names().stream().map(NameText::quoted).collect(Collectors.joining(" and ")) + ": "
                    + inWords(one.match()));
            set("    It means also: ", one.alsoMeans(), text);
            set("    It does not mean: ", one.leavesOut(), text);
        }
        int left = found.candidates().size() - shown.size();
        if (left > 0) {
            text.paragraph("Names or combinations of names that are further from it: " + left + ".");
        }
        for (Map.Entry<String, BoxSet> one : found.uncovered().entrySet()) {
            if (!one.getValue().isEmpty()) {
                text.paragraph("Of what was said, \"" + one.getKey() + "\" there has no name for:");
                set("    ", one.getValue(), text);
            }
        }
    }

    private static String inWords(Match match) {
        return switch (match) {
            case EXACT -> "exactly the same";
            case BROADER -> "broader: it means more, so something is lost";
            case NARROWER -> "narrower: it means less, so it says more than was known";
            case OVERLAPPING -> "overlapping: only a part of the meaning is shared, so something is lost";
            case NONE -> "none of the same";
        };
    }

    /** Boxes in words, as many as are easily read. */
    private static void set(String before, BoxSet set, TextLines text) {
        List<Condition> boxes = set.boxes();
        if (!boxes.isEmpty()) {
            text.hanging(
                    before,
                    "      ",
                    boxes.stream().limit(MOST_BOXES).map(Condition::toString).collect(Collectors.joining("; or "))
                            + (boxes.size() > MOST_BOXES
                                    ? "; and " + (boxes.size() - MOST_BOXES) + " further combinations"
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
