package org.geneticsrules.inference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** Bayesian carrier arithmetic: exact values, calculated by hand from the stated inputs. */
class CarrierArithmeticTest {

    private static final Model MODEL = Model.builder(
                    "carriers",
                    "1",
                    Catalogue.builder("carriers.traits", "1")
                            .trait("eye", "dark", "pink")
                            .build())
            .locus(
                    "C",
                    locus -> locus.alleles("C", "c")
                            .dominant("C", "c")
                            .shows("C", "pigment")
                            .shows("c", "albino"))
            .trait(
                    "eye",
                    rule -> rule.when(Condition.where("C", "albino"), "pink").otherwise("dark"))
            .population(
                    "rare",
                    population -> population
                            .frequency("C", "C", Probability.of(49, 50))
                            .frequency("C", "c", Probability.of(1, 50)))
            .build();

    private static final CompiledModel COMPILED = CompiledModel.of(MODEL);
    private static final Observation DARK = Observation.of(LifeStage.unstated(), Phenotype.of("eye", "dark"));
    private static final Observation PINK = Observation.of(LifeStage.unstated(), Phenotype.of("eye", "pink"));

    private static double carrier(Pedigree pedigree, String id) {
        Conclusions found = Inference.of(COMPILED, pedigree).from("rare").conclude(Set.of("C"));
        return found.at(id, "C").orElseThrow().chance(MODEL.locus("C").pair("C", "c"));
    }

    private static PedigreeBuilder sibs() {
        return Pedigree.builder("sibs", "1")
                .add(Individual.of("dam", Sex.FEMALE).with(DARK))
                .add(Individual.of("sire", Sex.MALE).with(DARK))
                .add(Individual.of("affected", Sex.MALE).with(PINK))
                .add(Individual.of("sister", Sex.FEMALE).with(DARK))
                .add(Litter.of("first", "dam", "sire", "affected", "sister"));
    }

    @Test
    void a_sister_of_an_affected_animal() {
        assertEquals(2 / 3.0, carrier(sibs().build(), "sister"), 1e-15);
        double[] expected = {2 / 3.0, 1 / 2.0, 1 / 3.0, 1 / 5.0, 1 / 9.0, 1 / 17.0, 1 / 33.0};
        for (int n = 1; n < expected.length; n++) {
            PedigreeBuilder more = sibs().add(Individual.of("mate", Sex.MALE).with(PINK));
            String[] kits = new String[n];
            for (int k = 0; k < n; k++) {
                kits[k] = "kit " + k;
                more.add(Individual.of(kits[k]).with(DARK));
            }
            assertEquals(
                    expected[n],
                    carrier(
                            more.add(Litter.of("second", "sister", "mate", kits))
                                    .build(),
                            "sister"),
                    1e-15);
        }
    }

    /** A recessive at 1/2500: of those that are not affected 2/51 are carriers. */
    @Test
    void carriers_among_the_unaffected() {
        assertEquals(
                2 / 51.0,
                carrier(
                        Pedigree.builder("one", "1")
                                .add(Individual.of("any").with(DARK))
                                .build(),
                        "any"),
                1e-15);
    }

    /** Though no locus is asked for, records are held to the loci that they read. */
    @Test
    void records_contradict_one_another_whatever_is_asked() {
        Pedigree pedigree = Pedigree.builder("dark kit", "1")
                .add(Individual.of("dam", Sex.FEMALE).with(PINK))
                .add(Individual.of("sire", Sex.MALE).with(PINK))
                .add(Individual.of("kit").with(DARK))
                .add(Litter.of("first", "dam", "sire", "kit"))
                .build();
        Conclusions found = Inference.of(COMPILED, pedigree).from("rare").conclude(Set.of());
        assertFalse(found.isConsistent());
        assertEquals(Set.of("dam", "sire", "kit"), found.contradicted());
        Pedigree empty = Pedigree.builder("one", "1").add(Individual.of("any")).build();
        assertTrue(Inference.of(COMPILED, empty).from("rare").conclude(Set.of()).isConsistent());
    }
}
