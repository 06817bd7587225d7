package org.geneticsrules.json;

import org.geneticsrules.answer.described.DescribedAnswer;
import org.geneticsrules.answer.described.Description;
import org.geneticsrules.answer.described.Description.Course;
import org.geneticsrules.answer.described.Description.Open;
import org.geneticsrules.answer.described.Description.Reading;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.trait.LifeStage;

/**
 * The document form of a description.
 *
 * <p>Stateless and thread-safe.
 */
public final class DescribedDocument {

    private DescribedDocument() {}

    /**
     * Returns the document that states a description.
     *
     * @param answer a description
     * @return a document of kind {@code described-answer}, format version 0
     */
    public static Node of(DescribedAnswer answer) {
        Description found = answer.description();
        return new ObjectBuilder()
                .with("formatVersion", Node.number(0))
                .with("kind", "described-answer")
                .with("question", answer.question())
                .with("verdict", answer.verdict())
                .with("given", Node.texts(answer.given()))
                .with("fit", found.fit().word())
                .with("readings", AnswerDocument.list(found.readings(), DescribedDocument::reading))
                .with("apart", AnswerDocument.list(found.apart(), DescribedDocument::reading))
                .with("courses", AnswerDocument.list(found.courses(), DescribedDocument::course))
                .with("open", AnswerDocument.list(found.open(), DescribedDocument::open))
                .with("assumptions", AnswerDocument.list(answer.assumptions(), AnswerDocument::assumption))
                .with("rivalVerdicts", AnswerDocument.list(answer.rivalVerdicts(), AnswerDocument::rivalVerdict))
                .with("rivals", AnswerDocument.list(answer.rivals(), AnswerDocument::rival))
                .with("cautions", AnswerDocument.list(answer.cautions(), AnswerDocument::caution))
                .with("evidenceLevel", AnswerDocument.evidence(answer.evidence()))
                .with("model", Shared.reference(answer.model()))
                .with("notices", Node.texts(answer.notices()))
                .build();
    }

    /**
     * Returns the JSON Schema (draft 2020-12) of descriptions.
     *
     * @return the text of the schema, which names itself {@code urn:geneticsrules:schema:described-answer:0}
     */
    public static String schema() {
        return Shared.schema("described-answer");
    }

    private static Node reading(Reading one) {
        ObjectBuilder node = new ObjectBuilder();
        if (!one.stage().equals(LifeStage.unstated())) {
            node.with("stage", AnswerDocument.stage(one.stage()));
        }
        one.light().ifPresent(light -> node.with("light", light));
        node.with("trait", one.trait()).with("state", one.state());
        one.tooEarly().ifPresent(from -> node.with("tooEarlyUntil", AnswerDocument.stage(from)));
        if (!one.otherLight().isEmpty()) {
            node.with("otherLight", Node.texts(one.otherLight()));
        }
        one.unruled().ifPresent(reason -> node.with("notModelled", reason));
        one.note().ifPresent(note -> node.with("note", note));
        return node.build();
    }

    private static Node course(Course course) {
        ObjectBuilder node = new ObjectBuilder().with("trait", course.trait());
        course.season().ifPresent(season -> node.with("season", season));
        return node.with("change", course.change().word())
                .with("readings", AnswerDocument.list(course.readings(), DescribedDocument::reading))
                .build();
    }

    private static Node open(Open one) {
        ObjectBuilder node = new ObjectBuilder().with("trait", one.trait());
        one.from().ifPresent(from -> node.with("from", AnswerDocument.stage(from)));
        if (!one.in().isEmpty()) {
            node.with("in", Node.texts(one.in()));
        }
        one.note().ifPresent(note -> node.with("note", note));
        return node.build();
    }
}
