package org.geneticsrules.testing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.RandomDistribution;
import org.geneticsrules.model.Model;
import org.geneticsrules.testing.RandomModels.Size;
import org.geneticsrules.testing.brute.Genome;
import org.geneticsrules.testing.brute.Kindred;
import org.geneticsrules.testing.brute.Worlds;

/**
 * Random pedigrees in random models of the whole language, small enough for all their worlds to be listed.
 *
 * <p>A pedigree has 3 to 8 members: sibs, half sibs and relatives mated to one another, parents who are not recorded, several males of
 * whom one is the sire of a litter or of a kit, animals of unknown sex. Most pedigrees are played through once, and what is recorded is
 * what the animals showed; in the others some records are those of other animals, so that they may contradict the rest.
 *
 * <p>The facts are in plain texts only. A test of an engine needs one class that says the same in the engine's words.
 */
public final class RandomPedigrees {

    /** From the most to the fewest genotypes, more or less. */
    private static final List<Size> SIZES = List.of(
            new Size(3, 2, 2),
            new Size(2, 3, 2),
            new Size(2, 2, 2),
            new Size(1, 4, 2),
            new Size(1, 3, 2),
            new Size(1, 2, 2));

    /** How many choices are tried at most: some 50 ms. */
    private static final long MOST = 25_000;

    /** How many combinations of founders there are at most, if nothing at all were recorded. */
    private static final double MOST_FOUNDERS = 20_000;

    private RandomPedigrees() {}

    /**
     * A pedigree.
     *
     * @param seed the seed that it was drawn from
     * @param model the rules
     * @param genome the same, for the reference
     * @param kindred the facts
     * @param worlds what the reference makes of them; none if they contradict one another
     * @param possible what the reference makes of them without frequencies, mutation and confusions
     */
    public record RandomPedigree(
            long seed, Model model, Genome genome, Kindred kindred, Worlds worlds, Worlds possible) {

        @Override
        public String toString() {
            return "pedigree " + seed + " in " + model + ": " + kindred;
        }
    }

    /**
     * Returns pedigrees.
     *
     * @return an arbitrary that draws uniformly random seeds
     */
    public static Arbitrary<RandomPedigree> pedigrees() {
        return Arbitraries.longs()
                .between(0, Long.MAX_VALUE)
                .withDistribution(RandomDistribution.uniform())
                .map(RandomPedigrees::pedigree)
                .withoutEdgeCases();
    }

    /**
     * Returns the pedigree of a seed.
     *
     * @param seed any number
     * @return the same for the same seed
     */
    public static RandomPedigree pedigree(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int tries = 8 * Math.min(random.nextInt(SIZES.size() - 1), random.nextInt(SIZES.size() - 1));
        boolean mutable = random.nextInt(4) == 0;
        while (true) {
            Size size = SIZES.get(Math.min(tries++ / 8, SIZES.size() - 1));
            Model model = RandomModels.whole(random.nextLong(), size);
            if (mutable
                    && model.loci().values().stream()
                            .allMatch(locus -> locus.mutation().isEmpty())) {
                continue;
            }
            Genome genome = new Genome(DocumentMaps.of(model));
            Kindred family = RandomFamily.draw(
                    random, new ArrayList<>(model.populations().keySet()));
            double genotypes = Genome.SEXES.stream()
                    .mapToInt(sex -> genome.genotypes(sex).size())
                    .max()
                    .orElseThrow();
            if (Math.pow(genotypes, founders(family)) > MOST_FOUNDERS) {
                continue;
            }
            Optional<Kindred> recorded = RandomRecords.draw(random, model, genome, family);
            Optional<Worlds> worlds = recorded.flatMap(kindred -> Worlds.within(genome, kindred, MOST));
            Optional<Worlds> possible = worlds.flatMap(any -> Worlds.possibleWithin(genome, recorded.get(), MOST));
            if (possible.isPresent()) {
                return new RandomPedigree(seed, model, genome, recorded.get(), worlds.get(), possible.get());
            }
        }
    }

    /** How many animals there are, recorded or not, whose parents are not. */
    private static int founders(Kindred family) {
        int founders = 0;
        for (Kindred.Member member : family.members()) {
            founders += family.litterOf(member.id()).isEmpty() ? 1 : 0;
        }
        for (Kindred.Litter litter : family.litters()) {
            founders += litter.dam().isEmpty() ? 1 : 0;
            for (Kindred.Candidate sire : litter.sires()) {
                founders += sire.id().isEmpty() ? 1 : 0;
            }
        }
        return founders;
    }
}
