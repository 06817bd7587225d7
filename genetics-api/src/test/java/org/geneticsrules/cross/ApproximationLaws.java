package org.geneticsrules.cross;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.statistics.Statistics;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Level;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Approximation;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomAnimals;
import org.geneticsrules.testing.RandomModels;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/** Floating point and exact fractions agree to twelve digits in models of the whole language, and on what is possible at all. */
@Once
class ApproximationLaws {

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    @Property(tries = 500)
    void kits_of_known_parents(@ForAll("seeds") long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Model model = RandomModels.whole(random.nextLong());
        CompiledModel compiled = CompiledModel.of(model);
        Cross cross = Cross.of(
                compiled,
                RandomAnimals.genotype(model, Sex.MALE, random.nextLong()),
                RandomAnimals.genotype(model, Sex.FEMALE, random.nextLong()));
        View view = view(model, random);
        Distribution<Phenotype> exact;
        try {
            exact = cross.phenotypes(view);
        } catch (IllegalArgumentException noKitIsEverCounted) {
            assertThrows(IllegalArgumentException.class, () -> cross.approximate(view));
            return;
        }
        agree(exact, cross.approximate(view));
        boolean linked = compiled.diagram(view).loci().stream()
                        .filter(locus -> model.groupOf(locus).isPresent())
                        .count()
                > 1;
        Statistics.label("linked")
                .collect(linked)
                .coverage(cases -> cases.check(true).percentage(share -> share > 10));
        Statistics.label("chance")
                .collect(compiled.diagram(view).levels().stream().anyMatch(level -> level instanceof Level.OfDraw))
                .coverage(cases -> cases.check(true).percentage(share -> share > 10));
        Statistics.label("losses")
                .collect(compiled.diagram(view).loses())
                .coverage(cases -> cases.check(true).percentage(share -> share > 5));
    }

    @Property(tries = 250)
    void kits_of_uncertain_parents(@ForAll("seeds") long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Model model = RandomModels.whole(random.nextLong());
        UncertainCross cross = UncertainCross.of(
                CompiledModel.of(model), parent(model, Sex.MALE, random), parent(model, Sex.FEMALE, random));
        View view = view(model, random);
        Optional<Distribution<Phenotype>> exact = cross.probable(view);
        Optional<Approximation<Phenotype>> close = cross.approximate(view);
        assertEquals(exact.isPresent(), close.isPresent());
        exact.ifPresent(chances -> agree(chances, close.orElseThrow()));
    }

    private static Parent parent(Model model, Sex sex, SplittableRandom random) {
        Genotype genotype = RandomAnimals.genotype(model, sex, random.nextLong());
        List<String> known = new ArrayList<>(genotype.loci());
        known.removeIf(locus -> random.nextBoolean());
        return Parent.among(GenotypeSet.of(model, genotype.restrictedTo(known)))
                .from(model.populations().get("even"));
    }

    private static View view(Model model, SplittableRandom random) {
        List<String> traits = new ArrayList<>(model.visibleTraits());
        while (traits.size() > 1 && random.nextBoolean()) {
            traits.remove(random.nextInt(traits.size()));
        }
        if (random.nextBoolean()) {
            traits.add(Sex.VARIABLE);
        }
        return new View(
                traits,
                RandomAnimals.stage(model, random.nextLong()),
                List.of(Census.values()).get(random.nextInt(3)));
    }

    private static void agree(Distribution<Phenotype> exact, Approximation<Phenotype> close) {
        assertEquals(List.copyOf(exact.outcomes()), close.outcomes());
        assertTrue(close.relativeError() < 1e-12, () -> "error " + close.relativeError());
        exact.asMap().forEach((outcome, chance) -> {
            assertEquals(chance.toDouble(), close.chance(outcome), 1e-12 * chance.toDouble(), outcome::toString);
            assertEquals(Math.log(chance.toDouble()), close.log(outcome), 1e-12 * (1 - close.log(outcome)));
        });
        assertEquals(0, close.missing());
    }
}
