package org.geneticsrules.inference;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Population;
import org.geneticsrules.trait.Sex;

/** What is known of animals by themselves, unit by unit: by their records and, of founders, by their population. */
final class OwnWeights {

    private final Model model;
    private final Layout layout;
    private final List<Evidence> records;
    private final EvidenceFactors evidence;
    private final Map<List<Object>, double[]> founders = new HashMap<>();
    private final boolean halves;
    private final boolean weighed;

    /**
     * Prepares weights.
     *
     * @param model the model
     * @param layout the units; their animals need have no variables
     * @param records what is known of each animal
     * @param first whether weights that are of no unit are counted here
     * @param even whether as many daughters as sons live, whoever the parents are
     * @param weighed whether founders are weighed by their populations, or all that can live are alike
     */
    OwnWeights(Model model, Layout layout, List<Evidence> records, boolean first, boolean even, boolean weighed) {
        this.model = model;
        this.layout = layout;
        this.records = records;
        this.evidence = new EvidenceFactors(layout, new FactorGraph(), first);
        this.halves = first && even;
        this.weighed = weighed;
    }

    /**
     * Weighs the states of an animal.
     *
     * @param member the animal
     * @param units numbers of units that its records tie to no others
     * @return the weight of each state of all these units, that of the last changing fastest
     */
    double[] of(int member, List<Integer> units) {
        double[] weights = {1};
        for (int unit : units) {
            weights = times(weights, before(member, unit));
        }
        for (EvidenceFactors.Said said : evidence.said(member, records.get(member))) {
            if (units.containsAll(said.units())) {
                multiply(weights, member, units, said);
            } else if (said.units().stream().anyMatch(units::contains)) {
                throw new IllegalStateException("the records of animal " + member + " tie units");
            }
        }
        return weights;
    }

    private static double[] times(double[] one, double[] other) {
        double[] product = new double[one.length * other.length];
        for (int i = 0; i < product.length; i++) {
            product[i] = one[i / other.length] * other[i % other.length];
        }
        return product;
    }

    private void multiply(double[] weights, int member, List<Integer> units, EvidenceFactors.Said said) {
        for (int state = 0; state < weights.length; state++) {
            int place = 0;
            int stride = 1;
            // the place in the table of these units is put together from the last one
            for (int i = said.units().size() - 1; i >= 0; i--) {
                int unit = said.units().get(i);
                place += stride * digit(state, member, units, unit);
                stride *= layout.states(member, unit);
            }
            weights[state] *= said.table()[place];
        }
    }

    /** The state at one unit in a state of several. */
    private int digit(int state, int member, List<Integer> units, int unit) {
        int rest = state;
        for (int i = units.size() - 1; units.get(i) != unit; i--) {
            rest /= layout.states(member, units.get(i));
        }
        return rest % layout.states(member, unit);
    }

    /** What is known of an animal at a unit without its records. */
    private double[] before(int member, int unit) {
        Heredity here = layout.heredity().get(unit);
        Member one = layout.members().all().get(member);
        Sex sex = layout.sexOf(member, 0);
        if (one.isFounder()) {
            return founders.computeIfAbsent(
                    List.of(unit, sex, one.population()),
                    key -> weighed ? here.founders(sex, population(one)) : here.living(sex));
        }
        double[] weights = new double[here.states(sex)];
        // half of all kits are of the sex recorded
        Arrays.fill(weights, halves && unit == 0 && one.sex().isPresent() ? 0.5 : 1);
        return weights;
    }

    /** Whether the records of an animal of known sex, or to which its sex does not matter, tie units. */
    boolean tiesUnits(int member) {
        return evidence.tiesUnits(member, records.get(member));
    }

    private Population population(Member founder) {
        return Objects.requireNonNull(
                model.populations().get(founder.population().orElseThrow()));
    }
}
