package org.geneticsrules.cross;

import com.google.common.collect.ImmutableList;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.geneticsrules.expression.Chain;
import org.geneticsrules.expression.KitLaw;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Sex;

/**
 * What uncertain parents pass on: averaged over what they may be, or class by class.
 *
 * <p>Parents whose gametes are distributed alike at the loci of a unit are one class. Averages serve questions about one kit; classes
 * serve questions about several kits, which share their parents, and questions in which the share of kits that are lost differs from
 * parents to parents.
 */
final class ParentPairs {

    /** More combinations of classes than this are not gone through. */
    private static final double MOST_COMBINATIONS = 1 << 18;

    private final Model model;
    private final List<List<ParentBox>> sires;
    private final List<ParentBox> dams;
    private final boolean mutating;
    private final boolean bothSexes;

    /**
     * Starts with what the parents may be.
     *
     * @param sires boxes of each male that may be the sire
     * @param dams boxes of the dam
     * @param mutating whether alleles mutate, or only what happens without is asked
     * @param bothSexes whether daughters and sons may differ
     */
    ParentPairs(Model model, List<List<ParentBox>> sires, List<ParentBox> dams, boolean mutating, boolean bothSexes) {
        this.model = model;
        this.sires = sires;
        this.dams = dams;
        this.mutating = mutating;
        this.bothSexes = bothSexes;
    }

    /** Receives one combination of boxes and classes. */
    interface Visitor {
        /**
         * Receives one combination.
         *
         * @param weight its weight among all combinations
         * @param young the kits of each male with the dam
         */
        void visit(BigInteger weight, List<Young> young);
    }

    /** The kits of each male at one unit, by sex. */
    private record UnitKits(List<Chain> daughters, List<Chain> sons) {}

    /**
     * Visits every combination of boxes and, at some units, of classes; at the others the parents are averaged.
     *
     * @param read the loci read
     * @param enumerated the units at which classes are told apart
     */
    void visit(Set<String> read, Predicate<Unit> enumerated, Visitor visitor) {
        List<Unit> units = Unit.of(model, read);
        for (ParentBox dam : dams) {
            for (List<ParentBox> males : product(sires)) {
                BigInteger outside = dam.outside(read);
                for (ParentBox male : males) {
                    outside = outside.multiply(male.outside(read));
                }
                List<Map<UnitKits, BigInteger>> byUnit = new ArrayList<>();
                double combinations = dams.size();
                for (List<ParentBox> boxes : sires) {
                    combinations *= boxes.size();
                }
                for (Unit unit : units) {
                    Map<UnitKits, BigInteger> classes = kits(unit, males, dam, enumerated.test(unit));
                    combinations *= classes.size();
                    byUnit.add(classes);
                    require(combinations);
                }
                combine(byUnit, 0, outside, new ArrayList<>(), visitor);
            }
        }
    }

    private static void require(double combinations) {
        if (combinations > MOST_COMBINATIONS) {
            throw new TooLargeException(
                    "combinations of what the parents may be",
                    combinations,
                    MOST_COMBINATIONS,
                    "ask about fewer traits, or state more of the parents' genotypes.");
        }
    }

    private static List<List<ParentBox>> product(List<List<ParentBox>> sires) {
        List<List<ParentBox>> all = new ArrayList<>();
        all.add(ImmutableList.of());
        for (List<ParentBox> boxes : sires) {
            List<List<ParentBox>> longer = new ArrayList<>();
            for (List<ParentBox> before : all) {
                for (ParentBox box : boxes) {
                    longer.add(ImmutableList.<ParentBox>builder()
                            .addAll(before)
                            .add(box)
                            .build());
                }
            }
            all = longer;
        }
        return all;
    }

    private void combine(
            List<Map<UnitKits, BigInteger>> byUnit,
            int level,
            BigInteger weight,
            List<UnitKits> chosen,
            Visitor visitor) {
        if (level == byUnit.size()) {
            visitor.visit(weight, young(chosen));
            return;
        }
        byUnit.get(level).forEach((kits, share) -> {
            chosen.add(kits);
            combine(byUnit, level + 1, weight.multiply(share), chosen, visitor);
            chosen.remove(chosen.size() - 1);
        });
    }

    private List<Young> young(List<UnitKits> units) {
        List<Young> young = new ArrayList<>();
        for (int i = 0; i < sires.size(); i++) {
            int sire = i;
            KitLaw daughters = KitLaw.of(
                    Sex.FEMALE,
                    units.stream().map(unit -> unit.daughters().get(sire)).toList());
            Optional<KitLaw> sons = bothSexes
                    ? Optional.of(KitLaw.of(
                            Sex.MALE,
                            units.stream().map(unit -> unit.sons().get(sire)).toList()))
                    : Optional.empty();
            young.add(new Young(daughters, sons));
        }
        return young;
    }

    private Map<UnitKits, BigInteger> kits(Unit unit, List<ParentBox> males, ParentBox dam, boolean enumerated) {
        List<Map<Gametes, BigInteger>> fromMales = males.stream()
                .map(male -> gametes(unit, male.at(unit), enumerated))
                .toList();
        Map<UnitKits, BigInteger> classes = new LinkedHashMap<>();
        gametes(unit, dam.at(unit), enumerated)
                .forEach((eggs, weight) -> unite(unit, fromMales, eggs, weight, new ArrayList<>(), classes));
        return classes;
    }

    private void unite(
            Unit unit,
            List<Map<Gametes, BigInteger>> fromMales,
            Gametes eggs,
            BigInteger weight,
            List<Gametes> chosen,
            Map<UnitKits, BigInteger> classes) {
        if (chosen.size() == fromMales.size()) {
            UnitKits kits = new UnitKits(
                    chosen.stream()
                            .map(sperm -> new Fertilisation(unit, Sex.FEMALE, sperm, eggs).expressions())
                            .toList(),
                    bothSexes
                            ? chosen.stream()
                                    .map(sperm -> new Fertilisation(unit, Sex.MALE, sperm, eggs).expressions())
                                    .toList()
                            : ImmutableList.of());
            classes.merge(kits, weight, BigInteger::add);
            return;
        }
        fromMales.get(chosen.size()).forEach((sperm, share) -> {
            chosen.add(sperm);
            unite(unit, fromMales, eggs, weight.multiply(share), chosen, classes);
            chosen.remove(chosen.size() - 1);
        });
    }

    private Map<Gametes, BigInteger> gametes(Unit unit, AtUnit parent, boolean enumerated) {
        Map<Gametes, BigInteger> classes = new LinkedHashMap<>();
        if (enumerated) {
            parent.each(unit, (one, weight) -> classes.merge(Gametes.of(unit, one, mutating), weight, BigInteger::add));
        } else {
            classes.put(Gametes.of(unit, parent, mutating), parent.mass());
        }
        return classes;
    }
}
