package org.geneticsrules.spi;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.geneticsrules.caution.CautionDocument;
import org.geneticsrules.caution.CautionSet;
import org.geneticsrules.document.Canonical;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.Reference;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelDocument;
import org.geneticsrules.patch.Patch;
import org.geneticsrules.patch.PatchDocument;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.CatalogueDocument;
import org.geneticsrules.vocabulary.Vocabulary;

/**
 * A plug-in whose documents are all sound.
 *
 * @param contents its documents
 * @param models its models, in the order of its documents
 * @param patches its patches, in the order of its documents
 * @param vocabularies its vocabularies, in the order of its documents
 * @param parts all its documents by what they call themselves, sorted
 * @param plugin its descriptor, with checksum
 */
record Served(
        Contents contents,
        List<Model> models,
        List<Patch> patches,
        List<Vocabulary> vocabularies,
        List<Part> parts,
        ProviderDescriptor plugin) {

    /**
     * A document of a plug-in.
     *
     * @param name kind, id and version
     * @param sha256 hash of its canonical form
     * @param document its plain form
     */
    record Part(String name, String sha256, Node document) {

        static Part of(Catalogue catalogue) {
            return of("catalogue", catalogue.reference(), CatalogueDocument.of(catalogue));
        }

        static Part of(CautionSet cautions) {
            return of("cautions", cautions.reference(), CautionDocument.of(cautions));
        }

        static Part of(Model model) {
            return of("model", model.reference(), ModelDocument.of(model));
        }

        static Part of(Patch patch) {
            return of("patch", patch.reference(), PatchDocument.of(patch));
        }

        static Part of(Vocabulary vocabulary) {
            return of("vocabulary", vocabulary.reference(), vocabulary.toDocument());
        }

        private static Part of(String kind, Reference reference, Node document) {
            return new Part(
                    kind + " " + reference.id() + " " + reference.version(),
                    reference.sha256().orElseThrow(),
                    document);
        }
    }

    static Served of(Contents contents, List<Model> models, List<Patch> patches, List<Vocabulary> vocabularies) {
        List<Part> parts = new ArrayList<>(contents.ownParts());
        models.forEach(model -> parts.add(Part.of(model)));
        patches.forEach(patch -> parts.add(Part.of(patch)));
        vocabularies.forEach(vocabulary -> parts.add(Part.of(vocabulary)));
        parts.sort(Comparator.comparing(Part::name).thenComparing(Part::sha256));
        Node whole = Node.list(parts.stream().map(Part::document).toArray(Node[]::new));
        return new Served(
                contents,
                ImmutableList.copyOf(models),
                ImmutableList.copyOf(patches),
                ImmutableList.copyOf(vocabularies),
                ImmutableList.copyOf(parts),
                contents.plugin().with(Canonical.sha256(whole)));
    }
}
