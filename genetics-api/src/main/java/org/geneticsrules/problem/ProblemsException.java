package org.geneticsrules.problem;

import com.google.common.collect.ImmutableList;
import java.util.Collection;
import java.util.List;
import java.util.stream.Collectors;

/** Thrown when input cannot be used; carries every problem of the first stage of checking that found any. */
public final class ProblemsException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final transient ImmutableList<Problem> problems;

    /**
     * Makes the exception.
     *
     * @param problems at least one problem
     * @throws IllegalArgumentException if there is none
     */
    public ProblemsException(Collection<Problem> problems) {
        super(problems.stream().map(Problem::toString).collect(Collectors.joining("\n")));
        if (problems.isEmpty()) {
            throw new IllegalArgumentException("an exception needs at least one problem");
        }
        this.problems = ImmutableList.copyOf(problems);
    }

    /**
     * Makes the exception of one problem.
     *
     * @param problem the problem
     */
    public ProblemsException(Problem problem) {
        this(List.of(problem));
    }

    /**
     * Returns the problems.
     *
     * @return at least one problem, in the order found
     */
    public List<Problem> problems() {
        return problems;
    }
}
