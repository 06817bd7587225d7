package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.MapFunction;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;

/** Two linked loci, in coupling, in repulsion, and of unknown phase. */
final class Linkage {

    private Linkage() {}

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
        Catalogue traits = Catalogue.builder("sample.linked.traits", "1.0.0")
                .trait("hue", "black", "brown").trait("bib", "white", "none").build();
        Model model = Model.builder("sample.linked", "1.0.0", traits)
                .locus("B", b -> b.alleles("B", "b").dominant("B", "b").shows("B", "dark").shows("b", "brown"))
                .locus("W", w -> w.alleles("W", "w").dominant("W", "w").shows("W", "marked").shows("w", "plain"))
                .group(LinkageGroup.autosomal("pair", List.of("B", "W"), List.of(Probability.of(1, 10))))
                .trait("hue", hue -> hue.when(Condition.where("B", "dark"), "black").otherwise("brown"))
                .trait("bib", bib -> bib.when(Condition.where("W", "marked"), "white").otherwise("none"))
                .build();
        Genotype tester = Genotype.parse(model, "b/b w/w");
        Phenotype both = Phenotype.parse("hue: black, bib: white");
        for (String sire : List.of("[B W]/[b w]", "[B w]/[b W]", "B/b W/w")) {
            Cross cross = Cross.of(model, Genotype.parse(model, sire), tester);
            out.println(sire + ": " + cross.phenotypes().asMap().values()
                    + ", two of two black with bib " + cross.count(both, 2).probability(2));
        }
        Probability tenth = Probability.of(1, 10);
        for (MapFunction map : MapFunction.values()) {
            out.printf("%s: 1/10 is %.4f cM; two such intervals recombine in %s%n",
                    map.word(), map.centiMorgans(tenth), map.across(tenth, tenth));
        }
        // end
        // spotless:on
        return Shown.of(model);
    }
}
