package org.geneticsrules.json;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.document.Node;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Position;
import org.geneticsrules.problem.Problem;
import org.jspecify.annotations.Nullable;

/**
 * A part of a document with its place in the text. The tree of places mirrors the tree of nodes; a table of pointers would grow with
 * the square of the depth.
 *
 * @param at where it begins: at its name if it is a member
 * @param node the part in plain form
 * @param members the members, if it is an object
 * @param items the items, if it is a list
 */
record Located(Position at, Node node, Map<String, Located> members, List<Located> items) {

    private static final Position NOWHERE = new Position(1, 1);

    Located {
        members = ImmutableMap.copyOf(members);
        items = ImmutableList.copyOf(items);
    }

    /** A tree that was not read from a text; its places tell nothing. */
    static Located of(Node node) {
        ImmutableMap.Builder<String, Located> members = ImmutableMap.builder();
        ImmutableList.Builder<Located> items = ImmutableList.builder();
        if (node instanceof Node.ObjectNode object) {
            object.members().forEach((name, member) -> members.put(name, of(member)));
        } else if (node instanceof Node.ListNode list) {
            list.items().forEach(item -> items.add(of(item)));
        }
        return new Located(NOWHERE, node, members.buildOrThrow(), items.build());
    }

    static Located leaf(Position at, Node node) {
        return new Located(at, node, ImmutableMap.of(), ImmutableList.of());
    }

    /** The same part, said to begin elsewhere. */
    Located from(Position start) {
        return new Located(start, node, members, items);
    }

    /** The problem with a position: that of the part it points to, or of the nearest part around it that exists. */
    Problem place(Problem problem) {
        if (problem.position().isPresent()) {
            return problem;
        }
        Located deepest = this;
        StringBuilder found = new StringBuilder();
        for (String name : Pointer.names(problem.pointer())) {
            Located next = deepest.child(name);
            if (next == null) {
                break;
            }
            deepest = next;
            found.append(Pointer.of(name));
        }
        return new Problem(
                problem.stage(),
                problem.code(),
                found.toString(),
                Optional.of(deepest.at),
                problem.message(),
                problem.expected(),
                problem.nearest());
    }

    private @Nullable Located child(String name) {
        if (node instanceof Node.ListNode) {
            int index = name.matches("0|[1-9][0-9]{0,8}") ? Integer.parseInt(name) : -1;
            return index >= 0 && index < items.size() ? items.get(index) : null;
        }
        return members.get(name);
    }
}
