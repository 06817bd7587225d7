package org.geneticsrules.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.geneticsrules.document.Canonical;
import org.geneticsrules.document.Reference;
import org.geneticsrules.evidence.Evidence;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Taxon;
import org.junit.jupiter.api.Test;

class ModelTest {

    private static final Condition ALBINO = Condition.where("C", "albino");

    private static ModelBuilder builder() {
        return Model.builder("test.model", "1.0.0", Refusals.CATALOGUE)
                .title("A test")
                .taxon(Taxon.of("Mus musculus", 10090))
                .licence("Apache-2.0")
                .evidence(Evidence.of("bred", Grade.BREEDING_DATA, "Bred.", "A source"))
                .evidence(Evidence.of("seen", Grade.ONE_STUDY, "Seen.", "Another source"))
                .locus(
                        "C",
                        locus -> locus.title("Colour")
                                .alleles("C", "k")
                                .allele(new Allele("c", "c", Optional.of("albino"), List.of("c^a")))
                                .wildType("C")
                                .order(new Dominance.Order("C", "c", Optional.of("seen")))
                                .dominant("C", "k")
                                .shows("C", "full")
                                .shows("k", "pale")
                                .shows("k/c", "paler")
                                .shows("c", "albino", Optional.of("seen"))
                                .evidence("bred"))
                .trait(
                        "eye",
                        rule -> rule.when(new Case(
                                        "red eye", Condition.where("C", "albino"), "pink", Optional.of("seen")))
                                .otherwise("dark")
                                .evidence("bred"))
                .trait("depth", rule -> rule.inner("deep", "shallow").otherwise("deep"))
                .mask(new Mask("albino", Condition.where("C", "albino"), Map.of(), Set.of(), Optional.of("bred"))
                        .covering("throat", "plain")
                        .covering("hue", Mask.Cover.changing(Map.of("black", "white"))))
                .population(
                        "town",
                        town -> town.title("Animals of a town")
                                .frequency("C", "C", Probability.of(1, 2))
                                .frequency("C", "k", Probability.of(1, 2))
                                .frequency("C", "c", Probability.ZERO)
                                .evidence("seen"))
                .notModelled("throat", "Nobody has looked.");
    }

    private final Model model = builder().build();

    @Test
    void what_was_stated_is_returned() {
        assertEquals("test.model 1.0.0", model.toString());
        assertEquals(Optional.of("A test"), model.title());
        assertEquals(Optional.of("Apache-2.0"), model.licence());
        assertEquals(Optional.of(Taxon.of("Mus musculus", 10090)), model.taxon());
        assertEquals(List.of("bred", "seen"), List.copyOf(model.evidence().keySet()));
        assertEquals(Map.of("throat", "Nobody has looked."), model.notModelled());
        assertEquals(List.of("eye", "depth"), List.copyOf(model.rules().keySet()));
        assertEquals(List.of("eye"), List.copyOf(model.visibleTraits()));
        assertEquals(List.of("deep", "shallow"), model.states("depth"));
        assertEquals(List.of("plain", "bib"), model.states("throat"));
        assertEquals(List.of(), model.states("no such trait"));
        assertEquals(Optional.of("C"), model.locus("C").wildType().map(Allele::id));
        assertEquals(Optional.of("Colour"), model.locus("C").title());
    }

    @Test
    void an_unknown_locus_is_refused_with_those_there_are() {
        IllegalArgumentException refused = assertThrows(IllegalArgumentException.class, () -> model.locus("D"));
        assertEquals("model test.model has no locus \"D\"; it has [C]", refused.getMessage());
    }

    @Test
    void a_population_gives_every_allele_its_share() {
        Distribution<String> shares =
                model.populations().get("town").frequencies().get("C");
        assertEquals(Distribution.ofWeights(Map.of("C", 1, "k", 1)), shares);
        assertEquals(Probability.ZERO, shares.probability("c"));
        assertEquals(
                Optional.of("Animals of a town"),
                model.populations().get("town").title());
    }

    @Test
    void every_statement_has_its_words_and_its_evidence() {
        List<String> listed = model.statements().values().stream()
                .map(statement -> statement + " (" + statement.grade() + ")")
                .toList();
        assertEquals(
                List.of(
                        "/loci/C/dominance/order/0: at locus C, C is dominant over c (one study)",
                        "/loci/C/dominance/order/1: at locus C, C is dominant over k (breeding data)",
                        "/loci/C/dominance/shows/C: at locus C, C shows full (breeding data)",
                        "/loci/C/dominance/shows/k: at locus C, k shows pale (breeding data)",
                        "/loci/C/dominance/shows/k~1c: at locus C, k/c shows paler (breeding data)",
                        "/loci/C/dominance/shows/c: at locus C, c shows albino (one study)",
                        "/traits/eye/cases/red eye: eye is pink where C: albino (one study)",
                        "/traits/eye/otherwise: eye is dark otherwise (breeding data)",
                        "/traits/depth/otherwise: depth is deep otherwise (conjecture)",
                        "/masks/albino: where C: albino, mask \"albino\" covers: throat shows plain, hue shows"
                                + " {black=white} (breeding data)",
                        "/populations/town: population \"town\": Animals of a town (one study)"),
                listed);
        model.statements().forEach((pointer, statement) -> assertEquals(pointer, statement.pointer()));
    }

    @Test
    void models_are_one_if_their_documents_are() {
        assertEquals(model, builder().build());
        assertEquals(model.hashCode(), builder().build().hashCode());
        assertNotEquals(model, builder().title("Another title").build());
        assertEquals(
                Optional.of(Canonical.sha256(ModelDocument.of(model))),
                model.reference().sha256());
    }

    @Test
    void a_model_does_not_change_with_its_builder() {
        ModelBuilder open = builder();
        Model built = open.build();
        open.mask(Mask.of("later", Condition.always()));
        assertEquals(List.of("albino"), List.copyOf(built.masks().keySet()));
        assertThrows(UnsupportedOperationException.class, () -> built.loci().clear());
        assertThrows(
                UnsupportedOperationException.class, () -> built.statements().clear());
        assertTrue(built.equals(model));
    }

    @Test
    void a_constant_trait_needs_no_case() {
        Model constant =
                Refusals.valid().trait("eye", rule -> rule.otherwise("dark")).build();
        assertEquals(List.of(), constant.rules().get("eye").cases());
        assertEquals(
                "/traits/eye/otherwise",
                constant.rules()
                        .get("eye")
                        .pointer(constant.rules().get("eye").otherwise().orElseThrow()));
    }

    @Test
    void a_cover_shows_its_state_or_changes_some() {
        assertEquals("white", Mask.Cover.with("white").shown("black"));
        Mask.Cover dull = Mask.Cover.changing(Map.of("black", "brown"));
        assertEquals("brown", dull.shown("black"));
        assertEquals("white", dull.shown("white"));
    }

    @Test
    void what_depends_on_the_sex_is_known() {
        assertFalse(Refusals.valid().build().distinguishesSex());
        Condition females = Condition.where("sex", "female");
        List<Consumer<ModelBuilder>> ways = List.of(
                builder -> builder.group(LinkageGroup.single(Transmission.X, "B")),
                builder -> builder.group(LinkageGroup.single(Transmission.Z, "B")),
                builder -> builder.locus(
                        "H",
                        locus -> locus.alleles("H")
                                .in(Sex.FEMALE, dominance -> dominance.shows("H", "polled"))
                                .in(Sex.MALE, dominance -> dominance.shows("H", "horned"))),
                builder -> builder.viability(new Viability(
                        "sons",
                        "C",
                        Set.of("albino"),
                        Optional.of(Sex.MALE),
                        Probability.of(1, 2),
                        Probability.ONE,
                        Optional.empty())),
                builder -> builder.mask(Mask.of("m", females).covering("throat", "bib")),
                builder ->
                        builder.trait("eye", rule -> rule.when(females, "dark").otherwise("pink")));
        for (Consumer<ModelBuilder> way : ways) {
            ModelBuilder builder = Refusals.valid();
            way.accept(builder);
            assertTrue(builder.build().distinguishesSex(), () -> "way " + ways.indexOf(way));
        }
        ModelBuilder alike = Refusals.valid()
                .viability(Viability.lethal("lost", "C", "albino"))
                .mask(Mask.of("m", ALBINO).covering("throat", "bib"))
                .group(LinkageGroup.single(Transmission.MATERNAL, "B"));
        assertFalse(alike.build().distinguishesSex());
    }

    @Test
    void losses_mutations_and_groups_are_statements_too() {
        Viability lost = Viability.lethal("lost", "C", "albino");
        Model made = Refusals.valid()
                .locus(
                        "D",
                        locus -> locus.alleles("D", "d")
                                .dominant("D", "d")
                                .shows("D", "dense")
                                .shows("d", "dilute")
                                .mutation("D", "d", Probability.of(1, 10_000)))
                .group(LinkageGroup.autosomal("one", List.of("B", "D"), List.of(Probability.of(1, 10))))
                .viability(lost)
                .derivedFrom(List.of(Reference.of("test.base", "1"), Reference.of("test.patch", "2")))
                .build();
        assertEquals(Map.of("lost", lost), made.viability());
        assertEquals(Optional.of("one"), made.groupOf("D").map(LinkageGroup::id));
        assertEquals(List.of(Reference.of("test.base", "1"), Reference.of("test.patch", "2")), made.derivedFrom());
        assertEquals(
                "at locus D, D mutates to d in 1/10000 of gametes",
                Objects.requireNonNull(made.statements().get("/loci/D/mutation/D/d"))
                        .text());
        assertEquals(
                "of animals that show albino at locus C, none are born",
                Objects.requireNonNull(made.statements().get("/viability/lost")).text());
        assertTrue(made.statements().containsKey("/groups/one"));
    }

    /** Birth first, then what becomes of those born. */
    @Test
    void a_loss_is_told_by_the_step_at_which_it_happens() {
        assertEquals(
                "of females that show white or pale at locus L, 1/2 are born, 3/4 are scored of those",
                loss(Optional.of(Sex.FEMALE), Probability.of(1, 2), Probability.of(3, 4)));
        assertEquals(
                "of animals that show white or pale at locus L, none are scored when born",
                loss(Optional.empty(), Probability.ONE, Probability.ZERO));
        assertEquals(
                "of males that show white or pale at locus L, all are born",
                loss(Optional.of(Sex.MALE), Probability.ONE, Probability.ONE));
    }

    private static String loss(Optional<Sex> sex, Probability birth, Probability scored) {
        Set<String> expressions = ImmutableSet.of("white", "pale");
        return new Viability("loss", "L", expressions, sex, birth, scored, Optional.empty()).words();
    }

    @Test
    void a_mask_is_over_those_below_the_ones_it_is_over() {
        Model layered = Refusals.valid()
                .mask(Mask.of("top", ALBINO).over("middle", "other"))
                .mask(Mask.of("middle", ALBINO).over("bottom"))
                .mask(Mask.of("other", ALBINO).over("bottom"))
                .mask(Mask.of("bottom", ALBINO))
                .build();
        assertTrue(layered.isOver("top", "bottom"));
        assertTrue(layered.isOver("other", "bottom"));
        assertFalse(layered.isOver("bottom", "top"));
        assertFalse(layered.isOver("middle", "other"));
        assertFalse(layered.isOver("top", "top"));
    }

    @Test
    void dominance_of_each_sex_and_of_animals_without_a_locus_are_statements() {
        Model made = Refusals.valid()
                .evidence(Evidence.of("seen", Grade.ONE_STUDY, "Seen.", "A source"))
                .locus(
                        "H",
                        locus -> locus.alleles("H", "h")
                                .in(
                                        Sex.FEMALE,
                                        ewe -> ewe.dominant("h", "H")
                                                .shows("H", "horned")
                                                .shows("h", "polled"))
                                .in(
                                        Sex.MALE,
                                        ram -> ram.dominant("H", "h")
                                                .shows("H", "horned")
                                                .shows("h", "polled")))
                .locus(
                        "T",
                        locus -> locus.alleles("T")
                                .expressions("has", "has not")
                                .in(Sex.FEMALE, one -> one.shows("T", "has").evidence("seen"))
                                .in(Sex.MALE, one -> one.shows("T", "has"))
                                .absent("has not"))
                .group(LinkageGroup.single(Transmission.Y, "T"))
                .trait(
                        "eye",
                        rule -> rule.when(
                                        "by chance",
                                        ALBINO,
                                        new CaseState.Chance(
                                                Distribution.ofWeights(ImmutableMap.of("pink", 3, "dark", 1))))
                                .otherwise(
                                        new CaseState.Chance(
                                                Distribution.ofWeights(ImmutableMap.of("pink", 1, "dark", 3))),
                                        Optional.empty()))
                .build();
        List<String> listed = made.statements().values().stream()
                .map(statement -> statement.text() + " (" + statement.grade() + ")")
                .filter(text -> text.contains("locus H") || text.contains("locus T") || text.contains("eye"))
                .toList();
        assertEquals(
                List.of(
                        "in females at locus H, h is dominant over H (conjecture)",
                        "in females at locus H, H shows horned (conjecture)",
                        "in females at locus H, h shows polled (conjecture)",
                        "in males at locus H, H is dominant over h (conjecture)",
                        "in males at locus H, H shows horned (conjecture)",
                        "in males at locus H, h shows polled (conjecture)",
                        "in females at locus T, T shows has (one study)",
                        "in males at locus T, T shows has (conjecture)",
                        "animals without locus T show has not (one study)",
                        "locus T is on the Y (conjecture)",
                        "where C: albino, eye is by chance pink (3/4) or dark (1/4) (conjecture)",
                        "otherwise eye is by chance pink (1/4) or dark (3/4) (conjecture)"),
                listed);
    }
}
