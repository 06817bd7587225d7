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
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.answer.Answer;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.CoatQuestion;
import org.geneticsrules.answer.MatingQuestion;
import org.geneticsrules.answer.PossibleSires;
import org.geneticsrules.expression.Census;
import org.geneticsrules.json.AnswerDocument;
import org.geneticsrules.json.Documents;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.model.Population;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.spi.Registry;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The answers of every shipped model fit their schema, and every number can be reckoned again from the documents alone. */
@Tag("once")
class AnswerRecountTest {

    private static final Registry REGISTRY = Registry.discover();
    private static final Schema SCHEMA = schema();
    private static final int PAIRS = 9;

    static Stream<Model> models() {
        return REGISTRY.models().stream();
    }

    @ParameterizedTest
    @MethodSource("models")
    void random_matings_add_up(Model model) {
        Random random = new Random(20_261_125);
        Answers answers = REGISTRY.answers(model).against(List.of());
        List<String> traits = List.copyOf(model.visibleTraits());
        String modelText = Documents.write(model);
        int numbers = 0;
        for (int i = 0; i < PAIRS; i++) {
            Set<String> asked = new LinkedHashSet<>(
                    List.of(traits.get(random.nextInt(traits.size())), traits.get(random.nextInt(traits.size()))));
            MatingQuestion question = MatingQuestion.of(
                            sires(answers, i, random), animal(answers, Sex.FEMALE, i, random))
                    .at(stage(model, random))
                    .among(List.of(Census.values()).get(random.nextInt(3)));
            if (random.nextBoolean()) {
                String trait = asked.iterator().next();
                List<String> states = model.states(trait);
                Map<String, String> look = new LinkedHashMap<>();
                if (random.nextBoolean()) {
                    look.put(Sex.VARIABLE, random.nextBoolean() ? "female" : "male");
                }
                look.put(trait, states.get(random.nextInt(states.size())));
                question = question.lookingFor(Phenotype.from(look)).inLitterOf(1 + random.nextInt(6));
            } else if (random.nextBoolean()) {
                asked.add(Sex.VARIABLE);
            }
            numbers += check(answers.mating(question.inTraits(asked)), modelText);
        }
        assertTrue(numbers > PAIRS, "hardly anything was reckoned again: " + numbers);
    }

    @ParameterizedTest
    @MethodSource("models")
    void random_coats_add_up(Model model) {
        Random random = new Random(7);
        Answers answers = REGISTRY.answers(model).against(List.of());
        String modelText = Documents.write(model);
        int numbers = 0;
        for (int i = 0; i < PAIRS; i++) {
            Animal animal = animal(answers, List.of(Sex.values()).get(random.nextInt(2)), i, random);
            CoatQuestion question = new CoatQuestion(animal, some(model, random)).at(stage(model, random));
            numbers += check(answers.coat(question), modelText);
        }
        assertTrue(numbers > 0, "nothing was reckoned again");
    }

    @Test
    void a_wrong_number_is_found() {
        Model model = REGISTRY.model("geneticsrules.ferret.common-practice");
        Answers answers = REGISTRY.answers(model).against(List.of());
        Animal carrier = Animal.unknown(answers.compiled()).withGenotype("C/c B/b", OmittedLoci.WILD_TYPE);
        Answer answer = answers.mating(MatingQuestion.of(carrier, carrier)
                .inTraits(List.of("hue", "eye colour"))
                .at(LifeStage.atMoult(0)));
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

    /** All traits of a small model; of a large one a few, since all of them together have too many looks to be told one by one. */
    private static Set<String> some(Model model, Random random) {
        List<String> traits = new ArrayList<>(model.visibleTraits());
        Collections.shuffle(traits, random);
        return new LinkedHashSet<>(traits.size() > 8 ? traits.subList(0, 3) : List.copyOf(model.visibleTraits()));
    }

    /** One male, or two of whom one is the sire of the litter or of each kit. */
    private static PossibleSires sires(Answers answers, int turn, Random random) {
        Animal one = animal(answers, Sex.MALE, turn, random);
        if (random.nextInt(4) > 0) {
            return PossibleSires.of(one);
        }
        List<Animal> two = List.of(one, animal(answers, Sex.MALE, turn, random));
        PossibleSires sires = random.nextBoolean() ? PossibleSires.oneOf(two) : PossibleSires.perKit(two);
        return sires.withAccess(List.of(Probability.of(1, 3), Probability.of(2, 3)));
    }

    /** Late enough for every trait to be told. */
    private static LifeStage stage(Model model, Random random) {
        List<String> seasons = model.catalogue().seasons();
        return new LifeStage(
                OptionalInt.of(52 + random.nextInt(3)),
                OptionalInt.of(1 + random.nextInt(3)),
                seasons.isEmpty() ? Optional.empty() : Optional.of(seasons.get(random.nextInt(seasons.size()))));
    }

    /** A known genotype, a partly known one of a population, or one of whom nothing is known, by turns. */
    private static Animal animal(Answers answers, Sex sex, int turn, Random random) {
        Model model = answers.compiled().model();
        List<String> parts = new ArrayList<>();
        for (Locus locus : model.loci().values()) {
            List<AllelePair> pairs = locus.pairs(sex);
            AllelePair pair = pairs.get(random.nextInt(pairs.size()));
            if (!pair.alleles().isEmpty()) {
                parts.add(pair.toString());
            }
        }
        Animal animal = Animal.unknown(answers.compiled()).ofSex(sex);
        List<Population> populations = List.copyOf(model.populations().values());
        if (turn % 3 == 0 || populations.isEmpty()) {
            return animal.withGenotype(String.join(" ", parts), OmittedLoci.UNKNOWN);
        }
        if (!parts.isEmpty()) {
            animal = animal.withGenotype(parts.get(0), OmittedLoci.UNKNOWN);
        }
        return turn % 3 == 1 ? animal.from(populations.get(random.nextInt(populations.size()))) : animal;
    }

    private static int check(Answer answer, String modelText) {
        String text = Documents.write(AnswerDocument.of(answer));
        assertEquals(
                List.of(),
                SCHEMA.validate(text, InputFormat.JSON).stream()
                        .map(Object::toString)
                        .toList());
        return AnswerRecount.checked(text, modelText, answer.verdict());
    }

    private static Schema schema() {
        String id = "urn:geneticsrules:schema:answer:0";
        return SchemaRegistry.withDefaultDialect(
                        SpecificationVersion.DRAFT_2020_12,
                        builder -> builder.schemas(Map.of(id, AnswerDocument.schema())))
                .getSchema(SchemaLocation.of(id));
    }
}
