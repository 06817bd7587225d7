package org.geneticsrules.patch;

import java.util.Map;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;

/** The document form of a patch: what is written to a file and what is hashed. Stateless and thread-safe. */
public final class PatchDocument {

    private PatchDocument() {}

    /**
     * Returns the document that states a patch.
     *
     * @param patch a patch
     * @return a document of kind {@code patch}, format version 0
     */
    public static Node of(Patch patch) {
        ObjectBuilder baseline = new ObjectBuilder();
        patch.baseline().forEach(baseline::with);
        return new ObjectBuilder()
                .with("formatVersion", Node.number(0))
                .with("kind", "patch")
                .with("id", patch.id())
                .with("version", patch.version())
                .with("title", patch.title())
                .with("base", patch.base().toNode())
                .withAny("evidence", object(patch.evidence()))
                .withAny("set", object(patch.set()))
                .withAny("remove", patch.remove())
                .withAny("baseline", baseline)
                .build();
    }

    private static ObjectBuilder object(Map<String, Node> members) {
        ObjectBuilder object = new ObjectBuilder();
        members.forEach(object::with);
        return object;
    }
}
