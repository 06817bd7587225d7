package org.geneticsrules.testing.brute;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.probability.Probability;

/** Reads documents that are plain maps, lists, texts, numbers and truth values. */
final class Plain {

    private Plain() {}

    /** A member that is an object; empty if there is none. */
    static Map<String, Object> object(Map<String, Object> parent, String name) {
        return parent.containsKey(name) ? members(parent.get(name)) : Map.of();
    }

    @SuppressWarnings("unchecked")
    static Map<String, Object> members(Object node) {
        return (Map<String, Object>) node;
    }

    /** The items of a list; none if there is no list. */
    @SuppressWarnings("unchecked")
    static List<Object> list(Object node) {
        return node == null ? List.of() : (List<Object>) node;
    }

    /** A statement is written as a bare text, or as an object if it has more to say than its value. */
    static String textOr(Object node, String name) {
        return node instanceof String text ? text : (String) members(node).get(name);
    }

    /** A chance is written as {@code "3/4"} or as a decimal number. */
    static Probability chance(Object node) {
        return Probability.parse(String.valueOf(node));
    }

    static Map<String, Probability> chances(Map<String, Object> node) {
        Map<String, Probability> chances = new LinkedHashMap<>();
        node.forEach((name, share) -> chances.put(name, chance(share)));
        return chances;
    }
}
