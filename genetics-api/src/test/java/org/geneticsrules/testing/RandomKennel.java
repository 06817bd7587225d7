package org.geneticsrules.testing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/**
 * Kennels of related animals, so that relations form many loops: few founders, overlapping generations, and one locus of a dominant series.
 * Each is played through once, and of some animals it is recorded what they showed.
 */
public final class RandomKennel {

    private RandomKennel() {}

    /**
     * Returns one locus whose alleles are dominant in order.
     *
     * @param alleles how many there are
     * @return a model with the population {@code even}, in which all are as frequent
     */
    public static Model series(int alleles) {
        String[] ids = new String[alleles];
        String[] states = new String[alleles];
        for (int a = 0; a < alleles; a++) {
            ids[a] = "A" + a;
            states[a] = "shade " + a;
        }
        ModelBuilder builder = Model.builder(
                "series-" + alleles,
                "1",
                Catalogue.builder("series.traits", "1").trait("coat", states).build());
        builder.locus("A", locus -> {
            locus.alleles(ids);
            for (int a = 0; a < alleles; a++) {
                locus.shows(ids[a], states[a]);
                if (a > 0) {
                    locus.dominant(ids[a - 1], ids[a]);
                }
            }
        });
        builder.trait("coat", rule -> {
            for (String state : states) {
                rule.when(Condition.where("A", state), state);
            }
        });
        return builder.population("even", population -> {
                    for (String id : ids) {
                        population.frequency("A", id, Probability.of(1, alleles));
                    }
                })
                .build();
    }

    /**
     * Draws a kennel.
     *
     * @param random where chance comes from
     * @param alleles the alleles of the series
     * @param founders how many founders there are, at least two
     * @param animals how many animals there are together
     * @param window a parent is one of so many born or brought in last
     * @param recorded the share of animals whose coat is recorded
     * @return a pedigree whose records do not contradict one another
     */
    public static Pedigree draw(
            SplittableRandom random, int alleles, int founders, int animals, int window, double recorded) {
        PedigreeBuilder builder = Pedigree.builder("kennel", "1");
        List<int[]> carried = new ArrayList<>();
        for (int i = 0; i < founders; i++) {
            carried.add(new int[] {random.nextInt(alleles), random.nextInt(alleles)});
        }
        int litter = 0;
        List<Litter> litters = new ArrayList<>();
        while (carried.size() < animals) {
            int from = Math.max(0, carried.size() - window);
            int sire = from + random.nextInt(carried.size() - from);
            int dam = from + random.nextInt(carried.size() - from);
            if (sire % 2 == dam % 2) {
                dam = dam % 2 == 0 && dam + 1 < carried.size() ? dam + 1 : Math.max(dam - 1, sire % 2 == 0 ? 1 : 0);
            }
            if (sire % 2 == dam % 2) {
                continue;
            }
            int male = sire % 2 == 0 ? sire : dam;
            int female = sire + dam - male;
            int kits = Math.min(1 + random.nextInt(4), animals - carried.size());
            String[] ids = new String[kits];
            for (int k = 0; k < kits; k++) {
                ids[k] = name(carried.size());
                carried.add(new int[] {carried.get(male)[random.nextInt(2)], carried.get(female)[random.nextInt(2)]});
            }
            litters.add(Litter.of("litter " + litter++, name(female), name(male), ids));
        }
        for (int i = 0; i < carried.size(); i++) {
            Individual one = Individual.of(name(i), i % 2 == 0 ? Sex.MALE : Sex.FEMALE);
            if (random.nextDouble() < recorded) {
                int shown = Math.min(carried.get(i)[0], carried.get(i)[1]);
                one = one.with(new Observation(
                        Optional.empty(), LifeStage.unstated(), Set.of(Phenotype.of("coat", "shade " + shown))));
            }
            builder.add(one);
        }
        litters.forEach(builder::add);
        return builder.build();
    }

    private static String name(int animal) {
        return "animal " + animal;
    }
}
