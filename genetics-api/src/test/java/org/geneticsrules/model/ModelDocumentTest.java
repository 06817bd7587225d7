package org.geneticsrules.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.geneticsrules.document.Reference;
import org.geneticsrules.evidence.Evidence;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Recombination;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.testing.RandomModels;
import org.geneticsrules.trait.Clock;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Taxon;
import org.junit.jupiter.api.Test;

/** The document of a model, part by part, and what cases give in words. The models are invented. */
class ModelDocumentTest {

    private static final Condition ALBINO = Condition.where("C", "albino");

    private static void holds(String part, Consumer<ModelBuilder> change) {
        ModelBuilder builder = Refusals.valid();
        change.accept(builder);
        Model model = builder.build();
        String document = ModelDocument.of(model).toString();
        assertTrue(document.contains(part), document);
        assertEquals(document, ModelDocument.of(anew(model)).toString());
    }

    /** A model of the statements of another. */
    private static Model anew(Model model) {
        ModelBuilder builder =
                Model.builder(model.id(), model.version(), model.catalogue()).derivedFrom(model.derivedFrom());
        model.title().ifPresent(builder::title);
        model.taxon().ifPresent(builder::taxon);
        model.licence().ifPresent(builder::licence);
        model.evidence().values().forEach(builder::evidence);
        model.loci().values().forEach(builder::locus);
        model.groups().values().forEach(builder::group);
        model.viability().values().forEach(builder::viability);
        model.rules().values().forEach(builder::trait);
        model.masks().values().forEach(builder::mask);
        model.populations().values().forEach(builder::population);
        model.notModelled().forEach(builder::notModelled);
        return builder.build();
    }

    @Test
    void statements_of_a_model_make_the_same_model_anew() {
        for (long seed = 0; seed < 100; seed++) {
            Model model = RandomModels.whole(seed);
            assertEquals(model.reference(), anew(model).reference());
        }
    }

    private static String plain() {
        return ModelDocument.of(Refusals.valid().build()).toString();
    }

    @Test
    void what_is_absent_is_not_written() {
        String document = plain();
        for (String key : List.of(
                "derivedFrom", "groups", "viability", "masks", "populations", "notModelled", "evidence", "mutation")) {
            assertFalse(document.contains("\"" + key + "\""), key);
        }
        assertTrue(document.contains("\"formatVersion\":0") && document.contains("\"kind\":\"model\""), document);
    }

    @Test
    void groups_write_how_loci_are_separated() {
        holds(
                "\"groups\":{\"one\":{\"loci\":[\"B\",\"C\"],\"recombination\":[\"1/10\"]}}",
                model -> model.group(LinkageGroup.autosomal("one", List.of("B", "C"), List.of(Probability.of(1, 10)))));
        holds(
                "\"recombination\":{\"female\":[\"1/10\"],\"male\":[\"0\"]}",
                model -> model.group(LinkageGroup.of(
                        "one",
                        Transmission.AUTOSOMAL,
                        List.of("B", "C"),
                        new Recombination.Fractions(List.of(Probability.of(1, 10)), List.of(Probability.ZERO)))));
        holds(
                "\"crossovers\":{\"B-C\":\"1/4\",\"none\":\"3/4\"}",
                model -> model.group(LinkageGroup.of(
                        "one",
                        Transmission.AUTOSOMAL,
                        List.of("B", "C"),
                        new Recombination.Crossovers(
                                Map.of("none", Probability.of(3, 4), "B-C", Probability.of(1, 4))))));
        holds(
                "\"groups\":{\"B\":{\"loci\":[\"B\"],\"transmission\":\"X\"}}",
                model -> model.group(LinkageGroup.single(Transmission.X, "B")));
    }

    private static Viability loss(Optional<Sex> sex, Probability birth, Probability scored) {
        return new Viability("lost", "C", ImmutableSet.of("albino"), sex, birth, scored, Optional.empty());
    }

    @Test
    void losses_write_the_steps_that_they_decide() {
        holds(
                "\"viability\":{\"lost\":{\"birth\":\"0\",\"expressions\":[\"albino\"],\"locus\":\"C\"}}",
                model -> model.viability(loss(Optional.empty(), Probability.ZERO, Probability.ONE)));
        holds(
                "\"viability\":{\"lost\":{\"expressions\":[\"albino\"],\"locus\":\"C\",\"scored\":\"1/2\",\"sex\":\"male\"}}",
                model -> model.viability(loss(Optional.of(Sex.MALE), Probability.ONE, Probability.of(1, 2))));
        holds(
                "{\"birth\":\"1/3\",\"expressions\":[\"albino\"],\"locus\":\"C\",\"scored\":\"1/2\"}",
                model -> model.viability(loss(Optional.empty(), Probability.of(1, 3), Probability.of(1, 2))));
    }

    @Test
    void populations_and_what_a_model_was_made_from_are_written() {
        holds(
                "\"populations\":{\"town\":{\"frequencies\":{\"B\":{\"B\":\"3/4\",\"b\":\"1/4\"}},\"title\":\"A town\"}}",
                model -> model.population(
                        "town",
                        town -> town.title("A town")
                                .frequency("B", "B", Probability.of(3, 4))
                                .frequency("B", "b", Probability.of(1, 4))));
        holds(
                "\"derivedFrom\":[{\"id\":\"base\",\"version\":\"1\"},{\"id\":\"patch\",\"version\":\"2\"}]",
                model -> model.derivedFrom(List.of(Reference.of("base", "1"), Reference.of("patch", "2"))));
        holds("\"notModelled\":{\"eye\":\"Not known.\"}", model -> model.notModelled("eye", "Not known."));
    }

    private static Consumer<ModelBuilder> eye(CaseState gives) {
        return model ->
                model.trait("eye", rule -> rule.when("dim", ALBINO, gives).otherwise("dark"));
    }

    private static final CaseState CHANCE =
            new CaseState.Chance(Distribution.ofWeights(ImmutableMap.of("pink", 3, "dark", 1)));

    private static final CaseState CHAIN = new CaseState.Progression(
            Clock.MOULT,
            Distribution.certain("pink"),
            ImmutableMap.of("pink", Distribution.ofWeights(ImmutableMap.of("pink", 1, "dark", 4))),
            false);

    private static CaseState.Threshold sums(Distribution<Integer> residual) {
        return new CaseState.Threshold(
                ImmutableMap.of("B", ImmutableMap.of("dark", 2, "brown", -1), "C", Map.of("full", 1)),
                residual,
                "dark",
                ImmutableMap.of("pink", 3));
    }

    @Test
    void cases_write_what_they_give() {
        holds(
                "\"eye\":{\"cases\":{\"dim\":{\"state\":\"pink\",\"when\":{\"C\":[\"albino\"]}}},\"otherwise\":\"dark\"}",
                eye(new CaseState.Certain("pink")));
        holds("{\"chance\":{\"dark\":\"1/4\",\"pink\":\"3/4\"},\"when\":{\"C\":[\"albino\"]}}", eye(CHANCE));
        holds(
                "\"otherwise\":{\"chance\":{\"dark\":\"1/4\",\"pink\":\"3/4\"}}",
                model -> model.trait("eye", rule -> rule.otherwise(CHANCE, Optional.empty())));
        holds(
                "\"progression\":{\"clock\":\"moult\",\"start\":{\"pink\":\"1\"},\"step\":{\"pink\":{\"dark\":\"4/5\",\"pink\":\"1/5\"}}}",
                eye(CHAIN));
        holds(
                "\"threshold\":{\"below\":\"dark\",\"cuts\":{\"pink\":3},\"doses\":{\"B\":{\"brown\":-1,\"dark\":2},\"C\":{\"full\":1}}}",
                eye(sums(Distribution.certain(0))));
        holds(
                "\"residual\":{\"-1\":\"1/4\",\"1\":\"3/4\"}",
                eye(sums(Distribution.ofWeights(ImmutableMap.of(-1, 1, 1, 3)))));
    }

    @Test
    void cases_say_in_words_what_they_give() {
        assertEquals("pink", new CaseState.Certain("pink").toString());
        assertEquals("by chance pink (3/4) or dark (1/4)", CHANCE.toString());
        assertEquals(
                "by chance a (1/3), b (1/3) or c (1/3)",
                new CaseState.Chance(Distribution.ofWeights(ImmutableMap.of("a", 1, "b", 1, "c", 1))).toString());
        assertEquals("pink at moult 0, and with each moult pink becomes pink (1/5) or dark (4/5)", CHAIN.toString());
        assertEquals(
                "few (1/2) or half (1/2) at week 0, and with each week few becomes half; half becomes full, never"
                        + " going back",
                new CaseState.Progression(
                                Clock.WEEK,
                                Distribution.ofWeights(ImmutableMap.of("few", 1, "half", 1)),
                                ImmutableMap.of(
                                        "few", Distribution.certain("half"), "half", Distribution.certain("full")),
                                true)
                        .toString());
        assertEquals(
                "few at week 0",
                new CaseState.Progression(Clock.WEEK, Distribution.certain("few"), Map.of(), false).toString());
        assertEquals(
                "by the sum of doses dark below 3, pink from 3; doses: B dark 2, brown -1; C full 1",
                sums(Distribution.certain(0)).toString());
        assertEquals(
                "by the sum of doses dark below 3, pink from 3; doses: B dark 2, brown -1; C full 1; residual -1 (1/4)"
                        + " or 1 (3/4)",
                sums(Distribution.ofWeights(ImmutableMap.of(-1, 1, 1, 3))).toString());
        assertEquals(
                "by the sum of doses dark",
                new CaseState.Threshold(Map.of(), Distribution.certain(0), "dark", Map.of()).toString());
    }

    private static List<String> found(Consumer<ModelBuilder> spoil) {
        return Refusals.of(spoil).stream().map(Problem::toString).toList();
    }

    /** A statement of neither step says that birth is certain, so that it contradicts one that says otherwise. */
    @Test
    void each_loss_is_decided_once() {
        Viability half = new Viability(
                "half",
                "C",
                ImmutableSet.of("albino"),
                Optional.of(Sex.MALE),
                Probability.of(1, 2),
                Probability.ONE,
                Optional.empty());
        Viability scored = new Viability(
                "seen",
                "C",
                ImmutableSet.of("albino"),
                Optional.empty(),
                Probability.ONE,
                Probability.of(1, 2),
                Optional.empty());
        Refusals.valid().viability(half).viability(scored).build();
        assertEquals(
                List.of("/viability/lost/birth: the chance that males showing albino at locus C are born is stated by"
                        + " \"half\" and by \"lost\"; expected one statement [viability-decided-twice]"),
                found(model ->
                        model.viability(half).viability(loss(Optional.empty(), Probability.ONE, Probability.ONE))));
        assertEquals(
                List.of("/viability/lost/scored: the chance that females showing albino at locus C are scored is stated"
                        + " by \"seen\" and by \"lost\"; expected one statement [viability-decided-twice]"),
                found(model -> model.viability(scored)
                        .viability(loss(Optional.of(Sex.FEMALE), Probability.ONE, Probability.ZERO))));
        assertEquals(
                List.of("/viability/none/expressions: viability \"none\" is about no expressions; expected at least one"
                        + " [no-expressions]"),
                found(model -> model.viability(new Viability(
                        "none",
                        "C",
                        ImmutableSet.of(),
                        Optional.empty(),
                        Probability.ZERO,
                        Probability.ONE,
                        Optional.empty()))));
    }

    @Test
    void an_allele_may_mutate_in_all_gametes_but_not_in_more() {
        Consumer<LocusBuilder> three = locus -> locus.alleles("D", "d", "e")
                .dominant("D", "d")
                .dominant("d", "e")
                .shows("D", "x")
                .shows("d", "y")
                .shows("e", "z")
                .mutation("D", "d", Probability.of(1, 2));
        Refusals.valid()
                .locus("D", three.andThen(locus -> locus.mutation("D", "e", Probability.of(1, 2))))
                .build();
        assertEquals(
                List.of(
                        "/loci/D/mutation/D: the rates at which allele D of locus D mutates sum to 11/10; expected rates"
                                + " that sum to at most 1 [mutation-sum]"),
                found(model ->
                        model.locus("D", three.andThen(locus -> locus.mutation("D", "e", Probability.of(3, 5))))));
    }

    @Test
    void loci_write_their_alleles_and_how_often_these_mutate() {
        holds(
                "\"D\":{\"alleles\":[\"D\",{\"id\":\"d\",\"symbol\":\"d^x\",\"synonyms\":[\"dx\"],\"title\":\"dilute\"},\"e\"],"
                        + "\"dominance\":{\"shows\":{\"D\":\"x\",\"D/d\":\"x\",\"D/e\":\"x\",\"d\":\"y\",\"d/e\":\"y\",\"e\":\"y\"}},"
                        + "\"expressions\":[\"x\",\"y\"],"
                        + "\"mutation\":{\"D\":{\"d\":\"1/100\",\"e\":{\"evidence\":\"counted\",\"rate\":\"1/50\"}}},"
                        + "\"symbol\":\"Dil\",\"title\":\"Density\",\"wildType\":\"D\"}",
                model -> model.evidence(Evidence.of("counted", Grade.BREEDING_DATA, "Counted.", "A source"))
                        .locus(
                                "D",
                                locus -> locus.symbol("Dil")
                                        .title("Density")
                                        .alleles("D")
                                        .allele(new Allele("d", "d^x", Optional.of("dilute"), List.of("dx")))
                                        .alleles("e")
                                        .wildType("D")
                                        .shows("D", "x")
                                        .shows("D/d", "x")
                                        .shows("D/e", "x")
                                        .shows("d", "y")
                                        .shows("d/e", "y")
                                        .shows("e", "y")
                                        .mutation("D", "d", Probability.of(1, 100))
                                        .mutation("D", "e", Probability.of(1, 50), Optional.of("counted"))));
        holds(
                "\"absent\":\"has not\",\"alleles\":[\"H\"],\"dominance\":{\"shows\":{\"H\":\"has\"}},\"expressions\":[\"has\",\"has not\"]",
                model -> model.locus(
                                "H",
                                locus -> locus.alleles("H").shows("H", "has").absent("has not"))
                        .group(LinkageGroup.single(Transmission.Y, "H")));
    }

    /** One in five stays pink with each moult: 1, 1/5, 1/25. */
    @Test
    void a_progression_is_followed_step_by_step() {
        CaseState.Progression chain = (CaseState.Progression) CHAIN;
        assertEquals(Distribution.certain("pink"), chain.at(0));
        assertEquals(Probability.of(1, 5), chain.at(1).probability("pink"));
        assertEquals(Probability.of(1, 25), chain.at(2).probability("pink"));
        assertEquals(Set.of("pink", "dark"), chain.states());
        CaseState.Threshold threshold = sums(Distribution.certain(0));
        assertEquals("dark", threshold.state(2));
        assertEquals("pink", threshold.state(3));
        assertEquals(Set.of("pink", "dark"), threshold.states());
    }

    @Test
    void a_draft_tells_its_conflicts_and_is_no_model_until_there_are_none() {
        Draft sound = Refusals.valid().draft();
        assertEquals(List.of(), sound.conflicts());
        assertEquals(sound.asStated(), sound.model());
        Draft torn = Refusals.valid()
                .trait("eye", rule -> rule.when(ALBINO, "pink").when(Condition.where("B", "dark"), "dark"))
                .draft();
        assertEquals(
                List.of("overlapping-cases"),
                torn.conflicts().stream().map(Problem::code).toList());
        assertThrows(ProblemsException.class, torn::model);
    }

    @Test
    void what_it_means_to_name_no_locus_is_said() {
        assertEquals("nothing is known about loci not named", OmittedLoci.UNKNOWN.meaning());
        assertEquals("loci not named are homozygous wild type", OmittedLoci.WILD_TYPE.meaning());
        assertEquals("d^x", new Allele("d", "d^x", Optional.empty(), List.of()).toString());
    }

    @Test
    void masks_and_the_organism_are_written() {
        holds(
                "\"masks\":{\"over\":{\"covers\":{\"eye\":\"pink\",\"hue\":{\"black\":\"white\"}},\"over\":[\"under\"],"
                        + "\"when\":{\"C\":[\"albino\"]}},\"under\":{\"covers\":{},\"when\":{\"B\":[\"brown\"]}}}",
                model -> model.mask(Mask.of("over", ALBINO)
                                .covering("eye", "pink")
                                .covering("hue", Mask.Cover.changing(Map.of("black", "white")))
                                .over("under"))
                        .mask(Mask.of("under", Condition.where("B", "brown"))));
        holds(
                "\"taxon\":{\"name\":\"Mus musculus\",\"ncbi\":10090}",
                model -> model.taxon(Taxon.of("Mus musculus", 10090)));
    }
}
