package org.geneticsrules.json;

import java.util.List;
import java.util.function.Function;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.hypothesis.Change;
import org.geneticsrules.hypothesis.Fate;
import org.geneticsrules.hypothesis.Moment;
import org.geneticsrules.hypothesis.Moved;
import org.geneticsrules.hypothesis.MovedGenotype;
import org.geneticsrules.hypothesis.MovedMating;
import org.geneticsrules.hypothesis.WhatMoves;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.trait.Sex;

/**
 * The document form of what moves between two models. Chances are written as in {@link AnswerDocument}; genotypes by ids of loci and
 * alleles, with the alleles of each strand where the phase is known.
 *
 * <p>Stateless and thread-safe.
 */
public final class WhatMovesDocument {

    private WhatMovesDocument() {}

    /**
     * Returns the document that states what moves.
     *
     * @param moves what moves
     * @return a document of kind {@code what-moves}, format version 0
     */
    public static Node of(WhatMoves moves) {
        ObjectBuilder reference = new ObjectBuilder();
        moves.reference().forEach(reference::with);
        ObjectBuilder document = new ObjectBuilder()
                .with("formatVersion", Node.number(0))
                .with("kind", "what-moves")
                .with("verdict", moves.verdict())
                .with("status", "exact")
                .with("before", Shared.reference(moves.before()))
                .with("after", Shared.reference(moves.after()))
                .with("changes", AnswerDocument.list(moves.changes(), WhatMovesDocument::change))
                .with("traits", Node.texts(moves.traits()))
                .with("onlyBefore", Node.texts(moves.onlyBefore()))
                .with("onlyAfter", Node.texts(moves.onlyAfter()))
                .with("reference", reference.build())
                .with("limits", Node.texts(moves.limits()));
        moves.stage().ifPresent(stage -> document.with("stage", stage.toString()));
        return document.with("moments", AnswerDocument.list(moves.moments(), WhatMovesDocument::moment))
                .with("genotypes", moved(moves.genotypes(), WhatMovesDocument::genotype))
                .with("matings", moved(moves.matings(), WhatMovesDocument::mating))
                .build();
    }

    /**
     * Returns the JSON Schema (draft 2020-12) of these documents.
     *
     * @return the text of the schema, which names itself {@code urn:geneticsrules:schema:what-moves:0}
     */
    public static String schema() {
        return Shared.schema("what-moves");
    }

    private static Node change(Change change) {
        return new ObjectBuilder()
                .with("pointer", change.pointer())
                .with("kind", change.kind().word())
                .with("patch", change.patch())
                .with("before", Node.texts(change.before()))
                .with("after", Node.texts(change.after()))
                .build();
    }

    private static Node moment(Moment moment) {
        return new ObjectBuilder()
                .with("stage", moment.stage().toString())
                .with("counted", moment.census().word())
                .build();
    }

    private static <T> Node moved(Moved<T> moved, Function<T, Node> form) {
        ObjectBuilder node = new ObjectBuilder();
        moved.first().ifPresent(moment -> node.with("first", moment(moment)));
        return node.with("smallest", AnswerDocument.list(moved.smallest(), form))
                .with("more", Node.flag(moved.more()))
                .build();
    }

    private static Node genotype(MovedGenotype one) {
        return new ObjectBuilder()
                .with("sex", one.sex().map(Sex::word))
                .with("genotype", genotype(one.genotype()))
                .with("counterpart", genotype(one.counterpart()))
                .with("traits", Node.texts(one.traits()))
                .with("before", fate(one.before()))
                .with("after", fate(one.after()))
                .with("drivers", drivers(one.drivers()))
                .build();
    }

    private static Node mating(MovedMating one) {
        return new ObjectBuilder()
                .with("sire", genotype(one.sire()))
                .with("dam", genotype(one.dam()))
                .with("sireCounterpart", genotype(one.sireCounterpart()))
                .with("damCounterpart", genotype(one.damCounterpart()))
                .with("traits", Node.texts(one.traits()))
                .with("before", fate(one.before()))
                .with("after", fate(one.after()))
                .with("drivers", drivers(one.drivers()))
                .build();
    }

    private static Node drivers(List<Change> drivers) {
        return Node.texts(drivers.stream().map(Change::pointer).toList());
    }

    private static Node fate(Fate fate) {
        ObjectBuilder node = new ObjectBuilder().with("lost", Chances.of(fate.lost()));
        fate.looks().ifPresent(looks -> node.with("looks", Chances.of(looks, "phenotype", AnswerDocument::phenotype)));
        return node.build();
    }

    private static Node genotype(Genotype genotype) {
        ObjectBuilder pairs = new ObjectBuilder();
        genotype.pairs().forEach((locus, pair) -> pairs.with(locus, alleles(pair)));
        ObjectBuilder strands = new ObjectBuilder();
        genotype.phase()
                .strands()
                .forEach((locus, both) -> strands.with(
                        locus, Node.texts(List.of(both.one().id(), both.other().id()))));
        return new ObjectBuilder()
                .with("text", genotype.toString())
                .with("pairs", pairs.build())
                .withAny("strands", strands)
                .build();
    }

    private static Node alleles(AllelePair pair) {
        return Node.texts(pair.alleles().stream().map(Allele::id).toList());
    }
}
