package org.geneticsrules.json;

import java.util.List;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.expression.Completeness;
import org.geneticsrules.model.Statement;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.trait.LifeStage;

/**
 * The document form of a report on a model. Boxes have the form of conditions in model documents; draws go by the pointer of their case.
 *
 * <p>Stateless and thread-safe.
 */
public final class CompletenessDocument {

    private CompletenessDocument() {}

    /**
     * Returns the document that states a report.
     *
     * @param report a report
     * @return a document of kind {@code completeness}, format version 0
     */
    public static Node of(Completeness report) {
        ObjectBuilder graded = new ObjectBuilder();
        report.graded()
                .forEach((grade, statements) ->
                        graded.with(grade.word(), AnswerDocument.list(statements, CompletenessDocument::statement)));
        return new ObjectBuilder()
                .with("formatVersion", Node.number(0))
                .with("kind", "completeness")
                .with("model", Shared.reference(report.model()))
                .with("conflicts", AnswerDocument.list(report.conflicts(), CompletenessDocument::problem))
                .with(
                        "withoutRule",
                        AnswerDocument.list(
                                report.withoutRule(),
                                one -> new ObjectBuilder()
                                        .with("trait", one.trait())
                                        .with("reason", one.reason())
                                        .build()))
                .with(
                        "gaps",
                        AnswerDocument.list(
                                report.gaps(),
                                one -> new ObjectBuilder()
                                        .with("trait", one.trait())
                                        .with("of", one.about().words())
                                        .with("where", AnswerDocument.list(one.where(), box -> box.toNode()))
                                        .with("all", Node.flag(one.all()))
                                        .build()))
                .with(
                        "unreached",
                        AnswerDocument.list(
                                report.unreached(),
                                one -> new ObjectBuilder()
                                        .with("part", one.part().word())
                                        .with("pointer", one.pointer())
                                        .with("name", one.name())
                                        .with("underOtherDominance", Node.flag(one.underOtherDominance()))
                                        .build()))
                .with("alikeAlleles", AnswerDocument.list(report.alikeAlleles(), CompletenessDocument::alike))
                .with("alikeGenotypes", AnswerDocument.list(report.alikeGenotypes(), CompletenessDocument::alike))
                .with(
                        "idle",
                        AnswerDocument.list(
                                report.idle(),
                                one -> new ObjectBuilder()
                                        .with("pointer", one.pointer())
                                        .with("name", one.name())
                                        .with("read", Node.flag(one.read()))
                                        .build()))
                .with("limited", AnswerDocument.list(report.limited(), CompletenessDocument::limited))
                .with("withoutEvidence", AnswerDocument.list(report.withoutEvidence(), CompletenessDocument::statement))
                .with("graded", graded.build())
                .build();
    }

    /**
     * Returns the JSON Schema (draft 2020-12) of reports.
     *
     * @return the text of the schema, which names itself {@code urn:geneticsrules:schema:completeness:0}
     */
    public static String schema() {
        return Shared.schema("completeness");
    }

    private static Node problem(Problem problem) {
        return new ObjectBuilder()
                .with("code", problem.code())
                .with("pointer", problem.pointer())
                .with("position", problem.position().map(Object::toString))
                .with("message", problem.message())
                .with("expected", problem.expected())
                .build();
    }

    private static Node alike(Completeness.Alike one) {
        return new ObjectBuilder()
                .with("locus", one.locus())
                .with("sex", one.sex().map(sex -> sex.word()))
                .with("groups", AnswerDocument.list(one.groups(), Node::texts))
                .build();
    }

    private static Node limited(Completeness.Limited one) {
        ObjectBuilder node = new ObjectBuilder()
                .with("trait", one.trait())
                .with("state", one.state())
                .with("sex", one.sex().map(sex -> sex.word()));
        if (!one.seasons().isEmpty()) {
            node.with("seasons", Node.texts(one.seasons()));
        }
        for (boolean first : List.of(true, false)) {
            LifeStage stage = first ? one.from() : one.until();
            if (!stage.equals(LifeStage.unstated())) {
                node.with(first ? "from" : "until", stage.toString());
            }
        }
        return node.build();
    }

    private static Node statement(Statement statement) {
        return new ObjectBuilder()
                .with("pointer", statement.pointer())
                .with("text", statement.text())
                .with("evidence", statement.evidence().map(support -> support.id()))
                .build();
    }
}
