package org.geneticsrules.json;

import org.geneticsrules.answer.recorded.RegistryReport;
import org.geneticsrules.answer.recorded.RegistryReport.Entry;
import org.geneticsrules.answer.recorded.RegistryReport.Kindred;
import org.geneticsrules.answer.recorded.RegistryReport.Recheck;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;

/**
 * The document form of the check of a registry. Chances are as in {@link RecordedDocument}.
 *
 * <p>Stateless and thread-safe.
 */
public final class RegistryDocument {

    private RegistryDocument() {}

    /**
     * Returns the document that states a report.
     *
     * @param report a report
     * @return a document of kind {@code registry-report}, format version 0
     */
    public static Node of(RegistryReport report) {
        return new ObjectBuilder()
                .with("formatVersion", Node.number(0))
                .with("kind", "registry-report")
                .with("verdict", report.verdict())
                .with("carrying", AnswerDocument.list(report.carrying(), RecordedDocument::allele))
                .with("origins", AnswerDocument.list(report.origins(), RecordedDocument::origin))
                .with("entries", AnswerDocument.list(report.entries(), RegistryDocument::entry))
                .with("conflicts", AnswerDocument.list(report.conflicts(), RecordedDocument::conflict))
                .with("recheck", AnswerDocument.list(report.recheck(), RegistryDocument::recheck))
                .with("kindreds", AnswerDocument.list(report.kindreds(), RegistryDocument::kindred))
                .with("assumptions", AnswerDocument.list(report.assumptions(), AnswerDocument::assumption))
                .with("rivals", AnswerDocument.list(report.rivals(), AnswerDocument::rival))
                .with("cautions", AnswerDocument.list(report.cautions(), AnswerDocument::caution))
                .with("evidenceLevel", AnswerDocument.evidence(report.evidence()))
                .with("model", Shared.reference(report.model()))
                .with(
                        "pedigree",
                        new ObjectBuilder()
                                .with("id", report.pedigree().id())
                                .with("version", report.pedigree().version())
                                .build())
                .with("notices", Node.texts(report.notices()))
                .build();
    }

    /**
     * Returns the JSON Schema (draft 2020-12) of such reports.
     *
     * @return the text of the schema, which names itself {@code urn:geneticsrules:schema:registry-report:0}
     */
    public static String schema() {
        return Shared.schema("registry-report");
    }

    private static Node entry(Entry entry) {
        ObjectBuilder node = new ObjectBuilder()
                .with("animal", entry.animal())
                .with("verdict", entry.verdict().word());
        if (!entry.reason().isEmpty()) {
            node.with("reason", entry.reason());
        }
        return node.with("conflicts", AnswerDocument.list(entry.conflicts(), place -> Node.number(place)))
                .with("inbreeding", RecordedDocument.decimal(entry.inbreeding()))
                .with("generationsKnown", RecordedDocument.decimal(entry.generations()))
                .with("chances", RecordedDocument.chances(entry.chances()))
                .build();
    }

    private static Node kindred(Kindred kindred) {
        return new ObjectBuilder()
                .with("first", kindred.first())
                .with("animals", Node.number(kindred.animals()))
                .with("cells", RecordedDocument.decimal(kindred.cells()))
                .with("within", Node.flag(kindred.within()))
                .with("inTime", Node.flag(kindred.inTime()))
                .build();
    }

    private static Node recheck(Recheck recheck) {
        return new ObjectBuilder()
                .with("relatives", Node.number(recheck.relatives()))
                .with("atLeast", Node.number(recheck.atLeast()))
                .with(
                        "sets",
                        AnswerDocument.list(recheck.sets(), set -> AnswerDocument.list(set, RecordedDocument::cited)))
                .with("more", Node.flag(recheck.more()))
                .build();
    }
}
