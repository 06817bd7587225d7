package org.geneticsrules.json;

import org.geneticsrules.answer.estimated.EstimateAnswer;
import org.geneticsrules.answer.estimated.EstimateTest;
import org.geneticsrules.answer.estimated.EstimatedNumber;
import org.geneticsrules.answer.estimated.LinkageScores;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.estimation.Estimate;
import org.geneticsrules.statistics.Interval;

/**
 * The document form of what counts or records say of a number. LOD scores are decimal logarithms. A number that has no greatest value may
 * stand as {@code infinity}. Where the records say nothing about a number, no value of it is stated.
 *
 * <p>Stateless and thread-safe.
 */
public final class EstimateDocument {

    private EstimateDocument() {}

    /**
     * Returns the document that states an answer.
     *
     * @param answer what counts or records say of a number
     * @return a document of kind {@code estimate-answer}, format version 0
     */
    public static Node of(EstimateAnswer answer) {
        ObjectBuilder node = new ObjectBuilder()
                .with("formatVersion", Node.number(0))
                .with("kind", "estimate-answer")
                .with("question", answer.question())
                .with("verdict", answer.verdict())
                .with("informative", Node.flag(answer.informative()))
                .with("given", Node.texts(answer.given()))
                .with("numbers", AnswerDocument.list(answer.numbers(), EstimateDocument::number))
                .with(
                        "reckonings",
                        AnswerDocument.list(
                                answer.reckonings(),
                                one -> new ObjectBuilder()
                                        .with("what", one.words())
                                        .with("value", decimal(one.value()))
                                        .build()))
                .with("tests", AnswerDocument.list(answer.tests(), EstimateDocument::test));
        answer.linkage().ifPresent(linkage -> node.with("linkage", linkage(linkage)));
        node.with("assumptions", AnswerDocument.list(answer.assumptions(), AnswerDocument::assumption))
                .with("rivals", AnswerDocument.list(answer.rivals(), AnswerDocument::rival))
                .with("cautions", AnswerDocument.list(answer.cautions(), AnswerDocument::caution))
                .with("evidenceLevel", AnswerDocument.evidence(answer.evidence()));
        answer.model().ifPresent(model -> node.with("model", Shared.reference(model)));
        answer.pedigree().ifPresent(pedigree -> node.with("pedigree", Shared.reference(pedigree)));
        return node.with("notices", Node.texts(answer.notices())).build();
    }

    /**
     * Returns the JSON Schema (draft 2020-12) of these answers.
     *
     * @return the text of the schema, which names itself {@code urn:geneticsrules:schema:estimate-answer:0}
     */
    public static String schema() {
        return Shared.schema("estimate-answer");
    }

    private static Node number(EstimatedNumber number) {
        Estimate estimate = number.estimate();
        ObjectBuilder node = new ObjectBuilder()
                .with("what", number.words())
                .with("saysNothing", Node.flag(estimate.flat()))
                .with("atEnd", Node.flag(estimate.atBoundary()));
        if (!estimate.flat()) {
            node.with("value", decimal(estimate.value()));
        }
        estimate.standardError().ifPresent(error -> node.with("standardError", decimal(error)));
        node.with("interval", interval(estimate.interval()));
        number.exact().ifPresent(exact -> node.with("exactInterval", interval(exact)));
        return node.build();
    }

    private static Node interval(Interval interval) {
        return new ObjectBuilder()
                .with("low", decimal(interval.low()))
                .with("high", decimal(interval.high()))
                .with("level", decimal(interval.level()))
                .with("method", interval.method().words())
                .with("lowIsEnd", Node.flag(interval.lowIsBoundary()))
                .with("highIsEnd", Node.flag(interval.highIsBoundary()))
                .build();
    }

    private static Node test(EstimateTest test) {
        ObjectBuilder node =
                new ObjectBuilder().with("hypothesis", test.hypothesis()).with("method", test.method());
        test.statistic().ifPresent(statistic -> node.with("statistic", decimal(statistic)));
        test.degreesOfFreedom().ifPresent(degrees -> node.with("degreesOfFreedom", Node.number(degrees)));
        return node.with("atEnd", Node.flag(test.atEnd()))
                .with("p", decimal(test.p()))
                .build();
    }

    private static Node linkage(LinkageScores linkage) {
        return new ObjectBuilder()
                .with("highest", decimal(linkage.highest()))
                .with("supportLow", decimal(linkage.support().low()))
                .with("supportHigh", decimal(linkage.support().high()))
                .with(
                        "verdict",
                        switch (linkage.verdict()) {
                            case FOR_LINKAGE -> "for linkage";
                            case INCONCLUSIVE -> "inconclusive";
                            case AGAINST_LINKAGE -> "against linkage";
                        })
                .with(
                        "families",
                        AnswerDocument.list(
                                linkage.families(),
                                one -> new ObjectBuilder()
                                        .with("name", one.name())
                                        .with("score", decimal(one.score()))
                                        .with("informative", Node.flag(one.informative()))
                                        .with("phaseKnown", Node.flag(one.phaseKnown()))
                                        .with("openPhase", Node.texts(one.openPhase()))
                                        .build()))
                .build();
    }

    private static Node decimal(double number) {
        if (Double.isInfinite(number)) {
            return Node.text(number > 0 ? "infinity" : "-infinity");
        }
        return Shared.decimal(number);
    }
}
