package org.geneticsrules.inference;

import com.google.common.base.Supplier;
import com.google.common.base.Suppliers;
import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.WeightedBox;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.RecordKinds;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.trait.Judgeable;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Reading;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Trait;

/**
 * Turns the records of animals into evidence about what they carry. What a look is evidence of is remembered.
 *
 * <p>Thread-safe.
 */
final class Records {

    private static final List<WeightedBox> ANYTHING =
            ImmutableList.of(new WeightedBox(Condition.always(), Probability.ONE));

    private static final Evidence NOTHING = new Evidence(ANYTHING, ImmutableList.of());

    private final CompiledModel compiled;
    private final Model model;
    private final Confusions confusions;
    private final Map<Look, Seen> looks = new HashMap<>();
    private final Map<List<Object>, Boolean> stages = new HashMap<>();
    private final Map<Several, Evidence> several = new HashMap<>();

    /** What was seen at one look, without its date and animal. */
    private record Look(LifeStage stage, Optional<String> light, Set<Phenotype> looks) {}

    /** Something that should be known of such looks. */
    private record Remark(String trait, Notice.Kind kind, String message) {}

    /**
     * What one look is evidence of.
     *
     * @param reading what of it is evidence, if anything is
     * @param remarks what should be known of it
     * @param alone the evidence, if there is no other
     */
    private record Seen(Optional<Reading> reading, List<Remark> remarks, Supplier<Evidence> alone) {}

    /** All records of an animal. */
    private record Several(List<Seen> seen, List<Evidence.Test> tests) {}

    Records(CompiledModel compiled, Confusions confusions) {
        this.compiled = compiled;
        this.model = compiled.model();
        this.confusions = confusions;
    }

    /** What should be known of the records of some animals. */
    synchronized List<Notice> notices(Members members) {
        RecordKinds kinds = members.recordKinds();
        List<List<Remark>> remarks = new ArrayList<>();
        for (int kind = 0; kind < kinds.count(); kind++) {
            List<Remark> of = new ArrayList<>();
            kinds.example(kind)
                    .ifPresent(one -> one.observations()
                            .forEach(seen -> of.addAll(seen(seen).remarks())));
            remarks.add(of);
        }
        List<Notice> notices = new ArrayList<>();
        for (int m = 0; m < members.all().size(); m++) {
            List<Remark> here = remarks.get(members.recordKind(m));
            if (!here.isEmpty()) {
                String id = members.all().get(m).recorded().orElseThrow().id();
                here.forEach(one -> notices.add(new Notice(id, one.trait(), one.kind(), one.message())));
            }
        }
        return notices;
    }

    /** The evidence of each animal; of one that is not recorded there is none. What is recorded alike is the same object. */
    synchronized List<Evidence> of(Members members) {
        RecordKinds kinds = members.recordKinds();
        Evidence[] ofKind = new Evidence[kinds.count()];
        for (int kind = 0; kind < ofKind.length; kind++) {
            ofKind[kind] = kinds.example(kind).map(this::of).orElse(NOTHING);
        }
        Evidence[] all = new Evidence[members.all().size()];
        for (int m = 0; m < all.length; m++) {
            all[m] = ofKind[members.recordKind(m)];
        }
        return Arrays.asList(all);
    }

    /** The evidence of one animal. */
    synchronized Evidence of(Individual individual) {
        List<Observation> observations = individual.observations();
        List<Seen> seen = new ArrayList<>(observations.size());
        observations.forEach(observation -> seen.add(seen(observation)));
        if (seen.size() == 1 && individual.tests().isEmpty()) {
            return Objects.requireNonNull(seen.get(0).alone().get());
        }
        List<Evidence.Test> tests = new ArrayList<>();
        for (GenotypeTest test : individual.tests()) {
            tests.add(new Evidence.Test(
                    test.locus(), test.pairs(model), test.error().toDouble()));
        }
        return several.computeIfAbsent(new Several(seen, tests), this::evidence);
    }

    private Evidence evidence(Several records) {
        List<Reading> readings = new ArrayList<>();
        records.seen().forEach(one -> one.reading().ifPresent(readings::add));
        if (readings.isEmpty() && records.tests().isEmpty()) {
            return NOTHING;
        }
        return new Evidence(readings.isEmpty() ? ANYTHING : compiled.evidence(readings, confusions), records.tests());
    }

    private Seen seen(Observation observation) {
        return looks.computeIfAbsent(
                new Look(observation.stage(), observation.light(), observation.looks()), this::seen);
    }

    private Seen seen(Look look) {
        List<Remark> remarks = new ArrayList<>();
        Optional<Reading> reading = reading(look, remarks);
        return new Seen(
                reading,
                ImmutableList.copyOf(remarks),
                Suppliers.memoize(() -> reading.isEmpty()
                        ? NOTHING
                        : new Evidence(compiled.evidence(List.of(reading.get()), confusions), ImmutableList.of())));
    }

    private Optional<Reading> reading(Look seen, List<Remark> remarks) {
        Set<String> told = new LinkedHashSet<>();
        for (String trait : seen.looks().iterator().next().traits()) {
            if (isEvidence(seen, trait, remarks)) {
                told.add(trait);
            }
        }
        if (told.isEmpty()) {
            return Optional.empty();
        }
        ImmutableSet.Builder<Phenotype> looks = ImmutableSet.builder();
        for (Phenotype look : seen.looks()) {
            Map<String, String> left = new LinkedHashMap<>(look.asMap());
            left.keySet().retainAll(told);
            looks.add(Phenotype.from(left));
        }
        return Optional.of(new Reading(seen.stage(), looks.build()));
    }

    private boolean isEvidence(Look seen, String trait, List<Remark> remarks) {
        if (trait.equals(Sex.VARIABLE)) {
            return true;
        }
        String name = model.catalogue().trait(trait).map(one -> one.id()).orElse(trait);
        if (!model.rules().containsKey(trait)) {
            remarks.add(new Remark(trait, Notice.Kind.NOT_MODELLED, "the model has no rule for " + name));
            return false;
        }
        LifeStage stage = seen.stage();
        Judgeable judgeable = model.catalogue().judgeable(trait, stage);
        if (judgeable == Judgeable.NO) {
            remarks.add(new Remark(trait, Notice.Kind.NOT_JUDGEABLE, name + " cannot be told so early"));
            return false;
        }
        Trait described = model.catalogue().trait(trait).orElseThrow();
        Judgeable lit = described.judgeable(seen.light());
        if (lit == Judgeable.NO) {
            remarks.add(new Remark(
                    trait,
                    Notice.Kind.NOT_JUDGEABLE,
                    name + " cannot be told in " + seen.light().orElseThrow() + ", only in "
                            + String.join(" or ", described.judgeableIn())));
            return false;
        }
        if (!needsNoMore(stage, trait)) {
            remarks.add(new Remark(
                    trait,
                    Notice.Kind.STAGE_MISSING,
                    name + " depends on the stage of life, which is not stated as far as needed"));
            return false;
        }
        if (judgeable == Judgeable.UNKNOWN) {
            remarks.add(new Remark(
                    trait,
                    Notice.Kind.TAKEN_AS_JUDGEABLE,
                    name + " is taken to have been recorded late enough to tell"));
        }
        if (lit == Judgeable.UNKNOWN) {
            remarks.add(new Remark(
                    trait,
                    Notice.Kind.TAKEN_AS_LIT,
                    name + " is taken to have been recorded in a light to tell it in"));
        }
        return true;
    }

    private boolean needsNoMore(LifeStage stage, String trait) {
        return stages.computeIfAbsent(List.of(stage, trait), key -> canBeTold(stage, trait));
    }

    private boolean canBeTold(LifeStage stage, String trait) {
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
    }
}
