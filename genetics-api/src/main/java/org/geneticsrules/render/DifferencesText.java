package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.geneticsrules.answer.compared.DocumentChange;
import org.geneticsrules.document.Difference;
import org.geneticsrules.document.Difference.Kind;
import org.geneticsrules.document.Differences;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.Node.ListNode;
import org.geneticsrules.document.Node.ObjectNode;
import org.geneticsrules.document.Node.TextNode;
import org.geneticsrules.document.Reference;

/**
 * What is otherwise between two answers as plain text: in a sentence whether anything is, then part by part what was, and what is now.
 *
 * <p>Stateless and thread-safe.
 */
public final class DifferencesText {

    private static final String VERDICT = "verdict";

    /** What fits on one line beside what it was before. */
    private static final int SHORT = 32;

    /** Of a larger part of a document only so much is shown; its pointer leads to the rest. */
    private static final int LONGEST = 400;

    /** Of each part. */
    private static final int MOST = 20;

    /** What a part of a document is told by, if it has one of these. */
    private static final List<String> SPOKEN = List.of("line", "text", VERDICT, "view", "claim", "title", "id");

    private final TextLines text;

    private DifferencesText(TextStyle style) {
        this.text = new TextLines(style.width());
    }

    /**
     * Returns what is otherwise, in the standard style.
     *
     * @param differences what is otherwise between two answers
     * @return lines that end in a newline
     */
    public static String of(Differences differences) {
        return of(differences, TextStyle.standard());
    }

    /**
     * Returns what is otherwise in a style.
     *
     * @param differences what is otherwise between two answers
     * @param style how it is laid out
     * @return lines that end in a newline
     */
    public static String of(Differences differences, TextStyle style) {
        DifferencesText written = new DifferencesText(style);
        written.text.paragraph(summary(differences));
        written.parts(differences);
        return written.text.toString();
    }

    /**
     * Returns what moved when a question was asked again, and what else is otherwise: the library, the models, the records.
     *
     * @param differences what is otherwise in the answer
     * @param documents the documents that are otherwise
     * @param before the version of the library that answered first
     * @param after the version that answered now
     * @param style how it is laid out
     * @return lines that end in a newline
     */
    public static String again(
            Differences differences, List<DocumentChange> documents, String before, String after, TextStyle style) {
        DifferencesText written = new DifferencesText(style);
        written.text.paragraph(summary(differences));
        if (!before.equals(after)) {
            written.text.paragraph("It was frozen by version " + before + " of the library, and asked again of version "
                    + after + ".");
        }
        written.parts(differences);
        if (!documents.isEmpty()) {
            written.text.heading("Models and records that are otherwise");
            documents.forEach(written::document);
        }
        return written.text.toString();
    }

    private void document(DocumentChange one) {
        String name = one.kind() + " " + one.id();
        if (one.before().isEmpty() || one.after().isEmpty()) {
            text.item(name + " "
                    + one.after().or(one::before).map(Reference::version).orElse("")
                    + (one.before().isEmpty() ? ": new" : ": gone"));
            return;
        }
        Reference from = one.before().get();
        Reference to = one.after().get();
        text.item(name
                + (from.version().equals(to.version())
                        ? ": version " + to.version() + " with another content under the same number"
                        : ": was version " + from.version() + ", is now " + to.version())
                + " (sha256 " + hash(from) + ", now " + hash(to) + ")");
        entries(one.statements().all(), 0, "    ");
    }

    private static String hash(Reference reference) {
        return reference.sha256().map(hash -> hash.substring(0, 12) + "...").orElse("not stated");
    }

    /** Whether anything is otherwise, and whether that is the verdict. */
    private static String summary(Differences differences) {
        if (differences.identical()) {
            return "The same: not a letter or a number of the answer is otherwise.";
        }
        if (differences.isEmpty()) {
            return String.format(
                    Locale.ROOT,
                    "The same: all words are, and no number differs by more than %.0e of itself.",
                    differences.tolerance());
        }
        long verdict = differences.all().stream()
                .filter(one -> one.place().equals(List.of(VERDICT)))
                .count();
        int number = differences.all().size();
        return (verdict > 0 ? "The verdict is another one; " : "The verdict is the same, but not everything; ")
                + number
                + (number == 1 ? " difference." : " differences in all.");
    }

    private void parts(Differences differences) {
        Map<String, List<Difference>> parts = new LinkedHashMap<>();
        differences
                .all()
                .forEach(one -> parts.computeIfAbsent(
                                one.place().isEmpty() ? "" : one.place().get(0), any -> new ArrayList<>())
                        .add(one));
        Stream.concat(
                        parts.keySet().stream().filter(VERDICT::equals),
                        parts.keySet().stream().filter(name -> !name.equals(VERDICT)))
                .forEach(name -> {
                    text.heading(title(name));
                    entries(parts.getOrDefault(name, List.of()), 1, "");
                });
    }

    private void entries(List<Difference> all, int from, String indent) {
        all.stream().limit(MOST).forEach(one -> entry(one, from, indent));
        if (all.size() > MOST) {
            text.hanging(indent + "- ", indent + "  ", "and " + (all.size() - MOST) + " more");
        }
    }

    private void entry(Difference one, int from, String indent) {
        List<String> place = one.place()
                .subList(Math.min(from, one.place().size()), one.place().size());
        String before = one.before().map(DifferencesText::words).orElse("");
        String after = one.after().map(DifferencesText::words).orElse("");
        List<String> told = isTold(one, place, before + after) ? place.subList(0, place.size() - 1) : place;
        String at = told.stream().map(DifferencesText::spaced).collect(Collectors.joining(", "));
        String start = at.isEmpty() ? "" : at + ": ";
        String first = indent + "- ";
        String rest = indent + "  ";
        switch (one.kind()) {
            case ADDED -> text.hanging(first, rest, start + "new: " + after);
            case REMOVED -> text.hanging(first, rest, start + "gone: " + before);
            case CHANGED -> {
                if (before.length() <= SHORT && after.length() <= SHORT) {
                    text.hanging(first, rest, start + "was " + before + ", is now " + after);
                } else {
                    text.hanging(first, rest, start + "was: " + before).hanging(rest + "is now: ", rest + "  ", after);
                }
            }
            case REORDERED ->
                text.hanging(first, rest, start + "in another order; was: " + before)
                        .hanging(rest + "is now: ", rest + "  ", after);
        }
    }

    /** Whether what an item goes by is told by itself, or is but its number. */
    private static boolean isTold(Difference one, List<String> place, String words) {
        if (place.isEmpty() || (one.kind() != Kind.ADDED && one.kind() != Kind.REMOVED)) {
            return false;
        }
        String last = place.get(place.size() - 1);
        return last.matches("[0-9]+") || words.contains(last);
    }

    private static String title(String name) {
        String words = name.isEmpty() ? "whole" : spaced(name);
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    /** The words of a member's name. */
    private static String spaced(String name) {
        return name.matches("[a-z]+([A-Z][a-z]*)+")
                ? name.replaceAll("([A-Z])", " $1").toLowerCase(Locale.ROOT)
                : name;
    }

    private static String words(Node node) {
        String words = spoken(node);
        return words.length() <= LONGEST ? words : words.substring(0, LONGEST) + " ...";
    }

    private static String spoken(Node node) {
        if (node instanceof TextNode one) {
            return one.value();
        }
        if (node instanceof ListNode list) {
            return list.items().isEmpty()
                    ? "none"
                    : list.items().stream().map(DifferencesText::spoken).collect(Collectors.joining("; "));
        }
        if (node instanceof ObjectNode object) {
            Map<String, Node> members = object.members();
            Optional<String> upper = value(members, "numerator");
            Optional<String> lower = value(members, "denominator");
            if (upper.isPresent() && lower.isPresent()) {
                return upper.get()
                        + (lower.get().equals("1") ? "" : "/" + lower.get())
                        + value(members, "decimal")
                                .map(decimal -> " (" + decimal + ")")
                                .orElse("");
            }
            return SPOKEN.stream()
                    .flatMap(name -> value(members, name).stream())
                    .findFirst()
                    .orElseGet(() -> members.entrySet().stream()
                            .map(member -> spaced(member.getKey()) + " " + spoken(member.getValue()))
                            .collect(Collectors.joining(", ")));
        }
        return node.toString();
    }

    private static Optional<String> value(Map<String, Node> members, String name) {
        return members.get(name) instanceof TextNode one ? Optional.of(one.value()) : Optional.empty();
    }
}
