package org.geneticsrules.document;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/**
 * A part of a document in plain form.
 *
 * <p>Immutable and thread-safe. {@code toString} of each kind is its canonical JSON text (RFC 8785).
 */
public sealed interface Node {

    /**
     * An object.
     *
     * @param members its members by name, in declared order; order is kept for display and does not count for equality
     */
    record ObjectNode(Map<String, Node> members) implements Node {
        /**
         * Copies the members.
         *
         * @param members its members by name
         */
        public ObjectNode {
            members = ImmutableMap.copyOf(members);
        }

        @Override
        public String toString() {
            return Canonical.text(this);
        }
    }

    /**
     * A list.
     *
     * @param items its items
     */
    record ListNode(List<Node> items) implements Node {
        /**
         * Copies the items.
         *
         * @param items its items
         */
        public ListNode {
            items = ImmutableList.copyOf(items);
        }

        @Override
        public String toString() {
            return Canonical.text(this);
        }
    }

    /**
     * A text.
     *
     * @param value the text
     */
    record TextNode(String value) implements Node {
        @Override
        public String toString() {
            return Canonical.text(this);
        }
    }

    /**
     * A number, kept as the exact decimal that was written.
     *
     * @param value the number
     */
    record NumberNode(BigDecimal value) implements Node {
        @Override
        public String toString() {
            return Canonical.text(this);
        }
    }

    /**
     * A truth value.
     *
     * @param value true or false
     */
    record FlagNode(boolean value) implements Node {
        @Override
        public String toString() {
            return Canonical.text(this);
        }
    }

    /** The JSON null, which no document of this library uses but a file may hold. */
    record NullNode() implements Node {
        @Override
        public String toString() {
            return Canonical.text(this);
        }
    }

    /**
     * Returns a text node.
     *
     * @param value the text
     * @return the node
     */
    static Node text(String value) {
        return new TextNode(value);
    }

    /**
     * Returns a list of texts.
     *
     * @param values the texts, in order
     * @return the node
     */
    static Node texts(Iterable<String> values) {
        ImmutableList.Builder<Node> items = ImmutableList.builder();
        values.forEach(value -> items.add(text(value)));
        return new ListNode(items.build());
    }

    /**
     * Returns a list.
     *
     * @param items the items, in order
     * @return the node
     */
    static Node list(Node... items) {
        return new ListNode(Arrays.asList(items));
    }

    /**
     * Returns a whole number.
     *
     * @param value the number
     * @return the node
     */
    static Node number(long value) {
        return new NumberNode(BigDecimal.valueOf(value));
    }

    /**
     * Returns a truth value.
     *
     * @param value true or false
     * @return the node
     */
    static Node flag(boolean value) {
        return new FlagNode(value);
    }
}
