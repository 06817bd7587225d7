package org.geneticsrules.inference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.Once;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** Very many records that speak against what others demand: unlikely is not impossible, and what is beyond numbers is not given. */
@Once
class RangeOfNumbersTest {

    /** A dark male with three hundred dark young of light females is a carrier all the same once one of his young is light. */
    @Test
    void what_is_very_unlikely_is_not_impossible() {
        Conclusions found = darkYoung(300);
        assertEquals(1, found.at("hob", "B").orElseThrow().carries("b"), 1e-12);
        assertEquals(1, found.at("kit 7", "B").orElseThrow().carries("b"), 1e-12);
        // a carrier is one of two, a light female one of four; her kit of that sex and hue one of four
        assertEquals(Math.log(0.5) + 301 * 2 * Math.log(0.25), found.logLikelihood(), 1e-9);
    }

    /** With two thousand the chance is no number any more: it is not given, and no contradiction is claimed. */
    @Test
    void what_is_beyond_numbers_is_not_given() {
        Conclusions found = darkYoung(2000);
        assertTrue(found.isConsistent());
        assertEquals(Conclusions.Standing.TOO_LARGE, found.standing("hob", "B"));
    }

    private static Conclusions darkYoung(int dark) {
        PedigreeBuilder pedigree = Pedigree.builder("many", "1").add(named("hob", "dark", Sex.MALE));
        for (int i = 0; i <= dark; i++) {
            pedigree.add(named("jill " + i, "light", Sex.FEMALE))
                    .add(named("kit " + i, i == dark ? "light" : "dark", Sex.FEMALE))
                    .add(Litter.of("litter " + i, "jill " + i, "hob", "kit " + i));
        }
        return Inference.of(CompiledModel.of(hues()), pedigree.build())
                .from("even")
                .conclude();
    }

    /** Young of females of whom nothing is known speak so little each that scales are multiplied very often. */
    @Test
    void many_families_have_a_likelihood() {
        PedigreeBuilder pedigree = Pedigree.builder("many", "1").add(named("hob", "dark", Sex.MALE));
        for (int i = 0; i < 1100; i++) {
            pedigree.add(Individual.of("kit " + i).with(seen("dark")))
                    .add(new Litter(
                            "litter " + i,
                            Optional.empty(),
                            Paternity.of("hob"),
                            Optional.empty(),
                            OptionalInt.empty(),
                            OptionalInt.empty(),
                            Optional.empty(),
                            List.of("kit " + i)));
        }
        Conclusions found = Inference.of(CompiledModel.of(hues()), pedigree.build())
                .from("even")
                .conclude();
        // he is not a carrier: one of four; that he is one has 0.75 for each kit
        assertEquals(Math.log(0.25 + 0.5 * Math.pow(0.75, 1100)), found.logLikelihood(), 1e-9);
        assertEquals(Conclusions.Standing.EXACT, found.standing("hob", "B"));
    }

    /** One of two dark males sired a light kit; each has three hundred dark young of light females. */
    @Test
    void what_is_very_unlikely_of_two_is_a_half_of_each() {
        Conclusions found = twoMales(300);
        assertEquals(0.5, found.at("hob", "B").orElseThrow().carries("b"), 1e-12);
        assertEquals(0.5, found.at("other", "B").orElseThrow().carries("b"), 1e-12);
        assertEquals(0.5, found.sires("light").get("hob"), 1e-12);
        // either is a carrier and has the light kit: all else is said of each, and of the light kit and its dam
        double carrier = Math.log(0.5) + 300 * 2 * Math.log(0.25);
        double clear = Math.log(0.25) + 300 * (Math.log(0.25) + Math.log(0.5));
        double light = 2 * Math.log(0.25);
        assertEquals(carrier + clear + light, found.logLikelihood(), 1e-9);
        assertEquals(Conclusions.Standing.EXACT, found.standing("hob", "B"));
    }

    /** With two thousand, neither may be one for the other's sake, and the chance of that is no number any more. */
    @Test
    void what_is_beyond_numbers_is_not_given_where_nothing_is_peeled() {
        Conclusions found = twoMales(2000);
        assertTrue(found.isConsistent());
        assertEquals(Conclusions.Standing.TOO_LARGE, found.standing("hob", "B"));
        assertEquals(
                Conclusions.Standing.TOO_LARGE,
                twoMales(2000, inference -> inference.together(List.of("hob", "other"), List.of("B")))
                        .standing());
        assertEquals(
                2,
                twoMales(300, inference -> inference.together(List.of("hob", "other"), List.of("B")))
                        .combinations()
                        .stream()
                        .filter(one -> one.chance() > 0.49)
                        .count());
    }

    /**
     * Two variables that are the same: 460 factors halve the second state of one, and 33 make its first state rare in the other. By hand the
     * second has odds of 2^-460 (0.5 / 0.001)^33 = 10^-49.4, which the way down cannot tell; no number is given, and none is wrong. With 250 and
     * 33 the odds are 10^13.8, and with 460 and none 2^-460.
     */
    @Test
    void what_gets_lost_on_the_way_down_is_noticed_too() {
        assertTrue(same(460, 33).isEmpty());
        double[] likely = same(250, 33).orElseThrow().chances()[1];
        assertEquals(Math.pow(0.5, 250) * Math.pow(500, 33), likely[1] / likely[0], 1e-6 * likely[1] / likely[0]);
        double[] plain = same(460, 0).orElseThrow().chances()[1];
        assertEquals(0, plain[1], 1e-12);
    }

    private static Optional<Posteriors> same(int halving, int rare) {
        FactorGraph graph = new FactorGraph();
        int one = graph.variable(2);
        int other = graph.variable(2);
        graph.add(new double[] {1, 0, 0, 1}, one, other);
        for (int i = 0; i < halving; i++) {
            graph.add(new double[] {1, 0.5}, one);
        }
        for (int i = 0; i < rare; i++) {
            graph.add(new double[] {0.001, 0.5}, other);
        }
        return CliqueTree.plan(graph, Elimination.of(graph), 1e6, () -> {})
                .tree()
                .propagate(() -> {});
    }

    private static Conclusions twoMales(int dark) {
        return twoMales(dark, Inference::conclude);
    }

    private static <T> T twoMales(int dark, Function<Inference, T> question) {
        PedigreeBuilder pedigree = Pedigree.builder("many", "1")
                .add(named("dam", "light", Sex.FEMALE))
                .add(named("light", "light", Sex.FEMALE))
                .add(new Litter(
                        "light",
                        Optional.of("dam"),
                        Paternity.oneOf(
                                Paternity.Candidate.of("hob", Probability.of(1, 2)),
                                Paternity.Candidate.of("other", Probability.of(1, 2))),
                        Optional.empty(),
                        OptionalInt.empty(),
                        OptionalInt.empty(),
                        Optional.empty(),
                        List.of("light")));
        for (String male : List.of("hob", "other")) {
            pedigree.add(named(male, "dark", Sex.MALE));
            for (int i = 0; i < dark; i++) {
                String of = " " + i + " of " + male;
                pedigree.add(named("jill" + of, "light", Sex.FEMALE))
                        .add(named("kit" + of, "dark", Sex.FEMALE))
                        .add(Litter.of("litter" + of, "jill" + of, male, "kit" + of));
            }
        }
        return question.apply(
                Inference.of(CompiledModel.of(hues()), pedigree.build()).from("even"));
    }

    private static Model hues() {
        Catalogue traits =
                Catalogue.builder("litter", "1").trait("hue", "dark", "light").build();
        return Model.builder("litter.model", "1", traits)
                .locus(
                        "B",
                        at -> at.alleles("B", "b")
                                .dominant("B", "b")
                                .shows("B", "dark")
                                .shows("b", "light"))
                .trait(
                        "hue",
                        rule -> rule.when(Condition.where("B", "light"), "light")
                                .otherwise("dark"))
                .population(
                        "even",
                        one -> one.frequency("B", "B", Probability.of(1, 2)).frequency("B", "b", Probability.of(1, 2)))
                .build();
    }

    private static Individual named(String id, String hue, Sex sex) {
        return Individual.of(id, sex).with(seen(hue));
    }

    private static Observation seen(String hue) {
        return Observation.of(LifeStage.unstated(), Phenotype.of("hue", hue));
    }
}
