package org.geneticsrules.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import org.geneticsrules.answer.recorded.RecordedAnswer;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.caution.CautionSet;
import org.geneticsrules.document.Node;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.json.AnswerDocument;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.RecordedDocument;
import org.geneticsrules.json.Source;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.render.AnswerText;
import org.geneticsrules.render.RecordedText;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** Complementation by hand: two pale parents have dark young only if two loci make pale. */
class RivalsTest {

    private static final Catalogue TRAITS =
            Catalogue.builder("coats", "1").trait("coat", "dark", "pale").build();

    private static ModelBuilder locus(ModelBuilder model, String strong, String weak) {
        return model.locus(
                strong,
                at -> at.alleles(strong, weak)
                        .dominant(strong, weak)
                        .shows(strong, "full")
                        .shows(weak, "weak"));
    }

    private static final Model ONE = locus(Model.builder("one", "1", TRAITS), "A", "a")
            .trait(
                    "coat",
                    rule -> rule.when(Condition.where("A", "weak"), "pale").otherwise("dark"))
            .population(
                    "herd",
                    at -> at.frequency("A", "A", Probability.of(1, 2)).frequency("A", "a", Probability.of(1, 2)))
            .build();

    private static final Model TWO = locus(locus(Model.builder("two", "1", TRAITS), "A", "a"), "B", "b")
            .trait(
                    "coat",
                    rule -> rule.when(Condition.where("A", "full").and("B", "full"), "dark")
                            .otherwise("pale"))
            .population(
                    "herd",
                    at -> at.frequency("A", "A", Probability.of(1, 2))
                            .frequency("A", "a", Probability.of(1, 2))
                            .frequency("B", "B", Probability.of(1, 2))
                            .frequency("B", "b", Probability.of(1, 2)))
            .build();

    private static final Answers ANSWERS =
            Answers.of(CompiledModel.of(ONE), List.of()).against(List.of(RivalModel.of("two loci", () -> TWO)));

    private static Animal seen(String coat) {
        return Animal.unknown(ANSWERS.compiled()).withLooks(Phenotype.of("coat", coat));
    }

    @Test
    void a_rival_that_comes_to_another_verdict_is_told_right_after_the_verdict() {
        Answer answer =
                ANSWERS.mating(MatingQuestion.of(seen("pale"), seen("pale")).lookingFor(Phenotype.of("coat", "dark")));
        assertEquals(1, answer.rivalVerdicts().size());
        RivalVerdict rival = answer.rivalVerdicts().get(0);
        assertEquals("two loci", rival.title());
        assertEquals(TWO.reference(), rival.model());
        assertEquals("One of the young cannot show coat dark under this model.", answer.verdict());
        assertTrue(rival.verdict().startsWith("It is possible that"), rival.verdict());
        List<String> lines = AnswerText.of(answer).lines().toList();
        assertTrue(lines.get(1).startsWith("Otherwise if \"two loci\" is true: It is possible"), lines::toString);
        Node told = AnswerDocument.of(answer);
        assertTrue(told.toString().contains("two loci"), told::toString);
    }

    @Test
    void a_rival_that_agrees_is_not_told() {
        Answer answer = ANSWERS.mating(MatingQuestion.of(seen("dark"), seen("dark"))
                .lookingFor(Phenotype.of("coat", "pale"))
                .inTraits(Set.of("coat")));
        Answer same = Answers.of(CompiledModel.of(ONE), List.of())
                .against(List.of(RivalModel.of("the same", () -> ONE)))
                .mating(MatingQuestion.of(seen("dark"), seen("dark")).lookingFor(Phenotype.of("coat", "pale")));
        assertEquals(1, answer.rivalVerdicts().size(), "with two loci there are more chances");
        assertTrue(same.rivalVerdicts().isEmpty());
        assertFalse(AnswerText.of(same).contains("Otherwise"));
    }

    @Test
    void a_rival_that_cannot_be_asked_is_named() {
        Answer answer = Answers.of(CompiledModel.of(TWO), List.of())
                .against(List.of(RivalModel.of("one locus", () -> ONE)))
                .coat(new CoatQuestion(
                        Animal.unknown(CompiledModel.of(TWO)).withGenotype("A/A b/b", OmittedLoci.UNKNOWN), Set.of()));
        assertTrue(answer.rivalVerdicts().isEmpty());
        assertTrue(
                answer.notices().stream()
                        .anyMatch(
                                one -> one.startsWith("rival models that were not asked") && one.contains("one locus")),
                answer.notices()::toString);
    }

    @Test
    void a_rival_that_makes_no_claim_about_what_is_asked_is_left_out_without_a_word() {
        Model silent = locus(Model.builder("silent", "1", TRAITS), "A", "a")
                .notModelled("coat", "nothing is known")
                .build();
        Answers answers =
                Answers.of(CompiledModel.of(ONE), List.of()).against(List.of(RivalModel.of("silent", () -> silent)));
        Answer plain = Answers.of(CompiledModel.of(ONE), List.of()).coat(new CoatQuestion(seen("dark"), Set.of()));
        Answer answer = answers.coat(new CoatQuestion(seen("dark"), Set.of()));
        assertTrue(answer.rivalVerdicts().isEmpty());
        assertEquals(plain.notices(), answer.notices());
        assertEquals(AnswerText.of(plain), AnswerText.of(answer));
    }

    @Test
    void a_caution_that_only_a_rival_raises_is_told_with_its_verdict() {
        CautionSet dark = Documents.reader().readCautions(Source.of("cautions", """
                {"formatVersion": 0, "kind": "cautions", "id": "dark.cautions", "version": "1",
                 "catalogue": {"id": "coats", "version": "1"},
                 "cautions": {
                   "dark": {"trigger": {"shows": {"coat": ["dark"]}, "in": ["offspring"]},
                            "line": "Dark young.", "date": "2026-11"}}}
                """), TRAITS);
        MatingQuestion question =
                MatingQuestion.of(seen("pale"), seen("pale")).lookingFor(Phenotype.of("coat", "dark"));
        Answers alone = Answers.of(CompiledModel.of(ONE), List.of(dark));
        assertEquals(List.of(), alone.mating(question).cautions(), "no dark young under one locus");
        Answer answer =
                alone.against(List.of(RivalModel.of("two loci", () -> TWO))).mating(question);
        assertEquals(
                List.of("dark"), answer.cautions().stream().map(Caution::id).toList());
        assertTrue(AnswerText.of(answer).contains("Dark young."));
        Answer same =
                alone.against(List.of(RivalModel.of("the same", () -> ONE))).mating(question);
        assertEquals(List.of(), same.cautions(), "a rival of the same verdict adds nothing");
    }

    @Test
    void a_rival_is_made_once_and_only_when_asked() {
        AtomicInteger made = new AtomicInteger();
        Answers answers = Answers.of(CompiledModel.of(ONE), List.of()).against(List.of(RivalModel.of("counted", () -> {
            made.incrementAndGet();
            return TWO;
        })));
        assertEquals(0, made.get());
        CoatQuestion question = new CoatQuestion(seen("dark"), Set.of());
        answers.coat(question);
        answers.coat(question);
        assertEquals(1, made.get());
    }

    @Test
    void test_matings_are_asked_too() {
        Animal hob = seen("dark").ofSex(Sex.MALE);
        Answer answer = ANSWERS.testMatings(TestMatingQuestion.of(hob)
                .carrying(List.of(HiddenAllele.find(ONE, "a")))
                .by(List.of(TestMate.of("a pale jill", seen("pale")))));
        // with one locus every pale mate is a/a, and 5 young miss a carrier with 1/32; with two she may be pale for
        // another reason
        assertEquals(1, answer.rivalVerdicts().size(), answer.verdict());
    }

    @Test
    void recorded_animals_are_asked_about_under_rivals_too() {
        Observation pale = Observation.of(LifeStage.unstated(), Phenotype.of("coat", "pale"));
        Observation dark = Observation.of(LifeStage.unstated(), Phenotype.of("coat", "dark"));
        Pedigree pedigree = Pedigree.builder("kennel", "1")
                .add(Individual.of("hob", Sex.MALE).with(pale))
                .add(Individual.of("jill", Sex.FEMALE).with(pale))
                .add(Individual.of("kit", Sex.FEMALE).with(dark))
                .add(Litter.of("litter", "jill", "hob", "kit"))
                .build();
        RecordedAnswer answer =
                RecordedAnswers.of(ANSWERS, pedigree).from("herd").mayCarry("kit", List.of("A"));
        assertTrue(answer.verdict().contains("cannot all be true"), answer.verdict());
        // by hand: with two loci one parent is a/a B/-, the other A/- b/b, and the kit has one of each
        assertEquals(
                Optional.of("By all records \"kit\" carries a."),
                answer.rivalVerdicts().stream().map(RivalVerdict::verdict).findFirst());
        assertTrue(RecordedText.of(answer).contains("Otherwise if \"two loci\" is true: By all records"));
        assertTrue(RecordedDocument.of(answer).toString().contains("two loci"));
    }
}
