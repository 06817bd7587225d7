package org.geneticsrules.model;

import com.google.common.collect.ImmutableSet;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.trait.Sex;

/**
 * How likely animals of some expressions of one locus are to be born, and to live until their litter is scored.
 *
 * <p>What is not stated is certain. The chances of different loci multiply.
 *
 * @param id its name
 * @param locus id of the locus
 * @param expressions the expressions it is about
 * @param sex the sex it is about; both if empty
 * @param birth chance to be born, given conceived
 * @param scored chance to be scored, given born
 * @param evidence id of its evidence, if stated
 */
public record Viability(
        String id,
        String locus,
        Set<String> expressions,
        Optional<Sex> sex,
        Probability birth,
        Probability scored,
        Optional<String> evidence) {

    /**
     * Copies the expressions.
     *
     * @param id its name
     * @param locus id of the locus
     * @param expressions the expressions
     * @param sex the sex
     * @param birth chance to be born
     * @param scored chance to be scored
     * @param evidence id of its evidence
     */
    public Viability {
        expressions = ImmutableSet.copyOf(expressions);
    }

    /**
     * Returns the statement that animals of an expression are never born.
     *
     * @param id its name
     * @param locus id of the locus
     * @param expression the expression
     * @return the statement
     */
    public static Viability lethal(String id, String locus, String expression) {
        return new Viability(
                id,
                locus,
                ImmutableSet.of(expression),
                Optional.empty(),
                Probability.ZERO,
                Probability.ONE,
                Optional.empty());
    }

    /**
     * Returns the address of the statement in the model's document.
     *
     * @return a JSON Pointer
     */
    public String pointer() {
        return Pointer.of("viability", id);
    }
}
