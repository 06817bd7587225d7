package org.geneticsrules.cross;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.SplittableRandom;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.statistics.Statistics;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.testing.RandomAnimals;
import org.geneticsrules.testing.RandomModels;
import org.geneticsrules.trait.Sex;

/** The boxes of a square add up to the genotypes of the kits, in models with linkage and sex chromosomes too. */
class PunnettSquareLaws {

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    @Property(tries = 200)
    void boxes_add_up_to_the_genotypes_of_kits(@ForAll("seeds") long seed) {
        Statistics.label("loci").collect(boxes(seed)).coverage(coverage -> {
            coverage.check("linked").percentage(p -> p > 5);
            coverage.check("sexed").percentage(p -> p > 5);
            coverage.check("plain").percentage(p -> p > 5);
        });
    }

    static String boxes(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Model model = RandomModels.whole(random.nextLong());
        Genotype sire = RandomAnimals.genotype(model, Sex.MALE, random.nextLong());
        Genotype dam = RandomAnimals.genotype(model, Sex.FEMALE, random.nextLong());
        List<String> loci = model.loci().values().stream()
                .filter(locus -> locus.mutation().isEmpty())
                .map(locus -> locus.id())
                .limit(4)
                .toList();
        Cross cross = Cross.of(model, sire, dam);
        assertEquals(cross.genotypes(loci), cross.square(loci).genotypes(), () -> model + ": " + cross);
        boolean sexed = loci.stream()
                .anyMatch(locus ->
                        model.locus(locus).transmission().heterogametic().isPresent());
        boolean linked = Unit.of(model, loci).stream().anyMatch(Unit::isLinked);
        return loci.isEmpty() ? "nothing" : sexed ? "sexed" : linked ? "linked" : "plain";
    }
}
