package org.geneticsrules.json;

import org.geneticsrules.answer.recorded.Later;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;

/** What an animal may show at a stage of its life, as a document. */
final class LaterDocument {

    private LaterDocument() {}

    static Node of(Later found) {
        return new ObjectBuilder()
                .with("animal", found.animal())
                .with("stage", LookNextDocument.stage(found.stage()))
                .with("origins", AnswerDocument.list(found.origins(), RecordedDocument::origin))
                .with("shows", AnswerDocument.list(found.traits(), LaterDocument::trait))
                .build();
    }

    private static Node trait(Later.OfTrait row) {
        return new ObjectBuilder()
                .with("trait", row.trait())
                .with("ordered", Node.flag(row.ordered()))
                .with("word", row.word().word())
                .with(
                        "states",
                        AnswerDocument.list(
                                row.states(),
                                one -> new ObjectBuilder()
                                        .with("state", one.state())
                                        .with("whether", one.whether().word())
                                        .with("chances", RecordedDocument.chances(one.chances()))
                                        .with("hiddenBy", Node.texts(one.hiddenBy()))
                                        .build()))
                .with("when", row.when())
                .with("note", row.note())
                .build();
    }
}
