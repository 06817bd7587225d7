package org.geneticsrules.trait;

import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;

/** The document form of a catalogue. Stateless and thread-safe. */
public final class CatalogueDocument {

    private CatalogueDocument() {}

    /**
     * Returns the document that states a catalogue.
     *
     * @param catalogue a catalogue
     * @return a document of kind {@code catalogue}, format version 0
     */
    public static Node of(Catalogue catalogue) {
        ObjectBuilder traits = new ObjectBuilder();
        for (Trait trait : catalogue.traits().values()) {
            ObjectBuilder stated =
                    new ObjectBuilder().with("title", trait.title()).withAny("states", trait.states());
            if (trait.ordered()) {
                stated.with("ordered", Node.flag(true));
            }
            trait.judgeableFrom().ifPresent(stage -> stated.with("judgeableFrom", stage(stage)));
            stated.withAny("judgeableIn", trait.judgeableIn());
            traits.with(trait.id(), stated.with("note", trait.note()).build());
        }
        ObjectBuilder document = new ObjectBuilder()
                .with("formatVersion", Node.number(0))
                .with("kind", "catalogue")
                .with("id", catalogue.id())
                .with("version", catalogue.version())
                .with("title", catalogue.title());
        catalogue.taxon().ifPresent(taxon -> document.with("taxon", taxon.toNode()));
        return document.withAny("seasons", catalogue.seasons())
                .withAny("lights", catalogue.lights())
                .with("traits", traits.build())
                .build();
    }

    /** The age or the moult of a stage. */
    private static Node stage(LifeStage stage) {
        ObjectBuilder node = new ObjectBuilder();
        stage.weeks().ifPresent(weeks -> node.with("weeks", Node.number(weeks)));
        stage.moult().ifPresent(moult -> node.with("moult", Node.number(moult)));
        return node.build();
    }
}
