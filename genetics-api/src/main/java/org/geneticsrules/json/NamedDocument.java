package org.geneticsrules.json;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.geneticsrules.answer.named.NameEvidence;
import org.geneticsrules.answer.named.NameFinding;
import org.geneticsrules.answer.named.NameFinding.Called;
import org.geneticsrules.answer.named.NameFinding.Converted;
import org.geneticsrules.answer.named.NameFinding.Meant;
import org.geneticsrules.answer.named.NamedAnswer;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.trait.BoxSet;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.vocabulary.Conversion;
import org.geneticsrules.vocabulary.Meaning;
import org.geneticsrules.vocabulary.Name;
import org.geneticsrules.vocabulary.Naming;
import org.geneticsrules.vocabulary.PartialDate;
import org.geneticsrules.vocabulary.Period;

/**
 * The document form of an answer about names.
 *
 * <p>A set of looks is a list of conditions as in models, no two of which hold for one animal. A document lists 10,000 conditions at most,
 * those of the nearest candidates first, and says of each set how many more there are.
 *
 * <p>Stateless and thread-safe.
 */
public final class NamedDocument {

    /** More conditions than this nobody reads, and a program that needs them asks the vocabularies. */
    private static final int MOST_CONDITIONS = 10_000;

    private NamedDocument() {}

    /**
     * Returns the document that states an answer.
     *
     * @param answer an answer
     * @return a document of kind {@code named-answer}, format version 0
     */
    public static Node of(NamedAnswer answer) {
        return new ObjectBuilder()
                .with("formatVersion", Node.number(0))
                .with("kind", "named-answer")
                .with(
                        "question",
                        new ObjectBuilder()
                                .with("kind", answer.kind())
                                .with("text", answer.question())
                                .build())
                .with("verdict", answer.verdict())
                .with("given", Node.texts(answer.given()))
                .with("finding", finding(answer.finding()))
                .with("cautions", AnswerDocument.list(answer.cautions(), AnswerDocument::caution))
                .with("evidenceLevel", evidence(answer.evidence()))
                .with("vocabularies", AnswerDocument.list(answer.vocabularies(), Shared::reference))
                .with("notices", Node.texts(answer.notices()))
                .build();
    }

    /**
     * Returns the JSON Schema (draft 2020-12) of answers about names.
     *
     * @return the text of the schema, which names itself {@code urn:geneticsrules:schema:named-answer:0}
     */
    public static String schema() {
        return Shared.schema("named-answer");
    }

    private static Node evidence(NameEvidence level) {
        ObjectBuilder node = new ObjectBuilder();
        level.grade().ifPresent(grade -> node.with("grade", grade.word()).with("meaning", grade.meaning()));
        return node.with(
                        "weakest",
                        AnswerDocument.list(level.weakest(), one -> place(one).build()))
                .with(
                        "statements",
                        AnswerDocument.list(
                                level.senses(), one -> AnswerDocument.statement(one.statement(), place(one))))
                .build();
    }

    /** A pointer leads nowhere without the document that it points into. */
    private static ObjectBuilder place(NameEvidence.OfSense one) {
        return new ObjectBuilder()
                .with("vocabulary", one.vocabulary())
                .with("pointer", one.statement().pointer());
    }

    private static Node finding(NameFinding finding) {
        if (finding instanceof Called found) {
            return new ObjectBuilder()
                    .with("namings", AnswerDocument.list(found.namings(), NamedDocument::naming))
                    .build();
        }
        return finding instanceof Meant found
                ? meaning(found.meaning(), new Sets())
                : conversion(((Converted) finding).conversion(), new Sets());
    }

    private static Node naming(Naming naming) {
        return new ObjectBuilder()
                .with("vocabulary", naming.vocabulary().id())
                .with("told", AnswerDocument.phenotype(naming.told()))
                .with(
                        "facets",
                        AnswerDocument.list(
                                naming.facets(),
                                facet -> new ObjectBuilder()
                                        .with("facet", facet.facet().id())
                                        .with("names", AnswerDocument.list(facet.names(), NamedDocument::name))
                                        .build()))
                .build();
    }

    private static Node name(Naming.OfName one) {
        ObjectBuilder senses = new ObjectBuilder();
        one.senses().forEach((id, standing) -> senses.with(id, standing.word()));
        ObjectBuilder against = new ObjectBuilder();
        one.against().forEach(against::with);
        ObjectBuilder node = new ObjectBuilder()
                .with("name", one.name().word())
                .with("standing", one.standing().word())
                .with("senses", senses.build());
        if (!one.partly().isEmpty()) {
            ObjectBuilder partly = new ObjectBuilder();
            one.partly()
                    .forEach(id -> partly.with(
                            id,
                            Objects.requireNonNull(one.name().senses().get(id))
                                    .period()
                                    .toString()));
            node.with("partly", partly.build());
        }
        node.with("narrower", Node.texts(one.narrower())).with("lookAt", Node.texts(one.lookAt()));
        one.lookAgain().ifPresent(from -> node.with("lookAgain", AnswerDocument.stage(from)));
        if (one.standing() != Naming.Standing.EXCLUDED) {
            node.with("notes", Node.texts(one.notes()));
        }
        return node.with("against", against.build())
                .with(
                        "differences",
                        AnswerDocument.list(
                                one.differences(),
                                difference -> new ObjectBuilder()
                                        .with("trait", difference.trait())
                                        .with("seen", difference.seen())
                                        .with("needed", Node.texts(difference.needed()))
                                        .build()))
                .build();
    }

    private static Node meaning(Meaning meaning, Sets sets) {
        return new ObjectBuilder()
                .with("word", meaning.word())
                .with("facet", meaning.facet())
                .with(
                        "readings",
                        AnswerDocument.list(
                                meaning.readings(),
                                one -> reading(one, meaning.occasion().date())))
                .with("looks", sets.set(meaning.set()))
                .build();
    }

    private static Node reading(Meaning.Reading one, Optional<PartialDate> date) {
        ObjectBuilder node = new ObjectBuilder()
                .with("name", one.name().word())
                .with("sense", one.sense().id());
        Period used = one.sense().period();
        if (date.isPresent() && !used.includes(date)) {
            node.with("partly", used.toString());
        }
        return node.build();
    }

    private static Node conversion(Conversion found, Sets sets) {
        ObjectBuilder node = new ObjectBuilder()
                .with(
                        "words",
                        Node.texts(found.names().stream().map(Meaning::word).toList()))
                .with("target", found.target().id());
        found.date().ifPresent(day -> node.with("on", day.toString()));
        node.with("candidates", AnswerDocument.list(found.candidates(), one -> candidate(one, sets)));
        ObjectBuilder uncovered = new ObjectBuilder();
        for (Map.Entry<String, BoxSet> one : found.uncovered().entrySet()) {
            uncovered.with(one.getKey(), sets.set(one.getValue()));
        }
        return node.with("uncovered", uncovered.build()).build();
    }

    private static Node candidate(Conversion.Candidate one, Sets sets) {
        return new ObjectBuilder()
                .with("names", Node.texts(one.names().stream().map(Name::word).toList()))
                .with("match", one.match().word())
                .with("alsoMeans", sets.set(one.alsoMeans()))
                .with("leavesOut", sets.set(one.leavesOut()))
                .build();
    }

    /** The sets of one document, which lists so many conditions and no more. */
    private static final class Sets {

        private int left = MOST_CONDITIONS;

        Node set(BoxSet set) {
            List<Condition> all = set.boxes();
            List<Condition> listed = all.subList(0, Math.min(left, all.size()));
            left -= listed.size();
            ObjectBuilder node = new ObjectBuilder().with("conditions", AnswerDocument.list(listed, Condition::toNode));
            int more = all.size() - listed.size();
            return more == 0
                    ? node.build()
                    : node.with("more", Node.number(more)).build();
        }
    }
}
