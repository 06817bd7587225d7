package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.Collections;
import java.util.List;
import org.geneticsrules.cross.Parent;
import org.geneticsrules.cross.UncertainCross;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sighting;

/** A sister of an albino: what each kit tells about her, and so about the next. */
final class UncertainParents {

    private UncertainParents() {}

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
        Catalogue traits = Catalogue.builder("sample.sister.traits", "1.0.0").trait("coat", "coloured", "white").build();
        Model model = Model.builder("sample.sister", "1.0.0", traits)
                .locus("C", c -> c.alleles("C", "c").dominant("C", "c").shows("C", "pigment").shows("c", "albino"))
                .trait("coat", coat -> coat.when(Condition.where("C", "albino"), "white").otherwise("coloured"))
                .population("kits of two carriers", kits -> kits
                        .frequency("C", "C", Probability.of(1, 2)).frequency("C", "c", Probability.of(1, 2)))
                .build();
        CompiledModel compiled = CompiledModel.of(model);
        Parent sister = Parent.among(GenotypeSet.parse(model, "C/-", OmittedLoci.UNKNOWN))
                .from(model.populations().values().iterator().next());
        Phenotype white = Phenotype.of("coat", "white");
        Sighting clear = Sighting.of(Phenotype.of("coat", "coloured"));
        for (String mate : List.of("c/c", "C/c")) {
            Parent sire = Parent.of(model, Genotype.parse(model, mate));
            UncertainCross cross = UncertainCross.of(compiled, sire, sister);
            out.println("mate " + mate + ", possible " + cross.possible(List.of("coat")));
            for (int kits = 0; kits <= 2; kits++) {
                Distribution<Probability> chances = cross.chance(white, Collections.nCopies(kits, clear)).orElseThrow();
                out.println("coloured kits seen: " + kits + "; she carries with "
                        + chances.probability(Probability.ZERO).complement()
                        + ", the next is white with " + cross.next(white, Collections.nCopies(kits, clear)).orElseThrow());
            }
            out.println("all of three coloured: " + cross.count(white, 3, List.of()).orElseThrow().probability(0));
        }
        // end
        // spotless:on
        return Shown.of(model);
    }
}
