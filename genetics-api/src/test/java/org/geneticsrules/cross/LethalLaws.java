package org.geneticsrules.cross;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.View;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.Copies;
import org.geneticsrules.testing.DocumentMaps;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomAnimals;
import org.geneticsrules.testing.RandomModels;
import org.geneticsrules.testing.brute.Animal;
import org.geneticsrules.testing.brute.Founders;
import org.geneticsrules.testing.brute.Genome;
import org.geneticsrules.testing.brute.Life;
import org.geneticsrules.testing.brute.Litters;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What is lost before birth takes with it what is linked to it, and nothing else. Every locus can be read off a kit here. */
@Once
class LethalLaws {

    /** One mating in a model whose loci are all read by a trait of their own. */
    private record Bred(Model model, Genome genome, Genotype sire, Genotype dam) {

        static Bred draw(long seed) {
            SplittableRandom random = new SplittableRandom(seed);
            Model model = Copies.readable(RandomModels.whole(random.nextLong()));
            return new Bred(
                    model,
                    new Genome(DocumentMaps.of(model)),
                    RandomAnimals.genotype(model, Sex.MALE, random.nextLong()),
                    RandomAnimals.genotype(model, Sex.FEMALE, random.nextLong()));
        }

        Map<Animal, Probability> animals(Sex sex) {
            Genotype genotype = sex == Sex.MALE ? sire : dam;
            return Founders.of(
                    genome,
                    sex.word(),
                    List.of(RandomModels.plain(genotype)),
                    RandomAnimals.plain(genotype.phase()),
                    "",
                    "scored",
                    List.of());
        }

        boolean hasKits() {
            return !animals(Sex.MALE).isEmpty()
                    && !animals(Sex.FEMALE).isEmpty()
                    && !litters().given(List.of()).isEmpty();
        }

        Litters litters() {
            return Litters.of(genome, animals(Sex.MALE), animals(Sex.FEMALE), "born");
        }

        Distribution<String> shown(String locus, Census census) {
            String trait = Copies.shows(locus);
            return Cross.of(model, sire, dam)
                    .phenotypes(new View(List.of(trait), LifeStage.unstated(), census))
                    .map(look -> look.state(trait).orElseThrow());
        }

        /** What the kits born show at a locus, by the reference and without any trait. */
        Distribution<String> expected(String locus) {
            Map<String, Probability> expected = new LinkedHashMap<>();
            litters()
                    .next(Map.of(), List.of())
                    .forEach((kit, chance) -> expected.merge(
                            Life.expression(genome, locus, kit.genotype().get(locus), kit.sex()),
                            chance,
                            Probability::plus));
            return Distribution.of(expected);
        }

        /** Whether who lives tells nothing about a locus: neither through its chromosome nor through the sex of the kit. */
        boolean isIndependent(Locus locus) {
            List<String> neighbours =
                    model.groupOf(locus.id()).map(LinkageGroup::loci).orElse(List.of(locus.id()));
            return model.viability().values().stream().noneMatch(one -> neighbours.contains(one.locus()))
                    && (!differsBySex(locus)
                            || model.viability().values().stream()
                                    .noneMatch(one -> one.sex().isPresent() || differsBySex(model.locus(one.locus()))));
        }

        private static boolean differsBySex(Locus locus) {
            return locus.dependsOnSex() || locus.transmission().heterogametic().isPresent();
        }

        /** Whether the locus is no cause of losses itself but lies on a chromosome with one that is. */
        boolean isLinkedToLosses(Locus locus) {
            List<String> neighbours =
                    model.groupOf(locus.id()).map(LinkageGroup::loci).orElse(List.of());
            return model.viability().values().stream()
                            .noneMatch(one -> one.locus().equals(locus.id()))
                    && model.viability().values().stream().anyMatch(one -> neighbours.contains(one.locus()));
        }

        @Override
        public String toString() {
            return model + ": " + sire + " x " + dam;
        }
    }

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    @Property(tries = 80)
    void loci_independent_of_a_lethal_keep_their_ratios(@ForAll("seeds") long seed) {
        independentLociKeepTheirRatios(Bred.draw(seed));
    }

    @Property(tries = 80)
    void every_locus_has_the_ratios_of_the_kits_that_are_left(@ForAll("seeds") long seed) {
        ratiosAreThoseOfTheKitsLeft(Bred.draw(seed));
    }

    @Test
    @Tag("long")
    void ratios_at_loci_linked_to_losses_do_move() {
        int moved = 0;
        int kept = 0;
        for (long seed = 0; seed < 1500 && (moved < 10 || kept < 10); seed++) {
            Bred bred = Bred.draw(seed);
            if (bred.model().viability().isEmpty() || !bred.hasKits()) {
                continue;
            }
            for (Locus locus : bred.model().loci().values()) {
                boolean same = bred.shown(locus.id(), Census.BORN).equals(bred.shown(locus.id(), Census.CONCEIVED));
                moved += bred.isLinkedToLosses(locus) && !same ? 1 : 0;
                boolean segregates =
                        bred.shown(locus.id(), Census.CONCEIVED).outcomes().size() > 1;
                kept += bred.isIndependent(locus) && same && segregates ? 1 : 0;
            }
        }
        int linked = moved;
        int independent = kept;
        assertTrue(linked >= 10, () -> "only " + linked + " linked markers moved");
        assertTrue(independent >= 10, () -> "only " + independent + " independent loci with losses elsewhere");
    }

    static void independentLociKeepTheirRatios(Bred bred) {
        if (bred.hasKits()) {
            for (Locus locus : bred.model().loci().values()) {
                if (bred.isIndependent(locus)) {
                    assertEquals(
                            bred.shown(locus.id(), Census.CONCEIVED),
                            bred.shown(locus.id(), Census.BORN),
                            () -> bred + " at " + locus);
                }
            }
        }
    }

    static void ratiosAreThoseOfTheKitsLeft(Bred bred) {
        if (bred.hasKits()) {
            for (Locus locus : bred.model().loci().values()) {
                assertEquals(
                        bred.expected(locus.id()), bred.shown(locus.id(), Census.BORN), () -> bred + " at " + locus);
            }
        }
    }
}
