package org.geneticsrules.inference;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.inference.Groups.Way;
import org.geneticsrules.trait.Sex;
import org.jspecify.annotations.Nullable;

/**
 * What is known of the units of one group in those parts of a pedigree that are looked at from family to family: unit by unit where nothing
 * ties them, else all together as if they were one.
 */
final class Peeled {

    private final Families families;
    private final Layout layout;
    private final Kinds kinds;

    /** By part of the pedigree, how it is looked at. */
    private final Way[] ways;

    /** One for each unit, and the last for all units together. */
    private final List<Look> looks = new ArrayList<>();

    private double logLikelihood;
    private boolean contradicted;

    /** Some units looked at as one. */
    private static final class Look {
        private final Way way;
        private final List<Integer> units;
        private final MatingTables tables;

        /** By kind, what is known of an animal by itself; nothing for those of no part that is looked at in this way. */
        private final @Nullable Known[] known;

        /** By part, if it is looked at in this way and settled. */
        private final @Nullable Standing[] standings;

        private ChanceRows chances = ChanceRows.NONE;

        Look(Way way, List<Integer> units, MatingTables tables, int kinds, int parts) {
            this.way = way;
            this.units = units;
            this.tables = tables;
            this.known = new Known[kinds];
            this.standings = new Standing[parts];
        }
    }

    /**
     * Settles what can be settled so.
     *
     * @param question the question
     * @param group which group of its units
     * @param families the shape of the pedigree
     * @param budget the cells that all tables of one family may have together; parts with larger ones are left to the graph
     * @param least units are not looked at more loosely than this
     * @param watch is called now and then, and may throw
     */
    Peeled(Groups question, int group, Families families, double budget, Way least, Runnable watch) {
        this(families, question, group, budget, least);
        looks.forEach(look -> settle(look, watch));
    }

    /** The animals that would be settled so, of whom no more is found out than that. */
    static IntPredicate foreseen(Groups question, int group, Families families, double budget) {
        return new Peeled(families, question, group, budget, Way.UNIT_BY_UNIT)::has;
    }

    private Peeled(Families families, Groups question, int group, double budget, Way least) {
        this.families = families;
        this.kinds = question.kinds();
        this.layout = question.layout(group);
        OwnWeights alone = question.alone(group, layout);
        this.ways = question.ways(group, layout, alone, families, least);
        int units = layout.heredity().size();
        for (int u = 0; u <= units; u++) {
            boolean together = u == units;
            looks.add(look(
                    together ? Way.TOGETHER : Way.UNIT_BY_UNIT,
                    together ? IntStream.range(0, units).boxed().toList() : List.of(u),
                    alone));
        }
        boolean[] tooLarge = new boolean[families.parts()];
        for (Look look : looks) {
            for (int f = 0; f < families.count(); f++) {
                int part = families.part[families.sires[f]];
                tooLarge[part] |= ways[part] == look.way && cells(look, f) > budget;
            }
        }
        for (int p = 0; p < tooLarge.length; p++) {
            ways[p] = tooLarge[p] ? Way.GRAPH : ways[p];
        }
    }

    private Look look(Way way, List<Integer> units, OwnWeights alone) {
        boolean used = Arrays.asList(ways).contains(way);
        MatingTables tables = new MatingTables(
                used ? units.stream().map(layout.heredity()::get).toList() : List.of());
        Look look = new Look(way, units, tables, kinds.count(), families.parts());
        for (int m = 0; m < families.part.length; m++) {
            int kind = kinds.of(m);
            if (look.known[kind] == null && ways[families.part[m]] == way) {
                look.known[kind] = tables.known(alone.of(kinds.example(kind), units));
            }
        }
        return look;
    }

    /** The combinations in the tables of a family, of which there is one at a time. */
    private double cells(Look look, int family) {
        double speakers = families.firstRun[family + 1]
                - families.firstRun[family]
                + families.firstGrown[family + 1]
                - families.firstGrown[family];
        return (speakers + 1) * left(look, families.sires[family]) * left(look, families.dams[family]);
    }

    private double left(Look look, int member) {
        return known(look, member).states().length;
    }

    private Known known(Look look, int member) {
        return Objects.requireNonNull(look.known[kinds.of(member)]);
    }

    private void settle(Look look, Runnable watch) {
        if (Arrays.stream(ways).noneMatch(look.way::equals)) {
            return;
        }
        boolean differ = look.tables.differ();
        boolean[] female = new boolean[kinds.count()];
        for (int kind = 0; kind < female.length; kind++) {
            female[kind] = !differ || layout.sexOf(kinds.example(kind), 0) == Sex.FEMALE;
        }
        boolean[] peeled = new boolean[ways.length];
        for (int p = 0; p < ways.length; p++) {
            peeled[p] = ways[p] == look.way;
        }
        double[] logs = new double[ways.length];
        for (int m = 0; m < families.part.length; m++) {
            if (peeled[families.part[m]]) {
                logs[families.part[m]] += known(look, m).log();
            }
        }
        Peeling peeling = new Peeling(families, kinds, look.tables, look.known, female, peeled, watch);
        for (int p = 0; p < ways.length; p++) {
            if (peeled[p]) {
                double found = peeling.settle(p) + logs[p];
                if (Double.isNaN(found)) {
                    look.standings[p] = Standing.TOO_LARGE;
                } else {
                    boolean possible = found > Double.NEGATIVE_INFINITY;
                    look.standings[p] = possible ? Standing.EXACT : Standing.CONTRADICTED;
                    contradicted |= !possible;
                    logLikelihood += found;
                }
            }
        }
        look.chances = peeling.chances();
        Arrays.fill(look.known, null); // what is not needed any more takes no room
    }

    /** Whether an animal is of a part that is looked at so. */
    boolean has(int member) {
        return ways[families.part[member]] != Way.GRAPH;
    }

    /** Whether an animal is of such a part, and records of none of the units contradict one another there. */
    boolean isPossible(int member) {
        boolean possible = has(member);
        for (int u = 0; u < layout.heredity().size() && possible; u++) {
            possible = standing(member, u) == Standing.EXACT;
        }
        return possible;
    }

    private Look look(int member, int unit) {
        return looks.get(
                ways[families.part[member]] == Way.TOGETHER ? layout.heredity().size() : unit);
    }

    /** How far it is settled what an animal of such a part carries at a unit. */
    Standing standing(int member, int unit) {
        return Objects.requireNonNull(look(member, unit).standings[families.part[member]]);
    }

    /** The chances of the states of an animal of such a part at a unit. */
    double[] chances(int member, int unit) {
        Look look = look(member, unit);
        double[] found = look.chances.of(member);
        if (look.units.size() == 1) {
            return found;
        }
        int inner = 1;
        for (int u = unit + 1; u < layout.heredity().size(); u++) {
            inner *= layout.states(member, u);
        }
        double[] sums = new double[layout.states(member, unit)];
        for (int state = 0; state < found.length; state++) {
            sums[state / inner % sums.length] += found[state];
        }
        return sums;
    }

    double logLikelihood() {
        return logLikelihood;
    }

    boolean isContradicted() {
        return contradicted;
    }
}
