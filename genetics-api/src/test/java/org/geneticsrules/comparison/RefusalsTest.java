package org.geneticsrules.comparison;

import static org.geneticsrules.testing.Coats.LIGHT;
import static org.geneticsrules.testing.Coats.seen;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.geneticsrules.comparison.KitFit.Standing;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.testing.Coats;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.junit.jupiter.api.Test;

/** Records that say less than they seem to: what is refused, what is left untested, and what is told of it. */
class RefusalsTest {

    private static ModelComparison question(Pedigree pedigree, Model... models) {
        return ModelComparison.of(List.of(models).stream().map(Candidate::of).toList(), pedigree)
                .from("even");
    }

    private static Problem problem(Pedigree pedigree, Model... models) {
        return assertThrows(
                        ProblemsException.class,
                        () -> question(pedigree, models).compare())
                .problems()
                .get(0);
    }

    private static PedigreeBuilder carriers() {
        return Coats.carriers(Pedigree.builder("carriers", "1"), "");
    }

    /** Light is recessive; in winter all are light. */
    private static Model winter() {
        Catalogue traits = Catalogue.builder("winter coats", "1")
                .seasons("summer", "winter")
                .trait("coat", "dark", "light")
                .build();
        return Model.builder("winter", "1", traits)
                .locus(
                        "A",
                        at -> at.alleles("D", "d")
                                .dominant("D", "d")
                                .shows("D", "dark")
                                .shows("d", "light"))
                .trait(
                        "coat",
                        rule -> rule.when(Condition.where("A", "dark").and("season", "summer"), "dark")
                                .otherwise("light"))
                .population(
                        "even",
                        one -> one.frequency("A", "D", Probability.of(1, 2)).frequency("A", "d", Probability.of(1, 2)))
                .build();
    }

    private static Pedigree noticed(LifeStage stage, Ascertainment how) {
        PedigreeBuilder builder = carriers();
        for (int k = 0; k < 3; k++) {
            Phenotype look = Phenotype.of("coat", k == 0 ? "light" : "dark");
            builder.add(Individual.of("kit " + k).with(Observation.of(stage, look)));
        }
        return builder.add(Litter.of("litter", "dam", "sire", "kit 0", "kit 1", "kit 2")
                        .with(how))
                .build();
    }

    /**
     * A light kit says something in summer alone. Without the season, the sign is no evidence: taken for a sign that no litter can lack or
     * that none can have, it would give the litter a chance above 1.
     */
    @Test
    void a_sign_without_the_season_it_needs_is_refused() {
        LifeStage summer = LifeStage.unstated().in("summer");
        Sighting told = new Sighting(summer, LIGHT);
        for (Ascertainment how : List.of(
                Ascertainment.atLeastOne(LIGHT),
                new Ascertainment.Probands(Sighting.of(LIGHT), Probability.of(1, 2), OptionalInt.of(1)),
                new Ascertainment.ParentsChosen(Sighting.of(LIGHT)))) {
            Problem refused = problem(noticed(summer, how), winter());
            assertEquals("ascertainment-not-evidence", refused.code());
            assertEquals("/litters/litter/ascertainment", refused.pointer());
            assertTrue(refused.message().contains("no evidence under winter"), refused.message());
        }
        Pedigree sound = noticed(summer, new Ascertainment.AtLeastOne(told));
        assertEquals(
                Math.log(9.0 / 64 / (37.0 / 64)),
                question(sound, winter()).compare().log(0),
                1e-9);
    }

    private static Individual tested(String id, Sex sex, String pair) {
        return Individual.of(id, sex).with(new GenotypeTest(Optional.empty(), "A", Set.of(pair), Probability.ZERO));
    }

    /** A light sire who was tested to be D/d can be where light is dominant, and not where it is recessive, whatever his kits show. */
    @Test
    void founders_that_contradict_themselves_are_excluded_and_not_alike() {
        Individual sire =
                seen("sire", LIGHT).with(new GenotypeTest(Optional.empty(), "A", Set.of("D/d"), Probability.ZERO));
        Pedigree pedigree = Coats.litter(
                        Pedigree.builder("contradiction", "1").add(sire).add(tested("dam", Sex.FEMALE, "d/d")),
                        "litter",
                        "",
                        0,
                        2,
                        Ascertainment.complete())
                .build();
        ModelComparison question = question(pedigree, Coats.recessive(), Coats.dominant());
        ComparedModels compared = question.compare();
        assertTrue(compared.impossible(0)); // light is d/d there
        assertFalse(compared.impossible(1));
        assertFalse(compared.alike(0, 1));
        assertEquals(OptionalInt.of(1), compared.best());
        FittedModel fit = ModelFit.of(question, 0).judge();
        assertTrue(fit.isImpossible());
        assertEquals(Standing.IMPOSSIBLE, fit.litters().get(0).standing());
        assertEquals(
                Optional.of("what was recorded of founders has no chance"),
                fit.litters().get(0).untested());
    }

    /** One of two males sired the litter: what its kits may show is no one law, and p says nothing of it. */
    @Test
    void a_litter_of_an_uncertain_sire_is_untested_and_counted() {
        PedigreeBuilder builder = carriers().add(tested("other", Sex.MALE, "D/D"));
        Coats.litter(builder, "certain", "", 5, 1, Ascertainment.complete());
        FittedModel certain =
                ModelFit.of(question(builder.build(), Coats.recessive()), 0).judge();
        assertEquals(0, certain.untested());
        builder.add(seen("kit", Coats.DARK))
                .add(Litter.of(
                                "uncertain",
                                Optional.of("dam"),
                                Paternity.oneOf(
                                        Paternity.Candidate.of("sire", Probability.of(1, 2)),
                                        Paternity.Candidate.of("other", Probability.of(1, 2))),
                                "kit")
                        .with(Ascertainment.complete()));
        FittedModel fit =
                ModelFit.of(question(builder.build(), Coats.recessive()), 0).judge();
        LitterFit uncertain = fit.litters().get(1);
        assertEquals("uncertain", uncertain.litter());
        assertEquals(Standing.FINE, uncertain.standing());
        assertEquals(Optional.empty(), uncertain.p());
        assertEquals(Optional.of("a parent of it is not recorded for certain"), uncertain.untested());
        assertEquals(1, fit.untested());
        assertEquals(certain.p().orElseThrow(), fit.p().orElseThrow(), 1e-12);
    }

    /** What nobody looked at was not left untested. */
    @Test
    void litters_without_kits_looked_at_are_not_counted() {
        PedigreeBuilder builder = carriers();
        Coats.litter(builder, "first", "", 5, 1, Ascertainment.complete());
        builder.add(Individual.of("unseen"))
                .add(Litter.of("second", "dam", "sire", "unseen").with(Ascertainment.complete()));
        FittedModel fit =
                ModelFit.of(question(builder.build(), Coats.recessive()), 0).judge();
        assertEquals(0, fit.untested());
        assertEquals(6, fit.kits().size());
        assertEquals(Standing.NOT_JUDGED, fit.litters().get(1).standing());
    }

    /** A number of scored kits that no litter has is a mistake, and would ask for as many chances. */
    @Test
    void more_scored_kits_than_a_litter_has_are_refused_where_they_count() {
        for (int scored : new int[] {500, 501, 2_000_000_000}) {
            Litter litter = Litter.of("litter", "dam", "sire", "kit").counting(scored, scored);
            PedigreeBuilder builder = carriers().add(seen("kit", LIGHT));
            Pedigree pedigree =
                    builder.add(litter.with(Ascertainment.atLeastOne(LIGHT))).build();
            if (scored > 500) {
                Problem refused = problem(pedigree, Coats.recessive());
                assertTrue(refused.message().contains(scored + " kits are scored"), refused.message());
            } else {
                assertTrue(question(pedigree, Coats.recessive()).compare().log(0) <= 0);
            }
        }
    }
}
