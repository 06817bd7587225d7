package org.geneticsrules.caution;

import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;

/** The document form of a set of cautions. Stateless and thread-safe. */
public final class CautionDocument {

    private CautionDocument() {}

    /**
     * Returns the document that states a set of cautions.
     *
     * @param set the cautions
     * @return a document of kind {@code cautions}, format version 0
     */
    public static Node of(CautionSet set) {
        ObjectBuilder cautions = new ObjectBuilder();
        set.cautions().values().forEach(caution -> cautions.with(caution.id(), caution(caution)));
        ObjectBuilder document = new ObjectBuilder()
                .with("formatVersion", Node.number(0))
                .with("kind", "cautions")
                .with("id", set.id())
                .with("version", set.version())
                .with("title", set.title());
        set.catalogue().ifPresent(reference -> document.with("catalogue", reference.toNode()));
        return document.with("cautions", cautions.build()).build();
    }

    private static Node caution(Caution caution) {
        ObjectBuilder node = new ObjectBuilder()
                .with("trigger", trigger(caution.trigger()))
                .with("line", caution.line())
                .withAny("detail", caution.detail())
                .withAny("sources", caution.sources())
                .with("date", caution.date());
        return caution.excludes() ? node.with("excludes", Node.flag(true)).build() : node.build();
    }

    private static Node trigger(Trigger trigger) {
        ObjectBuilder node = new ObjectBuilder();
        if (trigger instanceof Trigger.Always) {
            node.with("always", Node.flag(true));
        } else if (trigger instanceof Trigger.OnQuestion on) {
            node.with("question", Node.texts(on.kinds()));
        } else if (trigger instanceof Trigger.OnRelation on) {
            node.with(
                    "relation",
                    Node.texts(on.relations().stream().map(Relation::word).toList()));
        } else if (trigger instanceof Trigger.OnLook on) {
            node.with("shows", on.look().toNode())
                    .with("in", Node.texts(on.roles().stream().map(Role::word).toList()));
        }
        return node.build();
    }
}
