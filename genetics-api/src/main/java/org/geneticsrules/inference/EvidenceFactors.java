package org.geneticsrules.inference;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.expression.WeightedBox;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Sex;

/**
 * The factors of the records of one animal: one for each unit of which all boxes say the same, and one for all units together of which
 * they do not.
 */
final class EvidenceFactors {

    /** Larger tables than this of one animal are refused. */
    static final double MOST_CELLS = 1 << 24;

    private final KindredGraph kindred;
    private final int member;
    private final boolean open;
    private final boolean weighted;

    EvidenceFactors(KindredGraph kindred, int member, boolean weighted) {
        this.kindred = kindred;
        this.member = member;
        this.open = kindred.sex(member).isPresent();
        this.weighted = weighted;
    }

    void add(Evidence evidence) {
        List<WeightedBox> boxes =
                evidence.boxes().stream().filter(this::mayBeOfSex).toList();
        List<Integer> differing = new ArrayList<>();
        for (int u = 0; u < kindred.units().size(); u++) {
            int unit = u;
            Set<List<Optional<Allowed>>> told = new LinkedHashSet<>();
            boxes.forEach(box -> told.add(conditions(box, unit)));
            if (told.size() > 1) {
                differing.add(u);
            } else if (told.stream().anyMatch(conditions -> conditions.stream().anyMatch(Optional::isPresent))) {
                table(List.of(u), List.of(new WeightedBox(boxes.get(0).box(), Probability.ONE)), false);
            }
        }
        boolean readsSex =
                open && boxes.stream().anyMatch(box -> box.box().variables().containsKey(Sex.VARIABLE));
        if (!differing.isEmpty() || readsSex) {
            table(differing, boxes, readsSex);
        } else {
            // one box, whose conditions are told; or none, where no animal can be recorded so
            double[] table = new double[kindred.states(member, 0)];
            Arrays.fill(table, boxes.isEmpty() ? 0 : weigh(boxes.get(0)));
            kindred.graph().add(table, kindred.carried(member, 0));
        }
        evidence.tests().forEach(this::test);
    }

    private double weigh(WeightedBox box) {
        return weighted ? box.weight().toDouble() : 1;
    }

    private boolean mayBeOfSex(WeightedBox box) {
        Allowed sexes = box.box().variables().get(Sex.VARIABLE);
        return open || sexes == null || sexes.allows(kindred.sexOf(member, 0).word());
    }

    private List<Optional<Allowed>> conditions(WeightedBox box, int unit) {
        return kindred.units().get(unit).loci().stream()
                .map(locus -> Optional.ofNullable(box.box().variables().get(locus.id())))
                .toList();
    }

    /** A factor over some units, and over the sex where that is open and matters to it. */
    private void table(List<Integer> units, List<WeightedBox> boxes, boolean readsSex) {
        boolean withSex = open
                && (readsSex
                        || units.stream()
                                .flatMap(u -> kindred.units().get(u).loci().stream())
                                .anyMatch(Locus::dependsOnSex));
        List<Integer> variables = new ArrayList<>();
        double cells = withSex ? 2 : 1;
        if (withSex) {
            variables.add(kindred.sex(member).orElseThrow());
        }
        for (int u : units) {
            variables.add(kindred.carried(member, u));
            cells *= kindred.states(member, u);
        }
        if (cells > MOST_CELLS) {
            throw new TooLargeException(
                    "combinations of genotypes that the records of one animal tie together",
                    cells,
                    MOST_CELLS,
                    "leave out a trait that many loci decide, or record it more exactly.");
        }
        double[] table = new double[(int) cells];
        int[] at = new int[units.size()];
        for (int cell = 0; cell < table.length; cell++) {
            int rest = cell;
            for (int i = units.size() - 1; i >= 0; i--) {
                int width = kindred.states(member, units.get(i));
                at[i] = rest % width;
                rest /= width;
            }
            table[cell] =
                    weight(units, at, withSex ? Optional.of(kindred.sexOf(member, rest)) : Optional.empty(), boxes);
        }
        kindred.graph()
                .add(table, variables.stream().mapToInt(Integer::intValue).toArray());
    }

    private double weight(List<Integer> units, int[] at, Optional<Sex> stated, List<WeightedBox> boxes) {
        Optional<Sex> sex = stated;
        for (int i = 0; i < at.length; i++) {
            Sex here = kindred.sexAt(member, units.get(i), at[i]);
            if (kindred.splits(member, units.get(i))) {
                if (sex.isPresent() && sex.get() != here) {
                    return 0;
                }
                sex = Optional.of(here);
            }
        }
        Sex of = sex.orElse(kindred.sexOf(member, 0));
        double sum = 0;
        for (WeightedBox box : boxes) {
            Allowed sexes = box.box().variables().get(Sex.VARIABLE);
            if ((sexes == null || sexes.allows(of.word())) && holds(units, at, of, box)) {
                sum += weigh(box);
            }
        }
        return weighted ? sum : Math.min(sum, 1);
    }

    private boolean holds(List<Integer> units, int[] at, Sex sex, WeightedBox box) {
        for (int i = 0; i < at.length; i++) {
            List<Locus> loci = kindred.units().get(units.get(i)).loci();
            for (int l = 0; l < loci.size(); l++) {
                Allowed allowed = box.box().variables().get(loci.get(l).id());
                if (allowed != null
                        && !allowed.allows(loci.get(l).expression(kindred.pair(member, units.get(i), at[i], l), sex))) {
                    return false;
                }
            }
        }
        return true;
    }

    private void test(Evidence.Test test) {
        for (int u = 0; u < kindred.units().size(); u++) {
            List<Locus> loci = kindred.units().get(u).loci();
            for (int l = 0; l < loci.size(); l++) {
                if (loci.get(l).id().equals(test.locus())) {
                    double[] table = new double[kindred.states(member, u)];
                    for (int state = 0; state < table.length; state++) {
                        Sex sex = kindred.sexAt(member, u, state);
                        AllelePair pair = kindred.pair(member, u, state, l);
                        table[state] = reported(test, loci.get(l).pairs(sex), pair);
                    }
                    kindred.graph().add(table, kindred.carried(member, u));
                }
            }
        }
    }

    /** The chance of what was reported: each genotype but the true one is reported in error equally often. */
    private double reported(Evidence.Test test, List<AllelePair> possible, AllelePair pair) {
        double error = possible.size() == 1 ? 0 : test.error();
        double sum = 0;
        for (AllelePair result : test.result()) {
            if (possible.contains(result)) {
                sum += result.equals(pair) ? 1 - error : error / (possible.size() - 1);
            }
        }
        return weighted ? sum : sum > 0 ? 1 : 0;
    }
}
