package org.geneticsrules.expression;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.model.Viability;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;

/** Finds what no animal reaches: expressions, statements, and states. */
final class Reaching {

    private final Survey survey;
    private final Model model;
    private final List<Completeness.Unreached> found = new ArrayList<>();

    Reaching(Survey survey) {
        this.survey = survey;
        this.model = survey.model();
    }

    List<Completeness.Unreached> find() {
        model.loci().values().forEach(this::locus);
        model.viability().values().forEach(this::viability);
        model.rules().values().forEach(this::rule);
        for (Mask mask : model.masks().values()) {
            String pointer = Pointer.of("masks", mask.id());
            survey.nodes().charge(pointer);
            int active = survey.rules().condition(mask.when(), LifeStage.unstated());
            holds(Completeness.Part.MASK, pointer, mask.id(), active);
        }
        return found;
    }

    private void locus(Locus locus) {
        Set<String> shown = new LinkedHashSet<>();
        Set<String> deciding = new LinkedHashSet<>();
        for (Sex sex : Sex.values()) {
            shown.addAll(Survey.expressions(locus, sex));
            locus.pairs(sex).forEach(pair -> deciding.addAll(locus.decidedBy(pair, sex)));
        }
        for (int i = 0; i < locus.expressions().size(); i++) {
            String expression = locus.expressions().get(i);
            if (!shown.contains(expression)) {
                add(
                        Completeness.Part.EXPRESSION,
                        Pointer.of("loci", locus.id(), "expressions", String.valueOf(i)),
                        expression,
                        true);
            }
        }
        String dominance = Pointer.of("loci", locus.id(), "dominance") + "/";
        model.statements().forEach((pointer, statement) -> {
            if (pointer.startsWith(dominance) && !deciding.contains(pointer)) {
                add(Completeness.Part.DOMINANCE, pointer, statement.text(), false);
            }
        });
    }

    private void viability(Viability one) {
        Locus locus = model.locus(one.locus());
        boolean any = false;
        for (Sex sex : Sex.values()) {
            any |= one.sex().orElse(sex) == sex
                    && Survey.expressions(locus, sex).stream().anyMatch(one.expressions()::contains);
        }
        if (!any) {
            add(Completeness.Part.VIABILITY, one.pointer(), one.id(), true);
        }
    }

    private void rule(TraitRule rule) {
        for (Case one : rule.cases()) {
            survey.nodes().charge(rule.pointer(one));
            int truth = survey.rules().condition(one.when(), LifeStage.unstated());
            given(rule, one, Completeness.Part.CASE, truth);
        }
        rule.otherwise()
                .ifPresent(rest -> given(
                        rule, rest, Completeness.Part.OTHERWISE, survey.rules().rest(rule, LifeStage.unstated())));
        states(rule);
    }

    private void given(TraitRule rule, Case one, Completeness.Part part, int truth) {
        String pointer = rule.pointer(one);
        boolean holds = holds(part, pointer, one.id(), truth);
        if (one.gives() instanceof CaseState.Progression chain) {
            for (String state : chain.step().keySet()) {
                if (!chain.states().contains(state)) {
                    String row = pointer + Pointer.of("progression", "step", state);
                    add(Completeness.Part.PROGRESSION_STATE, row, state, false);
                }
            }
        }
        if (holds && one.gives() instanceof CaseState.Threshold sums) {
            int given = survey.rules().given(rule, one, truth, LifeStage.unstated());
            BitSet reached = survey.reached(given);
            BitSet elsewhere = survey.reachedUnderAnyDominance(given);
            for (String state : rule.states()) {
                int rank = rule.states().indexOf(state);
                if (sums.states().contains(state) && !reached.get(rank)) {
                    String at = state.equals(sums.below()) && !sums.cuts().containsKey(state)
                            ? Pointer.of("threshold", "below")
                            : Pointer.of("threshold", "cuts", state);
                    add(Completeness.Part.THRESHOLD_STATE, pointer + at, state, elsewhere.get(rank));
                }
            }
        }
    }

    private boolean holds(Completeness.Part part, String pointer, String name, int truth) {
        boolean holds = survey.reached(truth).get(RuleDiagrams.HOLDS);
        if (!holds) {
            add(part, pointer, name, survey.reachedUnderAnyDominance(truth).get(RuleDiagrams.HOLDS));
        }
        return holds;
    }

    private void states(TraitRule rule) {
        String pointer = Pointer.of("traits", rule.trait());
        survey.nodes().charge(pointer);
        int look = survey.look(rule.trait());
        BitSet reached = survey.reached(look);
        BitSet born = survey.reachedBorn(look);
        Optional<BitSet> elsewhere = Optional.empty();
        for (int state = 0; state < rule.states().size(); state++) {
            if (!reached.get(state)) {
                elsewhere = elsewhere.or(() -> Optional.of(survey.reachedUnderAnyDominance(look)));
                add(
                        Completeness.Part.STATE,
                        pointer,
                        rule.states().get(state),
                        elsewhere.orElseThrow().get(state));
            } else if (!born.get(state)) {
                add(Completeness.Part.UNBORN_STATE, pointer, rule.states().get(state), false);
            }
        }
    }

    private void add(Completeness.Part part, String pointer, String name, boolean underOtherDominance) {
        found.add(new Completeness.Unreached(part, pointer, name, underOtherDominance));
    }
}
