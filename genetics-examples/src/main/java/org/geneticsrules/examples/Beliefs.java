package org.geneticsrules.examples;

import java.util.List;
import java.util.function.Supplier;
import org.geneticsrules.answer.compared.HeldModel;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Stage;

/** What is stated of models before litters are looked at: what is believed of them, and how many of their numbers were fitted. */
final class Beliefs {

    private static final String BELIEF = "--belief";
    private static final String FITTED = "--fitted";
    private static final int MOST_FITTED = 1000;

    private final PerModel<Probability> shares;
    private final PerModel<Integer> numbers;

    private Beliefs(PerModel<Probability> shares, PerModel<Integer> numbers) {
        this.shares = shares;
        this.numbers = numbers;
    }

    /** Nothing is stated: all are believed in alike, and none was fitted. */
    static Supplier<Beliefs> none(Asked asked) {
        return read(asked, List.of(), List.of());
    }

    /** Reads shares of belief and counts of fitted numbers. */
    static Supplier<Beliefs> read(Asked asked, List<String> shares, List<String> numbers) {
        Supplier<PerModel<Probability>> believed =
                asked.read(() -> PerModel.read(BELIEF, shares, "share", share -> Inputs.chance(BELIEF, share)));
        Supplier<PerModel<Integer>> fitted = asked.read(() -> PerModel.read(FITTED, numbers, "number", Beliefs::count));
        return () -> new Beliefs(believed.get(), fitted.get());
    }

    private static int count(String given) {
        try {
            return Inputs.count(FITTED, Integer.parseInt(given), 0, MOST_FITTED);
        } catch (NumberFormatException e) {
            Problem problem = Problem.of(Stage.SYNTAX, "count-syntax", "", "\"" + given + "\" is no whole number")
                    .expecting("how many numbers of the model were fitted, for example \"my-hypothesis=2\"");
            throw new InputException(ProblemText.of(FITTED, given, List.of(problem)));
        }
    }

    /** The models with what is stated of them; a model that nobody asks about is refused, and so is belief in none. */
    List<HeldModel> of(List<HeldModel> models) {
        shares.check(models);
        numbers.check(models);
        List<HeldModel> stated = models.stream().map(this::of).toList();
        if (stated.stream().allMatch(one -> one.prior().isZero())) {
            throw new InputException(
                    "problem: " + BELIEF + ": no model is believed in; expected a share above 0 for one\n");
        }
        return stated;
    }

    private HeldModel of(HeldModel one) {
        HeldModel believed = shares.of(one).map(one::believed).orElse(one);
        return numbers.of(one).map(believed::fitted).orElse(believed);
    }
}
