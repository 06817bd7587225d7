package org.geneticsrules.answer.recorded;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.geneticsrules.answer.recorded.LookNext.Whether;
import org.geneticsrules.trait.LifeStage;

/**
 * What an animal may show at a stage of its life: by possibility, frequencies left out, and by chance.
 *
 * @param animal its id
 * @param stage when it will be looked at
 * @param origins the populations by which chances are weighed, one after another; none if frequencies are missing
 * @param traits the traits asked for, in declared order; none if the records contradict one another
 */
public record Later(String animal, LifeStage stage, List<Origin> origins, List<OfTrait> traits) implements Finding {

    /**
     * Copies the lists.
     *
     * @param animal its id
     * @param stage when it will be looked at
     * @param origins where chances are weighed by
     * @param traits the traits asked for
     */
    public Later {
        origins = ImmutableList.copyOf(origins);
        traits = ImmutableList.copyOf(traits);
    }

    /** What is told of a trait. */
    public enum Word {
        /** One state is left. */
        SHOWS,
        /** Several states are left. */
        MAY_SHOW,
        /** It cannot be told so early. */
        NOT_YET,
        /** It depends on an age, a moult or a season that the question does not state. */
        STAGE_NEEDED,
        /** The model makes no claim about it for some of what the animal may carry. */
        NO_CLAIM,
        /** Of some state it was not found out whether it is left. */
        UNDECIDED;

        /**
         * Returns the word.
         *
         * @return for example {@code may show}
         */
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    /**
     * What the animal may show of one trait.
     *
     * @param trait id of the trait
     * @param ordered whether its states are in an order of degree
     * @param word what is told of it
     * @param states every state in declared order; none where nothing can be told
     * @param when why it cannot be told then, or from when on it can be told
     * @param note how it is looked at, by the catalogue
     */
    public record OfTrait(
            String trait,
            boolean ordered,
            Word word,
            List<OfState> states,
            Optional<String> when,
            Optional<String> note) {
        /**
         * Copies the list.
         *
         * @param trait id of the trait
         * @param ordered whether its states are in an order of degree
         * @param word what is told of it
         * @param states every state
         * @param when from when on it can be told
         * @param note how it is looked at
         */
        public OfTrait {
            states = ImmutableList.copyOf(states);
        }

        /**
         * Returns the states that are not excluded.
         *
         * @return states in declared order
         */
        public List<OfState> left() {
            return states.stream()
                    .filter(one -> one.whether() != Whether.EXCLUDED)
                    .toList();
        }
    }

    /**
     * A state, and whether the animal may show it then.
     *
     * @param state the state
     * @param whether whether all records leave it possible, frequencies and mutation left out
     * @param chances how likely it is, for each origin
     * @param hiddenBy ids of the masks that may be what shows it, another state being hidden beneath; in declared order. None is missed; one
     *     may be named too many that only a state beneath another mask would rule out
     */
    public record OfState(String state, Whether whether, List<Chance> chances, List<String> hiddenBy) {
        /**
         * Copies the lists.
         *
         * @param state the state
         * @param whether whether it is possible
         * @param chances how likely it is
         * @param hiddenBy the masks that may show it
         */
        public OfState {
            chances = ImmutableList.copyOf(chances);
            hiddenBy = ImmutableList.copyOf(hiddenBy);
        }
    }
}
