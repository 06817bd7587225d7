package org.geneticsrules.examples.textbook;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import org.geneticsrules.cross.UncertainCross;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sighting;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What clear young tell about their parents, and how likely a litter is to show what a parent may carry. */
class CarriersTest {

    static List<Map<String, String>> carriers() {
        return Textbook.rows("carriers");
    }

    static List<Map<String, String>> litters() {
        return Textbook.rows("litters");
    }

    private static UncertainCross cross(Map<String, String> row) {
        Model model = Textbook.model(row.get("model"));
        return UncertainCross.of(
                CompiledModel.of(model),
                Textbook.parent(model, row.get("sire"), row.get("population")),
                Textbook.parent(model, row.get("dam"), row.get("population")));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("carriers")
    void clear_young_lower_the_chance_of_carrying(Map<String, String> row) {
        List<Sighting> seen =
                Collections.nCopies(Integer.parseInt(row.get("times")), Sighting.of(Textbook.look(row.get("seen"))));
        Phenotype next = Textbook.look(row.get("next"));
        UncertainCross cross = cross(row);
        assertEquals(
                Probability.parse(row.get("carrier")),
                cross.chance(next, seen).orElseThrow().probability(Probability.parse(row.get("chance if carrier"))));
        assertEquals(
                Probability.parse(row.get("chance of the next")),
                cross.next(next, seen).orElseThrow());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("litters")
    void at_least_one_of_a_litter(Map<String, String> row) {
        Probability none = cross(row)
                .count(Textbook.look(row.get("sign")), Integer.parseInt(row.get("kits")), List.of())
                .orElseThrow()
                .probability(0);
        assertEquals(Probability.parse(row.get("at least one")), none.complement());
        assertEquals(
                row.get("printed"), Textbook.rounded(none.complement().toDouble(), row.get("printed")), row::toString);
    }
}
