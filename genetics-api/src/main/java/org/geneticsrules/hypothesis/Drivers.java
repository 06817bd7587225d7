package org.geneticsrules.hypothesis;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.explanation.RestsOn;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.trait.Sex;

/** Finds the differences between two models on which what one of them foretells rests. */
final class Drivers {

    private final List<Change> changes;
    private final Set<String> cited = new LinkedHashSet<>();

    Drivers(List<Change> changes) {
        this.changes = changes;
    }

    /** Adds what the fate of a genotype rests on under one model. */
    void genotype(CompiledModel compiled, Genotype genotype, Sex sex, View view) {
        Map<String, Set<AllelePair>> carried = new LinkedHashMap<>();
        genotype.pairs().forEach((locus, pair) -> carried.put(locus, ImmutableSet.of(pair)));
        cited.addAll(RestsOn.of(compiled, carried, Optional.of(sex), view).statements());
        losses(compiled.model(), carried, ImmutableList.of(sex), view.census());
    }

    /** Adds what the kits of a mating rest on under one model. */
    void mating(CompiledModel compiled, Genotype sire, Genotype dam, Collection<Sex> sexes, View view) {
        Model model = compiled.model();
        Map<String, Set<AllelePair>> kits = new LinkedHashMap<>();
        for (String name : sire.loci()) {
            Locus locus = model.locus(name);
            Set<AllelePair> pairs = new LinkedHashSet<>();
            for (Sex sex : Sex.values()) {
                pairs.addAll(kits(locus, sire, dam, sex));
            }
            kits.put(name, pairs);
            segregates(locus, sire, dam);
        }
        cited.addAll(RestsOn.of(compiled, kits, view).statements());
        losses(model, kits, sexes, view.census());
        for (LinkageGroup group : model.groups().values()) {
            for (Genotype parent : List.of(sire, dam)) {
                long mixed = group.loci().stream()
                        .filter(locus -> parent.pair(locus)
                                .filter(AllelePair::isHeterozygous)
                                .isPresent())
                        .count();
                if (mixed > 1 || group.transmission().heterogametic().isPresent()) {
                    cited.add(group.pointer());
                }
            }
        }
    }

    /** The differences among all that was added; if what was cited differs in none, all differences. */
    List<Change> found() {
        List<Change> found = changes.stream()
                .filter(change -> cited.stream().anyMatch(change::concerns))
                .toList();
        return found.isEmpty() ? changes : found;
    }

    private void segregates(Locus locus, Genotype sire, Genotype dam) {
        for (Genotype parent : List.of(sire, dam)) {
            boolean mutates = parent.pair(locus.id()).orElseThrow().alleles().stream()
                    .anyMatch(allele -> locus.mutation().containsKey(allele.id()));
            if (mutates) {
                cited.add(Pointer.of("loci", locus.id()));
            }
        }
    }

    private static List<AllelePair> kits(Locus locus, Genotype sire, Genotype dam, Sex kit) {
        List<AllelePair> kits = new ArrayList<>();
        for (int[] mine : passed(locus, sire, Sex.MALE, kit)) {
            for (int[] theirs : passed(locus, dam, Sex.FEMALE, kit)) {
                int[] both = new int[mine.length + theirs.length];
                System.arraycopy(mine, 0, both, 0, mine.length);
                System.arraycopy(theirs, 0, both, mine.length, theirs.length);
                kits.add(locus.of(both));
            }
        }
        return kits;
    }

    /** What a parent may pass on: one allele, or none. */
    private static List<int[]> passed(Locus locus, Genotype parent, Sex of, Sex kit) {
        if (!locus.transmission().passes(of, kit)) {
            return List.of(new int[0]);
        }
        List<String> ids = ImmutableList.copyOf(locus.alleles().keySet());
        Set<Integer> alleles = new LinkedHashSet<>();
        for (int allele : locus.positions(parent.pair(locus.id()).orElseThrow())) {
            alleles.add(allele);
            Map<String, ?> rates = locus.mutation().get(ids.get(allele));
            if (rates != null) {
                rates.keySet().forEach(to -> alleles.add(ids.indexOf(to)));
            }
        }
        return alleles.stream().map(allele -> new int[] {allele}).toList();
    }

    private void losses(Model model, Map<String, Set<AllelePair>> carried, Collection<Sex> sexes, Census census) {
        model.viability().values().forEach(one -> {
            Locus locus = model.locus(one.locus());
            boolean counted = census == Census.SCORED
                    || (census == Census.BORN && !one.birth().isOne());
            for (AllelePair pair : carried.getOrDefault(one.locus(), ImmutableSet.of())) {
                for (Sex sex : sexes) {
                    boolean possible =
                            locus.transmission().strands(sex) == pair.alleles().size()
                                    && one.sex().orElse(sex) == sex;
                    if (counted && possible && one.expressions().contains(locus.expression(pair, sex))) {
                        cited.add(one.pointer());
                        cited.addAll(locus.decidedBy(pair, sex));
                    }
                }
            }
        });
    }
}
