package org.geneticsrules.cross;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.collect.ImmutableMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sighting;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What questions about matings are made of: males, mates, litters and how much a test may miss. */
class MatingPartsTest {

    private static final Model MODEL = Model.builder(
                    "parts", "1", Catalogue.builder("parts.traits", "1").build())
            .locus(
                    "A",
                    locus -> locus.alleles("A", "a")
                            .dominant("A", "a")
                            .shows("A", "full")
                            .shows("a", "none"))
            .build();

    private static final Parent CARRIER = parent("A/a");
    private static final Parent FREE = parent("A/A");
    private static final Probability HALF = Probability.of(1, 2);

    private static Parent parent(String genotype) {
        return Parent.among(GenotypeSet.parse(MODEL, genotype, OmittedLoci.UNKNOWN));
    }

    @Test
    void males_share_the_whole_of_the_litter() {
        Sires two = Sires.perKit(List.of(CARRIER, FREE), List.of(HALF, HALF));
        assertTrue(two.perKit());
        assertFalse(Sires.oneOf(List.of(CARRIER, FREE), List.of(HALF, HALF)).perKit());
        assertEquals(List.of(Probability.ONE), Sires.of(CARRIER).access());
        for (List<Probability> access : List.of(
                List.<Probability>of(),
                List.of(Probability.ONE),
                List.of(HALF, Probability.of(1, 3)),
                List.of(Probability.of(2, 3), HALF))) {
            assertThrows(
                    IllegalArgumentException.class,
                    () -> Sires.oneOf(List.of(CARRIER, FREE), access),
                    access::toString);
        }
        assertThrows(IllegalArgumentException.class, () -> Sires.oneOf(List.of(), List.of()));
    }

    @Test
    void a_litter_holds_up_to_a_thousand_kits() {
        assertEquals("1 kit", LitterSize.of(1).name());
        assertEquals("0 kits", LitterSize.of(0).name());
        assertEquals("2 kits", LitterSize.of(2).name());
        assertEquals(Distribution.certain(1000), LitterSize.of(1000).count(Probability.ONE));
        assertEquals(Distribution.certain(0), LitterSize.of(0).count(HALF));
        assertThrows(IllegalArgumentException.class, () -> LitterSize.of(-1));
        assertThrows(IllegalArgumentException.class, () -> Binomial.of(HALF, 1001));
        IllegalArgumentException refused = assertThrows(IllegalArgumentException.class, () -> LitterSize.of(1001));
        assertEquals("the number of kits must be 0 to 1000, but was 1001", refused.getMessage());
    }

    /** Half of the litters have one kit and half three, by hand: at 1/2 each, (1/2 + 1/8) / 2 show nothing. */
    @Test
    void a_litter_of_varying_size_mixes_the_counts() {
        LitterSize sizes = LitterSize.named("one or three", Distribution.ofWeights(ImmutableMap.of(1, 1, 3, 1)));
        assertEquals(Distribution.ofWeights(ImmutableMap.of(0, 5, 1, 7, 2, 3, 3, 1)), sizes.count(HALF));
        assertEquals(Probability.of(5, 16), sizes.none(HALF));
        assertEquals(Optional.empty(), sizes.source());
    }

    @Test
    void mates_are_chosen_by_their_looks() {
        Sighting white = Sighting.of(Phenotype.of("coat", "white"));
        Sighting again = Sighting.of(Phenotype.of("coat", "coloured"));
        Mate known = Mate.of(CARRIER).seen(white);
        assertEquals(new Mate.Known(CARRIER.seen(white)), known);
        assertEquals(List.of(), known.seen());
        assertFalse(known.areSibs());
        assertSame(known, known.asSibs());
        Mate own = Mate.ownYoung(FREE).seen(white).asSibs().seen(again);
        assertEquals(new Mate.OwnYoung(FREE, List.of(white, again), true), own);
        Mate others = Mate.youngOf(CARRIER, FREE).asSibs().seen(white);
        assertEquals(new Mate.YoungOf(CARRIER, FREE, List.of(white), true), others);
        assertFalse(Mate.youngOf(CARRIER, FREE).areSibs());
        assertFalse(Mate.ownYoung(FREE).areSibs());
    }

    @Test
    void a_known_genotype_brings_its_phase_along() {
        Genotype genotype = Genotype.parse(MODEL, "A/a");
        assertEquals(genotype.phase(), Parent.of(MODEL, genotype).phase());
        assertEquals(CARRIER, Parent.of(MODEL, genotype));
    }

    /**
     * The sib of an affected animal carries with 2/3; after 5 clear young by an affected mate, each of which a carrier would miss with
     * 1/2, it carries with 1/17 (calculated; see CarrierArithmeticTest).
     */
    @ParameterizedTest
    @CsvSource({
        "2/3, 1/17, 1/32",
        "2/3, 1/2, 1/2",
        "1/2, 1/9, 1/8",
        "1, 1, 1",
        "1/3, 1/3, 1",
        "1/4, 1/2, 1",
        "2/3, 0, 0"
    })
    void the_miss_that_leaves_a_given_doubt(String before, String after, String miss) {
        assertEquals(Probability.parse(miss), Detection.missFor(Probability.parse(before), Probability.parse(after)));
    }

    /** Calculated exactly: the fewest young of a test mating below 5 %, 1 % and 0.1 %, as in every table of test matings. */
    @ParameterizedTest
    @CsvSource({
        "1/2, 0.05, 5",
        "1/2, 0.01, 7",
        "1/2, 0.001, 10",
        "3/4, 0.05, 11",
        "3/4, 0.01, 17",
        "3/4, 0.001, 25",
        "7/8, 0.05, 23",
        "7/8, 0.01, 35",
        "7/8, 0.001, 52",
        "1/2, 1/32, 5",
        "1/2, 0.99, 1",
        "999/1000, 0.05, 2995"
    })
    void young_needed_in_a_test_mating(String miss, String atMost, int young) {
        Probability each = Probability.parse(miss);
        Detection detection = Detection.of(Distribution.certain(each));
        assertEquals(new Detection.Reached(young, each.pow(young)), detection.fewest(Probability.parse(atMost)));
    }

    /** Two thirds of the animals never show it: 2/3 + 1/3 x (1/2)^n, by hand. */
    @Test
    void what_all_steps_have_in_common_remains() {
        Map<Probability, Integer> steps = ImmutableMap.of(Probability.ONE, 2, HALF, 1);
        Detection detection = Detection.of(Distribution.ofWeights(steps));
        assertEquals(Probability.ONE, detection.missed(0));
        assertEquals(Probability.of(5, 6), detection.missed(1));
        assertEquals(Probability.of(3, 4), detection.missed(2));
        assertEquals(Probability.of(2, 3), detection.limit());
        assertEquals(new Detection.Reached(2, Probability.of(3, 4)), detection.fewest(Probability.of(3, 4)));
        assertEquals(new Detection.Never(Probability.of(2, 3)), detection.fewest(Probability.of(2, 3)));
        assertEquals("{1=2/3, 1/2=1/3}", detection.toString());
        assertEquals(detection, Detection.of(Distribution.ofWeights(new LinkedHashMap<>(steps))));
        assertEquals(
                detection.hashCode(),
                Detection.of(Distribution.ofWeights(steps)).hashCode());
        assertNotEquals(detection, Detection.of(Distribution.certain(HALF)));
        assertThrows(IllegalArgumentException.class, () -> detection.missed(-1));
    }

    @ParameterizedTest
    @ValueSource(strings = {"1/1000000", "1/3", "2/3", "99/100"})
    void one_step_less_is_never_enough(String atMost) {
        Probability accepted = Probability.parse(atMost);
        Map<Probability, Integer> mixed =
                ImmutableMap.of(Probability.ZERO, 3, Probability.of(1, 10), 2, Probability.of(9, 10), 1);
        Detection detection = Detection.of(Distribution.ofWeights(mixed));
        Detection.Reached fewest = (Detection.Reached) detection.fewest(accepted);
        assertEquals(detection.missed(fewest.steps()), fewest.missed());
        assertTrue(fewest.missed().compareTo(accepted) <= 0);
        assertTrue(detection.missed(fewest.steps() - 1).compareTo(accepted) > 0);
    }
}
