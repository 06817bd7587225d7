package org.geneticsrules.inference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.inference.RecordRef.DamOf;
import org.geneticsrules.inference.RecordRef.Observed;
import org.geneticsrules.inference.RecordRef.SiresOf;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.LocusBuilder;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Confusion;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** Contradictions of a recessive trait, where it is plain what they are. */
class ContradictionsTest {

    private static final Model MODEL = plain(locus -> {});

    private static Model plain(Consumer<LocusBuilder> more) {
        return Model.builder(
                        "plain",
                        "1",
                        Catalogue.builder("plain.traits", "1")
                                .trait("eye", "dark", "pink")
                                .build())
                .locus("C", locus -> {
                    locus.alleles("C", "c")
                            .dominant("C", "c")
                            .shows("C", "pigment")
                            .shows("c", "albino");
                    more.accept(locus);
                })
                .trait(
                        "eye",
                        rule -> rule.when(Condition.where("C", "albino"), "pink")
                                .otherwise("dark"))
                .build();
    }

    private static final CompiledModel COMPILED = CompiledModel.of(MODEL);
    private static final Observation DARK = Observation.of(LifeStage.unstated(), Phenotype.of("eye", "dark"));
    private static final Observation PINK = Observation.of(LifeStage.unstated(), Phenotype.of("eye", "pink"));

    private static Contradictions contradictions(PedigreeBuilder pedigree) {
        return Inference.of(COMPILED, pedigree.build()).contradictions();
    }

    /** Two albinos have albinos only: the kit's look, its dam, its sire, or the look of one of these is mistaken, or the model. */
    private static PedigreeBuilder dark_kit_of_albinos() {
        return Pedigree.builder("albinos", "1")
                .add(Individual.of("dam", Sex.FEMALE).with(PINK))
                .add(Individual.of("sire", Sex.MALE).with(PINK))
                .add(Individual.of("kit", Sex.MALE).with(DARK))
                .add(Individual.of("mate", Sex.MALE).with(PINK))
                .add(Litter.of("first", "dam", "sire", "kit", "mate"));
    }

    @Test
    void a_dark_kit_of_albinos() {
        Contradictions found = contradictions(dark_kit_of_albinos());
        assertEquals(
                List.of(new Contradiction(
                        List.of(
                                new Observed("dam", 0),
                                new Observed("sire", 0),
                                new DamOf("first"),
                                new SiresOf("first"),
                                new Observed("kit", 0)),
                        true)),
                found.all());
        assertEquals(
                "not all true: observation 1 of \"dam\"; observation 1 of \"sire\"; dam of litter \"first\"; sire of litter"
                        + " \"first\"; observation 1 of \"kit\"",
                found.all().get(0).toString());
        assertFalse(found.isConsistent());
        FewestToRecheck fewest = found.fewestToRecheck(10).get(0);
        assertEquals(found.all().get(0).records().stream().map(List::of).toList(), fewest.sets());
        assertEquals(List.of("dam", "sire", "kit", "mate"), fewest.kindred());
        assertEquals(1, fewest.atLeast());
        assertFalse(fewest.more());
        FewestToRecheck cut = found.fewestToRecheck(2).get(0);
        assertEquals(2, cut.sets().size());
        assertTrue(cut.more());
        assertThrows(IllegalArgumentException.class, () -> found.fewestToRecheck(0));
    }

    @Test
    void a_look_that_contradicts_another_of_the_same_animal() {
        Contradictions found = contradictions(
                Pedigree.builder("one", "1").add(Individual.of("a").with(PINK).with(DARK)));
        assertEquals(
                List.of(new Contradiction(List.of(new Observed("a", 0), new Observed("a", 1)), true)), found.all());
    }

    @Test
    void records_that_fit() {
        Contradictions found = contradictions(Pedigree.builder("fits", "1")
                .add(Individual.of("dam", Sex.FEMALE).with(DARK))
                .add(Individual.of("sire", Sex.MALE).with(PINK))
                .add(Individual.of("kit").with(PINK))
                .add(Litter.of("first", "dam", "sire", "kit")));
        assertTrue(found.isConsistent());
        assertEquals(List.of(), found.all());
        assertEquals(List.of(), found.fewestToRecheck(3));
    }

    @Test
    void each_set_of_relatives_is_told_of_by_itself() {
        PedigreeBuilder two =
                dark_kit_of_albinos().add(Individual.of("other").with(PINK).with(DARK));
        Contradictions found = contradictions(two);
        assertEquals(2, found.all().size());
        assertEquals(
                List.of(5, 2),
                found.fewestToRecheck(10).stream().map(one -> one.sets().size()).toList());
    }

    /** Without room for a table it cannot be verified that the others fit, so no set is named. */
    @Test
    void nothing_is_guessed() {
        Contradictions found =
                Inference.of(COMPILED, dark_kit_of_albinos().build()).within(0).contradictions();
        assertEquals(List.of(), found.all());
        assertEquals(Set.of("dam", "sire", "kit", "mate"), found.undecided());
        assertFalse(found.isConsistent());
    }

    /** A contradiction in a long line of descent is found where it is, among thousands of animals. */
    @Test
    void in_a_large_registry() {
        PedigreeBuilder registry = Pedigree.builder("registry", "1").add(Individual.of("f0", Sex.FEMALE));
        int generations = 1500;
        for (int g = 1; g <= generations; g++) {
            registry.add(Individual.of("m" + g, Sex.MALE).with(g == 701 ? PINK : DARK))
                    .add(Individual.of("f" + g, Sex.FEMALE).with(g == 700 ? PINK : DARK))
                    .add(Individual.of("b" + g, Sex.MALE).with(DARK))
                    .add(Litter.of("l" + g, "f" + (g - 1), "m" + g, "f" + g, "b" + g));
        }
        Contradictions now = contradictions(registry);
        assertEquals(
                List.of(new Contradiction(
                        List.of(
                                new Observed("f700", 0),
                                new Observed("m701", 0),
                                new DamOf("l701"),
                                new SiresOf("l701"),
                                new Observed("f701", 0)),
                        false)),
                now.all());
        // both kits are dark, so that their looks are two records and each of the others is one
        assertEquals(4, now.fewestToRecheck(10).get(0).sets().size());
    }

    @Test
    void what_is_possible() {
        Pedigree pedigree = Pedigree.builder("carrier", "1")
                .add(Individual.of("dam", Sex.FEMALE).with(DARK))
                .add(Individual.of("sire", Sex.MALE).with(DARK))
                .add(Individual.of("kit").with(PINK))
                .add(Individual.of("sib").with(DARK))
                .add(Litter.of("first", "dam", "sire", "kit", "sib"))
                .build();
        Possibilities possible = Inference.of(COMPILED, pedigree).possible("C");
        AllelePair clear = MODEL.locus("C").pair("C", "C");
        AllelePair carrier = MODEL.locus("C").pair("C", "c");
        assertEquals(new Possibility.Excluded(), possible.of("dam", clear));
        assertInstanceOf(Possibility.Possible.class, possible.of("sib", clear));
        Possibility.Possible found = assertInstanceOf(Possibility.Possible.class, possible.of("sib", carrier));
        assertEquals(carrier, found.witness().get("dam").get("C"));
        assertEquals(3, possible.of("sib").size());
        assertThrows(IllegalArgumentException.class, () -> possible.of("nobody", clear));
        assertThrows(
                IllegalArgumentException.class,
                () -> Inference.of(COMPILED, pedigree).possible("X"));
        Pedigree wrong = dark_kit_of_albinos().build();
        assertEquals(
                new Possibility.Contradicted(),
                Inference.of(COMPILED, wrong).possible("C").of("kit", clear));
    }

    /** An allele that has changed explains everything, so it is left out unless it is asked for. */
    @Test
    void mutation_counts_only_where_it_is_asked_for() {
        CompiledModel changing = CompiledModel.of(plain(locus -> locus.mutation("c", "C", Probability.of(1, 100_000))));
        AllelePair carrier = changing.model().locus("C").pair("C", "c");
        Inference asked = Inference.of(changing, dark_kit_of_albinos().build());
        assertFalse(asked.contradictions().isConsistent());
        assertInstanceOf(Possibility.Contradicted.class, asked.possible("C").of("kit", carrier));
        assertTrue(asked.withMutation().contradictions().isConsistent());
        Possibility.Possible found = assertInstanceOf(
                Possibility.Possible.class, asked.withMutation().possible("C").of("kit", carrier));
        assertEquals(
                "c/c",
                Objects.requireNonNull(found.witness().get("dam"))
                        .values()
                        .iterator()
                        .next()
                        .toString());
    }

    /** A naming error that is allowed for makes a set of records possible, and only in its own direction. */
    @Test
    void naming_errors_count_where_they_are_named() {
        Inference asked = Inference.of(COMPILED, dark_kit_of_albinos().build());
        Confusions pinkTakenForDark =
                Confusions.of(List.of(new Confusion("eye", "pink", "dark", Optional.empty(), Probability.of(1, 50))));
        Confusions darkTakenForPink =
                Confusions.of(List.of(new Confusion("eye", "dark", "pink", Optional.empty(), Probability.of(1, 50))));
        assertTrue(asked.with(pinkTakenForDark).contradictions().isConsistent());
        assertTrue(asked.with(darkTakenForPink).contradictions().isConsistent());
        AllelePair albino = MODEL.locus("C").pair("c", "c");
        assertInstanceOf(
                Possibility.Possible.class,
                asked.with(pinkTakenForDark).possible("C").of("kit", albino));
        assertInstanceOf(
                Possibility.Excluded.class,
                asked.with(darkTakenForPink).possible("C").of("kit", albino));
    }

    /** Of several sets of one size as many are listed as are asked for, and it is said that there are more. */
    @Test
    void as_many_sets_are_listed_as_asked_for() {
        List<FewestToRecheck> fewest = Inference.of(
                        COMPILED, dark_kit_of_albinos().build())
                .contradictions()
                .fewestToRecheck(1);
        assertEquals(1, fewest.size());
        assertEquals(1, fewest.get(0).sets().size());
        assertTrue(fewest.get(0).more());
    }
}
