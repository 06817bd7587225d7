package org.geneticsrules.json;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.Node.ListNode;
import org.geneticsrules.document.Node.ObjectNode;
import org.geneticsrules.document.Node.TextNode;

/** Damages documents at random, from a seed: as trees, so that the text stays JSON, and as bytes, so that it may not. */
final class Mutations {

    private static final List<Node> OTHER_KINDS = List.of(
            Node.text(""),
            Node.text("x > y"),
            Node.number(0),
            Node.number(-7),
            new Node.NumberNode(new BigDecimal("0.5")),
            Node.flag(true),
            Node.flag(false),
            new Node.NullNode(),
            Node.list(),
            Node.list(Node.text("C"), Node.text("C")),
            new ObjectNode(Map.of()),
            new ObjectNode(Map.of("not", Node.list(Node.text("dark")))));

    private static final List<String> FRAGMENTS = List.of(
            "{",
            "}",
            "[",
            "]",
            ",",
            ":",
            "\"",
            "\\",
            "\\u12",
            "\\ud800",
            "null",
            "1e999999999",
            "-",
            "0",
            "NaN",
            "//",
            "\n",
            "\u0000",
            "\"x\":1,",
            "\uFEFF");

    private final Random random;

    Mutations(long seed) {
        this.random = new Random(seed);
    }

    /** One or two changes to parts of the tree. */
    Node tree(Node document) {
        Node once = change(document);
        return random.nextInt(3) == 0 ? change(once) : once;
    }

    /** One or two changes to the bytes. */
    byte[] bytes(byte[] text) {
        byte[] once = damage(text);
        return random.nextInt(4) == 0 ? damage(once) : once;
    }

    private Node change(Node document) {
        List<List<Object>> paths = new ArrayList<>();
        collect(document, List.of(), paths);
        if (paths.isEmpty()) {
            return document;
        }
        List<Object> path = paths.get(random.nextInt(paths.size()));
        Node other = at(document, paths.get(random.nextInt(paths.size())));
        return edit(document, path, other);
    }

    private static void collect(Node node, List<Object> path, List<List<Object>> into) {
        if (node instanceof ObjectNode object) {
            object.members().forEach((name, member) -> into.add(append(path, name)));
            object.members().forEach((name, member) -> collect(member, append(path, name), into));
        } else if (node instanceof ListNode list) {
            for (int i = 0; i < list.items().size(); i++) {
                into.add(append(path, i));
                collect(list.items().get(i), append(path, i), into);
            }
        }
    }

    private static List<Object> append(List<Object> path, Object step) {
        List<Object> longer = new ArrayList<>(path);
        longer.add(step);
        return longer;
    }

    private static Node at(Node node, List<Object> path) {
        Node found = node;
        for (Object step : path) {
            found = step instanceof Integer i
                    ? ((ListNode) found).items().get(i)
                    : ((ObjectNode) found).members().get(step);
        }
        return found;
    }

    /** Rebuilds the path to a part and damages the part. */
    private Node edit(Node node, List<Object> path, Node other) {
        Object step = path.get(0);
        boolean last = path.size() == 1;
        if (node instanceof ListNode list) {
            List<Node> items = new ArrayList<>(list.items());
            int i = (Integer) step;
            if (last) {
                editItem(items, i, other);
            } else {
                items.set(i, edit(items.get(i), path.subList(1, path.size()), other));
            }
            return new ListNode(items);
        }
        Map<String, Node> members = new LinkedHashMap<>();
        ((ObjectNode) node).members().forEach((name, member) -> {
            if (!name.equals(step)) {
                members.put(name, member);
            } else if (last) {
                editMember(members, name, member, other);
            } else {
                members.put(name, edit(member, path.subList(1, path.size()), other));
            }
        });
        return new ObjectNode(members);
    }

    private void editItem(List<Node> items, int i, Node other) {
        switch (random.nextInt(4)) {
            case 0 -> items.remove(i);
            case 1 -> items.add(random.nextInt(items.size() + 1), items.get(i));
            case 2 -> items.set(i, other);
            default -> items.set(i, replaced(items.get(i)));
        }
    }

    private void editMember(Map<String, Node> members, String name, Node member, Node other) {
        switch (random.nextInt(5)) {
            case 0 -> {
                // left out
            }
            case 1 -> members.put(misspelt(name), member);
            case 2 -> members.put(name, other);
            case 3 -> {
                members.put(name, member);
                members.put(misspelt(name), member);
            }
            default -> members.put(name, replaced(member));
        }
    }

    private Node replaced(Node node) {
        return node instanceof TextNode text && random.nextBoolean()
                ? Node.text(misspelt(text.value()))
                : OTHER_KINDS.get(random.nextInt(OTHER_KINDS.size()));
    }

    private String misspelt(String word) {
        StringBuilder text = new StringBuilder(word);
        int at = random.nextInt(word.length() + 1);
        switch (random.nextInt(4)) {
            case 0 -> text.insert(at, "aZ9 /~^>\n\u00e9x-".charAt(random.nextInt(12)));
            case 1 -> text.setLength(at);
            case 2 -> text.append(word);
            default -> text.insert(0, random.nextBoolean() ? "x-" : " ");
        }
        return text.toString();
    }

    private byte[] damage(byte[] text) {
        int at = random.nextInt(text.length + 1);
        int to = Math.min(text.length, at + 1 + random.nextInt(12));
        switch (random.nextInt(5)) {
            case 0 -> {
                return Arrays.copyOf(text, at);
            }
            case 1 -> {
                return join(Arrays.copyOf(text, at), Arrays.copyOfRange(text, to, text.length));
            }
            case 2 -> {
                byte[] fragment =
                        FRAGMENTS.get(random.nextInt(FRAGMENTS.size())).getBytes(StandardCharsets.UTF_8);
                return join(join(Arrays.copyOf(text, at), fragment), Arrays.copyOfRange(text, at, text.length));
            }
            case 3 -> {
                byte[] letters = text.clone();
                for (int i = at; i < to; i++) {
                    letters[i] = Character.isLetter(text[i]) ? (byte) ('a' + random.nextInt(26)) : text[i];
                }
                return letters;
            }
            default -> {
                byte[] flipped = text.clone();
                if (at < text.length) {
                    flipped[at] = (byte) random.nextInt(256);
                }
                return flipped;
            }
        }
    }

    private static byte[] join(byte[] one, byte[] other) {
        byte[] both = Arrays.copyOf(one, one.length + other.length);
        System.arraycopy(other, 0, both, one.length, other.length);
        return both;
    }
}
