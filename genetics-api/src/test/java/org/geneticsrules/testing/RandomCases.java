package org.geneticsrules.testing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.trait.Clock;

/** Draws what cases give: about half of them a chance, until a model has as many draws as can still be listed. */
final class RandomCases {

    private final SplittableRandom random;

    /** Expressions by locus, for the doses of thresholds. */
    private final Map<String, List<String>> loci;

    private int left;

    /** Every path of a progression is listed, so there are few of them. */
    private int progressionsLeft = 2;

    RandomCases(SplittableRandom random, Map<String, List<String>> loci, int mostDraws) {
        this.random = random;
        this.loci = loci;
        this.left = mostDraws;
    }

    CaseState draw(List<String> states) {
        if (left == 0 || random.nextInt(9) < 3) {
            return new CaseState.Certain(RandomLocus.pick(random, states));
        }
        left--;
        int kind = random.nextInt(5);
        if (kind < 2 && progressionsLeft > 0) {
            progressionsLeft--;
            return progression(states);
        }
        return kind < 4 ? new CaseState.Chance(chances(states)) : threshold(states);
    }

    /** Small whole weights, 0 now and then, but seldom all but one. */
    private <T> Distribution<T> chances(List<T> outcomes) {
        Map<T, Integer> weights = new LinkedHashMap<>();
        for (T outcome : outcomes) {
            weights.put(outcome, random.nextInt(weights.size() < 2 && random.nextInt(8) > 0 ? 1 : 0, 4));
        }
        if (weights.values().stream().noneMatch(weight -> weight > 0)) {
            weights.put(outcomes.get(0), 1);
        }
        return Distribution.ofWeights(weights);
    }

    /** Steps lead on in half of the chains and anywhere in the others; a state without a row stays. */
    private CaseState progression(List<String> states) {
        boolean monotone = random.nextBoolean();
        Map<String, Distribution<String>> step = new LinkedHashMap<>();
        for (int i = 0; i < states.size(); i++) {
            boolean last = i == states.size() - 1;
            if (last ? !monotone && random.nextBoolean() : random.nextInt(5) > 0) {
                step.put(states.get(i), chances(monotone ? states.subList(i, states.size()) : states));
            }
        }
        Clock clock = RandomLocus.pick(random, List.of(Clock.values()));
        return new CaseState.Progression(
                clock, chances(states.subList(0, random.nextInt(1, states.size() + 1))), step, monotone);
    }

    private CaseState threshold(List<String> states) {
        Map<String, Map<String, Integer>> doses = new LinkedHashMap<>();
        loci.forEach((locus, expressions) -> {
            if (doses.isEmpty() || random.nextBoolean()) {
                Map<String, Integer> dose = new LinkedHashMap<>();
                expressions.forEach(expression -> {
                    if (random.nextInt(4) > 0) {
                        dose.put(expression, random.nextInt(-1, 3));
                    }
                });
                doses.put(locus, dose);
            }
        });
        Distribution<Integer> residual =
                random.nextInt(3) == 0 ? Distribution.certain(0) : chances(List.of(0, random.nextInt(-2, 0), 1));
        List<String> named = new ArrayList<>(states);
        String below = named.remove(random.nextInt(named.size()));
        Map<String, Integer> cuts = new LinkedHashMap<>();
        int cut = random.nextInt(-1, 2);
        for (String state : named) {
            cuts.put(state, cut);
            cut += random.nextInt(1, 3);
        }
        return new CaseState.Threshold(doses, residual, below, cuts);
    }
}
