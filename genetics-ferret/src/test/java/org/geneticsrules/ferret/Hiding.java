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
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;

/**
 * Finds what hides what by putting one pair in the place of another, trait by trait, without reading dominance, cases or masks. What a
 * genotype shows in a trait is a chance of states: a pair tells where it changes the chances.
 */
final class Hiding {

    /** What genotypes show in one trait: a table over all genotypes of the loci that the trait depends on. */
    private record Shown(
            Map<String, Locus> loci, Map<Genotype, Distribution<String>> looks, Map<List<Object>, Boolean> told) {

        /** Whether some exchange at the other locus changes the chances beside a pair. */
        boolean tells(AllelePair beside, Locus other) {
            return told.computeIfAbsent(List.of(beside, other.id()), unseen -> differs(beside, other));
        }

        private boolean differs(AllelePair beside, Locus other) {
            return looks.keySet().stream()
                    .filter(genotype -> genotype.pairs().containsValue(beside))
                    .anyMatch(genotype -> other.pairs().stream()
                            .anyMatch(pair -> !looks.get(genotype.with(pair)).equals(looks.get(genotype))));
        }

        /** The chances that go with a pair, beside all pairs of the other loci in one order. */
        List<Distribution<String>> beside(AllelePair pair, Locus locus) {
            AllelePair first = locus.pairs().get(0);
            return looks.keySet().stream()
                    .filter(genotype -> genotype.pairs().containsValue(first))
                    .map(genotype -> looks.get(genotype.with(pair)))
                    .toList();
        }
    }

    private final Model model;
    private final LifeStage stage;
    private final Map<String, Shown> traits = new LinkedHashMap<>();

    Hiding(CompiledModel compiled, LifeStage stage) {
        this.model = compiled.model();
        this.stage = stage;
        for (String trait : model.visibleTraits()) {
            Map<String, Locus> loci = new LinkedHashMap<>();
            compiled.lociRead(List.of(trait)).forEach(locus -> loci.put(locus, model.locus(locus)));
            Map<Genotype, Distribution<String>> looks = new LinkedHashMap<>();
            for (Genotype genotype : genotypes(model, loci.values())) {
                looks.put(
                        genotype,
                        compiled.express(genotype, Sex.FEMALE, stage, List.of(trait))
                                .map(seen -> seen.phenotype().state(trait).orElse("no claim")));
            }
            traits.put(trait, new Shown(loci, looks, new HashMap<>()));
        }
    }

    /** All genotypes of some loci. */
    static List<Genotype> genotypes(Model model, Iterable<Locus> loci) {
        List<List<AllelePair>> genotypes = List.of(List.of());
        for (Locus locus : loci) {
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
        return genotypes.stream().map(pairs -> Genotype.of(model, pairs)).toList();
    }

    /** One line for each group of pairs of a locus that look alike in every genotype. */
    String table() {
        StringBuilder table = new StringBuilder();
        table.append("What each locus of ").append(model).append(" hides at ").append(stage);
        table.append(", found by changing one locus at a time.\n\n");
        for (Locus locus : model.loci().values()) {
            for (List<AllelePair> group : groups(locus)) {
                table.append(group.stream().map(AllelePair::toString).collect(Collectors.joining(" = ")));
                Map<String, List<String>> hidden = hiddenBy(locus, group.get(0));
                table.append(hidden.isEmpty() ? " hides nothing else" : " hides ");
                Map<List<String>, List<String>> byLoci = new LinkedHashMap<>();
                hidden.forEach((trait, loci) -> byLoci.computeIfAbsent(loci, unseen -> new ArrayList<>())
                        .add(trait));
                table.append(byLoci.entrySet().stream()
                        .map(entry -> String.join(", ", entry.getKey()) + " in " + String.join(", ", entry.getValue()))
                        .collect(Collectors.joining("; ")));
                table.append('\n');
            }
        }
        return table.toString();
    }

    private List<List<AllelePair>> groups(Locus locus) {
        Map<List<List<Distribution<String>>>, List<AllelePair>> groups = new LinkedHashMap<>();
        for (AllelePair pair : locus.pairs()) {
            List<List<Distribution<String>>> everywhere = traits.values().stream()
                    .filter(shown -> shown.loci().containsKey(locus.id()))
                    .map(shown -> shown.beside(pair, locus))
                    .toList();
            groups.computeIfAbsent(everywhere, unseen -> new ArrayList<>()).add(pair);
        }
        return List.copyOf(groups.values());
    }

    /** By trait, the other loci that make a difference to it beside some pair of the locus, but none beside this pair. */
    Map<String, List<String>> hiddenBy(Locus locus, AllelePair pair) {
        Map<String, List<String>> hidden = new LinkedHashMap<>();
        traits.forEach((trait, shown) -> {
            if (shown.loci().containsKey(locus.id())) {
                Set<Locus> others = new LinkedHashSet<>(shown.loci().values());
                others.remove(locus);
                for (Locus other : others) {
                    boolean matters = locus.pairs().stream().anyMatch(any -> shown.tells(any, other));
                    if (matters && !shown.tells(pair, other)) {
                        hidden.computeIfAbsent(trait, unseen -> new ArrayList<>())
                                .add(other.id());
                    }
                }
            }
        });
        return hidden;
    }
}
