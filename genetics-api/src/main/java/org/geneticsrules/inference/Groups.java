package org.geneticsrules.inference;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.model.Model;

/**
 * A question about a pedigree as groups of units, each of which can be looked at by itself; the chance of all records is the product over
 * groups.
 */
final class Groups {

    private final Model model;
    private final Members members;
    private final List<Evidence> records;
    private final List<Heredity> heredity = new ArrayList<>();
    private final List<Ties.Group> groups;
    private final Map<List<Object>, double[]> tables = new LinkedHashMap<>();

    /**
     * Sorts units into groups.
     *
     * @param model the model
     * @param members the animals
     * @param records what is known of each animal, in the same order
     * @param matter the loci that matter
     * @param mutating whether alleles mutate
     */
    Groups(Model model, Members members, List<Evidence> records, Collection<String> matter, boolean mutating) {
        this.model = model;
        this.members = members;
        this.records = records;
        for (Unit unit : Unit.of(model, matter)) {
            heredity.add(Heredity.of(model, unit, mutating));
        }
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
        boolean even = heredity.stream().noneMatch(Heredity::livingDependsOnSex);
        return new KindredGraph(model, layout, records, group == 0, even, tables).graph();
    }
}
