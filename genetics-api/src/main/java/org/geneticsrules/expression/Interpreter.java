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
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.jspecify.annotations.Nullable;

/** Expresses one combination of expressions step by step, as the package description says. */
final class Interpreter {

    private enum Truth {
        HOLDS,
        FAILS,
        UNKNOWN
    }

    private final Model model;
    private final Map<String, String> expressions;
    private final Map<String, OwnState> own = new LinkedHashMap<>();
    private final Map<String, Truth> masks = new LinkedHashMap<>();

    private record OwnState(Optional<String> state, Optional<String> rule, List<String> reads) {}

    Interpreter(Model model, Map<String, String> expressions) {
        this.model = model;
        this.expressions = expressions;
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
                        inner, state.state(), state.rule(), state.reads(), Optional.empty(), List.of())));
        List<String> active = model.masks().keySet().stream()
                .filter(mask -> masks.get(mask) == Truth.HOLDS)
                .toList();
        return new Expressed(expressions, traces, active, Phenotype.from(seen));
    }

    private TraitTrace trace(String trait) {
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
            return new OwnState(Optional.empty(), Optional.empty(), List.of());
        }
        boolean unknown = false;
        for (Case one : rule.cases()) {
            Truth truth = truth(one.when());
            if (truth == Truth.HOLDS) {
                List<String> reads = one.when().names().stream()
                        .filter(name -> model.rules().containsKey(name))
                        .toList();
                return new OwnState(
                        Optional.of(((CaseState.Certain) one.gives()).state()), Optional.of(rule.pointer(one)), reads);
            }
            unknown |= truth == Truth.UNKNOWN;
        }
        Optional<Case> rest = unknown ? Optional.empty() : rule.otherwise();
        return new OwnState(
                rest.map(last -> ((CaseState.Certain) last.gives()).state()), rest.map(rule::pointer), readBy(rule));
    }

    /** Where no case holds, that rests on everything the cases read. */
    private List<String> readBy(TraitRule rule) {
        return rule.cases().stream()
                .flatMap(one -> one.when().names().stream())
                .filter(name -> model.rules().containsKey(name))
                .distinct()
                .toList();
    }

    private Truth truth(Condition condition) {
        boolean unknown = false;
        for (Map.Entry<String, Allowed> variable : condition.variables().entrySet()) {
            String name = variable.getKey();
            Optional<String> value = model.loci().containsKey(name)
                    ? Optional.of(Objects.requireNonNull(expressions.get(name), name))
                    : own(name).state();
            if (value.isPresent() && !variable.getValue().allows(value.get())) {
                return Truth.FAILS;
            }
            unknown |= value.isEmpty();
        }
        return unknown ? Truth.UNKNOWN : Truth.HOLDS;
    }
}
