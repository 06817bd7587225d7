package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.inference.Conclusions;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.inference.JointPosterior;
import org.geneticsrules.inference.Posterior;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Kinship;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/** What relatives say of an animal, of two animals together, and of what is excluded. */
final class Relatives {

    private Relatives() {}

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
        Catalogue traits = Catalogue.builder("sample.relatives.traits", "1.0.0").trait("coat", "coloured", "white").build();
        Model model = Model.builder("sample.relatives", "1.0.0", traits)
                .locus("C", c -> c.alleles("C", "c").dominant("C", "c").shows("C", "pigment").shows("c", "albino"))
                .trait("coat", coat -> coat.when(Condition.where("C", "albino"), "white").otherwise("coloured"))
                .population("few", p -> p.frequency("C", "C", Probability.of(9, 10)).frequency("C", "c", Probability.of(1, 10)))
                .build();
        Observation coloured = Observation.of(LifeStage.unstated(), Phenotype.of("coat", "coloured"));
        Observation white = Observation.of(LifeStage.unstated(), Phenotype.of("coat", "white"));
        AllelePair carrier = model.locus("C").pair("C", "c");
        Pedigree pedigree = Pedigree.builder("sample.kindred", "1")
                .add(Individual.of("Heath", Sex.FEMALE).with(coloured))
                .add(Individual.of("Ridge", Sex.MALE).with(coloured))
                .add(Individual.of("Snow").with(white))
                .add(Individual.of("Fern", Sex.FEMALE).with(coloured))
                .add(Individual.of("Thorn").with(coloured))
                .add(Individual.of("Moss", Sex.MALE).with(coloured).with(GenotypeTest.of(carrier)))
                .add(Individual.of("first kit").with(coloured))
                .add(Individual.of("second kit").with(coloured))
                .add(Litter.of("spring", "Heath", "Ridge", "Snow", "Fern", "Thorn"))
                .add(Litter.of("summer", "Fern", "Moss", "first kit", "second kit"))
                .build();
        Inference asked = Inference.of(CompiledModel.of(model), pedigree).from("few");
        Conclusions found = asked.conclude(Set.of("C"));
        for (String animal : List.of("Heath", "Fern", "Thorn", "first kit")) {
            Posterior posterior = found.at(animal, "C").orElseThrow();
            out.printf(Locale.ROOT, "%s carries c with %.4f (%s); excluded: %s%n",
                    animal, posterior.carries("c"), found.standing(animal, "C"), found.excluded(animal, "C"));
        }
        JointPosterior both = asked.together(List.of("Fern", "first kit"), List.of("C"));
        out.printf(Locale.ROOT, "Fern and her first kit both carry c with %.4f%n", both.chance(
                pairs -> pairs.values().stream().allMatch(at -> at.containsValue(carrier))));
        out.println("Without frequencies, Fern may be C/C: "
                + asked.possible("C").of("Fern", model.locus("C").pair("C", "C")).getClass().getSimpleName());
        out.println("Kits of Fern and Thorn would be inbred by " + Kinship.of(pedigree).between("Fern", "Thorn"));
        // end
        // spotless:on
        return Shown.of(model);
    }
}
