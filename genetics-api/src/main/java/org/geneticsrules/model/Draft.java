package org.geneticsrules.model;

import com.google.common.collect.ImmutableList;
import java.util.List;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;

/**
 * A model in which every name means something, but whose statements may still contradict each other: two cases of a trait that both
 * hold for some animal, or two masks that show a trait differently.
 *
 * <p>It is what a writer has in hand between the first version of a document and a sound model. It can be reported on as a whole;
 * questions are asked of a {@link Model}.
 *
 * <p>Immutable and thread-safe. Obtained from {@link ModelBuilder#draft()}.
 */
public final class Draft {

    private final Model model;
    private final ImmutableList<Problem> conflicts;

    Draft(Model model, List<Problem> conflicts) {
        this.model = model;
        this.conflicts = ImmutableList.copyOf(conflicts);
    }

    /**
     * Returns the contradictions.
     *
     * @return a problem {@code overlapping-cases} or {@code mask-conflict} for each, whose message gives an example of an animal; empty if
     *     the model is sound
     */
    public List<Problem> conflicts() {
        return conflicts;
    }

    /**
     * Returns the sound model.
     *
     * @return the model
     * @throws ProblemsException if there are contradictions
     */
    public Model model() {
        if (!conflicts.isEmpty()) {
            throw new ProblemsException(conflicts);
        }
        return model;
    }

    /**
     * Returns the statements as they are, to be reported on. What an engine would make of contradictory ones means nothing.
     *
     * @return the model, sound only if there are no {@link #conflicts()}
     */
    public Model asStated() {
        return model;
    }

    /**
     * Returns this draft with its contradictions as problems of a text.
     *
     * @param placed the same problems with their positions
     * @return a copy
     */
    public Draft placed(List<Problem> placed) {
        return new Draft(model, placed);
    }
}
