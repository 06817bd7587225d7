package org.geneticsrules.answer.recorded;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.geneticsrules.explanation.RestsOn;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Viability;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Sex;

/** Which statements of a model the conclusions from the records of a pedigree rest on. */
final class Bearings {

    private Bearings() {}

    /** The loci asked about, and those that are handed down with them. */
    static Set<String> together(Model model, Set<String> loci) {
        Set<String> all = new LinkedHashSet<>();
        for (String locus : loci) {
            model.groupOf(locus).map(LinkageGroup::loci).ifPresent(all::addAll);
            all.add(locus);
        }
        return all;
    }

    /**
     * The statements by which what was recorded says something of some loci: those of every trait that was recorded and reads one of
     * them, those about who lives, about linkage and, where it counts, about mutation.
     */
    static Set<String> of(CompiledModel compiled, Pedigree records, Set<String> loci, boolean mutating) {
        Model model = compiled.model();
        Set<String> matter = together(model, loci);
        Set<String> found = new LinkedHashSet<>();
        Set<View> done = new LinkedHashSet<>();
        Set<String> read = new LinkedHashSet<>(loci);
        for (Individual one : records.individuals().values()) {
            one.tests().forEach(test -> read.add(test.locus()));
            for (Observation seen : one.observations()) {
                for (String trait : seen.traits()) {
                    View alone = new View(List.of(trait), seen.stage(), Census.CONCEIVED);
                    if (model.rules().containsKey(trait) && !trait.equals(Sex.VARIABLE) && done.add(alone)) {
                        read.addAll(behind(compiled, alone, matter, found));
                    }
                }
            }
        }
        for (LinkageGroup group : model.groups().values()) {
            if (group.loci().stream().filter(read::contains).count() > 1
                    && group.loci().stream().anyMatch(loci::contains)) {
                found.add(group.pointer());
            }
        }
        for (Viability one : model.viability().values()) {
            if (matter.contains(one.locus())) {
                found.add(one.pointer());
            }
        }
        if (mutating) {
            for (String pointer : model.statements().keySet()) {
                if (loci.stream().anyMatch(locus -> pointer.startsWith(Pointer.of("loci", locus, "mutation") + "/"))) {
                    found.add(pointer);
                }
            }
        }
        return found;
    }

    private static Set<String> behind(CompiledModel compiled, View alone, Set<String> matter, Set<String> found) {
        try {
            Set<String> read = compiled.lociRead(alone);
            if (read.stream().anyMatch(matter::contains)) {
                Map<String, List<AllelePair>> pairs = new LinkedHashMap<>();
                read.forEach(locus -> pairs.put(
                        locus, new ArrayList<>(compiled.model().locus(locus).pairs())));
                found.addAll(RestsOn.of(compiled, pairs, alone).statements());
                return read;
            }
        } catch (ProblemsException | TooLargeException noEvidence) {
            return Set.of(); // the engine takes such a record for no evidence, or refuses it
        }
        return Set.of();
    }
}
