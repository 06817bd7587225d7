package org.geneticsrules.document;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import org.geneticsrules.document.Node.ListNode;
import org.geneticsrules.document.Node.NumberNode;
import org.geneticsrules.document.Node.ObjectNode;

/**
 * Trees like answers, drawn from a seed: objects, exact chances, decimals as texts, sentences, lists by id, by look, by two members together,
 * by number and of sentences, some of them repeated.
 */
final class RandomTree {

    private final Random random;

    RandomTree(long seed) {
        this.random = new Random(seed);
    }

    Node answer() {
        return object(3);
    }

    private Node object(int depth) {
        Map<String, Node> members = new LinkedHashMap<>();
        int size = 1 + random.nextInt(5);
        for (int i = 0; i < size; i++) {
            members.put(
                    List.of("verdict", "p", "fit", "kits", "a/b", "m~n").get(random.nextInt(6)) + i, node(depth - 1));
        }
        return new ObjectNode(members);
    }

    private Node node(int depth) {
        return switch (depth <= 0 ? random.nextInt(5) : random.nextInt(9)) {
            case 0 -> Node.text("sentence " + random.nextInt(1000));
            case 1 -> Node.text(random.nextInt(100) + "." + (1 + random.nextInt(9)));
            case 2 -> new NumberNode(BigDecimal.valueOf(random.nextInt(1000)));
            case 3 -> Node.flag(random.nextBoolean());
            case 4 -> chance();
            case 5 -> object(depth);
            case 6 -> sentences();
            case 7 -> numbers();
            default -> keyed(depth);
        };
    }

    private Node chance() {
        int lower = 2 + random.nextInt(9);
        int upper = 1 + random.nextInt(lower - 1);
        return new ObjectBuilder()
                .with("numerator", Integer.toString(upper))
                .with("denominator", Integer.toString(lower))
                .with("decimal", String.format(Locale.ROOT, "%.3f", (double) upper / lower))
                .build();
    }

    /** Some stand twice. */
    private Node sentences() {
        List<Node> items = new ArrayList<>();
        for (int i = random.nextInt(5); i >= 0; i--) {
            items.add(Node.text("note " + random.nextInt(4)));
        }
        return new ListNode(items);
    }

    private Node numbers() {
        List<Node> items = new ArrayList<>();
        for (int i = random.nextInt(4); i >= 0; i--) {
            items.add(Node.text("-" + random.nextInt(50) + ".5"));
        }
        return new ListNode(items);
    }

    private Node keyed(int depth) {
        List<Node> items = new ArrayList<>();
        int size = 1 + random.nextInt(4);
        int form = random.nextInt(4);
        for (int i = 0; i < size; i++) {
            Map<String, Node> members = new LinkedHashMap<>();
            switch (form) {
                case 0 -> members.put("id", Node.text("item " + i));
                case 1 ->
                    members.put(
                            "phenotype",
                            new ObjectBuilder().with("eye", "state " + i).build());
                case 2 -> {
                    members.put("locus", Node.text("locus " + i / 2));
                    members.put("trait", Node.text("trait " + i % 2));
                }
                default -> members.put("note", node(0));
            }
            members.put("value", node(depth - 1));
            items.add(new ObjectNode(members));
        }
        return new ListNode(items);
    }
}
