package org.geneticsrules.pedigree;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.statistics.Statistics;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.testing.Once;
import org.geneticsrules.trait.Sex;

/** Kinship in pedigrees of any shape. */
@Once
class KinshipLaws {

    private static final double ROUNDING = 1e-12;

    @Property(tries = 300)
    void kinship_is_the_mean_over_sires_of_the_tabular_method(@ForAll long seed) {
        Pedigree pedigree = RandomPedigree.bare(seed, 9);
        List<Twin.World> worlds = Twin.worlds(pedigree);
        BigDecimal total = worlds.stream().map(Twin.World::weight).reduce(BigDecimal.ZERO, BigDecimal::add);
        List<String> ids = pedigree.order();
        Map<String, BigDecimal> sums = new HashMap<>();
        for (Twin.World world : worlds) {
            Map<String, Map<String, BigDecimal>> table = Twin.table(world.lines());
            for (String one : ids) {
                for (String other : ids) {
                    sums.merge(one + " " + other, table.get(one).get(other).multiply(world.weight()), BigDecimal::add);
                }
            }
        }
        Kinship kinship = Kinship.of(pedigree);
        boolean inbred = false;
        for (String one : ids) {
            for (String other : ids) {
                // The table has twice the kinship.
                assertIs(
                        sums.get(one + " " + other),
                        total.multiply(BigDecimal.valueOf(2)),
                        kinship.between(one, other));
            }
            Probability f = kinship.inbreeding(one);
            inbred |= !f.isZero();
            assertIs(sums.get(one + " " + one).subtract(total), total, f);
        }
        boolean missing = pedigree.litters().values().stream()
                .anyMatch(litter -> litter.dam().isEmpty() || litter.sires() instanceof Paternity.Unknown);
        Statistics.label("loop").collect(inbred).coverage(c -> c.check(true).percentage(p -> p > 30));
        Statistics.label("missing").collect(missing).coverage(c -> c.check(true).percentage(p -> p > 20));
        Statistics.label("one sire of several")
                .collect(hasCandidates(pedigree, false))
                .coverage(c -> c.check(true).percentage(p -> p > 2));
        Statistics.label("a sire for each kit")
                .collect(hasCandidates(pedigree, true))
                .coverage(c -> c.check(true).percentage(p -> p > 2));
    }

    private static boolean hasCandidates(Pedigree pedigree, boolean perKit) {
        return pedigree.litters().values().stream()
                .anyMatch(litter -> litter.sires() instanceof Paternity.Candidates several
                        && several.perKit() == perKit
                        && several.candidates().size() > 1
                        && litter.kits().size() > 1);
    }

    private static void assertIs(BigDecimal numerator, BigDecimal denominator, Probability actual) {
        assertEquals(
                0,
                numerator
                        .multiply(new BigDecimal(actual.denominator()))
                        .compareTo(denominator.multiply(new BigDecimal(actual.numerator()))),
                () -> actual + " instead of " + numerator + "/" + denominator);
    }

    @Property(tries = 60)
    void kinship_is_the_chance_that_dropped_alleles_are_the_same(@ForAll long seed) {
        Pedigree pedigree = RandomPedigree.certain(seed, 8);
        List<Twin.Line> lines = Twin.worlds(pedigree).get(0).lines();
        Kinship kinship = Kinship.of(pedigree);
        List<String> ids = pedigree.order();
        String last = ids.get(ids.size() - 1);
        for (String other : ids) {
            assertIs(Twin.dropped(lines, last, other), BigDecimal.ONE, kinship.between(last, other));
        }
        Statistics.label("inbred")
                .collect(!kinship.inbreeding(last).isZero())
                .coverage(c -> c.check(true).percentage(p -> p > 8));
    }

    @Property(tries = 200)
    void floating_point_agrees_with_exact_numbers(@ForAll long seed) {
        Pedigree pedigree = RandomPedigree.bare(seed, 25);
        Kinship exact = Kinship.of(pedigree);
        RegistryKinship fast = RegistryKinship.of(pedigree);
        List<String> ids = pedigree.order();
        String one = ids.get((int) Math.floorMod(seed, (long) ids.size()));
        Map<String, Double> withAll = fast.withAll(one);
        Map<String, Double> means = fast.meanKinship(ids);
        double mean = 0;
        for (String other : ids) {
            double expected = exact.between(one, other).toDouble();
            assertEquals(expected, fast.between(one, other), ROUNDING);
            assertEquals(expected, withAll.get(other), ROUNDING);
            assertEquals(exact.inbreeding(other).toDouble(), fast.inbreeding(other), ROUNDING);
            mean += expected / ids.size();
        }
        assertEquals(mean, means.get(one), ROUNDING);
        assertEquals(ids.size(), withAll.size());
    }

    @Property(tries = 100)
    void the_order_of_records_does_not_matter(@ForAll long seed) {
        Pedigree pedigree = RandomPedigree.recorded(seed, 12);
        List<Individual> individuals = new ArrayList<>(pedigree.individuals().values());
        List<Litter> litters = new ArrayList<>(pedigree.litters().values());
        Collections.shuffle(individuals, new Random(seed));
        Collections.shuffle(litters, new Random(seed));
        PedigreeBuilder builder = Pedigree.builder(pedigree.id(), pedigree.version());
        litters.forEach(builder::add);
        individuals.forEach(builder::add);
        Pedigree shuffled = builder.build();
        assertEquals(pedigree, shuffled);
        assertEquals(pedigree.hashCode(), shuffled.hashCode());
        assertEquals(pedigree.reference(), shuffled.reference());
        List<String> order = shuffled.order();
        for (String one : order) {
            shuffled.parentsOf(one).forEach(parent -> assertTrue(order.indexOf(parent) < order.indexOf(one)));
            for (String other : order) {
                assertEquals(
                        Kinship.of(pedigree).between(one, other),
                        Kinship.of(shuffled).between(one, other));
            }
        }
    }

    @Property(tries = 200)
    void shares_of_founders_are_the_mean_of_those_of_the_parents(@ForAll long seed) {
        Pedigree pedigree = RandomPedigree.certain(seed, 12);
        Kinship kinship = Kinship.of(pedigree);
        for (String id : pedigree.order()) {
            Map<String, Probability> shares = kinship.founderShares(id);
            if (pedigree.litterOf(id).isEmpty()) {
                assertEquals(Map.of(id, Probability.ONE), shares);
                continue;
            }
            Map<String, Probability> mean = new HashMap<>();
            for (String parent : pedigree.parentsOf(id)) {
                kinship.founderShares(parent)
                        .forEach((founder, share) ->
                                mean.merge(founder, share.times(Probability.of(1, 2)), Probability::plus));
            }
            assertEquals(mean, shares);
        }
    }

    @Property(tries = 60)
    void no_way_to_fill_in_parents_leaves_the_range(@ForAll long seed) {
        Pedigree pedigree = RandomPedigree.certain(seed, 4);
        List<String> ids = pedigree.order();
        Map<String, Double> most = new HashMap<>();
        List<Pedigree> ways = new ArrayList<>();
        fill(pedigree, open(pedigree), 0, ways);
        for (Pedigree way : ways) {
            Map<String, Map<String, BigDecimal>> table =
                    Twin.table(Twin.worlds(way).get(0).lines());
            for (String one : ids) {
                for (String other : ids) {
                    most.merge(one + " " + other, table.get(one).get(other).doubleValue() / 2, Math::max);
                }
            }
        }
        Kinship kinship = Kinship.of(pedigree);
        boolean wider = false;
        for (String one : ids) {
            for (String other : ids) {
                KinshipRange range = kinship.range(one, other);
                double found = most.get(one + " " + other);
                assertEquals(kinship.between(one, other), range.low());
                assertTrue(range.low().toDouble() <= found, () -> found + " below " + range);
                assertTrue(found <= range.high() + 1e-9, () -> found + " above " + range + " of " + one + ", " + other);
                wider |= found > range.low().toDouble();
            }
        }
        Statistics.label("filled")
                .collect(ways.size() > 1)
                .coverage(c -> c.check(true).percentage(p -> p > 60));
        Statistics.label("wider").collect(wider).coverage(c -> c.check(true).percentage(p -> p > 50));
    }

    /** Litters that lack a parent, and one of its own for each founder. */
    private static List<Litter> open(Pedigree pedigree) {
        List<Litter> open = new ArrayList<>();
        pedigree.litters().values().stream()
                .filter(litter -> litter.dam().isEmpty() || litter.sires() instanceof Paternity.Unknown)
                .forEach(open::add);
        pedigree.founders()
                .forEach(founder ->
                        open.add(Litter.of("of " + founder, Optional.empty(), Paternity.unknown(), founder)));
        return open;
    }

    /** Every sound way to put recorded animals in the place of parents that are not. */
    private static void fill(Pedigree base, List<Litter> open, int at, List<Pedigree> ways) {
        if (at == open.size()) {
            ways.add(base);
            return;
        }
        Litter litter = open.get(at);
        List<String> dams = candidates(base, litter.dam().isPresent(), Sex.FEMALE);
        List<String> sires = candidates(base, !(litter.sires() instanceof Paternity.Unknown), Sex.MALE);
        for (String dam : dams) {
            for (String sire : sires) {
                Litter changed = new Litter(
                        litter.id(),
                        dam.isEmpty() ? litter.dam() : Optional.of(dam),
                        sire.isEmpty() ? litter.sires() : Paternity.of(sire),
                        litter.born(),
                        litter.bornCount(),
                        litter.scoredCount(),
                        litter.fosterDam(),
                        litter.kits());
                PedigreeBuilder builder = Pedigree.builder("filled", "1");
                base.individuals().values().forEach(builder::add);
                base.litters().values().stream()
                        .filter(one -> !one.id().equals(litter.id()))
                        .forEach(builder::add);
                try {
                    fill(builder.add(changed).build(), open, at + 1, ways);
                } catch (ProblemsException e) {
                    // Not sound: a descendant, or as young.
                }
            }
        }
    }

    private static List<String> candidates(Pedigree base, boolean stated, Sex sex) {
        List<String> all = new ArrayList<>(List.of(""));
        if (!stated) {
            base.individuals().values().stream()
                    .filter(one -> one.sex().isEmpty() || one.sex().get() == sex)
                    .forEach(one -> all.add(one.id()));
        }
        return all;
    }

    @Property(tries = 200)
    void completeness_counts_the_places_of_ancestors(@ForAll long seed) {
        Pedigree pedigree = RandomPedigree.certain(seed, 12);
        String id = pedigree.order().get(pedigree.order().size() - 1);
        Completeness measured = Completeness.of(pedigree, id, 4);
        assertEquals(
                Completeness.of(pedigree, id, Completeness.MOST_GENERATIONS).equivalentGenerations(),
                RegistryKinship.of(pedigree).generations(id),
                1e-12);
        double[] sides = new double[2];
        for (int generation = 1; generation <= 4; generation++) {
            int dams =
                    places(pedigree, pedigree.litterOf(id).flatMap(Litter::dam).orElse(""), generation - 1);
            int sires = places(pedigree, sire(pedigree, id), generation - 1);
            assertEquals(
                    Probability.of(dams + sires, 1L << generation),
                    measured.generations().get(generation - 1));
            sides[0] += dams / Math.pow(2, generation - 1) / 4;
            sides[1] += sires / Math.pow(2, generation - 1) / 4;
        }
        assertEquals(sides[0], measured.damSide().toDouble(), ROUNDING);
        assertEquals(sides[1], measured.sireSide().toDouble(), ROUNDING);
        double index = sides[0] == 0 || sides[1] == 0 ? 0 : 2 / (1 / sides[0] + 1 / sides[1]);
        assertEquals(index, measured.index().toDouble(), ROUNDING);
    }

    private static String sire(Pedigree pedigree, String id) {
        return pedigree.litterOf(id)
                .map(litter -> litter.sires() instanceof Paternity.Known known ? known.sire() : "")
                .orElse("");
    }

    /** How many places so many generations above hold a recorded animal. */
    private static int places(Pedigree pedigree, String id, int above) {
        if (id.isEmpty()) {
            return 0;
        }
        return above == 0
                ? 1
                : places(pedigree, pedigree.litterOf(id).flatMap(Litter::dam).orElse(""), above - 1)
                        + places(pedigree, sire(pedigree, id), above - 1);
    }
}
