package org.geneticsrules.comparison;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.OptionalInt;
import java.util.function.BiConsumer;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.simulation.DrawnAnimal;
import org.geneticsrules.simulation.DrawnLitter;
import org.geneticsrules.simulation.Founder;
import org.geneticsrules.simulation.PlannedLook;
import org.geneticsrules.simulation.Simulation;
import org.geneticsrules.testing.Coats;
import org.geneticsrules.testing.Once;
import org.geneticsrules.trait.Sighting;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Litters of two carriers that are kept because of their light kits are judged as what they are. More than 1 in 4 of their kits are light
 * (Weinberg 1912; Fisher 1934, Annals of Eugenics 6:13; from memory), which 1 in 4 explains if it is said how they were found, and only then.
 */
@Once
class AscertainedDrawsTest {

    private static final int KITS = 3;
    private static final int SETS = 200;

    /** Of 200 sets, each with a chance of 1 in 20, 30 or more are met less than once in ten million times (binomial; 8.7e-8). */
    private static final int MOST = 29;

    static List<Ascertainment> ways() {
        return List.of(
                Ascertainment.atLeastOne(Coats.LIGHT),
                new Ascertainment.Probands(Sighting.of(Coats.LIGHT), Probability.of(1, 4), OptionalInt.empty()));
    }

    /** Litters of tested carriers, light being recessive. */
    private static Iterator<DrawnLitter> litters(Ascertainment how) {
        Model model = Coats.recessive();
        Founder carrier = Founder.of(Genotype.parse(model, "D/d"));
        return Simulation.of(CompiledModel.of(model))
                .seeded(16)
                .looking(PlannedLook.at("coat"))
                .keeping(how)
                .litters(carrier, carrier, LitterSize.of(KITS), Census.SCORED)
                .iterator();
    }

    private static List<DrawnLitter> next(Iterator<DrawnLitter> litters, int number) {
        List<DrawnLitter> next = new ArrayList<>();
        while (next.size() < number) {
            next.add(litters.next());
        }
        return next;
    }

    /** What was written down, each litter of a couple of its own; or the same with all litters called complete. */
    private static Pedigree records(List<DrawnLitter> litters, boolean calledComplete) {
        return records(litters, Coats::carriers, calledComplete);
    }

    private static Pedigree records(
            List<DrawnLitter> litters, BiConsumer<PedigreeBuilder, String> parents, boolean calledComplete) {
        PedigreeBuilder builder = Pedigree.builder("drawn", "1");
        for (int number = 0; number < litters.size(); number++) {
            DrawnLitter litter = litters.get(number);
            String suffix = " " + number;
            parents.accept(builder, suffix);
            List<String> kits = new ArrayList<>();
            for (DrawnAnimal kit : litter.kits()) {
                Individual one = Individual.of("kit" + suffix + "." + kits.size());
                for (Observation seen : kit.observations()) {
                    one = one.with(seen);
                }
                builder.add(one);
                kits.add(one.id());
            }
            builder.add(Litter.of("litter" + suffix, "dam" + suffix, "sire" + suffix, kits.toArray(String[]::new))
                    .with(calledComplete ? Ascertainment.complete() : litter.ascertainment()));
        }
        return builder.build();
    }

    /** How much better a litter is foretold by 1 in 4 light kits of carriers than by 1 in 3: the mean log likelihood ratio. */
    private static double forTheTruth(Pedigree records) {
        return forTheTruth(Coats.lethal(), records);
    }

    /** The same of any other model than the true one. */
    private static double forTheTruth(Model other, Pedigree records) {
        return ModelComparison.of(List.of(Candidate.of(other), Candidate.of(Coats.recessive())), records)
                        .from("even")
                        .compare()
                        .logRatio(1, 0)
                        .orElseThrow()
                / records.litters().size();
    }

    @ParameterizedTest
    @MethodSource("ways")
    void the_true_segregation_is_favoured_and_another_if_litters_are_called_complete(Ascertainment how) {
        List<DrawnLitter> litters = next(litters(how), 2_000);
        double told = forTheTruth(records(litters, false));
        double called = forTheTruth(records(litters, true));
        assertTrue(told > 0, () -> "as told: " + told);
        assertTrue(called < 0, () -> "called complete: " + called);
    }

    @ParameterizedTest
    @MethodSource("ways")
    void the_true_model_is_seldom_rejected_and_often_if_litters_are_called_complete(Ascertainment how) {
        Iterator<DrawnLitter> litters = litters(how);
        int[] rejected = new int[2];
        for (int set = 0; set < SETS; set++) {
            List<DrawnLitter> some = next(litters, 20);
            rejected[0] += isRejected(records(some, false)) ? 1 : 0;
            rejected[1] += isRejected(records(some, true)) ? 1 : 0;
        }
        assertTrue(rejected[0] <= MOST, () -> "as told: " + rejected[0]);
        assertTrue(rejected[1] > MOST, () -> "called complete: " + rejected[1]);
    }

    /**
     * Of parents of whom nothing is known but that they had a light kit, 9 in 16 further kits are light if half of all alleles are d, since each
     * passes d with 1/2 x 1/2 + 1/2. If three quarters of them were, so many would be light without any choice.
     */
    @Test
    void parents_chosen_by_a_light_kit_do_not_make_its_allele_seem_common() {
        Model even = Coats.recessive();
        Founder any = Founder.from(even, "even");
        List<DrawnLitter> litters = next(
                Simulation.of(CompiledModel.of(even))
                        .seeded(16)
                        .looking(PlannedLook.at("coat"))
                        .keeping(new Ascertainment.ParentsChosen(Sighting.of(Coats.LIGHT)))
                        .litters(any, any, LitterSize.of(KITS), Census.SCORED)
                        .iterator(),
                500);
        Model common = Coats.recessive("common", Probability.of(3, 4));
        double told = forTheTruth(common, records(litters, AscertainedDrawsTest::unseen, false));
        double called = forTheTruth(common, records(litters, AscertainedDrawsTest::unseen, true));
        assertTrue(told > 0, () -> "as told: " + told);
        assertTrue(called < 0, () -> "called complete: " + called);
    }

    private static void unseen(PedigreeBuilder builder, String suffix) {
        builder.add(Individual.of("sire" + suffix)).add(Individual.of("dam" + suffix));
    }

    private static boolean isRejected(Pedigree records) {
        return ModelFit.of(Candidate.of(Coats.recessive()), records)
                        .from("even")
                        .drawing(999, 1)
                        .judge()
                        .p()
                        .orElseThrow()
                < 0.05;
    }
}
