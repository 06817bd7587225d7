package org.geneticsrules.json;

import java.util.List;
import java.util.Map;
import org.geneticsrules.answer.recorded.LookNext;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.trait.LifeStage;

/** What should be looked at next, as a document. */
final class LookNextDocument {

    private LookNextDocument() {}

    static Node of(LookNext found) {
        return new ObjectBuilder()
                .with("animal", found.animal())
                .with("stage", stage(found.stage()))
                .with("origins", AnswerDocument.list(found.origins(), RecordedDocument::origin))
                .with("traits", AnswerDocument.list(found.traits(), LookNextDocument::trait))
                .with("classes", AnswerDocument.list(found.classes(), LookNextDocument::locus))
                .with(
                        "together",
                        AnswerDocument.list(
                                found.together(),
                                one -> new ObjectBuilder()
                                        .with("expressions", expressions(one.expressions()))
                                        .with("chances", RecordedDocument.chances(one.chances()))
                                        .build()))
                .with("others", Node.number(found.others()))
                .build();
    }

    static Node stage(LifeStage stage) {
        ObjectBuilder node = new ObjectBuilder();
        stage.weeks().ifPresent(weeks -> node.with("weeks", Node.number(weeks)));
        stage.moult().ifPresent(moult -> node.with("moult", Node.number(moult)));
        return node.with("season", stage.season()).build();
    }

    private static Node trait(LookNext.OfTrait row) {
        return new ObjectBuilder()
                .with("trait", row.trait())
                .with("word", row.word().word())
                .with("tells", AnswerDocument.list(row.tells(), LookNextDocument::information))
                .with("states", AnswerDocument.list(row.states(), LookNextDocument::state))
                .with("when", row.when())
                .with("note", row.note())
                .build();
    }

    static Node information(LookNext.Information one) {
        ObjectBuilder node = new ObjectBuilder().with("standing", RecordedDocument.standing(one.standing()));
        one.bits().ifPresent(bits -> node.with("bits", RecordedDocument.decimal(bits)));
        return node.build();
    }

    private static Node state(LookNext.OfState one) {
        ObjectBuilder node =
                new ObjectBuilder().with("state", one.state()).with("chances", RecordedDocument.chances(one.chances()));
        if (one.genotypes() > 0) {
            node.with("genotypes", Node.number(one.genotypes()));
        }
        ObjectBuilder leaves = new ObjectBuilder();
        one.leaves().forEach((locus, left) -> leaves.with(locus, Node.texts(left)));
        return node.with("leaves", leaves.build()).build();
    }

    private static Node locus(LookNext.AtLocus at) {
        List<LookNext.OfExpression> all = at.expressions();
        return new ObjectBuilder()
                .with("locus", at.locus())
                .with(
                        "expressions",
                        AnswerDocument.list(
                                all,
                                one -> new ObjectBuilder()
                                        .with("expression", one.expression())
                                        .with("whether", one.whether().word())
                                        .with("chances", RecordedDocument.chances(one.chances()))
                                        .build()))
                .build();
    }

    private static Node expressions(Map<String, String> byLocus) {
        ObjectBuilder node = new ObjectBuilder();
        byLocus.forEach(node::with);
        return node.build();
    }
}
