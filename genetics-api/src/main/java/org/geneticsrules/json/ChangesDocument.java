package org.geneticsrules.json;

import org.geneticsrules.answer.compared.DocumentChange;
import org.geneticsrules.document.Difference;
import org.geneticsrules.document.Differences;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;

/** The document form of what is otherwise between two answers. Stateless and thread-safe. */
public final class ChangesDocument {

    private ChangesDocument() {}

    /**
     * Returns the document that states what is otherwise between two answers.
     *
     * @param differences what is otherwise
     * @return a document of kind {@code answer-changes}, format version 0
     */
    public static Node of(Differences differences) {
        return head(differences).with("changes", changes(differences)).build();
    }

    /**
     * Returns the document that states what moved when an analysis was run again.
     *
     * @param rerun what came of it
     * @return a document of kind {@code answer-changes}, format version 0
     */
    public static Node of(Rerun rerun) {
        return head(rerun.answer())
                .with(
                        "library",
                        new ObjectBuilder()
                                .with("before", rerun.before().library())
                                .with("after", rerun.after().library())
                                .build())
                .with("documents", AnswerDocument.list(rerun.documents(), ChangesDocument::document))
                .with("changes", changes(rerun.answer()))
                .build();
    }

    /**
     * Returns the JSON Schema (draft 2020-12) of these documents.
     *
     * @return the text of the schema, which names itself {@code urn:geneticsrules:schema:answer-changes:0}
     */
    public static String schema() {
        return Shared.schema("answer-changes");
    }

    private static ObjectBuilder head(Differences differences) {
        return new ObjectBuilder()
                .with("formatVersion", Node.number(0))
                .with("kind", "answer-changes")
                .with("same", Node.flag(differences.isEmpty()))
                .with("identical", Node.flag(differences.identical()))
                .with("tolerance", Double.toString(differences.tolerance()));
    }

    private static Node document(DocumentChange one) {
        ObjectBuilder node = new ObjectBuilder().with("kind", one.kind()).with("id", one.id());
        one.before().ifPresent(reference -> node.with("before", reference.toNode()));
        one.after().ifPresent(reference -> node.with("after", reference.toNode()));
        return node.with("changes", changes(one.statements())).build();
    }

    private static Node changes(Differences differences) {
        return AnswerDocument.list(differences.all(), ChangesDocument::change);
    }

    private static Node change(Difference one) {
        ObjectBuilder node = new ObjectBuilder()
                .with("what", one.kind().word())
                .with("place", Node.texts(one.place()))
                .with("pointerBefore", one.pointerBefore())
                .with("pointerAfter", one.pointerAfter());
        one.before().ifPresent(value -> node.with("before", value));
        one.after().ifPresent(value -> node.with("after", value));
        return node.build();
    }
}
