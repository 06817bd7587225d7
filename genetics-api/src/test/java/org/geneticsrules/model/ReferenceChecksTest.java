package org.geneticsrules.model;

import static org.geneticsrules.model.Refusals.CATALOGUE;
import static org.geneticsrules.model.Refusals.references;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.document.Reference;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Condition;
import org.junit.jupiter.api.Test;

class ReferenceChecksTest {

    private static final Condition ALBINO = Condition.where("C", "albino");

    @Test
    void another_catalogue_than_the_one_written_for() {
        Problem problem =
                Refusals.only(Stage.REFERENCES, model -> model.writtenFor(Reference.of("test.traits", "2.0.0")));
        assertEquals("other-catalogue", problem.code());
        assertEquals("/catalogue", problem.pointer());
        assertTrue(problem.message().contains("test.traits 2.0.0, but was given test.traits 1.0.0"), problem.message());
        Refusals.valid().writtenFor(Reference.of("test.traits", "1.0.0")).build();
        Refusals.valid().writtenFor(CATALOGUE.reference()).build();
    }

    @Test
    void an_unknown_allele() {
        references(
                "/loci/D/wildType: unknown allele of locus D \"E\"; expected one of D; did you mean \"D\"?"
                        + " [unknown-allele]",
                model -> model.locus(
                        "D", locus -> locus.alleles("D").wildType("E").shows("D", "x")));
        references(
                "/loci/D/dominance/order/0: unknown allele of locus D \"dd\"; expected one of D; did you mean \"D\"?"
                        + " [unknown-allele]",
                model -> model.locus(
                        "D", locus -> locus.alleles("D").dominant("D", "dd").shows("D", "x")));
        references(
                "/loci/D/dominance/shows/D~1k9: unknown allele of locus D \"k9\"; expected one of D [unknown-allele]",
                model -> model.locus(
                        "D", locus -> locus.alleles("D").shows("D", "x").shows("D/k9", "x")));
    }

    @Test
    void an_unknown_expression() {
        references(
                "/loci/D/dominance/shows/D: unknown expression of locus D \"ful\"; expected one of full; did you mean"
                        + " \"full\"? [unknown-expression]",
                model -> model.locus(
                        "D", locus -> locus.alleles("D").expressions("full").shows("D", "ful")));
        references(
                "/masks/m/when/C: unknown expression of locus C \"albin\"; expected one of full, albino; did you mean"
                        + " \"albino\"? [unknown-expression]",
                model -> model.mask(Mask.of("m", Condition.where("C", "albin", "full"))));
    }

    @Test
    void unknown_evidence_wherever_it_is_named() {
        List<Problem> problems = Refusals.of(model -> model.locus(
                        "D",
                        locus -> locus.alleles("D", "d")
                                .order(new Dominance.Order("D", "d", Optional.of("e1")))
                                .shows("D", "x", Optional.of("e2"))
                                .shows("d", "y")
                                .evidence("e3"))
                .trait(
                        "eye",
                        rule -> rule.when(new Case("pink", ALBINO, "pink", Optional.of("e4")))
                                .otherwise("dark", Optional.of("e5"))
                                .evidence("e6"))
                .mask(new Mask("m", ALBINO, Map.of(), Set.of(), Optional.of("e7")))
                .population("p", population -> population.evidence("e8")));
        assertEquals(
                List.of(
                        "/loci/D/dominance/order/0/evidence e1",
                        "/loci/D/dominance/shows/D/evidence e2",
                        "/loci/D/dominance/evidence e3",
                        "/traits/eye/cases/pink/evidence e4",
                        "/traits/eye/otherwise/evidence e5",
                        "/traits/eye/evidence e6",
                        "/masks/m/evidence e7",
                        "/populations/p/evidence e8"),
                problems.stream()
                        .map(problem -> problem.pointer()
                                + problem.message()
                                        .replace("unknown evidence \"", " ")
                                        .replace("\"", ""))
                        .toList());
        problems.forEach(problem -> assertEquals("unknown-evidence", problem.code()));
    }

    @Test
    void an_unknown_trait() {
        references(
                "/traits/eyes: unknown trait \"eyes\"; expected one of hue, eye, throat; did you mean \"eye\"?"
                        + " [unknown-trait]",
                model -> model.trait("eyes", rule -> rule.otherwise("dark")));
        references(
                "/masks/m/covers/throath: unknown trait \"throath\"; expected one of hue, eye, throat; did you mean"
                        + " \"throat\"? [unknown-trait]",
                model -> model.mask(Mask.of("m", ALBINO).covering("throath", "plain")));
        references(
                "/notModelled/nose: unknown trait \"nose\"; expected one of hue, eye, throat [unknown-trait]",
                model -> model.notModelled("nose", "Not known."));
    }

    @Test
    void an_inner_trait_of_the_catalogue() {
        references(
                "/traits/eye: the inner trait \"eye\" has the name of a trait of the catalogue [inner-trait-listed]",
                model -> model.trait("eye", rule -> rule.inner("dark").otherwise("dark")));
    }

    @Test
    void an_inner_trait_cannot_be_covered() {
        references(
                "/masks/m/covers/depth: unknown trait \"depth\"; expected one of hue, eye, throat [unknown-trait]",
                model -> model.trait("depth", rule -> rule.inner("deep").otherwise("deep"))
                        .mask(Mask.of("m", ALBINO).covering("depth", "deep")));
    }

    @Test
    void an_unknown_state() {
        references(
                "/traits/eye/cases/pinkish: unknown state of eye \"pinkish\"; expected one of dark, pink [unknown-state]",
                model -> model.trait("eye", rule -> rule.when(ALBINO, "pinkish")));
        references(
                "/traits/eye/otherwise: unknown state of eye \"drak\"; expected one of dark, pink; did you mean"
                        + " \"dark\"? [unknown-state]",
                model -> model.trait("eye", rule -> rule.otherwise("drak")));
        references(
                "/masks/m/covers/hue: unknown state of hue \"whit\"; expected one of black, brown, white; did you mean"
                        + " \"white\"? [unknown-state]",
                model -> model.mask(Mask.of("m", ALBINO).covering("hue", "whit")));
        references(
                "/masks/m/covers/hue: unknown state of hue \"blue\"; expected one of black, brown, white [unknown-state]",
                model ->
                        model.mask(Mask.of("m", ALBINO).covering("hue", Mask.Cover.changing(Map.of("blue", "white")))));
        references(
                "/traits/eye/cases/pink/when/hue: unknown state of hue \"grey\"; expected one of black, brown, white"
                        + " [unknown-state]",
                model -> model.trait("eye", rule -> rule.when(Condition.where("hue", "grey", "brown"), "pink")));
    }

    @Test
    void an_unknown_mask() {
        references(
                "/masks/m/over: unknown mask \"n\"; expected one of m; did you mean \"m\"? [unknown-mask]",
                model -> model.mask(Mask.of("m", ALBINO).over("n")));
    }

    @Test
    void an_unknown_variable() {
        references(
                "/masks/m/when/D: unknown locus or modelled trait \"D\"; expected one of B, C, hue; did you mean \"B\"?"
                        + " [unknown-variable]",
                model -> model.mask(Mask.of("m", Condition.where("D", "x"))));
        // The trait is in the catalogue, but the model has no rule for it.
        references(
                "/masks/m/when/throat: unknown locus or modelled trait \"throat\"; expected one of B, C, hue"
                        + " [unknown-variable]",
                model -> model.mask(Mask.of("m", Condition.where("throat", "bib"))));
    }

    @Test
    void a_condition_that_allows_nothing() {
        references(
                "/masks/m/when/C: the condition allows no value of C; expected at least one value [empty-condition]",
                model -> model.mask(Mask.of("m", Condition.always().and("C", Allowed.allBut("full", "albino")))));
        references(
                "/masks/m/when/C: the condition allows no value of C; expected at least one value [empty-condition]",
                model -> model.mask(Mask.of("m", Condition.where("C"))));
    }

    @Test
    void a_population_of_unknown_loci_or_alleles_or_without_some() {
        references(
                "/populations/p/frequencies/D: unknown locus \"D\"; expected one of B, C; did you mean \"B\"?"
                        + " [unknown-locus]",
                model -> model.population("p", p -> p.frequency("D", "D", Probability.ONE)));
        references(
                "/populations/p/frequencies/B: unknown allele of locus B \"k\"; expected one of B, b; did you mean \"B\"?"
                        + " [unknown-allele]",
                model -> model.population(
                        "p",
                        p -> p.frequency("B", "B", Probability.ONE)
                                .frequency("B", "b", Probability.ZERO)
                                .frequency("B", "k", Probability.ZERO)));
        references(
                "/populations/p/frequencies/B: population \"p\" gives no frequency of allele b of locus B; expected a"
                        + " frequency for every allele, 0 where it is thought absent [missing-frequency]",
                model -> model.population("p", p -> p.frequency("B", "B", Probability.ONE)));
    }

    @Test
    void a_trait_with_a_rule_and_a_reason_for_having_none() {
        references(
                "/notModelled/hue: the trait \"hue\" has a rule and a reason for having none [both-modelled-and-not]",
                model -> model.notModelled("hue", "Not known."));
    }
}
