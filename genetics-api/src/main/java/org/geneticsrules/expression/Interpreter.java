package org.geneticsrules.expression;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.jspecify.annotations.Nullable;

/**
 * Expresses one combination of expressions step by step, as the package description says. Draws are decided by a {@link Chooser} where
 * they are reached; a chance that is 1 is no draw.
 */
final class Interpreter {

    private enum Truth {
        HOLDS,
        FAILS,
        UNKNOWN
    }

    private final Model model;
    private final Map<String, String> expressions;
    private final Optional<Sex> sex;
    private final LifeStage stage;
    private final Chooser chooser;
    private final Map<String, OwnState> own = new LinkedHashMap<>();
    private final Map<String, Truth> masks = new LinkedHashMap<>();

    private record OwnState(Optional<String> state, Optional<String> rule, List<String> reads, Optional<String> draw) {}

    /** What a case makes of the trait, and the outcome of its draw. */
    private record Given(String state, Optional<String> draw) {}

    /**
     * Prepares one animal.
     *
     * @param model the rules
     * @param expressions what it shows at each locus that is read
     * @param sex its sex; may be empty only where it makes no difference
     * @param stage when it is looked at; states all that is needed
     * @param chooser decides its draws
     */
    Interpreter(Model model, Map<String, String> expressions, Optional<Sex> sex, LifeStage stage, Chooser chooser) {
        this.model = model;
        this.expressions = expressions;
        this.sex = sex;
        this.stage = stage;
        this.chooser = chooser;
    }

    Expressed express(Collection<String> asked) {
        Map<String, String> seen = new LinkedHashMap<>();
        Map<String, TraitTrace> traces = new LinkedHashMap<>();
        for (String trait : asked) {
            TraitTrace trace = trace(trait);
            traces.put(trait, trace);
            trace.shown().ifPresent(state -> seen.put(trait, state));
        }
        own.forEach((trait, state) -> traces.computeIfAbsent(
                trait,
                inner -> new TraitTrace(
                        inner, state.state(), state.rule(), state.reads(), state.draw(), Optional.empty(), List.of())));
        List<String> active = model.masks().keySet().stream()
                .filter(mask -> masks.get(mask) == Truth.HOLDS)
                .toList();
        return new Expressed(expressions, traces, active, Phenotype.from(seen));
    }

    private TraitTrace trace(String trait) {
        if (trait.equals(Sex.VARIABLE)) {
            Optional<String> found = Optional.of(sexWord());
            return new TraitTrace(trait, found, Optional.empty(), List.of(), Optional.empty(), found, List.of());
        }
        OwnState beneath = own(trait);
        List<Mask> active = new ArrayList<>();
        boolean unknown = false;
        for (Mask mask : model.masks().values()) {
            if (mask.covers().containsKey(trait)) {
                Truth truth = masks.computeIfAbsent(mask.id(), id -> truth(mask.when()));
                unknown |= truth == Truth.UNKNOWN;
                if (truth == Truth.HOLDS) {
                    active.add(mask);
                }
            }
        }
        List<Mask> top = active.stream()
                .filter(mask -> active.stream().noneMatch(other -> model.isOver(other.id(), mask.id())))
                .toList();
        Optional<String> shown = unknown ? Optional.empty() : shown(trait, beneath.state(), top);
        return new TraitTrace(
                trait,
                beneath.state(),
                beneath.rule(),
                beneath.reads(),
                beneath.draw(),
                shown,
                top.stream().map(Mask::id).toList());
    }

    /** Masks that decide together agree where both are constant or the own state is known; the model's check saw to that. */
    private static Optional<String> shown(String trait, Optional<String> beneath, List<Mask> top) {
        if (top.isEmpty()) {
            return beneath;
        }
        for (Mask mask : top) {
            Mask.Cover cover = Objects.requireNonNull(mask.covers().get(trait));
            if (cover.constant().isPresent()) {
                return cover.constant();
            }
        }
        Mask.Cover cover = Objects.requireNonNull(top.get(0).covers().get(trait));
        return beneath.map(cover::shown);
    }

    private OwnState own(String trait) {
        OwnState known = own.get(trait);
        if (known != null) {
            return known;
        }
        OwnState found = evaluate(model.rules().get(trait));
        own.put(trait, found);
        return found;
    }

    private OwnState evaluate(@Nullable TraitRule rule) {
        if (rule == null) {
            return new OwnState(Optional.empty(), Optional.empty(), List.of(), Optional.empty());
        }
        boolean unknown = false;
        for (Case one : rule.cases()) {
            Truth truth = truth(one.when());
            if (truth == Truth.HOLDS) {
                List<String> reads = one.when().names().stream()
                        .filter(name -> model.rules().containsKey(name))
                        .toList();
                return decided(rule, one, reads);
            }
            unknown |= truth == Truth.UNKNOWN;
        }
        if (unknown || rule.otherwise().isEmpty()) {
            return new OwnState(Optional.empty(), Optional.empty(), readBy(rule), Optional.empty());
        }
        return decided(rule, rule.otherwise().get(), readBy(rule));
    }

    private OwnState decided(TraitRule rule, Case one, List<String> reads) {
        Given given = given(rule.pointer(one), one.gives());
        return new OwnState(Optional.of(given.state()), Optional.of(rule.pointer(one)), reads, given.draw());
    }

    private Given given(String pointer, CaseState gives) {
        if (gives instanceof CaseState.Certain certain) {
            return new Given(certain.state(), Optional.empty());
        }
        if (gives instanceof CaseState.Threshold sums) {
            Optional<String> draw = draw(pointer, sums.residual().map(String::valueOf));
            int sum = draw.map(Integer::valueOf)
                    .orElseGet(() -> sums.residual().outcomes().iterator().next());
            for (Map.Entry<String, Map<String, Integer>> dose : sums.doses().entrySet()) {
                sum += dose.getValue().getOrDefault(expression(dose.getKey()), 0);
            }
            return new Given(sums.state(sum), draw);
        }
        Distribution<String> chances = gives instanceof CaseState.Progression chain
                ? chain.at(stage.count(chain.clock()).orElseThrow())
                : ((CaseState.Chance) gives).chances();
        Optional<String> draw = draw(pointer, chances);
        return new Given(draw.orElseGet(() -> chances.outcomes().iterator().next()), draw);
    }

    private Optional<String> draw(String pointer, Distribution<String> chances) {
        return chances.outcomes().size() == 1 ? Optional.empty() : Optional.of(chooser.choose(pointer, chances));
    }

    /** Where no case holds, that rests on everything the cases read. */
    private List<String> readBy(TraitRule rule) {
        return rule.cases().stream()
                .flatMap(one -> one.when().names().stream())
                .filter(name -> model.rules().containsKey(name))
                .distinct()
                .toList();
    }

    /** What is certain of an animal is looked at first, so that no draw is made for a condition that fails anyway. */
    private Truth truth(Condition condition) {
        for (Map.Entry<String, Allowed> variable : condition.variables().entrySet()) {
            String name = variable.getKey();
            if (name.equals(LifeStage.SEASON)
                    && !variable.getValue().allows(stage.season().orElseThrow())) {
                return Truth.FAILS;
            }
        }
        for (Map.Entry<String, Allowed> variable : condition.variables().entrySet()) {
            String name = variable.getKey();
            Allowed allowed = variable.getValue();
            if (name.equals(Sex.VARIABLE)
                    ? !allowed.allows(sexWord())
                    : model.loci().containsKey(name) && !allowed.allows(expression(name))) {
                return Truth.FAILS;
            }
        }
        boolean unknown = false;
        for (Map.Entry<String, Allowed> variable : condition.variables().entrySet()) {
            if (isTrait(variable.getKey())) {
                Optional<String> value = own(variable.getKey()).state();
                if (value.isPresent() && !variable.getValue().allows(value.get())) {
                    return Truth.FAILS;
                }
                unknown |= value.isEmpty();
            }
        }
        return unknown ? Truth.UNKNOWN : Truth.HOLDS;
    }

    private boolean isTrait(String name) {
        return !name.equals(Sex.VARIABLE)
                && !name.equals(LifeStage.SEASON)
                && !model.loci().containsKey(name);
    }

    private String expression(String locus) {
        return Objects.requireNonNull(expressions.get(locus), locus);
    }

    private String sexWord() {
        return sex.orElseThrow(() -> new IllegalArgumentException(
                        "what is asked depends on the sex of the animal, which is not given"))
                .word();
    }
}
