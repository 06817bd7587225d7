package org.geneticsrules.ferret;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.Phenotype;

/** Finds what hides what by putting one pair in the place of another in every genotype, without reading dominance, cases or masks. */
final class Hiding {

    private final Model model;
    private final List<String> traits;
    private final Map<Genotype, Phenotype> looks = new LinkedHashMap<>();
    private final Map<AllelePair, Set<Genotype>> having = new LinkedHashMap<>();
    private final Map<List<Object>, Boolean> told = new HashMap<>();

    Hiding(CompiledModel compiled) {
        this.model = compiled.model();
        this.traits = List.copyOf(model.visibleTraits());
        List<List<AllelePair>> genotypes = List.of(List.of());
        for (Locus locus : model.loci().values()) {
            List<List<AllelePair>> longer = new ArrayList<>();
            for (List<AllelePair> before : genotypes) {
                for (AllelePair pair : locus.pairs()) {
                    List<AllelePair> more = new ArrayList<>(before);
                    more.add(pair);
                    longer.add(more);
                }
            }
            genotypes = longer;
        }
        for (List<AllelePair> pairs : genotypes) {
            Genotype genotype = Genotype.of(model, pairs);
            looks.put(genotype, compiled.express(genotype, traits).phenotype());
            pairs.forEach(pair -> having.computeIfAbsent(pair, unseen -> new LinkedHashSet<>())
                    .add(genotype));
        }
    }

    Set<Genotype> genotypes() {
        return looks.keySet();
    }

    /** The pairs of a locus that leave the whole look of a genotype as it is, its own among them. */
    List<AllelePair> alike(Genotype genotype, Locus locus) {
        return locus.pairs().stream()
                .filter(pair -> looks.get(genotype.with(pair)).equals(looks.get(genotype)))
                .toList();
    }

    /** One line for each group of pairs of a locus that look alike in every genotype. */
    String table() {
        StringBuilder table = new StringBuilder();
        table.append("What each locus of ").append(model).append(" hides, found by changing one locus at a time.\n\n");
        for (Locus locus : model.loci().values()) {
            for (List<AllelePair> group : groups(locus)) {
                table.append(group.stream().map(AllelePair::toString).collect(Collectors.joining(" = ")));
                Map<String, List<String>> hidden = hiddenBy(locus, group.get(0));
                table.append(hidden.isEmpty() ? " hides nothing else" : " hides ");
                table.append(hidden.entrySet().stream()
                        .map(entry -> String.join(", ", entry.getValue()) + " in " + entry.getKey())
                        .collect(Collectors.joining("; ")));
                table.append('\n');
            }
        }
        return table.toString();
    }

    private List<List<AllelePair>> groups(Locus locus) {
        Map<List<Phenotype>, List<AllelePair>> groups = new LinkedHashMap<>();
        for (AllelePair pair : locus.pairs()) {
            List<Phenotype> everywhere = having.get(locus.pairs().get(0)).stream()
                    .map(g -> looks.get(g.with(pair)))
                    .toList();
            groups.computeIfAbsent(everywhere, unseen -> new ArrayList<>()).add(pair);
        }
        return List.copyOf(groups.values());
    }

    /** By trait, the other loci that make a difference to it beside some pair of the locus, but none beside this pair. */
    Map<String, List<String>> hiddenBy(Locus locus, AllelePair pair) {
        Map<String, List<String>> hidden = new LinkedHashMap<>();
        for (String trait : traits) {
            for (Locus other : model.loci().values()) {
                boolean matters = locus.pairs().stream().anyMatch(any -> tells(any, other, trait));
                if (!other.equals(locus) && matters && !tells(pair, other, trait)) {
                    hidden.computeIfAbsent(trait, unseen -> new ArrayList<>()).add(other.id());
                }
            }
        }
        return hidden;
    }

    private boolean tells(AllelePair beside, Locus other, String trait) {
        return told.computeIfAbsent(List.of(beside, other.id(), trait), unseen -> differs(beside, other, trait));
    }

    private boolean differs(AllelePair beside, Locus other, String trait) {
        return having.get(beside).stream()
                .anyMatch(genotype -> other.pairs().stream()
                        .anyMatch(pair -> !looks.get(genotype.with(pair))
                                .state(trait)
                                .equals(looks.get(genotype).state(trait))));
    }
}
