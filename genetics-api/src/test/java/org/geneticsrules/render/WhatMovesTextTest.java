package org.geneticsrules.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.hypothesis.Comparison;
import org.geneticsrules.hypothesis.Sketch;
import org.geneticsrules.patch.Patch;
import org.junit.jupiter.api.Test;

class WhatMovesTextTest {

    @Test
    void the_silver_patch_is_told_with_the_verdict_first_and_both_models_side_by_side() {
        String text = WhatMovesText.of(
                Sketch.comparison(Sketch.recessive()).showing(1).whatMoves());
        assertEquals("""
                The smallest genotype that moves is M/m, in white hairs, first at moult 0; the smallest mating that
                moves is the reference x m/m, in white hairs, first at moult 0.

                What is stated otherwise
                ------------------------
                - /loci/M/dominance is replaced by patch example.silver-recessive
                    before: at locus M, M shows plain; at locus M, M/m shows one dose; at locus M, m shows two doses
                    after:  at locus M, M is dominant over m; at locus M, M shows plain; at locus M, m shows two
                            doses

                Genotypes that move
                -------------------
                The smallest, at moult 0:

                M/m
                  look                  before   after
                  ----------------  ----------  ------
                  white hairs none       never  always
                  white hairs few   3/4 (75 %)   never
                  white hairs half  1/4 (25 %)   never
                  It rests on: /loci/M/dominance
                """, text.substring(0, text.indexOf("\nMatings that move")));
        assertTrue(text.contains("sire the reference, dam m/m\n"), text);
        assertTrue(text.contains("- Unless said otherwise animals carry only: C C, B B, M M, W w.\n"), text);
    }

    @Test
    void that_nothing_moves_is_said_to_be_proved() {
        String text = WhatMovesText.of(
                Comparison.of(Sketch.BASE, Sketch.BASE).inTraits(List.of("eye")).whatMoves());
        assertTrue(text.startsWith("Nothing moves: "), text);
        assertTrue(text.contains("This is proved, not sampled."), text);
        assertTrue(text.contains("Genotypes that move\n-------------------\nNone.\n"), text);
    }

    @Test
    void who_is_lost_is_told_even_if_the_looks_of_the_others_are_as_before() {
        Patch lethal = Sketch.patch(
                "example.lethal",
                Map.of(
                        "/viability/two doses",
                        new ObjectBuilder()
                                .with("locus", "M")
                                .with("expressions", Node.texts(List.of("two doses")))
                                .with("birth", "0")
                                .build()),
                List.of(),
                Map.of());
        String text = WhatMovesText.of(
                Sketch.comparison(lethal).inTraits(List.of("eye")).whatMoves());
        assertTrue(text.contains("lost before they are counted: before 0"), text);
        assertTrue(text.contains("none live"), text);
    }
}
