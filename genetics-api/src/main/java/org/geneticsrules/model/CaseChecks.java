package org.geneticsrules.model;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problems;

/** Checks what cases make of a trait: that its states exist, and that steps and cuts run the way they should. */
final class CaseChecks {

    /** Sums of so large doses over all loci that a document may hold still fit an int. */
    private static final int MOST = 1_000_000;

    private final ModelBuilder model;
    private final Problems problems;

    CaseChecks(ModelBuilder model, Problems problems) {
        this.model = model;
        this.problems = problems;
    }

    /** Doses, residual amounts and cuts are small whole numbers. */
    void shape(CaseState gives, String at) {
        if (gives instanceof CaseState.Threshold threshold) {
            String in = at + "/threshold";
            threshold
                    .doses()
                    .forEach((locus, doses) -> doses.forEach(
                            (expression, dose) -> dose(dose, in + Pointer.of("doses", locus, expression))));
            threshold.residual().outcomes().forEach(amount -> dose(amount, in + Pointer.of("residual", "" + amount)));
            threshold.cuts().forEach((state, cut) -> dose(cut, in + Pointer.of("cuts", state)));
        }
    }

    private void dose(int number, String at) {
        if (Math.abs((long) number) > MOST) {
            problems.add("dose-range", at, number + " is too large to be summed", "-" + MOST + " to " + MOST);
        }
    }

    /** Names of states, loci and expressions. */
    void references(CaseState gives, String trait, Collection<String> states, String at) {
        if (gives instanceof CaseState.Certain certain) {
            state(certain.state(), trait, states, at);
        } else if (gives instanceof CaseState.Chance chance) {
            each(chance.chances().outcomes(), trait, states, at + "/chance");
        } else if (gives instanceof CaseState.Progression progression) {
            String in = at + "/progression";
            each(progression.start().outcomes(), trait, states, in + "/start");
            progression.step().forEach((from, to) -> {
                String step = in + Pointer.of("step", from);
                state(from, trait, states, step);
                each(to.outcomes(), trait, states, step);
            });
        } else if (gives instanceof CaseState.Threshold threshold) {
            String in = at + "/threshold";
            threshold.doses().forEach((locus, doses) -> doses(locus, doses, in + Pointer.of("doses", locus)));
            state(threshold.below(), trait, states, in + "/below");
            each(threshold.cuts().keySet(), trait, states, in + "/cuts");
        }
    }

    private void doses(String name, Map<String, Integer> doses, String at) {
        LocusBuilder locus = model.loci.get(name);
        if (locus == null) {
            problems.unknown("unknown-locus", at, "locus", name, model.loci.keySet());
            return;
        }
        List<String> expressions = locus.expressions();
        for (String expression : doses.keySet()) {
            if (!expressions.contains(expression)) {
                problems.unknown(
                        "unknown-expression",
                        at + Pointer.of(expression),
                        "expression of locus " + name,
                        expression,
                        expressions);
            }
        }
    }

    private void each(Collection<String> named, String trait, Collection<String> states, String at) {
        named.forEach(state -> state(state, trait, states, at + Pointer.of(state)));
    }

    private void state(String state, String trait, Collection<String> states, String at) {
        if (!states.contains(state)) {
            problems.unknown("unknown-state", at, "state of " + trait, state, states);
        }
    }

    /** Steps that never go back where that is said, and cuts that ascend. */
    void meaning() {
        for (TraitBuilder trait : model.traits.values()) {
            List<String> states = model.statesOf(trait.trait).orElse(List.of());
            String pointer = Pointer.of("traits", trait.trait);
            trait.cases.forEach(one -> meaning(one.gives(), states, pointer + Pointer.of("cases", one.id())));
            trait.otherwise.ifPresent(rest -> meaning(rest.gives(), states, pointer + "/otherwise"));
        }
    }

    private void meaning(CaseState gives, List<String> states, String at) {
        if (gives instanceof CaseState.Progression progression && progression.monotone()) {
            progression
                    .step()
                    .forEach((from, next) -> next.outcomes().stream()
                            .filter(to -> states.indexOf(to) < states.indexOf(from))
                            .forEach(to -> problems.add(
                                    "backward-step",
                                    at + Pointer.of("progression", "step", from, to),
                                    "the step from " + from + " back to " + to + " has a chance of "
                                            + next.probability(to)
                                            + ", although the progression is said to be monotone",
                                    "steps to states declared later: " + String.join(", ", states))));
        } else if (gives instanceof CaseState.Threshold threshold) {
            Optional<Integer> before = Optional.empty();
            for (Map.Entry<String, Integer> cut : threshold.cuts().entrySet()) {
                if (before.isPresent() && cut.getValue() <= before.get()) {
                    problems.add(
                            "cuts-order",
                            at + Pointer.of("threshold", "cuts", cut.getKey()),
                            "the cut " + cut.getValue() + " of " + cut.getKey() + " does not lie above the cut "
                                    + before.get() + " before it",
                            "cuts in ascending order");
                }
                before = Optional.of(cut.getValue());
            }
        }
    }
}
