package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import java.util.Locale;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.inference.Conclusions;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.inference.Sampling;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/** A chance that is exact, too large, estimated, and not told because the estimate did not become sure enough. */
final class Estimates {

    private Estimates() {}

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
        Catalogue traits = Catalogue.builder("sample.estimates.traits", "1.0.0").trait("coat", "coloured", "white").build();
        Model model = Model.builder("sample.estimates", "1.0.0", traits)
                .locus("C", c -> c.alleles("C", "c").dominant("C", "c").shows("C", "pigment").shows("c", "albino"))
                .trait("coat", coat -> coat.when(Condition.where("C", "albino"), "white").otherwise("coloured"))
                .population("few", p -> p.frequency("C", "C", Probability.of(9, 10)).frequency("C", "c", Probability.of(1, 10)))
                .build();
        Observation coloured = Observation.of(LifeStage.unstated(), Phenotype.of("coat", "coloured"));
        Observation white = Observation.of(LifeStage.unstated(), Phenotype.of("coat", "white"));
        Pedigree pedigree = Pedigree.builder("sample.line", "1")
                .add(Individual.of("Heath", Sex.FEMALE).with(coloured))
                .add(Individual.of("Ridge", Sex.MALE).with(coloured))
                .add(Individual.of("Fern", Sex.FEMALE).with(coloured))
                .add(Individual.of("Thorn", Sex.MALE).with(coloured))
                .add(Individual.of("Snow").with(white))
                .add(Individual.of("Moss").with(coloured))
                .add(Litter.of("spring", "Heath", "Ridge", "Fern", "Thorn"))
                .add(Litter.of("autumn", "Fern", "Thorn", "Snow", "Moss"))
                .build();
        Inference exact = Inference.of(CompiledModel.of(model), pedigree).from("few");
        Inference small = exact.within(0); // as if the relations formed too many loops
        Sampling first = Sampling.seeded(1).withBlocks(1); // and as if hardly two animals could be drawn at once
        Sampling second = Sampling.seeded(2).withBlocks(1);
        for (Inference asked : List.of(exact, small, small.sampling(first), small.sampling(second),
                small.sampling(first.withWork(1_000)))) {
            Conclusions found = asked.conclude();
            out.println(found.standing("Heath", "C") + found.at("Heath", "C").map(heath -> String.format(Locale.ROOT,
                    ": Heath carries c with %.4f, standard error %.4f", heath.carries("c"),
                    heath.standardError((AllelePair pair) -> pair.toString().contains("c")))).orElse(""));
        }
        // end
        // spotless:on
        return Shown.of(model);
    }
}
