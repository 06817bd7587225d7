package org.geneticsrules.json;

import java.util.Iterator;
import java.util.Map;
import java.util.stream.Collectors;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.Node.ListNode;
import org.geneticsrules.document.Node.ObjectNode;

/**
 * Documents as text for people: members in declared order, two spaces per level, and what fits on one line on one line. One document
 * has one such text.
 */
final class JsonText {

    private static final int WIDTH = 120;
    private static final int STEP = 2;

    private final StringBuilder out = new StringBuilder();

    private JsonText() {}

    /** The text of a document, ending in a newline. */
    static String of(Node document) {
        JsonText text = new JsonText();
        text.block(document, 0);
        return text.out.append('\n').toString();
    }

    /** Writes a part whose indent is already written, on one line if it fits beside what stands there. */
    private void write(Node node, int indent, int used) {
        String line = line(node);
        if (used + line.length() < WIDTH || !(node instanceof ObjectNode || node instanceof ListNode)) {
            out.append(line);
        } else {
            block(node, indent);
        }
    }

    private void block(Node node, int indent) {
        int inner = indent + STEP;
        if (node instanceof ObjectNode object && !object.members().isEmpty()) {
            out.append("{\n");
            for (Iterator<Map.Entry<String, Node>> members =
                            object.members().entrySet().iterator();
                    members.hasNext(); ) {
                Map.Entry<String, Node> member = members.next();
                String name = Node.text(member.getKey()) + ": ";
                out.append(" ".repeat(inner)).append(name);
                write(member.getValue(), inner, inner + name.length());
                out.append(members.hasNext() ? ",\n" : "\n");
            }
            out.append(" ".repeat(indent)).append('}');
        } else if (node instanceof ListNode list && !list.items().isEmpty()) {
            out.append("[\n");
            for (Iterator<Node> items = list.items().iterator(); items.hasNext(); ) {
                out.append(" ".repeat(inner));
                write(items.next(), inner, inner);
                out.append(items.hasNext() ? ",\n" : "\n");
            }
            out.append(" ".repeat(indent)).append(']');
        } else {
            out.append(line(node));
        }
    }

    private static String line(Node node) {
        if (node instanceof ObjectNode object) {
            return object.members().entrySet().stream()
                    .map(member -> Node.text(member.getKey()) + ": " + line(member.getValue()))
                    .collect(Collectors.joining(", ", "{", "}"));
        }
        if (node instanceof ListNode list) {
            return list.items().stream().map(JsonText::line).collect(Collectors.joining(", ", "[", "]"));
        }
        return node.toString();
    }
}
