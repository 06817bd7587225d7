package org.geneticsrules.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.Set;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

class ViabilityTest {

    @Test
    void it_concerns_its_expressions_in_its_sex() {
        Viability both = Viability.lethal("lost", "L", "double dose");
        assertTrue(both.concerns("L", "double dose", Sex.FEMALE));
        assertTrue(both.concerns("L", "double dose", Sex.MALE));
        assertFalse(both.concerns("L", "one dose", Sex.MALE));
        assertFalse(both.concerns("M", "double dose", Sex.MALE));
        Viability sons = new Viability(
                "weak sons",
                "L",
                Set.of("one dose"),
                Optional.of(Sex.MALE),
                Probability.ONE,
                Probability.of(1, 2),
                Optional.empty());
        assertTrue(sons.concerns("L", "one dose", Sex.MALE));
        assertFalse(sons.concerns("L", "one dose", Sex.FEMALE));
        assertEquals(Optional.of(Sex.MALE), sons.sex());
    }
}
