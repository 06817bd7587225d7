package org.geneticsrules.inference;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Trait;
import org.junit.jupiter.api.Test;

/** Kits that were seen alike in different lights are not recorded alike. */
class LightInLittersTest {

    private static final Catalogue TRAITS = Catalogue.builder("traits", "1")
            .lights("daylight", "lamplight")
            .trait(Trait.of("eye", "dark", "pink").judgeableIn(List.of("daylight")))
            .build();

    private static final Model MODEL = Model.builder("model", "1", TRAITS)
            .locus(
                    "C",
                    c -> c.alleles("C", "c")
                            .dominant("C", "c")
                            .shows("C", "pigment")
                            .shows("c", "albino"))
            .trait(
                    "eye",
                    eye -> eye.when(Condition.where("C", "albino"), "pink").otherwise("dark"))
            .population(
                    "yard",
                    p -> p.frequency("C", "C", Probability.of(9, 10)).frequency("C", "c", Probability.of(1, 10)))
            .build();

    private static Individual pink(String light) {
        return Individual.of("kit")
                .with(Observation.of(LifeStage.unstated(), Phenotype.of("eye", "pink"))
                        .in(light));
    }

    /** A kit of two founders is an albino with 1/10 squared; of an eye seen by lamplight nothing is known. */
    @Test
    void in_whichever_order_they_are_asked_about() {
        for (List<String> order : List.of(List.of("daylight", "lamplight"), List.of("lamplight", "daylight"))) {
            LitterLikelihood litters = Inference.of(
                            CompiledModel.of(MODEL), Pedigree.builder("p", "1").build())
                    .from("yard")
                    .litters();
            for (String light : order) {
                double found = Math.exp(litters.log(
                        litters.sire(Individual.of("hob", Sex.MALE)),
                        litters.dam(Individual.of("jill", Sex.FEMALE)),
                        List.of(litters.kit(pink(light).with(Sex.FEMALE)))));
                assertEquals(light.equals("daylight") ? 0.01 : 1, found * 2, 1e-12 * 2, light);
            }
        }
    }
}
