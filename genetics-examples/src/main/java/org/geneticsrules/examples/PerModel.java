package org.geneticsrules.examples;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import org.geneticsrules.answer.compared.HeldModel;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.Stage;

/** An option that states something of single models, such as {@code my-hypothesis=1/10}, by their ids. */
final class PerModel<T> {

    private final String option;
    private final Map<String, T> stated = new LinkedHashMap<>();

    private PerModel(String option) {
        this.option = option;
    }

    /** Reads what is stated; what is wrong with any is told at once. */
    static <T> PerModel<T> read(String option, List<String> given, String what, Function<String, T> value) {
        PerModel<T> read = new PerModel<>(option);
        StringBuilder problems = new StringBuilder();
        for (String one : given) {
            try {
                int equals = one.lastIndexOf('=');
                if (equals < 1) {
                    throw read.wrong(
                            one,
                            Problem.of(Stage.SYNTAX, "model-syntax", "", "no \"=\" parts a model from its " + what)
                                    .expecting("the id of a model, \"=\", and its " + what));
                }
                String id = one.substring(0, equals).strip();
                T found = value.apply(one.substring(equals + 1).strip());
                if (read.stated.put(id, found) != null) {
                    throw read.wrong(
                            one,
                            Problem.of(Stage.MEANING, "duplicate-model", "", "a second " + what + " of \"" + id + "\"")
                                    .expecting("one for each model"));
                }
            } catch (InputException e) {
                problems.append(e.text());
            }
        }
        if (problems.length() > 0) {
            throw new InputException(problems.toString());
        }
        return read;
    }

    /** Refuses what is stated of models that nobody asks about. */
    void check(List<HeldModel> models) {
        Set<String> known = new TreeSet<>();
        models.forEach(one -> known.add(one.id()));
        StringBuilder problems = new StringBuilder();
        for (String id : stated.keySet()) {
            if (!known.contains(id)) {
                problems.append(wrong(
                                id,
                                Problems.unknown(Stage.REFERENCES, "unknown-model", "", "model", id, known)
                                        .near(ModelChoice.near(id, known)))
                        .text());
            }
        }
        if (problems.length() > 0) {
            throw new InputException(problems.toString());
        }
    }

    /** What is stated of a model. */
    Optional<T> of(HeldModel one) {
        return Optional.ofNullable(stated.get(one.id()));
    }

    private InputException wrong(String given, Problem problem) {
        return new InputException(ProblemText.of(option, given, List.of(problem)));
    }
}
