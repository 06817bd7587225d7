package org.geneticsrules.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.function.Consumer;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;

/** A small valid model to spoil in one place, and what its builder then says. */
final class Refusals {

    static final Catalogue CATALOGUE = Catalogue.builder("test.traits", "1.0.0")
            .trait("hue", "black", "brown", "white")
            .trait("eye", "dark", "pink")
            .trait("throat", "plain", "bib")
            .build();

    private Refusals() {}

    /** Loci B and C with complete dominance and the trait hue. */
    static ModelBuilder valid() {
        return Model.builder("test.model", "1.0.0", CATALOGUE)
                .locus(
                        "B",
                        locus -> locus.alleles("B", "b")
                                .expressions("dark", "brown")
                                .dominant("B", "b")
                                .shows("B", "dark")
                                .shows("b", "brown"))
                .locus(
                        "C",
                        locus -> locus.alleles("C", "c")
                                .expressions("full", "albino")
                                .dominant("C", "c")
                                .shows("C", "full")
                                .shows("c", "albino"))
                .trait(
                        "hue",
                        rule -> rule.when(Condition.where("B", "dark"), "black").otherwise("brown"));
    }

    static List<Problem> of(ModelBuilder spoilt) {
        return assertThrows(ProblemsException.class, spoilt::build).problems();
    }

    static List<Problem> of(Consumer<ModelBuilder> spoil) {
        ModelBuilder builder = valid();
        spoil.accept(builder);
        return of(builder);
    }

    /** The only problem that the spoilt model has. */
    static Problem only(Stage stage, Consumer<ModelBuilder> spoil) {
        List<Problem> problems = of(spoil);
        assertEquals(1, problems.size(), problems.toString());
        assertEquals(stage, problems.get(0).stage());
        return problems.get(0);
    }

    static void shape(String text, Consumer<ModelBuilder> spoil) {
        assertEquals(text, only(Stage.SHAPE, spoil).toString());
    }

    static void references(String text, Consumer<ModelBuilder> spoil) {
        assertEquals(text, only(Stage.REFERENCES, spoil).toString());
    }

    static void meaning(String text, Consumer<ModelBuilder> spoil) {
        assertEquals(text, only(Stage.MEANING, spoil).toString());
    }
}
