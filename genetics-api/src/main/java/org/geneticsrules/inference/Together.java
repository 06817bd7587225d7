package org.geneticsrules.inference;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;

/** Works out what several animals carry together: one clique is made to hold all variables asked about. */
final class Together {

    private final Map<String, Integer> asked;
    private final Collection<String> loci;
    private final Effort effort;
    private final List<JointPosterior.Part> parts = new ArrayList<>();
    private Standing standing = Standing.EXACT;

    private Together(Groups question, Map<String, Integer> asked, Collection<String> loci, Effort effort) {
        this.asked = asked;
        this.loci = loci;
        this.effort = effort;
        Families families = Families.of(question.members(), question.kinds());
        int[] who = IntStream.range(0, families.part.length)
                .filter(m -> asked.values().stream().anyMatch(one -> families.part[one] == families.part[m]))
                .toArray();
        for (int g = 0; g < question.count(); g++) {
            Layout layout = question.layout(g);
            FactorGraph graph = question.graph(g, layout, who);
            for (Components.Part part : Components.of(graph)) {
                add(layout, part);
            }
        }
    }

    /**
     * Works it out.
     *
     * @param asked the number of each animal, by id
     * @param loci ids of the loci asked about
     * @param effort how much may be done
     */
    static JointPosterior of(Groups question, Map<String, Integer> asked, Collection<String> loci, Effort effort) {
        Together found = new Together(question, asked, loci, effort);
        return new JointPosterior(found.standing, found.standing == Standing.EXACT ? found.parts : List.of());
    }

    /** What a variable says of an animal asked about. */
    private record Asked(String id, int member, int unit) {}

    private void add(Layout layout, Components.Part part) {
        Map<Integer, Asked> variables = new LinkedHashMap<>();
        for (int u = 0; u < layout.heredity().size(); u++) {
            for (Map.Entry<String, Integer> one : asked.entrySet()) {
                int variable = layout.carried(one.getValue(), u);
                int here = Arrays.binarySearch(part.variables(), variable);
                if (here >= 0 && layout.loci(u).stream().anyMatch(locus -> loci.contains(locus.id()))) {
                    variables.put(here, new Asked(one.getKey(), one.getValue(), u));
                }
            }
        }
        if (variables.isEmpty()) {
            return;
        }
        Runnable watch = effort.watch();
        Elimination elimination = Elimination.of(part.graph(), (variable, factor) -> watch.run());
        if (elimination.emptied() >= 0) {
            standing = Standing.CONTRADICTED;
            return;
        }
        int[] together = variables.keySet().stream().mapToInt(Integer::intValue).toArray();
        CliqueTree.Plan plan = CliqueTree.plan(part.graph(), elimination, effort.cells(), together, watch);
        if (plan.cells() > effort.cells()) {
            standing = standing == Standing.CONTRADICTED ? standing : Standing.TOO_LARGE;
            return;
        }
        CliqueTree.Jointly found = plan.tree().together(together, watch);
        if (found.chances().isEmpty()) {
            standing = standing == Standing.CONTRADICTED ? standing : found.standing();
            return;
        }
        parts.add(part(layout, found.chances().get(), variables, elimination));
    }

    private JointPosterior.Part part(
            Layout layout, Factor found, Map<Integer, Asked> variables, Elimination elimination) {
        int count = found.variables().length;
        int[][] states = new int[count][];
        Asked[] whose = new Asked[count];
        for (int i = 0; i < count; i++) {
            states[i] = elimination.left(found.variables()[i]);
            whose[i] = Objects.requireNonNull(variables.get(found.variables()[i]));
        }
        Map<Map<String, Map<String, AllelePair>>, Double> sums = new LinkedHashMap<>();
        int[] at = new int[count];
        for (double chance : found.table()) {
            if (chance > 0) {
                Map<String, Map<String, AllelePair>> genotypes = new TreeMap<>();
                for (int i = 0; i < count; i++) {
                    Map<String, AllelePair> pairs = genotypes.computeIfAbsent(whose[i].id(), key -> new TreeMap<>());
                    List<Locus> here = layout.loci(whose[i].unit());
                    for (int l = 0; l < here.size(); l++) {
                        if (loci.contains(here.get(l).id())) {
                            pairs.put(
                                    here.get(l).id(),
                                    layout.pair(whose[i].member(), whose[i].unit(), states[i][at[i]], l));
                        }
                    }
                }
                sums.merge(genotypes, chance, Double::sum);
            }
            for (int i = count - 1; i >= 0 && ++at[i] == states[i].length; i--) {
                at[i] = 0;
            }
        }
        List<JointPosterior.Combination> all = new ArrayList<>();
        sums.forEach((genotypes, chance) -> all.add(new JointPosterior.Combination(genotypes, chance)));
        return new JointPosterior.Part(all);
    }
}
