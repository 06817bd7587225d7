package org.geneticsrules.examples.guide;

import org.geneticsrules.document.Node;
import org.geneticsrules.json.FrozenAnalysis;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelDocument;
import org.geneticsrules.patch.Patch;
import org.geneticsrules.patch.PatchDocument;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeDocument;
import org.geneticsrules.trait.Catalogue;

/**
 * What a sample is about, so that a page can show it as a document too. Immutable and thread-safe.
 *
 * @param document the model, the patch, the pedigree or the analysis in plain form
 * @param catalogue the traits it speaks of
 */
public record Shown(Node document, Catalogue catalogue) {

    /**
     * Returns a model to be shown.
     *
     * @param model a model
     * @return its document and its catalogue
     */
    static Shown of(Model model) {
        return new Shown(ModelDocument.of(model), model.catalogue());
    }

    /**
     * Returns recorded animals to be shown.
     *
     * @param pedigree a pedigree
     * @param catalogue the traits that its records speak of
     * @return its document and the catalogue
     */
    static Shown of(Pedigree pedigree, Catalogue catalogue) {
        return new Shown(PedigreeDocument.of(pedigree), catalogue);
    }

    /**
     * Returns a patch to be shown.
     *
     * @param patch a patch
     * @param base the model it changes
     * @return its document and the catalogue of the model
     */
    static Shown of(Patch patch, Model base) {
        return new Shown(PatchDocument.of(patch), base.catalogue());
    }

    /**
     * Returns a frozen analysis to be shown.
     *
     * @param frozen a question with its answer
     * @return its document and the catalogue of the model in use
     */
    static Shown of(FrozenAnalysis frozen) {
        return new Shown(frozen.toNode(), frozen.analysis().model().base().catalogue());
    }
}
