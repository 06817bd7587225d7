package org.geneticsrules.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.caution.CautionSet;
import org.geneticsrules.caution.Relation;
import org.geneticsrules.caution.Role;
import org.geneticsrules.caution.Trigger;
import org.geneticsrules.cross.Detection;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.evidence.Evidence;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.explanation.Miss;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.model.Viability;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/**
 * What goes with the numbers of test matings: which are proposed, which are left out, and what is said along with them. Model, animals
 * and cautions are invented; the numbers 5 and 7, 11 and 17, 23 and 35, 6 and 13 are calculated (the least n with 1/2, 3/4 or 7/8 to the
 * power of n at most 1/20 or 1/100; from a chance of 2/3 before, at most 1/38).
 */
class TestMatingAnswerTest {

    private static final Catalogue TRAITS = Catalogue.builder("invented.traits", "1.0.0")
            .trait("hue", "dark", "pale", "none")
            .trait("eye", "brown", "pink")
            .trait("tail", "long", "short")
            .build();

    private static final CompiledModel COMPILED = CompiledModel.of(model(builder -> {}));
    private static final Answers ANSWERS = Answers.of(COMPILED, List.of(cautions()));

    private static Model model(Consumer<ModelBuilder> more) {
        ModelBuilder builder = Model.builder("invented.model", "1.0.0", TRAITS)
                .evidence(Evidence.of("gene", Grade.MOLECULAR, "The albino gene is known.", "Invented"))
                .locus(
                        "C",
                        locus -> locus.title("Pigment")
                                .alleles("C", "c")
                                .wildType("C")
                                .dominant("C", "c")
                                .shows("C", "pigment")
                                .shows("c", "albino", Optional.of("gene")))
                .locus(
                        "B",
                        locus -> locus.alleles("B", "b")
                                .wildType("B")
                                .dominant("B", "b")
                                .shows("B", "dark")
                                .shows("b", "pale"))
                .locus(
                        "T",
                        locus -> locus.alleles("T", "t")
                                .wildType("T")
                                .dominant("T", "t")
                                .shows("T", "long")
                                .shows("t", "short"))
                .locus(
                        "L",
                        locus -> locus.alleles("L", "l")
                                .wildType("L")
                                .dominant("L", "l")
                                .shows("L", "lives")
                                .shows("l", "dies"))
                .viability(Viability.lethal("l twice", "L", "dies"))
                .trait(
                        "hue",
                        hue -> hue.when(Condition.where("B", "dark"), "dark").otherwise("pale"))
                .trait(
                        "eye",
                        eye -> eye.when(Condition.where("C", "albino"), "pink").otherwise("brown"))
                .trait(
                        "tail",
                        tail -> tail.when(Condition.where("T", "short"), "short")
                                .otherwise("long"))
                .mask(Mask.of("albino", Condition.where("C", "albino")).covering("hue", "none"));
        more.accept(builder);
        return builder.build();
    }

    private static CautionSet cautions() {
        Map<String, Caution> cautions = new LinkedHashMap<>();
        add(
                cautions,
                "short tail",
                new Trigger.OnLook(Condition.where("tail", "short"), Set.of(Role.PARENT, Role.OFFSPRING)),
                true);
        add(cautions, "close mating", new Trigger.OnRelation(Set.of(Relation.PARENT_OFFSPRING)), true);
        add(cautions, "unknown relation", new Trigger.OnRelation(Set.of(Relation.UNKNOWN)), false);
        add(cautions, "plans", new Trigger.OnQuestion(Set.of("plan")), false);
        add(cautions, "matings", new Trigger.OnQuestion(Set.of("mating")), false);
        add(cautions, "sales", new Trigger.OnQuestion(Set.of("sale")), false);
        return new CautionSet("invented.cautions", "1.0.0", Optional.empty(), Optional.empty(), cautions);
    }

    private static void add(Map<String, Caution> cautions, String id, Trigger trigger, boolean excludes) {
        cautions.put(
                id, new Caution(id, trigger, "A line about " + id + ".", List.of(), List.of(), "2026-11", excludes));
    }

    private static Animal animal(String genotype) {
        return Animal.unknown(COMPILED).withGenotype(genotype, OmittedLoci.WILD_TYPE);
    }

    private static Animal male(String genotype) {
        return animal(genotype).ofSex(Sex.MALE);
    }

    private static HiddenAllele allele(String name) {
        return HiddenAllele.find(COMPILED.model(), name);
    }

    private static TestMatingQuestion carrier(Animal animal, String allele) {
        return TestMatingQuestion.of(animal).carrying(List.of(allele(allele)));
    }

    private static String numbers(TestResult.Course course) {
        return String.join(
                " ",
                course.needed().stream()
                        .map(needed -> needed.toShow().orElseThrow() instanceof Detection.Reached reached
                                ? Integer.toString(reached.steps())
                                : "never")
                        .toList());
    }

    @Test
    void without_mates_the_recessive_and_the_carrier_are_suggested() {
        Answer answer = ANSWERS.testMatings(carrier(male("C/-"), "c"));
        assertEquals(Status.EXACT, answer.status());
        assertEquals(
                "If the animal carried c, 5 young by a mate with two doses of c would show it with at least 95 %:"
                        + " one that shows eye pink proves it.",
                answer.verdict());
        assertEquals(
                List.of("a mate with two doses of c", "a mate with C and c"),
                answer.tests().stream().map(test -> test.mate().name()).toList());
        assertEquals("5 7", numbers(answer.tests().get(0).courses().get(0)));
        assertEquals("11 17", numbers(answer.tests().get(1).courses().get(0)));
        assertEquals(Set.of(Phenotype.of("eye", "pink")), answer.tests().get(0).signs());
        assertEquals(
                List.of("close mating", "sales", "short tail"),
                cautions().cautions().keySet().stream()
                        .filter(name -> answer.cautions().stream()
                                .noneMatch(caution -> caution.id().equals(name)))
                        .sorted()
                        .toList(),
                "cautions of plans and matings, and of unknown relation, go with a test mating");
        assertEquals(2, answer.because().stream().filter(Miss.class::isInstance).count());
        assertEquals(
                Set.of("/loci/C/", "/traits/"),
                Set.copyOf(answer.evidence().statements().stream()
                        .map(statement -> statement.pointer().startsWith("/loci/C/") ? "/loci/C/" : "/traits/")
                        .toList()),
                "rests on nothing but what decides the sign: "
                        + answer.evidence().statements());
    }

    @Test
    void records_and_a_dna_test_come_before_any_kit() {
        List<String> notices = ANSWERS.testMatings(carrier(male("C/-"), "c")).notices();
        assertTrue(notices.get(0).contains("a DNA test of the animal itself"), notices.toString());
        assertTrue(notices.get(1).contains("The albino gene is known."), notices.toString());
        List<String> pale = ANSWERS.testMatings(carrier(male("B/-"), "b")).notices();
        assertTrue(pale.get(0).contains("a DNA test of the animal itself"), pale.toString());
        assertFalse(pale.toString().contains("on record"), pale.toString());
    }

    /** Where it is not known whether an albino has one dose or two, the answer depends on how common they are. */
    @Test
    void what_a_mask_hides_is_shown_by_a_mate_without_the_mask_and_weighed() {
        CompiledModel weighed = CompiledModel.of(model(builder -> builder.population(
                "even",
                population -> population
                        .frequency("B", "B", Probability.of(1, 2))
                        .frequency("B", "b", Probability.of(1, 2)))));
        Answers answers = Answers.of(weighed, List.of(cautions()));
        Animal albino = Animal.unknown(weighed).ofSex(Sex.FEMALE).withGenotype("c/c B/- T/T L/L", OmittedLoci.UNKNOWN);
        Animal hidden = Animal.unknown(weighed).ofSex(Sex.FEMALE).withGenotype("c/c T/T L/L", OmittedLoci.UNKNOWN);
        Answer answer = answers.testMatings(
                TestMatingQuestion.of(hidden).carrying(List.of(HiddenAllele.find(weighed.model(), "B"))));
        TestResult best = answer.tests().get(0);
        assertEquals("a mate with two doses of b", best.mate().name());
        assertEquals(Set.of(Phenotype.of("hue", "dark")), best.signs());
        assertEquals("5 7", numbers(best.courses().get(0)), "enough even if it has one dose");
        assertTrue(best.courses().get(0).bound());
        assertEquals(Optional.of("even"), best.courses().get(1).population().map(population -> population.id()));
        assertEquals("4 7", numbers(best.courses().get(1)), "2/3 of carriers have one dose: least n with 2/3 (1/2)^n");
        assertTrue(
                answer.assumptions().stream().anyMatch(made -> made.id().equals("population-even")),
                answer.assumptions().toString());
        Answer settled = answers.testMatings(
                TestMatingQuestion.of(albino).carrying(List.of(HiddenAllele.find(weighed.model(), "B"))));
        assertEquals("By what is stated the animal carries B: no test is needed.", settled.verdict());
    }

    @Test
    void without_frequencies_a_sign_is_named_and_the_number_left_open() {
        Animal hidden = Animal.unknown(COMPILED).ofSex(Sex.FEMALE).withGenotype("c/c T/T L/L", OmittedLoci.UNKNOWN);
        assertEquals(
                "5 7",
                numbers(ANSWERS.testMatings(carrier(hidden, "B"))
                        .tests()
                        .get(0)
                        .courses()
                        .get(0)));
        Animal dark = Animal.unknown(COMPILED).ofSex(Sex.FEMALE).withGenotype("B/- T/T L/L", OmittedLoci.UNKNOWN);
        Answer answer =
                ANSWERS.testMatings(carrier(dark, "b").by(List.of(TestMate.of("an albino", animal("c/c b/b")))));
        assertEquals(Status.UNDECIDED, answer.status(), "of an albino with one all young may be albino");
        assertTrue(answer.verdict().endsWith("how many young it takes cannot be said without frequencies."));
        assertEquals(Set.of(Phenotype.of("hue", "pale")), answer.tests().get(0).signs());
        assertTrue(answer.tests().get(0).lacksFrequencies());
    }

    @Test
    void young_that_may_be_harmed_leave_a_mating_out_until_it_is_asked_for_by_name() {
        TestMatingQuestion question = carrier(male("T/-"), "t");
        Answer answer = ANSWERS.testMatings(question);
        assertEquals(
                "No mating is proposed to show whether the animal carries t: every one is left out, for the reasons given.",
                answer.verdict());
        for (TestResult test : answer.tests()) {
            assertEquals("short tail", test.exclusions().get(0).name());
            assertEquals(List.of(), test.courses());
        }
        assertEquals("the mate", answer.tests().get(0).exclusions().get(0).about());
        assertEquals("the young", answer.tests().get(1).exclusions().get(0).about());
        Answer asked = ANSWERS.testMatings(question.inSpiteOf(Set.of("short tail")));
        assertEquals("5 7", numbers(asked.tests().get(0).courses().get(0)));
        assertTrue(
                asked.cautions().stream().anyMatch(caution -> caution.id().equals("short tail")),
                "it is said all the same");
        assertTrue(
                asked.given().contains("asked for in spite of \"short tail\""),
                asked.given().toString());
    }

    @Test
    void what_is_merely_not_known_raises_a_caution_but_leaves_nothing_out() {
        Animal seen = Animal.unknown(COMPILED)
                .ofSex(Sex.MALE)
                .withGenotype("L/L", OmittedLoci.UNKNOWN)
                .withLooks(Phenotype.of("eye", "brown"));
        Answer answer = ANSWERS.testMatings(carrier(seen, "c"));
        assertEquals(List.of(), answer.tests().get(0).exclusions());
        assertTrue(answer.cautions().stream().anyMatch(caution -> caution.id().equals("short tail")));
        Animal shortTailed = seen.withLooks(Phenotype.of("tail", "short"));
        assertEquals(
                "the animal",
                ANSWERS.testMatings(carrier(shortTailed, "c"))
                        .tests()
                        .get(0)
                        .exclusions()
                        .get(0)
                        .about());
    }

    @Test
    void own_daughters_are_left_out_and_one_of_them_never_tells_enough() {
        TestMate daughters = TestMate.ownYoung("own daughters", animal("C/C"));
        TestMatingQuestion question = carrier(male("C/-"), "c").by(List.of(daughters));
        assertEquals(
                List.of(new TestResult.Exclusion("close mating", "A line about close mating.", "the relation")),
                ANSWERS.testMatings(question).tests().get(0).exclusions());
        Answer answer = ANSWERS.testMatings(question.inSpiteOf(Set.of("close mating")));
        List<TestResult.Course> courses = answer.tests().get(0).courses();
        assertEquals("never never", numbers(courses.get(0)));
        assertEquals(Probability.of(1, 2), courses.get(0).detection().limit());
        assertEquals(TestResult.Step.MATES, courses.get(1).step());
        assertEquals("23 35", numbers(courses.get(1)));
        assertTrue(answer.verdict().startsWith("No number of young by the mates in question"), answer.verdict());
    }

    @Test
    void young_that_are_lost_leave_a_mating_out() {
        TestMate carrier = TestMate.of("a mate", animal("c/c L/l"));
        TestMatingQuestion question = carrier(male("C/- L/l"), "c").by(List.of(carrier));
        assertEquals(
                List.of(TestResult.LOST_YOUNG),
                ANSWERS.testMatings(question).tests().get(0).exclusions().stream()
                        .map(TestResult.Exclusion::name)
                        .toList());
        Answer answer = ANSWERS.testMatings(question.inSpiteOf(Set.of(TestResult.LOST_YOUNG)));
        assertEquals("5 7", numbers(answer.tests().get(0).courses().get(0)));
    }

    /** Calculated: from 2/3 before, 6 kits by the recessive and 13 by a carrier leave less than 5 %. */
    @Test
    void power_and_belief_are_both_told_where_the_chance_before_is_known() {
        Answer answer = ANSWERS.testMatings(carrier(male("C/-"), "c")
                .likely(Probability.of(2, 3))
                .withConfidence(List.of(Probability.of(19, 20)))
                .inLittersOf(LitterSize.of(8)));
        List<String> found = answer.tests().stream()
                .flatMap(test -> test.courses().stream())
                .map(course -> course.step().words() + " " + numbers(course) + " "
                        + ((Detection.Reached)
                                        course.needed().get(0).toBelieve().orElseThrow())
                                .steps())
                .toList();
        assertEquals(
                List.of(
                        "young of one mate 5 6",
                        "litters of one mate 1 1",
                        "young of one mate 11 13",
                        "litters of one mate 2 2"),
                found);
    }

    @Test
    void all_that_an_animal_hides_is_asked_for_unless_an_allele_is_named() {
        Answer answer = ANSWERS.testMatings(TestMatingQuestion.of(male("C/- B/- T/-")));
        assertEquals(
                Set.of("C: c", "B: b", "T: t"),
                Set.copyOf(answer.tests().stream()
                        .map(test -> test.allele().toString())
                        .toList()));
        assertTrue(answer.verdict().contains("c by 5 young; b by 5 young"), answer.verdict());
        assertEquals(
                "By what is stated the animal hides nothing that the traits asked about could show; there is nothing to test.",
                ANSWERS.testMatings(TestMatingQuestion.of(male("C/C"))).verdict());
    }

    @Test
    void what_needs_no_test_is_said_so() {
        assertEquals(
                "By what is stated the animal cannot carry c: no test is needed.",
                ANSWERS.testMatings(carrier(male("C/C"), "c")).verdict());
        Answer blind =
                ANSWERS.testMatings(carrier(male("C/-"), "c").by(List.of(TestMate.of("the mate", animal("C/C")))));
        assertTrue(blind.verdict().startsWith("Nothing that the young of the mates in question"), blind.verdict());
        assertTrue(blind.tests().get(0).tellsNothing());
    }

    @Test
    void what_contradicts_itself_is_undecided() {
        Animal torn = male("C/C").withLooks(Phenotype.of("eye", "pink"));
        Answer answer = ANSWERS.testMatings(carrier(torn, "c"));
        assertEquals(Status.UNDECIDED, answer.status());
        assertTrue(answer.verdict().startsWith("What is stated of the animal contradicts itself"), answer.verdict());
        Animal mate = animal("C/C").withLooks(Phenotype.of("eye", "pink"));
        Answer torn2 = ANSWERS.testMatings(carrier(male("C/-"), "c").by(List.of(TestMate.of("the mate", mate))));
        assertTrue(torn2.notices().toString().contains("what is stated of the mate contradicts itself"));
    }

    @Test
    void mistakes_are_named() {
        assertEquals("sex-needed", problem(carrier(animal("C/-"), "c")).code());
        Animal female = animal("c/c").ofSex(Sex.FEMALE);
        Animal male = male("c/c");
        assertEquals(
                "wrong-sex",
                problem(carrier(male("C/-"), "c").by(List.of(TestMate.of("m", male))))
                        .code());
        assertEquals(
                "wrong-sex",
                problem(carrier(male("C/-"), "c").by(List.of(TestMate.youngOf("m", female, male))))
                        .code());
        Problem unknown = problem(carrier(male("C/-"), "c").inSpiteOf(Set.of("close matings")));
        assertEquals("unknown-exclusion", unknown.code());
        assertTrue(unknown.toString().contains("did you mean \"close mating\"?"), unknown.toString());
        assertEquals(
                "unknown-trait",
                problem(carrier(male("C/-"), "c").inTraits(Set.of("eyes"))).code());
        assertThrows(
                IllegalArgumentException.class,
                () -> carrier(male("C/-"), "c").withConfidence(List.of(Probability.ONE)));
        assertThrows(
                IllegalArgumentException.class,
                () -> new TestMate("m", TestMate.Kind.YOUNG_OF_TWO, List.of(male), List.of(), false, Relation.UNKNOWN));
    }

    private static Problem problem(TestMatingQuestion question) {
        return assertThrows(ProblemsException.class, () -> ANSWERS.testMatings(question))
                .problems()
                .get(0);
    }

    @Test
    void alleles_go_by_any_of_their_names_and_by_their_locus_where_one_is_not_enough() {
        Model model = Model.builder("invented.names", "1.0.0", TRAITS)
                .locus(
                        "P",
                        locus -> locus.alleles("N", "p")
                                .symbol("p")
                                .dominant("N", "p")
                                .shows("N", "x")
                                .shows("p", "y"))
                .locus(
                        "Q",
                        locus -> locus.alleles("N", "q")
                                .dominant("N", "q")
                                .shows("N", "x")
                                .shows("q", "y"))
                .notModelled("hue", "Invented.")
                .notModelled("eye", "Invented.")
                .notModelled("tail", "Invented.")
                .build();
        assertEquals("Q: q", HiddenAllele.find(model, " q ").toString());
        assertEquals("Q", HiddenAllele.find(model, "Q: N").locus());
        ProblemsException both = assertThrows(ProblemsException.class, () -> HiddenAllele.find(model, "N"));
        assertEquals("several-alleles", both.problems().get(0).code());
        ProblemsException none = assertThrows(ProblemsException.class, () -> HiddenAllele.find(model, "r"));
        assertEquals("unknown-allele", none.problems().get(0).code());
    }
}
