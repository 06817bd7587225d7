package org.geneticsrules.answer.compared;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.planning.Effort;
import org.geneticsrules.planning.Step;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** What is taken where a question about telling models apart leaves it open. */
class TellApartUsualTest {

    private static final Catalogue TRAITS = Catalogue.builder("shades", "1")
            .trait("shade", "00", "01", "10", "11", "20", "21")
            .trait("eye", "dark", "pale")
            .build();

    /** Six shades: by the doses at one locus, and by who is dominant at another, which decides the eyes as well. */
    private static Model shades(String id, String dominant, String other) {
        return Model.builder(id, "1", TRAITS)
                .locus(
                        "A",
                        at -> at.alleles("D", "d")
                                .shows("D", "two")
                                .shows("D/d", "one")
                                .shows("d", "none"))
                .locus(
                        "B",
                        at -> at.alleles("E", "e")
                                .dominant(dominant, other)
                                .shows("E", "with")
                                .shows("e", "without"))
                .trait("shade", rule -> {
                    List<String> doses = List.of("none", "one", "two");
                    for (int dose = 0; dose < 3; dose++) {
                        Condition of = Condition.where("A", doses.get(dose));
                        rule.when(of.and("B", "with"), dose + "1").when(of.and("B", "without"), dose + "0");
                    }
                })
                .trait(
                        "eye",
                        rule -> rule.when(Condition.where("B", "with"), "dark").otherwise("pale"))
                .population(
                        "even",
                        one -> one.frequency("A", "D", Probability.of(1, 2))
                                .frequency("A", "d", Probability.of(1, 2))
                                .frequency("B", "E", Probability.of(1, 2))
                                .frequency("B", "e", Probability.of(1, 2)))
                .build();
    }

    private static TellApartAnswer ask(TellApartQuestion question, Pedigree pedigree) {
        return TellApartTest.ask(question, pedigree, shades("first", "E", "e"), shades("second", "e", "E"));
    }

    private static Pedigree pair(Phenotype... seen) {
        Individual sire = Individual.of("sire", Sex.MALE);
        return Pedigree.builder("pair", "1")
                .add(seen.length == 0 ? sire : sire.with(Observation.of(LifeStage.unstated(), seen[0])))
                .add(Individual.of("dam", Sex.FEMALE))
                .build();
    }

    private static Set<String> traits(TellApartAnswer answer) {
        Set<String> traits = new LinkedHashSet<>();
        answer.steps().forEach(one -> {
            if (one.worth().step() instanceof Step.Look look) {
                traits.addAll(look.traits());
            }
        });
        return traits;
    }

    private static List<Step.Kits> kits(TellApartAnswer answer) {
        return answer.steps().stream()
                .map(one -> one.worth().step())
                .filter(step -> step.effort() == Effort.PLANNED_MATING)
                .map(Step.Kits.class::cast)
                .toList();
    }

    @Test
    void the_traits_recorded_of_any_animal_are_looked_at() {
        TellApartAnswer answer = ask(TellApartQuestion.usual(), pair(Phenotype.of("eye", "dark")));
        assertEquals(Set.of("eye"), traits(answer));
        assertTrue(answer.given().contains("traits looked at: eye"), answer.given()::toString);
        assertTrue(
                answer.notices()
                        .contains(
                                "looks at what is recorded of nobody were not tried; they can be asked for by name: shade"),
                answer.notices()::toString);
        TellApartAnswer named =
                ask(TellApartQuestion.usual().inTraits(List.of("shade")), pair(Phenotype.of("eye", "dark")));
        assertEquals(Set.of("shade"), traits(named));
    }

    @Test
    void all_traits_are_looked_at_where_none_was_recorded() {
        TellApartAnswer answer = ask(TellApartQuestion.usual(), pair());
        assertTrue(answer.given().contains("traits looked at: shade, eye"), answer.given()::toString);
        assertFalse(answer.notices().toString().contains("recorded of nobody"), answer.notices()::toString);
    }

    /** 30 kits of six shades may show 324632 different counts, 15 of them 15504, and 20000 are gone through. */
    @Test
    void fewer_kits_are_tried_where_more_take_too_much() {
        TellApartAnswer answer = ask(
                TellApartQuestion.usual()
                        .planned("sire", "dam")
                        .inTraits(List.of("shade"))
                        .inLittersOf(30),
                pair());
        assertEquals(List.of(15), kits(answer).stream().map(Step.Kits::kits).toList());
        assertTrue(
                answer.notices()
                        .contains(
                                "worked out of 15 kits only, since more would take too much work: look at shade in 30 kits of"
                                        + " \"sire\" and \"dam\", a planned mating"),
                answer.notices()::toString);
        assertFalse(answer.notices().toString().contains("not worked out"), answer.notices()::toString);
    }

    @Test
    void a_planned_mating_may_be_stated_with_the_dam_first() {
        TellApartQuestion question = TellApartQuestion.usual().inTraits(List.of("eye"));
        TellApartAnswer answer =
                ask(question.planned("dam", "sire").planned("sire", "dam").inLittersOf(2), pair());
        assertEquals(List.of("sire"), kits(answer).stream().map(Step.Kits::sire).toList());
        assertTrue(answer.leftOut().isEmpty(), answer.leftOut()::toString);
    }
}
