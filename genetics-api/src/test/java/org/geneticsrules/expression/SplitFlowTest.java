package org.geneticsrules.expression;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.google.common.collect.ImmutableMap;
import java.util.List;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.junit.jupiter.api.Test;

/** Parts of a diagram that test the same loci, but lead to their ends by different ways, are not taken for one another. */
class SplitFlowTest {

    /** Below two of four patterns the colour is dark where all loci are on, below the others where any is. */
    @Test
    void parts_of_the_same_tests_in_another_shape() {
        Catalogue catalogue = Catalogue.builder("shapes.traits", "1")
                .trait("pattern", "p0", "p1", "p2", "p3")
                .trait("colour", "dark", "pale")
                .build();
        ModelBuilder model = Model.builder("shapes", "1", catalogue);
        for (String name : List.of("L0", "L1", "C0", "C1", "C2")) {
            model.locus(
                    name,
                    locus -> locus.alleles(name, "x" + name)
                            .dominant(name, "x" + name)
                            .shows(name, "on")
                            .shows("x" + name, "off"));
        }
        Allowed on = Allowed.only("on");
        Allowed off = Allowed.only("off");
        Condition all = Condition.where("L0", "on").and("C0", on).and("C1", on).and("C2", on);
        Condition none =
                Condition.where("L0", "off").and("C0", off).and("C1", off).and("C2", off);
        model.trait("pattern", rule -> {
                    for (int i = 0; i < 4; i++) {
                        rule.when(
                                Condition.where("L0", i < 2 ? "on" : "off").and("L1", i % 2 == 0 ? on : off), "p" + i);
                    }
                })
                .trait(
                        "colour",
                        rule -> rule.when("all", all, new CaseState.Certain("dark"))
                                .when("none", none, new CaseState.Certain("pale"))
                                .when("some", Condition.where("L0", "on").and("C0", off), new CaseState.Certain("pale"))
                                .when(
                                        "some more",
                                        Condition.where("L0", "on")
                                                .and("C0", on)
                                                .and("C1", off),
                                        new CaseState.Certain("pale"))
                                .when(
                                        "most",
                                        Condition.where("L0", "on")
                                                .and("C0", on)
                                                .and("C1", on)
                                                .and("C2", off),
                                        new CaseState.Certain("pale"))
                                .otherwise("dark"));
        Diagram<Phenotype> diagram = CompiledModel.of(model.build()).diagram();
        LocusWeights[] weights = diagram.loci().stream()
                .map(name -> name.startsWith("L") ? LocusWeights.of(1, 1) : LocusWeights.of(1, 2))
                .toArray(LocusWeights[]::new);
        // each colour locus is on in a third: all in 1 of 27, none in 8
        ImmutableMap.Builder<String, Integer> expected = ImmutableMap.builder();
        for (int i = 0; i < 4; i++) {
            int dark = i < 2 ? 1 : 19;
            expected.put("pattern: p" + i + ", colour: dark", dark);
            expected.put("pattern: p" + i + ", colour: pale", 27 - dark);
        }
        assertEquals(
                Distribution.ofWeights(expected.buildOrThrow()),
                diagram.distribution(weights).map(Phenotype::toString));
    }
}
