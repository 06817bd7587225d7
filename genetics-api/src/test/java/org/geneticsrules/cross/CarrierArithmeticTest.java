package org.geneticsrules.cross;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Collections;
import java.util.List;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.model.Population;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sighting;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Carriers of a recessive and what clear young tell about them, calculated exactly from Mendelian segregation and Bayes' rule (calculated;
 * the textbook form of the argument is Murphy and Chase 1975, Principles of Genetic Counseling, cited from memory).
 */
class CarrierArithmeticTest {

    private static final Phenotype CLEAR = Phenotype.of("coat", "coloured");
    private static final Phenotype AFFECTED = Phenotype.of("coat", "white");

    private static final Model MODEL = Model.builder(
                    "carrier",
                    "1.0.0",
                    Catalogue.builder("carrier.traits", "1.0.0")
                            .trait("coat", "coloured", "white")
                            .build())
            .locus(
                    "A",
                    locus -> locus.alleles("A", "a")
                            .dominant("A", "a")
                            .shows("A", "full")
                            .shows("a", "none"))
            .trait(
                    "coat",
                    rule -> rule.when(Condition.where("A", "none"), "white").otherwise("coloured"))
            // Allele frequencies of a sib of an affected animal, both of whose parents carry: 1 : 2 among the
            // unaffected.
            .population(
                    "sibs of affected",
                    population -> population
                            .frequency("A", "A", Probability.of(1, 2))
                            .frequency("A", "a", Probability.of(1, 2)))
            .population(
                    "one in 2500",
                    population -> population
                            .frequency("A", "A", Probability.of(49, 50))
                            .frequency("A", "a", Probability.of(1, 50)))
            .build();

    /** From prior 2/3: after n clear young the chance of carrying, seen in the chance of the next being affected. */
    @ParameterizedTest
    @CsvSource({
        "a/a, 0, 2/3",
        "a/a, 1, 1/2",
        "a/a, 2, 1/3",
        "a/a, 3, 1/5",
        "a/a, 4, 1/9",
        "a/a, 5, 1/17",
        "a/a, 6, 1/33",
        "A/a, 1, 3/5",
        "A/a, 2, 9/17",
        "A/a, 3, 27/59",
        "A/a, 4, 81/209",
        "A/a, 5, 243/755"
    })
    void clear_young_lower_the_chance_of_carrying(String mate, int clear, String carrier) {
        UncertainCross cross = cross("A/-", "sibs of affected", mate);
        Probability affectedIfCarrier = mate.equals("a/a") ? Probability.of(1, 2) : Probability.of(1, 4);
        assertEquals(
                Probability.parse(carrier),
                cross.chance(AFFECTED, Collections.nCopies(clear, Sighting.of(CLEAR)))
                        .orElseThrow()
                        .probability(affectedIfCarrier));
    }

    @ParameterizedTest
    @CsvSource({"0, 1/9, 4/9", "1, '', 3/8", "2, '', 9/29", "3, '', 27/107", "4, '', 81/401"})
    void both_parents_sibs_of_affected(int clear, String next, String bothCarry) {
        UncertainCross cross = UncertainCross.of(
                CompiledModel.of(MODEL), parent("A/-", "sibs of affected"), parent("A/-", "sibs of affected"));
        List<Sighting> seen = Collections.nCopies(clear, Sighting.of(CLEAR));
        assertEquals(
                Probability.parse(bothCarry),
                cross.chance(AFFECTED, seen).orElseThrow().probability(Probability.of(1, 4)));
        if (!next.isEmpty()) {
            assertEquals(Probability.parse(next), cross.next(AFFECTED, seen).orElseThrow());
        }
    }

    /** Carriers among the unaffected where one animal in 2500 is affected: 2/51. */
    @ParameterizedTest
    @CsvSource("2/51")
    void carriers_of_a_rare_recessive(String carriers) {
        UncertainCross cross = cross("A/-", "one in 2500", "a/a");
        assertEquals(
                Probability.parse(carriers),
                cross.chance(AFFECTED, List.of()).orElseThrow().probability(Probability.of(1, 2)));
    }

    private static UncertainCross cross(String sire, String population, String dam) {
        return UncertainCross.of(CompiledModel.of(MODEL), parent(sire, population), Parent.among(set(dam)));
    }

    private static Parent parent(String genotype, String population) {
        Population named = MODEL.populations().get(population);
        return Parent.among(set(genotype)).from(named);
    }

    private static GenotypeSet set(String genotype) {
        return GenotypeSet.parse(MODEL, genotype, OmittedLoci.UNKNOWN);
    }
}
