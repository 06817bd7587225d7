package org.geneticsrules.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.json.AnswerDocument;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.render.AnswerText;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.junit.jupiter.api.Test;

/** At which frequency of a recessive allele two parents that do not show it are likelier than not to have young that do. */
class TippingTest {

    private static final Model MODEL = Model.builder(
                    "one",
                    "1",
                    Catalogue.builder("coats", "1")
                            .trait("coat", "dark", "pale")
                            .build())
            .locus(
                    "A",
                    at -> at.alleles("A", "a", "x")
                            .dominant("A", "a")
                            .dominant("a", "x")
                            .shows("A", "full")
                            .shows("a", "weak")
                            .shows("x", "full too"))
            .trait(
                    "coat",
                    rule -> rule.when(Condition.where("A", "weak"), "pale").otherwise("dark"))
            .population(
                    "herd",
                    at -> at.frequency("A", "A", Probability.of(9, 10))
                            .frequency("A", "a", Probability.of(1, 10))
                            .frequency("A", "x", Probability.ZERO))
            .build();

    private static final Answers ANSWERS = Answers.of(CompiledModel.of(MODEL), List.of());

    private static Answer asked(int kits) {
        Animal dark = Animal.unknown(ANSWERS.compiled()).withLooks(Phenotype.of("coat", "dark"));
        return ANSWERS.mating(MatingQuestion.of(dark, dark)
                .lookingFor(Phenotype.of("coat", "pale"))
                .inLitterOf(kits));
    }

    /**
     * A dark parent carries with 2q / (1 + q), by Hardy-Weinberg (Snyder's ratio, (q / (1 + q))^2 of pale young, as in textbooks of
     * population genetics; from memory). Eight kits of two carriers show at least one pale with 1 - (3/4)^8. So the chance is a half
     * where 2q / (1 + q) is the root of 0.5 / (1 - (3/4)^8), which is 0.745404, and q is 0.594139.
     */
    @Test
    void the_frequency_is_that_by_hand() {
        Answer answer = asked(8);
        List<Tipping> tippings = answer.weightings().get(0).tippings();
        assertEquals(1, tippings.size(), tippings::toString);
        Tipping one = tippings.get(0);
        assertEquals("A", one.locus());
        assertEquals("a", one.allele().id());
        assertEquals(Probability.of(1, 10), one.stated());
        double carrier = Math.sqrt(0.5 / (1 - Math.pow(0.75, 8)));
        assertEquals(carrier / (2 - carrier), one.frequency().toDouble(), 1e-4);
        assertTrue(
                AnswerText.of(answer)
                        .replaceAll("\\s+", " ")
                        .contains("Likelier than not, if a has a frequency of 59.42 %"),
                AnswerText.of(answer));
        assertTrue(AnswerDocument.of(answer).toString().contains("tippings"));
    }

    /** One kit of two carriers is pale with 1/4, so that no frequency makes it likelier than not. */
    @Test
    void where_nothing_turns_nothing_is_told() {
        assertEquals(List.of(), asked(1).weightings().get(0).tippings());
    }
}
