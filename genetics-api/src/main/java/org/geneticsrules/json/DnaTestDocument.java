package org.geneticsrules.json;

import org.geneticsrules.answer.recorded.DnaTest;
import org.geneticsrules.answer.recorded.DnaTest.Belief;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.model.Statement;

/** What a DNA test would tell, as a document. */
final class DnaTestDocument {

    private DnaTestDocument() {}

    static Node of(DnaTest found) {
        ObjectBuilder node = new ObjectBuilder().with("animal", found.animal()).with("locus", found.locus());
        found.allele().ifPresent(allele -> node.with("allele", RecordedDocument.allele(allele)));
        return node.with("error", found.error().toString())
                .with("cause", found.cause().word())
                .with(
                        "support",
                        Node.texts(
                                found.support().stream().map(Statement::pointer).toList()))
                .with("origins", AnswerDocument.list(found.origins(), RecordedDocument::origin))
                .with("tells", AnswerDocument.list(found.tells(), LookNextDocument::information))
                .with("before", belief(found.before()))
                .with(
                        "reports",
                        AnswerDocument.list(
                                found.reports(),
                                one -> new ObjectBuilder()
                                        .with("reported", ReasonDocument.pair(one.reported()))
                                        .with("chances", RecordedDocument.chances(one.chances()))
                                        .with("after", belief(one.after()))
                                        .build()))
                .build();
    }

    private static Node belief(Belief belief) {
        return new ObjectBuilder()
                .with(
                        "genotypes",
                        AnswerDocument.list(
                                belief.genotypes(),
                                one -> new ObjectBuilder()
                                        .with("pair", ReasonDocument.pair(one.pair()))
                                        .with("whether", one.whether().word())
                                        .with("chances", RecordedDocument.chances(one.chances()))
                                        .build()))
                .with("carries", RecordedDocument.chances(belief.carries()))
                .build();
    }
}
