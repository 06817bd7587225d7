package org.geneticsrules.planning;

import static org.geneticsrules.planning.Pales.seen;
import static org.geneticsrules.planning.Pales.tested;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.comparison.ComparedModels;
import org.geneticsrules.comparison.ModelComparison;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.planning.KitsNeeded.Design;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.testing.RandomPedigrees;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Kits that cannot live, and questions that are refused. */
class DistinguishingRefusalsTest {

    private static final double EXACT = 1e-9;
    private static final Probability HALF = Probability.of(1, 2);

    private static Pedigree pair(Individual sire, Individual dam) {
        return Pedigree.builder("pair", "1").add(sire).add(dam).build();
    }

    private static final Pedigree UNKNOWN = pair(Individual.of("sire", Sex.MALE), Individual.of("dam", Sex.FEMALE));

    private static Distinguishing asked(Pedigree pedigree, Model... models) {
        return Distinguishing.of(List.of(models).stream().map(Candidate::of).toList(), pedigree)
                .from("even");
    }

    private static double chance(Worth worth, Map<String, Integer> found, int model) {
        return worth.outcomes().stream()
                .filter(one -> one.found().equals(found))
                .mapToDouble(one -> one.chances().get(model))
                .sum();
    }

    /**
     * Where mixed animals die, parents are D/D or d/d, by half; of unlike parents no kit lives. Kits that are looked at therefore have like
     * parents, and all of a couple's are dark, or all pale: 1/2 each, however many they are.
     */
    @Test
    void parents_of_whom_no_kit_lives_are_left_out() {
        Worth worth = asked(UNKNOWN, Pales.apart("even", HALF), Pales.recessive())
                .worth(Step.planned("sire", "dam", 3, "coat"));
        assertEquals(0.5, chance(worth, Map.of("coat: pale", 3), 0), EXACT);
        assertEquals(0.5, chance(worth, Map.of("coat: dark", 3), 0), EXACT);
        assertEquals(0, chance(worth, Map.of("coat: dark", 2, "coat: pale", 1), 0));
        // one jill that has kits with him says of another nothing that the other would not: he is either, by half, as
        // before
        assertTrue(worth.needed(1, 0, Design.JILLS, 0.8).isPresent());
    }

    /**
     * Where D is one in three, a sire is d/d with 4/5. How often a jill has kits with him hangs on what he carries, so litters of several jills
     * are no one mixture, and nothing is told of them; of one couple it is: 16/17 pale.
     */
    @Test
    void litters_of_several_jills_are_not_told_where_their_being_there_tells_of_the_sire() {
        Model recessive = Pales.one("recessive", "D", "pale")
                .population(
                        "third",
                        one -> one.frequency("A", "D", Probability.of(1, 3)).frequency("A", "d", Probability.of(2, 3)))
                .build();
        Worth worth = Distinguishing.of(
                        List.of(Candidate.of(Pales.apart("third", Probability.of(1, 3))), Candidate.of(recessive)),
                        UNKNOWN)
                .from("third")
                .worth(Step.planned("sire", "dam", 2, "coat"));
        assertEquals(16.0 / 17, chance(worth, Map.of("coat: pale", 2), 0), EXACT);
        assertTrue(worth.needed(0, 1, Design.COUPLE, 0.8).isPresent());
        assertTrue(worth.needed(0, 1, Design.JILLS, 0.8).isEmpty());
    }

    @Test
    void a_mating_without_living_kits_is_not_proposed() {
        Worth worth = asked(
                        pair(tested("sire", Sex.MALE, "D/D"), tested("dam", Sex.FEMALE, "d/d")),
                        Pales.recessive(),
                        Pales.apart("even", HALF))
                .worth(Step.mating("sire", "dam", 4, "coat"));
        assertEquals(Worth.Standing.NOT_PROPOSED, worth.standing());
        assertEquals(
                "no kit of sire and dam lives to be looked at by apart",
                worth.reason().orElseThrow());
        assertTrue(worth.outcomes().isEmpty());
    }

    /** Seeds whose steps once had no number, since the parents may be such of whom no kit lives: held to the list of all ways. */
    @ParameterizedTest
    @ValueSource(longs = {5227, 6169, 8840})
    void seeds_with_parents_of_whom_no_kit_lives(long seed) {
        assertEquals("kits", DistinguishingLaws.looks_and_kits_are_as_likely_of(RandomPedigrees.pedigree(seed)));
    }

    /** A trait that hangs on the moult is no evidence without it: a look at it, of an animal or of kits, has to state it. */
    @Test
    void a_look_that_lacks_its_stage_is_refused() {
        Distinguishing asked = asked(UNKNOWN, Pales.changing(), Pales.recessive());
        for (Step step : List.of(Step.look("sire", "bib"), Step.planned("sire", "dam", 2, "bib"))) {
            ProblemsException refused = assertThrows(ProblemsException.class, () -> asked.worth(step));
            assertEquals("stage-needed", refused.problems().get(0).code());
        }
        LifeStage grown = new LifeStage(OptionalInt.of(60), OptionalInt.of(1), Optional.empty());
        assertEquals(
                Worth.Standing.TELLS,
                asked.worth(new Step.Look("sire", List.of("bib"), grown, Optional.empty()))
                        .standing());
    }

    /** Records of which nothing was seen yet are checked like others. */
    @Test
    void models_are_checked_whatever_is_recorded() {
        for (Pedigree records : List.of(UNKNOWN, pair(seen("sire", "dark"), seen("dam", "dark")))) {
            ProblemsException twice =
                    assertThrows(ProblemsException.class, () -> asked(records, Pales.recessive(), Pales.recessive()));
            assertEquals("duplicate-name", twice.problems().get(0).code());
            ProblemsException other =
                    assertThrows(ProblemsException.class, () -> asked(records, Pales.recessive(), Pales.otherTraits()));
            assertEquals("other-catalogue", other.problems().get(0).code());
        }
        Pedigree noticed = Pedigree.builder("noticed", "1")
                .add(Individual.of("sire", Sex.MALE))
                .add(Individual.of("dam", Sex.FEMALE))
                .add(Individual.of("kit"))
                .add(Litter.of("litter", "dam", "sire", "kit")
                        .with(new Ascertainment.AtLeastOne(Sighting.of(Phenotype.of("bib", "yes")))))
                .build();
        ProblemsException sign =
                assertThrows(ProblemsException.class, () -> asked(noticed, Pales.recessive(), Pales.withoutBib()));
        assertEquals("ascertainment-not-shared", sign.problems().get(0).code());
    }

    /** The candidates that were compared have to be these: by name, by model and by what is believed of each. */
    @Test
    void only_the_same_candidates_are_carried_on() {
        Pedigree records = pair(seen("sire", "dark"), seen("dam", "dark"));
        Candidate one = Candidate.of(Pales.recessive());
        Candidate other = Candidate.of(Pales.dominant());
        ComparedModels compared =
                ModelComparison.of(List.of(one, other), records).from("even").compare();
        assertEquals(
                2,
                Distinguishing.of(List.of(one, other), records)
                        .from("even")
                        .after(compared)
                        .beliefs()
                        .size());
        Candidate sameName = Candidate.of(Pales.unrelated()).called("dominant");
        for (List<Candidate> others : List.of(
                List.of(one, sameName),
                List.of(other, one),
                List.of(one, other.called("another")),
                List.of(one, other.believed(Probability.ZERO)),
                List.of(one, other, sameName.called("third")))) {
            Distinguishing asked = Distinguishing.of(others, records).from("even");
            IllegalArgumentException refused =
                    assertThrows(IllegalArgumentException.class, () -> asked.after(compared));
            assertTrue(String.valueOf(refused.getMessage()).contains("those compared"), refused.getMessage());
        }
    }

    /** No result holds what is no number. */
    @Test
    void what_is_no_number_is_refused() {
        assertThrows(IllegalArgumentException.class, () -> new ExpectedRatio(0, 1, Double.NaN, 0, 0));
        assertThrows(IllegalArgumentException.class, () -> new ExpectedRatio(0, 1, 0, 0, Double.NEGATIVE_INFINITY));
        assertThrows(IllegalArgumentException.class, () -> new Outcome(Map.of("dark", 1), List.of(0.5, Double.NaN)));
        assertThrows(IllegalArgumentException.class, () -> new Outcome(Map.of("dark", 1), List.of(-0.5)));
        assertThrows(
                IllegalArgumentException.class,
                () -> new KitsNeeded(
                        0,
                        1,
                        Design.COUPLE,
                        0.8,
                        KitsNeeded.Standing.NEVER,
                        OptionalInt.empty(),
                        OptionalInt.empty(),
                        Double.NaN,
                        0,
                        0));
        assertThrows(IllegalArgumentException.class, () -> Mixture.of(List.of(), List.of()));
        assertThrows(ProblemsException.class, () -> Steps.requireOne(Double.NaN, () -> "looks", "a model"));
        assertFalse(Double.isNaN(new ExpectedRatio(0, 1, Double.POSITIVE_INFINITY, 1, 0).expected()));
    }
}
