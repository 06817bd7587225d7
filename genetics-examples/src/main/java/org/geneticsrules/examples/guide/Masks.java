package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Expressed;
import org.geneticsrules.expression.TraitTrace;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;

/** Three loci, two of which cover what the third would show, and one of those the other. */
final class Masks {

    private Masks() {}

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
        Catalogue traits = Catalogue.builder("sample.masks.traits", "1.0.0")
                .trait("hue", "black", "brown", "white", "none").trait("eye", "dark", "pink").build();
        Model model = Model.builder("sample.masks", "1.0.0", traits)
                .locus("C", c -> c.alleles("C", "c").dominant("C", "c").shows("C", "pigment").shows("c", "albino"))
                .locus("W", w -> w.alleles("W", "w").dominant("W", "w").shows("W", "white").shows("w", "self"))
                .locus("B", b -> b.alleles("B", "b").dominant("B", "b").shows("B", "dark").shows("b", "brown"))
                .trait("hue", hue -> hue.when(Condition.where("B", "dark"), "black").otherwise("brown"))
                .trait("eye", eye -> eye.otherwise("dark"))
                .mask(Mask.of("whitener", Condition.where("W", "white")).covering("hue", "white"))
                .mask(Mask.of("albino", Condition.where("C", "albino"))
                        .covering("hue", "none").covering("eye", "pink").over("whitener"))
                .build();
        for (String parents : List.of("C/c w/w B/b", "C/C W/w B/b", "C/c W/w B/b")) {
            Genotype parent = Genotype.parse(model, parents);
            Distribution<Phenotype> kits = Cross.of(model, parent, parent).phenotypes(List.of("hue"));
            out.println(parent + " x the same: " + kits.outcomes() + " as " + kits.ratio());
        }
        CompiledModel compiled = CompiledModel.of(model);
        Expressed kit = compiled.express(Genotype.parse(model, "c/c W/w b/b"), List.of("hue", "eye"));
        out.println("c/c W/w b/b: active masks " + kit.activeMasks());
        for (TraitTrace trait : kit.traits().values()) {
            out.println("    own " + trait.trait() + " " + trait.own().orElseThrow()
                    + ", shown " + trait.shown().orElseThrow() + ", covered by " + trait.masks());
        }
        // end
        // spotless:on
        return Shown.of(model);
    }
}
