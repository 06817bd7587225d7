package org.geneticsrules.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class GradeTest {

    private static final List<String> STRONGEST_FIRST =
            List.of("proven", "molecular", "one study", "breeding data", "practice", "conjecture");

    @Test
    void the_published_order_is_from_proven_to_conjecture() {
        List<String> words = new ArrayList<>();
        for (Grade grade : Grade.values()) {
            words.add(grade.word());
        }
        assertEquals(STRONGEST_FIRST, words);
    }

    @Test
    void what_rests_on_two_grades_rests_on_the_weaker() {
        for (Grade one : Grade.values()) {
            for (Grade other : Grade.values()) {
                boolean later = STRONGEST_FIRST.indexOf(one.word()) > STRONGEST_FIRST.indexOf(other.word());
                assertEquals(later, one.isWeakerThan(other));
                assertEquals(later ? one : other, one.weaker(other));
                assertEquals(one.weaker(other), other.weaker(one));
            }
        }
    }

    @Test
    void a_grade_is_found_by_its_exact_word() {
        for (Grade grade : Grade.values()) {
            assertEquals(Optional.of(grade), Grade.of(grade.toString()));
            assertFalse(grade.meaning().isBlank());
        }
        assertEquals(Optional.empty(), Grade.of("Proven"));
        assertEquals(Optional.empty(), Grade.of("anecdote"));
    }

    @Test
    void evidence_keeps_its_sources_in_order_and_cannot_be_changed() {
        List<String> sources = new ArrayList<>(List.of("first", "second"));
        Evidence evidence = new Evidence("e", Grade.ONE_STUDY, "Claim.", sources, List.of("Others disagree."));
        sources.clear();
        assertEquals(List.of("first", "second"), evidence.sources());
        assertEquals(List.of("Others disagree."), evidence.dissent());
        assertThrows(
                UnsupportedOperationException.class, () -> evidence.sources().clear());
        assertTrue(Evidence.of("e", Grade.PRACTICE, "Claim.").sources().isEmpty());
    }
}
