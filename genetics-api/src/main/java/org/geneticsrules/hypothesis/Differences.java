package org.geneticsrules.hypothesis;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.Node.ObjectNode;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelDocument;
import org.geneticsrules.model.Statement;
import org.geneticsrules.patch.Patch;
import org.geneticsrules.problem.Pointer;

/**
 * Compares the statements of two models: loci without their dominance, dominance, groups, statements about viability, cases, what is
 * otherwise, and masks. Titles, evidence and populations move nothing that is compared here.
 */
final class Differences {

    private static final Set<String> KINDS = ImmutableSet.of("loci", "groups", "viability", "traits", "masks");

    /** Parts that are statements of their own. */
    static final List<String> OWN_PARTS = ImmutableList.of("/dominance/", "/cases/", "/otherwise");

    private Differences() {}

    static List<Change> of(Model before, Model after, Collection<Patch> patches) {
        Map<String, Node> mine = statements(before);
        Map<String, Node> theirs = statements(after);
        List<String> pointers = new ArrayList<>(mine.keySet());
        theirs.keySet().stream().filter(pointer -> !mine.containsKey(pointer)).forEach(pointers::add);
        ImmutableList.Builder<Change> changes = ImmutableList.builder();
        for (String pointer : pointers) {
            Optional<Node> one = Optional.ofNullable(mine.get(pointer));
            Optional<Node> other = Optional.ofNullable(theirs.get(pointer));
            if (!one.equals(other)) {
                Change.Kind kind = one.isEmpty()
                        ? Change.Kind.ADDED
                        : other.isEmpty() ? Change.Kind.REMOVED : Change.Kind.REPLACED;
                changes.add(new Change(
                        pointer, kind, patch(pointer, patches), words(before, pointer), words(after, pointer)));
            }
        }
        return changes.build();
    }

    /** What a statement and its parts say, parts that are statements of their own aside. */
    private static List<String> words(Model model, String pointer) {
        return model.statements().values().stream()
                .filter(one -> one.pointer().equals(pointer) || isPart(one.pointer(), pointer))
                .map(Statement::text)
                .toList();
    }

    private static boolean isPart(String inner, String pointer) {
        return inner.startsWith(pointer + "/")
                && OWN_PARTS.stream().noneMatch(part -> inner.startsWith(pointer + part));
    }

    private static Optional<String> patch(String pointer, Collection<Patch> patches) {
        return patches.stream()
                .filter(patch -> patch.changes().keySet().stream()
                        .anyMatch(changed -> pointer.equals(changed)
                                || pointer.startsWith(changed + "/")
                                || changed.startsWith(pointer + "/")))
                .map(Patch::id)
                .findFirst();
    }

    private static Map<String, Node> statements(Model model) {
        Map<String, Node> statements = new LinkedHashMap<>();
        members(ModelDocument.of(model)).forEach((kind, named) -> {
            if (KINDS.contains(kind)) {
                members(named).forEach((name, one) -> add(Pointer.of(kind, name), plain(one), statements));
            }
        });
        return statements;
    }

    private static void add(String pointer, Node one, Map<String, Node> statements) {
        Map<String, Node> rest = new LinkedHashMap<>(members(one));
        Optional.ofNullable(rest.remove("dominance")).ifPresent(part -> statements.put(pointer + "/dominance", part));
        Optional.ofNullable(rest.remove("cases"))
                .ifPresent(part -> members(part)
                        .forEach((name, inner) -> statements.put(pointer + Pointer.of("cases", name), inner)));
        Optional.ofNullable(rest.remove("otherwise")).ifPresent(part -> statements.put(pointer + "/otherwise", part));
        statements.put(pointer, new ObjectNode(rest));
    }

    /** Without words and evidence, at any depth; where evidence is all there is beside a text, the text. */
    private static Node plain(Node node) {
        if (node instanceof Node.ListNode list) {
            return Node.list(list.items().stream().map(Differences::plain).toArray(Node[]::new));
        }
        if (!(node instanceof ObjectNode object)) {
            return node;
        }
        Map<String, Node> kept = new LinkedHashMap<>();
        object.members().forEach((name, inner) -> {
            boolean words = (name.equals("evidence") || name.equals("title")) && inner instanceof Node.TextNode;
            if (!words) {
                kept.put(name, plain(inner));
            }
        });
        return new ObjectNode(kept);
    }

    private static Map<String, Node> members(Node node) {
        return node instanceof ObjectNode object ? object.members() : Map.of();
    }
}
