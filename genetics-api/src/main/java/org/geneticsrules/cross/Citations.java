package org.geneticsrules.cross;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.explanation.ParentsCase;
import org.geneticsrules.explanation.RestsOn;
import org.geneticsrules.explanation.Segregation;
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
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.trait.Sex;

/**
 * Finds the statements that the shares of a mating rest on.
 *
 * <ol>
 *   <li>What decides the looks of the kits there may be, and the loci that matter to them: {@link RestsOn}, for each kind of parents.
 *   <li>The statements about viability that bear on the shares of what these loci show, as far as kits or uncertain parents are
 *       concerned; where some are lost, the dominance that decides who is, and the loci of these statements matter too.
 *   <li>The groups by which loci that matter are handed down, where a parent is heterozygous at several of them or the sexes differ.
 *   <li>The rates at which alleles of the parents mutate at loci that matter.
 * </ol>
 */
final class Citations {

    private final CompiledModel compiled;
    private final Model model;
    private final View view;
    private final Litter litter;
    private final Map<Sex, List<GenotypeSet>> parents = new LinkedHashMap<>();
    private final Set<String> found = new LinkedHashSet<>();

    Citations(CompiledModel compiled, View view, Litter litter, Sires sires, Parent dam) {
        this.compiled = compiled;
        this.model = compiled.model();
        this.view = view;
        this.litter = litter;
        parents.put(
                Sex.MALE,
                sires.males().stream()
                        .map(male -> male.genotypes().of(Sex.MALE))
                        .toList());
        parents.put(Sex.FEMALE, ImmutableList.of(dam.genotypes().of(Sex.FEMALE)));
    }

    /** The statements that the shares among kits of these kinds of parents rest on, in the order of the document. */
    Set<String> of(List<ParentsCases.Kind> kinds) {
        List<ParentsCase> cases = kinds.stream().map(ParentsCases.Kind::parents).toList();
        Set<String> matter = looks(cases);
        matter.addAll(viability(cases, matter));
        cases.forEach(parents -> groups(parents, matter));
        cases.forEach(parents -> parents.loci().values().stream()
                .filter(segregation -> matter.contains(segregation.locus()))
                .forEach(this::mutations));
        return model.statements().keySet().stream().filter(found::contains).collect(ImmutableSet.toImmutableSet());
    }

    /** What the looks of the kits rest on; the loci that matter to them. */
    private Set<String> looks(List<ParentsCase> cases) {
        Set<String> matter = new LinkedHashSet<>();
        Set<Object> done = new LinkedHashSet<>();
        for (ParentsCase parents : cases) {
            Map<String, Collection<AllelePair>> kits = new LinkedHashMap<>();
            parents.loci()
                    .forEach((locus, segregation) ->
                            kits.put(locus, segregation.kits().outcomes()));
            if (done.add(List.of(parents.kit(), kits))) {
                RestsOn rests = RestsOn.of(compiled, kits, parents.kit(), view);
                found.addAll(rests.statements());
                matter.addAll(rests.loci());
            }
        }
        return matter;
    }

    /** What decides who is lost, as far as that bears on what is asked; the loci of which it is told. */
    private Set<String> viability(List<ParentsCase> cases, Set<String> matter) {
        boolean sex = compiled.dependsOnSex(view.among(Census.CONCEIVED));
        Set<String> losing = new LinkedHashSet<>();
        for (Viability one : compiled.viability(matter, sex, view.census())) {
            Locus locus = model.locus(one.locus());
            boolean loses = litter.read().contains(one.locus());
            if (!loses || litter.sorts() || cases.stream().anyMatch(parents -> concerns(one, locus, parents))) {
                found.add(one.pointer());
            }
            if (loses) {
                losing.add(one.locus());
                cases.forEach(parents -> dominance(locus, parents));
            }
        }
        for (Viability one : model.viability().values()) {
            Locus locus = model.locus(one.locus());
            parents.forEach((of, sets) -> sets.forEach(set -> {
                boolean weighs = matter.contains(one.locus())
                        || losing.contains(one.locus())
                        || set.boxes().size() > 1;
                if (weighs && set.pairs(one.locus()).size() > 1) {
                    List<AllelePair> pairs = set.pairs(one.locus()).stream()
                            .filter(pair -> pair.alleles().size()
                                    == locus.transmission().strands(of))
                            .toList();
                    if (pairs.stream().anyMatch(pair -> one.concerns(locus.id(), locus.expression(pair, of), of))) {
                        found.add(one.pointer());
                    }
                    pairs.forEach(pair -> found.addAll(locus.decidedBy(pair, of)));
                }
            }));
        }
        return losing;
    }

    private static List<Sex> sexes(ParentsCase parents) {
        return parents.kit().map(List::of).orElseGet(() -> List.of(Sex.values()));
    }

    /** The pairs that kits of a sex may have at a locus. */
    private static List<AllelePair> kits(Locus locus, ParentsCase parents, Sex sex) {
        Segregation segregation = parents.loci().get(locus.id());
        return segregation == null
                ? List.of()
                : segregation.kits().outcomes().stream()
                        .filter(pair ->
                                pair.alleles().size() == locus.transmission().strands(sex))
                        .toList();
    }

    private static boolean concerns(Viability one, Locus locus, ParentsCase parents) {
        return sexes(parents).stream()
                .anyMatch(sex -> kits(locus, parents, sex).stream()
                        .anyMatch(pair -> one.concerns(locus.id(), locus.expression(pair, sex), sex)));
    }

    private void dominance(Locus locus, ParentsCase parents) {
        sexes(parents)
                .forEach(sex -> kits(locus, parents, sex).forEach(pair -> found.addAll(locus.decidedBy(pair, sex))));
    }

    private void groups(ParentsCase parents, Set<String> matter) {
        for (LinkageGroup group : model.groups().values()) {
            List<Segregation> here = parents.loci().values().stream()
                    .filter(one -> matter.contains(one.locus()) && group.loci().contains(one.locus()))
                    .toList();
            boolean bySex = group.transmission().heterogametic().isPresent();
            if (bySex
                    ? !here.isEmpty()
                    : recombines(here.stream().map(Segregation::sire).toList())
                            || recombines(here.stream().map(Segregation::dam).toList())) {
                found.add(group.pointer());
            }
        }
    }

    private static boolean recombines(List<Distribution<AllelePair>> parent) {
        return parent.stream()
                        .filter(pairs -> pairs.outcomes().stream().anyMatch(AllelePair::isHeterozygous))
                        .count()
                > 1;
    }

    /** The rates at which alleles of the parents mutate on the way to the kit. */
    private void mutations(Segregation segregation) {
        Locus locus = model.locus(segregation.locus());
        for (Distribution<AllelePair> parent : List.of(segregation.sire(), segregation.dam())) {
            for (AllelePair pair : parent.outcomes()) {
                for (Allele allele : pair.alleles()) {
                    Map<String, Probability> rates = Optional.<Map<String, Probability>>ofNullable(
                                    locus.mutation().get(allele.id()))
                            .orElse(Map.of());
                    rates.keySet()
                            .forEach(to -> found.add(Pointer.of("loci", locus.id(), "mutation", allele.id(), to)));
                }
            }
        }
    }
}
