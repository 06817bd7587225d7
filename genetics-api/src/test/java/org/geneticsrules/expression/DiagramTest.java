package org.geneticsrules.expression;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.collect.ImmutableMap;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.model.Viability;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Reading;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

/** A small diagram read from the root: recessive epistasis, with a mark by chance and a lethal locus beside it. */
class DiagramTest {

    private static ModelBuilder builder() {
        Catalogue catalogue = Catalogue.builder("read.traits", "1")
                .trait("hue", "black", "brown", "none")
                .trait("mark", "marked", "plain")
                .build();
        ModelBuilder model = Model.builder("read", "1", catalogue);
        for (String letter : List.of("A", "B", "C")) {
            model.locus(
                    letter,
                    locus -> locus.alleles(letter, "x" + letter)
                            .dominant(letter, "x" + letter)
                            .shows(letter, "on")
                            .shows("x" + letter, "off"));
        }
        return model.trait(
                "hue",
                rule -> rule.when(Condition.where("A", "off"), "none")
                        .when(Condition.where("A", "on").and("B", "on"), "black")
                        .when(Condition.where("A", "on").and("B", "off"), "brown"));
    }

    private static Chain even(String locus, long on, long off) {
        return Chain.single(locus, new BigInteger[] {BigInteger.valueOf(on), BigInteger.valueOf(off)});
    }

    private static String read(Diagram<Phenotype> diagram, String... on) {
        int place = diagram.root();
        while (place < diagram.size()) {
            Level level = diagram.levels().get(diagram.level(place));
            String found = List.of(on).contains(level.name()) ? "on" : "off";
            place = diagram.next(place, level.values().indexOf(found));
        }
        assertEquals(diagram.levels().size(), diagram.level(place));
        return diagram.outcome(place).map(Phenotype::toString).orElse("lost");
    }

    @Test
    void every_way_from_the_root_ends_where_the_rules_say() {
        Diagram<Phenotype> diagram = CompiledModel.of(builder().build()).diagram(List.of("hue"));
        assertEquals(2, diagram.size());
        assertEquals(2, diagram.levels().size());
        assertEquals("hue: black", read(diagram, "A", "B"));
        assertEquals("hue: brown", read(diagram, "A"));
        assertEquals("hue: none", read(diagram, "B"));
        assertEquals("hue: none", read(diagram));
        assertTrue(diagram.testsOnlyLoci());
    }

    @Test
    void an_animal_that_is_lost_has_no_outcome() {
        Model model = builder().viability(Viability.lethal("lost", "B", "off")).build();
        Diagram<Phenotype> diagram = CompiledModel.of(model).diagram(List.of("hue"));
        assertEquals("hue: black", read(diagram, "A", "B"));
        assertEquals("lost", read(diagram, "A"));
        assertEquals("hue: none", read(diagram, "B"));
        assertEquals("lost", read(diagram));
        assertTrue(diagram.loses());
        assertFalse(diagram.testsOnlyLoci());
        LocusWeights[] weights = {LocusWeights.of(3, 1), LocusWeights.of(3, 1)};
        assertThrows(IllegalStateException.class, () -> diagram.distribution(weights));
        assertThrows(IllegalStateException.class, () -> diagram.approximate(weights));
    }

    @Test
    void ways_are_visited_until_the_visitor_has_enough() {
        Diagram<Phenotype> diagram = CompiledModel.of(builder().build()).diagram(List.of("hue"));
        List<String> all = new ArrayList<>();
        diagram.paths((outcome, box) -> all.add(diagram.outcomes().get(outcome) + " where " + box));
        assertEquals(
                List.of("hue: black where A: on, B: on", "hue: brown where A: on, B: off", "hue: none where A: off"),
                all);
        List<Integer> first = new ArrayList<>();
        diagram.paths((outcome, box) -> {
            first.add(outcome);
            return false;
        });
        assertEquals(1, first.size());
    }

    @Test
    void what_is_derived_from_a_diagram_is_derived_once() {
        Diagram<Phenotype> diagram = CompiledModel.of(builder().build()).diagram(List.of("hue"));
        StringBuilder first = diagram.derived(StringBuilder.class, asked -> new StringBuilder("made"));
        assertSame(first, diagram.derived(StringBuilder.class, asked -> new StringBuilder("made again")));
        assertEquals("other", diagram.derived(String.class, asked -> "other"));
    }

    /** A is in half; of the animals with A, 3/4 are marked, whatever lies further along the chromosome. */
    @Test
    void chance_between_linked_loci() {
        CaseState often = new CaseState.Chance(Distribution.ofWeights(ImmutableMap.of("marked", 3, "plain", 1)));
        Model model = builder()
                .trait(
                        "mark",
                        rule -> rule.when("often", Condition.where("A", "on"), often)
                                .otherwise("plain"))
                .group(LinkageGroup.autosomal("one", List.of("A", "B"), List.of(Probability.of(1, 10))))
                .build();
        BigInteger[][] shown = {{BigInteger.ONE, BigInteger.ZERO}, {BigInteger.ZERO, BigInteger.ONE}};
        BigInteger[][] step = {{BigInteger.valueOf(9), BigInteger.ONE}, {BigInteger.ONE, BigInteger.valueOf(9)}};
        Chain chain = Chain.of(
                List.of("A", "B"),
                new BigInteger[] {BigInteger.ONE, BigInteger.ONE},
                new BigInteger[][][] {step},
                new BigInteger[][][] {shown, shown});
        KitLaw law = KitLaw.of(Sex.FEMALE, List.of(chain));
        // of 80: A with B 36, A without B 4, half without A
        Distribution<String> expected = Distribution.ofWeights(ImmutableMap.of(
                "hue: black, mark: marked", 27,
                "hue: black, mark: plain", 9,
                "hue: brown, mark: marked", 3,
                "hue: brown, mark: plain", 1,
                "hue: none, mark: plain", 40));
        CompiledModel compiled = CompiledModel.of(model);
        Diagram<Phenotype> diagram = compiled.diagram(List.of("hue", "mark"));
        assertEquals(expected, diagram.distribution(diagram.weigh(law)).map(Phenotype::toString));
        Diagram<Phenotype> other = compiled.diagram(List.of("mark", "hue"));
        assertEquals(
                expected,
                other.distribution(other.weigh(law))
                        .map(look -> Phenotype.parse("hue: " + look.state("hue").orElseThrow() + ", mark: "
                                        + look.state("mark").orElseThrow())
                                .toString()));
        assertEquals(27 / 80.0, diagram.approximate(law).chance(Phenotype.parse("hue: black, mark: marked")), 1e-15);
        assertFalse(diagram.testsOnlyLoci());
    }

    @Test
    void independent_loci_with_chance_and_loss() {
        CaseState often = new CaseState.Chance(Distribution.ofWeights(ImmutableMap.of("marked", 3, "plain", 1)));
        Model model = builder()
                .trait(
                        "mark",
                        rule -> rule.when("often", Condition.where("C", "on"), often)
                                .otherwise("plain"))
                .viability(new Viability(
                        "weak",
                        "C",
                        Set.of("off"),
                        Optional.of(Sex.MALE),
                        Probability.of(1, 3),
                        Probability.ONE,
                        Optional.empty()))
                .build();
        Diagram<Phenotype> diagram = CompiledModel.of(model).diagram(List.of("mark"));
        // marked 9 of 16; of the 7 others 4 are off at C, of which a third of the males is born
        Weights males = diagram.weigh(KitLaw.of(Sex.MALE, List.of(even("C", 3, 1))));
        assertEquals(Probability.of(27, 40), diagram.distribution(males).probability(Phenotype.of("mark", "marked")));
        assertEquals(Probability.of(5, 6), Probability.of(males.kept(), males.total()));
        Weights females = diagram.weigh(KitLaw.of(Sex.FEMALE, List.of(even("C", 3, 1))));
        assertEquals(Probability.of(9, 16), diagram.distribution(females).probability(Phenotype.of("mark", "marked")));
        assertEquals(females.total(), females.kept());
    }

    /** Half of those that are off at C are born, and of these a third is scored: of 4, three and a half and three and a sixth. */
    @Test
    void who_is_counted_is_decided_step_by_step() {
        Model model = builder()
                .trait(
                        "mark",
                        rule -> rule.when(Condition.where("C", "on"), "marked").otherwise("plain"))
                .viability(new Viability(
                        "weak",
                        "C",
                        Set.of("off"),
                        Optional.empty(),
                        Probability.of(1, 2),
                        Probability.of(1, 3),
                        Optional.empty()))
                .build();
        CompiledModel compiled = CompiledModel.of(model);
        KitLaw law = KitLaw.of(Sex.FEMALE, List.of(even("C", 3, 1)));
        Phenotype marked = Phenotype.of("mark", "marked");
        View view = View.of(List.of("mark"));
        for (Census census : Census.values()) {
            Probability kept = switch (census) {
                case CONCEIVED -> Probability.ONE;
                case BORN -> Probability.of(7, 8);
                case SCORED -> Probability.of(19, 24);
            };
            Diagram<Phenotype> diagram = compiled.diagram(view.among(census));
            Weights weights = diagram.weigh(law);
            assertEquals(kept, Probability.of(weights.kept(), weights.total()), census::toString);
            assertEquals(
                    Probability.of(3, 4).dividedBy(kept),
                    diagram.distribution(weights).probability(marked),
                    census::toString);
            assertEquals(kept.toDouble(), 1 - diagram.approximate(law).missing(), 1e-14, census::toString);
        }
    }

    /** A mark seen speaks for C with 3/4 and against its absence; none seen is 1/4 with it and certain without. */
    @Test
    void what_was_seen_weighs_what_is_carried() {
        CaseState often = new CaseState.Chance(Distribution.ofWeights(ImmutableMap.of("marked", 3, "plain", 1)));
        Model model = builder()
                .trait(
                        "mark",
                        rule -> rule.when("often", Condition.where("C", "on"), often)
                                .otherwise("plain"))
                .build();
        CompiledModel compiled = CompiledModel.of(model);
        Sighting marked = Sighting.of(Phenotype.of("mark", "marked"));
        Sighting plain = Sighting.of(Phenotype.of("mark", "plain"));
        assertEquals(
                List.of(new WeightedBox(Condition.where("C", "on"), Probability.of(3, 4))),
                compiled.evidence(List.of(marked)));
        assertEquals(
                Set.of(
                        new WeightedBox(Condition.where("C", "on"), Probability.of(1, 4)),
                        new WeightedBox(Condition.where("C", "off"), Probability.ONE)),
                Set.copyOf(compiled.evidence(List.of(plain))));
        assertEquals(List.of(), compiled.evidence(List.of(marked, plain))); // it is drawn once for life
        assertEquals("C/-", compiled.showing(marked).toString());
        assertEquals(
                compiled.showing(marked),
                compiled.showing(new Sighting(marked.stage(), Phenotype.parse("mark: marked, sex: male"))));
        // seen again, an animal that had a mark has it
        Diagram<Phenotype> again = compiled.diagramAfter(View.of(List.of("mark")), Reading.ofAll(List.of(marked)));
        Weights weights = again.weigh(KitLaw.of(Sex.MALE, List.of(even("C", 3, 1))));
        assertEquals(Distribution.certain(Phenotype.of("mark", "marked")), again.distribution(weights));
        assertEquals(Probability.of(9, 16), Probability.of(weights.kept(), weights.total()));
    }

    @Test
    void a_trait_that_there_is_not_is_refused_wherever_it_is_asked_for() {
        CompiledModel compiled = CompiledModel.of(builder().build());
        List<Sighting> strange = List.of(Sighting.of(Phenotype.of("hew", "black")));
        for (Executable question : List.<Executable>of(
                () -> compiled.diagram(List.of("hew")),
                () -> compiled.diagramAfter(View.of(List.of("hue")), Reading.ofAll(strange)),
                () -> compiled.matching(strange, Census.BORN),
                () -> compiled.evidence(strange),
                () -> compiled.showing(strange))) {
            IllegalArgumentException refused = assertThrows(IllegalArgumentException.class, question);
            assertEquals("no trait \"hew\" in model read 1; it models [hue]", refused.getMessage());
        }
    }

    @Test
    void the_sex_matters_where_a_rule_a_locus_or_a_loss_reads_it() {
        View hue = View.of(List.of("hue"));
        View mark = View.of(List.of("mark"));
        CompiledModel plain = CompiledModel.of(builder()
                .trait(
                        "mark",
                        rule -> rule.when(Condition.where("sex", "male").and("C", "on"), "marked")
                                .otherwise("plain"))
                .build());
        assertFalse(plain.dependsOnSex(hue));
        assertTrue(plain.dependsOnSex(mark));
        assertEquals(Set.of("A", "B"), plain.lociRead(hue));
        assertEquals(Set.of("C"), plain.lociRead(mark));
        CompiledModel linked = CompiledModel.of(
                builder().group(LinkageGroup.single(Transmission.X, "B")).build());
        assertTrue(linked.dependsOnSex(hue));
        // losses of one sex only bear on the sex that is asked for, and on loci of the same chromosome
        ModelBuilder lost = builder()
                .viability(new Viability(
                        "sons",
                        "C",
                        Set.of("off"),
                        Optional.of(Sex.MALE),
                        Probability.of(1, 2),
                        Probability.ONE,
                        Optional.empty()));
        CompiledModel apart = CompiledModel.of(lost.build());
        assertFalse(apart.dependsOnSex(hue));
        assertEquals(Set.of("A", "B"), apart.lociRead(hue));
        assertEquals(Set.of("C"), apart.lociRead(View.of(List.of("sex"))));
        CompiledModel together = CompiledModel.of(
                lost.group(LinkageGroup.autosomal("one", List.of("B", "C"), List.of(Probability.of(1, 10))))
                        .build());
        assertTrue(together.dependsOnSex(hue));
        assertEquals(Set.of("A", "B", "C"), together.lociRead(hue));
        assertEquals(Set.of("A", "B"), together.lociRead(hue.among(Census.CONCEIVED)));
    }

    @Test
    void one_way_falls_on_what_is_known_and_else_on_what_comes_first() {
        CaseState often = new CaseState.Chance(Distribution.ofWeights(ImmutableMap.of("marked", 3, "plain", 1)));
        CompiledModel compiled = CompiledModel.of(builder()
                .trait(
                        "mark",
                        rule -> rule.when("often", Condition.where("C", "on"), often)
                                .otherwise("plain"))
                .build());
        ImmutableMap<String, String> on = ImmutableMap.of("C", "on");
        assertEquals(
                "mark: marked",
                compiled.oneWay(on, Sex.MALE, LifeStage.unstated(), ImmutableMap.of(), List.of("mark"))
                        .phenotype()
                        .toString());
        assertEquals(
                "mark: plain",
                compiled.oneWay(
                                on,
                                Sex.MALE,
                                LifeStage.unstated(),
                                ImmutableMap.of("/traits/mark/cases/often", "plain"),
                                List.of("mark"))
                        .phenotype()
                        .toString());
    }

    /** Of four patterns two hang above the same tests of colour, and two above others: what is alike is weighed once. */
    @Test
    void parts_of_a_diagram_that_are_alike_and_parts_that_are_not() {
        Catalogue catalogue = Catalogue.builder("parts.traits", "1")
                .trait("pattern", "p0", "p1", "p2", "p3")
                .trait("colour", "dark", "pale")
                .build();
        ModelBuilder model = Model.builder("parts", "1", catalogue);
        List<String> loci = List.of("L0", "L1", "C0", "C1", "C2");
        for (String name : loci) {
            model.locus(
                    name,
                    locus -> locus.alleles(name, "x" + name)
                            .dominant(name, "x" + name)
                            .shows(name, "on")
                            .shows("x" + name, "off"));
        }
        model.trait("pattern", rule -> {
            for (int i = 0; i < 4; i++) {
                rule.when(Condition.where("L0", i < 2 ? "on" : "off").and("L1", i % 2 == 0 ? "on" : "off"), "p" + i);
            }
        });
        model.trait("colour", rule -> {
            for (int set = 0; set < 8; set++) {
                Condition colours = Condition.where("C0", set % 2 == 1 ? "on" : "off")
                        .and("C1", set / 2 % 2 == 1 ? "on" : "off")
                        .and("C2", set / 4 == 1 ? "on" : "off");
                if (Integer.bitCount(set) % 2 == 1) {
                    rule.when("odd " + set, colours.and("L0", "on"), new CaseState.Certain("dark"));
                }
                if (set == 7) {
                    rule.when("all", colours.and("L0", "off"), new CaseState.Certain("dark"));
                }
            }
            rule.otherwise("pale");
        });
        Diagram<Phenotype> diagram = CompiledModel.of(model.build()).diagram();
        // each locus is on in 1, 2, 3, 4 and 5 of 7
        LocusWeights[] weights = diagram.loci().stream()
                .map(name -> LocusWeights.of(loci.indexOf(name) + 1, 6 - loci.indexOf(name)))
                .toArray(LocusWeights[]::new);
        // odd: of 343, 3x3x2 + 4x4x2 + 5x4x3 + 3x4x5 = 170; all on 60
        int[] patterns = {1 * 2, 1 * 5, 6 * 2, 6 * 5};
        ImmutableMap.Builder<String, Integer> expected = ImmutableMap.builder();
        for (int i = 0; i < 4; i++) {
            int dark = i < 2 ? 170 : 60;
            expected.put("pattern: p" + i + ", colour: dark", patterns[i] * dark);
            expected.put("pattern: p" + i + ", colour: pale", patterns[i] * (343 - dark));
        }
        assertEquals(
                Distribution.ofWeights(expected.buildOrThrow()),
                diagram.distribution(weights).map(Phenotype::toString));
    }

    @Test
    void a_season_that_is_not_stated_is_asked_for_and_one_that_is_rules_out() {
        Catalogue catalogue = Catalogue.builder("coats.traits", "1")
                .seasons("summer", "winter")
                .trait("coat", "white", "brown")
                .build();
        Model model = Model.builder("coats", "1", catalogue)
                .locus(
                        "W",
                        locus -> locus.alleles("W", "w")
                                .dominant("W", "w")
                                .shows("W", "turns")
                                .shows("w", "stays"))
                .trait(
                        "coat",
                        rule -> rule.when(
                                        "turned",
                                        Condition.where("season", "winter").and("W", "turns"),
                                        new CaseState.Certain("white"))
                                .otherwise("brown"))
                .build();
        CompiledModel compiled = CompiledModel.of(model);
        View coat = View.of(List.of("coat"));
        assertEquals(Set.of("W"), compiled.lociRead(coat.at(LifeStage.unstated().in("winter"))));
        assertEquals(Set.of(), compiled.lociRead(coat.at(LifeStage.unstated().in("summer"))));
        ProblemsException refused = assertThrows(ProblemsException.class, () -> compiled.diagram(coat));
        assertEquals("stage-needed", refused.problems().get(0).code());
        assertEquals(
                "what is asked depends on the season by the statement /traits/coat/cases/turned, but the stage is not"
                        + " stated",
                refused.problems().get(0).message());
        ProblemsException week =
                assertThrows(ProblemsException.class, () -> compiled.diagram(coat.at(LifeStage.atWeek(3))));
        assertTrue(
                week.problems().get(0).message().endsWith("but the stage is week 3"),
                week.problems().get(0)::message);
    }

    /** A loss of sons next door makes the sex matter, and then a loss of sons elsewhere matters too. */
    @Test
    void one_loss_brings_another_along() {
        ModelBuilder builder = builder();
        for (String locus : List.of("D", "C")) {
            if (locus.equals("D")) {
                builder.locus(
                        "D",
                        one -> one.alleles("D", "d")
                                .dominant("D", "d")
                                .shows("D", "on")
                                .shows("d", "off"));
            }
            builder.viability(new Viability(
                    "sons by " + locus,
                    locus,
                    Set.of("off"),
                    Optional.of(Sex.MALE),
                    Probability.of(1, 2),
                    Probability.ONE,
                    Optional.empty()));
        }
        builder.group(LinkageGroup.autosomal("one", List.of("B", "C"), List.of(Probability.of(1, 10))));
        CompiledModel compiled = CompiledModel.of(builder.build());
        assertEquals(Set.of("A", "B", "C", "D"), compiled.lociRead(View.of(List.of("hue"))));
        assertTrue(compiled.dependsOnSex(View.of(List.of("hue"))));
    }

    private static KitLaw sure(Sex sex, String... on) {
        List<Chain> chains = new ArrayList<>();
        for (String locus : List.of("A", "B", "C")) {
            chains.add(List.of(on).contains(locus) ? even(locus, 1, 0) : even(locus, 0, 1));
        }
        return KitLaw.of(sex, chains);
    }

    private static String shown(Diagram<Phenotype> diagram, KitLaw law) {
        return diagram.distribution(diagram.weigh(law)).outcomes().toString();
    }

    @Test
    void the_sex_is_seen_as_it_is() {
        CompiledModel compiled = CompiledModel.of(builder().build());
        Diagram<Phenotype> diagram = compiled.diagram(List.of("hue", "sex"));
        assertEquals("[hue: black, sex: male]", shown(diagram, sure(Sex.MALE, "A", "B")));
        assertEquals("[hue: none, sex: female]", shown(diagram, sure(Sex.FEMALE, "B")));
    }

    /** Two masks that change brown alike: under both it is still the own state that is changed. */
    @Test
    void masks_that_agree_lie_over_one_another() {
        Model model = builder()
                .trait("mark", rule -> rule.otherwise("plain"))
                .mask(Mask.of("one", Condition.where("C", "off"))
                        .covering("hue", Mask.Cover.changing(ImmutableMap.of("brown", "none"))))
                .mask(Mask.of("two", Condition.where("C", "off"))
                        .covering("hue", Mask.Cover.changing(ImmutableMap.of("brown", "none"))))
                .build();
        Diagram<Phenotype> diagram = CompiledModel.of(model).diagram(List.of("hue"));
        assertEquals("[hue: brown]", shown(diagram, sure(Sex.MALE, "A", "C")));
        assertEquals("[hue: none]", shown(diagram, sure(Sex.MALE, "A")));
        assertEquals("[hue: black]", shown(diagram, sure(Sex.MALE, "A", "B")));
    }

    /** Ten, and two for A: the cut is at twelve. */
    @Test
    void what_is_left_over_of_a_sum_adds_to_the_doses() {
        CaseState sum = new CaseState.Threshold(
                ImmutableMap.of("A", ImmutableMap.of("on", 2)),
                Distribution.certain(10),
                "plain",
                ImmutableMap.of("marked", 12));
        Model model = builder()
                .trait("mark", rule -> rule.otherwise(sum, Optional.empty()))
                .build();
        Diagram<Phenotype> diagram = CompiledModel.of(model).diagram(List.of("mark"));
        assertEquals("[mark: marked]", shown(diagram, sure(Sex.MALE, "A")));
        assertEquals("[mark: plain]", shown(diagram, sure(Sex.MALE)));
    }

    /** Who is born is scored in one of three: of 4, three and a third. */
    @Test
    void losses_after_birth_count_where_the_scored_are_counted() {
        Model model = builder()
                .trait(
                        "mark",
                        rule -> rule.when(Condition.where("C", "on"), "marked").otherwise("plain"))
                .viability(new Viability(
                        "frail",
                        "C",
                        Set.of("off"),
                        Optional.empty(),
                        Probability.ONE,
                        Probability.of(1, 3),
                        Optional.empty()))
                .build();
        CompiledModel compiled = CompiledModel.of(model);
        View mark = View.of(List.of("mark"));
        KitLaw law = KitLaw.of(Sex.FEMALE, List.of(even("C", 3, 1)));
        Weights born = compiled.diagram(mark.among(Census.BORN)).weigh(law);
        assertEquals(born.total(), born.kept());
        Weights scored = compiled.diagram(mark.among(Census.SCORED)).weigh(law);
        assertEquals(Probability.of(5, 6), Probability.of(scored.kept(), scored.total()));
    }
}
