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

    /** The weight of each state of an animal at a unit that its records do not tie to another. */
    double[] of(int member, int unit) {
        Heredity here = layout.heredity().get(unit);
        Member one = layout.members().all().get(member);
        Sex sex = layout.sexOf(member, 0);
        double[] weights;
        if (one.isFounder()) {
            weights = founders.computeIfAbsent(
                            List.of(unit, sex, one.population()),
                            key -> weighed ? here.founders(sex, population(one)) : here.living(sex))
                    .clone();
        } else {
            weights = new double[here.states(sex)];
            // half of all kits are of the sex recorded
            Arrays.fill(weights, halves && unit == 0 && one.sex().isPresent() ? 0.5 : 1);
        }
        for (double[] table : evidence.alone(member, unit, records.get(member))) {
            for (int state = 0; state < weights.length; state++) {
                weights[state] *= table[state];
            }
        }
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
