package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.TraitTrace;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Trait;

/** The six reasons why a look, a record or a genotype does not tell something. */
final class NotSeen {

    private NotSeen() {}

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
        Catalogue traits = Catalogue.builder("sample.unseen.traits", "1.0.0")
                .trait("hue", "black", "brown", "covered")
                .trait("bib", "white", "none")
                .trait("ear", "long", "short")
                .trait(Trait.of("white hairs", "few", "many").judgeableFrom(LifeStage.atMoult(1)))
                .build();
        Model model = Model.builder("sample.unseen", "1.0.0", traits)
                .locus("C", c -> c.alleles("C", "c").dominant("C", "c").shows("C", "pigment").shows("c", "albino"))
                .locus("B", b -> b.alleles("B", "b").dominant("B", "b").shows("B", "dark").shows("b", "brown"))
                .locus("S", s -> s.alleles("S", "s").dominant("S", "s").shows("S", "bib").shows("s", "no bib"))
                .trait("hue", hue -> hue.when(Condition.where("B", "dark"), "black").otherwise("brown"))
                .trait("bib", bib -> bib.when(Condition.where("S", "bib"), "white").otherwise("none"))
                .mask(Mask.of("albino", Condition.where("C", "albino")).covering("hue", "covered").covering("bib", "white"))
                .notModelled("ear", "Nobody has bred ears yet.")
                .notModelled("white hairs", "Not the subject of this model.")
                .build();
        CompiledModel compiled = CompiledModel.of(model);
        List<String> asked = List.of("hue", "bib", "ear");
        for (String animal : List.of("C/C B/B s/s", "c/c B/B s/s")) {
            for (TraitTrace trait : compiled.express(Genotype.parse(model, animal), asked).traits().values()) {
                out.println(animal + ": " + trait.trait() + " " + trait.shown().orElse("(no claim)")
                        + (trait.isMasked() ? ", hides " + trait.own().orElseThrow() + " under " + trait.masks() : ""));
            }
        }
        out.println("not modelled: " + model.notModelled());
        LifeStage first = LifeStage.atMoult(0);
        out.println("white hairs judgeable at " + first + ": " + traits.judgeable("white hairs", first));

        // Hue is not recorded here, so the record says nothing about B; a white bib does not rule out s/s.
        GenotypeSet carried = compiled.showing(Phenotype.of("bib", "white"));
        out.println(carried.pairs("B") + " " + carried.pairs("S"));
        out.println(GenotypeSet.parse(model, "C/- B:?", OmittedLoci.UNKNOWN).size() + " genotypes are C/- B:?");
        // end
        // spotless:on
        return Shown.of(model);
    }
}
