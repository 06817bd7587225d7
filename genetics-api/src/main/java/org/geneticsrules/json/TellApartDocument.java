package org.geneticsrules.json;

import java.util.List;
import org.geneticsrules.answer.compared.ApartStep;
import org.geneticsrules.answer.compared.TellApartAnswer;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.planning.ExpectedRatio;
import org.geneticsrules.planning.KitsNeeded;
import org.geneticsrules.planning.Outcome;
import org.geneticsrules.planning.Step;
import org.geneticsrules.planning.ToldApart;
import org.geneticsrules.planning.Worth;
import org.geneticsrules.trait.LifeStage;

/**
 * The document form of what can be done next to tell models apart. Logarithms are natural, models are numbered from 0. Where an outcome
 * excludes a model, the expected logarithm has no number and is not stated.
 *
 * <p>Stateless and thread-safe.
 */
public final class TellApartDocument {

    /** More outcomes of a step than these are not written. */
    private static final int MOST_OUTCOMES = 64;

    private TellApartDocument() {}

    /**
     * Returns the document that states an answer.
     *
     * @param answer what can be done next
     * @return a document of kind {@code tell-apart-answer}, format version 0
     */
    public static Node of(TellApartAnswer answer) {
        return new ObjectBuilder()
                .with("formatVersion", Node.number(0))
                .with("kind", "tell-apart-answer")
                .with("question", answer.question())
                .with("verdict", answer.verdict())
                .with("decided", Node.flag(answer.decided()))
                .with("given", Node.texts(answer.given()))
                .with("models", AnswerDocument.list(answer.models(), TellApartDocument::model))
                .with(
                        "excluded",
                        AnswerDocument.list(
                                answer.excluded(),
                                one -> new ObjectBuilder()
                                        .with("title", one.title())
                                        .with("model", Shared.reference(one.model()))
                                        .build()))
                .with("bar", Shared.decimal(answer.bar()))
                .with("apart", AnswerDocument.list(answer.apart(), TellApartDocument::apart))
                .with("steps", AnswerDocument.list(answer.steps(), TellApartDocument::step))
                .with(
                        "tried",
                        AnswerDocument.list(
                                answer.tried(),
                                one -> new ObjectBuilder()
                                        .with("effort", one.effort().words())
                                        .with("tried", Node.number(one.tried()))
                                        .with("nothing", Node.number(one.nothing()))
                                        .with("little", Node.number(one.little()))
                                        .with("left", Node.number(one.left()))
                                        .build()))
                .with("leftOut", AnswerDocument.list(answer.leftOut(), TellApartDocument::leftOut))
                .with("assumptions", AnswerDocument.list(answer.assumptions(), AnswerDocument::assumption))
                .with("rivals", AnswerDocument.list(answer.rivals(), AnswerDocument::rival))
                .with("cautions", AnswerDocument.list(answer.cautions(), AnswerDocument::caution))
                .with("evidenceLevel", AnswerDocument.evidence(answer.evidence()))
                .with("model", Shared.reference(answer.model()))
                .with("pedigree", Shared.reference(answer.pedigree()))
                .with("notices", Node.texts(answer.notices()))
                .build();
    }

    /**
     * Returns the JSON Schema (draft 2020-12) of these answers.
     *
     * @return the text of the schema, which names itself {@code urn:geneticsrules:schema:tell-apart-answer:0}
     */
    public static String schema() {
        return Shared.schema("tell-apart-answer");
    }

    private static Node model(TellApartAnswer.OfModel one) {
        return new ObjectBuilder()
                .with("title", one.title())
                .with("model", Shared.reference(one.model()))
                .with("logRatioOverFirst", Shared.decimal(one.logRatio()))
                .with("belief", Shared.decimal(one.belief()))
                .build();
    }

    private static Node apart(ToldApart one) {
        return new ObjectBuilder()
                .with("models", Node.list(Node.number(one.first()), Node.number(one.second())))
                .with(
                        "byLooks",
                        switch (one.verdict()) {
                            case BY_LOOKS -> "yes";
                            case NEVER -> "never";
                            case UNDECIDED -> "not found out";
                        })
                .with("limits", Node.texts(one.limits()))
                .build();
    }

    private static Node leftOut(TellApartAnswer.LeftOut one) {
        ObjectBuilder node = new ObjectBuilder().with("step", one.step()).with("reason", one.reason());
        one.caution().ifPresent(name -> node.with("caution", name));
        return node.build();
    }

    private static Node step(ApartStep one) {
        Worth worth = one.worth();
        Step step = worth.step();
        ObjectBuilder node = new ObjectBuilder()
                .with("words", one.words())
                .with("effort", step.effort().words())
                .with("animals", Node.texts(worth.animals()))
                .with("alike", Node.texts(one.alike()));
        if (step instanceof Step.Look look) {
            node.with("traits", Node.texts(look.traits()));
            stage(look.stage(), node);
        } else if (step instanceof Step.Test test) {
            node.with("locus", test.locus());
        } else if (step instanceof Step.Kits kits) {
            node.with("traits", Node.texts(kits.traits())).with("kits", Node.number(kits.kits()));
            stage(kits.stage(), node);
        }
        node.with("says", Node.texts(one.says()))
                .with("bits", Shared.decimal(worth.bits()))
                .with("ratios", AnswerDocument.list(worth.ratios(), TellApartDocument::ratio))
                .with("kitsBorn", Node.number(worth.kitsBorn()));
        if (worth.outcomes().size() <= MOST_OUTCOMES) {
            node.with("outcomes", AnswerDocument.list(worth.outcomes(), TellApartDocument::outcome));
        }
        if (step instanceof Step.Kits) {
            node.with(
                            "aKit",
                            AnswerDocument.list(
                                    one.looks(),
                                    look -> new ObjectBuilder()
                                            .with("look", look.look())
                                            .with("chances", decimals(look.chances()))
                                            .build()))
                    .with("needed", AnswerDocument.list(worth.numbers(), TellApartDocument::needed));
        }
        worth.reason().ifPresent(reason -> node.with("lacking", reason));
        one.concerns().ifPresent(found -> {
            node.with("relation", found.relation().word());
            found.inbreeding().ifPresent(coefficient -> node.with("inbreeding", Chances.of(coefficient)));
        });
        return node.build();
    }

    private static void stage(LifeStage stage, ObjectBuilder node) {
        if (!stage.equals(LifeStage.unstated())) {
            node.with("stage", AnswerDocument.stage(stage));
        }
    }

    private static Node ratio(ExpectedRatio one) {
        ObjectBuilder node =
                new ObjectBuilder().with("true", Node.number(one.truth())).with("over", Node.number(one.rival()));
        if (one.excluding() == 0) {
            node.with("expectedLogRatio", Shared.decimal(one.expected()));
        }
        return node.with("excludes", Shared.decimal(one.excluding()))
                .with("otherwise", Shared.decimal(one.finite()))
                .build();
    }

    private static Node outcome(Outcome one) {
        return new ObjectBuilder()
                .with(
                        "found",
                        AnswerDocument.list(
                                List.copyOf(one.found().entrySet()),
                                each -> new ObjectBuilder()
                                        .with("what", each.getKey())
                                        .with("animals", Node.number(each.getValue()))
                                        .build()))
                .with("chances", decimals(one.chances()))
                .build();
    }

    private static Node needed(KitsNeeded one) {
        ObjectBuilder node = new ObjectBuilder()
                .with("true", Node.number(one.truth()))
                .with("over", Node.number(one.rival()))
                .with("design", one.design().words())
                .with("sureness", Shared.decimal(one.sureness()))
                .with("standing", one.standing().words());
        one.kits().ifPresent(kits -> node.with("kits", Node.number(kits)));
        one.litters().ifPresent(litters -> node.with("litters", Node.number(litters)));
        return node.with("reached", Shared.decimal(one.reached()))
                .with("limit", Shared.decimal(one.limit()))
                .with("tried", Node.number(one.tried()))
                .build();
    }

    private static Node decimals(List<Double> numbers) {
        return Node.list(numbers.stream().map(Shared::decimal).toArray(Node[]::new));
    }
}
