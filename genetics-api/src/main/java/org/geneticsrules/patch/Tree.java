package org.geneticsrules.patch;

import com.google.common.collect.ImmutableMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.Node.ObjectNode;

/** Edits of objects inside objects, by the names that lead there. Stateless and thread-safe. */
final class Tree {

    private Tree() {}

    static Map<String, Node> members(Node node) {
        return node instanceof ObjectNode object ? object.members() : ImmutableMap.of();
    }

    static Optional<Node> at(Node node, List<String> names) {
        Optional<Node> found = Optional.of(node);
        for (String name : names) {
            found = found.flatMap(inner -> Optional.ofNullable(members(inner).get(name)));
        }
        return found;
    }

    /** The same tree with one part added at the end or replaced in its place; objects that lead there are made. */
    static Node put(Node node, List<String> names, Node part) {
        if (names.isEmpty()) {
            return part;
        }
        Map<String, Node> members = new LinkedHashMap<>(members(node));
        Node inner = members.getOrDefault(names.get(0), new ObjectNode(ImmutableMap.of()));
        members.put(names.get(0), put(inner, names.subList(1, names.size()), part));
        return new ObjectNode(members);
    }

    /** The same tree without a part that is there. */
    static Node remove(Node node, List<String> names) {
        Map<String, Node> members = new LinkedHashMap<>(members(node));
        String first = names.get(0);
        if (names.size() == 1) {
            members.remove(first);
        } else {
            members.computeIfPresent(first, (name, inner) -> remove(inner, names.subList(1, names.size())));
        }
        return new ObjectNode(members);
    }
}
