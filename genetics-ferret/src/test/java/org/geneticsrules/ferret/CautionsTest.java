package org.geneticsrules.ferret;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.answer.Answer;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.CoatQuestion;
import org.geneticsrules.answer.MatingQuestion;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.caution.QuestionKind;
import org.geneticsrules.caution.Relation;
import org.geneticsrules.caution.Role;
import org.geneticsrules.caution.Situation;
import org.geneticsrules.caution.Trigger;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sighting;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Follows the trigger of every caution from a question to the answer, and shows that it is silent without its trigger. */
@TestInstance(Lifecycle.PER_CLASS)
@Tag("default-jdk")
class CautionsTest {

    private static final String PLAIN = "C/C B/B R/R M/M P/P d1/d1 d2/d2 w/w h/h L/L";

    /** Late enough for every trait to be told. */
    private static final LifeStage ADULT = LifeStage.parse("week 80, moult 2, winter");

    private final Answers answers = Ferret.REGISTRY.answers(Ferret.common()).against(List.of());

    /** An animal that carries nothing hidden and raises no caution by its look. */
    private final Animal plain = Animal.unknown(answers.compiled()).withGenotype(PLAIN, OmittedLoci.UNKNOWN);

    private final Answer plainMating = mating(plain, plain);

    private final Answer plainCoat = answers.coat(new CoatQuestion(plain, Set.of()));

    private static List<Caution> cautions(Class<? extends Trigger> kind) {
        return Ferret.cautions().cautions().values().stream()
                .filter(caution -> kind.isInstance(caution.trigger()))
                .toList();
    }

    static List<Caution> onLooks() {
        return cautions(Trigger.OnLook.class);
    }

    static List<Caution> onRelations() {
        return cautions(Trigger.OnRelation.class);
    }

    static List<Caution> onQuestions() {
        return cautions(Trigger.OnQuestion.class);
    }

    @Test
    void every_caution_has_a_trigger_that_is_followed_here() {
        assertEquals(
                Ferret.cautions().cautions().size(),
                onLooks().size() + onRelations().size() + onQuestions().size());
        assertTrue(onLooks().size() >= 10
                && onRelations().size() >= 2
                && onQuestions().size() >= 7);
    }

    @Test
    void two_plain_unrelated_parents_raise_only_what_goes_with_every_mating() {
        MatingQuestion question = MatingQuestion.of(plain, plain).between(Relation.UNRELATED);
        assertEquals(
                List.of("ratios are averages", "law", "jills in season", "plan is no approval"),
                answers.mating(question).cautions().stream().map(Caution::id).toList());
        assertEquals(List.of(), plainCoat.cautions());
    }

    @ParameterizedTest
    @MethodSource("onLooks")
    void a_look_of_a_parent_raises_its_cautions(Caution caution) {
        boolean meant = onLook(caution).roles().contains(Role.PARENT);
        for (Phenotype look : looks(caution)) {
            Animal parent = described(answers, look);
            assertEquals(meant, isIn(caution, mating(parent, plain)), () -> "sire " + look);
            assertEquals(meant, isIn(caution, mating(plain, parent)), () -> "dam " + look);
        }
        assertFalse(isIn(caution, plainMating));
    }

    @ParameterizedTest
    @MethodSource("onLooks")
    void a_look_of_a_kit_already_seen_raises_its_cautions(Caution caution) {
        boolean meant = onLook(caution).roles().contains(Role.OFFSPRING);
        for (Phenotype look : looks(caution)) {
            MatingQuestion question = MatingQuestion.of(plain, plain)
                    .between(Relation.UNRELATED)
                    .inTraits(Set.of("coat length"))
                    .withSightings(List.of(new Sighting(ADULT, look)));
            assertEquals(meant, isIn(caution, answers.mating(question)), look::toString);
        }
    }

    @ParameterizedTest
    @MethodSource("onLooks")
    void a_look_of_an_animal_asked_about_raises_its_cautions(Caution caution) {
        boolean meant = onLook(caution).roles().contains(Role.ANIMAL);
        for (Phenotype look : looks(caution)) {
            Answer answer = answers.coat(new CoatQuestion(described(answers, look), Set.of("coat length")));
            assertEquals(meant, isIn(caution, answer), look::toString);
        }
        assertFalse(isIn(caution, plainCoat));
    }

    @Test
    void a_look_that_a_kit_may_have_raises_its_cautions_if_a_model_foresees_it() {
        Set<String> foreseen = new LinkedHashSet<>();
        for (Model model : List.of(Ferret.common(), Ferret.hypothesis("dark-eyed-white-is-marking"))) {
            Answers under = Ferret.REGISTRY.answers(model).against(List.of());
            for (Caution caution : onLooks()) {
                for (Phenotype look : looks(caution)) {
                    if (model.visibleTraits().containsAll(look.traits()) && reachable(under, look)) {
                        Animal parent = described(under, look);
                        // The traits asked for are others, so that only the caution itself can have looked.
                        Answer answer = under.mating(MatingQuestion.of(parent, parent)
                                .between(Relation.UNRELATED)
                                .inTraits(Set.of("eye colour")));
                        boolean meant = onLook(caution).roles().contains(Role.OFFSPRING);
                        assertEquals(meant, isIn(caution, answer), () -> model + " " + look);
                        foreseen.add(caution.id());
                    }
                }
            }
        }
        assertEquals(
                Set.of(
                        "head white and hearing",
                        "silver and hearing",
                        "dark-eyed white and hearing",
                        "body white and hearing",
                        "throat white and hearing",
                        "belly white and hearing",
                        "albino vision",
                        "long coat"),
                foreseen);
    }

    @Test
    void carriers_that_show_nothing_raise_the_caution_of_what_their_kits_may_show() {
        Animal carrier = plainBut("C/C", "C/c");
        Caution vision = Ferret.cautions().cautions().get("albino vision");
        assertTrue(isIn(vision, mating(carrier, carrier)));
        assertFalse(isIn(vision, mating(carrier, plain)));
    }

    @Test
    void a_kit_that_may_have_a_white_head_raises_the_deafness_caution_though_no_parent_shows_one() {
        Caution hearing = Ferret.cautions().cautions().get("head white and hearing");
        Animal unmarked = plainBut("h/h", "H/h").seen(new Sighting(ADULT, Phenotype.of("head white", "none")));
        assertTrue(isIn(hearing, mating(unmarked, plain)));
        assertTrue(isIn(hearing, mating(plain, unmarked)));
    }

    @Test
    void a_silver_kit_raises_the_cautions_of_greying_at_whatever_stage_it_is_asked_about() {
        Caution greying = Ferret.cautions().cautions().get("silver and hearing");
        Caution white = Ferret.cautions().cautions().get("dark-eyed white and hearing");
        Animal silver = plainBut("M/M", "M/m");
        for (LifeStage stage : List.of(LifeStage.unstated(), LifeStage.atMoult(0), ADULT)) {
            Answer answer = answers.mating(MatingQuestion.of(silver, silver)
                    .between(Relation.UNRELATED)
                    .inTraits(Set.of("coat length"))
                    .at(stage));
            assertTrue(isIn(greying, answer), stage::toString);
            assertTrue(isIn(white, answer), stage::toString);
        }
    }

    @ParameterizedTest
    @MethodSource("onRelations")
    void a_relation_of_the_parents_raises_its_cautions_and_no_other_does(Caution caution) {
        for (Relation relation : Relation.values()) {
            boolean meant = ((Trigger.OnRelation) caution.trigger()).relations().contains(relation);
            Answer answer = answers.mating(MatingQuestion.of(plain, plain).between(relation));
            assertEquals(meant, isIn(caution, answer), relation::word);
        }
    }

    @ParameterizedTest
    @MethodSource("onQuestions")
    void a_kind_of_question_raises_its_cautions_and_no_other_does(Caution caution) {
        Set<String> kinds = ((Trigger.OnQuestion) caution.trigger()).kinds();
        assertEquals(kinds.contains("mating"), isIn(caution, plainMating));
        assertEquals(kinds.contains("coat"), isIn(caution, plainCoat));
        for (QuestionKind kind : QuestionKind.values()) {
            assertEquals(
                    kinds.contains(kind.word()),
                    Ferret.cautions().raisedBy(Situation.of(kind.word())).contains(caution),
                    kind::word);
        }
    }

    private Answer mating(Animal sire, Animal dam) {
        return answers.mating(MatingQuestion.of(sire, dam).between(Relation.UNRELATED));
    }

    private Animal plainBut(String pair, String other) {
        return Animal.unknown(answers.compiled()).withGenotype(PLAIN.replace(pair, other), OmittedLoci.UNKNOWN);
    }

    private static boolean isIn(Caution caution, Answer answer) {
        return answer.cautions().contains(caution);
    }

    private static Animal described(Answers under, Phenotype look) {
        return Animal.unknown(under.compiled()).seen(new Sighting(ADULT, look));
    }

    private static boolean reachable(Answers under, Phenotype look) {
        GenotypeSet showing = under.compiled().showing(new Sighting(ADULT, look));
        return !showing.isEmpty();
    }

    private static Trigger.OnLook onLook(Caution caution) {
        return (Trigger.OnLook) caution.trigger();
    }

    /** Every state that a trigger names, each together with the first states of the other traits it names. */
    private static List<Phenotype> looks(Caution caution) {
        Map<String, List<String>> allowed = new LinkedHashMap<>();
        onLook(caution).look().variables().forEach((trait, states) -> allowed.put(trait, List.copyOf(states.values())));
        Map<String, String> first = new LinkedHashMap<>();
        allowed.forEach((trait, states) -> first.put(trait, states.get(0)));
        List<Phenotype> looks = new ArrayList<>();
        allowed.forEach((trait, states) -> states.forEach(state -> {
            Map<String, String> look = new LinkedHashMap<>(first);
            look.put(trait, state);
            looks.add(Phenotype.from(look));
        }));
        return looks;
    }
}
