package org.geneticsrules.expression;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;

/** A diagram that explodes is refused soon, with the statements that drive it. The models are invented. */
class ExplosionTest {

    /** Milliseconds. The goal is 2,000 on a machine that does nothing else; a crowded one is given more. */
    private static final long SOON = 20_000;

    private static ModelBuilder loci(int count, Catalogue catalogue) {
        ModelBuilder builder = Model.builder("invented.explosion", "1", catalogue);
        for (int i = 0; i < count; i++) {
            String letter = "A" + i;
            builder.locus(
                    letter,
                    locus -> locus.alleles(letter, "a" + letter.substring(1))
                            .dominant(letter, "a" + letter.substring(1))
                            .shows(letter, "on")
                            .shows("a" + letter.substring(1), "off"));
        }
        return builder;
    }

    private static TooLargeException refused(CompiledModel compiled, TestReporter report, String name) {
        long start = System.nanoTime();
        TooLargeException refusal = assertThrows(TooLargeException.class, compiled::diagram);
        long took = (System.nanoTime() - start) / 1_000_000;
        report.publishEntry(name, took + " ms");
        assertTrue(took < SOON, () -> name + " took " + took + " ms");
        return refusal;
    }

    @Test
    void too_many_looks_are_refused(TestReporter report) {
        Catalogue.Builder catalogue = Catalogue.builder("invented.many", "1");
        for (int i = 0; i < 40; i++) {
            catalogue.trait("trait " + name(i), "present", "absent");
        }
        ModelBuilder builder = loci(40, catalogue.build());
        for (int i = 0; i < 40; i++) {
            Condition on = Condition.where("A" + i, "on");
            builder.trait("trait " + name(i), trait -> trait.when(on, "present").otherwise("absent"));
        }
        TooLargeException refusal = refused(CompiledModel.of(builder.build()), report, "looks");
        assertTrue(refusal.getMessage().contains("/traits/trait "), refusal.getMessage());
    }

    /** Each mask reads a locus of the first half and one of the second: every combination of the first half must be remembered. */
    @Test
    void rules_that_tie_many_loci_are_refused_with_the_mask_that_ties_them(TestReporter report) {
        int pairs = 21;
        Catalogue.Builder catalogue = Catalogue.builder("invented.ties", "1").trait("coat", "plain", "patterned");
        ModelBuilder builder = loci(2 * pairs, catalogue.build());
        builder.trait("coat", trait -> trait.otherwise("plain"));
        for (int i = 0; i < pairs; i++) {
            builder.mask(Mask.of(
                            "tie " + name(i), Condition.where("A" + i, "on").and("A" + (i + pairs), "off"))
                    .covering("coat", "patterned"));
        }
        TooLargeException refusal = refused(CompiledModel.of(builder.build()), report, "ties");
        assertTrue(refusal.getMessage().contains("/masks/tie "), refusal.getMessage());
        assertEquals(DiagramBuilder.MOST_NODES, refusal.limit());
    }

    private static String name(int i) {
        return String.valueOf((char) ('a' + i / 26)) + (char) ('a' + i % 26);
    }
}
