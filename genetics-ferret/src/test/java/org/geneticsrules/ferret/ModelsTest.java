package org.geneticsrules.ferret;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.answer.Answer;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.MatingQuestion;
import org.geneticsrules.evidence.Evidence;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.expression.Completeness;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.Source;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.render.AnswerText;
import org.geneticsrules.render.CompletenessText;
import org.geneticsrules.render.ModelText;
import org.geneticsrules.trait.LifeStage;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What each of the six models states, and that it can be read, reported on and asked. */
@Tag("default-jdk")
class ModelsTest {

    private static final LifeStage WINTER = LifeStage.parse("week 30, moult 1, winter");

    static Stream<Model> models() {
        return Ferret.guided().values().stream();
    }

    @ParameterizedTest
    @MethodSource("models")
    void every_trait_is_ruled_or_named_with_the_reason(Model model) {
        Set<String> accounted = new LinkedHashSet<>(model.visibleTraits());
        for (Map.Entry<String, String> open : model.notModelled().entrySet()) {
            assertTrue(open.getValue().length() > 20, open::toString);
            assertTrue(accounted.add(open.getKey()), open::toString);
        }
        assertEquals(Ferret.catalogue().traits().keySet(), accounted);
        assertTrue(model.notModelled().keySet().containsAll(List.of("hearing left ear", "hearing right ear")));
    }

    @ParameterizedTest
    @MethodSource("models")
    void a_model_is_written_and_read_again_and_reported_on(Model model) {
        Model again =
                Documents.reader().readModel(Source.of("again", Documents.write(model)), Ferret.REGISTRY.catalogues());
        assertEquals(model.reference(), again.reference());
        assertTrue(ModelText.of(model).contains("Not modelled"));
        Completeness complete = Completeness.of(model);
        assertEquals(
                model.notModelled().keySet(),
                complete.withoutRule().stream()
                        .map(Completeness.WithoutRule::trait)
                        .collect(Collectors.toSet()));
        assertTrue(CompletenessText.of(complete).contains("None: no two statements contradict each other."));
    }

    @ParameterizedTest
    @MethodSource("models")
    void a_model_answers_a_mating_with_its_cautions_and_its_grade(Model model) {
        Answers answers = Ferret.REGISTRY.answers(model);
        Animal plain = Animal.unknown(answers.compiled()).withGenotype("", OmittedLoci.WILD_TYPE);
        Answer answer = answers.mating(MatingQuestion.of(plain, plain).at(WINTER));
        String text = AnswerText.of(answer);
        assertTrue(text.contains("check your local law"), text);
        assertTrue(answer.evidence().grade().isPresent(), text);
    }

    @ParameterizedTest
    @MethodSource("models")
    void founders_have_frequencies_at_every_locus(Model model) {
        assertEquals(
                Set.of("few carriers", "many carriers"), model.populations().keySet());
        model.populations()
                .values()
                .forEach(population -> assertEquals(
                        model.loci().keySet(), population.frequencies().keySet()));
    }

    @Test
    void each_model_rules_these_traits() {
        assertEquals(Set.of("eye colour", "nose colour"), ruled("molecular-only"));
        assertEquals(Set.of("eye colour", "nose colour", "dilution"), ruled("tyr-and-mlph"));
        assertEquals(Set.of("hue", "trunk suppression", "trunk depth"), ruled("pedigree-data"));
        for (String rival : Ferret.RIVALS) {
            assertEquals(
                    Ferret.common().visibleTraits(), Ferret.hypothesis(rival).visibleTraits(), rival);
        }
    }

    private static Set<String> ruled(String name) {
        return new LinkedHashSet<>(Ferret.model(name).visibleTraits());
    }

    @Test
    void what_is_not_known_is_refused_with_the_reason() {
        Map<String, String> asked = Map.of(
                "molecular-only", "hue",
                "tyr-and-mlph", "white guard hairs",
                "pedigree-data", "throat");
        asked.forEach((name, trait) -> {
            Answers answers = Ferret.REGISTRY.answers(Ferret.model(name));
            Animal any = Animal.unknown(answers.compiled());
            ProblemsException refusal = assertThrows(
                    ProblemsException.class,
                    () -> answers.mating(MatingQuestion.of(any, any).inTraits(List.of(trait))));
            assertEquals("not-modelled", refusal.problems().get(0).code());
            assertTrue(
                    refusal.getMessage()
                            .contains(Ferret.model(name).notModelled().get(trait)),
                    name);
        });
    }

    /** The words and grades of the sources are kept wherever a model repeats a statement of the default. */
    @ParameterizedTest
    @MethodSource("models")
    void a_statement_repeated_is_repeated_whole(Model model) {
        Map<String, Evidence> known = Ferret.common().evidence();
        model.evidence().forEach((name, evidence) -> {
            if (known.containsKey(name)) {
                assertEquals(known.get(name), evidence, name);
            }
        });
    }

    @Test
    void the_study_of_silver_is_told_as_it_is_known() {
        Evidence study = Ferret.model("tyr-and-mlph").evidence().get("silver by dose");
        assertEquals(Grade.ONE_STUDY, study.grade());
        assertTrue(study.claim().contains("secondary quotation"), study::claim);
        assertTrue(study.claim().contains("inference"), study::claim);
    }

    /** Two papers, one data set: neither is counted twice, and nothing of it is proven. */
    @Test
    void the_pedigrees_are_one_data_set() {
        for (String name : List.of("dark over paler colours", "standard over the rest")) {
            Evidence evidence = Ferret.model("pedigree-data").evidence().get(name);
            assertEquals(Grade.BREEDING_DATA, evidence.grade());
            assertTrue(evidence.sources().get(1).contains("no second data set"), evidence::toString);
        }
        assertEquals(
                Grade.CONJECTURE,
                Ferret.model("pedigree-data").evidence().get("looks as alleles").grade());
    }

    /** Wherever a model foretells a white coat with dark eyes, at whatever age, the answer speaks of hearing. */
    @Test
    void white_kits_with_dark_eyes_raise_the_caution_in_every_model_that_foretells_them() {
        Map<String, String> carriers = Map.of(
                "common-practice", "M/m",
                "tyr-and-mlph", "M/m",
                "pale-apart", "C/ce",
                "dark-eyed-white-is-marking", "W/w",
                "dark-eyed-white-is-old-silver", "M/m",
                "dark-eyed-white-is-pale-step", "C/ce",
                "dark-eyed-white-is-silver", "M/m");
        carriers.forEach((name, carrier) -> {
            Answers answers = Ferret.REGISTRY.answers(Ferret.guided().get(name));
            assertTrue(cautioned(answers, carrier), name);
            assertFalse(cautioned(answers, ""), name);
        });
    }

    private static boolean cautioned(Answers answers, String genotype) {
        Animal parent = Animal.unknown(answers.compiled()).withGenotype(genotype, OmittedLoci.WILD_TYPE);
        MatingQuestion question = MatingQuestion.of(parent, parent)
                .inTraits(List.of("dilution", "eye colour"))
                .at(LifeStage.parse("week 5, moult 0"));
        return AnswerText.of(answers.mating(question))
                .contains("A white coat with dark eyes has several possible causes");
    }

    /** What is known of the ranking is breeding data; that it is inherited as one locus is not known, and an answer says so. */
    @Test
    void an_answer_by_the_ranking_is_a_conjecture() {
        Answers answers = Ferret.REGISTRY.answers(Ferret.model("pedigree-data"));
        Animal carrier = Animal.unknown(answers.compiled()).withGenotype("dark/brown", OmittedLoci.UNKNOWN);
        Answer answer = answers.mating(MatingQuestion.of(carrier, carrier).inTraits(List.of("hue")));
        assertEquals(Optional.of(Grade.CONJECTURE), answer.evidence().grade());
        assertEquals(
                Set.of("classes of the pedigrees", "looks as alleles"),
                answer.evidence().weakest().stream()
                        .map(statement -> statement.evidence().orElseThrow().id())
                        .collect(Collectors.toSet()));
        assertTrue(answer.evidence().statements().stream()
                .anyMatch(statement -> statement.grade() == Grade.BREEDING_DATA));
    }

    /** Brown, beige and coppery were not ranked, so no look is claimed where two of them meet. */
    @Test
    void what_was_not_ranked_is_left_open() {
        List<Completeness.Gap> gaps =
                Completeness.of(Ferret.model("pedigree-data")).gaps();
        String open = gaps.stream()
                .filter(gap -> gap.trait().equals("hue"))
                .map(gap -> gap.where().toString())
                .findFirst()
                .orElseThrow();
        assertTrue(open.contains("not compared") && open.contains("beige"), open);
        assertFalse(open.contains("dark"), open);
    }
}
