package org.geneticsrules.answer.estimated;

import static org.geneticsrules.testing.Coats.DARK;
import static org.geneticsrules.testing.Coats.LIGHT;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.collect.ImmutableMap;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.Assumption;
import org.geneticsrules.answer.estimated.CountedAnswers.Ascertained;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.estimation.HardyWeinberg;
import org.geneticsrules.estimation.IntercrossLinkage;
import org.geneticsrules.estimation.LinkageFamily;
import org.geneticsrules.estimation.LodScores;
import org.geneticsrules.estimation.Penetrance;
import org.geneticsrules.estimation.RecordedFamilies;
import org.geneticsrules.estimation.Sibship;
import org.geneticsrules.estimation.TestCross;
import org.geneticsrules.estimation.ThreePointCross;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.EstimateDocument;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Viability;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.render.EstimateText;
import org.geneticsrules.statistics.Counts;
import org.geneticsrules.statistics.Ratio;
import org.geneticsrules.testing.Coats;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** What counts and records say of numbers, in sentences. */
class EstimateAnswersTest {

    private static final CountedAnswers COUNTED = CountedAnswers.at(0.95);
    private static final Probability QUARTER = Probability.of(1, 4);

    private static List<String> ids(EstimateAnswer answer) {
        return answer.assumptions().stream().map(Assumption::id).toList();
    }

    private static RecordedEstimates about(Model model, Pedigree pedigree) {
        return RecordedEstimates.of(RecordedAnswers.of(Answers.of(CompiledModel.of(model), List.of()), pedigree), 0.95);
    }

    /** Linked loci, both genotypes seen; a bib by chance in half of ww; BB are frail. */
    private static final Model LINKED = Model.builder(
                    "linked",
                    "1",
                    Catalogue.builder("linked.traits", "1")
                            .trait("hue", "BB", "Bb", "bb")
                            .trait("mark", "WW", "Ww", "ww")
                            .trait("bib", "yes", "no")
                            .build())
            .locus(
                    "B",
                    one -> one.alleles("B", "b")
                            .shows("B", "BB")
                            .shows("B/b", "Bb")
                            .shows("b", "bb"))
            .locus(
                    "W",
                    one -> one.alleles("W", "w")
                            .shows("W", "WW")
                            .shows("W/w", "Ww")
                            .shows("w", "ww"))
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

    private static Individual animal(String id, Sex sex, String look) {
        return Individual.of(id, sex).with(Observation.of(LifeStage.unstated(), Phenotype.parse(look)));
    }

    /** A test cross of a dam whose parents are recorded, or not. */
    private static Pedigree cross(boolean grandparents, int parental, int recombinant) {
        PedigreeBuilder builder = Pedigree.builder("cross", "1")
                .add(animal("dam", Sex.FEMALE, "hue: Bb, mark: Ww"))
                .add(animal("sire", Sex.MALE, "hue: bb, mark: ww"));
        if (grandparents) {
            builder.add(animal("grandam", Sex.FEMALE, "hue: BB, mark: WW"))
                    .add(animal("grandsire", Sex.MALE, "hue: bb, mark: ww"))
                    .add(Litter.of("old", "grandam", "grandsire", "dam"));
        }
        List<String> kits = new ArrayList<>();
        for (int k = 0; k < parental + recombinant; k++) {
            kits.add("kit" + k);
            builder.add(animal("kit" + k, Sex.FEMALE, k < parental ? "hue: Bb, mark: Ww" : "hue: bb, mark: Ww"));
        }
        return builder.add(Litter.of("young", "dam", "sire", kits.toArray(String[]::new)))
                .build();
    }

    private static Pedigree bibs() {
        PedigreeBuilder builder = Pedigree.builder("bibs", "1")
                .add(animal("dam", Sex.FEMALE, "hue: Bb, mark: ww"))
                .add(animal("sire", Sex.MALE, "hue: Bb, mark: ww"));
        List<String> kits = new ArrayList<>();
        for (int k = 0; k < 8; k++) {
            kits.add("kit" + k);
            builder.add(animal(
                    "kit" + k, Sex.FEMALE, (k < 3 ? "hue: BB" : "hue: Bb") + (k < 5 ? ", bib: yes" : ", bib: no")));
        }
        return builder.add(Litter.of("young", "dam", "sire", kits.toArray(String[]::new))
                        .with(Ascertainment.atLeastOne(Phenotype.of("bib", "yes"))))
                .build();
    }

    private static final ModelNumber INTERVAL = new ModelNumber.Recombining("B-W", Optional.empty());

    /** Calculated: 12 of 100, Clopper-Pearson 0.0636 to 0.2002. */
    @Test
    void a_test_cross() {
        EstimateAnswer answer = COUNTED.testCross(new TestCross(12, 100));
        assertTrue(
                answer.verdict()
                        .startsWith(
                                "The recombination fraction is about 0.12, and 0.064 to 0.2 goes with the records (19 in"
                                        + " 20). The highest LOD score is "),
                answer.verdict());
        assertTrue(answer.informative());
        assertEquals(0.0636, answer.numbers().get(0).best().low(), 5e-5);
        assertTrue(ids(answer).containsAll(List.of("classes-equal", "phase-known")));
        assertFalse(answer.notices().toString().contains("coverage.txt"));
        assertTrue(COUNTED.testCross(new TestCross(2, 40)).notices().toString().contains("in 86 samples of 100"));
        EstimateAnswer none = COUNTED.testCross(new TestCross(0, 20));
        assertTrue(
                none.verdict()
                        .startsWith(
                                "The recombination fraction is likeliest to be 0, an end of what it can be, and 0 to 0.168"
                                        + " goes with the records"),
                none.verdict());
        assertTrue(none.notices().toString().contains("has no standard error"));
    }

    /** Published: sweet pea, small (from memory, Bateson, Saunders and Punnett): r 0.128043, product ratio 0.129819, chi-squared 134.728. */
    @Test
    void an_intercross() {
        EstimateAnswer answer =
                COUNTED.intercross(new IntercrossLinkage(Counts.of(284, 21, 21, 55), IntercrossLinkage.Phase.COUPLING));
        assertEquals(0.128043, answer.numbers().get(0).estimate().value(), 5e-7);
        assertEquals(0.129819, answer.reckonings().get(0).value(), 5e-7);
        assertEquals(134.728, answer.tests().get(1).statistic().orElseThrow(), 5e-4);
        assertTrue(answer.numbers().get(0).exact().isPresent());
        assertTrue(answer.verdict().contains("goes badly with the counts"), answer.verdict());
        EstimateAnswer large = COUNTED.intercross(
                new IntercrossLinkage(Counts.of(1997, 906, 904, 32), IntercrossLinkage.Phase.REPULSION));
        assertEquals(0.188977, large.numbers().get(0).estimate().value(), 5e-7);
        assertTrue(large.numbers().get(0).exact().isEmpty());
    }

    /** Published: v-ct 191/1448, coincidence 0.652142 (Griffiths et al.). */
    @Test
    void three_loci() {
        EstimateAnswer answer = COUNTED.threePoint(new ThreePointCross(1172, 183, 85, 8));
        assertEquals(191 / 1448.0, answer.numbers().get(0).estimate().value(), 1e-12);
        assertEquals(0.652142, answer.reckonings().get(0).value(), 5e-7);
    }

    @Test
    void families_of_unknown_phase_are_named() {
        EstimateAnswer answer = COUNTED.families(
                List.of(new LinkageFamily("first", 1, 9, true), new LinkageFamily("second", 2, 8, false)));
        assertTrue(answer.notices().toString().contains("the phase of a parent is not known in second;"));
        assertEquals(
                List.of(true, false),
                answer.linkage().orElseThrow().families().stream()
                        .map(LinkageScores.Family::phaseKnown)
                        .toList());
        assertEquals(
                LodScores.Verdict.INCONCLUSIVE, answer.linkage().orElseThrow().verdict());
        assertTrue(ids(answer).containsAll(List.of("phase-half", "phase-known")));
    }

    @Test
    void records_that_say_nothing_give_no_value() {
        EstimateAnswer counted = COUNTED.families(List.of(new LinkageFamily("one", 0, 1, false)));
        EstimateAnswer recorded = about(LINKED, cross(false, 1, 0)).ofModel(INTERVAL);
        for (EstimateAnswer answer : List.of(counted, recorded)) {
            assertFalse(answer.informative());
            assertTrue(
                    answer.verdict().startsWith("These records say nothing about the recombination fraction"),
                    answer.verdict());
            assertTrue(answer.tests().isEmpty());
            assertTrue(EstimateText.of(answer).contains(": nothing is known of it."));
            assertFalse(Documents.write(EstimateDocument.of(answer)).contains("\"value\""));
        }
    }

    /** Published: Crow's families as Lange has them (Table 2.3), those of three young: the three ways to count them differ. */
    @Test
    void shares_hang_on_how_families_came_to_notice() {
        List<Sibship> families = List.of(new Sibship(3, 2, 2, 3), new Sibship(3, 2, 1, 3), new Sibship(3, 1, 1, 10));
        EstimateAnswer all = COUNTED.segregation(families, Ascertained.COMPLETE, Optional.empty(), QUARTER);
        EstimateAnswer some = COUNTED.segregation(families, Ascertained.AT_LEAST_ONE, Optional.empty(), QUARTER);
        EstimateAnswer probands = COUNTED.segregation(families, Ascertained.PROBANDS, Optional.empty(), QUARTER);
        assertEquals(22 / 48.0, all.numbers().get(0).estimate().value(), 1e-8);
        assertTrue(all.numbers().get(0).exact().isPresent());
        assertTrue(all.verdict().contains("A share of 1/4 goes badly with them"), all.verdict());
        assertTrue(some.numbers().get(0).estimate().value() < 0.35);
        assertTrue(some.verdict().contains("A share of 1/4 goes with them"), some.verdict());
        assertEquals(2, probands.numbers().size());
        assertTrue(ids(some).containsAll(List.of("ascertainment", "carriers")));
        EstimateAnswer known =
                COUNTED.segregation(families, Ascertained.PROBANDS, Optional.of(Probability.of(1, 2)), QUARTER);
        assertEquals(1, known.numbers().size());
    }

    @Test
    void litters_of_a_pedigree_count_as_they_came_to_be_recorded() {
        PedigreeBuilder builder =
                Pedigree.builder("pair", "1").add(Coats.seen("sire", DARK)).add(Coats.seen("dam", DARK));
        Coats.litter(builder, "first", "", 4, 2, Ascertainment.atLeastOne(LIGHT));
        Coats.litter(builder, "second", "", 7, 1, Ascertainment.unknown());
        RecordedEstimates pair = about(Coats.recessive(), builder.build());
        EstimateAnswer answer = pair.segregation(new RecordedFamilies.Which(LIGHT, 0, Set.of(), false), QUARTER);
        assertTrue(ids(answer).contains("litters-complete"), ids(answer).toString());
        assertEquals(2, answer.given().size());
        assertTrue(answer.verdict().contains("A share of 1/4 goes with them"), answer.verdict());
        assertTrue(
                answer.notices().toString().contains("only 2 families decide this"),
                answer.notices().toString());
        ProblemsException none = assertThrows(
                ProblemsException.class,
                () -> pair.segregation(new RecordedFamilies.Which(LIGHT, 1, Set.of(), false), QUARTER));
        assertTrue(String.valueOf(none.getMessage()).contains("neither parent shows it"), none.getMessage());
        ProblemsException litter = assertThrows(
                ProblemsException.class,
                () -> pair.segregation(new RecordedFamilies.Which(LIGHT, 0, Set.of("frist"), false), QUARTER));
        assertTrue(String.valueOf(litter.getMessage()).contains("first"), litter.getMessage());
    }

    /** Published: MN blood groups 119, 76 and 13 (in Lange): p 0.754808, chi-squared 0.03442. */
    @Test
    void frequencies() {
        EstimateAnswer answer = COUNTED.genotypes(new HardyWeinberg(119, 76, 13));
        assertEquals(0.754808, answer.numbers().get(0).estimate().value(), 5e-7);
        assertEquals(0.03442, answer.tests().get(1).statistic().orElseThrow(), 5e-6);
        assertTrue(answer.verdict().contains("go with Hardy-Weinberg proportions"), answer.verdict());
        assertTrue(COUNTED.genotypes(new HardyWeinberg(50, 0, 50)).verdict().contains("are not in Hardy-Weinberg"));
        assertTrue(ids(answer).contains("unrelated"));
        Answers recessive = Answers.of(CompiledModel.of(Coats.recessive()), List.of());
        EstimateAnswer looks =
                COUNTED.frequencies(recessive, "A", new Counts(Map.of("dark", 96L, "light", 4L)), Optional.of("d"));
        assertTrue(looks.verdict().startsWith("The frequency of allele d is about 0.2, and"), looks.verdict());
        assertTrue(
                looks.notices().toString().contains("cannot be tested"),
                looks.notices().toString());
        assertFalse(looks.evidence().statements().isEmpty());
        assertEquals(0.32, looks.reckonings().get(0).value(), 1e-6);
    }

    @Test
    void frequencies_among_recorded_founders() {
        PedigreeBuilder builder = Pedigree.builder("kennel", "1").add(Individual.of("unseen"));
        for (int i = 0; i < 12; i++) {
            builder.add(Coats.seen("animal" + i, i < 3 ? LIGHT : DARK));
        }
        RecordedEstimates kennel = about(Coats.recessive(), builder.build());
        EstimateAnswer answer = kennel.frequencies("A", List.of(), Optional.of("d"));
        assertEquals(0.5, answer.numbers().get(0).estimate().value(), 1e-6);
        assertTrue(
                answer.notices().toString().contains("not counted: unseen"),
                answer.notices().toString());
        assertFalse(answer.evidence().statements().isEmpty());
        EstimateAnswer twice = kennel.frequencies("A", List.of("animal4", "animal5", "animal4"), Optional.of("d"));
        assertEquals(List.of("2 animals that may be D/D or D/d"), twice.given());
        assertEquals(0, twice.numbers().get(0).estimate().value());
        assertEquals(1, twice.numbers().get(1).estimate().value());
        assertEquals(0, twice.reckonings().get(0).value());
        ProblemsException both = assertThrows(
                ProblemsException.class, () -> kennel.frequencies("a", List.of("animal99"), Optional.empty()));
        assertEquals(2, both.problems().size());
        ProblemsException nothing = assertThrows(
                ProblemsException.class, () -> kennel.frequencies("A", List.of("unseen"), Optional.empty()));
        assertTrue(String.valueOf(nothing.getMessage()).contains("1 say nothing"), nothing.getMessage());
    }

    /** Dark parents of light kits carry it for certain, though their own looks leave it open. */
    @Test
    void founders_of_whom_kits_prove_more_are_named() {
        PedigreeBuilder builder = Pedigree.builder("kennel", "1")
                .add(Coats.seen("sire", DARK))
                .add(Coats.seen("dam", DARK))
                .add(Individual.of("mate"))
                .add(Coats.seen("other", DARK));
        Coats.litter(builder, "first", "", 1, 1, Ascertainment.complete());
        builder.add(Coats.seen("pale", LIGHT)).add(Litter.of("second", "other", "mate", "pale"));
        EstimateAnswer answer = about(Coats.recessive(), builder.build()).frequencies("A", List.of(), Optional.of("d"));
        assertTrue(
                answer.verdict()
                        .endsWith("The records of kits or other relatives prove more of some of these animals than is"
                                + " counted: at least 4 of the 8 alleles of these animals are d."),
                answer.verdict());
        assertTrue(
                answer.notices().toString().contains("prove more: sire, dam, other are D/d; mate is D/d or d/d."),
                answer.notices()::toString);
        assertEquals(List.of("3 animals that may be D/D or D/d"), answer.given());
        EstimateAnswer alone = about(
                        Coats.recessive(),
                        Coats.litter(
                                        Pedigree.builder("kennel", "1")
                                                .add(Coats.seen("sire", DARK))
                                                .add(Coats.seen("dam", DARK)),
                                        "first",
                                        "",
                                        2,
                                        0,
                                        Ascertainment.complete())
                                .build())
                .frequencies("A", List.of(), Optional.of("d"));
        assertFalse(alone.verdict().contains("relatives"), alone.verdict());
        assertFalse(alone.notices().toString().contains("relatives prove"), alone.notices()::toString);
    }

    /** Mice of the lethal model: 8 dark ones are all D/d. */
    @Test
    void founders_are_not_of_genotypes_that_cannot_live() {
        PedigreeBuilder builder = Pedigree.builder("mice", "1");
        for (int i = 0; i < 12; i++) {
            builder.add(Coats.seen("mouse" + i, i < 8 ? DARK : LIGHT));
        }
        EstimateAnswer answer = about(Coats.lethal(), builder.build()).frequencies("A", List.of(), Optional.of("D"));
        assertEquals(1 / 3.0, answer.numbers().get(0).estimate().value(), 1e-6);
        assertTrue(answer.tests().isEmpty());
        assertEquals("8 animals that may be D/d", answer.given().get(0));
        assertTrue(
                answer.notices().toString().contains("by the model no animal lives that is D/D"),
                answer.notices()::toString);
    }

    /** Two doses of D are lost: of animals that look dark more are carriers than by p² : 2pq. */
    @Test
    void a_loss_that_the_model_states_is_told_beside_frequencies() {
        Answers lethal = Answers.of(CompiledModel.of(Coats.lethal()), List.of());
        Counts counts = new Counts(ImmutableMap.of("two doses", 0L, "one dose", 8L, "none", 4L));
        List<String> notices =
                COUNTED.frequencies(lethal, "A", counts, Optional.empty()).notices();
        assertTrue(
                notices.stream()
                        .anyMatch(one ->
                                one.startsWith("the model says: of animals that show two doses at locus A, none are")
                                        && one.contains("are not in Hardy-Weinberg proportions")),
                notices::toString);
        Answers recessive = Answers.of(CompiledModel.of(Coats.recessive()), List.of());
        assertTrue(
                COUNTED
                        .frequencies(recessive, "A", new Counts(Map.of("dark", 96L, "light", 4L)), Optional.empty())
                        .notices()
                        .stream()
                        .noneMatch(one -> one.startsWith("the model says")));
    }

    @Test
    void penetrance_and_viability() {
        assertTrue(COUNTED.penetrance(7, 10).verdict().startsWith("The penetrance is about 0.7, and 0.348 to 0.933"));
        EstimateAnswer young = COUNTED.penetrance(
                List.of(new Penetrance.Mating(QUARTER, 3, 20), new Penetrance.Mating(Probability.of(1, 2), 4, 12)));
        assertTrue(ids(young).contains("no-other-cause"));
        // from memory: yellow mice, Castle and Little 1910: 800 to 435 is 2:1, so the homozygous are lost
        EstimateAnswer yellow =
                COUNTED.viability(Counts.of(800, 435), Ratio.of(3, 1), List.of(QUARTER, Probability.ZERO));
        assertEquals(0, yellow.numbers().get(0).estimate().value());
        assertTrue(yellow.verdict().contains("That none of them live goes with the counts"), yellow.verdict());
        assertTrue(yellow.tests().get(0).isRejected());
    }

    @Test
    void numbers_of_a_model_by_a_pedigree() {
        EstimateAnswer known = about(LINKED, cross(true, 9, 2)).ofModel(INTERVAL);
        assertEquals(2 / 11.0, known.numbers().get(0).estimate().value(), 1e-6);
        assertFalse(known.notices().toString().contains("phase of a parent is not known"));
        assertTrue(
                ids(known).containsAll(List.of("litters-complete", "other-numbers", "population")),
                ids(known).toString());
        EstimateAnswer open = about(LINKED, cross(false, 9, 2)).ofModel(INTERVAL);
        assertTrue(
                open.notices().toString().contains("the phase of a parent is not known in dam (dam)"),
                open.notices().toString());
        RecordedEstimates bibs = about(LINKED, bibs());
        EstimateAnswer bib = bibs.ofModel(new ModelNumber.Showing("bib", Optional.empty(), "yes"));
        assertEquals(5 / 8.0, bib.numbers().get(0).estimate().value(), 1e-5);
        assertTrue(
                bib.notices().toString().contains("chances of showing it are overestimated"),
                bib.notices().toString());
        EstimateAnswer frail = bibs.ofModel(new ModelNumber.Living("frail"));
        assertTrue(frail.linkage().isEmpty());
        assertFalse(frail.evidence().statements().isEmpty());
    }

    @Test
    void numbers_that_a_model_does_not_have_are_named_with_those_it_has() {
        RecordedEstimates bibs = about(LINKED, bibs());
        for (ModelNumber wrong : List.of(
                new ModelNumber.Recombining("W-B", Optional.empty()),
                new ModelNumber.Showing("bob", Optional.empty(), "yes"),
                new ModelNumber.Showing("bib", Optional.of("bear"), "yes"),
                new ModelNumber.Living("frial"))) {
            String said = String.valueOf(assertThrows(ProblemsException.class, () -> bibs.ofModel(wrong))
                    .getMessage());
            assertTrue(said.contains("expected") || said.contains("did you mean"), said);
        }
        Pedigree impossible = Pedigree.builder("impossible", "1")
                .add(animal("dam", Sex.FEMALE, "hue: bb"))
                .add(animal("sire", Sex.MALE, "hue: bb"))
                .add(animal("kit", Sex.MALE, "hue: BB"))
                .add(Litter.of("young", "dam", "sire", "kit"))
                .build();
        RecordedEstimates wrong = about(LINKED, impossible);
        assertTrue(String.valueOf(assertThrows(ProblemsException.class, () -> wrong.ofModel(INTERVAL))
                        .getMessage())
                .contains("cannot be estimated"));
        assertThrows(IllegalArgumentException.class, () -> CountedAnswers.at(1));
    }

    @Test
    void levels_are_told_in_words() {
        assertEquals("99.99999999 in 100", Words.level(0.9999999999));
        assertEquals("0", Words.p(0));
        assertEquals("19 in 20", Words.level(0.95));
        assertEquals("99 in 100", Words.level(0.99));
        assertEquals("9 in 10", Words.level(0.9));
        assertEquals("97.5 in 100", Words.level(0.975));
    }

    @Test
    void documents_and_texts_say_the_same() {
        String id = "urn:geneticsrules:schema:estimate-answer:0";
        Schema schema = SchemaRegistry.withDefaultDialect(
                        SpecificationVersion.DRAFT_2020_12,
                        builder -> builder.schemas(Map.of(id, EstimateDocument.schema())))
                .getSchema(SchemaLocation.of(id));
        for (EstimateAnswer answer : List.of(
                COUNTED.testCross(new TestCross(0, 30)),
                COUNTED.families(List.of(new LinkageFamily("one", 0, 1, false), new LinkageFamily("two", 0, 4, true))),
                COUNTED.families(List.of(new LinkageFamily("one", 0, 1, false))),
                COUNTED.intercross(new IntercrossLinkage(Counts.of(28, 2, 2, 5), IntercrossLinkage.Phase.COUPLING)),
                COUNTED.viability(Counts.of(0, 9), Ratio.of(1, 1), List.of(Probability.ZERO, Probability.of(1, 2))),
                COUNTED.genotypes(new HardyWeinberg(5, 0, 0)),
                COUNTED.segregation(List.of(Sibship.of(3, 1, 4)), Ascertained.AT_LEAST_ONE, Optional.empty(), QUARTER),
                about(LINKED, cross(false, 5, 1)).ofModel(INTERVAL),
                about(LINKED, bibs()).frequencies("B", List.of(), Optional.empty()))) {
            String document = Documents.write(EstimateDocument.of(answer));
            assertEquals(List.of(), schema.validate(document, InputFormat.JSON), document);
            assertTrue(document.contains(answer.verdict().replace("\"", "\\\"")));
            String text = EstimateText.of(answer);
            assertFalse(text.contains("NaN") || document.contains("NaN"), text);
            text.lines().forEach(line -> assertTrue(line.length() <= 100, line));
            assertTrue(text.replaceAll("\\s+", " ").startsWith(answer.verdict()), text);
            assertTrue(text.replaceAll("\\s+", " ").contains("no advice"), text);
        }
    }
}
