package org.geneticsrules.model;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.trait.PlainWords;
import org.geneticsrules.trait.Sex;

/** Checks statements of viability and of mutation. */
final class ViabilityChecks {

    private final ModelBuilder model;
    private final Problems problems;

    ViabilityChecks(ModelBuilder model, Problems problems) {
        this.model = model;
        this.problems = problems;
    }

    void shape() {
        model.viability.values().forEach(one -> {
            PlainWords.check(one.id(), "statement of viability", one.pointer(), problems);
            if (one.expressions().isEmpty()) {
                problems.add(
                        "no-expressions",
                        one.pointer() + "/expressions",
                        "viability \"" + one.id() + "\" is about no expressions",
                        "at least one");
            }
        });
    }

    /** Each expression, sex and step is decided once; what is not decided is certain. */
    void meaning() {
        Map<String, String> decided = new LinkedHashMap<>();
        for (Viability one : model.viability.values()) {
            for (String expression : one.expressions()) {
                for (Sex sex : one.sex().map(List::of).orElse(List.of(Sex.values()))) {
                    if (one.decidesBirth()) {
                        decide(one, expression, sex, "birth", decided);
                    }
                    if (!one.scored().isOne()) {
                        decide(one, expression, sex, "scored", decided);
                    }
                }
            }
        }
        model.loci.values().forEach(this::mutation);
    }

    private void decide(Viability one, String expression, Sex sex, String step, Map<String, String> decided) {
        String what = Pointer.of(one.locus(), expression, step, sex.word());
        String other = decided.putIfAbsent(what, one.id());
        if (other != null) {
            problems.add(
                    "viability-decided-twice",
                    one.pointer() + "/" + step,
                    "the chance that " + sex.word() + "s showing " + expression + " at locus " + one.locus() + " are "
                            + (step.equals("birth") ? "born" : "scored") + " is stated by \"" + other + "\" and by \""
                            + one.id() + "\"",
                    "one statement");
        }
    }

    private void mutation(LocusBuilder locus) {
        locus.mutation.forEach((from, rates) -> {
            String at = Pointer.of("loci", locus.id, "mutation", from);
            if (rates.containsKey(from)) {
                problems.add(
                        "mutation-to-itself",
                        at + Pointer.of(from),
                        "allele " + from + " of locus " + locus.id + " cannot mutate to itself",
                        "rates to other alleles; the rest stays as it is");
            }
            Probability left = Probability.ONE;
            for (Probability rate : rates.values()) {
                if (rate.compareTo(left) > 0) {
                    problems.add(
                            "mutation-sum",
                            at,
                            "the rates at which allele " + from + " of locus " + locus.id + " mutates sum to "
                                    + Probability.total(rates.values()),
                            "rates that sum to at most 1");
                    return;
                }
                left = left.minus(rate);
            }
        });
    }
}
