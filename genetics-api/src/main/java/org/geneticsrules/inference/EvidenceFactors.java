package org.geneticsrules.inference;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.geneticsrules.expression.WeightedBox;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Sex;

/**
 * The factors of the records of animals: one for each unit of which all boxes say the same, and one for all units together of which they
 * do not. Animals that were recorded alike share tables.
 */
final class EvidenceFactors {

    /** Larger tables than this of one animal are refused. */
    static final double MOST_CELLS = 1 << 24;

    private final Layout layout;
    private final FactorGraph graph;
    private final boolean first;
    private final IdentityHashMap<List<WeightedBox>, Map<Sexes, List<Part>>> known = new IdentityHashMap<>();
    private final Map<List<Object>, Part> single = new HashMap<>();
    private final Map<List<Object>, double[]> tests = new LinkedHashMap<>();

    /** What is known of an animal's sex: a sex, or that it is a variable, or neither. */
    private enum Sexes {
        FEMALE,
        MALE,
        OPEN,
        NO_MATTER
    }

    /** A factor without its animal: units, and whether the sex comes before them. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    private record Part(boolean withSex, List<Integer> units, double[] table) {}

    /**
     * Prepares factors.
     *
     * @param layout the variables
     * @param graph where factors go
     * @param first whether weights that are of no unit are counted here
     */
    EvidenceFactors(Layout layout, FactorGraph graph, boolean first) {
        this.layout = layout;
        this.graph = graph;
        this.first = first;
    }

    void add(int member, Evidence evidence) {
        for (Part part : parts(member, evidence)) {
            int[] variables = new int[part.units().size() + (part.withSex() ? 1 : 0)];
            int next = 0;
            if (part.withSex()) {
                variables[next++] = layout.sex(member).orElseThrow();
            }
            for (int u : part.units()) {
                variables[next++] = layout.carried(member, u);
            }
            graph.add(part.table(), variables);
        }
        for (Evidence.Test test : evidence.tests()) {
            for (int u = 0; u < layout.heredity().size(); u++) {
                if (tests(u, test)) {
                    graph.add(test(member, u, test), layout.carried(member, u));
                }
            }
        }
    }

    /** What is said of some units of an animal to which its sex does not matter, or is known. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    record Said(List<Integer> units, double[] table) {}

    /** All that is said of the units of an animal. */
    List<Said> said(int member, Evidence evidence) {
        List<Said> all = new ArrayList<>();
        for (Part part : parts(member, evidence)) {
            if (part.withSex()) {
                throw new IllegalStateException("the records of animal " + member + " tie units to its sex");
            }
            all.add(new Said(part.units(), part.table()));
        }
        for (Evidence.Test test : evidence.tests()) {
            for (int u = 0; u < layout.heredity().size(); u++) {
                if (tests(u, test)) {
                    all.add(new Said(List.of(u), test(member, u, test)));
                }
            }
        }
        return all;
    }

    /** Whether what is said of an animal ties its units to one another or to the sex. */
    boolean tiesUnits(int member, Evidence evidence) {
        return parts(member, evidence).stream()
                .anyMatch(part -> part.withSex() || part.units().size() != 1);
    }

    private List<Part> parts(int member, Evidence evidence) {
        return known.computeIfAbsent(evidence.boxes(), key -> new LinkedHashMap<>())
                .computeIfAbsent(sexes(member), key -> parts(member, evidence.boxes()));
    }

    private Sexes sexes(int member) {
        if (layout.sex(member).isPresent()) {
            return Sexes.OPEN;
        }
        return layout.members()
                .all()
                .get(member)
                .sex()
                .map(sex -> sex == Sex.FEMALE ? Sexes.FEMALE : Sexes.MALE)
                .orElse(Sexes.NO_MATTER);
    }

    private List<Part> parts(int member, List<WeightedBox> all) {
        List<WeightedBox> boxes =
                all.stream().filter(box -> mayBeOfSex(member, box)).toList();
        List<Unit> units = layout.heredity().stream().map(Heredity::unit).toList();
        List<Integer> differing = Ties.differing(units, boxes);
        List<Part> parts = new ArrayList<>();
        for (int u = 0; u < units.size(); u++) {
            if (boxes.isEmpty() || differing.contains(u)) {
                continue;
            }
            List<Optional<Allowed>> conditions = Ties.conditions(units.get(u), boxes.get(0));
            if (conditions.stream().anyMatch(Optional::isPresent)) {
                List<Object> key = List.of(u, conditions, sexes(member));
                Part before = single.get(key);
                if (before == null) {
                    before = part(
                            member,
                            List.of(u),
                            List.of(new WeightedBox(carried(boxes.get(0)), Probability.ONE)),
                            false);
                    single.put(key, before);
                }
                parts.add(before);
            }
        }
        boolean readsSex = layout.sex(member).isPresent()
                && boxes.stream().anyMatch(box -> box.box().variables().containsKey(Sex.VARIABLE));
        if (!differing.isEmpty() || readsSex) {
            parts.add(part(member, differing, boxes, readsSex));
        } else if (boxes.isEmpty() || (first && boxes.size() == 1 && isOfNoUnit(member, boxes.get(0)))) {
            // one box, whose conditions are told; or none, where no animal can be recorded so
            parts.add(new Part(
                    false,
                    List.of(0),
                    constant(
                            layout.states(member, 0),
                            boxes.isEmpty() ? 0 : boxes.get(0).weight().toDouble())));
        }
        return parts;
    }

    /** Whether the weight of the only box is counted apart: a weight that goes with a sex that is not known is counted with that sex. */
    private boolean isOfNoUnit(int member, WeightedBox box) {
        boolean tellsSex = box.box().variables().containsKey(Sex.VARIABLE)
                && layout.members().all().get(member).sex().isEmpty();
        return !box.weight().isOne() && !tellsSex;
    }

    /** What a box says of what is carried. What it says of the sex belongs to all boxes together. */
    private static Condition carried(WeightedBox box) {
        Map<String, Allowed> carried = new LinkedHashMap<>(box.box().variables());
        carried.remove(Sex.VARIABLE);
        return new Condition(carried);
    }

    static double[] constant(int states, double weight) {
        double[] table = new double[states];
        Arrays.fill(table, weight);
        return table;
    }

    private boolean mayBeOfSex(int member, WeightedBox box) {
        Allowed sexes = box.box().variables().get(Sex.VARIABLE);
        Optional<Sex> known = layout.members().all().get(member).sex();
        return sexes == null || known.isEmpty() || sexes.allows(known.get().word());
    }

    /** A factor over some units, and over the sex where that is open and matters to it. */
    private Part part(int member, List<Integer> units, List<WeightedBox> boxes, boolean readsSex) {
        boolean withSex = layout.sex(member).isPresent()
                && (readsSex
                        || units.stream().flatMap(u -> layout.loci(u).stream()).anyMatch(Locus::dependsOnSex));
        double cells = withSex ? 2 : 1;
        for (int u : units) {
            cells *= layout.states(member, u);
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
                int width = layout.states(member, units.get(i));
                at[i] = rest % width;
                rest /= width;
            }
            Optional<Sex> sex = withSex ? Optional.of(layout.sexOf(member, rest)) : Optional.empty();
            table[cell] = weight(member, units, at, sex, boxes);
        }
        return new Part(withSex, units, table);
    }

    private double weight(int member, List<Integer> units, int[] at, Optional<Sex> stated, List<WeightedBox> boxes) {
        Optional<Sex> sex = stated;
        for (int i = 0; i < at.length; i++) {
            if (layout.splits(member, units.get(i))) {
                Sex here = layout.sexAt(member, units.get(i), at[i]);
                if (sex.isPresent() && sex.get() != here) {
                    return 0;
                }
                sex = Optional.of(here);
            }
        }
        Sex of = sex.orElse(layout.sexOf(member, 0));
        double sum = 0;
        for (WeightedBox box : boxes) {
            Allowed sexes = box.box().variables().get(Sex.VARIABLE);
            boolean may = sexes == null || sexes.allows(of.word());
            if (may && holds(member, units, at, of, box)) {
                sum += box.weight().toDouble();
            }
        }
        return sum;
    }

    private boolean holds(int member, List<Integer> units, int[] at, Sex sex, WeightedBox box) {
        for (int i = 0; i < at.length; i++) {
            List<Locus> loci = layout.loci(units.get(i));
            for (int l = 0; l < loci.size(); l++) {
                Allowed allowed = box.box().variables().get(loci.get(l).id());
                if (allowed != null
                        && !allowed.allows(loci.get(l).expression(layout.pair(member, units.get(i), at[i], l), sex))) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Whether a test is of a locus of a unit. */
    private boolean tests(int unit, Evidence.Test test) {
        return layout.loci(unit).stream().anyMatch(locus -> locus.id().equals(test.locus()));
    }

    private double[] test(int member, int unit, Evidence.Test test) {
        List<Locus> loci = layout.loci(unit);
        int tested = 0;
        while (!loci.get(tested).id().equals(test.locus())) {
            tested++;
        }
        int locus = tested;
        return once(List.of(test, sexes(member)), () -> {
            double[] made = new double[layout.states(member, unit)];
            for (int state = 0; state < made.length; state++) {
                List<AllelePair> possible = loci.get(locus).pairs(layout.sexAt(member, unit, state));
                made[state] = reported(test, possible, layout.pair(member, unit, state, locus));
            }
            return made;
        });
    }

    private double[] once(List<Object> key, Supplier<double[]> make) {
        return tests.computeIfAbsent(key, ignored -> make.get());
    }

    /** The chance of what was reported: each genotype but the true one is reported in error equally often. */
    private static double reported(Evidence.Test test, List<AllelePair> possible, AllelePair pair) {
        double error = possible.size() == 1 ? 0 : test.error();
        double sum = 0;
        for (AllelePair result : test.result()) {
            if (possible.contains(result)) {
                sum += result.equals(pair) ? 1 - error : error / (possible.size() - 1);
            }
        }
        return sum;
    }
}
