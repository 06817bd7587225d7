package org.geneticsrules.answer.compared;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.RivalModel;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.DrawnTruthDocument;
import org.geneticsrules.json.PowerDocument;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.planning.EstimatedPower;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.render.PowerText;
import org.geneticsrules.simulation.DrawnPedigree;
import org.geneticsrules.simulation.Founder;
import org.geneticsrules.simulation.LitterPlan;
import org.geneticsrules.simulation.PlannedLook;
import org.geneticsrules.simulation.PlannedTest;
import org.geneticsrules.simulation.Simulation;
import org.geneticsrules.simulation.Whom;
import org.geneticsrules.testing.Coats;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sighting;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** How often litters would tell models apart, in sentences, and the documents of what is drawn. */
@Tag("default-jdk")
class PowerAnswersTest {

    private static final CompiledModel RECESSIVE = CompiledModel.of(Coats.recessive());

    private static PowerAnswers asked(Model... rivals) {
        return PowerAnswers.of(Answers.of(RECESSIVE, List.of())
                        .against(List.of(rivals).stream()
                                .map(rival -> RivalModel.of(rival.id(), () -> rival))
                                .toList()))
                .from("even");
    }

    /** Tested carriers with a litter of six each. */
    private static PowerQuestion carriers(int couples, int sets) {
        Animal carrier = Animal.unknown(RECESSIVE).withGenotype("D/d", OmittedLoci.UNKNOWN);
        Founder founder = new Founder(carrier.genotypes(), carrier.phase(), Optional.empty());
        Simulation drawing = Simulation.of(RECESSIVE)
                .seeded(9)
                .looking(PlannedLook.at("coat").of(Whom.KITS))
                .testing(PlannedTest.at("A").of(Whom.FOUNDERS));
        return new PowerQuestion(
                carrier, carrier, drawing, LitterPlan.of(founder, founder, couples, LitterSize.of(6)), sets);
    }

    @Test
    void a_plan_that_is_enough_says_how_many_litters_it_takes() {
        PowerAnswer answer = asked(Coats.lethal()).power(carriers(60, 200));
        String verdict = answer.verdict();
        assertTrue(
                verdict.startsWith("If \"recessive\" is true, 60 litters of 60 couples lift it to the bar of 20 : 1"),
                verdict);
        assertTrue(verdict.contains(" over the other model in "), verdict);
        int median = answer.power().littersUntil(0.5).orElseThrow();
        assertTrue(verdict.endsWith("Half of the cases need " + median + " litters or fewer."), verdict);
        // 173 to 183 kits are 29 to 31 litters of six, by the mean of the logarithm of the ratio
        assertTrue(median > 20 && median < 40, verdict);
        assertTrue(answer.assumptions().stream().anyMatch(one -> one.id().equals("truth")));
        assertTrue(answer.notices().toString().contains("none of them lives"));
        assertTrue(answer.notices()
                .containsAll(List.of(Judging.NO_ADVICE, "records of litters that there are come first")));
    }

    @Test
    void a_plan_that_is_too_small_says_so() {
        String verdict = asked(Coats.lethal()).power(carriers(3, 100)).verdict();
        assertTrue(verdict.endsWith("For half of the cases so many litters are not enough."), verdict);
    }

    /** Frequencies make no difference to kits of tested parents. */
    @Test
    void models_that_no_mating_tells_apart_are_named_as_such() {
        Model rarer = Coats.recessive("rarer", Probability.of(1, 3));
        PowerAnswer never = asked(rarer).power(carriers(2, 20));
        assertEquals(
                "However many litters there are, no mating tells \"recessive\" from \"rarer\" by these looks.",
                never.verdict());
        assertEquals(List.of(1), never.inseparable());
        assertFalse(never.decided());
        PowerAnswer rest = asked(rarer, Coats.lethal()).power(carriers(2, 20));
        assertEquals(2, rest.models().size());
        assertTrue(rest.notices()
                .toString()
                .contains("no mating tells from it by these looks, and that were not compared: \"rarer\""));
        PowerAnswer both = asked().power(carriers(2, 20), List.of(Candidate.of(rarer), Candidate.of(Coats.lethal())));
        assertEquals(3, both.models().size());
        assertEquals(40, both.power().bar());
        assertTrue(both.verdict().endsWith("How it goes with the others is told below."), both.verdict());
    }

    /** Of a couple with two litters both are noticed; how far a wrong model is ahead then is not bounded. */
    @Test
    void several_litters_that_are_all_noticed_are_told_of() {
        for (int litters = 1; litters <= 2; litters++) {
            PowerQuestion one = carriers(2, 20);
            LitterPlan plan =
                    new LitterPlan(one.plan().sire(), one.plan().dam(), 2, litters, LitterSize.of(6), Census.SCORED);
            PowerAnswer answer = asked(Coats.lethal())
                    .power(new PowerQuestion(
                            one.sire(),
                            one.dam(),
                            one.drawing().keeping(Ascertainment.atLeastOne(Coats.LIGHT)),
                            plan,
                            20));
            assertEquals(
                    litters > 1,
                    answer.assumptions().stream().anyMatch(taken -> taken.id().equals("all-noticed")));
        }
    }

    @Test
    void without_a_rival_nothing_is_told_apart() {
        ProblemsException none = assertThrows(ProblemsException.class, () -> asked().power(carriers(2, 20)));
        assertEquals("no-rival", none.problems().get(0).code());
    }

    private static Schema schema(String kind, String text) {
        String id = "urn:geneticsrules:schema:" + kind + ":0";
        return SchemaRegistry.withDefaultDialect(
                        SpecificationVersion.DRAFT_2020_12, builder -> builder.schemas(Map.of(id, text)))
                .getSchema(SchemaLocation.of(id));
    }

    /** 100 and 0 are all and none; an interval is told no narrower than it is. */
    @Test
    void percents_claim_no_more_than_was_found() {
        PowerAnswer one = asked(Coats.lethal()).power(carriers(1, 20));
        assertTrue(one.decided());
        EstimatedPower of = one.power();
        EstimatedPower many = new EstimatedPower(
                of.truth(),
                of.bar(),
                20_000,
                List.of(19_999),
                1,
                0,
                of.rivals(),
                of.traits(),
                of.dropped(),
                of.randomness());
        assertEquals("99.9 %", Shares.share(many, 19_999));
        assertEquals("0.1 %", Shares.share(many, 1));
        assertEquals("100.0 %", Shares.share(many, 20_000));
        assertEquals("0.0 %", Shares.share(many, 0));
        assertEquals("62.5 %", Shares.share(many, 12_500));
        // 1 of 20000: the exact interval is 0.00013 % to 0.0279 %
        assertEquals("0.0 %", Shares.least(many, 1));
        assertEquals("0.1 %", Shares.most(many, 1));
        assertEquals("99.9 %", Shares.least(many, 19_999));
        assertEquals("100.0 %", Shares.most(many, 19_999));
        // none of 20: the upper end is 1 - 0.025^(1/20) = 0.16843
        assertEquals("16.9 %", one.most(0));
        assertEquals("0.0 %", one.least(0));
        String sets = one.share(of.reached()) + " (" + one.least(of.reached()) + " to " + one.most(of.reached()) + ")";
        assertTrue(PowerText.of(one).replaceAll("\\s+", " ").contains("in " + sets), sets);
    }

    @Test
    void documents_and_texts_say_the_same() {
        Schema schema = schema("power-answer", PowerDocument.schema());
        for (PowerAnswer answer : List.of(
                asked(Coats.lethal()).power(carriers(40, 50)),
                asked(Coats.lethal(), Coats.twoLoci()).power(carriers(1, 20)),
                asked(Coats.recessive("rarer", Probability.of(1, 3))).power(carriers(2, 20)))) {
            String document = Documents.write(PowerDocument.of(answer));
            assertEquals(List.of(), schema.validate(document, InputFormat.JSON));
            assertTrue(document.contains(answer.verdict().replace("\"", "\\\"")));
            String text = PowerText.of(answer);
            text.lines().forEach(line -> assertTrue(line.length() <= 100, line));
            assertTrue(text.replaceAll("\\s+", " ").startsWith(answer.verdict()), text);
            assertFalse(document.contains("NaN"), document);
            assertTrue(document.contains("\"decided\": " + answer.decided()), document);
        }
    }

    /** The truth has what the records have not: what everybody carries, and the kit by which parents were chosen. */
    @Test
    void the_truth_is_a_document_of_its_own() {
        Founder any = Founder.from(Coats.recessive(), "even");
        Simulation drawing = Simulation.of(RECESSIVE)
                .seeded(4)
                .looking(PlannedLook.at("coat").when(LifeStage.atWeek(8)).of(Whom.KITS))
                .keeping(new Ascertainment.ParentsChosen(Sighting.of(Coats.LIGHT)));
        DrawnPedigree drawn = drawing.couples(LitterPlan.of(any, any, 2, LitterSize.of(3)))
                .findFirst()
                .orElseThrow();
        String truth = Documents.write(DrawnTruthDocument.of(drawn, Coats.recessive(), drawing.looks()));
        assertEquals(
                List.of(), schema("drawn-truth", DrawnTruthDocument.schema()).validate(truth, InputFormat.JSON));
        drawn.animals()
                .values()
                .forEach(animal -> assertTrue(truth.contains("\"genotype\": \"" + animal.genotype() + "\""), truth));
        assertTrue(truth.contains("\"earlier\"") && truth.contains("\"stage\": {\"weeks\": 8}"), truth);
        String records = Documents.write(drawn.records());
        assertFalse(records.contains("D/d") || records.contains("d/d") || records.contains("earlier"), records);
    }
}
