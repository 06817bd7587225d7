package org.geneticsrules.estimation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.document.Reference;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Recombination;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.LocusBuilder;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Viability;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** Numbers of a model by pedigrees whose likelihood can be written down by hand, or asked of the engines of counts. */
class PedigreeLikelihoodTest {

    private static LocusBuilder codominant(LocusBuilder locus, String upper, String lower) {
        return locus.alleles(upper, lower)
                .shows(upper, upper + upper)
                .shows(upper + "/" + lower, upper + lower)
                .shows(lower, lower + lower);
    }

    /** Both genotypes are seen; a third trait shows in half of those that are ww. */
    private static final Model MODEL = Model.builder(
                    "linked",
                    "1",
                    Catalogue.builder("linked.traits", "1")
                            .trait("hue", "BB", "Bb", "bb")
                            .trait("mark", "WW", "Ww", "ww")
                            .trait("bib", "yes", "no")
                            .build())
            .locus("B", one -> codominant(one, "B", "b"))
            .locus("W", one -> codominant(one, "W", "w"))
            .group(LinkageGroup.autosomal("g", List.of("B", "W"), List.of(Probability.of(1, 10))))
            .viability(new Viability(
                    "frail",
                    "B",
                    Set.of("BB"),
                    Optional.empty(),
                    Probability.ONE,
                    Probability.of(9, 10),
                    Optional.empty()))
            .trait("hue", rule -> List.of("BB", "Bb", "bb").forEach(is -> rule.when(Condition.where("B", is), is)))
            .trait("mark", rule -> List.of("WW", "Ww", "ww").forEach(is -> rule.when(Condition.where("W", is), is)))
            .trait(
                    "bib",
                    rule -> rule.when(
                                    "bare",
                                    Condition.where("W", "ww"),
                                    new CaseState.Chance(Distribution.of(
                                            Map.of("yes", Probability.of(1, 2), "no", Probability.of(1, 2)))))
                            .otherwise("no"))
            .population(
                    "even",
                    one -> one.frequency("B", "B", Probability.of(1, 2))
                            .frequency("B", "b", Probability.of(1, 2))
                            .frequency("W", "W", Probability.of(1, 2))
                            .frequency("W", "w", Probability.of(1, 2)))
            .build();

    private static Individual animal(String id, Sex sex, String... looks) {
        return Individual.of(id, sex)
                .with(Observation.of(LifeStage.unstated(), Phenotype.parse(String.join(", ", looks))));
    }

    private static String[] kits(PedigreeBuilder builder, String name, int number, String... looks) {
        String[] ids = new String[number];
        for (int k = 0; k < number; k++) {
            ids[k] = name + " " + k;
            builder.add(animal(ids[k], Sex.FEMALE, looks));
        }
        return ids;
    }

    private static void litter(
            PedigreeBuilder builder, String name, String dam, String sire, int number, String... looks) {
        builder.add(Litter.of(name, dam, sire, kits(builder, name, number, looks)));
    }

    /** A test cross of a double heterozygous dam: of so many kits the first are parental if the dam is in coupling. */
    private static PedigreeBuilder cross(String family, boolean grandparents, int parental, int recombinant) {
        PedigreeBuilder builder = Pedigree.builder("cross " + family, "1");
        if (grandparents) {
            builder.add(animal(family + " grandam", Sex.FEMALE, "hue: BB", "mark: WW"))
                    .add(animal(family + " grandsire", Sex.MALE, "hue: bb", "mark: ww"));
        }
        builder.add(animal(family + " dam", Sex.FEMALE, "hue: Bb", "mark: Ww"))
                .add(animal(family + " sire", Sex.MALE, "hue: bb", "mark: ww"));
        if (grandparents) {
            builder.add(Litter.of(family + " own", family + " grandam", family + " grandsire", family + " dam"));
        }
        litter(builder, family + " parental", family + " dam", family + " sire", parental, "hue: Bb", "mark: Ww");
        litter(builder, family + " recombinant", family + " dam", family + " sire", recombinant, "hue: bb", "mark: Ww");
        return builder;
    }

    private static PedigreeLikelihood recombination(Pedigree pedigree) {
        return PedigreeLikelihood.of(
                ModelParameter.recombination(MODEL, "g", "B-W"), pedigree, one -> one.from("even"));
    }

    @Test
    void a_test_cross_with_grandparents_is_one_of_known_phase() {
        PedigreeLikelihood found = recombination(cross("one", true, 9, 2).build());
        Estimate byCounts = new TestCross(2, 11).profile(0.95);
        Estimate byPedigree = found.estimate(0.95);
        assertEquals(byCounts.value(), byPedigree.value(), 1e-6);
        assertEquals(byCounts.interval().low(), byPedigree.interval().low(), 1e-6);
        assertEquals(byCounts.interval().high(), byPedigree.interval().high(), 1e-6);
        assertEquals(
                byCounts.standardError().orElseThrow(),
                byPedigree.standardError().orElseThrow(),
                1e-4);
        LodScores counted = LodScores.of(List.of(new LinkageFamily("one", 2, 9, true)));
        assertEquals(List.of("one grandam"), found.lodScores().families());
        for (double r : new double[] {0.01, 0.1, 0.3}) {
            assertEquals(counted.at(r), found.lodScores().at(r), 1e-10);
        }
        assertEquals(
                new TestCross(2, 11).logLikelihood(0.1) - new TestCross(2, 11).logLikelihood(0.5),
                found.logLikelihood(0.1) - found.logLikelihood(0.5),
                1e-10);
        assertEquals(counted.linkage().p(), found.test(0.5).p(), 1e-8);
    }

    @Test
    void without_grandparents_the_phase_is_not_known() {
        PedigreeLikelihood found = recombination(cross("two", false, 7, 1).build());
        LodScores counted = LodScores.of(List.of(new LinkageFamily("two", 1, 7, false)));
        for (double r : new double[] {0.01, 0.1, 0.3}) {
            assertEquals(counted.at(r), found.lodScores().at(r), 1e-10);
        }
        assertEquals(counted.estimate(0.95).value(), found.estimate(0.95).value(), 1e-5);
    }

    /** The dam got both dominant alleles from one grandparent; without her parents they may lie either way. The sire is homozygous. */
    @Test
    void families_of_unknown_phase_are_named_with_the_parent() {
        assertEquals(Map.of(), recombination(cross("one", true, 9, 2).build()).phaseUnknown());
        PedigreeBuilder both = Pedigree.builder("both", "1");
        for (Pedigree one : List.of(
                cross("one", true, 9, 2).build(), cross("two", false, 7, 1).build())) {
            one.individuals().values().forEach(both::add);
            one.litters().values().forEach(both::add);
        }
        assertEquals(
                Map.of("two dam", List.of("two dam")),
                recombination(both.build()).phaseUnknown());
        PedigreeLikelihood penetrance = PedigreeLikelihood.of(
                ModelParameter.chance(MODEL, "bib", "bare", "yes"),
                cross("two", false, 7, 1).build(),
                one -> one.from("even"));
        assertEquals(Map.of(), penetrance.phaseUnknown());
        assertEquals(
                List.of("B", "W"),
                ModelParameter.recombination(MODEL, "g", "B-W").between());
    }

    /** One kit of a parent of unknown phase says nothing: the likelihood is the same at every fraction. */
    @Test
    void records_that_say_nothing_are_told_as_such() {
        Estimate found = recombination(cross("three", false, 1, 0).build()).estimate(0.95);
        assertTrue(found.flat());
        assertTrue(
                found.notes()
                        .contains(
                                "these records say nothing about the number: they are as likely at every value that it can have."));
        assertFalse(
                recombination(cross("four", false, 2, 0).build()).estimate(0.95).flat());
    }

    @Test
    void sets_of_relatives_are_scored_apart() {
        PedigreeBuilder both = Pedigree.builder("both", "1");
        for (Pedigree one : List.of(
                cross("one", true, 9, 2).build(), cross("two", false, 7, 1).build())) {
            one.individuals().values().forEach(both::add);
            one.litters().values().forEach(both::add);
        }
        both.add(animal("alone", Sex.MALE, "hue: Bb", "mark: ww"));
        both.add(Litter.of("raised", Optional.of("one dam"), Paternity.unknown(), "raised kit")
                .raisedBy("two dam")); // hands down nothing
        both.add(Individual.of("raised kit", Sex.FEMALE));
        LodScores scores = recombination(both.build()).lodScores();
        assertEquals(List.of("one grandam", "two dam", "alone"), scores.families());
        assertEquals(List.of("alone"), scores.uninformative());
        assertEquals(
                LodScores.of(List.of(new LinkageFamily("x", 1, 7, false))).at(0.1), scores.at("two dam", 0.1), 1e-10);
        assertEquals(scores.at("one grandam", 0.1) + scores.at("two dam", 0.1), scores.at(0.1), 1e-10);
    }

    @Test
    void recombination_of_one_sex() {
        Pedigree pedigree = cross("one", true, 9, 2).build();
        ModelParameter eggs = ModelParameter.recombination(MODEL, "g", "B-W", Sex.FEMALE);
        ModelParameter sperm = ModelParameter.recombination(MODEL, "g", "B-W", Sex.MALE);
        assertEquals(
                2 / 11.0,
                PedigreeLikelihood.of(eggs, pedigree, one -> one.from("even"))
                        .estimate(0.95)
                        .value(),
                1e-6);
        Estimate nothing =
                PedigreeLikelihood.of(sperm, pedigree, one -> one.from("even")).estimate(0.95);
        assertTrue(nothing.interval().lowIsBoundary() && nothing.interval().highIsBoundary());
        assertTrue(
                nothing.flat() && nothing.notes().stream().anyMatch(note -> note.contains("say nothing")),
                nothing.notes().toString());
        Recombination.Fractions after =
                (Recombination.Fractions) eggs.at(0.25).groups().get("g").recombination();
        assertEquals(List.of(Probability.of(1, 4)), after.female());
        assertEquals(List.of(Probability.of(1, 10)), after.male());
    }

    /** Young of two parents that are ww: all have the genotype, and the estimate is their share. */
    @Test
    void penetrance() {
        PedigreeBuilder builder = Pedigree.builder("bibs", "1")
                .add(animal("dam", Sex.FEMALE, "hue: Bb", "mark: ww"))
                .add(animal("sire", Sex.MALE, "hue: bb", "mark: ww"));
        litter(builder, "with", "dam", "sire", 5, "hue: bb", "bib: yes");
        litter(builder, "without", "dam", "sire", 3, "hue: bb", "bib: no");
        PedigreeLikelihood found = PedigreeLikelihood.of(
                ModelParameter.chance(MODEL, "bib", "bare", "yes"), builder.build(), one -> one.from("even"));
        Estimate byCounts = Penetrance.ofYoung(List.of(new Penetrance.Mating(Probability.ONE, 5, 8)))
                .estimate(0.95);
        assertEquals(5 / 8.0, found.estimate(0.95).value(), 1e-6);
        assertEquals(byCounts.interval().low(), found.estimate(0.95).interval().low(), 1e-6);
        assertEquals(byCounts.interval().high(), found.estimate(0.95).interval().high(), 1e-6);
        assertEquals(Double.NEGATIVE_INFINITY, found.logLikelihood(0));
        assertEquals(0, found.test(0).p());
        assertThrows(IllegalStateException.class, found::lodScores);
    }

    /** Kits of two heterozygotes: BB with w / (3 + w). Founders, too, are of those that were scored: 2pq / (p^2 w + 2pq + q^2) for each parent. */
    @Test
    void viability() {
        PedigreeBuilder builder = Pedigree.builder("frail", "1")
                .add(animal("dam", Sex.FEMALE, "hue: Bb"))
                .add(animal("sire", Sex.MALE, "hue: Bb"));
        litter(builder, "a", "dam", "sire", 4, "hue: BB");
        litter(builder, "b", "dam", "sire", 15, "hue: Bb");
        litter(builder, "c", "dam", "sire", 9, "hue: bb");
        PedigreeLikelihood found = PedigreeLikelihood.of(
                ModelParameter.viability(MODEL, "frail"), builder.build(), one -> one.from("even"));
        double best = 0;
        double top = Double.NEGATIVE_INFINITY;
        for (int i = 1; i <= 10_000; i++) {
            double w = i / 10_000.0;
            double log = 4 * Math.log(w / (3 + w))
                    + 15 * Math.log(2 / (3 + w))
                    + 9 * Math.log(1 / (3 + w))
                    + 2 * Math.log(2 / (3 + w));
            if (log > top) {
                top = log;
                best = w;
            }
        }
        assertEquals(best, found.estimate(0.95).value(), 1.1e-4);
        assertEquals(top - 28 * Math.log(2), found.estimate(0.95).logLikelihood(), 1e-6); // each kit is female with 1/2
    }

    /** The copy differs in nothing but the number: with the number that the model states, the hash is that of the model. */
    @Test
    void a_model_with_the_number_it_states_is_itself() {
        for (ModelParameter one : List.of(
                ModelParameter.recombination(MODEL, "g", "B-W"),
                ModelParameter.recombination(MODEL, "g", "B-W", Sex.MALE))) {
            assertEquals(MODEL.reference(), one.at(0.1).reference());
            assertNotEquals(MODEL.reference(), one.at(0.11).reference());
        }
        assertEquals(
                MODEL.reference(),
                ModelParameter.chance(MODEL, "bib", "bare", "no").at(0.5).reference());
        assertEquals(
                MODEL.reference(),
                ModelParameter.viability(MODEL, "frail").at(0.9).reference());
        assertEquals(
                "the chance of bib no in case bare",
                ModelParameter.chance(MODEL, "bib", "bare", "no").toString());
    }

    @Test
    void what_is_refused() {
        assertThrows(IllegalArgumentException.class, () -> ModelParameter.recombination(MODEL, "h", "B-W"));
        String interval = assertThrows(
                        IllegalArgumentException.class, () -> ModelParameter.recombination(MODEL, "g", "W-B"))
                .getMessage();
        assertTrue(interval.contains("[B-W]"), interval);
        assertThrows(
                IllegalArgumentException.class,
                () -> ModelParameter.recombination(MODEL, "g", "B-W").at(0.6));
        assertThrows(IllegalArgumentException.class, () -> ModelParameter.chance(MODEL, "tail", "bare", "yes"));
        assertThrows(IllegalArgumentException.class, () -> ModelParameter.chance(MODEL, "bib", "clothed", "yes"));
        assertThrows(IllegalArgumentException.class, () -> ModelParameter.chance(MODEL, "bib", "otherwise", "no"));
        assertThrows(IllegalArgumentException.class, () -> ModelParameter.chance(MODEL, "bib", "bare", "maybe"));
        assertThrows(IllegalArgumentException.class, () -> ModelParameter.viability(MODEL, "hale"));
        Pedigree none = Pedigree.builder("none", "1").build();
        assertThrows(IllegalArgumentException.class, () -> recombination(none));
        PedigreeBuilder impossible = Pedigree.builder("impossible", "1")
                .add(animal("dam", Sex.FEMALE, "hue: bb"))
                .add(animal("sire", Sex.MALE, "hue: bb"));
        litter(impossible, "dark", "dam", "sire", 1, "hue: BB");
        Pedigree contradictory = impossible.build();
        String said = assertThrows(IllegalArgumentException.class, () -> recombination(contradictory))
                .getMessage();
        assertTrue(said.contains("impossible at every value"), said);
    }

    @Test
    void records_of_another_catalogue_are_refused_whether_they_come_apart_or_not() {
        Reference other = new Reference("other.traits", "1", Optional.empty());
        for (int animals = 1; animals <= 2; animals++) {
            PedigreeBuilder strange = Pedigree.builder("strange", "1").catalogue(other);
            for (int i = 0; i < animals; i++) {
                strange.add(animal("animal " + i, Sex.MALE, "hue: bb"));
            }
            Pedigree built = strange.build();
            assertThrows(ProblemsException.class, () -> recombination(built).logLikelihood(0.1));
        }
    }

    /** A chance from which parts were left out would be another question. */
    @Test
    void what_cannot_be_calculated_exactly_is_refused() {
        PedigreeBuilder builder = Pedigree.builder("inbred", "1")
                .add(animal("dam", Sex.FEMALE, "bib: no"))
                .add(animal("sire", Sex.MALE, "bib: no"))
                .add(Individual.of("sister", Sex.FEMALE))
                .add(Individual.of("brother", Sex.MALE))
                .add(Litter.of("first", "dam", "sire", "sister", "brother"));
        litter(builder, "second", "sister", "brother", 1, "bib: yes");
        Pedigree inbred = builder.build();
        ModelParameter parameter = ModelParameter.recombination(MODEL, "g", "B-W");
        assertThrows(
                TooLargeException.class,
                () -> PedigreeLikelihood.of(
                        parameter, inbred, one -> one.from("even").within(0)));
        assertTrue(PedigreeLikelihood.of(parameter, inbred, (Inference one) -> one.from("even"))
                        .logLikelihood(0.1)
                < 0);
    }
}
