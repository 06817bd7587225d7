package org.geneticsrules.ferret;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.answer.Answer;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.MatingQuestion;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.evidence.Evidence;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.model.Statement;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.trait.LifeStage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class EvidenceTest {

    private static final String CARRIER = "C/c B/b R/r M/M P/P L/L";

    /** The weak points of the default model, listed so that none is added without being noticed. */
    private static final Set<String> CONJECTURES = Set.of(
            "order of pale steps",
            "near-white step",
            "reddish on brown",
            "whitening",
            "two doses of silver",
            "point hides depth",
            "depth by many",
            "low white dominant",
            "extent of low white",
            "extent of head white",
            "white head hides mask",
            "mask by season",
            "mask of a point",
            "pattern in pale coats",
            "founder sets");

    private final Model model = Ferret.common();

    static Stream<Model> models() {
        return Ferret.guided().values().stream();
    }

    @Test
    void the_default_states_much() {
        assertTrue(model.statements().size() > 40);
    }

    @ParameterizedTest
    @MethodSource("models")
    void every_statement_has_evidence(Model model) {
        assertTrue(model.statements().size() >= 8);
        for (Statement statement : model.statements().values()) {
            assertTrue(statement.evidence().isPresent(), statement::toString);
        }
    }

    @Test
    void the_conjectures_are_these() {
        Set<String> graded = new LinkedHashSet<>();
        model.evidence().forEach((name, evidence) -> {
            if (evidence.grade() == Grade.CONJECTURE) {
                graded.add(name);
            }
        });
        assertEquals(CONJECTURES, graded);
    }

    @ParameterizedTest
    @MethodSource("models")
    void whatever_chance_decides_is_a_conjecture_and_says_that_its_numbers_are_assumed(Model model) {
        int chances = 0;
        for (TraitRule rule : model.rules().values()) {
            for (Case one : rule.allCases()) {
                if (!(one.gives() instanceof CaseState.Certain)) {
                    chances++;
                    Statement statement = model.statements().get(rule.pointer(one));
                    assertEquals(Grade.CONJECTURE, statement.grade(), statement::toString);
                    assertTrue(
                            statement.evidence().orElseThrow().sources().stream()
                                    .anyMatch(source -> source.startsWith("Assumption of this ")),
                            statement::toString);
                }
            }
        }
        boolean small = Ferret.REGISTRY.models().contains(model) && !model.equals(Ferret.common());
        assertTrue(small ? chances == 0 : chances >= 24, chances + " in " + model);
    }

    @ParameterizedTest
    @MethodSource("models")
    void common_practice_is_attested_at_least_twice_and_every_grade_at_least_once(Model model) {
        for (Evidence evidence : model.evidence().values()) {
            int least = evidence.grade() == Grade.PRACTICE ? 2 : 1;
            assertTrue(evidence.sources().size() >= least, evidence::toString);
        }
    }

    @Test
    void the_share_of_pink_eyes_rests_on_the_albino_statements_alone() {
        Genotype carrier = Genotype.parse(model, "C/c");
        assertEquals(
                Set.of(
                        "/loci/C/dominance/order/0",
                        "/loci/C/dominance/shows/C",
                        "/loci/C/dominance/shows/c",
                        "/traits/eye colour/cases/albino",
                        "/traits/eye colour/otherwise"),
                Cross.of(model, carrier, carrier).explain(List.of("eye colour")).statements());
        assertEquals(
                "at locus C, C is dominant over c",
                model.statements().get("/loci/C/dominance/order/0").text());
    }

    @Test
    void to_ask_for_the_hue_too_lowers_the_grade() {
        Answer eyes = asking("eye colour");
        Answer eyesAndHue = asking("eye colour", "hue");
        assertEquals(Optional.of(Grade.PRACTICE), eyes.evidence().grade());
        assertEquals(Optional.of(Grade.CONJECTURE), eyesAndHue.evidence().grade());
        assertTrue(
                eyesAndHue.evidence().statements().containsAll(eyes.evidence().statements()));
        assertEquals(
                List.of("/traits/hue/cases/reddish on brown"),
                eyesAndHue.evidence().weakest().stream().map(Statement::pointer).toList());
    }

    private Answer asking(String... traits) {
        Answers answers = Ferret.REGISTRY.answers(model).against(List.of());
        Animal carrier = Animal.unknown(answers.compiled()).withGenotype(CARRIER, OmittedLoci.UNKNOWN);
        return answers.mating(
                MatingQuestion.of(carrier, carrier).inTraits(List.of(traits)).at(LifeStage.atMoult(0)));
    }
}
