package org.geneticsrules.examples;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.geneticsrules.answer.compared.HeldModel;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.Stage;

/** What is believed of models before litters are looked at. */
final class Beliefs {

    private static final String OPTION = "--belief";

    private final Map<String, Probability> shares = new LinkedHashMap<>();

    /** Reads models and shares, such as {@code my-hypothesis=1/10}; what is wrong with any is told at once. */
    static Beliefs read(List<String> given) {
        Beliefs read = new Beliefs();
        StringBuilder problems = new StringBuilder();
        for (String one : given) {
            try {
                int equals = one.lastIndexOf('=');
                if (equals < 1) {
                    throw wrong(
                            one,
                            Problem.of(Stage.SYNTAX, "belief-syntax", "", "no \"=\" parts a model from its share")
                                    .expecting("the id of a model and a share, for example \"my-hypothesis=1/10\""));
                }
                String id = one.substring(0, equals).strip();
                Probability share = Inputs.chance(OPTION, one.substring(equals + 1));
                if (read.shares.put(id, share) != null) {
                    throw wrong(
                            one,
                            Problem.of(Stage.MEANING, "duplicate-belief", "", "a second share of \"" + id + "\"")
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

    /** The models with what is believed of them; a model that nobody asks about is refused, and so is belief in none. */
    List<HeldModel> of(List<HeldModel> models) {
        Set<String> known = new TreeSet<>();
        models.forEach(one -> known.add(one.id()));
        StringBuilder problems = new StringBuilder();
        for (Map.Entry<String, Probability> one : shares.entrySet()) {
            if (!known.contains(one.getKey())) {
                problems.append(wrong(
                                one.getKey(),
                                Problems.unknown(Stage.REFERENCES, "unknown-model", "", "model", one.getKey(), known)
                                        .near(ModelChoice.near(one.getKey(), known)))
                        .text());
            }
        }
        if (problems.length() == 0
                && models.stream().allMatch(one -> of(one).prior().isZero())) {
            problems.append("problem: " + OPTION + ": no model is believed in; expected a share above 0 for one\n");
        }
        if (problems.length() > 0) {
            throw new InputException(problems.toString());
        }
        return models.stream().map(this::of).toList();
    }

    private HeldModel of(HeldModel one) {
        Probability share = shares.get(one.id());
        return share == null ? one : one.believed(share);
    }

    private static InputException wrong(String given, Problem problem) {
        return new InputException(ProblemText.of(OPTION, given, List.of(problem)));
    }
}
