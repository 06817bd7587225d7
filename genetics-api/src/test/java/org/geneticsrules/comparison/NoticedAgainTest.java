package org.geneticsrules.comparison;

import static org.geneticsrules.testing.Coats.LIGHT;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.Coats;
import org.junit.jupiter.api.Test;

/** How far a wrong model is ahead on average, of litters noticed for a light kit, by going through all of them by hand. */
class NoticedAgainTest {

    private static final int KITS = 2;

    /** Of parents of whom nothing is known: how often a kit is light, and in which share of couples. */
    private static double[][] couples(double light) {
        double dark = 1 - light;
        double[] of = {dark * dark, 2 * dark * light, light * light};
        double[][] couples = new double[9][];
        for (int couple = 0; couple < 9; couple++) {
            int sire = couple / 3;
            int dam = couple % 3;
            couples[couple] = new double[] {sire * dam / 4.0, of[sire] * of[dam]};
        }
        return couples;
    }

    private static double sequence(double light, int lights) {
        return Math.pow(light, lights) * Math.pow(1 - light, KITS - lights);
    }

    private static double noticed(double light) {
        return 1 - Math.pow(1 - light, KITS);
    }

    private static double ratio(Model rival, int... lights) {
        PedigreeBuilder builder =
                Pedigree.builder("pair", "1").add(Individual.of("sire")).add(Individual.of("dam"));
        for (int t = 0; t < lights.length; t++) {
            Coats.litter(builder, "litter " + t, "", KITS - lights[t], lights[t], Ascertainment.atLeastOne(LIGHT));
        }
        ComparedModels compared = ModelComparison.of(
                        List.of(Candidate.of(Coats.recessive()), Candidate.of(rival)), builder.build())
                .from("even")
                .compare();
        return Math.exp(compared.logRatio(1, 0).orElseThrow());
    }

    /** The ratio of the rival over the recessive model with allele frequencies 1/2, on average over couples all of whose litters are noticed. */
    private static double average(Model rival, int litters) {
        double all = 0;
        double sum = 0;
        for (double[] couple : couples(0.5)) {
            all += couple[1] * Math.pow(noticed(couple[0]), litters);
        }
        for (int first = 1; first <= KITS; first++) {
            for (int second = 1; second <= (litters > 1 ? KITS : 1); second++) {
                double chance = 0;
                for (double[] couple : couples(0.5)) {
                    double one = sequence(couple[0], first) * (first == 1 ? 2 : 1);
                    double other = litters > 1 ? sequence(couple[0], second) * (second == 1 ? 2 : 1) : 1;
                    chance += couple[1] * one * other;
                }
                sum += chance / all * (litters > 1 ? ratio(rival, first, second) : ratio(rival, first));
            }
        }
        return sum;
    }

    @Test
    void one_noticed_litter_of_each_couple_favours_no_wrong_model_on_average() {
        assertEquals(1, average(Coats.recessive("more", Probability.of(9, 10)), 1), 1e-12);
        assertEquals(1, average(Coats.recessive("fewer", Probability.of(1, 10)), 1), 1e-12);
    }

    @Test
    void two_noticed_litters_of_one_couple_may() {
        double more = average(Coats.recessive("more", Probability.of(9, 10)), 2);
        assertEquals(1.13, more, 0.005);
    }
}
