package org.geneticsrules.answer.compared;

import static org.geneticsrules.testing.Coats.DARK;
import static org.geneticsrules.testing.Coats.LIGHT;
import static org.geneticsrules.testing.Coats.seen;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.Assumption;
import org.geneticsrules.answer.RivalModel;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.caution.CautionSet;
import org.geneticsrules.caution.QuestionKind;
import org.geneticsrules.caution.Trigger;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.comparison.FittedModel;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.LitterDocument;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.render.LitterText;
import org.geneticsrules.testing.Coats;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** What litters say of models, in sentences. */
class LitterAnswersTest {

    private static LitterAnswers litters(Model model, Pedigree pedigree, Model... rivals) {
        Answers answers = Answers.of(CompiledModel.of(model), List.of())
                .against(List.of(rivals).stream()
                        .map(rival -> RivalModel.of(rival.id(), () -> rival))
                        .toList());
        return LitterAnswers.of(RecordedAnswers.of(answers, pedigree));
    }

    private static PedigreeBuilder couple() {
        return Pedigree.builder("pair", "1").add(seen("sire", DARK)).add(seen("dam", DARK));
    }

    private static List<String> ids(LitterAnswer answer) {
        return answer.assumptions().stream().map(Assumption::id).toList();
    }

    @Test
    void a_litter_that_goes_with_a_model() {
        LitterAnswer answer = litters(Coats.recessive(), Coats.ofCarriers(9, 3)).fit();
        assertTrue(answer.verdict().startsWith("These litters go with the model: "), answer.verdict());
        assertTrue(answer.verdict().contains("does not prove it"), answer.verdict());
        assertTrue(answer.decided());
        assertFalse(answer.fit().orElseThrow().isRejected());
        assertTrue(
                ids(answer).containsAll(List.of("model", "population", "founders-given")),
                ids(answer).toString());
        assertFalse(ids(answer).contains("litters-complete"));
        assertEquals(1.0, answer.fit().flatMap(FittedModel::p).orElseThrow(), 1e-12);
    }

    /** Whether a litter of a sire who is not known goes with a model is not tested, so nothing is decided. */
    @Test
    void a_question_that_was_not_tested_is_not_decided() {
        Pedigree pedigree = couple().add(seen("kit", DARK))
                .add(Litter.of("litter", Optional.of("dam"), Paternity.unknown(), "kit")
                        .with(Ascertainment.complete()))
                .build();
        LitterAnswer answer = litters(Coats.recessive(), pedigree).fit();
        assertTrue(answer.verdict().contains("how likely all of it is together was not found out"), answer.verdict());
        assertFalse(answer.decided());
        assertFalse(answer.fit().orElseThrow().isRejected());
    }

    @Test
    void what_cannot_be_is_named_with_what_to_do() {
        Pedigree pedigree = Coats.litter(couple(), "first", "", 5, 1, Ascertainment.unknown())
                .build();
        LitterAnswer answer = litters(Coats.dominant(), pedigree).fit();
        assertTrue(answer.verdict().contains("first.5 of litter first cannot be"), answer.verdict());
        assertTrue(answer.verdict().contains("allow for errors of naming"), answer.verdict());
        assertTrue(answer.decided());
        assertTrue(ids(answer).contains("litters-complete"));
    }

    @Test
    void a_litter_that_goes_badly_with_a_model() {
        LitterAnswer answer =
                litters(Coats.recessive(), Coats.ofCarriers(2, 14)).fit();
        assertTrue(answer.verdict().startsWith("These litters go badly with the model"), answer.verdict());
        assertTrue(answer.verdict().contains("does not say which of its rules is wrong"), answer.verdict());
        assertTrue(answer.decided());
    }

    /** 300 dark and 150 light are 2 : 1: the recessive model is far behind, and the bar of 20 is reached. */
    @Test
    void litters_favour_the_model_that_foretold_them() {
        LitterAnswer answer = litters(Coats.recessive(), Coats.ofCarriers(300, 150), Coats.lethal())
                .favour();
        Standings standings = answer.comparison().orElseThrow();
        assertEquals(1, standings.best().orElseThrow());
        assertEquals(Optional.of("litter"), standings.models().get(1).reached());
        double ratio = 300 * Math.log(8.0 / 9) + 150 * Math.log(4.0 / 3);
        assertEquals(
                ratio,
                standings.models().get(1).log() - standings.models().get(0).log(),
                1e-9);
        assertEquals(
                "The records favour \"lethal\": they are 2483 : 1 likelier under it than under \"recessive\", where 20 : 1 is"
                        + " evidence.",
                answer.verdict());
        assertTrue(answer.decided());
    }

    /** The same with a number fitted: 2 k - 2 log L and k log 450 - 2 log L, and no evidence for the model it was fitted in. */
    @Test
    void numbers_fitted_to_the_records_make_a_ratio_no_evidence() {
        LitterAnswer answer = litters(Coats.recessive(), Coats.ofCarriers(300, 150), Coats.lethal())
                .fitted(Map.of(Coats.lethal().reference(), 1))
                .favour();
        Standings standings = answer.comparison().orElseThrow();
        Standings.Fitting none = standings.models().get(0).fitting().orElseThrow();
        Standings.Fitting one = standings.models().get(1).fitting().orElseThrow();
        double log = standings.models().get(1).log();
        assertEquals(0, none.numbers());
        assertEquals(-2 * standings.models().get(0).log(), none.aic(), 1e-9);
        assertEquals(none.aic(), none.bic(), 1e-9);
        assertEquals(2 - 2 * log, one.aic(), 1e-9);
        assertEquals(Math.log(450) - 2 * log, one.bic(), 1e-9);
        assertTrue(answer.verdict().contains("but numbers of it were fitted to them"), answer.verdict());
        assertFalse(answer.decided());
        assertTrue(
                answer.notices().stream().anyMatch(notice -> notice.startsWith("some numbers were fitted")),
                answer.notices().toString());
        String text = LitterText.of(answer);
        assertTrue(text.replaceAll("\\s+", " ").contains("1 number fitted, AIC"), text);
        String json = Documents.write(LitterDocument.of(answer));
        assertTrue(json.contains("\"fittedNumbers\": 1"), json);
        assertTrue(litters(Coats.recessive(), Coats.ofCarriers(300, 150), Coats.lethal())
                .favour()
                .comparison()
                .orElseThrow()
                .models()
                .get(1)
                .fitting()
                .isEmpty());
    }

    @Test
    void a_small_lead_is_no_evidence() {
        LitterAnswer answer = litters(Coats.recessive(), Coats.ofCarriers(8, 4), Coats.lethal())
                .favour();
        assertTrue(answer.verdict().startsWith("No model is ahead by enough"), answer.verdict());
        assertFalse(answer.decided());
    }

    /** A frequency that founders do not show makes no difference to kits of tested parents, in any mating. */
    @Test
    void models_that_foretell_the_same_are_not_told_apart() {
        LitterAnswer answer = litters(
                        Coats.recessive(), Coats.ofCarriers(8, 4), Coats.recessive("rarer", Probability.of(1, 3)))
                .favour();
        assertTrue(answer.verdict().startsWith("These records cannot tell the models apart"), answer.verdict());
        Standings standings = answer.comparison().orElseThrow();
        assertEquals(List.of(new Standings.Pair(0, 1)), standings.alike());
        assertEquals(standings.alike(), standings.inseparable());
        assertFalse(answer.decided());
    }

    /** Forty light kits of forty from tested carriers: the best of two is none. */
    @Test
    void none_of_the_models_fits() {
        LitterAnswer answer = litters(Coats.recessive(), Coats.ofCarriers(0, 40), Coats.lethal())
                .favour();
        assertTrue(answer.verdict().startsWith("None of these models fits"), answer.verdict());
        assertTrue(answer.decided());
    }

    @Test
    void an_infinite_ratio_that_hangs_on_one_record_says_so() {
        Pedigree pedigree = Coats.litter(couple(), "first", "", 5, 1, Ascertainment.complete())
                .build();
        LitterAnswer answer =
                litters(Coats.dominant(), pedigree, Coats.recessive()).favour();
        assertTrue(
                answer.verdict().startsWith("The records exclude \"dominant\" and allow \"recessive\"."),
                answer.verdict());
        assertTrue(answer.verdict().contains("without any one of those of sire, dam and first.5"), answer.verdict());
        assertTrue(
                answer.verdict().contains("With 1 look in 100 misread the ratio over \"dominant\" is"),
                answer.verdict());
    }

    /** Parents of several noticed litters are told of unless tests say what they carry; one model alone has no running ratio. */
    @Test
    void several_noticed_litters_of_parents_who_are_not_known() {
        for (boolean tested : new boolean[] {false, true}) {
            for (int number = 1; number <= 2; number++) {
                PedigreeBuilder builder = tested ? Coats.carriers(Pedigree.builder("pair", "1"), "") : couple();
                for (int litter = 0; litter < number; litter++) {
                    Coats.litter(builder, "litter " + litter, "", 3, 1, Ascertainment.atLeastOne(LIGHT));
                }
                LitterAnswers asked = litters(Coats.recessive(), builder.build(), Coats.lethal());
                assertEquals(!tested && number == 2, ids(asked.favour()).contains("noticed-by-itself"));
                assertFalse(ids(asked.fit()).contains("noticed-by-itself"));
            }
        }
    }

    private static Model silent() {
        return Model.builder("silent", "1", Coats.TRAITS)
                .locus(
                        "A",
                        at -> at.alleles("D", "d")
                                .dominant("D", "d")
                                .shows("D", "dark")
                                .shows("d", "light"))
                .build();
    }

    @Test
    void a_model_that_leaves_a_trait_open_makes_it_left_out() {
        LitterAnswers asked = litters(Coats.recessive(), Coats.ofCarriers(8, 4), silent(), Coats.lethal());
        LitterAnswer answer = asked.favour();
        assertEquals(2, answer.comparison().orElseThrow().models().size());
        assertTrue(
                answer.notices().toString().contains("\"silent\""),
                answer.notices().toString());
        LitterAnswer named = asked.favour(List.of(Candidate.of(Coats.lethal()).called("the other")));
        assertEquals(
                "the other", named.comparison().orElseThrow().models().get(1).title());
    }

    /** A model of another, with one more population in which the alleles of light coats have some frequency. */
    private static Model with(Model model, String population, Probability light) {
        ModelBuilder builder = Model.builder(model.id(), "2", model.catalogue());
        model.loci().values().forEach(builder::locus);
        model.rules().values().forEach(builder::trait);
        model.populations().values().forEach(builder::population);
        return builder.population(
                        population,
                        described -> model.loci().values().forEach(locus -> {
                            List<String> alleles = List.copyOf(locus.alleles().keySet());
                            described.frequency(locus.id(), alleles.get(0), light.complement());
                            described.frequency(locus.id(), alleles.get(1), light);
                        }))
                .build();
    }

    /**
     * Light parents of three dark kits and a light one are light at different loci, and carry either one or both of the other alleles: half
     * of their kits are dark, or a quarter. Where light alleles are rare the former is likelier before: 4 : 4 where half of the alleles are
     * light, 36 : 4 where a tenth is. So the chance of four kits no likelier than these (none dark, three, or four) differs.
     */
    @Test
    void other_populations_are_told_with_a_fit() {
        PedigreeBuilder builder =
                Pedigree.builder("pair", "1").add(seen("sire", LIGHT)).add(seen("dam", LIGHT));
        Pedigree pedigree = Coats.litter(builder, "litter", "", 3, 1, Ascertainment.complete())
                .build();
        Model model = with(Coats.twoLoci(), "few", Probability.of(1, 10));
        LitterAnswer answer = litters(model, pedigree).fit();
        assertEquals(rarer(4), answer.fit().flatMap(FittedModel::p).orElseThrow(), 1e-9);
        FitOtherwise few = answer.fitOtherwise().get(0);
        assertEquals(1, answer.fitOtherwise().size());
        assertEquals("founders as in \"few\"", few.assumed());
        assertEquals(rarer(36), few.p().orElseThrow(), 1e-9);
        assertFalse(few.rejected());
        assertFalse(answer.verdict().contains("That turns"), answer.verdict());
        assertTrue(LitterText.of(answer).contains("- founders as in \"few\": p 0.3748"), LitterText.of(answer));
        // who is named is not varied
        RecordedAnswers named = RecordedAnswers.of(Answers.of(CompiledModel.of(model), List.of()), pedigree)
                .from("few");
        assertEquals(
                List.of("founders as in \"even\""),
                LitterAnswers.of(named).fit().fitOtherwise().stream()
                        .map(FitOtherwise::assumed)
                        .toList());
    }

    private static double rarer(double half) {
        double halves = half / 4;
        double quarters = 4 * 4 / 64.0 * 3 / 4;
        double share = halves / (halves + quarters);
        double none = share / 16 + (1 - share) * 81 / 256;
        double three = share / 4 + (1 - share) * 12 / 256;
        double four = share / 16 + (1 - share) / 256;
        return none + three + four;
    }

    /** A light kit of dark parents goes with the model where the allele occurs, and cannot be where it does not. */
    @Test
    void a_population_that_turns_a_fit_is_named() {
        Pedigree pedigree = Coats.litter(couple(), "first", "", 5, 1, Ascertainment.complete())
                .build();
        LitterAnswer answer = litters(with(Coats.recessive(), "none", Probability.ZERO), pedigree)
                .fit();
        assertFalse(answer.fit().orElseThrow().isRejected());
        assertTrue(answer.fitOtherwise().get(0).rejected());
        assertTrue(answer.verdict().endsWith(" That turns with founders as in \"none\"."), answer.verdict());
        assertTrue(LitterText.of(answer).contains("- founders as in \"none\": excluded"), LitterText.of(answer));
    }

    /** Of a tested D/D dam no kit is light; of carriers one of four is expected, though none was seen: p is 1 - 4 (3/4)^3 / 4. */
    @Test
    void looks_that_nobody_showed_are_told_where_some_were_expected() {
        PedigreeBuilder builder = Coats.carriers(Pedigree.builder("pairs", "1"), "");
        builder.add(Individual.of("other", Sex.FEMALE)
                .with(new GenotypeTest(Optional.empty(), "A", Set.of("D/D"), Probability.ZERO)));
        Coats.litter(builder, "some", "", 4, 0, Ascertainment.complete());
        builder.add(seen("kit", DARK))
                .add(Litter.of("none", "other", "sire", "kit").with(Ascertainment.complete()));
        String text = LitterText.of(litters(Coats.recessive(), builder.build()).fit());
        assertTrue(
                text.contains(
                        "- litter some: fine, p 0.5781; 4 coat: dark (3.00 expected), 0 coat: light (1.00 expected)\n"),
                text);
        assertTrue(text.contains("- litter none: fine, p 1.0000; 1 coat: dark (1.00 expected)\n"), text);
    }

    /** Whichever way litters are asked about, what is said along with any question about litters is said. */
    @Test
    void cautions_about_litters_are_raised_by_either_question() {
        Map<String, Caution> each = new LinkedHashMap<>();
        for (QuestionKind kind : List.of(QuestionKind.LITTER, QuestionKind.HYPOTHESIS, QuestionKind.PLAN)) {
            Trigger trigger = new Trigger.OnQuestion(Set.of(kind.word()));
            each.put(kind.word(), new Caution(kind.word(), trigger, "A line.", List.of(), List.of(), "2026-11", false));
        }
        CautionSet cautions = new CautionSet("litter.cautions", "1", Optional.empty(), Optional.empty(), each);
        Answers answers = Answers.of(CompiledModel.of(Coats.recessive()), List.of(cautions))
                .against(List.of(RivalModel.of("lethal", Coats::lethal)));
        LitterAnswers asked = LitterAnswers.of(RecordedAnswers.of(answers, Coats.ofCarriers(8, 4)));
        assertEquals(
                List.of("litter"),
                asked.fit().cautions().stream().map(Caution::id).toList());
        assertEquals(
                List.of("litter", "hypothesis"),
                asked.favour().cautions().stream().map(Caution::id).toList());
    }

    private static Problem refused(Executable asked) {
        return assertThrows(ProblemsException.class, asked).problems().get(0);
    }

    /** What nobody looked at says nothing of inheritance, whichever question is asked. */
    @Test
    void litters_of_which_no_kit_was_looked_at_are_refused() {
        Pedigree pedigree = couple().add(Individual.of("kit"))
                .add(Litter.of("litter", "dam", "sire", "kit").with(Ascertainment.complete()))
                .build();
        LitterAnswers asked = litters(Coats.recessive(), pedigree, Coats.lethal());
        assertEquals("no-kits", refused(asked::fit).code());
        assertEquals("no-kits", refused(asked::favour).code());
        assertTrue(refused(asked::fit).message().contains("no kit of a recorded litter"), refused(asked::fit)::message);
    }

    /** A rival that is silent about what was recorded is no rival, and one model alone favours nothing. */
    @Test
    void a_comparison_with_no_rival_left_is_refused_with_their_names() {
        Pedigree pedigree = Coats.ofCarriers(8, 4);
        Problem none = refused(litters(Coats.recessive(), pedigree)::favour);
        assertEquals("no-rival", none.code());
        assertTrue(none.message().endsWith("speaks"), none.message());
        Problem silent = refused(litters(Coats.recessive(), pedigree, silent())::favour);
        assertEquals("no-rival", silent.code());
        assertTrue(silent.message().endsWith(": \"silent\""), silent.message());
    }

    @Test
    void documents_and_texts_say_the_same() {
        String id = "urn:geneticsrules:schema:litter-answer:0";
        Schema schema = SchemaRegistry.withDefaultDialect(
                        SpecificationVersion.DRAFT_2020_12,
                        builder -> builder.schemas(Map.of(id, LitterDocument.schema())))
                .getSchema(SchemaLocation.of(id));
        PedigreeBuilder two = couple();
        Coats.litter(two, "first", "", 5, 1, Ascertainment.atLeastOne(LIGHT));
        Pedigree pedigree =
                Coats.litter(two, "second", "", 3, 0, Ascertainment.complete()).build();
        for (LitterAnswer answer : List.of(
                litters(Coats.recessive(), Coats.ofCarriers(9, 3)).fit(),
                litters(Coats.recessive(), pedigree).fit(),
                litters(with(Coats.recessive(), "none", Probability.ZERO), pedigree)
                        .fit(),
                litters(with(Coats.recessive(), "few", Probability.of(1, 10)), pedigree)
                        .fit(),
                litters(Coats.dominant(), pedigree).fit(),
                litters(Coats.recessive(), pedigree, Coats.dominant(), Coats.twoLoci(), Coats.lethal())
                        .favour(),
                litters(Coats.dominant(), pedigree, Coats.recessive()).favour(),
                litters(Coats.recessive(), pedigree, Coats.twoLoci(), Coats.dominant())
                        .fitted(Map.of(Coats.twoLoci().reference(), 2))
                        .favour())) {
            String document = Documents.write(LitterDocument.of(answer));
            assertEquals(List.of(), schema.validate(document, InputFormat.JSON));
            assertTrue(document.contains(answer.verdict().replace("\"", "\\\"")));
            String text = LitterText.of(answer);
            text.lines().forEach(line -> assertTrue(line.length() <= 100, line));
            assertTrue(text.replaceAll("\\s+", " ").startsWith(answer.verdict()), text);
        }
    }
}
