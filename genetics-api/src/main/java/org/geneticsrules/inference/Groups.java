package org.geneticsrules.inference;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;

/**
 * A question about a pedigree as groups of units, each of which can be looked at by itself; the chance of all records is the product over
 * groups.
 */
final class Groups {

    private final Members members;
    private final List<Evidence> records;
    private final List<Heredity> heredity = new ArrayList<>();
    private final List<Ties.Group> groups;
    private final Rules rules;

    /**
     * What all questions under the same rules share.
     *
     * @param weighed whether founders are weighed by their populations, or all that can live are alike
     */
    record Rules(
            Model model,
            boolean mutating,
            boolean weighed,
            Map<List<String>, Heredity> units,
            Map<List<Object>, double[]> tables) {

        static Rules of(Model model, boolean mutating, boolean weighed) {
            return new Rules(model, mutating, weighed, new LinkedHashMap<>(), new LinkedHashMap<>());
        }

        private Heredity heredity(Unit unit) {
            return units.computeIfAbsent(
                    unit.loci().stream().map(Locus::id).toList(), key -> Heredity.of(model, unit, mutating));
        }
    }

    /**
     * Sorts units into groups.
     *
     * @param rules how animals inherit
     * @param members the animals
     * @param records what is known of each animal, in the same order
     * @param matter the loci that matter
     */
    Groups(Rules rules, Members members, List<Evidence> records, Collection<String> matter) {
        this.rules = rules;
        this.members = members;
        this.records = records;
        Unit.of(rules.model(), matter).forEach(unit -> heredity.add(rules.heredity(unit)));
        this.groups = Ties.of(heredity, members, records);
    }

    int count() {
        return groups.size();
    }

    /** New variables for a group. */
    Layout layout(int group) {
        return new Layout(
                members,
                groups.get(group).units().stream().map(heredity::get).toList(),
                groups.get(group).sexed());
    }

    /** The factor graph of a group. */
    FactorGraph graph(int group, Layout layout) {
        return graph(group, layout, IntStream.range(0, records.size()).toArray());
    }

    /** The factor graph of a group for some animals, among whom are all who may be parents of any of them. */
    FactorGraph graph(int group, Layout layout, int[] who) {
        return new KindredGraph(
                        rules.model(), layout, records, who, group == 0, isEven(), rules.weighed(), rules.tables())
                .graph();
    }

    /** What is known of each animal by itself at the units of a group. */
    OwnWeights alone(int group, Layout layout) {
        return new OwnWeights(rules.model(), layout, records, group == 0, isEven(), rules.weighed());
    }

    /** Whether as many daughters as sons live, whoever the parents are. */
    private boolean isEven() {
        return heredity.stream().noneMatch(Heredity::livingDependsOnSex);
    }

    Members members() {
        return members;
    }

    List<Evidence> records() {
        return records;
    }

    /**
     * Tells in which parts of the pedigree relations form no loop and nothing ties the units of a group to one another or to the sex.
     *
     * @param alone what is known of each animal by itself at these units
     * @return by part
     */
    boolean[] loose(int group, Layout layout, OwnWeights alone, Families families, Kinds kinds) {
        boolean[] ties = new boolean[kinds.count()];
        for (int kind = 0; kind < ties.length; kind++) {
            int example = kinds.example(kind);
            ties[kind] = alone.tiesUnits(example)
                    || (groups.get(group).sexed()
                            && members.all().get(example).sex().isEmpty()
                            && mattersOfWhichSex(layout, records.get(example)));
        }
        boolean[] loose = families.tree.clone();
        for (int m = 0; m < records.size(); m++) {
            loose[families.part[m]] &= !ties[kinds.of(m)];
        }
        if (layout.heredity().stream().anyMatch(Heredity::livingDependsOnSex)) {
            Arrays.fill(loose, false);
        }
        return loose;
    }

    private static boolean mattersOfWhichSex(Layout layout, Evidence evidence) {
        return evidence.readsSex()
                || layout.heredity().stream()
                        .anyMatch(here -> here.dependsOnSex()
                                || here.unit().loci().stream().anyMatch(Locus::dependsOnSex));
    }
}
