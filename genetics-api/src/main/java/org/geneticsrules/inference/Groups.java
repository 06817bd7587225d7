package org.geneticsrules.inference;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.Sex;

/**
 * A question about a pedigree as groups of units, each of which can be looked at by itself; the chance of all records is the product over
 * groups.
 */
final class Groups {

    private final Members members;
    private final List<Evidence> records;
    private final Kinds kinds;
    private final List<Heredity> heredity = new ArrayList<>();
    private final List<Ties.Group> groups;
    private final Rules rules;
    private final boolean whole;

    /**
     * How animals inherit: what all questions under the same rules share.
     *
     * <p>Thread-safe.
     */
    static final class Rules {

        private final Model model;
        private final boolean mutating;

        /** Whether founders are weighed by their populations, or all that can live are alike. */
        private final boolean weighed;

        private final Map<List<String>, Heredity> units = new ConcurrentHashMap<>();

        /** Tables of founders and kits. */
        private final Map<List<Object>, double[]> tables = new ConcurrentHashMap<>();

        Rules(Model model, boolean mutating, boolean weighed) {
            this.model = model;
            this.mutating = mutating;
            this.weighed = weighed;
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
     * @param kinds the animals sorted by what is known of them
     * @param matter the loci that matter
     */
    Groups(Rules rules, Members members, List<Evidence> records, Kinds kinds, Collection<String> matter) {
        this.rules = rules;
        this.members = members;
        this.records = records;
        this.kinds = kinds;
        Unit.of(rules.model, matter).forEach(unit -> heredity.add(rules.heredity(unit)));
        this.groups = Ties.of(heredity, members, kinds);
        this.whole = true;
    }

    private Groups(Groups question, List<Ties.Group> groups, boolean whole) {
        this.whole = whole;
        this.rules = question.rules;
        this.members = question.members;
        this.records = question.records;
        this.kinds = question.kinds;
        this.heredity.addAll(question.heredity);
        this.groups = groups;
    }

    /** The same question without the groups at which none of some loci is. */
    Groups with(Collection<String> loci) {
        return new Groups(
                this,
                groups.stream()
                        .filter(group -> group.units().stream()
                                .flatMap(unit -> heredity.get(unit).unit().loci().stream())
                                .anyMatch(locus -> loci.contains(locus.id())))
                        .toList(),
                false);
    }

    /** Whether it is about all loci that matter. */
    boolean isWhole() {
        return whole;
    }

    /**
     * The same question as if all groups were tied that can be looked at together, but for what is tied to a sex that is not known; they are
     * the last.
     */
    Groups asOne() {
        List<Ties.Group> others = new ArrayList<>();
        List<Integer> tied = new ArrayList<>();
        for (Ties.Group group : groups) {
            List<Integer> more = new ArrayList<>(tied);
            more.addAll(group.units());
            if (group.sexed() || states(more.stream().map(heredity::get).toList()) > MOST_TOGETHER) {
                others.add(group);
            } else {
                tied = more;
            }
        }
        others.add(new Ties.Group(tied, false));
        return new Groups(this, others, whole);
    }

    private static double states(List<Heredity> units) {
        double states = 1;
        for (Heredity here : units) {
            states *= Math.max(here.states(Sex.FEMALE), here.states(Sex.MALE));
        }
        return states;
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
        return new KindredGraph(rules.model, layout, records, who, group == 0, isEven(), rules.weighed, rules.tables)
                .graph();
    }

    /** What is known of each animal by itself at the units of a group. */
    OwnWeights alone(int group, Layout layout) {
        return new OwnWeights(rules.model, layout, records, group == 0, isEven(), rules.weighed);
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

    Kinds kinds() {
        return kinds;
    }

    /** How the units of a group can be looked at in a part of the pedigree. */
    enum Way {
        /** One after the other, from family to family: nothing ties them to one another. */
        UNIT_BY_UNIT,
        /** All at once, from family to family. */
        TOGETHER,
        /** By a graph: relations form a loop, or something ties units to a sex or a sire that is not known. */
        GRAPH
    }

    /** More states than this of all units together are not looked at from family to family. */
    private static final double MOST_TOGETHER = 400;

    /**
     * Tells how a group can be looked at.
     *
     * @param alone what is known of each animal by itself at these units
     * @param least nothing is looked at more loosely than this
     * @return by part of the pedigree
     */
    Way[] ways(int group, Layout layout, OwnWeights alone, Families families, Way least) {
        double states = states(layout.heredity());
        boolean even = layout.heredity().stream().noneMatch(Heredity::livingDependsOnSex);
        Way[] ofKind = new Way[kinds.count()];
        for (int kind = 0; kind < ofKind.length; kind++) {
            int example = kinds.example(kind);
            boolean sexMatters = groups.get(group).sexed()
                    && members.all().get(example).sex().isEmpty()
                    && mattersOfWhichSex(layout, records.get(example));
            ofKind[kind] = sexMatters || !even
                    ? Way.GRAPH
                    : least == Way.UNIT_BY_UNIT && !alone.tiesUnits(example)
                            ? Way.UNIT_BY_UNIT
                            : states <= MOST_TOGETHER ? Way.TOGETHER : Way.GRAPH;
        }
        Way[] ways = new Way[families.parts()];
        for (int p = 0; p < ways.length; p++) {
            ways[p] = families.tree[p] ? Way.UNIT_BY_UNIT : Way.GRAPH;
        }
        for (int m = 0; m < records.size(); m++) {
            int part = families.part[m];
            Way here = ofKind[kinds.of(m)];
            ways[part] = here.compareTo(ways[part]) > 0 ? here : ways[part];
        }
        return ways;
    }

    private static boolean mattersOfWhichSex(Layout layout, Evidence evidence) {
        return evidence.readsSex()
                || layout.heredity().stream()
                        .anyMatch(here -> here.dependsOnSex()
                                || here.unit().loci().stream().anyMatch(Locus::dependsOnSex));
    }
}
