package org.geneticsrules.ferret;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.evidence.Evidence;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.expression.View;
import org.geneticsrules.json.Documents;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Statement;
import org.geneticsrules.patch.Patch;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The rival hypotheses that are shipped as patches of the default model. */
class HypothesesTest {

    private static final View PALE = View.of(List.of("dilution", "eye colour")).at(LifeStage.atMoult(0));

    static Stream<Patch> patches() {
        return Ferret.REGISTRY.patches(Ferret.common()).stream();
    }

    @ParameterizedTest
    @MethodSource("patches")
    void a_hypothesis_is_graded_as_one_and_says_where_it_comes_from(Patch patch) {
        Model model = Documents.reader().apply(Ferret.common(), List.of(patch));
        assertTrue(patch.title().isPresent());
        assertEquals(
                patch.evidence().size() + Ferret.common().evidence().size(),
                model.evidence().size());
        for (String name : patch.evidence().keySet()) {
            Evidence evidence = model.evidence().get(name);
            assertEquals(Grade.CONJECTURE, evidence.grade());
            assertTrue(evidence.sources().get(0).length() > 20, evidence::toString);
        }
        for (Statement statement : model.statements().values()) {
            assertTrue(statement.evidence().isPresent(), statement::toString);
        }
        assertEquals(Ferret.cautions(), Ferret.REGISTRY.cautions(model).get(0));
        assertEquals(Ferret.catalogue().reference(), model.catalogue().reference());
    }

    @Test
    void a_pale_kit_of_pale_and_albino_proves_nothing_by_itself() {
        Model series = Ferret.common();
        Model apart = Ferret.hypothesis("sandy-apart");
        Distribution<Phenotype> first = kits(series, "cs/cs M/M", "c/c M/M");
        Distribution<Phenotype> second = kits(series, "cs/c M/M", "cs/c M/M");
        // The albino hides the other recessive in double dose: both generations are alike under both models.
        assertEquals(first, kits(apart, "C/C M/M s/s", "c/c M/M s/s"));
        assertEquals(second, kits(apart, "C/c M/M s/s", "C/c M/M s/s"));
        // An albino that does not hide it tells the two apart in the first generation.
        assertNotEquals(first, kits(apart, "C/C M/M s/s", "c/c M/M S/S"));
    }

    @Test
    void hypotheses_about_different_statements_are_held_together() {
        Model model = Documents.reader()
                .apply(
                        Ferret.common(),
                        List.of(patch("silver-recessive"), patch("low-white-threshold"), patch("long-coat-by-dose")));
        Genotype carrier = Genotype.parse(model, "C/C M/m W/w W2/w2 L/l");
        View view = View.of(List.of("white guard hairs", "coat length")).at(LifeStage.atMoult(0));
        assertEquals(
                3 * 3,
                Cross.of(model, carrier, carrier).phenotypes(view).outcomes().size());
    }

    @Test
    void hypotheses_about_one_statement_are_rivals() {
        ProblemsException refusal = assertThrows(
                ProblemsException.class,
                () -> Documents.reader()
                        .apply(Ferret.common(), List.of(patch("silver-recessive"), patch("silver-dominant"))));
        assertEquals("patches-overlap", refusal.problems().get(0).code());
    }

    private static Patch patch(String name) {
        return Ferret.REGISTRY.patch("geneticsrules.ferret." + name);
    }

    private static Distribution<Phenotype> kits(Model model, String sire, String dam) {
        return Cross.of(model, Genotype.parse(model, sire), Genotype.parse(model, dam))
                .phenotypes(PALE);
    }
}
