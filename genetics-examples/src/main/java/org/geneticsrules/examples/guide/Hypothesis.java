package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.hypothesis.Comparison;
import org.geneticsrules.hypothesis.WhatMoves;
import org.geneticsrules.json.Documents;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.patch.Patch;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;

/** A patch that swaps one dominance and nothing else. */
final class Hypothesis {

    private Hypothesis() {}

    /**
     * Runs the sample.
     *
     * @param out where to print
     * @return what it is about
     */
    static Shown run(PrintStream out) {
        // Laid out by hand, one statement of the model per line.
        // spotless:off
        // sample
        Catalogue traits = Catalogue.builder("sample.silver.traits", "1.0.0").trait("silver", "none", "half", "full").build();
        Model base = Model.builder("sample.silver", "1.0.0", traits)
                .locus("M", m -> m.alleles("M", "m").expressions("plain", "one dose", "two doses")
                        .shows("M", "plain").shows("M/m", "one dose").shows("m", "two doses"))
                .trait("silver", silver -> silver
                        .when(Condition.where("M", "plain"), "none")
                        .when(Condition.where("M", "one dose"), "half")
                        .when(Condition.where("M", "two doses"), "full"))
                .build();
        Node dominance = new ObjectBuilder()
                .with("order", Node.list(Node.text("M > m")))
                .with("shows", new ObjectBuilder().with("M", "plain").with("m", "two doses").build())
                .build();
        Patch recessive = new Patch("sample.silver-recessive", "1.0.0", Optional.of("Silver is recessive"), base.reference(),
                Map.of(), Map.of("/loci/M/dominance", dominance), List.of(), Map.of());
        Model patched = Documents.reader().apply(base, List.of(recessive));
        for (Model model : List.of(base, patched)) {
            Genotype carrier = Genotype.parse(model, "M/m");
            out.println(model.id() + ": " + Cross.of(model, carrier, carrier).phenotypes());
        }
        WhatMoves moves = Comparison.of(base, patched, List.of(recessive)).whatMoves();
        moves.changes().forEach(change -> out.println(change));
        moves.genotypes().smallest().forEach(moved -> out.println(moved.genotype() + ": "
                + moved.before().looks().orElseThrow() + " becomes " + moved.after().looks().orElseThrow()));
        moves.matings().smallest().forEach(moved -> out.println(moved.sire() + " x " + moved.dam() + ": "
                + moved.before().looks().orElseThrow() + " becomes " + moved.after().looks().orElseThrow()));
        // end
        // spotless:on
        return Shown.of(recessive, base);
    }
}
