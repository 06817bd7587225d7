package org.geneticsrules.json;

import java.util.List;
import org.geneticsrules.answer.compared.Analysis;
import org.geneticsrules.answer.compared.HeldModel;
import org.geneticsrules.document.Canonical;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.document.Reference;
import org.geneticsrules.pedigree.PedigreeDocument;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Confusion;
import org.geneticsrules.vocabulary.Vocabulary;

/** The document form of a frozen analysis. Stateless and thread-safe. */
final class AnalysisDocument {

    private AnalysisDocument() {}

    static Node of(FrozenAnalysis frozen) {
        Node question = question(frozen.analysis());
        return new ObjectBuilder()
                .with("formatVersion", Node.number(0))
                .with("kind", DocumentKind.ANALYSIS.word())
                .with("library", frozen.library())
                .with("question", question)
                .with("questionSha256", Canonical.sha256(question))
                .with(
                        "documents",
                        AnswerDocument.list(frozen.analysis().documents().values(), AnalysisDocument::pinned))
                .with("answer", pinned(frozen.answer()))
                .build();
    }

    private static Node pinned(Node document) {
        return new ObjectBuilder()
                .with("sha256", Canonical.sha256(document))
                .with("document", document)
                .build();
    }

    private static Node question(Analysis analysis) {
        Analysis.Settings settings = analysis.settings();
        ObjectBuilder node =
                new ObjectBuilder().with("kind", analysis.kind().word()).with("model", held(analysis.model()));
        withAny("rivals", analysis.rivals().stream().map(AnalysisDocument::held).toList(), node);
        withAny(
                "cautions",
                analysis.cautions().stream()
                        .map(one -> one.reference().toNode())
                        .toList(),
                node);
        node.with("pedigree", pedigree(analysis));
        withAny(
                "vocabularies",
                analysis.vocabularies().stream()
                        .map(Vocabulary::reference)
                        .map(Reference::toNode)
                        .toList(),
                node);
        node.with("population", settings.population()).withAny("traits", settings.traits());
        withAny(
                "misnamed",
                settings.misnamed().all().stream()
                        .map(AnalysisDocument::misnamed)
                        .toList(),
                node);
        return node.with("draws", Node.number(settings.draws()))
                .with("seed", Node.number(settings.seed()))
                .build();
    }

    private static Node pedigree(Analysis analysis) {
        return new ObjectBuilder()
                .with("id", analysis.pedigree().id())
                .with("version", analysis.pedigree().version())
                .with("sha256", Canonical.sha256(PedigreeDocument.of(analysis.pedigree())))
                .build();
    }

    private static Node held(HeldModel one) {
        ObjectBuilder node = new ObjectBuilder()
                .with("title", one.title())
                .with("base", one.base().reference().toNode());
        withAny(
                "patches",
                one.patches().stream().map(patch -> patch.reference().toNode()).toList(),
                node);
        if (!one.prior().equals(Probability.ONE)) {
            node.with("prior", one.prior().toString());
        }
        if (one.fitted() > 0) {
            node.with("fitted", Node.number(one.fitted()));
        }
        return node.build();
    }

    private static Node misnamed(Confusion one) {
        ObjectBuilder node = new ObjectBuilder()
                .with("trait", one.trait())
                .with("shown", one.shown())
                .with("read", one.read());
        one.stage().ifPresent(stage -> node.with("stage", AnswerDocument.stage(stage)));
        return node.with("chance", one.chance().toString()).build();
    }

    private static void withAny(String name, List<Node> items, ObjectBuilder node) {
        if (!items.isEmpty()) {
            node.with(name, Node.list(items.toArray(Node[]::new)));
        }
    }
}
