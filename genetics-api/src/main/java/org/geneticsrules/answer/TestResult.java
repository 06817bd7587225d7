package org.geneticsrules.answer;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.cross.Detection;
import org.geneticsrules.model.Population;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Phenotype;

/**
 * What testing an animal for one allele by mates of one description would take.
 *
 * @param allele what the animal is tested for
 * @param mate the mates
 * @param traits what the young are looked at for; none if nothing they could show would prove anything
 * @param signs the looks in these traits each of which proves the case, because no young of an animal without the allele could show it
 * @param courses how many it takes, counted in several ways; none if the mating is left out, proves nothing, or lacks frequencies
 * @param exclusions why the mating is not proposed; none if it may be
 */
public record TestResult(
        HiddenAllele allele,
        TestMate mate,
        List<String> traits,
        Set<Phenotype> signs,
        List<Course> courses,
        List<Exclusion> exclusions) {

    /** The name by which matings some of whose young are lost can be asked for all the same. */
    public static final String LOST_YOUNG = "lost young";

    /**
     * Copies the collections.
     *
     * @param allele what the animal is tested for
     * @param mate the mates
     * @param traits what the young are looked at for
     * @param signs what proves the case
     * @param courses how many it takes
     * @param exclusions why it is not proposed
     */
    public TestResult {
        traits = ImmutableList.copyOf(traits);
        signs = ImmutableSet.copyOf(signs);
        courses = ImmutableList.copyOf(courses);
        exclusions = ImmutableList.copyOf(exclusions);
    }

    /** What is counted. */
    public enum Step {
        /** The young of one mate, one by one. */
        YOUNG_OF_ONE_MATE,
        /** The litters of one mate. */
        LITTERS_OF_ONE_MATE,
        /** Mates, each of which has one litter, or one young where no size of litters is stated. */
        MATES;

        /**
         * Returns the words for what is counted.
         *
         * @return for example {@code litters of one mate}
         */
        public String words() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    /**
     * How many of something it takes.
     *
     * @param step what is counted
     * @param population the population by which what is not known was weighed, where that was left open in the question
     * @param bound true if the numbers are enough whatever the animals carry that is not known, so that fewer may do
     * @param detection the chance of a miss after so many, or a bound on it
     * @param needed how many it takes
     */
    public record Course(
            Step step, Optional<Population> population, boolean bound, Detection detection, List<Needed> needed) {
        /**
         * Copies the list.
         *
         * @param step what is counted
         * @param population the population assumed
         * @param bound whether the numbers are enough in any case
         * @param detection the chance of a miss
         * @param needed how many it takes
         */
        public Course {
            needed = ImmutableList.copyOf(needed);
        }
    }

    /**
     * How many it takes for one confidence.
     *
     * @param confidence the confidence
     * @param toShow the fewest after which a carrier would have been found out with at least that chance; empty if too many to compute
     * @param toBelieve the fewest after which an animal that has shown nothing is clear with at least that chance, where it was said
     *     how likely it was before; empty if not, or if too many to compute
     */
    public record Needed(
            Probability confidence, Optional<Detection.Fewest> toShow, Optional<Detection.Fewest> toBelieve) {}

    /**
     * A reason not to propose a mating.
     *
     * @param name name of the caution that excludes it, or {@value TestResult#LOST_YOUNG}
     * @param line what it says, in one sentence
     * @param about whose look raised it: the animal, its mate, their young, or their relation
     */
    public record Exclusion(String name, String line, String about) {}

    /**
     * Tells whether young are bred to no purpose: nothing they could show would prove anything.
     *
     * @return true if the mating cannot tell
     */
    public boolean tellsNothing() {
        return exclusions.isEmpty() && signs.isEmpty();
    }

    /**
     * Tells whether the mating might tell, but nobody's frequencies say how soon.
     *
     * @return true if a number is lacking for want of frequencies
     */
    public boolean lacksFrequencies() {
        return exclusions.isEmpty() && !signs.isEmpty() && courses.isEmpty();
    }

    /** The fewest of the first course for the first confidence, if any number is enough. */
    Optional<Integer> fewest() {
        return courses.stream()
                .limit(1)
                .flatMap(course -> course.needed().get(0).toShow().stream())
                .flatMap(fewest -> fewest instanceof Detection.Reached reached
                        ? Optional.of(reached.steps()).stream()
                        : Optional.<Integer>empty().stream())
                .findFirst();
    }
}
