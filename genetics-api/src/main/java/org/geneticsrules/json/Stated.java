package org.geneticsrules.json;

import java.util.Optional;

/**
 * A value that stands alone, or in an object beside its evidence.
 *
 * @param value the part that holds the value, if it is there
 * @param evidence id of the evidence, if stated
 */
record Stated(Optional<Part> value, Optional<String> evidence) {

    /** Reads a text, or an object with the named value and perhaps evidence. */
    static Stated read(Part part, String name) {
        if (part.isText()) {
            return new Stated(Optional.of(part), Optional.empty());
        }
        Part.Members members = part.members(name, "evidence");
        return new Stated(members.required(name), members.optional("evidence").flatMap(Part::text));
    }
}
