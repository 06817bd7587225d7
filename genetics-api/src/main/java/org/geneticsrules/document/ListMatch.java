package org.geneticsrules.document;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.geneticsrules.document.Node.ObjectNode;
import org.geneticsrules.document.Node.TextNode;

/** Which item of one list is which of another: by what it goes by, else by its text, else by its number. */
final class ListMatch {

    /** What items of lists go by in the documents of this library, the surest first. */
    private static final ImmutableList<String> KEYS = ImmutableList.of(
            "kit",
            "animal",
            "individual",
            "id",
            "pointer",
            "title",
            "name",
            "litter",
            "parents",
            "phenotype",
            "look",
            "shown",
            "population",
            "locus",
            "allele",
            "pair",
            "genotype",
            "expression",
            "trait",
            "state",
            "count",
            "what",
            "words",
            "step",
            "hypothesis",
            "effort",
            "rival",
            "true",
            "over",
            "design",
            "sureness",
            "stage",
            "view",
            "statement",
            "text");

    /**
     * An item of either list, or of both.
     *
     * @param label what it goes by
     * @param from its number in the first, from 0
     * @param to its number in the second
     */
    record Pair(String label, OptionalInt from, OptionalInt to) {}

    private final List<Pair> pairs;
    private final Function<Node, String> label;

    private ListMatch(List<Pair> pairs, Function<Node, String> label) {
        this.pairs = pairs;
        this.label = label;
    }

    static ListMatch of(List<Node> before, List<Node> after, Predicate<Node> isNumber) {
        List<Node> all = Stream.concat(before.stream(), after.stream()).toList();
        Optional<Function<Node, String>> key = key(before, after, all);
        if (key.isPresent()) {
            return new ListMatch(matched(before, after, key.get()), key.get());
        }
        boolean texts = all.stream().allMatch(TextNode.class::isInstance);
        if (texts && all.stream().noneMatch(isNumber)) {
            return new ListMatch(byNumber(matched(before, after, ListMatch::words)), ListMatch::words);
        }
        return new ListMatch(numbered(before, after), ListMatch::words);
    }

    List<Pair> pairs() {
        return pairs;
    }

    List<String> labels(List<Node> items) {
        return items.stream().map(label).toList();
    }

    /** Whether items that are in both stand in another order. */
    boolean isReordered() {
        int last = -1;
        for (Pair pair : pairs) {
            if (pair.from().isPresent() && pair.to().isPresent()) {
                if (pair.to().getAsInt() < last) {
                    return true;
                }
                last = pair.to().getAsInt();
            }
        }
        return false;
    }

    /** The first member, or all such members together, by which the items of either list can be told from one another. */
    private static Optional<Function<Node, String>> key(List<Node> before, List<Node> after, List<Node> all) {
        List<String> common = KEYS.stream()
                .filter(name -> all.stream()
                        .allMatch(item -> item instanceof ObjectNode object
                                && object.members().containsKey(name)))
                .toList();
        List<Function<Node, String>> keys = new ArrayList<>();
        common.forEach(name -> keys.add(item -> words(member(item, name))));
        keys.add(item -> common.stream().map(name -> words(member(item, name))).collect(Collectors.joining(", ")));
        return all.isEmpty() || common.isEmpty()
                ? Optional.empty()
                : keys.stream()
                        .filter(key -> areDistinct(before, key) && areDistinct(after, key))
                        .findFirst();
    }

    private static Node member(Node item, String name) {
        return item instanceof ObjectNode object ? object.members().getOrDefault(name, item) : item;
    }

    private static boolean areDistinct(List<Node> items, Function<Node, String> key) {
        Set<String> seen = new HashSet<>();
        return items.stream().map(key).allMatch(seen::add);
    }

    /** Items of one key are the same, the first with the first where a key stands more than once. */
    private static List<Pair> matched(List<Node> before, List<Node> after, Function<Node, String> key) {
        Map<String, List<Integer>> left = new LinkedHashMap<>();
        for (int at = 0; at < after.size(); at++) {
            left.computeIfAbsent(key.apply(after.get(at)), any -> new ArrayList<>())
                    .add(at);
        }
        List<Pair> pairs = new ArrayList<>();
        for (int at = 0; at < before.size(); at++) {
            String name = key.apply(before.get(at));
            List<Integer> places = left.getOrDefault(name, new ArrayList<>());
            OptionalInt to = places.isEmpty() ? OptionalInt.empty() : OptionalInt.of(places.remove(0));
            pairs.add(new Pair(name, OptionalInt.of(at), to));
        }
        List<Pair> added = new ArrayList<>();
        left.forEach((name, places) ->
                places.forEach(at -> added.add(new Pair(name, OptionalInt.empty(), OptionalInt.of(at)))));
        added.stream()
                .sorted((one, other) ->
                        Integer.compare(one.to().getAsInt(), other.to().getAsInt()))
                .forEach(pairs::add);
        return pairs;
    }

    /** A sentence is too long a name for itself. */
    private static List<Pair> byNumber(List<Pair> pairs) {
        return pairs.stream()
                .map(pair -> new Pair(
                        Integer.toString(pair.from().orElseGet(() -> pair.to().orElseThrow()) + 1),
                        pair.from(),
                        pair.to()))
                .toList();
    }

    /** By number, where lists differ in length after what they begin with and before what they end with alike. */
    private static List<Pair> numbered(List<Node> before, List<Node> after) {
        int shorter = Math.min(before.size(), after.size());
        int head = 0;
        while (head < shorter && before.get(head).equals(after.get(head))) {
            head++;
        }
        int tail = 0;
        while (tail < shorter - head
                && before.get(before.size() - 1 - tail).equals(after.get(after.size() - 1 - tail))) {
            tail++;
        }
        List<Pair> pairs = new ArrayList<>();
        for (int at = head; at < Math.max(before.size(), after.size()) - tail; at++) {
            OptionalInt from = at < before.size() - tail ? OptionalInt.of(at) : OptionalInt.empty();
            OptionalInt to = at < after.size() - tail ? OptionalInt.of(at) : OptionalInt.empty();
            if (from.isPresent() || to.isPresent()) {
                pairs.add(new Pair(Integer.toString(at + 1), from, to));
            }
        }
        return pairs;
    }

    /** A part of a document in a few words. */
    private static String words(Node node) {
        if (node instanceof TextNode text) {
            return text.value();
        }
        if (node instanceof ObjectNode object) {
            Node id = object.members().get("id");
            return id != null
                    ? words(id)
                    : object.members().entrySet().stream()
                            .map(member -> member.getKey() + " " + words(member.getValue()))
                            .collect(Collectors.joining(", "));
        }
        return node.toString();
    }
}
