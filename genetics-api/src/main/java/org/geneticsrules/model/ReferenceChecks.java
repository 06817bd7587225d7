package org.geneticsrules.model;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
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
        new GroupChecks(model, problems).references();
        model.groups.values().forEach(group -> support(group.evidence(), group.pointer()));
        model.viability.values().forEach(this::viability);
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
        absent(locus, pointer + "/absent");
        locus.mutation.forEach((from, rates) -> {
            String at = pointer + Pointer.of("mutation", from);
            known(alleles, from, "allele of locus " + locus.id, at);
            rates.keySet().forEach(to -> {
                known(alleles, to, "allele of locus " + locus.id, at + Pointer.of(to));
                Optional.ofNullable(locus.mutationEvidence
                                .getOrDefault(from, Map.of())
                                .get(to))
                        .ifPresent(id -> support(Optional.of(id), at + Pointer.of(to)));
            });
        });
    }

    private void absent(LocusBuilder locus, String at) {
        locus.absent.ifPresent(shown -> {
            known(locus.expressions(), shown, "expression of locus " + locus.id, at);
            Transmission way = model.transmission(locus.id);
            if (Stream.of(Sex.values()).allMatch(sex -> way.strands(sex) > 0)) {
                problems.add(
                        "never-absent",
                        at,
                        "locus " + locus.id + " is " + way.word()
                                + ", so no animal lacks it and nothing is shown instead",
                        "this only at loci of a group on the Y or W");
            }
        });
    }

    private void viability(Viability stated) {
        LocusBuilder locus = model.loci.get(stated.locus());
        if (locus == null) {
            problems.unknown(
                    "unknown-locus", stated.pointer() + "/locus", "locus", stated.locus(), model.loci.keySet());
        } else {
            int position = 0;
            for (String expression : stated.expressions()) {
                known(
                        locus.expressions(),
                        expression,
                        "expression of locus " + locus.id,
                        stated.pointer() + "/expressions/" + position++);
            }
        }
        support(stated.evidence(), stated.pointer());
    }

    private void dominance(LocusBuilder locus, DominanceBuilder stated, String pointer) {
        Collection<String> alleles = locus.alleles.keySet();
        Optional<String> partner = model.transmission(locus.id).partner();
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
            shown.second()
                    .filter(second -> !partner.equals(Optional.of(second)))
                    .ifPresent(second -> known(alleles, second, "allele of locus " + locus.id, at));
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
        List<String> states = model.statesOf(trait.trait).orElse(List.of());
        List<Case> cases = new ArrayList<>(trait.cases);
        trait.otherwise.ifPresent(cases::add);
        for (Case rule : cases) {
            String at = trait.otherwise.equals(Optional.of(rule))
                    ? pointer + "/otherwise"
                    : pointer + Pointer.of("cases", rule.id());
            condition(rule.when(), at + "/when");
            new CaseChecks(model, problems).references(rule.gives(), trait.trait, states, at);
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
            Optional<? extends List<String>> values = valuesOf(name);
            if (values.isEmpty()) {
                List<String> known = new ArrayList<>(model.loci.keySet());
                known.addAll(model.traits.keySet());
                problems.unknown("unknown-variable", at, "locus or modelled trait", name, known);
                continue;
            }
            String what = model.loci.containsKey(name) ? "expression of locus " + name : "state of " + name;
            if (name.equals(Sex.VARIABLE) || name.equals(LifeStage.SEASON)) {
                what = name;
            }
            String kind = what;
            variable.getValue().values().forEach(value -> known(values.get(), value, kind, at));
            if (variable.getValue().among(values.get()).isEmpty()) {
                problems.add("empty-condition", at, "the condition allows no value of " + name, "at least one value");
            }
        }
    }

    /** The values of a variable of conditions. */
    private Optional<? extends List<String>> valuesOf(String name) {
        LocusBuilder locus = model.loci.get(name);
        if (locus != null) {
            return Optional.of(locus.expressions());
        }
        return switch (name) {
            case Sex.VARIABLE -> Optional.of(Sex.words());
            case LifeStage.SEASON -> Optional.of(model.catalogue.seasons());
            default -> model.traits.containsKey(name) ? model.statesOf(name) : Optional.empty();
        };
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
