package org.geneticsrules.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Set;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.caution.CautionSet;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.Source;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.CalledName;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.NamedRecords;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.vocabulary.Facet;
import org.geneticsrules.vocabulary.Name;
import org.geneticsrules.vocabulary.Sense;
import org.geneticsrules.vocabulary.Vocabulary;
import org.junit.jupiter.api.Test;

/** A name that may mean a look with a caution raises it, although it may mean another look, and although no rule reads the trait. */
class NamesAndCautionsTest {

    private static final Catalogue TRAITS = Catalogue.builder("traits", "1")
            .trait("past", "steady", "whitened")
            .trait("hue", "black", "grey")
            .build();

    private static final Model MODEL = Model.builder("model", "1", TRAITS)
            .locus(
                    "G",
                    g -> g.alleles("G", "g")
                            .dominant("G", "g")
                            .shows("G", "grey")
                            .shows("g", "black"))
            .trait("hue", hue -> hue.when(Condition.where("G", "grey"), "grey").otherwise("black"))
            .notModelled("past", "Nobody knows.")
            .build();

    private static final Vocabulary NORTH = Vocabulary.builder("names.north", "1", TRAITS)
            .facet(Facet.of("colour"))
            .name(Name.of("roan", "colour")
                    .withSense(Sense.of("process").withLook("whitened", Condition.where("past", "whitened")))
                    .withSense(Sense.of("coat").withLook("grey", Condition.where("hue", "grey"))))
            .name(Name.of("plain", "colour")
                    .withSense(Sense.of("only").withLook("steady", Condition.where("past", "steady"))))
            .build();

    private static final CautionSet CAUTIONS = Documents.reader().readCautions(Source.of("cautions", """
            {"formatVersion": 0, "kind": "cautions", "id": "cautions", "version": "1",
             "catalogue": {"id": "traits", "version": "1"},
             "cautions": {"greying": {"trigger": {"shows": {"past": ["whitened"]}, "in": ["animal", "parent"]},
                                      "line": "Have the hearing tested.", "date": "2026-11"}}}
            """), TRAITS);

    private static final Answers ANSWERS = Answers.of(CompiledModel.of(MODEL), List.of(CAUTIONS));

    private static List<String> ids(List<Caution> cautions) {
        return cautions.stream().map(Caution::id).toList();
    }

    private static Animal called(String word) {
        return Animal.unknown(ANSWERS.compiled()).called(CalledName.of(word, "north"), List.of(NORTH));
    }

    @Test
    void a_single_animal_called_so() {
        CoatQuestion roan = new CoatQuestion(called("roan"), Set.of("hue"));
        assertEquals(List.of("greying"), ids(ANSWERS.coat(roan).cautions()));
        assertEquals(List.of("greying"), ids(ANSWERS.handOver(roan).cautions()));
        assertEquals(
                List.of("greying"),
                ids(ANSWERS.mating(MatingQuestion.of(called("roan"), called("plain"))
                                .inTraits(Set.of("hue")))
                        .cautions()));
        assertEquals(
                List.of(),
                ids(ANSWERS.coat(new CoatQuestion(called("plain"), Set.of("hue")))
                        .cautions()));
    }

    @Test
    void a_recorded_animal_called_so() {
        for (String word : List.of("roan", "plain")) {
            Pedigree kennel = Pedigree.builder("kennel", "1")
                    .add(Individual.of("jill", Sex.FEMALE).with(CalledName.of(word, "north")))
                    .build();
            RecordedAnswers answers = RecordedAnswers.of(ANSWERS, NamedRecords.of(kennel, List.of(NORTH)));
            assertEquals(
                    word.equals("roan") ? List.of("greying") : List.of(),
                    ids(answers.mayCarry("jill", List.of("G")).cautions()),
                    word);
        }
    }
}
