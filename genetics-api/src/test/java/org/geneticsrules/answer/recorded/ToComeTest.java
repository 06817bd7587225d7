package org.geneticsrules.answer.recorded;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.answer.Status;
import org.geneticsrules.answer.recorded.LookNext.Whether;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.render.RecordedText;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** Questions about what is to come, a look or a test, where frequencies, claims, alleles or agreement are missing. */
class ToComeTest {

    /** A model without populations, with a trait of which it says nothing for some, and a locus on the Y. */
    private static final Model BARE = Model.builder(
                    "bare",
                    "1",
                    Catalogue.builder("bare.traits", "1")
                            .trait("coat", "plain", "marked")
                            .trait("tail", "long", "short")
                            .trait("ears", "up")
                            .build())
            .locus(
                    "A",
                    locus -> locus.alleles("A", "a")
                            .dominant("A", "a")
                            .shows("A", "full")
                            .shows("a", "half"))
            .locus(
                    "Y",
                    locus -> locus.alleles("Y", "y")
                            .shows("Y", "big")
                            .shows("y", "small")
                            .absent("small"))
            .group(LinkageGroup.single(Transmission.Y, "Y"))
            .trait(
                    "coat",
                    rule -> rule.when(Condition.where("A", "half"), "marked").otherwise("plain"))
            .trait("tail", rule -> rule.when(Condition.where("A", "half"), "short"))
            .trait("ears", rule -> rule.when(Condition.where("A", "half"), "up"))
            .build();

    private static RecordedAnswers bare(Individual one) {
        return RecordedAnswers.of(
                Answers.of(CompiledModel.of(BARE), List.of()),
                Pedigree.builder("alone", "1").add(one).build());
    }

    @Test
    void without_frequencies_the_possible_is_told_and_nothing_is_weighed() {
        RecordedAnswer answer = bare(Individual.of("Stray")).later(LaterQuestion.of("Stray", LifeStage.atMoult(1)));
        Later found = (Later) answer.finding();
        assertEquals(Status.UNDECIDED, answer.status());
        assertEquals(List.of(), found.origins());
        assertEquals(Later.Word.MAY_SHOW, found.traits().get(0).word());
        assertTrue(found.traits().get(0).states().stream()
                .allMatch(one ->
                        one.whether() == Whether.POSSIBLE && one.chances().isEmpty()));
        assertEquals(Later.Word.NO_CLAIM, found.traits().get(1).word());
        assertEquals(Later.Word.NO_CLAIM, found.traits().get(2).word(), "a trait of one state too");
        assertEquals("At moult 1, by all records, \"Stray\" may show coat plain or marked.", answer.verdict());
        assertTrue(RecordedText.of(answer).contains("makes no claim about it"), RecordedText.of(answer));
        RecordedAnswer test = bare(Individual.of("Stray")).dnaTest(DnaTestQuestion.of("Stray", "A"));
        assertEquals(3, ((DnaTest) test.finding()).reports().size());
        assertTrue(RecordedText.of(test).contains("Any of A/A, A/a, a/a."), RecordedText.of(test));
    }

    @Test
    void an_animal_without_the_chromosome_cannot_be_tested_there() {
        DnaTestQuestion test = DnaTestQuestion.of("Stray", "Y");
        assertEquals(
                2,
                ((DnaTest) bare(Individual.of("Stray", Sex.MALE)).dnaTest(test).finding())
                        .reports()
                        .size());
        ProblemsException female = assertThrows(
                ProblemsException.class,
                () -> bare(Individual.of("Stray", Sex.FEMALE)).dnaTest(test));
        assertTrue(female.getMessage().contains("is female and has no allele at locus Y"), female.getMessage());
        ProblemsException unknown = assertThrows(
                ProblemsException.class, () -> bare(Individual.of("Stray")).dnaTest(test));
        assertTrue(unknown.getMessage().contains("a record of its sex"), unknown.getMessage());
    }

    @Test
    void questions_are_checked_when_they_are_made() {
        HiddenAllele allele = HiddenAllele.find(BARE, "a");
        assertThrows(
                IllegalArgumentException.class,
                () -> DnaTestQuestion.of("Stray", allele).wrongIn(Probability.ONE));
        assertThrows(
                IllegalArgumentException.class,
                () -> new DnaTestQuestion(
                        "Stray", "Y", DnaTestQuestion.of("Stray", allele).allele(), Probability.ZERO));
        assertThrows(IllegalArgumentException.class, () -> LaterQuestion.of("Stray", LifeStage.unstated()));
    }

    /** A dark kit of two albinos: no look of its gait can be weighed, though gait has nothing to do with it. */
    @Test
    void records_that_contradict_one_another_elsewhere_are_told_too() {
        Pedigree kennel = Pedigree.builder("kennel", "1")
                .add(Carriers.female("Dam", Carriers.PINK))
                .add(Carriers.male("Sire", Carriers.PINK))
                .add(Carriers.male("Kit", Carriers.DARK))
                .add(Litter.of("A", "Dam", "Sire", "Kit"))
                .build();
        RecordedAnswers asked = RecordedAnswers.of(Carriers.ANSWERS, kennel);
        LifeStage grown = LifeStage.atWeek(60);
        for (RecordedAnswer answer : List.of(
                asked.later(LaterQuestion.of("Kit", grown).in(Set.of("gait"))),
                asked.lookNext(LookNextQuestion.of("Kit").at(grown).among(Set.of("gait"))),
                asked.dnaTest(DnaTestQuestion.of("Kit", "X")))) {
            assertTrue(answer.verdict().contains("cannot all be true"), answer.verdict());
            assertEquals(Status.UNDECIDED, answer.status());
            assertFalse(answer.conflicts().isEmpty());
            assertTrue(RecordedText.of(answer).contains("it is no ground for doubting anybody"));
        }
    }
}
