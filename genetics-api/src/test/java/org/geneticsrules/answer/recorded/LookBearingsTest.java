package org.geneticsrules.answer.recorded;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Statement;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** What answers about recorded looks rest on: a series down to albino, which masks the hue of another locus. */
class LookBearingsTest {

    private static final Catalogue TRAITS = Catalogue.builder("bearing.traits", "1")
            .trait("hue", "black", "brown", "none seen")
            .trait("eye", "dark", "pink")
            .build();

    private static final Observation ALBINO = seen("hue", "none seen", "eye", "pink");
    private static final Observation BLACK = seen("hue", "black", "eye", "dark");

    private static Observation seen(String hue, String colour, String eye, String pink) {
        return Observation.of(LifeStage.unstated(), Phenotype.from(Map.of(hue, colour, eye, pink)));
    }

    /** A model in which what is not named in an answer about albinos can be turned round. */
    private static Model model(boolean brownOverBlack, boolean paleOverFull) {
        return Model.builder("bearing", "1", TRAITS)
                .locus(
                        "C",
                        c -> c.alleles("C", "cp", "c")
                                .expressions("full", "pale", "albino")
                                .dominant(paleOverFull ? "cp" : "C", paleOverFull ? "C" : "cp")
                                .dominant("C", "c")
                                .dominant("cp", "c")
                                .shows("C", "full")
                                .shows("cp", "pale")
                                .shows("c", "albino"))
                .locus(
                        "B",
                        b -> b.alleles("B", "b")
                                .expressions("dark", "brown")
                                .dominant(brownOverBlack ? "b" : "B", brownOverBlack ? "B" : "b")
                                .shows("B", "dark")
                                .shows("b", "brown"))
                .trait(
                        "hue",
                        hue -> hue.when(Condition.where("B", "dark"), "black").otherwise("brown"))
                .trait(
                        "eye",
                        eye -> eye.when(Condition.where("C", "albino"), "pink").otherwise("dark"))
                .mask(Mask.of("albino", Condition.where("C", "albino")).covering("hue", "none seen"))
                .build();
    }

    private static RecordedAnswer ask(Model model, Observation parents, Observation kit, String... loci) {
        Pedigree pedigree = Pedigree.builder("three", "1")
                .add(Individual.of("dam", Sex.FEMALE).with(parents))
                .add(Individual.of("sire", Sex.MALE).with(parents))
                .add(Individual.of("kit").with(kit))
                .add(Litter.of("first", "dam", "sire", "kit"))
                .build();
        return RecordedAnswers.of(Answers.of(CompiledModel.of(model), List.of()), pedigree)
                .mayCarry("kit", List.of(loci));
    }

    private static Set<String> cited(RecordedAnswer answer) {
        Set<String> pointers = new LinkedHashSet<>();
        answer.evidence().statements().stream().map(Statement::pointer).forEach(pointers::add);
        return pointers;
    }

    @Test
    void three_albinos_say_nothing_of_what_albino_hides() {
        assertEquals(
                Set.of(
                        "/loci/C/dominance/order/1",
                        "/loci/C/dominance/order/2",
                        "/loci/C/dominance/shows/C",
                        "/loci/C/dominance/shows/cp",
                        "/loci/C/dominance/shows/c",
                        "/traits/eye/cases/pink",
                        "/traits/eye/otherwise",
                        "/masks/albino"),
                cited(ask(model(false, false), ALBINO, ALBINO, "C")));
        assertEquals(Set.of(), cited(ask(model(false, false), ALBINO, ALBINO, "B")));
    }

    /** language.md 15: what is not cited can be replaced, and the answer stays. */
    @Test
    void what_is_not_cited_can_be_turned_round() {
        for (boolean pale : new boolean[] {false, true}) {
            for (boolean brown : new boolean[] {false, true}) {
                assertEquals(
                        ask(model(false, false), ALBINO, ALBINO, "C").verdict(),
                        ask(model(brown, pale), ALBINO, ALBINO, "C").verdict());
            }
        }
        assertEquals(
                ask(model(false, false), BLACK, BLACK, "B").verdict(),
                ask(model(false, true), BLACK, BLACK, "B").verdict());
        assertNotEquals(
                ask(model(false, false), BLACK, BLACK, "B").verdict(),
                ask(model(true, false), BLACK, BLACK, "B").verdict());
    }

    @Test
    void a_hue_says_something_of_its_locus_by_its_own_statements() {
        assertEquals(
                Set.of(
                        "/loci/B/dominance/order/0",
                        "/loci/B/dominance/shows/B",
                        "/loci/B/dominance/shows/b",
                        "/traits/hue/cases/black",
                        "/traits/hue/otherwise"),
                cited(ask(model(false, false), BLACK, BLACK, "B")));
        Set<String> both = cited(ask(model(false, false), BLACK, BLACK, "B", "C"));
        assertTrue(both.contains("/loci/C/dominance/order/1"));
        assertTrue(both.contains("/masks/albino"));
    }
}
