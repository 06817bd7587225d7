package org.geneticsrules.simulation;

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
import org.geneticsrules.linkage.Recombination;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.testing.DocumentMaps;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomAnimals;
import org.geneticsrules.testing.RandomModels;
import org.geneticsrules.testing.brute.Animal;
import org.geneticsrules.testing.brute.Founders;
import org.geneticsrules.testing.brute.Mating;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** What founders carry and what parents hand down, strand by strand, held to lists of all strands and gametes. */
@Once
class HeredityLaws {

    private static final int DRAWS = 2_000;

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    @Property(tries = 150)
    void kits_are_conceived_as_listed(@ForAll("seeds") long seed) {
        conceived(Pair.draw(seed));
    }

    @Property(tries = 400)
    void as_many_live_as_listed(@ForAll("seeds") long seed) {
        living(Pair.draw(seed));
    }

    @Property(tries = 150)
    void founders_are_drawn_as_listed(@ForAll("seeds") long seed) {
        founders(seed);
    }

    /** Two animals of which every strand is known, in both forms. */
    @SuppressWarnings("ArrayRecordComponent") // handed over, never compared
    private record Pair(
            Model model, org.geneticsrules.testing.brute.Genome listed, Genome genome, short[] sire, short[] dam) {

        static Pair draw(long seed) {
            SplittableRandom random = new SplittableRandom(seed);
            Model model = RandomModels.whole(random.nextLong());
            Genome genome = new Genome(model);
            return new Pair(
                    model,
                    new org.geneticsrules.testing.brute.Genome(DocumentMaps.of(model)),
                    genome,
                    any(genome, Sex.MALE, random),
                    any(genome, Sex.FEMALE, random));
        }

        /** Any strands that an animal of a sex can have, whether or not it lives. */
        private static short[] any(Genome genome, Sex sex, SplittableRandom random) {
            int count = genome.loci().size();
            short[] strands = new short[2 * count];
            for (int l = 0; l < count; l++) {
                Locus locus = genome.loci().get(l);
                boolean fromDam = locus.transmission().passes(Sex.FEMALE, sex);
                boolean fromSire = locus.transmission().passes(Sex.MALE, sex);
                int alleles = locus.alleles().size();
                strands[l] = fromDam ? (short) random.nextInt(alleles) : Genome.NONE;
                strands[count + l] = fromSire ? (short) random.nextInt(alleles) : Genome.NONE;
            }
            return strands;
        }

        Animal listed(Sex sex, short[] strands) {
            return animal(genome, sex, strands);
        }

        Mating mating() {
            return new Mating(listed, listed(Sex.MALE, sire), listed(Sex.FEMALE, dam));
        }

        @Override
        public String toString() {
            return model + ": " + genome.genotype(sire) + " x " + genome.genotype(dam);
        }
    }

    private static Animal animal(Genome genome, Sex sex, short[] strands) {
        Map<String, String> egg = new LinkedHashMap<>();
        Map<String, String> sperm = new LinkedHashMap<>();
        int count = genome.loci().size();
        for (int l = 0; l < count; l++) {
            Locus locus = genome.loci().get(l);
            List<String> ids = List.copyOf(locus.alleles().keySet());
            if (strands[l] != Genome.NONE) {
                egg.put(locus.id(), ids.get(strands[l]));
            }
            if (strands[count + l] != Genome.NONE) {
                sperm.put(locus.id(), ids.get(strands[count + l]));
            }
        }
        return new Animal(sex.word(), egg, sperm);
    }

    static void conceived(Pair pair) {
        Meiosis meiosis = new Meiosis(pair.genome(), true);
        Chance chance = new Chance(Randomness.seeded(1).start());
        Shares<Animal> drawn = new Shares<>();
        for (int i = 0; i < DRAWS; i++) {
            Sex sex = chance.coin() ? Sex.FEMALE : Sex.MALE;
            drawn.add(pair.listed(sex, meiosis.conceive(pair.sire(), pair.dam(), sex, chance)));
        }
        drawn.agreeWith(pair.mating().conceived(), pair::toString);
    }

    static void living(Pair pair) {
        Meiosis meiosis = new Meiosis(pair.genome(), true);
        Map<String, Probability> born = new LinkedHashMap<>();
        Map<String, Probability> scored = new LinkedHashMap<>();
        pair.mating().conceived().forEach((kit, chance) -> {
            Probability twice = chance.plus(chance);
            born.merge(kit.sex(), twice.times(Mating.viability(pair.listed(), kit, "born")), Probability::plus);
            scored.merge(kit.sex(), twice.times(Mating.viability(pair.listed(), kit, "scored")), Probability::plus);
        });
        for (Sex sex : Sex.values()) {
            near(born.get(sex.word()), meiosis.livingShare(pair.sire(), pair.dam(), sex, false), pair);
            near(scored.get(sex.word()), meiosis.livingShare(pair.sire(), pair.dam(), sex, true), pair);
        }
    }

    private static void near(Probability exact, double found, Pair pair) {
        assertEquals(exact.isZero(), found == 0, pair::toString);
        assertEquals(exact.toDouble(), found, 1e-12, pair::toString);
    }

    static boolean founders(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Model model = RandomModels.whole(random.nextLong());
        org.geneticsrules.testing.brute.Genome listed =
                new org.geneticsrules.testing.brute.Genome(DocumentMaps.of(model));
        Sex sex = random.nextBoolean() ? Sex.FEMALE : Sex.MALE;
        RandomAnimals.Parents known = RandomAnimals.parents(model, listed, sex, 12, random.nextLong());
        Map<Genotype, Probability> exact = new LinkedHashMap<>();
        Founders.of(listed, sex.word(), known.members(), Map.of(), "even", "scored", List.of())
                .forEach((animal, chance) ->
                        exact.merge(RandomAnimals.genotype(model, listed, animal), chance, Probability::plus));
        Problems problems = new Problems(Stage.MEANING);
        Genome genome = new Genome(model);
        FounderDraw draw = FounderDraw.of(genome, Founder.among(known.set(), "even"), List.of(sex), "/sire", problems);
        assertEquals(
                exact.isEmpty() ? List.of("no-founder") : List.of(),
                problems.list().stream().map(one -> one.code()).toList());
        if (exact.isEmpty()) {
            return false;
        }
        Chance chance = new Chance(Randomness.seeded(1).start());
        Shares<Genotype> drawn = new Shares<>();
        for (int i = 0; i < DRAWS; i++) {
            drawn.add(genome.genotype(draw.draw(sex, chance)));
        }
        drawn.agreeWith(exact, () -> model + " " + known.set());
        return true;
    }

    @Test
    void the_laws_meet_hard_cases() {
        int linked = 0;
        int patterned = 0;
        int sexChromosomes = 0;
        int mutating = 0;
        int losing = 0;
        int hopeless = 0;
        for (long seed = 0; seed < 400; seed++) {
            Pair pair = Pair.draw(seed);
            linked += pair.model().groups().values().stream()
                            .anyMatch(group ->
                                    group.loci().size() > 1 && group.recombination() instanceof Recombination.Fractions)
                    ? 1
                    : 0;
            patterned += pair.model().groups().values().stream()
                            .anyMatch(group -> group.recombination() instanceof Recombination.Crossovers)
                    ? 1
                    : 0;
            sexChromosomes += pair.model().loci().values().stream()
                            .anyMatch(locus ->
                                    locus.transmission().heterogametic().isPresent())
                    ? 1
                    : 0;
            mutating += pair.model().loci().values().stream()
                            .anyMatch(locus -> !locus.mutation().isEmpty())
                    ? 1
                    : 0;
            Probability share = pair.mating().share("scored");
            losing += share.isOne() ? 0 : 1;
            hopeless += share.isZero() ? 1 : 0;
        }
        // of 400; laws draw 150 and more, so that none of these is missed by chance
        String found = linked + " " + patterned + " " + sexChromosomes + " " + mutating + " " + losing + " " + hopeless;
        assertTrue(
                linked > 60 && patterned > 15 && sexChromosomes > 60 && mutating > 40 && losing > 60 && hopeless > 3,
                found);
    }
}
