package org.geneticsrules.inference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomKennel;
import org.junit.jupiter.api.Test;

/** Sampling of kennels of relatives, with small blocks so that much is left out of each. */
@Once
class SamplingTest {

    private static final Set<String> A = Set.of("A");

    private static Pedigree kennel(long seed, int animals) {
        return RandomKennel.draw(new SplittableRandom(seed), 3, 6, animals, 14, 0.5);
    }

    private static Inference inference(Pedigree pedigree) {
        return Inference.of(CompiledModel.of(RandomKennel.series(3)), pedigree).from("even");
    }

    private static Conclusions sampled(Pedigree pedigree, Sampling how) {
        return inference(pedigree).within(0).sampling(how).conclude(A);
    }

    /** Of all intervals of 1.96 standard errors about 95 in 100 cover the exact number. */
    @Test
    void intervals_cover_as_often_as_they_say() {
        int numbers = 0;
        int covered = 0;
        for (long seed = 0; seed < 16; seed++) {
            Pedigree pedigree = kennel(seed, 24);
            Conclusions exact = inference(pedigree).conclude(A);
            Conclusions found =
                    sampled(pedigree, Sampling.seeded(seed).withBlocks(60).withStandardError(0.02));
            for (String id : pedigree.individuals().keySet()) {
                // an animal without relatives takes no table
                assertNotEquals(Standing.NOT_CONVERGED, found.standing(id, "A"));
                Posterior posterior = found.at(id, "A").orElseThrow();
                for (Map.Entry<AllelePair, Double> one :
                        exact.at(id, "A").orElseThrow().chances().entrySet()) {
                    double error = posterior.standardError(one.getKey());
                    assertTrue(error <= 0.02);
                    double off = Math.abs(posterior.chance(one.getKey()) - one.getValue());
                    if (error > 1e-6) {
                        numbers++;
                        covered += off <= 1.96 * error ? 1 : 0;
                    } else {
                        assertEquals(0, off, 1e-5);
                    }
                }
            }
        }
        assertTrue(numbers > 500, "only " + numbers + " numbers were estimated");
        double share = covered / (double) numbers;
        assertTrue(share >= 0.90 && share <= 0.99, share + " of " + numbers);
    }

    @Test
    void the_same_seed_gives_the_same_numbers() {
        Pedigree pedigree = kennel(5, 40);
        Sampling how = Sampling.seeded(7).withBlocks(60).withStandardError(0.05);
        Conclusions first = sampled(pedigree, how);
        Conclusions second = sampled(pedigree, how);
        Conclusions other = sampled(pedigree, Sampling.seeded(8).withBlocks(60).withStandardError(0.05));
        boolean differs = false;
        for (String id : pedigree.individuals().keySet()) {
            assertEquals(first.at(id, "A"), second.at(id, "A"));
            differs |= !first.at(id, "A").equals(other.at(id, "A"));
        }
        assertTrue(differs);
    }

    @Test
    void a_limit_of_work_ends_it() {
        Pedigree pedigree = kennel(5, 60);
        for (double work : new double[] {0, 1e3, 1e5}) {
            Conclusions found =
                    sampled(pedigree, Sampling.seeded(1).withBlocks(60).withWork(work));
            assertEquals(Standing.NOT_CONVERGED, found.standing("animal 20", "A"));
            assertTrue(found.at("animal 20", "A").isEmpty());
        }
    }

    /** Nothing is sampled unless it is asked for. */
    @Test
    void what_is_exact_stays_exact() {
        Pedigree pedigree = kennel(5, 40);
        Conclusions exact = inference(pedigree).conclude(A);
        Conclusions both = inference(pedigree).sampling(Sampling.seeded(1)).conclude(A);
        Conclusions neither = inference(pedigree).within(0).conclude(A);
        for (String id : pedigree.individuals().keySet()) {
            assertEquals(Standing.EXACT, both.standing(id, "A"));
            assertEquals(exact.at(id, "A"), both.at(id, "A"));
        }
        assertEquals(Standing.TOO_LARGE, neither.standing("animal 20", "A"));
    }

    /** More animals, with too little room for exact tables, against the exact engine with room enough. */
    @Test
    void a_kennel_too_large_for_the_room_given() {
        Pedigree pedigree = RandomKennel.draw(new SplittableRandom(1), 3, 12, 120, 40, 0.5);
        Inference narrow = inference(pedigree).within(1e4);
        assertEquals(Standing.TOO_LARGE, narrow.conclude(A).standing("animal 119", "A"));
        Conclusions exact = inference(pedigree).conclude(A);
        Conclusions found = narrow.sampling(Sampling.seeded(1).withBlocks(500).withStandardError(0.04))
                .conclude(A);
        int estimated = 0;
        for (String id : pedigree.individuals().keySet()) {
            assertNotEquals(Standing.NOT_CONVERGED, found.standing(id, "A"));
            estimated += found.standing(id, "A") == Standing.SAMPLED ? 1 : 0;
            Posterior one = found.at(id, "A").orElseThrow();
            exact.at(id, "A")
                    .orElseThrow()
                    .chances()
                    .forEach((pair, chance) ->
                            assertEquals(chance, one.chance(pair), 6 * one.standardError(pair) + 1e-9));
            assertTrue(one.standardError(pair -> pair.has("A1")) <= 0.12);
        }
        assertTrue(estimated > 100, "only " + estimated);
    }

    @Test
    void limits_outside_their_range_are_refused() {
        Sampling usual = Sampling.seeded(1);
        assertThrows(IllegalArgumentException.class, () -> usual.withChains(1));
        assertThrows(IllegalArgumentException.class, () -> usual.withStandardError(0));
        assertThrows(IllegalArgumentException.class, () -> usual.withWork(-1));
        assertThrows(IllegalArgumentException.class, () -> usual.withBlocks(0));
        assertThrows(IllegalArgumentException.class, () -> usual.withStandardError(Double.NaN));
    }
}
