package org.geneticsrules.answer.recorded;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.geneticsrules.answer.Assumption;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.NamedRecords.Reading;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.trait.Judgeable;
import org.geneticsrules.trait.Sex;

/** What has to be said of the names that some animals were called by, where these are records of their looks. */
final class NamesTold {

    private final Ground ground;
    private final List<Reading> used = new ArrayList<>();
    private final Map<String, Set<String>> remarks = new LinkedHashMap<>();
    private final Map<String, Set<String>> nothing = new LinkedHashMap<>();

    NamesTold(Ground ground, Pedigree kindred) {
        this.ground = ground;
        for (Individual one : kindred.individuals().values()) {
            if (!one.names().isEmpty() && ground.names().isEmpty()) {
                add(nothing, "no vocabulary was at hand to read them", one.id());
            }
            ground.names().ifPresent(read -> read.of(one.id()).forEach(this::add));
        }
    }

    private void add(Reading reading) {
        if (counts(reading)) {
            used.add(reading);
        }
        boolean silent = reading.looks().isEmpty();
        List<String> why = new ArrayList<>(reading.notices());
        if (silent && why.isEmpty()) {
            why.add("\"" + reading.name().word() + "\" says nothing of the look");
        }
        why.forEach(
                notice -> add(silent ? nothing : remarks, notice + " (" + reading.whose() + ")", reading.individual()));
    }

    /** Whether anything of it is evidence: some trait that the model rules, said at a stage and in a light in which it can be told. */
    private boolean counts(Reading reading) {
        Model model = ground.model();
        WhenTold told = new WhenTold(ground, reading.name().stage());
        return reading.looks()
                .map(looks -> looks.iterator().next().traits())
                .filter(traits -> traits.stream()
                        .anyMatch(trait -> trait.equals(Sex.VARIABLE)
                                || (model.rules().containsKey(trait)
                                        && told.problems(trait).isEmpty()
                                        && isLit(model, trait, reading))))
                .isPresent();
    }

    private static boolean isLit(Model model, String trait, Reading reading) {
        return model.catalogue()
                .trait(trait)
                .map(described -> described.judgeable(reading.name().light()))
                .filter(Judgeable.NO::equals)
                .isEmpty();
    }

    private static void add(Map<String, Set<String>> of, String message, String id) {
        of.computeIfAbsent(message, key -> new LinkedHashSet<>()).add(id);
    }

    /** What is weak about the names that were used, and whose they are. */
    Map<String, Set<String>> remarks() {
        return remarks;
    }

    /** Why names are no evidence, and whose they are. */
    Map<String, Set<String>> nothing() {
        return nothing;
    }

    /** That names mean what vocabularies say they do, if any was used. */
    void assume(Taken taken) {
        if (!used.isEmpty()) {
            taken.add(Assumption.ofNames(used));
        }
    }
}
