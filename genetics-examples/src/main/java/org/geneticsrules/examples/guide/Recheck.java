package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.inference.Contradictions;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/** Records that cannot all be true, and the fewest to look at again. */
final class Recheck {

    private Recheck() {}

    /**
     * Runs the sample.
     *
     * @param out where to print
     * @return what it is about
     */
    static Shown run(PrintStream out) {
        // Laid out by hand, one statement of the model and one animal per line.
        // spotless:off
        // sample
        Catalogue traits = Catalogue.builder("sample.recheck.traits", "1.0.0").trait("coat", "coloured", "white").build();
        Model model = Model.builder("sample.recheck", "1.0.0", traits)
                .locus("C", c -> c.alleles("C", "c").dominant("C", "c").shows("C", "pigment").shows("c", "albino"))
                .trait("coat", coat -> coat.when(Condition.where("C", "albino"), "white").otherwise("coloured"))
                .build();
        Observation coloured = Observation.of(LifeStage.unstated(), Phenotype.of("coat", "coloured"));
        Observation white = Observation.of(LifeStage.unstated(), Phenotype.of("coat", "white"));
        Pedigree pedigree = Pedigree.builder("sample.registry", "1")
                .add(Individual.of("Frost", Sex.FEMALE).with(white))
                .add(Individual.of("Rime", Sex.MALE).with(white))
                .add(Individual.of("first kit").with(coloured))
                .add(Individual.of("second kit").with(coloured))
                .add(Litter.of("winter", "Frost", "Rime", "first kit", "second kit"))
                .build();
        Contradictions found = Inference.of(CompiledModel.of(model), pedigree).contradictions();
        found.all().forEach(one -> out.println(one + (one.smallest() ? " (no fewer contradict one another)" : "")));
        found.fewestToRecheck(10).forEach(fewest -> {
            out.println("One of these, looked at again, may settle all:");
            for (List<?> set : fewest.sets()) {
                out.println("  " + set);
            }
        });
        // end
        // spotless:on
        return Shown.of(model);
    }
}
