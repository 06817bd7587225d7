package org.geneticsrules.examples.textbook;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.answer.Answer;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.answer.TestMate;
import org.geneticsrules.answer.TestMatingQuestion;
import org.geneticsrules.answer.TestResult;
import org.geneticsrules.cross.Detection;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.cross.Mate;
import org.geneticsrules.cross.Parent;
import org.geneticsrules.cross.TestMating;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** How many young, litters or mates it takes to see that a mouse carries albino. */
class TestMatingsTest {

    private static final Model MOUSE = Textbook.model("geneticsrules.textbook.mouse");
    private static final View EYES = View.of(List.of("eye colour"));
    private static final Map<String, Probability> LEVELS =
            Map.of("95 %", Probability.of(1, 20), "99 %", Probability.of(1, 100), "99.9 %", Probability.of(1, 1000));

    static List<Map<String, String>> rows() {
        return Textbook.rows("test-matings");
    }

    private static Parent parent(String genotype) {
        return Textbook.parent(MOUSE, genotype, "");
    }

    private static Detection detection(Map<String, String> row, Sex sex) {
        Mate mates = switch (row.get("mates")) {
            case "mate" -> Mate.of(parent(row.get("genotype")));
            case "own young" -> Mate.ownYoung(parent(row.get("genotype")));
            default -> Mate.youngOf(parent(row.get("genotype")), parent(row.get("genotype")));
        };
        TestMating test = TestMating.of(CompiledModel.of(MOUSE), sex, parent("C/c"), mates);
        List<Phenotype> signs = List.copyOf(test.proofs(EYES, parent("C/C")));
        if (!row.get("mates").equals("young of two") && !row.get("genotype").equals("c/c")) {
            assertEquals(List.of(Phenotype.of("eye colour", "pink")), signs);
        }
        LitterSize litter = LitterSize.of(Integer.parseInt(row.get("litter")));
        List<Phenotype> pink = List.of(Phenotype.of("eye colour", "pink"));
        return (row.get("steps from").equals("one")
                        ? test.byOneMate(EYES, pink, litter)
                        : test.byManyMates(EYES, pink, litter))
                .orElseThrow();
    }

    private static void numbers(Map<String, String> row, Sex sex) {
        Detection detection = detection(row, sex);
        if (row.get("limit").isEmpty()) {
            assertEquals(Distribution.certain(Probability.parse(row.get("miss per step"))), detection.step());
            LEVELS.forEach((level, miss) -> {
                int steps = Integer.parseInt(row.get(level));
                assertEquals(new Detection.Reached(steps, detection.missed(steps)), detection.fewest(miss), level);
            });
        } else {
            Probability limit = Probability.parse(row.get("limit"));
            LEVELS.values().forEach(miss -> assertEquals(new Detection.Never(limit), detection.fewest(miss)));
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("rows")
    void the_fewest_for_a_sire(Map<String, String> row) {
        numbers(row, Sex.MALE);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("rows")
    void the_fewest_for_a_dam(Map<String, String> row) {
        numbers(row, Sex.FEMALE);
    }

    /** The door for front ends comes to the numbers of the table too, own young being left out until they are asked for. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("rows")
    void the_answer_gives_the_numbers_of_the_table(Map<String, String> row) {
        CompiledModel compiled = CompiledModel.of(MOUSE);
        Animal animal = Animal.unknown(compiled).ofSex(Sex.MALE).withGenotype("C/-", OmittedLoci.WILD_TYPE);
        Animal other = Animal.unknown(compiled).withGenotype(row.get("genotype"), OmittedLoci.WILD_TYPE);
        TestMate mates = switch (row.get("mates")) {
            case "mate" -> TestMate.of("mates", other);
            case "own young" -> TestMate.ownYoung("daughters", other);
            default -> TestMate.youngOf("young of two", other, other);
        };
        Answer answer = Answers.of(compiled, List.of())
                .testMatings(TestMatingQuestion.of(animal)
                        .carrying(List.of(HiddenAllele.find(MOUSE, "C: c")))
                        .by(List.of(mates))
                        .inTraits(List.of("eye colour"))
                        .inLittersOf(LitterSize.of(Integer.parseInt(row.get("litter"))))
                        .withConfidence(
                                List.of(Probability.of(19, 20), Probability.of(99, 100), Probability.of(999, 1000))));
        boolean one = row.get("steps from").equals("one");
        List<TestResult.Course> courses = answer.tests().get(0).courses();
        TestResult.Course course = courses.stream()
                .filter(found -> found.step() == (one ? TestResult.Step.LITTERS_OF_ONE_MATE : TestResult.Step.MATES))
                .findFirst()
                .orElseThrow();
        List<String> found = course.needed().stream()
                .map(needed -> needed.toShow().orElseThrow() instanceof Detection.Reached reached
                        ? Integer.toString(reached.steps())
                        : "never")
                .toList();
        assertEquals(
                row.get("limit").isEmpty()
                        ? List.of(row.get("95 %"), row.get("99 %"), row.get("99.9 %"))
                        : List.of("never", "never", "never"),
                found);
    }

    /** Calculated: (3/4)^16 = 0.0100226 just misses 1 %, which many texts print as the number for a known carrier. */
    @Test
    void sixteen_kits_by_a_known_carrier_just_miss() {
        Detection detection = detection(rows().get(1), Sex.MALE);
        assertEquals("0.0100226", Textbook.rounded(detection.missed(16).toDouble(), "0.0100226"));
        assertEquals(
                "0.550056",
                Textbook.rounded(detection(rows().get(3), Sex.MALE).missed(1).toDouble(), "0.550056"));
    }

    /** Calculated: from prior 2/3 the posterior falls to 5 % only after 6 and 13 clear kits. */
    @Test
    void a_posterior_takes_more_than_the_power_alone() {
        Probability miss = Detection.missFor(Probability.of(2, 3), Probability.of(1, 20));
        assertEquals(Probability.of(1, 38), miss);
        assertEquals(6, steps(detection(rows().get(0), Sex.MALE).fewest(miss)));
        assertEquals(13, steps(detection(rows().get(1), Sex.MALE).fewest(miss)));
        assertEquals(Probability.ONE, Detection.missFor(Probability.of(1, 20), Probability.of(1, 20)));
    }

    private static int steps(Detection.Fewest fewest) {
        return ((Detection.Reached) fewest).steps();
    }

    /** Calculated: an X-linked recessive shows in half of the sons of a carrier, so in a quarter of all her young. */
    @ParameterizedTest
    @EnumSource(Sex.class)
    void an_x_linked_carrier_is_a_female(Sex sex) {
        Model fly = Textbook.model("geneticsrules.textbook.fruit-fly-white-eyes");
        View eyes = View.of(List.of("sex", "eye colour"));
        List<Phenotype> white = List.of(Phenotype.parse("sex: male, eye colour: white"));
        var found = TestMating.of(
                        CompiledModel.of(fly),
                        sex,
                        Textbook.parent(fly, "W/w", ""),
                        Mate.of(Textbook.parent(fly, "W/-", "w: W 1/2, w 1/2")))
                .byOneMate(eyes, white, LitterSize.of(1));
        if (sex == Sex.MALE) {
            assertEquals(java.util.Optional.empty(), found);
        } else {
            assertEquals(11, steps(found.orElseThrow().fewest(Probability.of(1, 20)))); // 3/4 of the young show nothing
        }
    }
}
