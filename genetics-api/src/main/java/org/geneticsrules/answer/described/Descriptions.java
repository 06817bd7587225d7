package org.geneticsrules.answer.described;

import org.geneticsrules.answer.Answers;
import org.geneticsrules.problem.ProblemsException;

/**
 * Describes animals, with cautions and evidence.
 *
 * <pre>{@code
 * DescribedAnswer answer = Descriptions.of(answers)
 *         .describe(new DescribeQuestion(List.of(new Sighting(LifeStage.atMoult(2), Phenotype.parse("hue: black"))), Optional.empty()));
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Descriptions {

    private final Answers answers;

    private Descriptions(Answers answers) {
        this.answers = answers;
    }

    /**
     * Describes by the rules and the cautions of a model.
     *
     * @param answers the model, its cautions and its rivals
     * @return the answering service
     */
    public static Descriptions of(Answers answers) {
        return new Descriptions(answers);
    }

    /**
     * Answers what was seen of an animal, and whether it can all be one animal.
     *
     * @param question the question
     * @return the answer; that no animal shows all of it is an answer too
     * @throws ProblemsException if traits, states or seasons are unknown, all of them at once, each with the nearest known
     */
    public DescribedAnswer describe(DescribeQuestion question) {
        return new Describing(answers, question).answer();
    }
}
