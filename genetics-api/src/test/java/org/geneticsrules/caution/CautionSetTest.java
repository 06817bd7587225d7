package org.geneticsrules.caution;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.document.Reference;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.junit.jupiter.api.Test;

class CautionSetTest {

    private static final Trigger PALE_PARENT = new Trigger.OnLook(
            Condition.where("depth", "pale").and("eye", Allowed.allBut("pink")), Set.of(Role.PARENT));

    private final CautionSet set = set(
            new Trigger.Always(),
            new Trigger.OnQuestion(Set.of(QuestionKind.MATING.word())),
            PALE_PARENT,
            new Trigger.OnRelation(Set.of(Relation.SIBLINGS)));

    @Test
    void a_question_raises_what_is_due_with_it_and_what_is_always_due() {
        assertEquals(List.of("c0"), raised(Situation.of("coat")));
        assertEquals(List.of("c0", "c1"), raised(Situation.of("mating")));
    }

    @Test
    void a_look_must_be_shown_by_one_animal_of_the_role() {
        Situation coat = Situation.of("coat");
        assertEquals(List.of("c0", "c2"), raised(coat.with(Role.PARENT, looks("depth: pale, eye: dark"))));
        assertEquals(List.of("c0"), raised(coat.with(Role.PARENT, looks("depth: pale, eye: pink"))));
        assertEquals(List.of("c0"), raised(coat.with(Role.OFFSPRING, looks("depth: pale, eye: dark"))));
        assertEquals(
                List.of("c0"),
                raised(coat.with(Role.PARENT, looks("depth: pale, eye: pink", "depth: full, eye: dark"))));
    }

    @Test
    void a_look_of_which_nothing_is_said_is_not_shown() {
        assertEquals(List.of("c0"), raised(Situation.of("coat").with(Role.PARENT, looks("depth: pale"))));
    }

    @Test
    void a_relation_raises_what_is_due_with_it() {
        assertEquals(List.of("c0", "c3"), raised(Situation.of("plan").with(Relation.SIBLINGS)));
        assertEquals(List.of("c0"), raised(Situation.of("plan").with(Relation.UNKNOWN)));
    }

    @Test
    void triggers_are_compared_with_the_catalogue() {
        Catalogue good = Catalogue.builder("t", "1")
                .trait("depth", "full", "pale")
                .trait("eye", "dark", "pink")
                .build();
        assertSame(set, set.check(good));
        Catalogue other = Catalogue.builder("t", "1")
                .trait("depth", "full")
                .trait("eyes", "dark", "pink")
                .build();
        ProblemsException thrown = assertThrows(ProblemsException.class, () -> set.check(other));
        assertEquals(
                List.of("unknown-state", "unknown-trait"),
                thrown.problems().stream().map(problem -> problem.code()).toList());
        Catalogue newer = Catalogue.builder("t", "2").build();
        assertEquals(
                "other-catalogue",
                assertThrows(ProblemsException.class, () -> set.check(newer))
                        .problems()
                        .get(0)
                        .code());
    }

    private List<String> raised(Situation situation) {
        return set.raisedBy(situation).stream().map(Caution::id).toList();
    }

    private static List<Phenotype> looks(String... texts) {
        return Arrays.stream(texts).map(Phenotype::parse).toList();
    }

    private static CautionSet set(Trigger... triggers) {
        Map<String, Caution> cautions = new LinkedHashMap<>();
        for (Trigger trigger : triggers) {
            String id = "c" + cautions.size();
            cautions.put(id, new Caution(id, trigger, "A line.", List.of(), List.of(), "2026-11", false));
        }
        return new CautionSet("s", "1", Optional.empty(), Optional.of(Reference.of("t", "1")), cautions);
    }
}
