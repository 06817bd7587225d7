package org.geneticsrules.ferret;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.answer.Answer;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.CoatQuestion;
import org.geneticsrules.answer.MatingQuestion;
import org.geneticsrules.answer.TestMatingQuestion;
import org.geneticsrules.answer.compared.LitterAnswers;
import org.geneticsrules.answer.compared.PowerAnswer;
import org.geneticsrules.answer.compared.PowerAnswers;
import org.geneticsrules.answer.compared.PowerQuestion;
import org.geneticsrules.answer.compared.TellApartAnswer;
import org.geneticsrules.answer.compared.TellApartQuestion;
import org.geneticsrules.answer.described.DescribeQuestion;
import org.geneticsrules.answer.described.DescribedAnswer;
import org.geneticsrules.answer.described.Descriptions;
import org.geneticsrules.answer.estimated.EstimateAnswer;
import org.geneticsrules.answer.estimated.RecordedEstimates;
import org.geneticsrules.answer.named.NameAnswers;
import org.geneticsrules.answer.named.NamedAnswer;
import org.geneticsrules.answer.recorded.LookNextQuestion;
import org.geneticsrules.answer.recorded.NextLitterQuestion;
import org.geneticsrules.answer.recorded.ParentageQuestion;
import org.geneticsrules.answer.recorded.Progress;
import org.geneticsrules.answer.recorded.RecordedAnswer;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.caution.QuestionKind;
import org.geneticsrules.caution.Relation;
import org.geneticsrules.caution.Role;
import org.geneticsrules.caution.Trigger;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.document.Node;
import org.geneticsrules.json.AnswerDocument;
import org.geneticsrules.json.DescribedDocument;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.EstimateDocument;
import org.geneticsrules.json.NamedDocument;
import org.geneticsrules.json.PowerDocument;
import org.geneticsrules.json.RecordedDocument;
import org.geneticsrules.json.TellApartDocument;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.render.AnswerText;
import org.geneticsrules.render.DescriptionText;
import org.geneticsrules.render.EstimateText;
import org.geneticsrules.render.NameText;
import org.geneticsrules.render.PowerText;
import org.geneticsrules.render.RecordedText;
import org.geneticsrules.render.TellApartText;
import org.geneticsrules.simulation.Founder;
import org.geneticsrules.simulation.LitterPlan;
import org.geneticsrules.simulation.PlannedLook;
import org.geneticsrules.simulation.Simulation;
import org.geneticsrules.simulation.Whom;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.geneticsrules.vocabulary.Occasion;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Follows every caution from its trigger through every kind of answer into the text and into the document, word for word. */
@Tag("default-jdk")
class CautionsReachTest {

    private static final LifeStage ADULT = LifeStage.parse("week 80, moult 2, winter");
    private static final Phenotype PLAIN = Phenotype.parse("hue: black, eye colour: dark, coat length: normal");
    private static final Candidate SILVER_RECESSIVE = Candidate.of(Ferret.hypothesis("silver-recessive"));
    private static final Answers ANSWERS = Answers.of(Ferret.compiled(), List.of(Ferret.cautions()));

    /** An answer as a person and as a program get it. */
    private record Told(String text, String document) {
        static Told of(Answer answer) {
            return new Told(AnswerText.of(answer), written(AnswerDocument.of(answer)));
        }

        static Told of(RecordedAnswer answer) {
            return new Told(RecordedText.of(answer), written(RecordedDocument.of(answer)));
        }

        static Told of(EstimateAnswer answer) {
            return new Told(EstimateText.of(answer), written(EstimateDocument.of(answer)));
        }

        static Told of(NamedAnswer answer) {
            return new Told(NameText.of(answer), written(NamedDocument.of(answer)));
        }

        static Told of(PowerAnswer answer) {
            return new Told(PowerText.of(answer), written(PowerDocument.of(answer)));
        }

        static Told of(DescribedAnswer answer) {
            return new Told(DescriptionText.of(answer), written(DescribedDocument.of(answer)));
        }

        static Told of(TellApartAnswer answer) {
            return new Told(TellApartText.of(answer), written(TellApartDocument.of(answer)));
        }

        private static String written(Node document) {
            return Documents.write(document);
        }

        /** Whether it says all of a caution, or no word of its first line; anything between is a fault. */
        boolean tells(Caution caution) {
            String words = text.replaceAll("\\s+", " ");
            boolean line = words.contains("- " + caution.line());
            boolean stated = document.contains("\"id\": " + quoted(caution.id()));
            assertEquals(line, stated, () -> caution.id() + " in " + text + document);
            if (line) {
                caution.detail().forEach(sentence -> {
                    assertTrue(words.contains(sentence), sentence);
                    assertTrue(document.contains(quoted(sentence)), sentence);
                });
                caution.sources().forEach(source -> {
                    assertTrue(words.contains(source), source);
                    assertTrue(document.contains(quoted(source)), source);
                });
                assertTrue(document.contains(quoted(caution.line())), caution.line());
                assertTrue(words.contains("Written " + caution.date()), caution.date());
            }
            return line;
        }

        private static String quoted(String words) {
            return "\"" + words.replace("\\", "\\\\").replace("\"", "\\\"") + "\"";
        }
    }

    static List<Caution> onLooks() {
        return Ferret.cautions().cautions().values().stream()
                .filter(caution -> caution.trigger() instanceof Trigger.OnLook)
                .toList();
    }

    static List<Caution> all() {
        return List.copyOf(Ferret.cautions().cautions().values());
    }

    // ---- questions about one animal that looks so
    // -------------------------------------------------------------------------

    private static Map<String, Function<Phenotype, Told>> aboutAnAnimal() {
        Map<String, Function<Phenotype, Told>> doors = new LinkedHashMap<>();
        doors.put("coat", look -> Told.of(ANSWERS.coat(new CoatQuestion(animal(look), Set.of("coat length")))));
        doors.put(
                "hand-over", look -> Told.of(ANSWERS.handOver(new CoatQuestion(animal(look), Set.of("coat length")))));
        doors.put(
                "describe",
                look -> Told.of(Descriptions.of(ANSWERS)
                        .describe(new DescribeQuestion(List.of(new Sighting(ADULT, look)), Optional.empty()))));
        doors.put("name", look -> Told.of(NameAnswers.of(ANSWERS).name(List.of(), look, Occasion.unstated())));
        doors.put(
                "look-next",
                look -> Told.of(kennel(look, PLAIN)
                        .lookNext(LookNextQuestion.of("hob").at(ADULT).among(Set.of("coat length")))));
        doors.put(
                "estimate",
                look -> Told.of(
                        RecordedEstimates.of(kennel(look, PLAIN), 0.95).frequencies("L", List.of(), Optional.empty())));
        doors.put("may-carry", look -> Told.of(kennel(look, PLAIN).mayCarry("hob", List.of("L"))));
        return doors;
    }

    @ParameterizedTest
    @MethodSource("onLooks")
    void a_look_of_an_animal_is_warned_of_wherever_one_asks_about_it(Caution caution) {
        boolean meant = on(caution).roles().contains(Role.ANIMAL);
        aboutAnAnimal()
                .forEach((door, ask) ->
                        assertEquals(meant, ask.apply(look(caution)).tells(caution), door));
    }

    // ---- questions about two parents
    // --------------------------------------------------------------------------------------

    private static Map<String, Function<Phenotype, Told>> aboutAParent() {
        Map<String, Function<Phenotype, Told>> doors = new LinkedHashMap<>();
        doors.put(
                "mating",
                look -> Told.of(ANSWERS.mating(MatingQuestion.of(animal(look), animal(PLAIN))
                        .between(Relation.UNRELATED)
                        .inTraits(Set.of("coat length")))));
        doors.put(
                "next-litter",
                look -> Told.of(
                        kennel(look, PLAIN).nextLitter(NextLitterQuestion.of("hob", "jill", Set.of("coat length")))));
        doors.put(
                "test-mating",
                look -> Told.of(ANSWERS.testMatings(
                        TestMatingQuestion.of(animal(look).ofSex(Sex.MALE)).inTraits(Set.of("coat length")))));
        doors.put("power", look -> Told.of(power(animal(look))));
        doors.put("tell-apart", look -> tellApart(kennel(look, PLAIN), "hob"));
        return doors;
    }

    /** What one litter of a hob and a plain jill would tell of eyes; drawn only so far as cautions need it. */
    private static PowerAnswer power(Animal hob) {
        Animal jill = animal(PLAIN);
        Simulation drawing = Simulation.of(Ferret.compiled())
                .looking(PlannedLook.at("eye colour").when(ADULT).of(Whom.KITS));
        Founder any = Founder.from(Ferret.compiled().model(), "few carriers");
        return PowerAnswers.of(ANSWERS)
                .power(
                        new PowerQuestion(hob, jill, drawing, LitterPlan.of(any, any, 1, LitterSize.of(1)), 1),
                        List.of(Candidate.of(Ferret.compiled()).called("the same")));
    }

    /** What to do next to tell silver by dose from silver as a recessive, where a mating is planned; whether it is left out or not. */
    private static Told tellApart(RecordedAnswers records, String sire) {
        return Told.of(LitterAnswers.of(records)
                .tellApart(
                        TellApartQuestion.usual()
                                .planned(sire, "jill")
                                .inTraits(Set.of("eye colour"))
                                .inLittersOf(1),
                        List.of(SILVER_RECESSIVE),
                        Progress.NONE));
    }

    @ParameterizedTest
    @MethodSource("onLooks")
    void a_look_of_a_parent_is_warned_of_wherever_one_asks_about_their_kits(Caution caution) {
        boolean meant = on(caution).roles().contains(Role.PARENT);
        aboutAParent().forEach((door, ask) -> {
            if (meant) {
                assertTrue(ask.apply(look(caution)).tells(caution), door);
            }
        });
    }

    // ---- cautions that go with a kind of question, or with kinship
    // --------------------------------------------------------

    @ParameterizedTest
    @MethodSource("all")
    void what_goes_with_a_kind_of_question_or_with_kinship_is_said_there(Caution caution) {
        if (caution.trigger() instanceof Trigger.OnQuestion on) {
            for (String kind : on.kinds()) {
                List<Told> told = ofKind(QuestionKind.valueOf(kind.toUpperCase(Locale.ROOT)));
                told.forEach(one -> assertTrue(one.tells(caution), () -> kind + " without " + caution.id()));
            }
        }
        if (caution.trigger() instanceof Trigger.OnRelation on) {
            for (Relation relation : on.relations()) {
                assertTrue(Told.of(ANSWERS.mating(MatingQuestion.of(animal(PLAIN), animal(PLAIN))
                                .between(relation)
                                .inTraits(Set.of("coat length"))))
                        .tells(caution));
            }
            boolean kin = on.relations().contains(Relation.SIBLINGS);
            assertEquals(
                    kin,
                    tellApart(RecordedAnswers.of(ANSWERS, litterMates()).from("few carriers"), "hob")
                            .tells(caution));
            assertEquals(
                    kin,
                    Told.of(RecordedAnswers.of(ANSWERS, litterMates())
                                    .nextLitter(NextLitterQuestion.of("hob", "jill", Set.of("coat length"))))
                            .tells(caution));
        }
    }

    @Test
    void every_kind_of_question_that_a_caution_names_is_asked_here() {
        List<String> kinds = new ArrayList<>();
        all().forEach(caution -> {
            if (caution.trigger() instanceof Trigger.OnQuestion on) {
                kinds.addAll(on.kinds());
            }
        });
        kinds.stream()
                .distinct()
                .forEach(kind -> assertTrue(
                        !ofKind(QuestionKind.valueOf(kind.toUpperCase(Locale.ROOT)))
                                        .isEmpty()
                                || kind.equals("litter"),
                        kind));
    }

    private static List<Told> ofKind(QuestionKind kind) {
        return switch (kind) {
            case MATING ->
                List.of(
                        aboutAParent().get("mating").apply(PLAIN),
                        aboutAParent().get("next-litter").apply(PLAIN),
                        aboutAParent().get("tell-apart").apply(PLAIN));
            case PLAN ->
                List.of(
                        aboutAParent().get("test-mating").apply(PLAIN),
                        aboutAParent().get("tell-apart").apply(PLAIN));
            case SALE -> List.of(aboutAnAnimal().get("hand-over").apply(PLAIN));
            case DESCRIPTION -> List.of(aboutAnAnimal().get("describe").apply(PLAIN));
            case NAME -> List.of(aboutAnAnimal().get("name").apply(PLAIN));
            case PARENTAGE ->
                List.of(Told.of(RecordedAnswers.of(ANSWERS, litterMates())
                        .from("few carriers")
                        .parentage(ParentageQuestion.of("spring"))));
            case COAT, CARRIERS, LITTER, RECORDS, HYPOTHESIS, EXERCISE -> List.of();
        };
    }

    // ---- animals
    // ----------------------------------------------------------------------------------------------------------

    private static Animal animal(Phenotype look) {
        return Animal.unknown(ANSWERS.compiled())
                .withGenotype("L/L", OmittedLoci.UNKNOWN)
                .seen(new Sighting(ADULT, look));
    }

    private static RecordedAnswers kennel(Phenotype hob, Phenotype jill) {
        return RecordedAnswers.of(
                        ANSWERS,
                        Pedigree.builder("kennel", "1")
                                .add(Individual.of("hob", Sex.MALE).with(Observation.of(ADULT, hob)))
                                .add(Individual.of("jill", Sex.FEMALE).with(Observation.of(ADULT, jill)))
                                .build())
                .from("few carriers");
    }

    private static Pedigree litterMates() {
        return Pedigree.builder("kennel", "1")
                .add(Individual.of("hob", Sex.MALE).with(Observation.of(ADULT, PLAIN)))
                .add(Individual.of("jill", Sex.FEMALE).with(Observation.of(ADULT, PLAIN)))
                .add(Individual.of("old hob", Sex.MALE))
                .add(Individual.of("old jill", Sex.FEMALE))
                .add(Litter.of("spring", "old jill", "old hob", "hob", "jill"))
                .build();
    }

    private static Trigger.OnLook on(Caution caution) {
        return (Trigger.OnLook) caution.trigger();
    }

    /** The first look that the trigger names. */
    private static Phenotype look(Caution caution) {
        Map<String, String> look = new LinkedHashMap<>();
        on(caution)
                .look()
                .variables()
                .forEach((trait, states) ->
                        look.put(trait, states.values().iterator().next()));
        return Phenotype.from(look);
    }
}
