package org.geneticsrules.model;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Trait;

/** Checks that every name in a model refers to something. */
final class ReferenceChecks {

    private final ModelBuilder model;
    private final Problems problems;

    ReferenceChecks(ModelBuilder model, Problems problems) {
        this.model = model;
        this.problems = problems;
    }

    void run() {
        model.catalogueReference.ifPresent(reference -> {
            if (!reference.means(model.catalogue.reference())) {
                problems.add(
                        "other-catalogue",
                        "/catalogue",
                        "the model was written for catalogue " + reference + ", but was given "
                                + model.catalogue.reference());
            }
        });
        model.loci.values().forEach(this::locus);
        model.traits.values().forEach(this::trait);
        model.masks.values().forEach(this::mask);
        model.populations.values().forEach(this::population);
        model.notModelled.keySet().forEach(this::notModelled);
    }

    private void locus(LocusBuilder locus) {
        String pointer = Pointer.of("loci", locus.id);
        Collection<String> alleles = locus.alleles.keySet();
        locus.wildType.ifPresent(name -> known(alleles, name, "allele of locus " + locus.id, pointer + "/wildType"));
        for (Sex sex : Sex.values()) {
            if (sex == Sex.FEMALE || !locus.bySex.isEmpty()) {
                dominance(locus, locus.dominance(sex), locus.dominancePointer(sex));
            }
        }
    }

    private void dominance(LocusBuilder locus, DominanceBuilder stated, String pointer) {
        Collection<String> alleles = locus.alleles.keySet();
        for (int i = 0; i < stated.order.size(); i++) {
            Dominance.Order order = stated.order.get(i);
            String at = pointer + "/order/" + i;
            known(alleles, order.dominant(), "allele of locus " + locus.id, at);
            known(alleles, order.recessive(), "allele of locus " + locus.id, at);
            support(order.evidence(), at);
        }
        for (Dominance.Shows shown : stated.shows) {
            String at = pointer + Pointer.of("shows", shown.key());
            known(alleles, shown.first(), "allele of locus " + locus.id, at);
            shown.second().ifPresent(second -> known(alleles, second, "allele of locus " + locus.id, at));
            known(locus.expressions(), shown.expression(), "expression of locus " + locus.id, at);
            support(shown.evidence(), at);
        }
        support(stated.evidence, pointer);
    }

    private void trait(TraitBuilder trait) {
        String pointer = Pointer.of("traits", trait.trait);
        Optional<Trait> listed = model.catalogue.trait(trait.trait);
        if (trait.innerStates.isPresent() && listed.isPresent()) {
            problems.add(
                    "inner-trait-listed",
                    pointer,
                    "the inner trait \"" + trait.trait + "\" has the name of a trait of the catalogue");
        }
        if (trait.innerStates.isEmpty() && listed.isEmpty()) {
            problems.unknown(
                    "unknown-trait",
                    pointer,
                    "trait",
                    trait.trait,
                    model.catalogue.traits().keySet());
            return;
        }
        List<String> states = statesOf(trait.trait).orElse(List.of());
        List<Case> cases = new ArrayList<>(trait.cases);
        trait.otherwise.ifPresent(cases::add);
        for (Case rule : cases) {
            String at = trait.otherwise.equals(Optional.of(rule))
                    ? pointer + "/otherwise"
                    : pointer + Pointer.of("cases", rule.id());
            condition(rule.when(), at + "/when");
            rule.gives().states().forEach(state -> known(states, state, "state of " + trait.trait, at));
            support(rule.evidence(), at);
        }
        support(trait.evidence, pointer);
    }

    private void mask(Mask mask) {
        String pointer = Pointer.of("masks", mask.id());
        condition(mask.when(), pointer + "/when");
        mask.covers().forEach((trait, cover) -> {
            String at = pointer + Pointer.of("covers", trait);
            Optional<Trait> listed = model.catalogue.trait(trait);
            if (listed.isEmpty()) {
                problems.unknown(
                        "unknown-trait",
                        at,
                        "trait",
                        trait,
                        model.catalogue.traits().keySet());
                return;
            }
            List<String> states = listed.get().states();
            cover.constant().ifPresent(shown -> known(states, shown, "state of " + trait, at));
            cover.changes().forEach((own, shown) -> {
                known(states, own, "state of " + trait, at);
                known(states, shown, "state of " + trait, at);
            });
        });
        mask.over().forEach(other -> known(model.masks.keySet(), other, "mask", pointer + "/over"));
        support(mask.evidence(), pointer);
    }

    private void population(ModelBuilder.PopulationBuilder population) {
        String pointer = Pointer.of("populations", population.id);
        population.frequencies.forEach((name, alleles) -> {
            String at = pointer + Pointer.of("frequencies", name);
            LocusBuilder locus = model.loci.get(name);
            if (locus == null) {
                problems.unknown("unknown-locus", at, "locus", name, model.loci.keySet());
                return;
            }
            alleles.keySet().forEach(allele -> known(locus.alleles.keySet(), allele, "allele of locus " + name, at));
            for (String allele : locus.alleles.keySet()) {
                if (!alleles.containsKey(allele)) {
                    problems.add(
                            "missing-frequency",
                            at,
                            "population \"" + population.id + "\" gives no frequency of allele " + allele + " of locus "
                                    + name,
                            "a frequency for every allele, 0 where it is thought absent");
                }
            }
        });
        support(population.evidence, pointer);
    }

    private void notModelled(String trait) {
        String at = Pointer.of("notModelled", trait);
        known(model.catalogue.traits().keySet(), trait, "trait", at);
        if (model.traits.containsKey(trait)) {
            problems.add(
                    "both-modelled-and-not", at, "the trait \"" + trait + "\" has a rule and a reason for having none");
        }
    }

    private void condition(Condition condition, String pointer) {
        for (Map.Entry<String, Allowed> variable : condition.variables().entrySet()) {
            String name = variable.getKey();
            String at = pointer + Pointer.of(name);
            LocusBuilder locus = model.loci.get(name);
            Optional<? extends List<String>> values =
                    locus != null ? Optional.of(locus.expressions()) : modelledStatesOf(name);
            if (values.isEmpty()) {
                List<String> known = new ArrayList<>(model.loci.keySet());
                known.addAll(model.traits.keySet());
                problems.unknown("unknown-variable", at, "locus or modelled trait", name, known);
                continue;
            }
            String what = (locus != null ? "expression of locus " : "state of ") + name;
            variable.getValue().values().forEach(value -> known(values.get(), value, what, at));
            if (variable.getValue().among(values.get()).isEmpty()) {
                problems.add("empty-condition", at, "the condition allows no value of " + name, "at least one value");
            }
        }
    }

    private Optional<List<String>> modelledStatesOf(String trait) {
        return model.traits.containsKey(trait) ? statesOf(trait) : Optional.empty();
    }

    private Optional<List<String>> statesOf(String trait) {
        TraitBuilder rule = model.traits.get(trait);
        Optional<List<String>> inner = rule == null ? Optional.empty() : rule.innerStates;
        return inner.isPresent() ? inner : model.catalogue.trait(trait).map(Trait::states);
    }

    private void support(Optional<String> evidence, String pointer) {
        evidence.ifPresent(id -> known(model.evidence.keySet(), id, "evidence", pointer + "/evidence"));
    }

    private void known(Collection<String> names, String name, String what, String pointer) {
        if (!names.contains(name)) {
            String kind = what.replaceFirst(" of .*", "").replace(' ', '-');
            problems.unknown("unknown-" + kind, pointer, what, name, names);
        }
    }
}
