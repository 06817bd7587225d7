package org.geneticsrules.json;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.Node.FlagNode;
import org.geneticsrules.document.Node.ListNode;
import org.geneticsrules.document.Node.NumberNode;
import org.geneticsrules.document.Node.ObjectNode;
import org.geneticsrules.document.Node.TextNode;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problems;

/**
 * A part of a document as a shape reader sees it: it asks for what it expects, and what is not so is noted as a problem at the
 * pointer of the part. Asking for the wrong thing never throws, so that one pass finds all.
 *
 * @param located the part
 * @param pointer its pointer
 * @param problems where problems are noted
 */
record Part(Located located, String pointer, Problems problems) {

    /** Names that begin so are for whoever wrote them; the reader passes over them. */
    private static final String OWN_USE = "x-";

    private static final Pattern NOT_BLANK = Pattern.compile("[\\s\\S]*\\S[\\s\\S]*");

    private Part child(String name, Located part) {
        return new Part(part, pointer + Pointer.of(name), problems);
    }

    /** The part in plain form, without what is for own use. */
    Node plain() {
        return plain(located.node());
    }

    private static Node plain(Node node) {
        if (node instanceof ListNode list) {
            return new ListNode(list.items().stream().map(Part::plain).toList());
        }
        if (node instanceof ObjectNode object) {
            Map<String, Node> members = new LinkedHashMap<>();
            object.members().forEach((name, member) -> {
                if (!name.startsWith(OWN_USE)) {
                    members.put(name, plain(member));
                }
            });
            return new ObjectNode(members);
        }
        return node;
    }

    boolean isText() {
        return located.node() instanceof TextNode;
    }

    boolean isList() {
        return located.node() instanceof ListNode;
    }

    boolean isObject() {
        return located.node() instanceof ObjectNode;
    }

    boolean isNumber() {
        return located.node() instanceof NumberNode;
    }

    Optional<String> text() {
        if (located.node() instanceof TextNode text) {
            return Optional.of(text.value());
        }
        wrongKind("a text");
        return Optional.empty();
    }

    /** A text that says something. */
    Optional<String> sentence() {
        return text(NOT_BLANK, "blank-text", "a text that is not blank");
    }

    Optional<String> text(Pattern pattern, String code, String expected) {
        return text().filter(value -> {
            boolean good = pattern.matcher(value).matches();
            if (!good) {
                problems.add(code, pointer, "\"" + value + "\" is not " + expected, expected);
            }
            return good;
        });
    }

    /** One of some words. */
    <T> Optional<T> word(String what, Function<String, Optional<T>> find, List<String> words) {
        return text().flatMap(word -> {
            Optional<T> found = find.apply(word);
            if (found.isEmpty()) {
                problems.unknown("unknown-" + what.replace(' ', '-'), pointer, what, word, words);
            }
            return found;
        });
    }

    Optional<BigDecimal> number() {
        if (located.node() instanceof NumberNode number) {
            return Optional.of(number.value());
        }
        wrongKind("a number");
        return Optional.empty();
    }

    /** A positive whole number that fits an int. */
    Optional<Integer> count() {
        return count(Integer.MAX_VALUE);
    }

    /** A whole number from 1 to a largest one. */
    Optional<Integer> count(int most) {
        return number().flatMap(value -> {
            BigDecimal whole = value.stripTrailingZeros();
            boolean good = whole.scale() <= 0 && value.signum() > 0 && value.compareTo(BigDecimal.valueOf(most)) <= 0;
            if (!good) {
                problems.add("not-a-count", pointer, value + " is not a positive whole number", "1 to " + most);
            }
            return good ? Optional.of(value.intValue()) : Optional.empty();
        });
    }

    /** A whole number from 0 to a largest one. */
    Optional<Integer> amount(int most) {
        return number().flatMap(value -> {
            boolean good = value.stripTrailingZeros().scale() <= 0
                    && value.signum() >= 0
                    && value.compareTo(BigDecimal.valueOf(most)) <= 0;
            if (!good) {
                problems.add("not-an-amount", pointer, value + " is not a whole number from 0 on", "0 to " + most);
            }
            return good ? Optional.of(value.intValue()) : Optional.empty();
        });
    }

    /** A whole number that fits an int. */
    Optional<Integer> whole() {
        return number().flatMap(value -> {
            boolean good = value.stripTrailingZeros().scale() <= 0
                    && value.abs().compareTo(BigDecimal.valueOf(Integer.MAX_VALUE)) <= 0;
            if (!good) {
                problems.add("not-whole", pointer, value + " is not a whole number", "-2147483647 to 2147483647");
            }
            return good ? Optional.of(value.intValue()) : Optional.empty();
        });
    }

    Optional<Boolean> flag() {
        if (located.node() instanceof FlagNode flag) {
            return Optional.of(flag.value());
        }
        wrongKind("true or false");
        return Optional.empty();
    }

    List<Part> items() {
        List<Part> items = new ArrayList<>();
        if (!isList()) {
            wrongKind("a list");
        }
        for (int i = 0; i < located.items().size(); i++) {
            items.add(child(Integer.toString(i), located.items().get(i)));
        }
        return items;
    }

    /** At least so many items. */
    List<Part> items(int least) {
        List<Part> items = items();
        if (isList() && items.size() < least) {
            problems.add("too-few-items", pointer, "the list has " + items.size() + " items", "at least " + least);
        }
        return items;
    }

    List<String> texts(int least) {
        return items(least).stream().flatMap(item -> item.text().stream()).toList();
    }

    List<String> sentences(int least) {
        return items(least).stream().flatMap(item -> item.sentence().stream()).toList();
    }

    /** Texts of which each says something else, in order. */
    Set<String> distinctTexts(int least) {
        return distinct(items(least), Part::text);
    }

    static <T> Set<T> distinct(List<Part> items, Function<Part, Optional<T>> read) {
        Set<T> values = new LinkedHashSet<>();
        for (Part item : items) {
            read.apply(item)
                    .filter(value -> !values.add(value))
                    .ifPresent(value -> item.problems.add(
                            "repeated-item", item.pointer, "\"" + value + "\" stands twice in this list", "each once"));
        }
        return values;
    }

    /** The members of an object whose names the author chose, without those for own use. */
    Map<String, Part> entries() {
        Map<String, Part> entries = new LinkedHashMap<>();
        if (!isObject()) {
            wrongKind("an object");
        }
        located.members().forEach((name, part) -> {
            if (!name.startsWith(OWN_USE)) {
                entries.put(name, child(name, part));
            }
        });
        return entries;
    }

    /** At most so many members. */
    Map<String, Part> entries(String what, int most) {
        Map<String, Part> entries = entries();
        tooMany(entries.size(), what, most);
        return entries;
    }

    void tooMany(int size, String what, int most) {
        if (size > most) {
            problems.add("too-many-" + what, pointer, size + " " + what, "at most " + most);
        }
    }

    /** The members of an object whose names the format fixes; any other is a problem. */
    Members members(String... names) {
        Map<String, Part> members = entries();
        members.forEach((name, part) -> {
            if (!Arrays.asList(names).contains(name)) {
                problems.unknown("unknown-key", part.pointer, "key", name, Arrays.asList(names));
            }
        });
        return new Members(this, members);
    }

    void wrongKind(String expected) {
        problems.add("wrong-kind", pointer, "found " + kind(), expected);
    }

    private String kind() {
        if (isObject()) {
            return "an object";
        }
        if (isList()) {
            return "a list";
        }
        if (isText()) {
            return "a text";
        }
        if (isNumber()) {
            return "a number";
        }
        return located.node() instanceof FlagNode ? "true or false" : "null";
    }

    /**
     * The members of an object by their fixed names.
     *
     * @param owner the object
     * @param found its members
     */
    record Members(Part owner, Map<String, Part> found) {

        Optional<Part> optional(String name) {
            return Optional.ofNullable(found.get(name));
        }

        Optional<Part> required(String name) {
            Optional<Part> part = optional(name);
            if (part.isEmpty() && owner.isObject()) {
                owner.problems.add("missing-key", owner.pointer, "the key \"" + name + "\" is missing", name);
            }
            return part;
        }
    }
}
