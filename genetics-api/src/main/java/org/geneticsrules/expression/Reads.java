package org.geneticsrules.expression;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;

/**
 * What a question about some traits depends on: through cases, traits that cases read, and masks.
 *
 * <p>A condition that the season of the stage rules out is not followed. Where a condition asks for a season that the stage does not
 * state, or a progression for a count that it does not state, that is noted as a need.
 */
final class Reads {

    /**
     * A case that is not certain.
     *
     * @param rule the rule it belongs to
     * @param one the case
     * @param counts for a progression, its clock's counts at the stages looked at
     */
    record Uncertain(TraitRule rule, Case one, Set<Integer> counts) {
        String pointer() {
            return rule.pointer(one);
        }
    }

    private final Model model;
    private final Set<String> names = new LinkedHashSet<>();
    private final Map<String, Uncertain> uncertain = new LinkedHashMap<>();
    private final Map<String, Problem> needs = new LinkedHashMap<>();
    private boolean sex;

    private Reads(Model model) {
        this.model = model;
    }

    /** What looks depend on. */
    static Reads of(Model model, Collection<Look> looks) {
        Reads reads = new Reads(model);
        for (Look look : looks) {
            Visit visit = reads.new Visit(look.stage());
            look.traits().forEach(visit::shown);
        }
        return reads;
    }

    /** What a condition depends on, at any stage. */
    static Reads of(Model model, Condition condition) {
        Reads reads = new Reads(model);
        reads.new Visit(LifeStage.unstated()).condition(condition, "");
        return reads;
    }

    /** The loci read, in model order. */
    ImmutableSet<String> loci() {
        return model.loci().keySet().stream().filter(names::contains).collect(ImmutableSet.toImmutableSet());
    }

    /** Whether a condition reads the sex, or it is asked for. */
    boolean sex() {
        return sex;
    }

    /** The cases read whose states follow from chance, a count or a sum, by pointer; each after those that its condition reads. */
    Map<String, Uncertain> uncertain() {
        return uncertain;
    }

    /** What the stages would have to state but do not. */
    List<Problem> needs() {
        return ImmutableList.copyOf(needs.values());
    }

    /** The walk through the rules for one stage. */
    private final class Visit {
        private final LifeStage stage;
        private final Set<String> traits = new LinkedHashSet<>();

        Visit(LifeStage stage) {
            this.stage = stage;
        }

        void shown(String trait) {
            own(trait);
            for (Mask mask : model.masks().values()) {
                if (mask.covers().containsKey(trait)) {
                    condition(mask.when(), Pointer.of("masks", mask.id()));
                }
            }
        }

        void own(String trait) {
            if (trait.equals(Sex.VARIABLE)) {
                sex = true;
                return;
            }
            TraitRule rule = model.rules().get(trait);
            if (rule != null && traits.add(trait)) {
                for (Case one : rule.cases()) {
                    if (condition(one.when(), rule.pointer(one))) {
                        gives(rule, one);
                    }
                }
                rule.otherwise().ifPresent(last -> gives(rule, last));
            }
        }

        /** Follows a condition; false if the season rules it out. */
        boolean condition(Condition condition, String pointer) {
            Allowed seasons = condition.variables().get(LifeStage.SEASON);
            if (seasons != null && stage.season().isEmpty()) {
                need("season", pointer, "a stage that states the season");
            } else if (seasons != null && !seasons.allows(stage.season().orElseThrow())) {
                return false;
            }
            for (String name : condition.names()) {
                if (model.loci().containsKey(name)) {
                    names.add(name);
                } else if (!name.equals(LifeStage.SEASON)) {
                    own(name);
                }
            }
            return true;
        }

        private void gives(TraitRule rule, Case one) {
            if (one.gives() instanceof CaseState.Certain) {
                return;
            }
            Uncertain found =
                    uncertain.computeIfAbsent(rule.pointer(one), key -> new Uncertain(rule, one, new TreeSet<>()));
            if (one.gives() instanceof CaseState.Threshold sums) {
                names.addAll(sums.doses().keySet());
            }
            if (one.gives() instanceof CaseState.Progression chain) {
                String clock = chain.clock().word();
                stage.count(chain.clock())
                        .ifPresentOrElse(
                                found.counts()::add,
                                () -> need(
                                        clock,
                                        found.pointer(),
                                        "a stage that states the " + clock + ", for example \"" + clock + " 8\""));
            }
        }

        private void need(String what, String pointer, String expected) {
            String found = stage.equals(LifeStage.unstated()) ? "the stage is not stated" : "the stage is " + stage;
            needs.computeIfAbsent(
                    Objects.requireNonNull(what + " " + pointer),
                    key -> Problem.of(
                                    Stage.MEANING,
                                    "stage-needed",
                                    pointer,
                                    "what is asked depends on the " + what + " by the statement " + pointer + ", but "
                                            + found)
                            .expecting(expected));
        }
    }
}
