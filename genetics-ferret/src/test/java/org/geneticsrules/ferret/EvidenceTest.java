package org.geneticsrules.ferret;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.answer.Answer;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.MatingQuestion;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.evidence.Evidence;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.model.Statement;
import org.junit.jupiter.api.Test;

class EvidenceTest {

    private static final String CARRIER = "C/c B/b R/r P/P L/L";

    /** The weak points of the default model, listed so that none is added without being noticed. */
    private static final List<String> CONJECTURES = List.of(
            "/loci/C/dominance/order/3",
            "/loci/C/dominance/order/4",
            "/loci/C/dominance/order/5",
            "/loci/C/dominance/order/6",
            "/loci/C/dominance/order/7",
            "/loci/C/dominance/order/8",
            "/loci/C/dominance/shows/ce",
            "/traits/hue/cases/reddish on brown",
            "/traits/dilution/cases/near-white",
            "/masks/near-white",
            "/populations/few carriers",
            "/populations/many carriers");

    private final Model model = Ferret.common();

    @Test
    void every_statement_has_evidence() {
        assertTrue(model.statements().size() > 40);
        for (Statement statement : model.statements().values()) {
            assertTrue(statement.evidence().isPresent(), statement::toString);
        }
    }

    @Test
    void the_conjectures_are_these() {
        assertEquals(
                CONJECTURES,
                model.statements().values().stream()
                        .filter(statement -> statement.grade() == Grade.CONJECTURE)
                        .map(Statement::pointer)
                        .toList());
    }

    @Test
    void common_practice_is_attested_at_least_twice_and_every_grade_at_least_once() {
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
        Answers answers = Ferret.REGISTRY.answers(model);
        Animal carrier = Animal.unknown(answers.compiled()).withGenotype(CARRIER, OmittedLoci.UNKNOWN);
        return answers.mating(MatingQuestion.of(carrier, carrier).inTraits(List.of(traits)));
    }
}
