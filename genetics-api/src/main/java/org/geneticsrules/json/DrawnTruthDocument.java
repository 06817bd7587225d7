package org.geneticsrules.json;

import java.util.ArrayList;
import java.util.List;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.model.Model;
import org.geneticsrules.simulation.DrawnAnimal;
import org.geneticsrules.simulation.DrawnLitter;
import org.geneticsrules.simulation.DrawnPedigree;
import org.geneticsrules.simulation.PlannedLook;
import org.geneticsrules.trait.LifeStage;

/**
 * The document form of what drawn animals truly are: the answer sheet to the records that a breeder would have, which are a pedigree.
 *
 * <p>Stateless and thread-safe.
 */
public final class DrawnTruthDocument {

    private DrawnTruthDocument() {}

    /**
     * Returns the document that states the truth.
     *
     * @param drawn the animals
     * @param model the model they were drawn from
     * @param looks the looks that were planned, in the same order
     * @return a document of kind {@code drawn-truth}, format version 0
     */
    public static Node of(DrawnPedigree drawn, Model model, List<PlannedLook> looks) {
        ObjectBuilder animals = new ObjectBuilder();
        drawn.animals().forEach((id, animal) -> animals.with(id, animal(animal, looks, false)));
        ObjectBuilder litters = new ObjectBuilder();
        drawn.litters().forEach((id, litter) -> litters.with(id, litter(litter, looks)));
        return new ObjectBuilder()
                .with("formatVersion", Node.number(0))
                .with("kind", "drawn-truth")
                .with("model", Shared.reference(model.reference()))
                .with("generator", drawn.randomness().generator())
                .with("seed", Node.number(drawn.randomness().seed()))
                .with("tried", Node.number(drawn.tried()))
                .with("animals", animals.build())
                .with("litters", litters.build())
                .build();
    }

    /**
     * Returns the JSON Schema (draft 2020-12) of these documents.
     *
     * @return the text of the schema, which names itself {@code urn:geneticsrules:schema:drawn-truth:0}
     */
    public static String schema() {
        return Shared.schema("drawn-truth");
    }

    private static Node litter(DrawnLitter litter, List<PlannedLook> looks) {
        ObjectBuilder node = new ObjectBuilder()
                .with("dam", animal(litter.dam(), looks, true))
                .with("sires", AnswerDocument.list(litter.sires(), sire -> animal(sire, looks, true)))
                .with("kits", ids(litter.kits()))
                .with("conceived", Node.number(litter.conceived()))
                .with("born", Node.number(litter.born()))
                .with("probands", ids(litter.probands()));
        litter.earlier().ifPresent(kit -> node.with("earlier", animal(kit, looks, true)));
        return node.build();
    }

    private static Node ids(List<DrawnAnimal> animals) {
        return Node.texts(
                animals.stream().flatMap(animal -> animal.id().stream()).toList());
    }

    /** An animal; one that stands among the others by its id is named here by that alone. */
    private static Node animal(DrawnAnimal animal, List<PlannedLook> looks, boolean named) {
        ObjectBuilder node = new ObjectBuilder();
        if (named && animal.id().isPresent()) {
            return node.with("id", animal.id()).with("sex", animal.sex().word()).build();
        }
        List<Node> shown = new ArrayList<>();
        for (int l = 0; l < looks.size(); l++) {
            shown.add(look(animal, l, looks.get(l)));
        }
        return node.with("sex", animal.sex().word())
                .with("genotype", animal.genotype().toString())
                .with("looks", Node.list(shown.toArray(Node[]::new)))
                .build();
    }

    private static Node look(DrawnAnimal animal, int number, PlannedLook look) {
        ObjectBuilder shows = new ObjectBuilder();
        for (String trait : look.traits()) {
            animal.state(number, trait).ifPresent(state -> shows.with(trait, state));
        }
        ObjectBuilder node = new ObjectBuilder();
        if (!look.stage().equals(LifeStage.unstated())) {
            node.with("stage", AnswerDocument.stage(look.stage()));
        }
        return node.with("light", look.light()).with("shows", shows.build()).build();
    }
}
