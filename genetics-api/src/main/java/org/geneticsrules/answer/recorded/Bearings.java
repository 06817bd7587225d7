package org.geneticsrules.answer.recorded;

import java.util.LinkedHashSet;
import java.util.Set;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Viability;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.trait.Confusions;

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
     * The statements by which what was recorded says something of some loci: those of every look that does ({@link LookBearings}), those
     * about who lives, about linkage and, where it counts, about mutation.
     */
    static Set<String> of(
            CompiledModel compiled, Confusions confusions, Pedigree records, Set<String> loci, boolean mutating) {
        Model model = compiled.model();
        Set<String> matter = together(model, loci);
        Set<String> found = new LinkedHashSet<>();
        Set<String> read = new LinkedHashSet<>(loci);
        LookBearings looks = new LookBearings(compiled, confusions, matter);
        for (Individual one : records.individuals().values()) {
            one.tests().forEach(test -> read.add(test.locus()));
            one.observations().forEach(looks::add);
        }
        found.addAll(looks.statements());
        read.addAll(looks.loci());
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
}
