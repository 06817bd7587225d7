package org.geneticsrules.inference;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.WeightedBox;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.trait.Judgeable;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Reading;
import org.geneticsrules.trait.Sex;

/** Turns the records of animals into evidence about what they carry. */
final class Records {

    private static final List<WeightedBox> ANYTHING =
            ImmutableList.of(new WeightedBox(Condition.always(), Probability.ONE));

    private final CompiledModel compiled;
    private final Model model;
    private final Confusions confusions;
    private final List<Notice> notices = new ArrayList<>();
    private final Map<List<Object>, Boolean> stages = new LinkedHashMap<>();

    Records(CompiledModel compiled, Confusions confusions) {
        this.compiled = compiled;
        this.model = compiled.model();
        this.confusions = confusions;
    }

    List<Notice> notices() {
        return notices;
    }

    /** The evidence of one animal; of one that is not recorded there is none. */
    Evidence of(Member member) {
        if (member.recorded().isEmpty()) {
            return new Evidence(ANYTHING, ImmutableList.of());
        }
        Individual individual = member.recorded().get();
        List<Reading> readings = new ArrayList<>();
        for (Observation observation : individual.observations()) {
            reading(individual, observation).ifPresent(readings::add);
        }
        List<Evidence.Test> tests = new ArrayList<>();
        for (GenotypeTest test : individual.tests()) {
            tests.add(new Evidence.Test(
                    test.locus(), test.pairs(model), test.error().toDouble()));
        }
        return new Evidence(readings.isEmpty() ? ANYTHING : compiled.evidence(readings, confusions), tests);
    }

    private Optional<Reading> reading(Individual individual, Observation observation) {
        Set<String> told = new LinkedHashSet<>();
        for (String trait : observation.traits()) {
            if (isEvidence(individual, observation.stage(), trait)) {
                told.add(trait);
            }
        }
        if (told.isEmpty()) {
            return Optional.empty();
        }
        ImmutableSet.Builder<Phenotype> looks = ImmutableSet.builder();
        for (Phenotype look : observation.looks()) {
            Map<String, String> left = new LinkedHashMap<>(look.asMap());
            left.keySet().retainAll(told);
            looks.add(Phenotype.from(left));
        }
        return Optional.of(new Reading(observation.stage(), looks.build()));
    }

    private boolean isEvidence(Individual individual, LifeStage stage, String trait) {
        if (trait.equals(Sex.VARIABLE)) {
            return true;
        }
        String name = model.catalogue().trait(trait).map(one -> one.id()).orElse(trait);
        if (!model.rules().containsKey(trait)) {
            note(individual, trait, Notice.Kind.NOT_MODELLED, "the model has no rule for " + name);
            return false;
        }
        Judgeable judgeable = model.catalogue().judgeable(trait, stage);
        if (judgeable == Judgeable.NO) {
            note(individual, trait, Notice.Kind.NOT_JUDGEABLE, name + " cannot be told so early");
            return false;
        }
        if (!needsNoMore(stage, trait)) {
            note(
                    individual,
                    trait,
                    Notice.Kind.STAGE_MISSING,
                    name + " depends on the stage of life, which is not stated as far as needed");
            return false;
        }
        if (judgeable == Judgeable.UNKNOWN) {
            note(
                    individual,
                    trait,
                    Notice.Kind.TAKEN_AS_JUDGEABLE,
                    name + " is taken to have been recorded late enough to tell");
        }
        return true;
    }

    private boolean needsNoMore(LifeStage stage, String trait) {
        return stages.computeIfAbsent(List.of(stage, trait), key -> {
            try {
                compiled.evidence(
                        List.of(new Reading(
                                stage,
                                Set.of(Phenotype.of(trait, model.states(trait).get(0))))),
                        Confusions.none());
                return true;
            } catch (ProblemsException lacking) {
                return false;
            }
        });
    }

    private void note(Individual individual, String trait, Notice.Kind kind, String message) {
        notices.add(new Notice(individual.id(), trait, kind, message));
    }
}
