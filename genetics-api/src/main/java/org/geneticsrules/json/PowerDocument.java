package org.geneticsrules.json;

import java.util.OptionalInt;
import org.geneticsrules.answer.compared.PowerAnswer;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.planning.EstimatedPower;
import org.geneticsrules.simulation.LitterPlan;
import org.geneticsrules.statistics.Interval;

/**
 * The document form of how often litters of a plan would tell models apart.
 *
 * <p>Stateless and thread-safe.
 */
public final class PowerDocument {

    private PowerDocument() {}

    /**
     * Returns the document that states an answer.
     *
     * @param answer what was found
     * @return a document of kind {@code power-answer}, format version 0
     */
    public static Node of(PowerAnswer answer) {
        return new ObjectBuilder()
                .with("formatVersion", Node.number(0))
                .with("kind", "power-answer")
                .with("question", answer.question())
                .with("verdict", answer.verdict())
                .with("decided", Node.flag(answer.decided()))
                .with("given", Node.texts(answer.given()))
                .with("plan", plan(answer.plan()))
                .with(
                        "models",
                        AnswerDocument.list(
                                answer.models(),
                                one -> new ObjectBuilder()
                                        .with("title", one.title())
                                        .with("model", Shared.reference(one.model()))
                                        .build()))
                .with("power", power(answer.power()))
                .with("inseparable", AnswerDocument.list(answer.inseparable(), rival -> Node.number(rival)))
                .with("assumptions", AnswerDocument.list(answer.assumptions(), AnswerDocument::assumption))
                .with("rivals", AnswerDocument.list(answer.rivals(), AnswerDocument::rival))
                .with("cautions", AnswerDocument.list(answer.cautions(), AnswerDocument::caution))
                .with("evidenceLevel", AnswerDocument.evidence(answer.evidence()))
                .with("model", Shared.reference(answer.model()))
                .with("notices", Node.texts(answer.notices()))
                .build();
    }

    /**
     * Returns the JSON Schema (draft 2020-12) of these answers.
     *
     * @return the text of the schema, which names itself {@code urn:geneticsrules:schema:power-answer:0}
     */
    public static String schema() {
        return Shared.schema("power-answer");
    }

    private static Node plan(LitterPlan plan) {
        return new ObjectBuilder()
                .with("couples", Node.number(plan.couples()))
                .with("littersOfEach", Node.number(plan.littersOfEach()))
                .with("kits", plan.size().name())
                .with("counted", plan.counted().word())
                .build();
    }

    private static Node power(EstimatedPower power) {
        ObjectBuilder node = new ObjectBuilder()
                .with("bar", Shared.decimal(power.bar()))
                .with("sets", Node.number(power.sets()))
                .with("reached", share(power, power.reached()))
                .with("misled", share(power, power.misled()))
                .with("neither", share(power, power.neither()));
        OptionalInt median = power.littersUntil(0.5);
        if (median.isPresent()) {
            node.with("medianLitters", Node.number(median.getAsInt()));
        }
        return node.with("reachedAfter", AnswerDocument.list(power.reachedAfter(), sets -> Node.number(sets)))
                .with(
                        "rivals",
                        AnswerDocument.list(
                                power.rivals(),
                                one -> new ObjectBuilder()
                                        .with("rival", Node.number(one.rival()))
                                        .with("reached", share(power, one.reached()))
                                        .with("atTheEnd", share(power, one.atTheEnd()))
                                        .with("misled", share(power, one.misled()))
                                        .build()))
                .with("traits", Node.texts(power.traits()))
                .with("generator", power.randomness().generator())
                .with("seed", Node.number(power.randomness().seed()))
                .build();
    }

    private static Node share(EstimatedPower power, int sets) {
        Interval interval = power.interval(sets);
        return new ObjectBuilder()
                .with("sets", Node.number(sets))
                .with("share", Shared.decimal(power.share(sets)))
                .with("low", Shared.decimal(interval.low()))
                .with("high", Shared.decimal(interval.high()))
                .build();
    }
}
