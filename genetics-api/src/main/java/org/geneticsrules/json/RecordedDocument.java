package org.geneticsrules.json;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.answer.Probabilities;
import org.geneticsrules.answer.recorded.CarrierTrail;
import org.geneticsrules.answer.recorded.Chance;
import org.geneticsrules.answer.recorded.Cited;
import org.geneticsrules.answer.recorded.Conflict;
import org.geneticsrules.answer.recorded.DnaTest;
import org.geneticsrules.answer.recorded.Finding;
import org.geneticsrules.answer.recorded.HowSure;
import org.geneticsrules.answer.recorded.Later;
import org.geneticsrules.answer.recorded.LookNext;
import org.geneticsrules.answer.recorded.MayCarry;
import org.geneticsrules.answer.recorded.NextLitter;
import org.geneticsrules.answer.recorded.Origin;
import org.geneticsrules.answer.recorded.Parentage;
import org.geneticsrules.answer.recorded.RecordedAnswer;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.inference.Conclusions;
import org.geneticsrules.inference.Possibility;
import org.geneticsrules.model.Population;

/**
 * The document form of an answer about recorded animals.
 *
 * <p>Chances that rest on all records of a kindred are calculated in floating point. Each is an object with its {@code standing}; where it is
 * settled, also its {@code value} as a decimal with all digits, and the simple {@code fraction} that it is but for rounding, if it is one.
 *
 * <p>Stateless and thread-safe.
 */
public final class RecordedDocument {

    private RecordedDocument() {}

    /**
     * Returns the document that states an answer.
     *
     * @param answer an answer
     * @return a document of kind {@code recorded-answer}, format version 0
     */
    public static Node of(RecordedAnswer answer) {
        return new ObjectBuilder()
                .with("formatVersion", Node.number(0))
                .with("kind", "recorded-answer")
                .with(
                        "question",
                        new ObjectBuilder()
                                .with("kind", answer.kind())
                                .with("text", answer.question())
                                .build())
                .with("verdict", answer.verdict())
                .with("status", answer.status().word())
                .with("given", Node.texts(answer.given()))
                .with("assumptions", AnswerDocument.list(answer.assumptions(), AnswerDocument::assumption))
                .with("finding", finding(answer.finding()))
                .with("conflicts", AnswerDocument.list(answer.conflicts(), RecordedDocument::conflict))
                .with("rivalVerdicts", AnswerDocument.list(answer.rivalVerdicts(), AnswerDocument::rivalVerdict))
                .with("rivals", AnswerDocument.list(answer.rivals(), AnswerDocument::rival))
                .with("cautions", AnswerDocument.list(answer.cautions(), AnswerDocument::caution))
                .with("evidenceLevel", AnswerDocument.evidence(answer.evidence()))
                .with("model", Shared.reference(answer.model()))
                .with(
                        "pedigree",
                        new ObjectBuilder()
                                .with("id", answer.pedigree().id())
                                .with("version", answer.pedigree().version())
                                .build())
                .with("notices", Node.texts(answer.notices()))
                .build();
    }

    /**
     * Returns the JSON Schema (draft 2020-12) of answers about recorded animals.
     *
     * @return the text of the schema, which names itself {@code urn:geneticsrules:schema:recorded-answer:0}
     */
    public static String schema() {
        return Shared.schema("recorded-answer");
    }

    private static Node finding(Finding finding) {
        if (finding instanceof MayCarry found) {
            return carries(found);
        }
        if (finding instanceof CarrierTrail found) {
            return trail(found);
        }
        if (finding instanceof HowSure found) {
            return sure(found);
        }
        if (finding instanceof LookNext found) {
            return LookNextDocument.of(found);
        }
        if (finding instanceof Later found) {
            return LaterDocument.of(found);
        }
        if (finding instanceof DnaTest found) {
            return DnaTestDocument.of(found);
        }
        return finding instanceof Parentage found ? parentage(found) : litter((NextLitter) finding);
    }

    private static Node carries(MayCarry found) {
        return new ObjectBuilder()
                .with("animal", found.animal())
                .with("origins", AnswerDocument.list(found.origins(), RecordedDocument::origin))
                .with("loci", AnswerDocument.list(found.loci(), RecordedDocument::atLocus))
                .build();
    }

    private static Node atLocus(MayCarry.AtLocus at) {
        ObjectBuilder node = new ObjectBuilder()
                .with("locus", at.locus())
                .with(
                        "genotypes",
                        AnswerDocument.list(
                                at.genotypes(),
                                one -> new ObjectBuilder()
                                        .with("pair", ReasonDocument.pair(one.pair()))
                                        .with("possibility", word(one.possibility()))
                                        .with("chances", chances(one.chances()))
                                        .build()))
                .with(
                        "alleles",
                        AnswerDocument.list(
                                at.alleles(),
                                one -> new ObjectBuilder()
                                        .with("id", one.allele().id())
                                        .with("word", one.word().word())
                                        .with("chances", chances(one.chances()))
                                        .build()));
        at.hidden().ifPresent(hidden -> node.with("hidden", AnswerDocument.hidden(hidden)));
        return node.build();
    }

    private static String word(Possibility possibility) {
        return possibility.getClass().getSimpleName().toLowerCase(Locale.ROOT);
    }

    private static Node trail(CarrierTrail found) {
        return new ObjectBuilder()
                .with("animal", found.animal())
                .with("allele", allele(found.allele()))
                .with("order", found.order().word())
                .with(
                        "trails",
                        AnswerDocument.list(
                                found.trails(),
                                one -> new ObjectBuilder()
                                        .with("origin", origin(one.origin()))
                                        .with("before", chance(one.before()))
                                        .with("steps", AnswerDocument.list(one.steps(), RecordedDocument::step))
                                        .with("still", Node.number(one.still()))
                                        .with("after", chance(one.after()))
                                        .build()))
                .build();
    }

    private static Node step(CarrierTrail.Step step) {
        ObjectBuilder node = new ObjectBuilder()
                .with("records", AnswerDocument.list(step.records(), RecordedDocument::cited))
                .with("after", chance(step.after()));
        step.factor().ifPresent(factor -> node.with("factor", decimal(factor)));
        return node.build();
    }

    private static Node sure(HowSure found) {
        return new ObjectBuilder()
                .with("animal", found.animal())
                .with("mate", found.mate())
                .with("allele", allele(found.allele()))
                .with("signs", AnswerDocument.list(found.signs(), AnswerDocument::phenotype))
                .with(
                        "courses",
                        AnswerDocument.list(
                                found.courses(),
                                one -> new ObjectBuilder()
                                        .with("origin", origin(one.origin()))
                                        .with("now", chance(one.now()))
                                        .with(
                                                "rows",
                                                AnswerDocument.list(
                                                        one.rows(),
                                                        row -> new ObjectBuilder()
                                                                .with("kits", Node.number(row.kits()))
                                                                .with("detected", chance(row.detected()))
                                                                .with("carries", chance(row.carries()))
                                                                .with("atLeastOne", chance(row.atLeastOne()))
                                                                .build()))
                                        .build()))
                .build();
    }

    private static Node parentage(Parentage found) {
        return new ObjectBuilder()
                .with("litter", found.litter())
                .with("perKit", Node.flag(found.perKit()))
                .with("origins", AnswerDocument.list(found.origins(), RecordedDocument::origin))
                .with(
                        "kits",
                        AnswerDocument.list(
                                found.kits(),
                                one -> new ObjectBuilder()
                                        .with("kit", one.kit())
                                        .with("males", AnswerDocument.list(one.males(), RecordedDocument::male))
                                        .build()))
                .build();
    }

    private static Node male(Parentage.OfMale male) {
        return new ObjectBuilder()
                .with("id", male.male().male())
                .with("population", male.male().population())
                .with("share", male.male().share().toString())
                .with("word", male.word().word())
                .with(
                        "against",
                        AnswerDocument.list(
                                male.against(), records -> AnswerDocument.list(records, RecordedDocument::cited)))
                .with("chances", chances(male.chances()))
                .build();
    }

    private static Node litter(NextLitter found) {
        ObjectBuilder node = new ObjectBuilder().with("sire", found.sire()).with("dam", found.dam());
        found.look()
                .ifPresent(look ->
                        node.with("look", AnswerDocument.phenotype(look)).with("kits", Node.number(found.kits())));
        found.inbreeding().ifPresent(coefficient -> node.with("inbreeding", Chances.of(coefficient)));
        return node.with("courses", AnswerDocument.list(found.courses(), RecordedDocument::course))
                .build();
    }

    private static Node course(NextLitter.Course course) {
        ObjectBuilder node = new ObjectBuilder()
                .with("origin", origin(course.origin()))
                .with(
                        "looks",
                        AnswerDocument.list(
                                course.looks().entrySet(),
                                one -> new ObjectBuilder()
                                        .with("phenotype", AnswerDocument.phenotype(one.getKey()))
                                        .with("chance", chance(one.getValue()))
                                        .build()))
                .with("counts", chances(course.counts()));
        course.independent().ifPresent(none -> node.with("noneIfIndependent", chance(none)));
        return node.build();
    }

    static Node conflict(Conflict conflict) {
        return new ObjectBuilder()
                .with("records", AnswerDocument.list(conflict.records(), RecordedDocument::cited))
                .with("smallest", Node.flag(conflict.smallest()))
                .with("text", conflict.toString())
                .build();
    }

    /** A record by its place in the pedigree document. */
    static Node cited(Cited cited) {
        return new ObjectBuilder()
                .with("pointer", cited.pointer())
                .with("text", cited.words())
                .build();
    }

    static Node allele(HiddenAllele allele) {
        return new ObjectBuilder()
                .with("locus", allele.locus())
                .with("id", allele.allele().id())
                .build();
    }

    static Node origin(Origin origin) {
        return new ObjectBuilder()
                .with("population", origin.assumed().map(Population::id))
                .build();
    }

    static Node chances(List<Chance> chances) {
        return AnswerDocument.list(chances, RecordedDocument::chance);
    }

    static Node chance(Chance chance) {
        ObjectBuilder node = new ObjectBuilder().with("standing", standing(chance.standing()));
        chance.value().ifPresent(value -> {
            node.with("value", decimal(value));
            if (chance.standardError().isEmpty()) {
                Probabilities.simple(value).ifPresent(fraction -> node.with("fraction", fraction.toString()));
            }
        });
        chance.standardError().ifPresent(error -> node.with("standardError", decimal(error)));
        return node.build();
    }

    static String standing(Conclusions.Standing standing) {
        return standing.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    static String decimal(double number) {
        return BigDecimal.valueOf(number).toPlainString();
    }
}
