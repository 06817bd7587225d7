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
     * Returns the statement in words.
     *
     * @return for example {@code of females that show white at locus L, 1/2 are born, 3/4 are scored of those}
     */
    public String words() {
        String animals = "of " + sex.map(one -> one.word() + "s").orElse("animals") + " that show "
                + String.join(" or ", expressions) + " at locus " + locus + ", ";
        String born = decidesBirth() ? share(birth) + " born" : "";
        String live = scored.isOne() ? "" : share(scored) + " scored" + (born.isEmpty() ? " when born" : " of those");
        return animals + born + (born.isEmpty() || live.isEmpty() ? "" : ", ") + live;
    }

    private static String share(Probability chance) {
        return (chance.isZero() ? "none" : chance.isOne() ? "all" : chance.toString()) + " are";
    }

    /**
     * Tells whether it says anything of birth. A statement of neither step is one that birth is certain.
     *
     * @return false if it is about those born only
     */
    public boolean decidesBirth() {
        return !birth.isOne() || scored.isOne();
    }

    /**
     * Tells whether it is about animals of an expression.
     *
     * @param at id of a locus
     * @param expression what they show there
     * @param of their sex
     * @return true if its chances hold of them
     */
    public boolean concerns(String at, String expression, Sex of) {
        return locus.equals(at) && expressions.contains(expression) && sex.orElse(of) == of;
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
