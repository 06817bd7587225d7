package org.geneticsrules.json;

import java.util.Collection;
import java.util.List;
import java.util.function.Function;
import org.geneticsrules.answer.Answer;
import org.geneticsrules.answer.Assumption;
import org.geneticsrules.answer.EvidenceLevel;
import org.geneticsrules.answer.Litter;
import org.geneticsrules.answer.Outcome;
import org.geneticsrules.answer.Question;
import org.geneticsrules.answer.Rival;
import org.geneticsrules.answer.RivalVerdict;
import org.geneticsrules.answer.Tipping;
import org.geneticsrules.answer.Weighting;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.explanation.Hidden;
import org.geneticsrules.model.Population;
import org.geneticsrules.model.Statement;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sighting;

/**
 * The document form of an answer.
 *
 * <p>Every chance is an object of exact {@code numerator} and {@code denominator}, as decimal digits in a text because they may be
 * larger than the whole numbers other programs keep exactly, with a {@code decimal} rounded to six places for reading. Loci and alleles
 * go by their ids. With this document and that of the model, every number can be multiplied and added again.
 *
 * <p>Stateless and thread-safe.
 */
public final class AnswerDocument {

    private AnswerDocument() {}

    /**
     * Returns the document that states an answer.
     *
     * @param answer an answer
     * @return a document of kind {@code answer}, format version 0
     */
    public static Node of(Answer answer) {
        ObjectBuilder document = new ObjectBuilder()
                .with("formatVersion", Node.number(0))
                .with("kind", "answer")
                .with("question", question(answer.question()))
                .with("verdict", answer.verdict())
                .with("status", answer.status().word());
        answer.probability().ifPresent(chance -> document.with("probability", Chances.of(chance)));
        answer.lost().ifPresent(share -> document.with("lost", Chances.of(share)));
        document.with("given", Node.texts(answer.given()))
                .with("assumptions", list(answer.assumptions(), AnswerDocument::assumption))
                .with("because", list(answer.because(), ReasonDocument::of))
                .with("outcomes", list(answer.outcomes(), AnswerDocument::outcome));
        answer.litter().ifPresent(litter -> document.with("litter", litter(litter)));
        document.with("weightings", list(answer.weightings(), weighting -> weighting(weighting, answer.evidence())));
        if (!answer.tests().isEmpty()) {
            document.with("tests", list(answer.tests(), TestDocument::of));
        }
        return document.with("hidden", list(answer.hidden(), AnswerDocument::hidden))
                .with("rivalVerdicts", list(answer.rivalVerdicts(), AnswerDocument::rivalVerdict))
                .with("rivals", list(answer.rivals(), AnswerDocument::rival))
                .with("cautions", list(answer.cautions(), AnswerDocument::caution))
                .with("evidenceLevel", evidence(answer.evidence()))
                .with("model", Shared.reference(answer.model()))
                .with("notices", Node.texts(answer.notices()))
                .build();
    }

    /**
     * Returns the JSON Schema (draft 2020-12) of answers.
     *
     * @return the text of the schema, which names itself {@code urn:geneticsrules:schema:answer:0}
     */
    public static String schema() {
        return Shared.schema("answer");
    }

    static <T> Node list(Collection<T> items, Function<? super T, Node> form) {
        return Node.list(items.stream().map(form).toArray(Node[]::new));
    }

    static Node phenotype(Phenotype phenotype) {
        ObjectBuilder node = new ObjectBuilder();
        phenotype.asMap().forEach(node::with);
        return node.build();
    }

    private static Node question(Question question) {
        ObjectBuilder node = new ObjectBuilder()
                .with("kind", question.kind())
                .with("text", question.text())
                .with("traits", Node.texts(question.traits()));
        if (!question.stage().equals(LifeStage.unstated())) {
            node.with("stage", stage(question.stage()));
        }
        node.with("census", question.census().word());
        question.look().ifPresent(look -> node.with("look", phenotype(look)));
        return node.with("seen", list(question.seen(), AnswerDocument::sighting))
                .build();
    }

    static Node sighting(Sighting sighting) {
        ObjectBuilder node = new ObjectBuilder().with("look", phenotype(sighting.look()));
        if (!sighting.stage().equals(LifeStage.unstated())) {
            node.with("stage", stage(sighting.stage()));
        }
        return node.with("light", sighting.light()).build();
    }

    static Node stage(LifeStage stage) {
        ObjectBuilder node = new ObjectBuilder();
        stage.weeks().ifPresent(weeks -> node.with("weeks", Node.number(weeks)));
        stage.moult().ifPresent(moult -> node.with("moult", Node.number(moult)));
        return node.with("season", stage.season()).build();
    }

    static Node assumption(Assumption assumption) {
        return new ObjectBuilder()
                .with("id", assumption.id())
                .with("text", assumption.text())
                .with("otherwise", assumption.otherwise())
                .build();
    }

    static Node rival(Rival rival) {
        return new ObjectBuilder()
                .with("statement", rival.statement())
                .with("view", rival.view())
                .build();
    }

    static Node rivalVerdict(RivalVerdict otherwise) {
        return new ObjectBuilder()
                .with("title", otherwise.title())
                .with("model", Shared.reference(otherwise.model()))
                .with("verdict", otherwise.verdict())
                .build();
    }

    private static Node outcome(Outcome outcome) {
        ObjectBuilder node = new ObjectBuilder().with("phenotype", phenotype(outcome.phenotype()));
        outcome.probability().ifPresent(chance -> node.with("probability", Chances.of(chance)));
        return node.with("chances", list(outcome.chances(), Chances::of)).build();
    }

    private static Node litter(Litter litter) {
        LitterSize size = litter.size();
        return new ObjectBuilder()
                .with("size", size.name())
                .with("source", size.source())
                .with("kits", Chances.of(size.kits(), "count", count -> Node.number(count)))
                .with("counts", Chances.of(litter.counts(), "count", count -> Node.number(count)))
                .with("atLeastOne", Chances.of(litter.atLeastOne()))
                .with("all", Chances.of(litter.all()))
                .with("expected", Chances.decimal(litter.expected()))
                .build();
    }

    private static Node weighting(Weighting weighting, EvidenceLevel evidence) {
        Population population = weighting.population();
        String pointer = Pointer.of("populations", population.id());
        ObjectBuilder about = new ObjectBuilder()
                .with("id", population.id())
                .with("title", population.title())
                .with("statement", pointer);
        evidence.statements().stream()
                .filter(statement -> statement.pointer().equals(pointer))
                .findFirst()
                .ifPresent(statement -> about.with("grade", statement.grade().word()));
        ObjectBuilder node = new ObjectBuilder().with("population", about.build());
        weighting
                .outcomes()
                .ifPresent(looks -> node.with("outcomes", Chances.of(looks, "phenotype", AnswerDocument::phenotype)));
        weighting.event().ifPresent(chance -> node.with("probability", Chances.of(chance)));
        weighting.litter().ifPresent(litter -> node.with("litter", litter(litter)));
        weighting.lost().ifPresent(share -> node.with("lost", Chances.of(share)));
        return node.with("tippings", list(weighting.tippings(), AnswerDocument::tipping))
                .build();
    }

    private static Node tipping(Tipping tipping) {
        return new ObjectBuilder()
                .with("locus", tipping.locus())
                .with("allele", tipping.allele().id())
                .with("frequency", Chances.of(tipping.frequency()))
                .with("stated", Chances.of(tipping.stated()))
                .build();
    }

    static Node hidden(Hidden hidden) {
        ObjectBuilder node = new ObjectBuilder()
                .with("locus", hidden.locus())
                .with("phenotype", phenotype(hidden.phenotype()))
                .with("alternatives", list(hidden.alternatives(), ReasonDocument::pair));
        hidden.chances().ifPresent(chances -> node.with("chances", Chances.of(chances, "pair", ReasonDocument::pair)));
        return node.with(
                        "causes",
                        list(
                                hidden.causes(),
                                cause -> new ObjectBuilder()
                                        .with("kind", cause.kind().word())
                                        .with("names", Node.texts(cause.names()))
                                        .with("text", cause.toString())
                                        .build()))
                .build();
    }

    static Node caution(Caution caution) {
        ObjectBuilder node = new ObjectBuilder()
                .with("id", caution.id())
                .with("line", caution.line())
                .with("detail", Node.texts(caution.detail()))
                .with("sources", Node.texts(caution.sources()))
                .with("date", caution.date());
        return caution.excludes() ? node.with("excludes", Node.flag(true)).build() : node.build();
    }

    static Node evidence(EvidenceLevel level) {
        ObjectBuilder node = new ObjectBuilder();
        level.grade().ifPresent(grade -> node.with("grade", grade.word()).with("meaning", grade.meaning()));
        List<String> weakest = level.weakest().stream().map(Statement::pointer).toList();
        return node.with("weakest", Node.texts(weakest))
                .with(
                        "statements",
                        list(
                                level.statements(),
                                one -> statement(one, new ObjectBuilder().with("pointer", one.pointer()))))
                .build();
    }

    /** A statement, after what tells where it stands. */
    static Node statement(Statement statement, ObjectBuilder node) {
        node.with("text", statement.text()).with("grade", statement.grade().word());
        statement
                .evidence()
                .ifPresent(support -> node.with("evidence", support.id())
                        .with("claim", support.claim())
                        .with("sources", Node.texts(support.sources())));
        return node.build();
    }
}
