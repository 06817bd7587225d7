package org.geneticsrules.answer.recorded;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.trait.LifeStage;

/**
 * What each look at an animal would tell of what it may be, beyond all records of it and its relatives, and what it may be by these.
 *
 * @param animal its id
 * @param stage when it will be looked at
 * @param origins the populations by which chances are weighed, one after another; none if frequencies are missing
 * @param traits the looks: those that tell something first, the most telling before the others, then all others; ties in declared order
 * @param classes the expressions that are left, locus by locus, of the loci that these traits and earlier looks read
 * @param together combinations of expressions that are left, at the loci that the most telling traits and earlier looks read, the most
 *     likely first; none where that is one locus only
 * @param others how many combinations there are besides
 */
public record LookNext(
        String animal,
        LifeStage stage,
        List<Origin> origins,
        List<OfTrait> traits,
        List<AtLocus> classes,
        List<Combined> together,
        int others)
        implements Finding {

    /**
     * Copies the lists.
     *
     * @param animal its id
     * @param stage when it will be looked at
     * @param origins where chances are weighed by
     * @param traits the looks
     * @param classes the expressions that are left
     * @param together combinations that are left
     * @param others how many there are besides
     */
    public LookNext {
        origins = ImmutableList.copyOf(origins);
        traits = ImmutableList.copyOf(traits);
        classes = ImmutableList.copyOf(classes);
        together = ImmutableList.copyOf(together);
    }

    /** What is less than this apart is told as the same. */
    private static final double SAME = 1e-6;

    /**
     * Returns the looks that tell most.
     *
     * @return the first one and those that tell as much by the mean over the origins; none if nothing tells anything
     */
    public List<OfTrait> best() {
        return traits.stream()
                .filter(row -> row.word() == Word.TELLS && traits.get(0).mean() - row.mean() < SAME)
                .toList();
    }

    /** Whether a look tells anything. */
    public enum Word {
        /** It is expected to tell something of what the animal carries. */
        TELLS,
        /** Whatever is seen, no more is known than before. */
        TELLS_NOTHING,
        /** It is recorded at this stage already. */
        RECORDED,
        /** It cannot be told so early. */
        NOT_YET,
        /** It depends on an age, a moult or a season that the question does not state. */
        STAGE_NEEDED,
        /** The model makes no claim about it for some of what the animal may carry. */
        NO_CLAIM,
        /** It was not worked out: too large, or frequencies are missing. */
        UNDECIDED;

        /**
         * Returns the word.
         *
         * @return for example {@code tells nothing}
         */
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    /** Whether an expression is left. */
    public enum Whether {
        /** All records leave it possible. */
        POSSIBLE,
        /** Some record, or relatives together, rule it out. */
        EXCLUDED,
        /** It was not found out. */
        UNDECIDED;

        /**
         * Returns the word.
         *
         * @return for example {@code possible}
         */
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * What a look at one trait would tell.
     *
     * @param trait id of the trait
     * @param word whether it tells anything
     * @param tells what it is expected to tell, for each origin; none where that was not asked
     * @param states what may be seen, with what that would leave; states that are never seen are left out
     * @param when why it cannot be told now, or from when on and in which light it can be told
     * @param note how it is looked at, by the catalogue
     */
    public record OfTrait(
            String trait,
            Word word,
            List<Information> tells,
            List<OfState> states,
            Optional<String> when,
            Optional<String> note) {
        /**
         * Copies the lists.
         *
         * @param trait id of the trait
         * @param word whether it tells anything
         * @param tells what it is expected to tell
         * @param states what may be seen
         * @param when from when on and in which light it can be told
         * @param note how it is looked at
         */
        public OfTrait {
            tells = ImmutableList.copyOf(tells);
            states = ImmutableList.copyOf(states);
        }

        /** The mean over the origins for which it was worked out. */
        double mean() {
            return tells.stream()
                    .flatMapToDouble(one -> one.bits().stream())
                    .average()
                    .orElse(0);
        }
    }

    /**
     * An expected amount of information.
     *
     * @param standing exact, or why it was not worked out
     * @param bits the amount in bits, never negative: 1 is what a look tells that halves what is left; empty if it was not worked out
     */
    public record Information(Standing standing, OptionalDouble bits) {

        static Information exact(double bits) {
            return new Information(Standing.EXACT, OptionalDouble.of(Math.max(0, bits)));
        }

        static Information unsettled(Standing standing) {
            return new Information(standing, OptionalDouble.empty());
        }

        /** Returns the number with three decimals, or why there is none. */
        @Override
        public String toString() {
            return bits.isPresent()
                    ? String.format(Locale.ROOT, "%.3f", bits.getAsDouble())
                    : Chance.unsettled(standing).toString();
        }
    }

    /**
     * What may be seen, and what that would leave.
     *
     * @param state the state
     * @param chances how likely it is to be seen, for each origin
     * @param genotypes how many genotypes it would leave at the loci that the trait reads; 0 if that was not worked out
     * @param leaves by locus, the expressions that it would leave; only loci at which it rules one out
     */
    public record OfState(String state, List<Chance> chances, int genotypes, Map<String, List<String>> leaves) {
        /**
         * Copies the lists.
         *
         * @param state the state
         * @param chances how likely it is
         * @param genotypes how many genotypes it would leave
         * @param leaves the expressions that it would leave
         */
        public OfState {
            chances = ImmutableList.copyOf(chances);
            leaves = ImmutableMap.copyOf(leaves);
        }
    }

    /**
     * What is left at a locus.
     *
     * @param locus id of the locus
     * @param expressions every expression of the locus
     */
    public record AtLocus(String locus, List<OfExpression> expressions) {
        /**
         * Copies the list.
         *
         * @param locus id of the locus
         * @param expressions every expression of the locus
         */
        public AtLocus {
            expressions = ImmutableList.copyOf(expressions);
        }

        /** The expressions that are not excluded. */
        List<String> left() {
            return expressions.stream()
                    .filter(one -> one.whether() != Whether.EXCLUDED)
                    .map(OfExpression::expression)
                    .toList();
        }
    }

    /**
     * What is known of an expression.
     *
     * @param expression the expression
     * @param whether whether it is left, frequencies left out
     * @param chances how likely the animal has it, for each origin; none where that hangs on a sex that is not known
     */
    public record OfExpression(String expression, Whether whether, List<Chance> chances) {
        /**
         * Copies the chances.
         *
         * @param expression the expression
         * @param whether whether it is left
         * @param chances how likely it is
         */
        public OfExpression {
            chances = ImmutableList.copyOf(chances);
        }
    }

    /**
     * Expressions at several loci together.
     *
     * @param expressions expressions by locus
     * @param chances how likely the animal has them, for each origin
     */
    public record Combined(Map<String, String> expressions, List<Chance> chances) {
        /**
         * Copies the lists.
         *
         * @param expressions expressions by locus
         * @param chances how likely they are
         */
        public Combined {
            expressions = ImmutableMap.copyOf(expressions);
            chances = ImmutableList.copyOf(chances);
        }
    }
}
