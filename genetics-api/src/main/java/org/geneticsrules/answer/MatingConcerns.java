package org.geneticsrules.answer;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.caution.Relation;
import org.geneticsrules.probability.Probability;

/**
 * What speaks against a mating of two animals, and what has to be said of it, whatever else is asked about it. That nothing is listed is no
 * approval.
 *
 * <p>Immutable and thread-safe.
 *
 * @param relation how the two are related, as far as that is known
 * @param inbreeding the coefficient of inbreeding of their young by recorded relatives (Wright 1922); empty where no relatives are recorded
 * @param exclusions why it is not proposed; none if nothing that is stated or tested of the two excludes it
 * @param cautions what has to be said of it
 * @param notices what else is recorded of the two that speaks against it
 */
public record MatingConcerns(
        Relation relation,
        Optional<Probability> inbreeding,
        List<TestResult.Exclusion> exclusions,
        List<Caution> cautions,
        List<String> notices) {

    /**
     * Copies the lists.
     *
     * @param relation how the two are related
     * @param inbreeding of their young
     * @param exclusions why it is not proposed
     * @param cautions what has to be said of it
     * @param notices what else speaks against it
     */
    public MatingConcerns {
        exclusions = ImmutableList.copyOf(exclusions);
        cautions = ImmutableList.copyOf(cautions);
        notices = ImmutableList.copyOf(notices);
    }
}
