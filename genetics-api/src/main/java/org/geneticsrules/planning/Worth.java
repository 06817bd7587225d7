package org.geneticsrules.planning;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.probability.Probability;

/**
 * What a step is worth for telling models apart.
 *
 * @param step the step
 * @param standing whether it tells anything
 * @param reason why it is not proposed, or what could not be worked out
 * @param outcomes what it may find; empty unless that was worked out
 * @param ratios what it is expected to say, for each ordered pair of candidates; empty unless that was worked out
 * @param bits Shannon's mutual information between the model and what is found, in bits, by what is believed of each model before the step;
 *     1 settles between two models that are believed in alike; 0 unless it was worked out
 * @param numbers for kits, how many it takes; empty where that was not worked out
 * @param kitsBorn how many kits would be born for it, or are looked at if their mating is planned in any case; 0 for what breeds nobody. For kits
 *     that do not live to be looked at, count more
 * @param animals ids of the recorded animals it takes
 * @param inbreeding for a mating, the coefficient of inbreeding of its kits by the recorded relatives (Wright 1922); more if founders are
 *     related
 */
public record Worth(
        Step step,
        Standing standing,
        Optional<String> reason,
        List<Outcome> outcomes,
        List<ExpectedRatio> ratios,
        double bits,
        List<KitsNeeded> numbers,
        int kitsBorn,
        Set<String> animals,
        Optional<Probability> inbreeding) {

    /** Whether a step tells anything. */
    public enum Standing {
        /** Some outcome is likelier under one model than under another. */
        TELLS,
        /** No outcome differs: whatever is found, the models are as they were. */
        TELLS_NOTHING,
        /** It was not worked out; the reason says why. */
        NOT_WORKED_OUT,
        /** The animals, or the stage, do not allow it; the reason says why. */
        NOT_PROPOSED,
        /** The records of these animals and their relatives exclude a model already; the reason says which. */
        SETTLED;

        /**
         * Returns the standing in words.
         *
         * @return for example {@code tells nothing}
         */
        public String words() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    /**
     * Copies the collections.
     *
     * @param step the step
     * @param standing whether it tells anything
     * @param reason why not
     * @param outcomes what it may find
     * @param ratios what it is expected to say
     * @param bits the mutual information
     * @param numbers how many kits it takes
     * @param kitsBorn how many kits would be born
     * @param animals the animals
     * @param inbreeding of the kits
     * @throws IllegalArgumentException if the information is no number
     */
    public Worth {
        if (!Double.isFinite(bits)) {
            throw new IllegalArgumentException("information is a number of bits, but was " + bits);
        }
        outcomes = ImmutableList.copyOf(outcomes);
        ratios = ImmutableList.copyOf(ratios);
        numbers = ImmutableList.copyOf(numbers);
        animals = ImmutableSet.copyOf(animals);
    }

    /**
     * Returns what the step is expected to say for one model against another.
     *
     * @param truth number of the model that is supposed to be true
     * @param rival number of the other
     * @return the expectation; empty if it was not worked out
     */
    public Optional<ExpectedRatio> ratio(int truth, int rival) {
        return ratios.stream()
                .filter(one -> one.truth() == truth && one.rival() == rival)
                .findFirst();
    }

    /**
     * Returns how many kits it takes.
     *
     * @param truth number of the model that is supposed to be true
     * @param rival number of the other
     * @param design how the kits come about
     * @param sureness a chance that was asked for
     * @return the number, or that there is none; empty if it was not worked out
     */
    public Optional<KitsNeeded> needed(int truth, int rival, KitsNeeded.Design design, double sureness) {
        return numbers.stream()
                .filter(one -> one.truth() == truth
                        && one.rival() == rival
                        && one.design() == design
                        && one.sureness() == sureness)
                .findFirst();
    }
}
