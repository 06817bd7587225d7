package org.geneticsrules.expression;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Clock;
import org.geneticsrules.trait.Condition;

/** Small invented models for tests of chance, stages and thresholds. */
final class SketchOfLife {

    private SketchOfLife() {}

    static Distribution<String> chances(String... stateAndChance) {
        Map<String, Probability> chances = new LinkedHashMap<>();
        for (int i = 0; i < stateAndChance.length; i += 2) {
            chances.put(stateAndChance[i], Probability.parse(stateAndChance[i + 1]));
        }
        return Distribution.of(chances);
    }

    /** White hairs that spread with each moult, and two masks, one of which reads them. */
    static Model whitening() {
        Catalogue catalogue = Catalogue.builder("invented.traits", "1")
                .trait("hue", "black", "chocolate", "none")
                .trait("eye", "black", "pink")
                .trait("white hairs", "none", "few", "half", "all")
                .build();
        return Model.builder("invented.whitening", "1", catalogue)
                .locus(
                        "C",
                        locus -> locus.alleles("C", "c")
                                .dominant("C", "c")
                                .shows("C", "pigment")
                                .shows("c", "albino"))
                .locus(
                        "B",
                        locus -> locus.alleles("B", "b")
                                .dominant("B", "b")
                                .shows("B", "dark")
                                .shows("b", "brown"))
                .locus(
                        "M",
                        locus -> locus.alleles("M", "m")
                                .shows("M", "plain")
                                .shows("M/m", "one dose")
                                .shows("m", "two doses"))
                .trait(
                        "hue",
                        trait -> trait.when(Condition.where("B", "dark"), "black")
                                .when(Condition.where("B", "brown"), "chocolate"))
                .trait(
                        "eye",
                        trait -> trait.when(Condition.where("C", "albino"), "pink")
                                .otherwise("black"))
                .trait(
                        "white hairs",
                        trait -> trait.when("plain", Condition.where("M", "plain"), certain("none"))
                                .when("two", Condition.where("M", "two doses"), certain("all"))
                                .when("one", Condition.where("M", "one dose"), spreading()))
                .mask(Mask.of("albino", Condition.where("C", "albino"))
                        .covering("hue", "none")
                        .covering("white hairs", "all")
                        .over("whitened"))
                .mask(Mask.of("whitened", Condition.where("white hairs", "all")).covering("hue", "none"))
                .build();
    }

    static CaseState certain(String state) {
        return new CaseState.Certain(state);
    }

    static CaseState.Progression spreading() {
        return new CaseState.Progression(
                Clock.MOULT,
                chances("few", "3/4", "half", "1/4"),
                Map.of("few", chances("few", "1/2", "half", "1/2"), "half", chances("half", "2/3", "all", "1/3")),
                true);
    }

    /** One trait that counts the capital alleles of some loci, with a state for every sum. */
    static Model counting(int loci, Distribution<Integer> residual) {
        int least =
                residual.outcomes().stream().mapToInt(Integer::intValue).min().orElseThrow();
        int most =
                residual.outcomes().stream().mapToInt(Integer::intValue).max().orElseThrow() + 2 * loci;
        Map<String, Integer> cuts = new LinkedHashMap<>();
        String[] states = new String[most - least + 1];
        for (int sum = least; sum <= most; sum++) {
            states[sum - least] = "grade " + (char) ('a' + (sum - least) / 26) + (char) ('a' + (sum - least) % 26);
            if (sum > least) {
                cuts.put(states[sum - least], sum);
            }
        }
        Catalogue catalogue =
                Catalogue.builder("invented.sums", "1").trait("grade", states).build();
        var builder = Model.builder("invented.counting", "1", catalogue);
        Map<String, Map<String, Integer>> doses = new LinkedHashMap<>();
        for (int i = 1; i <= loci; i++) {
            String big = "P" + i;
            String small = "p" + i;
            builder.locus(
                    "L" + i,
                    locus -> locus.alleles(big, small)
                            .shows(big, "two")
                            .shows(big + "/" + small, "one")
                            .shows(small, "no"));
            doses.put("L" + i, Map.of("one", 1, "two", 2));
        }
        return builder.trait(
                        "grade",
                        trait -> trait.otherwise(
                                new CaseState.Threshold(doses, residual, states[0], cuts), Optional.empty()))
                .build();
    }
}
