package org.geneticsrules.document;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** Puts an object together member by member, leaving out what is absent. Not thread-safe. */
public final class ObjectBuilder {

    private final Map<String, Node> members = new LinkedHashMap<>();

    /** Starts an empty object. */
    public ObjectBuilder() {}

    /**
     * Adds a member.
     *
     * @param name its name
     * @param value its value
     * @return this
     */
    public ObjectBuilder with(String name, Node value) {
        members.put(name, value);
        return this;
    }

    /**
     * Adds a text member.
     *
     * @param name its name
     * @param value its text
     * @return this
     */
    public ObjectBuilder with(String name, String value) {
        return with(name, Node.text(value));
    }

    /**
     * Adds a text member if there is one.
     *
     * @param name its name
     * @param value its text, or empty to leave the member out
     * @return this
     */
    public ObjectBuilder with(String name, Optional<String> value) {
        value.ifPresent(text -> with(name, text));
        return this;
    }

    /**
     * Adds a list of texts unless it is empty.
     *
     * @param name its name
     * @param values the texts
     * @return this
     */
    public ObjectBuilder withAny(String name, Iterable<String> values) {
        return values.iterator().hasNext() ? with(name, Node.texts(values)) : this;
    }

    /**
     * Adds an object member unless it is empty.
     *
     * @param name its name
     * @param value the object being built
     * @return this
     */
    public ObjectBuilder withAny(String name, ObjectBuilder value) {
        return value.members.isEmpty() ? this : with(name, value.build());
    }

    /**
     * Returns the object.
     *
     * @return an immutable object with the members so far
     */
    public Node build() {
        return new Node.ObjectNode(members);
    }
}
