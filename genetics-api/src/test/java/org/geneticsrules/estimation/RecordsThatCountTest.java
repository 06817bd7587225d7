package org.geneticsrules.estimation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Viability;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.Coats;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** Which litters and animals of a pedigree an estimate is made from, and which not. */
class RecordsThatCountTest {

    private static RecordedFamilies.Which which(int parents, boolean carriers, String... litters) {
        return new RecordedFamilies.Which(Coats.LIGHT, parents, Set.of(litters), carriers);
    }

    private static PedigreeBuilder couple(PedigreeBuilder builder, String suffix, Phenotype sire) {
        return builder.add(Coats.seen("sire" + suffix, sire).with(Sex.MALE))
                .add(Coats.seen("dam" + suffix, Coats.DARK).with(Sex.FEMALE));
    }

    /** One couple of each kind: noticed; told only by its own complete litters; without light young; of a light sire. */
    private static Pedigree kennel() {
        PedigreeBuilder builder = Pedigree.builder("kennel", "1");
        couple(builder, "1", Coats.DARK);
        Coats.litter(builder, "a", "1", 3, 1, Ascertainment.atLeastOne(Coats.LIGHT));
        Coats.litter(builder, "b", "1", 4, 0, Ascertainment.unknown());
        couple(builder, "2", Coats.DARK);
        Coats.litter(builder, "c", "2", 5, 0, Ascertainment.complete());
        Coats.litter(builder, "d", "2", 2, 2, Ascertainment.unknown());
        couple(builder, "3", Coats.DARK);
        Coats.litter(builder, "e", "3", 6, 0, Ascertainment.complete());
        couple(builder, "4", Coats.LIGHT);
        Coats.litter(builder, "f", "4", 2, 3, Ascertainment.complete());
        builder.add(Coats.seen("foundling", Coats.DARK))
                .add(Litter.of("g", Optional.of("dam1"), new Paternity.Unknown(), "foundling"));
        builder.add(Individual.of("unseen"))
                .add(Litter.of("h", "dam2", "sire2", "unseen").with(Ascertainment.complete()));
        return builder.build();
    }

    @Test
    void litters_of_carriers_count_as_they_came_to_be_recorded() {
        RecordedFamilies found = RecordedFamilies.of(kennel(), which(0, false));
        assertEquals(
                List.of(
                        new RecordedFamily("a", 4, 1, Ascertainment.atLeastOne(Coats.LIGHT)),
                        new RecordedFamily("b", 4, 0, Ascertainment.complete()),
                        new RecordedFamily("c, d", 9, 2, Ascertainment.atLeastOne(Coats.LIGHT))),
                found.families());
        assertEquals(Set.of("e", "f", "g", "h"), found.leftOut().keySet());
        assertEquals("a parent shows it", found.leftOut().get("f"));
        assertEquals("its parents are not both known", found.leftOut().get("g"));
        assertTrue(String.valueOf(found.leftOut().get("e")).contains("may be no couple of carriers"));
        assertEquals(List.of("b", "d"), found.unstated());
    }

    @Test
    void where_all_are_known_carriers_every_litter_counts_in_full() {
        RecordedFamilies found = RecordedFamilies.of(kennel(), which(0, true));
        assertEquals(
                List.of("a", "b", "c", "d", "e"),
                found.families().stream().map(RecordedFamily::name).toList());
        assertEquals(
                List.of("f"),
                RecordedFamilies.of(kennel(), which(1, true)).families().stream()
                        .map(RecordedFamily::name)
                        .toList());
        assertEquals(
                List.of("c"),
                RecordedFamilies.of(kennel(), which(0, true, "c")).families().stream()
                        .map(RecordedFamily::name)
                        .toList());
        assertThrows(IllegalArgumentException.class, () -> RecordedFamilies.of(kennel(), which(0, true, "z")));
    }

    /** Records that do not go with the reason, another reason, and young of whom nothing is recorded. */
    @Test
    void litters_of_which_too_little_is_known_are_left_out() {
        PedigreeBuilder builder = Pedigree.builder("kennel", "1");
        couple(builder, "", Coats.DARK);
        Coats.litter(builder, "a", "", 3, 0, Ascertainment.atLeastOne(Coats.LIGHT));
        Coats.litter(builder, "b", "", 3, 1, Ascertainment.atLeastOne(Coats.DARK));
        builder.add(Coats.seen("light", Coats.LIGHT)).add(Individual.of("unseen"));
        builder.add(Litter.of("c", "dam", "sire", "light", "unseen")
                .counting(5, 4)
                .with(Ascertainment.atLeastOne(Coats.LIGHT)));
        RecordedFamilies found = RecordedFamilies.of(builder.build(), which(0, false));
        assertTrue(String.valueOf(found.leftOut().get("a")).startsWith("its records do not go with"));
        assertTrue(String.valueOf(found.leftOut().get("b")).startsWith("it was noticed for something else"));
        assertEquals(List.of("unseen", "2 of litter c that are not listed"), found.unclear());
        assertEquals(List.of(new RecordedFamily("c", 1, 1, Ascertainment.atLeastOne(Coats.LIGHT))), found.families());
        assertThrows(IllegalArgumentException.class, () -> new RecordedFamily("x", 3, 1, Ascertainment.unknown()));
        assertThrows(
                IllegalArgumentException.class,
                () -> new RecordedFamily("x", 3, 0, Ascertainment.atLeastOne(Coats.LIGHT)));
        assertThrows(IllegalArgumentException.class, () -> which(3, false));
    }

    /** Crow's families again (Lange, Table 2.3): as recorded through at least one they give the estimate that is published for that. */
    @Test
    void families_recorded_alike_are_what_they_were() {
        List<RecordedFamily> families = new ArrayList<>();
        int[][] rows = {{3, 1, 10}, {3, 2, 6}, {2, 1, 18}, {2, 2, 6}, {4, 1, 6}, {4, 2, 4}};
        List<Sibship> same = new ArrayList<>();
        for (int[] row : rows) {
            same.add(Sibship.of(row[0], row[1], row[2]));
            for (int i = 0; i < row[2]; i++) {
                families.add(new RecordedFamily("f", row[0], row[1], Ascertainment.atLeastOne(Coats.LIGHT)));
            }
        }
        assertEquals(
                SegregationRatio.truncated(same).estimate(0.95).value(),
                SegregationRatio.asRecorded(families).estimate(0.95).value(),
                1e-9);
        assertThrows(IllegalArgumentException.class, () -> SegregationRatio.asRecorded(List.of()));
    }

    // ---- animals by which alleles are counted
    // -----------------------------------------------------------------------------

    /** Albino hides hue, so a white animal says nothing of hue; a grey one is brown-eyed by one of two loci. */
    private static final Model MASKED = Model.builder(
                    "masked",
                    "1",
                    Catalogue.builder("masked.traits", "1")
                            .trait("hue", "black", "brown", "none")
                            .trait("eye", "pale", "dark")
                            .build())
            .locus(
                    "C",
                    one -> one.alleles("C", "c")
                            .dominant("C", "c")
                            .shows("C", "pigment")
                            .shows("c", "albino"))
            .locus(
                    "B",
                    one -> one.alleles("B", "b")
                            .dominant("B", "b")
                            .shows("B", "dark")
                            .shows("b", "brown"))
            .trait(
                    "hue",
                    rule -> rule.when(Condition.where("B", "brown"), "brown").otherwise("black"))
            .trait(
                    "eye",
                    rule -> rule.when(Condition.where("C", "pigment").and("B", "dark"), "dark")
                            .otherwise("pale"))
            .mask(Mask.of("albino", Condition.where("C", "albino")).covering("hue", "none"))
            .build();

    private static Individual seen(String id, String look) {
        return Individual.of(id).with(Observation.of(LifeStage.unstated(), Phenotype.parse(look)));
    }

    private static GenotypeTest test(String locus, String result, Probability error) {
        return new GenotypeTest(Optional.empty(), locus, Set.of(result), error);
    }

    @Test
    void own_records_leave_genotypes_or_say_more_than_that() {
        Pedigree pedigree = Pedigree.builder("animals", "1")
                .add(seen("black", "hue: black"))
                .add(seen("white", "hue: none"))
                .add(seen("pale", "eye: pale"))
                .add(Individual.of("tested").with(test("B", "B/b", Probability.ZERO)))
                .add(Individual.of("doubtful").with(test("B", "B/b", Probability.of(1, 100))))
                .add(seen("both", "hue: black").with(test("B", "B/b", Probability.ZERO)))
                .add(Individual.of("unseen"))
                .add(seen("kit", "hue: brown"))
                .add(Litter.of("litter", Optional.of("black"), new Paternity.Unknown(), "kit"))
                .build();
        Inference questions = Inference.of(CompiledModel.of(MASKED), pedigree);
        assertEquals(
                "[B/B, B/b]", questions.ownRecords("black", "B").orElseThrow().toString());
        assertEquals(3, questions.ownRecords("white", "B").orElseThrow().size());
        assertEquals("[c/c]", questions.ownRecords("white", "C").orElseThrow().toString());
        assertEquals(Optional.empty(), questions.ownRecords("pale", "B"));
        assertEquals(Optional.empty(), questions.ownRecords("doubtful", "B"));
        assertEquals("[B/b]", questions.ownRecords("both", "B").orElseThrow().toString());
        UnrelatedAnimals found = UnrelatedAnimals.of(questions, pedigree, MASKED, "B", List.of());
        assertEquals(List.of("white", "unseen"), found.silent());
        assertEquals(List.of("pale", "doubtful"), found.unclear());
        assertEquals(3, found.total());
        assertEquals(Optional.empty(), found.genotypes());
        GeneCounting counting = found.counting();
        // B/B or B/b once and B/b twice: 2p - p^2 times (2pq)^2 is highest where its slope is 0
        double best = 0;
        for (int i = 1; i < 100_000; i++) {
            double p = i / 100_000.0;
            best = chance(p) > chance(best) ? p : best;
        }
        assertEquals(best, counting.estimate("B", 0.95).value(), 1.1e-5);
        assertEquals(Optional.empty(), counting.fit());
        assertEquals(
                1,
                UnrelatedAnimals.of(questions, pedigree, MASKED, "B", List.of("kit"))
                        .total());
    }

    private static double chance(double p) {
        double q = 1 - p;
        return (2 * p - p * p) * Math.pow(2 * p * q, 2);
    }

    /** 119, 76 and 13 of MN blood groups, published in Lange: p 0.754808, chi-squared 0.03442. */
    @Test
    void genotypes_that_are_all_known_are_tested() {
        Locus at = MASKED.locus("B");
        List<AllelePair> pairs = at.pairs();
        UnrelatedAnimals found = new UnrelatedAnimals(
                at,
                Set.copyOf(pairs),
                Map.of(Set.of(pairs.get(0)), 119L, Set.of(pairs.get(1)), 76L, Set.of(pairs.get(2)), 13L),
                List.of(),
                List.of());
        assertEquals(new HardyWeinberg(119, 76, 13), found.genotypes().orElseThrow());
        assertEquals(0.754808, found.counting().estimate("B", 0.95).value(), 5e-7);
        assertEquals(0.03442, found.counting().fit().orElseThrow().statistic(), 5e-6);
    }

    /** As yellow mice: two doses are lost, so each of those that look dark has one. 8 of 24 alleles are D. */
    @Test
    void genotypes_that_cannot_live_are_left_to_no_animal() {
        PedigreeBuilder builder = Pedigree.builder("mice", "1").add(Individual.of("unseen", Sex.MALE));
        for (int i = 0; i < 12; i++) {
            builder.add(Coats.seen("mouse" + i, i < 8 ? Coats.DARK : Coats.LIGHT));
        }
        builder.add(Individual.of("lost").with(test("A", "D/D", Probability.ZERO)));
        Model model = Coats.lethal();
        Pedigree pedigree = builder.build();
        Inference questions = Inference.of(CompiledModel.of(model), pedigree);
        assertEquals("[D/d]", questions.ownRecords("mouse0", "A").orElseThrow().toString());
        UnrelatedAnimals found = UnrelatedAnimals.of(questions, pedigree, model, "A", List.of());
        assertEquals(List.of("unseen"), found.silent());
        assertEquals(List.of("lost"), found.unclear());
        assertEquals(12, found.total());
        assertEquals(1 / 3.0, found.counting().estimate("D", 0.95).value(), 1e-9);
        assertEquals(Optional.empty(), found.genotypes());
        assertEquals(Optional.empty(), found.counting().fit());
        assertEquals("[D/d, d/d]", model.living("A", Optional.of(Sex.MALE)).toString());
    }

    /** Lost in one sex only: an animal of the other can have it, and one of unknown sex may be of the other. */
    @Test
    void a_genotype_that_is_lost_in_one_sex_is_left_to_the_other() {
        Model model = Model.builder("males", "1", Coats.TRAITS)
                .locus(
                        "A",
                        at -> at.alleles("D", "d")
                                .dominant("D", "d")
                                .shows("D", "dark")
                                .shows("d", "light"))
                .viability(new Viability(
                        "males",
                        "A",
                        Set.of("light"),
                        Optional.of(Sex.MALE),
                        Probability.ONE,
                        Probability.ZERO,
                        Optional.empty()))
                .build();
        assertEquals("[D/D, D/d]", model.living("A", Optional.of(Sex.MALE)).toString());
        assertEquals(3, model.living("A", Optional.of(Sex.FEMALE)).size());
        assertEquals(3, model.living("A", Optional.empty()).size());
    }

    /** Of alleles that no class tells apart only the sum is known. */
    @Test
    void alleles_that_are_not_told_apart_are_one() {
        Locus three = Model.builder(
                        "three",
                        "1",
                        Catalogue.builder("three.traits", "1")
                                .trait("coat", "any")
                                .build())
                .locus(
                        "T",
                        one -> one.alleles("x", "y", "z")
                                .dominant("x", "y")
                                .dominant("y", "z")
                                .shows("x", "1")
                                .shows("y", "2")
                                .shows("z", "3"))
                .build()
                .locus("T");
        List<AllelePair> pairs = three.pairs();
        Set<AllelePair> others = new LinkedHashSet<>(pairs);
        AllelePair last = pairs.get(pairs.size() - 1);
        others.remove(last);
        GeneCounting found = GeneCounting.ofGenotypes(three, Map.of(others, 96L, Set.of(last), 4L));
        GeneCounting told = found.toldApart();
        assertEquals(Set.of("x or y", "z"), told.frequencies().keySet());
        assertEquals(0.2, told.estimate("z", 0.95).value(), 1e-9);
        assertEquals(0.8, told.estimate("x or y", 0.95).value(), 1e-9);
        Estimate apart = found.estimate("x", 0.95);
        assertTrue(apart.standardError().isEmpty());
        assertTrue(
                apart.notes().get(0).contains("make these records as likely"),
                apart.notes().toString());
        assertThrows(
                IllegalArgumentException.class,
                () -> GeneCounting.ofGenotypes(MASKED.locus("B"), Map.of(Set.of(last), 4L)));
    }
}
