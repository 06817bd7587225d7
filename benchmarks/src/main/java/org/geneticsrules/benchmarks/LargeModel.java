package org.geneticsrules.benchmarks;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Clock;
import org.geneticsrules.trait.Condition;

/**
 * A model larger than any that is kept for animals: 60 loci of six alleles, 20 traits of ten cases each, 60 masks that cover three traits
 * each, and a trait that sums doses over 40 loci. Some cases draw by chance, some progress, some read another trait; one locus lies on
 * the X, one trait reads the sex, and half of the traits leave combinations without claim. It describes no animal.
 */
final class LargeModel {

    static final int LOCI = 60;
    static final int TRAITS = 20;
    static final int MASKS = 60;
    static final int SUMMED = 40;

    private static final int ALLELES = 6;
    private static final String HIDDEN = "none seen";
    private static final String[] STATES = {"one", "two", "three", "four", "five"};

    private LargeModel() {}

    static Catalogue catalogue() {
        Catalogue.Builder catalogue = Catalogue.builder("measure.large.traits", "1.0.0");
        for (int trait = 0; trait < TRAITS; trait++) {
            catalogue.trait(trait(trait), "one", "two", "three", "four", "five", HIDDEN);
        }
        return catalogue.trait("size", "small", "middling", "large").build();
    }

    static Model build() {
        ModelBuilder model = Model.builder("measure.large", "1.0.0", catalogue());
        for (int locus = 0; locus < LOCI; locus++) {
            locus(model, locus);
        }
        model.group(LinkageGroup.single(Transmission.X, locus(LOCI - 1)));
        for (int trait = 0; trait < TRAITS; trait++) {
            trait(model, trait);
        }
        for (int mask = 0; mask < MASKS; mask++) {
            String first = locus(mask);
            String second = locus((mask + 1) % LOCI);
            Mask one = Mask.of("m" + mask, Condition.where(first, look(5)).and(second, look(0), look(1), look(2)));
            for (int i = 0; i < 3; i++) {
                one = one.covering(trait((mask / 3 + i) % TRAITS), HIDDEN);
            }
            model.mask(one);
        }
        Map<String, Map<String, Integer>> doses = new LinkedHashMap<>();
        for (int locus = 0; locus < SUMMED; locus++) {
            doses.put(locus(locus), Map.of(look(0), 2, look(1), 1, look(2), 1));
        }
        Map<String, Integer> cuts = new LinkedHashMap<>();
        cuts.put("middling", SUMMED / 2);
        cuts.put("large", SUMMED + SUMMED / 2);
        Map<Integer, Integer> residual = Map.of(-1, 1, 0, 2, 1, 1);
        CaseState sum = new CaseState.Threshold(doses, Distribution.ofWeights(residual), "small", cuts);
        return model.trait("size", rule -> rule.otherwise(sum, Optional.empty()))
                .build();
    }

    private static void locus(ModelBuilder model, int number) {
        model.locus(locus(number), at -> {
            String[] alleles = new String[ALLELES];
            for (int i = 0; i < ALLELES; i++) {
                alleles[i] = "a" + number + "." + i;
            }
            at.alleles(alleles);
            for (int i = 0; i < ALLELES; i++) {
                at.shows(alleles[i], look(i));
                if (i > 0) {
                    at.dominant(alleles[i - 1], alleles[i]);
                }
            }
        });
    }

    /** Ten cases over three loci: five looks of the first, each split by the second or the third. */
    private static void trait(ModelBuilder model, int number) {
        String first = locus(3 * number);
        String second = locus(3 * number + 1);
        String third = locus(3 * number + 2);
        model.trait(trait(number), rule -> {
            for (int i = 0; i < STATES.length; i++) {
                String beside = i % 2 == 0 ? second : third;
                Condition low = Condition.where(first, look(i)).and(beside, look(0), look(1), look(2));
                Condition high = Condition.where(first, look(i)).and(beside, look(3), look(4), look(5));
                if (number == 7) {
                    high = high.and("sex", "female");
                } else if (number > 10) {
                    high = high.and(trait(number - 10), "one", "two", "three");
                }
                rule.when(new Case("low " + i, low, STATES[i], Optional.empty()));
                rule.when("high " + i, high, gives(number, i));
            }
            if (number % 2 == 0) {
                rule.otherwise("one");
            }
        });
    }

    private static CaseState gives(int trait, int state) {
        String here = STATES[state];
        String next = STATES[(state + 1) % STATES.length];
        if (trait % 5 == 3) {
            return new CaseState.Chance(Distribution.ofWeights(Map.of(here, 1, next, 1)));
        }
        if (trait == 12 && state < 2) {
            return new CaseState.Progression(
                    Clock.MOULT,
                    Distribution.certain(here),
                    Map.of(here, Distribution.ofWeights(Map.of(here, 1, next, 1))),
                    true);
        }
        return new CaseState.Certain(next);
    }

    private static String locus(int number) {
        return "L" + number;
    }

    private static String look(int number) {
        return "look " + number;
    }

    private static String trait(int number) {
        return "trait " + number;
    }
}
