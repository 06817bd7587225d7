package org.geneticsrules.hypothesis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.geneticsrules.expression.Census;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.DocumentMaps;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomAnimals;
import org.geneticsrules.testing.RandomModels;
import org.geneticsrules.testing.RandomPatches;
import org.geneticsrules.testing.brute.Animal;
import org.geneticsrules.testing.brute.Genome;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/**
 * What moves is what moves when every animal and every mating is gone through under both models, at the first moment at which any does,
 * and the smallest come first.
 */
@Once
class WhatMovesLaws {

    private static final int MOST = 1000;
    private static final int LATEST = 2;
    private static final int MOST_MATINGS = 400;

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs().between(0, Long.MAX_VALUE / 2);
    }

    @Property(tries = 25)
    void what_moves_is_what_moves_one_by_one(@ForAll("seeds") long seed) {
        check(seed, true);
    }

    /** The law would say little if most patches moved the same kind of thing, or nothing. */
    @Test
    void random_patches_move_all_kinds_of_things() {
        Map<String, Integer> counts = new TreeMap<>();
        for (long seed = 0; seed < 120; seed++) {
            check(seed, false).ifPresent(moves -> {
                counts.merge(
                        moves.isNothing() ? "nothing" : moves.genotypes().isEmpty() ? "matings" : "genotypes",
                        1,
                        Integer::sum);
                if (moves.moments().size() > 1 && !moves.isNothing()) {
                    counts.merge("later", 1, Integer::sum);
                }
                if (moves.genotypes().smallest().stream()
                        .anyMatch(one -> one.traits().isEmpty())) {
                    counts.merge("lost alone", 1, Integer::sum);
                }
            });
        }
        assertTrue(counts.getOrDefault("nothing", 0) >= 10, counts::toString);
        assertTrue(counts.getOrDefault("genotypes", 0) >= 30, counts::toString);
        assertTrue(counts.getOrDefault("matings", 0) >= 3, counts::toString);
        assertTrue(counts.getOrDefault("later", 0) >= 3, counts::toString);
        assertTrue(counts.getOrDefault("lost alone", 0) >= 3, counts::toString);
    }

    /** A patch of a random model, compared in some of its traits, and one by one if wanted; empty if there is none small enough. */
    static Optional<WhatMoves> check(long seed, boolean oneByOne) {
        SplittableRandom random = new SplittableRandom(seed);
        Model base = RandomModels.whole(random.nextLong());
        Genome before = new Genome(DocumentMaps.of(base));
        Optional<RandomPatches.Drawn> drawn = RandomPatches.draw(base, random.nextLong());
        if (drawn.isEmpty()) {
            return Optional.empty();
        }
        Model patched = drawn.get().patched();
        List<String> traits = new ArrayList<>(base.visibleTraits());
        traits.retainAll(patched.visibleTraits());
        while (traits.size() > 1 && random.nextInt(3) == 0) {
            traits.remove(random.nextInt(traits.size()));
        }
        Map<String, String> added = drawn.get().patch().baseline();
        BruteMoves sizes =
                new BruteMoves(before, new Genome(DocumentMaps.of(patched)), added, traits, Map.of(), "born");
        if (sizes.animals("male").size() * sizes.animals("female").size() > MOST_MATINGS) {
            return Optional.empty();
        }
        WhatMoves moves = Comparison.of(base, patched, List.of(drawn.get().patch()))
                .inTraits(traits)
                .showing(MOST)
                .whatMoves();
        if (!oneByOne) {
            return Optional.of(moves);
        }
        String words = base + " with " + drawn.get().kinds() + " of seed " + seed;
        agrees(moves, before, new Genome(DocumentMaps.of(patched)), added, traits, words);
        if (moves.isNothing()) {
            laterToo(base, before, new Genome(DocumentMaps.of(patched)), added, traits, random, words);
        }
        return Optional.of(moves);
    }

    private static void agrees(
            WhatMoves moves,
            Genome before,
            Genome after,
            Map<String, String> added,
            List<String> traits,
            String words) {
        boolean genotypes = false;
        boolean matings = false;
        for (Moment moment : moves.moments()) {
            if (moment.stage().moult().orElse(0) > LATEST
                    || moment.stage().weeks().orElse(0) > LATEST) {
                return; // every path up to there would be lived through
            }
            BruteMoves brute = new BruteMoves(
                    before,
                    after,
                    added,
                    traits,
                    RandomAnimals.plain(moment.stage()),
                    moment.census().word());
            One one = new One(moves, brute, before, after, words + " " + moment);
            if (!genotypes) {
                genotypes = one.genotypes(
                        moves.genotypes().first().filter(moment::equals).isPresent());
            }
            if (!matings) {
                matings = one.matings(
                        moves.matings().first().filter(moment::equals).isPresent());
            }
        }
        assertEquals(!moves.genotypes().isEmpty(), genotypes, words);
        assertEquals(!moves.matings().isEmpty(), matings, words);
        assertTrue(moves.isNothing() || !moves.changes().isEmpty(), words);
    }

    /** What is said of every moment holds of moments that were not examined. */
    private static void laterToo(
            Model base,
            Genome before,
            Genome after,
            Map<String, String> added,
            List<String> traits,
            SplittableRandom random,
            String words) {
        LifeStage stage = RandomAnimals.stage(base, random.nextLong());
        String step = random.nextBoolean() ? Census.BORN.word() : Census.SCORED.word();
        BruteMoves brute = new BruteMoves(before, after, added, traits, RandomAnimals.plain(stage), step);
        for (String sex : Genome.SEXES) {
            brute.animals(sex).forEach(animal -> assertFalse(brute.moves(animal), words));
        }
    }

    /** One moment, at which all that moves is compared. */
    private record One(WhatMoves moves, BruteMoves brute, Genome before, Genome after, String words) {

        /** An animal over the loci that matter: its genotype, with the phase in either model. */
        private List<Object> name(BruteMoves.Both animal, boolean phased) {
            Set<String> loci = moves.reference().keySet();
            Animal one = BruteMoves.restricted(animal.before(), loci);
            Animal other = BruteMoves.restricted(animal.after(), loci);
            return phased
                    ? List.of(genotype(before, one), before.phase(one), after.phase(other))
                    : List.of(genotype(before, one));
        }

        private Map<String, String> genotype(Genome genome, Animal animal) {
            Map<String, String> genotype = genome.genotype(animal);
            genotype.keySet().retainAll(moves.reference().keySet());
            return genotype;
        }

        private static List<Object> name(Genotype one, Genotype other, boolean phased) {
            return phased
                    ? List.of(
                            RandomModels.plain(one),
                            RandomAnimals.plain(one.phase()),
                            RandomAnimals.plain(other.phase()))
                    : List.of(RandomModels.plain(one));
        }

        boolean genotypes(boolean here) {
            Map<Object, Fates> expected = new LinkedHashMap<>();
            for (String sex : Genome.SEXES) {
                for (BruteMoves.Both animal : brute.animals(sex)) {
                    if (brute.moves(animal)) {
                        expected.put(
                                List.of(sex, name(animal, false)),
                                new Fates(brute.fateBefore(animal), brute.fateAfter(animal)));
                    }
                }
            }
            assertEquals(here, !expected.isEmpty(), words);
            if (here && !moves.genotypes().more()) {
                Map<Object, Fates> found = new LinkedHashMap<>();
                Key last = null;
                for (MovedGenotype one : moves.genotypes().smallest()) {
                    for (Sex sex : one.sex().map(List::of).orElse(List.of(Sex.values()))) {
                        found.put(List.of(sex.word(), name(one.genotype(), one.counterpart(), false)), Fates.of(one));
                    }
                    Key key = Key.of(moves, before, one.sex().orElse(Sex.FEMALE), one.genotype(), one.counterpart());
                    assertTrue(last == null || last.compareTo(key) <= 0, words + ": " + last + " before " + key);
                    last = key;
                    assertFalse(one.drivers().isEmpty(), words);
                }
                assertEquals(expected, found, words);
            }
            return here;
        }

        boolean matings(boolean here) {
            Map<Object, Fates> expected = new LinkedHashMap<>();
            boolean told = moves.matings().smallest().stream()
                    .flatMap(one -> one.before().looks().stream())
                    .flatMap(looks -> looks.outcomes().stream())
                    .anyMatch(look -> look.traits().contains(Sex.VARIABLE));
            for (BruteMoves.Both sire : brute.animals("male")) {
                for (BruteMoves.Both dam : brute.animals("female")) {
                    if (brute.lives(sire) && brute.lives(dam)) {
                        BruteMoves.Shares one = brute.kitsBefore(sire, dam);
                        BruteMoves.Shares other = brute.kitsAfter(sire, dam);
                        if (!one.equals(other)) {
                            expected.put(
                                    List.of(name(sire, true), name(dam, true)),
                                    told ? new Fates(one, other) : new Fates(unsexed(one), unsexed(other)));
                        }
                    }
                }
            }
            assertEquals(here, !expected.isEmpty(), words);
            if (here && !moves.matings().more()) {
                Map<Object, Fates> found = new LinkedHashMap<>();
                Key last = null;
                for (MovedMating one : moves.matings().smallest()) {
                    found.put(
                            List.of(
                                    name(one.sire(), one.sireCounterpart(), true),
                                    name(one.dam(), one.damCounterpart(), true)),
                            Fates.of(one));
                    Key key = Key.of(moves, before, Sex.MALE, one.sire(), one.sireCounterpart())
                            .and(Key.of(moves, before, Sex.FEMALE, one.dam(), one.damCounterpart()));
                    assertTrue(last == null || last.compareTo(key) <= 0, words + ": " + last + " before " + key);
                    last = key;
                    assertFalse(one.drivers().isEmpty(), words);
                }
                assertEquals(moves.matings().smallest().size(), found.size(), words);
                assertEquals(expected, found, words);
            } else if (here) {
                moves.matings().smallest().forEach(one -> {
                    Object name = List.of(
                            name(one.sire(), one.sireCounterpart(), true), name(one.dam(), one.damCounterpart(), true));
                    assertEquals(expected.get(name), Fates.of(one), words);
                });
            }
            return here;
        }

        private static BruteMoves.Shares unsexed(BruteMoves.Shares shares) {
            Map<Map<String, String>, Probability> looks = new LinkedHashMap<>();
            shares.looks().forEach((look, share) -> {
                Map<String, String> seen = new LinkedHashMap<>(look);
                seen.remove("sex");
                looks.merge(seen, share, Probability::plus);
            });
            return new BruteMoves.Shares(shares.lost(), looks);
        }
    }

    /** What both models foretell, in one form. */
    private record Fates(BruteMoves.Shares before, BruteMoves.Shares after) {
        static Fates of(MovedGenotype one) {
            return new Fates(shares(one.before()), shares(one.after()));
        }

        static Fates of(MovedMating one) {
            return new Fates(shares(one.before()), shares(one.after()));
        }

        private static BruteMoves.Shares shares(Fate fate) {
            Map<Map<String, String>, Probability> looks = new LinkedHashMap<>();
            fate.looks()
                    .ifPresent(all -> all.asMap()
                            .forEach((look, chance) -> looks.put(
                                    look.asMap(), chance.times(fate.lost().complement()))));
            return new BruteMoves.Shares(fate.lost(), looks);
        }
    }

    /** The size of an example, counted over. */
    private record Key(int differing, int heterozygous, List<Integer> ranks) implements Comparable<Key> {
        static Key of(WhatMoves moves, Genome genome, Sex sex, Genotype genotype, Genotype counterpart) {
            int differing = 0;
            int heterozygous = 0;
            List<Integer> ranks = new ArrayList<>();
            Map<String, String> plain = RandomModels.plain(genotype);
            for (Map.Entry<String, String> locus : plain.entrySet()) {
                List<String> alleles = new ArrayList<>(List.of(locus.getValue().split("/", -1)));
                alleles.remove("");
                Set<String> distinct = new LinkedHashSet<>(alleles);
                heterozygous += distinct.size() > 1 ? 1 : 0;
                distinct.remove(moves.reference().get(locus.getKey()));
                differing += distinct.isEmpty() ? 0 : 1;
                ranks.add(genome.pairs(locus.getKey(), sex.word()).indexOf(locus.getValue()));
            }
            boolean phased = !genotype.phase().strands().isEmpty()
                    || !counterpart.phase().strands().isEmpty();
            return new Key(differing, heterozygous, phased ? List.of() : ranks);
        }

        Key and(Key other) {
            List<Integer> both = new ArrayList<>(ranks);
            both.addAll(other.ranks);
            return new Key(
                    differing + other.differing,
                    heterozygous + other.heterozygous,
                    ranks.isEmpty() || other.ranks.isEmpty() ? List.of() : both);
        }

        /** Ranks count where the strands are not told; where they are, they come between. */
        @Override
        public int compareTo(Key other) {
            int byCounts = differing != other.differing
                    ? Integer.compare(differing, other.differing)
                    : Integer.compare(heterozygous, other.heterozygous);
            if (byCounts != 0 || ranks.isEmpty() || other.ranks.isEmpty()) {
                return byCounts;
            }
            for (int i = 0; i < ranks.size(); i++) {
                if (!ranks.get(i).equals(other.ranks.get(i))) {
                    return Integer.compare(ranks.get(i), other.ranks.get(i));
                }
            }
            return 0;
        }
    }
}
