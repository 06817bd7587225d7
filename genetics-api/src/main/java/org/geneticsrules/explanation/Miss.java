package org.geneticsrules.explanation;

import java.util.Optional;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;

/**
 * What the numbers of a test mating are made of: how likely one step of it is to show nothing, though the animal is what it is tested
 * for. After n steps a miss has the chance of the sum of w v^n over the values v with their weights w.
 *
 * @param test number of the test in the answer, counted from 0
 * @param step what a step is, in words
 * @param population the population by which what is not known was weighed, where that was left open in the question
 * @param chances the values that the chance of a step may have for all steps together, with their weights
 */
public record Miss(int test, String step, Optional<String> population, Distribution<Probability> chances)
        implements Reason {}
