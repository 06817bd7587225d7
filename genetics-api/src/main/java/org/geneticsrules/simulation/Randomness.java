package org.geneticsrules.simulation;

import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;

/**
 * Where chance comes from: a generator of random numbers by its name, and the number it is started with. The same randomness gives the same
 * animals, on every machine and JDK that knows the generator.
 *
 * @param generator name of an algorithm of {@code java.util.random}, such as {@value #USUAL}
 * @param seed the number the generator is started with, any
 */
public record Randomness(String generator, long seed) {

    /** The generator that is used unless another is named: LXM with 64 and 128 bits (Steele &amp; Vigna 2021, from memory). */
    public static final String USUAL = "L64X128MixRandom";

    /**
     * Checks that the generator is known and starts from a seed.
     *
     * @param generator name of an algorithm
     * @param seed the number it is started with
     * @throws ProblemsException if this JDK knows no such generator, or it cannot be made to repeat itself
     */
    public Randomness {
        List<String> known = RandomGeneratorFactory.all()
                .filter(factory -> !factory.isStochastic())
                .map(RandomGeneratorFactory::name)
                .sorted()
                .toList();
        if (!known.contains(generator)) {
            throw new ProblemsException(Problems.unknown(
                    Stage.REFERENCES, "unknown-generator", "/generator", "generator with a seed", generator, known));
        }
    }

    /**
     * Returns the usual generator with a seed.
     *
     * @param seed any number
     * @return the randomness
     */
    public static Randomness seeded(long seed) {
        return new Randomness(USUAL, seed);
    }

    /** The generator at its beginning. */
    RandomGenerator start() {
        return RandomGeneratorFactory.of(generator).create(seed);
    }

    /** Returns the generator and the seed, {@code L64X128MixRandom 7}. */
    @Override
    public String toString() {
        return generator + " " + seed;
    }
}
