package org.geneticsrules.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Recombination;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelDocument;
import org.geneticsrules.model.Regions;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Clock;
import org.geneticsrules.trait.Condition;
import org.junit.jupiter.api.Test;

/** An invented model with linkage, chance, progression and masks, read part by part. */
class FurModelTest {

    private static final Catalogue TRAITS =
            Documents.reader().readCatalogue(Source.of("traits", Samples.resource("fur-traits.json")));
    private static final Model FUR = read(Samples.resource("fur-model.json"));

    private static Model read(String text) {
        return Documents.reader().readModel(Source.of("fur", text), List.of(TRAITS));
    }

    private static CaseState gives(String trait, String id) {
        TraitRule rule = FUR.rules().get(trait);
        return rule.cases().stream()
                .filter(one -> one.id().equals(id))
                .map(Case::gives)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void a_linkage_group_is_read_with_its_fraction() {
        LinkageGroup group = FUR.groupOf("W").orElseThrow();
        assertEquals(Transmission.AUTOSOMAL, group.transmission());
        assertEquals(List.of("B", "W"), group.loci());
        assertEquals(Recombination.Fractions.of(List.of(Probability.of(1, 10))), group.recombination());
        assertEquals(Optional.empty(), FUR.groupOf("C"));
    }

    @Test
    void a_chance_is_read_exactly() {
        CaseState.Chance spread = assertInstanceOf(CaseState.Chance.class, gives("spread", "marked"));
        assertEquals(
                Map.of("none", Probability.of(1, 10), "low", Probability.of(3, 5), "high", Probability.of(3, 10)),
                spread.chances().asMap());
        assertEquals("by chance none (1/10), low (3/5) or high (3/10)", spread.toString());
    }

    @Test
    void a_progression_is_read_with_its_steps() {
        CaseState.Progression hairs = assertInstanceOf(CaseState.Progression.class, gives("white hairs", "one"));
        assertEquals(Clock.MOULT, hairs.clock());
        assertEquals(false, hairs.monotone());
        // 3/4 * 1/2 * 1/3 + 1/4 * 2/3 * 1/3 + 1/4 * 1/3 (calculated by hand from the document)
        assertEquals(
                Probability.of(1, 8).plus(Probability.of(1, 18)).plus(Probability.of(1, 12)),
                hairs.at(2).probability("all"));
        assertEquals(
                "few (3/4) or half (1/4) at moult 0, and with each moult few becomes few (1/2) or half (1/2); half"
                        + " becomes half (2/3) or all (1/3)",
                hairs.toString());
    }

    @Test
    void regions_follow_the_draws() {
        Regions regions = Regions.of(FUR);
        assertEquals(
                Set.of("/traits/white hairs/cases/one", "/traits/spread/cases/marked"),
                regions.draws().keySet());
        assertEquals(
                List.of(Condition.where("W", "marked").and("/traits/spread/cases/marked", "low", "high")),
                regions.own("throat", Allowed.only("bib")).boxes());
        assertEquals(true, regions.notModelled("white hairs").isEmpty());
        assertEquals(
                "genotype M/m at moult 1, where /traits/white hairs/cases/one gives all",
                regions.witness(regions.own("white hairs", Allowed.only("all"))
                                .and(regions.space().where("M", Allowed.only("one dose"))))
                        .orElseThrow()
                        .toString());
    }

    @Test
    void without_an_order_the_two_white_masks_conflict_at_an_age() {
        String disagreeing = Samples.resource("fur-model.json")
                .replace("\"over\": [\"whitened\"]", "\"over\": []")
                .replace("\"head\": \"none\"}}", "\"head\": \"stripe\"}}")
                .replace("[\"all\"]}, \"covers\"", "[\"all\"], \"M\": [\"one dose\"]}, \"covers\"");
        ProblemsException refused = assertThrows(ProblemsException.class, () -> read(disagreeing));
        assertEquals(
                "/masks/whitened/covers/head: masks \"albino\" and \"whitened\" show head differently for genotype c/c M/m"
                        + " at moult 1, where /traits/white hairs/cases/one gives all: \"none\" and \"stripe\"; expected one"
                        + " of them stated \"over\" the other [mask-conflict]",
                refused.problems().get(0).toString().replaceFirst("^[0-9:]+ ", ""));
        assertEquals(1, refused.problems().size());
    }

    @Test
    void it_is_written_and_read_back() {
        Model again = read(Documents.write(FUR));
        assertEquals(ModelDocument.of(FUR), ModelDocument.of(again));
        assertEquals(FUR, again);
    }
}
