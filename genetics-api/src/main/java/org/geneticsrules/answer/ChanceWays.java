package org.geneticsrules.answer;

import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.explanation.AnimalCase;
import org.geneticsrules.explanation.Reason;
import org.geneticsrules.explanation.Way;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Expressed;
import org.geneticsrules.expression.TraitTrace;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/** Goes through the ways in which chance may decide about one animal of known genotype, one by one, however many traits are asked for. */
final class ChanceWays {

    private final CompiledModel compiled;
    private final View view;
    private final Genotype genotype;
    private final Sex sex;

    ChanceWays(CompiledModel compiled, View view, Genotype genotype, Sex sex) {
        this.compiled = compiled;
        this.view = view;
        this.genotype = genotype;
        this.sex = sex;
    }

    /** The chances of what it shows, in the declared order of states, and the ways there as reasons. */
    Distribution<Phenotype> explain(List<Reason> reasons) {
        Map<String, AllelePair> pairs = new LinkedHashMap<>();
        Map<String, String> expressions = new LinkedHashMap<>();
        for (String name : compiled.lociRead(view.among(Census.CONCEIVED))) {
            Locus locus = compiled.model().locus(name);
            AllelePair pair =
                    genotype.pair(name).orElseGet(() -> locus.pairs(sex).get(0));
            pairs.put(name, pair);
            expressions.put(name, locus.expression(pair, sex));
        }
        Optional<Sex> told = compiled.dependsOnSex(view) ? Optional.of(sex) : Optional.empty();
        reasons.add(new AnimalCase(0, told, pairs, expressions, Probability.ONE));
        Map<Phenotype, Probability> chances = new LinkedHashMap<>();
        compiled.express(expressions, sex, view.stage(), view.traits()).asMap().forEach((animal, chance) -> {
            reasons.add(way(animal, chance));
            chances.merge(animal.phenotype(), chance, Probability::plus);
        });
        List<Phenotype> ordered = new ArrayList<>(chances.keySet());
        ordered.sort(this::compare);
        Map<Phenotype, Probability> inOrder = new LinkedHashMap<>();
        ordered.forEach(look -> inOrder.put(look, Objects.requireNonNull(chances.get(look))));
        return Distribution.of(inOrder);
    }

    /** Trait by trait, in the declared order of states; a trait without claim comes last. */
    private int compare(Phenotype one, Phenotype other) {
        for (String trait : view.traits()) {
            List<String> states =
                    trait.equals(Sex.VARIABLE) ? Sex.words() : compiled.model().states(trait);
            int mine = one.state(trait).map(states::indexOf).orElse(states.size());
            int theirs = other.state(trait).map(states::indexOf).orElse(states.size());
            if (mine != theirs) {
                return Integer.compare(mine, theirs);
            }
        }
        return 0;
    }

    private Way way(Expressed animal, Probability chance) {
        Condition needed = Condition.always();
        Map<String, Probability> factors = new LinkedHashMap<>();
        Set<String> masks = view.traits().stream()
                .map(trait -> Objects.requireNonNull(animal.traits().get(trait)))
                .flatMap(trace -> trace.masks().stream())
                .collect(ImmutableSet.toImmutableSet());
        for (TraitTrace trace : animal.traits().values()) {
            if (trace.draw().isPresent()) {
                String statement = trace.rule().orElseThrow();
                needed = needed.and(statement, trace.draw().get());
                factors.put(
                        statement, chances(statement).probability(trace.draw().get()));
            }
        }
        return new Way(animal.phenotype(), 0, needed, factors, chance, new ArrayList<>(masks));
    }

    /** What the case of a statement leaves to chance. */
    private Distribution<String> chances(String statement) {
        CaseState gives = caseAt(compiled.model(), statement).orElseThrow().gives();
        LifeStage stage = view.stage();
        if (gives instanceof CaseState.Progression chain) {
            return chain.at(stage.count(chain.clock()).orElseThrow());
        }
        return gives instanceof CaseState.Threshold sums
                ? sums.residual().map(String::valueOf)
                : ((CaseState.Chance) gives).chances();
    }

    /** The case or complement that a statement is. */
    static Optional<Case> caseAt(Model model, String pointer) {
        for (TraitRule rule : model.rules().values()) {
            for (Case one : rule.allCases()) {
                if (rule.pointer(one).equals(pointer)) {
                    return Optional.of(one);
                }
            }
        }
        return Optional.empty();
    }
}
