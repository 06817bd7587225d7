package org.geneticsrules.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.answer.Answer;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.CoatQuestion;
import org.geneticsrules.answer.MatingQuestion;
import org.geneticsrules.json.AnswerDocument;
import org.geneticsrules.json.Documents;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.model.Population;
import org.geneticsrules.spi.Registry;
import org.geneticsrules.trait.Phenotype;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The answers of every shipped model fit their schema, and every number can be reckoned again from the documents alone. */
class AnswerRecountTest {

    private static final Registry REGISTRY = Registry.discover();
    private static final Schema SCHEMA = schema();
    private static final int PAIRS = 12;

    /** The models of unlinked autosomal loci whose traits follow from the genotype alone. */
    static Stream<Model> models() {
        return REGISTRY.models().stream()
                .filter(model -> model.groups().isEmpty()
                        && model.viability().isEmpty()
                        && !model.distinguishesSex()
                        && model.loci().values().stream()
                                .allMatch(locus -> locus.mutation().isEmpty())
                        && model.rules().values().stream()
                                .flatMap(rule -> Stream.concat(
                                        rule.cases().stream().map(Case::gives), rule.otherwise().stream()))
                                .allMatch(CaseState.Certain.class::isInstance));
    }

    @ParameterizedTest
    @MethodSource("models")
    void random_matings_add_up(Model model) {
        Random random = new Random(20_261_125);
        Answers answers = REGISTRY.answers(model);
        List<String> traits = List.copyOf(model.visibleTraits());
        int numbers = 0;
        for (int i = 0; i < PAIRS; i++) {
            MatingQuestion question = MatingQuestion.of(animal(answers, i, random), animal(answers, i, random))
                    .inTraits(List.of(
                            traits.get(random.nextInt(traits.size())), traits.get(random.nextInt(traits.size()))));
            if (random.nextBoolean()) {
                String trait = List.copyOf(question.traits()).get(0);
                List<String> states = model.states(trait);
                question = question.lookingFor(Phenotype.of(trait, states.get(random.nextInt(states.size()))));
            }
            numbers += check(answers.mating(question), model);
        }
        assertTrue(numbers > PAIRS, "hardly anything was reckoned again: " + numbers);
    }

    @ParameterizedTest
    @MethodSource("models")
    void random_coats_fit_the_schema(Model model) {
        Random random = new Random(7);
        Answers answers = REGISTRY.answers(model);
        for (int i = 0; i < PAIRS; i++) {
            check(answers.coat(new CoatQuestion(animal(answers, i, random), model.visibleTraits())), model);
        }
    }

    @Test
    void a_wrong_number_is_found() {
        Model model = REGISTRY.model("geneticsrules.ferret.common-practice");
        Answers answers = REGISTRY.answers(model);
        Animal carrier = Animal.unknown(answers.compiled()).withGenotype("C/c B/b", OmittedLoci.WILD_TYPE);
        Answer answer = answers.mating(MatingQuestion.of(carrier, carrier).inTraits(List.of("hue", "eye colour")));
        String text = Documents.write(AnswerDocument.of(answer));
        String modelText = Documents.write(model);
        assertEquals(List.of(), AnswerRecount.errors(text, modelText));
        assertFalse(AnswerRecount.errors(
                        text.replace("\"3\", \"denominator\": \"16\"", "\"5\", \"denominator\": \"16\""), modelText)
                .isEmpty());
        assertFalse(AnswerRecount.errors(text.replace("\"brown\"", "\"black\""), modelText)
                .isEmpty());
        assertFalse(SCHEMA.validate(text.replace("\"verdict\"", "\"veredict\""), InputFormat.JSON)
                .isEmpty());
    }

    /** A known genotype, a partly known one of a population, or one of whom nothing is known, by turns. */
    private static Animal animal(Answers answers, int turn, Random random) {
        Model model = answers.compiled().model();
        List<String> parts = new ArrayList<>();
        for (Locus locus : model.loci().values()) {
            parts.add(locus.pairs().get(random.nextInt(locus.pairs().size())).toString());
        }
        Animal animal = Animal.unknown(answers.compiled());
        List<Population> populations = List.copyOf(model.populations().values());
        if (turn % 3 == 0 || populations.isEmpty()) {
            return animal.withGenotype(String.join(" ", parts), OmittedLoci.UNKNOWN);
        }
        animal = animal.withGenotype(parts.get(0), OmittedLoci.UNKNOWN);
        return turn % 3 == 1 ? animal.from(populations.get(random.nextInt(populations.size()))) : animal;
    }

    private static int check(Answer answer, Model model) {
        String text = Documents.write(AnswerDocument.of(answer));
        assertEquals(
                List.of(),
                SCHEMA.validate(text, InputFormat.JSON).stream()
                        .map(Object::toString)
                        .toList());
        String modelText = Documents.write(model);
        assertEquals(List.of(), AnswerRecount.errors(text, modelText), answer.verdict());
        return AnswerRecount.numbers(text, modelText);
    }

    private static Schema schema() {
        String id = "urn:geneticsrules:schema:answer:0";
        return SchemaRegistry.withDefaultDialect(
                        SpecificationVersion.DRAFT_2020_12,
                        builder -> builder.schemas(Map.of(id, AnswerDocument.schema())))
                .getSchema(SchemaLocation.of(id));
    }
}
