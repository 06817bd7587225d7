package org.geneticsrules.inference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Three alleles, and kits x/y and z/z: one parent is x/z and the other y/z, and which is which cannot change one animal at a time. So two
 * classes of what is possible do not touch (Sheehan &amp; Thomas 1993, Biometrics 49:163, from memory).
 *
 * <p>Populations of sire and dam are chosen so that one class has the chance .2 x .2 / (.2 x .2 + .4 x .4) = 1/5, calculated by hand.
 */
class FrozenClassesTest {

    private static final Model MODEL = Model.builder(
                    "three",
                    "1",
                    Catalogue.builder("three.traits", "1").trait("coat", "any").build())
            .locus(
                    "A",
                    locus -> locus.alleles("x", "y", "z")
                            .dominant("x", "y")
                            .dominant("y", "z")
                            .shows("x", "first")
                            .shows("y", "second")
                            .shows("z", "third"))
            .trait("coat", rule -> rule.otherwise("any"))
            .population("hers", population -> frequencies(population, 4, 2, 4))
            .population("his", population -> frequencies(population, 2, 4, 4))
            .build();

    private static void frequencies(ModelBuilder.PopulationBuilder population, int x, int y, int z) {
        population
                .frequency("A", "x", Probability.of(x, 10))
                .frequency("A", "y", Probability.of(y, 10))
                .frequency("A", "z", Probability.of(z, 10));
    }

    private static final AllelePair XZ = MODEL.locus("A").pair("x", "z");

    private static GenotypeTest tested(String result) {
        return new GenotypeTest(Optional.empty(), "A", Set.of(result), Probability.ZERO);
    }

    /** Two kits that were tested, and two sibs of theirs that were mated, so that there is a loop. */
    private static Pedigree pedigree() {
        return Pedigree.builder("trap", "1")
                .add(Individual.of("dam", Sex.FEMALE).from("hers"))
                .add(Individual.of("sire", Sex.MALE).from("his"))
                .add(Individual.of("first", Sex.MALE).with(tested("x/y")))
                .add(Individual.of("second", Sex.MALE).with(tested("z/z")))
                .add(Individual.of("brother", Sex.MALE))
                .add(Individual.of("sister", Sex.FEMALE))
                .add(Individual.of("inbred", Sex.MALE))
                .add(Litter.of("1", "dam", "sire", "first", "second", "brother", "sister"))
                .add(Litter.of("2", "sister", "brother", "inbred"))
                .build();
    }

    private static Inference inference() {
        return Inference.of(CompiledModel.of(MODEL), pedigree());
    }

    /** The exact answer is the one calculated by hand. */
    @Test
    void one_class_has_a_chance_of_one_fifth() {
        assertEquals(
                0.2,
                inference().conclude(Set.of("A")).at("sire", "A").orElseThrow().chance(XZ),
                1e-12);
    }

    /** Drawing one animal at a time stays in the class where it began, and is wrong by four fifths or by one fifth. */
    @Test
    void one_animal_at_a_time_never_leaves_its_class() {
        Groups question = inference().question(Set.of("A"));
        Layout layout = question.layout(0);
        FactorGraph graph = question.graph(0, layout);
        int sire = layout.carried(1, 0);
        List<Double> errors = new ArrayList<>();
        for (int[] start : List.of(first(graph, sire, true), first(graph, sire, false))) {
            int of = oneAtATime(graph, start, sire, 2_000);
            errors.add(Math.abs(of / 2_000.0 - 0.2));
        }
        assertEquals(List.of(0.2, 0.8), errors.stream().sorted().toList());
    }

    /** The first or the last combination of states that is possible, by the state of one variable. */
    private static int[] first(FactorGraph graph, int variable, boolean least) {
        int[] at = new int[graph.size()];
        int[] found = new int[0];
        for (int i = 0; i >= 0; ) {
            boolean better =
                    found.length == 0 || (least ? at[variable] < found[variable] : at[variable] > found[variable]);
            if (better && weight(graph, at) > 0) {
                found = at.clone();
            }
            for (i = at.length - 1; i >= 0; i--) {
                at[i] = at[i] + 1 == graph.states(i) ? 0 : at[i] + 1;
                if (at[i] > 0) {
                    break;
                }
            }
        }
        return found;
    }

    private static double weight(FactorGraph graph, int[] at) {
        double product = 1;
        for (Factor factor : graph.factors()) {
            int cell = 0;
            for (int v : factor.variables()) {
                cell = cell * graph.states(v) + at[v];
            }
            product *= factor.table()[cell];
        }
        return product;
    }

    /** How often a variable is in its state of x/z, if variables are drawn one after another, each given all others. */
    private static int oneAtATime(FactorGraph graph, int[] start, int variable, int rounds) {
        int[] at = start.clone();
        SplittableRandom random = new SplittableRandom(1);
        int count = 0;
        for (int r = 0; r < rounds; r++) {
            for (int v = 0; v < at.length; v++) {
                double[] weights = new double[graph.states(v)];
                double total = 0;
                for (at[v] = 0; at[v] < weights.length; at[v]++) {
                    weights[at[v]] = weight(graph, at);
                    total += weights[at[v]];
                }
                double left = random.nextDouble() * total;
                at[v] = 0;
                while (left >= weights[at[v]]) {
                    left -= weights[at[v]++];
                }
            }
            count += at[variable] == XZ_STATE ? 1 : 0;
        }
        return count;
    }

    /** Of x/x, x/y, x/z, y/y, y/z, z/z. */
    private static final int XZ_STATE = 2;

    /** With blocks that hold both parents both classes are visited, from whichever the chains start. */
    @ParameterizedTest
    @ValueSource(ints = {64, 1 << 16})
    void blocks_with_both_parents_visit_both_classes(int cells) {
        for (long seed = 0; seed < 10; seed++) {
            Conclusions found = inference()
                    .within(0)
                    .sampling(Sampling.seeded(seed).withBlocks(cells))
                    .conclude(Set.of("A"));
            assertEquals(Standing.SAMPLED, found.standing("sire", "A"));
            Posterior posterior = found.at("sire", "A").orElseThrow();
            assertEquals(0.2, posterior.chance(XZ), 6 * posterior.standardError(XZ) + 1e-12);
        }
    }

    /** With blocks that are too small for that no number is given, whatever the seed. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void blocks_too_small_are_found_out(int cells) {
        for (long seed = 0; seed < 10; seed++) {
            Conclusions found = inference()
                    .within(0)
                    .sampling(Sampling.seeded(seed).withBlocks(cells).withWork(3e5))
                    .conclude(Set.of("A"));
            for (String id : pedigree().individuals().keySet()) {
                assertEquals(Standing.NOT_CONVERGED, found.standing(id, "A"));
                assertTrue(found.at(id, "A").isEmpty());
            }
            assertTrue(found.isConsistent());
        }
    }

    /** Blocks of any size: a number that is given is right. */
    @Test
    void no_size_of_blocks_gives_a_wrong_number() {
        for (int cells = 1; cells <= 256; cells = 1 + cells * 3 / 2) {
            Conclusions found = inference()
                    .within(0)
                    .sampling(Sampling.seeded(cells).withBlocks(cells).withWork(3e5))
                    .conclude(Set.of("A"));
            found.at("sire", "A")
                    .ifPresent(posterior ->
                            assertEquals(0.2, posterior.chance(XZ), 6 * posterior.standardError(XZ) + 1e-12));
        }
    }
}
