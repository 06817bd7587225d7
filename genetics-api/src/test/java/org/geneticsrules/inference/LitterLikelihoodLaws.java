package org.geneticsrules.inference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.statistics.Statistics;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomPedigrees;
import org.geneticsrules.testing.RandomPedigrees.RandomPedigree;
import org.geneticsrules.testing.RecordedKindred;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/** The chance of a litter by itself is that of a pedigree of two founders and their kits. */
@Once
class LitterLikelihoodLaws {

    @Provide
    Arbitrary<RandomPedigree> pedigrees() {
        return RandomPedigrees.pedigrees();
    }

    @Property(tries = 120)
    void a_litter_is_a_small_pedigree(@ForAll("pedigrees") RandomPedigree random) {
        Model model = random.model();
        Pedigree pedigree = RecordedKindred.pedigree(model, RecordedKindred.scored(random.kindred()));
        Inference inference = Inference.of(CompiledModel.of(model), pedigree)
                .with(RecordedKindred.confusions(random.kindred()))
                .from(model.populations().keySet().iterator().next());
        LitterLikelihood litters = inference.litters();
        for (Litter litter : pedigree.litters().values()) {
            if (litter.dam().isEmpty() || !(litter.sires() instanceof Paternity.Known known)) {
                continue;
            }
            Individual sire = pedigree.individual(known.sire()).with(Sex.MALE);
            Individual dam = pedigree.individual(litter.dam().get()).with(Sex.FEMALE);
            List<Individual> kits = new ArrayList<>();
            litter.kits().forEach(kit -> kits.add(pedigree.individual(kit)));
            PedigreeBuilder alone = Pedigree.builder("alone", "1").add(sire).add(dam);
            kits.forEach(alone::add);
            double expected =
                    inference.about(alone.add(litter).build()).conclude().logLikelihood();
            Statistics.collect(expected == Double.NEGATIVE_INFINITY ? "contradiction" : "fits");
            Collections.shuffle(kits, new Random(kits.size()));
            for (int twice = 0; twice < 2; twice++) {
                double found = litters.log(
                        litters.sire(sire),
                        litters.dam(dam),
                        kits.stream().map(litters::kit).toList());
                assertEquals(expected, found, expected == found ? 0 : 1e-11 * Math.max(1, Math.abs(expected)));
            }
        }
        Statistics.coverage(coverage -> coverage.check("fits").percentage(share -> share > 20));
    }

    /** Of two carriers each kit is dark with 3/4, whatever the others are (Mendel 1866): nine dark kits and one light one, both dark. */
    @Example
    void kits_of_two_carriers() {
        LitterLikelihood litters = litters();
        LitterLikelihood.Seen dark = litters.kit(seen("dark"));
        List<LitterLikelihood.Seen> kits = new ArrayList<>(Collections.nCopies(9, dark));
        kits.add(litters.kit(seen("light")));
        // parents of a light kit that are dark are carriers: a half each
        double expected = 2 * Math.log(0.5) + 9 * Math.log(0.75) + Math.log(0.25);
        assertEquals(expected, litters.log(litters.sire(seen("dark")), litters.dam(seen("dark")), kits), 1e-13);
        List<LitterLikelihood.Seen> many = new ArrayList<>(Collections.nCopies(5000, dark));
        many.add(litters.kit(seen("light")));
        assertEquals(
                2 * Math.log(0.5) + 5000 * Math.log(0.75) + Math.log(0.25),
                litters.log(litters.sire(seen("dark")), litters.dam(seen("dark")), many),
                1e-9);
        assertThrows(
                IllegalArgumentException.class,
                () -> litters.log(litters.dam(seen("dark")), litters.sire(seen("dark")), List.of()));
    }

    @Example
    void records_are_those_of_one_object() {
        LitterLikelihood one = litters();
        LitterLikelihood other = litters();
        assertThrows(
                IllegalArgumentException.class,
                () -> one.log(one.sire(seen("dark")), other.dam(seen("dark")), List.of()));
    }

    private static LitterLikelihood litters() {
        return Inference.of(
                        CompiledModel.of(hues()), Pedigree.builder("none", "1").build())
                .from("even")
                .litters();
    }

    /** Of what is not asked about nothing is told: one locus alone does not tell whether others tell the sex. */
    @Example
    void sexes_are_not_told_where_they_were_not_asked_about() {
        Catalogue traits = Catalogue.builder("two", "1")
                .trait("hue", "dark", "light")
                .trait("hair", "long", "short")
                .build();
        ModelBuilder model = Model.builder("two.model", "1", traits);
        for (String trait : List.of("hue", "hair")) {
            model.locus(
                            trait + "Locus",
                            at -> at.alleles("A", "a")
                                    .dominant("A", "a")
                                    .shows("A", "yes")
                                    .shows("a", "no"))
                    .trait(
                            trait,
                            rule -> rule.when(
                                            Condition.where(trait + "Locus", "no"),
                                            traits.trait(trait)
                                                    .orElseThrow()
                                                    .states()
                                                    .get(1))
                                    .otherwise(traits.trait(trait)
                                            .orElseThrow()
                                            .states()
                                            .get(0)));
        }
        model.population(
                "even",
                one -> List.of("hueLocus", "hairLocus")
                        .forEach(locus -> one.frequency(locus, "A", Probability.of(1, 2))
                                .frequency(locus, "a", Probability.of(1, 2))));
        Inference asked = Inference.of(
                        CompiledModel.of(model.build()),
                        Pedigree.builder("one", "1").add(Individual.of("kit")).build())
                .from("even");
        assertEquals(Optional.of(0.5), asked.conclude().female("kit"));
        assertEquals(Optional.empty(), asked.concludeOnly(List.of("hairLocus")).female("kit"));
    }

    private static Model hues() {
        Catalogue traits =
                Catalogue.builder("litter", "1").trait("hue", "dark", "light").build();
        return Model.builder("litter.model", "1", traits)
                .locus(
                        "B",
                        at -> at.alleles("B", "b")
                                .dominant("B", "b")
                                .shows("B", "dark")
                                .shows("b", "light"))
                .trait(
                        "hue",
                        rule -> rule.when(Condition.where("B", "light"), "light")
                                .otherwise("dark"))
                .population("of which nothing is known", one -> {})
                .population(
                        "even",
                        one -> one.frequency("B", "B", Probability.of(1, 2)).frequency("B", "b", Probability.of(1, 2)))
                .build();
    }

    private static Individual seen(String hue) {
        return Individual.of("animal").with(Observation.of(LifeStage.unstated(), Phenotype.of("hue", hue)));
    }
}
