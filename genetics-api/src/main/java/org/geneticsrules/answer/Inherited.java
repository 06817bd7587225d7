package org.geneticsrules.answer;

import java.util.Collection;
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
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Viability;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.trait.Sex;

/** What young may have of their parents, locus by locus, and which statements their looks rest on. Stateless and thread-safe. */
final class Inherited {

    private Inherited() {}

    /** The pairs that young of a sire and a dam may have at some loci, with new mutation where the model states it. */
    static Map<String, List<AllelePair>> pairs(
            Model model, GenotypeSet sire, GenotypeSet dam, Collection<String> loci) {
        Map<String, List<AllelePair>> found = new LinkedHashMap<>();
        for (String id : loci) {
            Locus locus = model.locus(id);
            Set<AllelePair> young = new LinkedHashSet<>();
            for (Sex kit : Sex.values()) {
                Set<String> his = passed(locus, sire);
                Set<String> hers = passed(locus, dam);
                boolean fromSire = locus.transmission().passes(Sex.MALE, kit);
                boolean fromDam = locus.transmission().passes(Sex.FEMALE, kit);
                locus.pairs(kit).stream()
                        .filter(pair -> fits(pair, fromSire ? his : Set.of(), fromDam ? hers : Set.of()))
                        .forEach(young::add);
            }
            found.put(id, locus.pairs().stream().filter(young::contains).toList());
        }
        return found;
    }

    /** Whether a pair is one allele from each parent that passes one on. */
    private static boolean fits(AllelePair pair, Set<String> his, Set<String> hers) {
        List<String> alleles = pair.alleles().stream().map(Allele::id).toList();
        return switch (alleles.size()) {
            case 0 -> his.isEmpty() && hers.isEmpty();
            case 1 -> his.contains(alleles.get(0)) || hers.contains(alleles.get(0));
            default ->
                (his.contains(alleles.get(0)) && hers.contains(alleles.get(1)))
                        || (his.contains(alleles.get(1)) && hers.contains(alleles.get(0)));
        };
    }

    private static Set<String> passed(Locus locus, GenotypeSet parent) {
        Set<String> found = new LinkedHashSet<>();
        for (AllelePair pair : parent.pairs(locus.id())) {
            for (Allele allele : pair.alleles()) {
                found.add(allele.id());
                Map<String, ?> row = locus.mutation().get(allele.id());
                if (row != null) {
                    found.addAll(row.keySet());
                }
            }
        }
        return found;
    }

    /** A statement about losses and what decides the expressions at its locus, if young may be concerned; else none. */
    static Set<String> losses(Model model, GenotypeSet sire, GenotypeSet dam, Viability one) {
        Locus locus = model.locus(one.locus());
        List<AllelePair> young = pairs(model, sire, dam, List.of(locus.id())).getOrDefault(locus.id(), List.of());
        Set<String> found = new LinkedHashSet<>();
        boolean concerned = false;
        for (Sex sex : Sex.values()) {
            for (AllelePair pair : locus.pairs(sex)) {
                if (young.contains(pair)) {
                    found.addAll(locus.decidedBy(pair, sex));
                    concerned |= one.concerns(locus.id(), locus.expression(pair, sex), sex);
                }
            }
        }
        found.add(one.pointer());
        return concerned ? found : Set.of();
    }

    /**
     * The statements that looks of young rest on: the rules that decide about them, how linked loci are handed down, who is lost, and
     * how often alleles of the parents change. Each locus is taken by itself, so that a statement may be among them which the reasons,
     * were they worked out, would leave out; none that they name is missing.
     *
     * @param young what they may have at the loci read
     */
    static Set<String> statements(
            CompiledModel compiled, Collection<GenotypeSet> parents, Map<String, List<AllelePair>> young, View view) {
        Model model = compiled.model();
        Set<String> found =
                new LinkedHashSet<>(RestsOn.of(compiled, young, view).statements());
        for (LinkageGroup group : model.groups().values()) {
            long read = group.loci().stream().filter(young::containsKey).count();
            if (read > 1 || (read == 1 && group.transmission().heterogametic().isPresent())) {
                found.add(group.pointer());
            }
        }
        if (view.census() != Census.CONCEIVED
                && compiled.survival(view.census()).loses()) {
            for (Viability one : model.viability().values()) {
                List<AllelePair> pairs = young.get(one.locus());
                if (pairs != null) {
                    found.add(one.pointer());
                    Locus locus = model.locus(one.locus());
                    for (Sex sex : Sex.values()) {
                        pairs.stream()
                                .filter(locus.pairs(sex)::contains)
                                .forEach(pair -> found.addAll(locus.decidedBy(pair, sex)));
                    }
                }
            }
        }
        for (GenotypeSet parent : parents) {
            for (String id : young.keySet()) {
                for (AllelePair pair : parent.pairs(id)) {
                    for (Allele allele : pair.alleles()) {
                        Map<String, ?> rates = model.locus(id).mutation().get(allele.id());
                        if (rates != null) {
                            rates.keySet()
                                    .forEach(to -> found.add(Pointer.of("loci", id, "mutation", allele.id(), to)));
                        }
                    }
                }
            }
        }
        return found;
    }
}
