package org.geneticsrules.document;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.geneticsrules.document.Difference.Kind;
import org.geneticsrules.document.Node.FlagNode;
import org.geneticsrules.document.Node.ListNode;
import org.geneticsrules.document.Node.NumberNode;
import org.geneticsrules.document.Node.ObjectNode;
import org.geneticsrules.document.Node.TextNode;
import org.geneticsrules.problem.Pointer;
import org.junit.jupiter.api.Test;

/** What holds of any two answers. */
class DifferencesLaws {

    @Property(tries = 300)
    void an_answer_is_the_same_as_itself(@ForAll long seed) {
        sameAsItself(seed);
    }

    @Property(tries = 500)
    void every_changed_leaf_is_found_at_its_pointer(@ForAll long seed) {
        changedLeaf(seed);
    }

    @Property(tries = 300)
    void what_is_gone_or_new_is_found(@ForAll long seed) {
        goneOrNew(seed);
    }

    @Property(tries = 300)
    void the_order_of_members_does_not_matter(@ForAll long seed) {
        orderOfMembers(seed);
    }

    @Property(tries = 300)
    void looked_at_from_the_other_side_what_is_new_is_gone(@ForAll long seed) {
        otherSide(seed);
    }

    /** Fixed seeds meet each kind of leaf and each way to tell of one: at its pointer, at its chance, and at its item. */
    @Test
    void the_cases_that_matter_are_met() {
        Set<String> met = new TreeSet<>();
        for (long seed = 0; seed < 300; seed++) {
            met.add(changedLeaf(seed));
        }
        assertEquals(Set.of("FlagNode itself", "NumberNode itself", "TextNode around", "TextNode itself"), met);
    }

    static void sameAsItself(long seed) {
        Node answer = new RandomTree(seed).answer();
        Differences none = Differences.between(answer, answer);
        assertTrue(none.isEmpty() && none.identical(), () -> none.toString());
    }

    /** One leaf is made another; something is told at its pointer, or at that of the item or the chance that it belongs to. */
    static String changedLeaf(long seed) {
        Node before = new RandomTree(seed).answer();
        Random random = new Random(seed);
        List<String> leaves = leaves(before, "").toList();
        String leaf = leaves.get(random.nextInt(leaves.size()));
        Node old = at(before, leaf);
        Node after = replaced(before, Pointer.names(leaf), other(old));
        Differences found = Differences.between(before, after);
        List<String> told = pointers(found);
        boolean itself = told.contains(leaf);
        boolean around = told.stream().anyMatch(one -> leaf.startsWith(one + "/") && !one.isEmpty());
        assertTrue(itself || around, () -> leaf + " is not told by " + found);
        assertTrue(found.all().size() <= 3, () -> leaf + " is told too often by " + found);
        assertTrue(told.stream().allMatch(one -> isNear(one, leaf)), () -> leaf + " is told elsewhere by " + found);
        return old.getClass().getSimpleName() + (itself ? " itself" : " around");
    }

    /** In the same list or chance: an item may become another item of its list, or its list be told apart otherwise. */
    private static boolean isNear(String told, String leaf) {
        String first = "/" + leaf.substring(1).split("/", 2)[0];
        return told.equals(first) || told.startsWith(first + "/");
    }

    static void goneOrNew(long seed) {
        Node before = new RandomTree(seed).answer();
        ObjectNode root = (ObjectNode) before;
        String name = List.copyOf(root.members().keySet())
                .get(new Random(seed).nextInt(root.members().size()));
        Map<String, Node> fewer = new LinkedHashMap<>(root.members());
        Node gone = fewer.remove(name);
        Difference removed = new Difference(
                Kind.REMOVED,
                List.of(name),
                Optional.of(Pointer.of(name)),
                Optional.empty(),
                Optional.ofNullable(gone),
                Optional.empty());
        Difference added = new Difference(
                Kind.ADDED,
                List.of(name),
                Optional.empty(),
                Optional.of(Pointer.of(name)),
                Optional.empty(),
                Optional.ofNullable(gone));
        assertEquals(
                List.of(removed),
                Differences.between(before, new ObjectNode(fewer)).all());
        assertEquals(
                List.of(added),
                Differences.between(new ObjectNode(fewer), before).all());
    }

    static void orderOfMembers(long seed) {
        Node before = new RandomTree(seed).answer();
        Differences found = Differences.between(before, shuffled(before, new Random(seed)));
        assertTrue(found.identical() && found.isEmpty(), () -> found.toString());
    }

    static void otherSide(long seed) {
        Node before = new RandomTree(seed).answer();
        Node after = new RandomTree(seed / 2).answer();
        List<Difference> there = Differences.between(before, after).all();
        List<Difference> back = Differences.between(after, before).all();
        for (Kind kind : Kind.values()) {
            Kind mirrored = switch (kind) {
                case ADDED -> Kind.REMOVED;
                case REMOVED -> Kind.ADDED;
                default -> kind;
            };
            assertEquals(
                    there.stream().filter(one -> one.kind() == kind).count(),
                    back.stream().filter(one -> one.kind() == mirrored).count(),
                    () -> there + " and back " + back);
        }
    }

    private static List<String> pointers(Differences found) {
        return found.all().stream()
                .flatMap(one -> Stream.concat(one.pointerBefore().stream(), one.pointerAfter().stream()))
                .toList();
    }

    private static Stream<String> leaves(Node node, String pointer) {
        if (node instanceof ObjectNode object) {
            return object.members().entrySet().stream()
                    .flatMap(one -> leaves(one.getValue(), pointer + Pointer.of(one.getKey())));
        }
        if (node instanceof ListNode list) {
            List<String> found = new ArrayList<>();
            for (int i = 0; i < list.items().size(); i++) {
                leaves(list.items().get(i), pointer + "/" + i).forEach(found::add);
            }
            return found.stream();
        }
        return Stream.of(pointer);
    }

    private static Node at(Node node, String pointer) {
        Node found = node;
        for (String name : Pointer.names(pointer)) {
            found = found instanceof ListNode list
                    ? list.items().get(Integer.parseInt(name))
                    : ((ObjectNode) found).members().getOrDefault(name, found);
        }
        return found;
    }

    private static Node replaced(Node node, List<String> path, Node by) {
        if (path.isEmpty()) {
            return by;
        }
        List<String> rest = path.subList(1, path.size());
        if (node instanceof ListNode list) {
            List<Node> items = new ArrayList<>(list.items());
            int index = Integer.parseInt(path.get(0));
            items.set(index, replaced(items.get(index), rest, by));
            return new ListNode(items);
        }
        Map<String, Node> members = new LinkedHashMap<>(((ObjectNode) node).members());
        members.computeIfPresent(path.get(0), (name, member) -> replaced(member, rest, by));
        return new ObjectNode(members);
    }

    /** Another leaf of the same kind. */
    private static Node other(Node leaf) {
        if (leaf instanceof TextNode text) {
            return text.value().matches("[0-9]+")
                    ? Node.text(text.value() + "1")
                    : Node.text(
                            text.value().replaceFirst(".$", "") + (text.value().endsWith("7") ? "3" : "7"));
        }
        if (leaf instanceof NumberNode number) {
            return new NumberNode(number.value().add(BigDecimal.ONE));
        }
        return Node.flag(!((FlagNode) leaf).value());
    }

    private static Node shuffled(Node node, Random random) {
        if (node instanceof ListNode list) {
            return new ListNode(
                    list.items().stream().map(one -> shuffled(one, random)).toList());
        }
        if (node instanceof ObjectNode object) {
            List<String> names = new ArrayList<>(object.members().keySet());
            Collections.shuffle(names, random);
            Map<String, Node> members = new LinkedHashMap<>();
            names.forEach(name -> members.put(name, shuffled(object.members().getOrDefault(name, node), random)));
            return new ObjectNode(members);
        }
        return node;
    }
}
