package org.geneticsrules.json;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.geneticsrules.answer.compared.FitOtherwise;
import org.geneticsrules.answer.compared.LitterAnswer;
import org.geneticsrules.answer.compared.Standings;
import org.geneticsrules.comparison.FittedModel;
import org.geneticsrules.comparison.KitFit;
import org.geneticsrules.comparison.LitterEvidence;
import org.geneticsrules.comparison.LitterFit;
import org.geneticsrules.comparison.MatingFit;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.statistics.ChiSquared;

/**
 * The document form of what litters say of models. Logarithms are natural. Where a model excludes
 * records, the logarithm of its likelihood is not stated, and stands as {@code impossible} in lists.
 *
 * <p>Stateless and thread-safe.
 */
public final class LitterDocument {

    /** What these answers state as their kind. */
    static final String KIND = "litter-answer";

    private LitterDocument() {}

    /**
     * Returns the document that states an answer.
     *
     * @param answer what litters say
     * @return a document of kind {@code litter-answer}, format version 0
     */
    public static Node of(LitterAnswer answer) {
        ObjectBuilder node = new ObjectBuilder()
                .with("formatVersion", Node.number(0))
                .with("kind", KIND)
                .with("question", answer.question())
                .with("verdict", answer.verdict())
                .with("decided", Node.flag(answer.decided()))
                .with("given", Node.texts(answer.given()));
        answer.comparison().ifPresent(standings -> node.with("comparison", standings(standings)));
        answer.fit().ifPresent(fit -> node.with("fit", fit(fit)));
        if (!answer.fitOtherwise().isEmpty()) {
            node.with("fitOtherwise", AnswerDocument.list(answer.fitOtherwise(), LitterDocument::fitOtherwise));
        }
        return node.with("assumptions", AnswerDocument.list(answer.assumptions(), AnswerDocument::assumption))
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
     * @return the text of the schema, which names itself {@code urn:geneticsrules:schema:litter-answer:0}
     */
    public static String schema() {
        return Shared.schema(KIND);
    }

    private static Node standings(Standings standings) {
        ObjectBuilder node =
                new ObjectBuilder().with("models", AnswerDocument.list(standings.models(), LitterDocument::model));
        best(standings.best(), node);
        return node.with("bar", Shared.decimal(standings.bar()))
                .with("kits", Node.number(standings.kits()))
                .with(
                        "dropped",
                        AnswerDocument.list(
                                standings.dropped(),
                                one -> new ObjectBuilder()
                                        .with("what", one.kind().words())
                                        .with("id", one.id())
                                        .with("silent", Node.texts(one.silent()))
                                        .build()))
                .with("litters", AnswerDocument.list(standings.litters(), LitterDocument::evidence))
                .with(
                        "alike",
                        AnswerDocument.list(
                                standings.alike(),
                                pair -> new ObjectBuilder()
                                        .with("models", Node.list(Node.number(pair.one()), Node.number(pair.other())))
                                        .with(
                                                "always",
                                                Node.flag(
                                                        standings.inseparable().contains(pair)))
                                        .build()))
                .with(
                        "otherwise",
                        AnswerDocument.list(standings.otherwise(), one -> otherwise(one.assumed(), one.logs())))
                .with(
                        "withoutLitter",
                        AnswerDocument.list(standings.leftOut(), one -> otherwise(one.litter(), one.logs())))
                .build();
    }

    private static void best(OptionalInt best, ObjectBuilder node) {
        if (best.isPresent()) {
            node.with("best", Node.number(best.getAsInt()));
        }
    }

    private static Node model(Standings.Standing one) {
        ObjectBuilder node =
                new ObjectBuilder().with("title", one.title()).with("model", Shared.reference(one.model()));
        log("logLikelihood", one.log(), node);
        if (one.highest() != Double.POSITIVE_INFINITY) {
            node.with("highestLogRatio", Shared.decimal(one.highest()));
        }
        one.reached().ifPresent(litter -> node.with("reachedBarWith", litter));
        node.with("prior", Shared.decimal(one.prior())).with("posterior", Shared.decimal(one.posterior()));
        one.fitting().ifPresent(fitted -> {
            node.with("fittedNumbers", Node.number(fitted.numbers()));
            if (!one.isImpossible()) {
                node.with("aic", Shared.decimal(fitted.aic())).with("bic", Shared.decimal(fitted.bic()));
            }
        });
        return node.with(
                        "lookAgain",
                        AnswerDocument.list(
                                one.recheck(),
                                recheck -> new ObjectBuilder()
                                        .with("litters", Node.texts(recheck.litters()))
                                        .with("anyOneOf", Node.texts(recheck.animals()))
                                        .build()))
                .build();
    }

    private static Node evidence(LitterEvidence litter) {
        return new ObjectBuilder()
                .with("litter", litter.litter())
                .with("kindred", Node.number(litter.kindred()))
                .with("logs", logs(litter.logs()))
                .build();
    }

    private static Node otherwise(String assumed, List<Double> logs) {
        return new ObjectBuilder()
                .with("what", assumed)
                .with("logs", logs(logs))
                .build();
    }

    /** One for each model. */
    private static Node logs(List<Double> logs) {
        return Node.list(logs.stream()
                .map(log -> log == Double.NEGATIVE_INFINITY ? Node.text("impossible") : Shared.decimal(log))
                .toArray(Node[]::new));
    }

    private static void log(String name, double log, ObjectBuilder node) {
        if (log != Double.NEGATIVE_INFINITY) {
            node.with(name, Shared.decimal(log));
        }
    }

    private static Node fit(FittedModel fit) {
        ObjectBuilder node =
                new ObjectBuilder().with("model", fit.name()).with("rejected", Node.flag(fit.isRejected()));
        fit.p()
                .ifPresent(p ->
                        node.with("p", Shared.decimal(p)).with("standardError", Shared.decimal(fit.standardError())));
        fit.draws()
                .ifPresent(draws ->
                        node.with("draws", Node.number(draws.number())).with("seed", Node.number(draws.seed())));
        return node.with("untested", Node.number(fit.untested()))
                .with("traits", Node.texts(fit.records().traits()))
                .with("litters", AnswerDocument.list(fit.litters(), LitterDocument::litter))
                .with("kits", AnswerDocument.list(fit.kits(), LitterDocument::kit))
                .with("matings", AnswerDocument.list(fit.matings(), LitterDocument::mating))
                .build();
    }

    private static Node fitOtherwise(FitOtherwise one) {
        ObjectBuilder node =
                new ObjectBuilder().with("what", one.assumed()).with("rejected", Node.flag(one.rejected()));
        one.p()
                .ifPresent(p ->
                        node.with("p", Shared.decimal(p)).with("standardError", Shared.decimal(one.standardError())));
        return node.build();
    }

    private static Node litter(LitterFit litter) {
        ObjectBuilder node = new ObjectBuilder()
                .with("litter", litter.litter())
                .with("standing", litter.standing().words());
        litter.p()
                .ifPresent(p -> node.with("p", Shared.decimal(p))
                        .with("standardError", Shared.decimal(litter.standardError())));
        litter.untested().ifPresent(why -> node.with("untested", why));
        return node.with(
                        "counts",
                        AnswerDocument.list(List.copyOf(litter.counts().entrySet()), one -> {
                            ObjectBuilder count = new ObjectBuilder()
                                    .with("shown", one.getKey().toString())
                                    .with("kits", Node.number(one.getValue()));
                            if (litter.expected().containsKey(one.getKey())) {
                                count.with(
                                        "expected",
                                        Shared.decimal(litter.expected().get(one.getKey())));
                            }
                            return count.build();
                        }))
                .build();
    }

    private static Node kit(KitFit kit) {
        ObjectBuilder node = new ObjectBuilder()
                .with("kit", kit.kit())
                .with("litter", kit.litter())
                .with("standing", kit.standing().words());
        if (!Double.isNaN(kit.chance())) {
            node.with("chance", Shared.decimal(kit.chance()));
        }
        if (!Double.isNaN(kit.rarer())) {
            node.with("asRare", Shared.decimal(kit.rarer()));
        }
        return node.build();
    }

    private static Node mating(MatingFit mating) {
        ObjectBuilder node = new ObjectBuilder()
                .with("parents", mating.parents())
                .with("litters", Node.texts(mating.litters()))
                .with("independent", Node.flag(mating.independent()));
        List<Node> classes = new ArrayList<>();
        for (int at = 0; at < mating.shares().size(); at++) {
            classes.add(new ObjectBuilder()
                    .with("shown", mating.test().observed().names().get(at))
                    .with("kits", Node.number(mating.test().observed().values().get(at)))
                    .with("expected", Shared.decimal(mating.test().expected().get(at)))
                    .with("low", Shared.decimal(mating.shares().get(at).low()))
                    .with("high", Shared.decimal(mating.shares().get(at).high()))
                    .build());
        }
        node.with("classes", Node.list(classes.toArray(Node[]::new)));
        if (mating.independent()) {
            mating.exact().ifPresent(exact -> node.with("exactP", Shared.decimal(exact.p())));
            mating.test().chiSquared().ifPresent(chi -> node.with("chiSquared", statistic(chi)));
            mating.test().g().ifPresent(g -> node.with("g", statistic(g)));
        }
        return node.with("smallExpectations", Node.texts(mating.test().small())).build();
    }

    private static Node statistic(ChiSquared test) {
        return new ObjectBuilder()
                .with("statistic", Shared.decimal(test.statistic()))
                .with("degreesOfFreedom", Node.number(test.degreesOfFreedom()))
                .with("p", Shared.decimal(test.p()))
                .build();
    }
}
