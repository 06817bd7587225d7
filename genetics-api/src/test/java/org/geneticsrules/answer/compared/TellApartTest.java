package org.geneticsrules.answer.compared;

import static org.geneticsrules.testing.Coats.DARK;
import static org.geneticsrules.testing.Coats.LIGHT;
import static org.geneticsrules.testing.Coats.seen;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

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
import java.util.concurrent.CancellationException;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.compared.TellApartAnswer.LeftOut;
import org.geneticsrules.answer.compared.TellApartAnswer.Tried;
import org.geneticsrules.answer.recorded.Progress;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.caution.CautionSet;
import org.geneticsrules.caution.Relation;
import org.geneticsrules.caution.Role;
import org.geneticsrules.caution.Trigger;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.document.Canonical;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.TellApartDocument;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.Fertility;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Hearing;
import org.geneticsrules.pedigree.HearingTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.planning.Effort;
import org.geneticsrules.planning.ExpectedRatio;
import org.geneticsrules.planning.ToldApart;
import org.geneticsrules.planning.Worth;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.render.TellApartText;
import org.geneticsrules.testing.Coats;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What to do next to tell models apart, in sentences. */
@Tag("default-jdk")
class TellApartTest {

    private static final double EXACT = 1e-9;

    static TellApartAnswer ask(
            TellApartQuestion question, Pedigree pedigree, List<CautionSet> cautions, Model... models) {
        Answers answers = Answers.of(CompiledModel.of(models[0]), cautions);
        return LitterAnswers.of(RecordedAnswers.of(answers, pedigree))
                .tellApart(
                        question,
                        List.of(models).stream().skip(1).map(Candidate::of).toList(),
                        Progress.NONE);
    }

    static TellApartAnswer ask(TellApartQuestion question, Pedigree pedigree, Model... models) {
        return ask(question, pedigree, List.of(), models);
    }

    static Pedigree carriers() {
        return Coats.carriers(Pedigree.builder("pair", "1"), "").build();
    }

    private static ExpectedRatio ratio(ApartStep step, int truth, int rival) {
        return step.worth().ratio(truth, rival).orElseThrow();
    }

    private static List<Effort> efforts(TellApartAnswer answer) {
        return answer.steps().stream().map(one -> one.worth().step().effort()).toList();
    }

    /**
     * One kit of two carriers is dark with 3/4, or, where two doses kill, with 2/3. The mean of the logarithm of the ratio is 3/4 ln 9/8 +
     * 1/4 ln 3/4 = 0.016417 if the first is true, and 2/3 ln 8/9 + 1/3 ln 4/3 = 0.017372 if the other is (Kullback and Leibler 1951, Annals of
     * Mathematical Statistics 22:79, the formula from memory). Of eight kits it is eight times that.
     */
    @Test
    void three_to_one_or_two_to_one() {
        TellApartQuestion one = TellApartQuestion.usual().planned("sire", "dam").inLittersOf(1);
        TellApartAnswer answer = ask(one, carriers(), Coats.recessive(), Coats.lethal());
        ApartStep kits = answer.steps().stream()
                .filter(step -> step.worth().step().effort() == Effort.PLANNED_MATING)
                .findFirst()
                .orElseThrow();
        assertEquals(0.016417, ratio(kits, 0, 1).expected(), 1e-6);
        assertEquals(0.017372, ratio(kits, 1, 0).expected(), 1e-6);
        assertEquals(
                3.0 / 4 * Math.log(9.0 / 8) + 0.25 * Math.log(0.75),
                ratio(kits, 0, 1).expected(),
                EXACT);
        assertTrue(
                kits.says().contains("coat: dark in 3 of 4 kits by model 1, 2 of 3 kits by model 2"), kits::toString);
        assertEquals(
                "if model 1 is true: it speaks against model 2, on average 1.02 : 1",
                kits.says().get(2));
        assertEquals(
                "until model 1 is ahead of model 2 by 20 : 1, if it is true: " + fewest(0.8) + " kits with 80 %, "
                        + fewest(0.95) + " kits with 95 %",
                kits.says().get(3).replaceAll(";.*", ""));
        TellApartAnswer eight = ask(one.inLittersOf(8), carriers(), Coats.recessive(), Coats.lethal());
        assertEquals(8 * 0.016417, ratio(eight.steps().get(0), 0, 1).expected(), 8e-6);
        assertEquals(8, eight.steps().get(0).worth().kitsBorn());
        assertTrue(eight.verdict().contains("By itself that is not expected to be evidence"), eight.verdict());
        assertTrue(eight.decided());
        // a model that is no more than held against the other loses young
        assertTrue(
                eight.notices().toString().contains("by \"lethal\" young that are two doses"),
                eight.notices()::toString);
    }

    /**
     * The smallest number n of kits of which dark ones are so many, with a stated chance, that (9/8)^dark (3/4)^light is at least 20, where 3/4
     * are dark: the binomial sum, term by term.
     */
    private static int fewest(double sure) {
        for (int n = 1; n <= 1000; n++) {
            double log = n * Math.log(0.25); // of no dark kit
            double sum = 0;
            for (int dark = 0; dark <= n; dark++) {
                boolean enough = dark * Math.log(9.0 / 8) + (n - dark) * Math.log(3.0 / 4) >= Math.log(20) - 1e-9;
                sum += enough ? Math.exp(log) : 0;
                log += Math.log(n - dark) - Math.log(dark + 1) + Math.log(3);
            }
            if (sum >= sure) {
                return n;
            }
        }
        throw new AssertionError("more than 1000 kits");
    }

    /** The dark kits of one litter are alike, and are told as one. A look at the kit that nobody looked at comes first. */
    @Test
    void looks_come_before_tests_and_tests_before_matings() {
        PedigreeBuilder builder = Coats.carriers(Pedigree.builder("kennel", "1"), "")
                .add(seen("a", DARK))
                .add(seen("b", DARK))
                .add(Individual.of("c"))
                .add(Litter.of("litter", "dam", "sire", "a", "b", "c").with(Ascertainment.complete()));
        TellApartAnswer answer = ask(
                TellApartQuestion.usual().planned("sire", "dam").withNewMatings(),
                builder.build(),
                Coats.recessive(),
                Coats.lethal());
        assertEquals(Effort.RECORD, efforts(answer).get(0));
        assertEquals("look at coat in \"c\"", answer.steps().get(0).words());
        assertEquals(efforts(answer).stream().sorted().toList(), efforts(answer));
        ApartStep test = answer.steps().stream()
                .filter(step -> step.worth().step().effort() == Effort.DNA_TEST)
                .filter(step -> step.worth().animals().contains("a"))
                .findFirst()
                .orElseThrow();
        assertEquals(List.of("b"), test.alike());
        // a dark kit is D/D with 1/3, or, where these die, never
        assertEquals(1.0 / 3, ratio(test, 0, 1).excluding(), EXACT);
        assertTrue(answer.verdict().startsWith("First look at coat in \"c\": nobody is bred for it"), answer.verdict());
        assertTrue(
                answer.assumptions().stream().anyMatch(one -> one.id().equals("test-error")),
                answer.assumptions()::toString);
    }

    /** Of what nobody was asked for, no mating is worked out. */
    @Test
    void matings_are_worked_out_only_if_they_are_asked_about() {
        TellApartAnswer answer = ask(TellApartQuestion.usual(), carriers(), Coats.recessive(), Coats.lethal());
        assertTrue(answer.tried().stream().noneMatch(one -> one.effort().breeds()));
        assertTrue(answer.notices().toString().contains("matings were not asked about"), answer.notices()::toString);
        TellApartAnswer made =
                ask(TellApartQuestion.usual().withNewMatings(), carriers(), Coats.recessive(), Coats.lethal());
        assertEquals(Effort.NEW_MATING, efforts(made).get(efforts(made).size() - 1));
        assertTrue(made.verdict().contains("that is no advice to make it"), made.verdict());
    }

    static CautionSet closeMating() {
        Caution caution = new Caution(
                "close mating",
                new Trigger.OnRelation(Set.of(Relation.SIBLINGS, Relation.PARENT_OFFSPRING)),
                "Close relatives.",
                List.of(),
                List.of(),
                "2026-11",
                true);
        return new CautionSet("invented", "1", Optional.empty(), Optional.empty(), Map.of("close mating", caution));
    }

    /** A sire, his daughter, a neuter, and a deaf jill. */
    private static Pedigree kennel() {
        return Coats.carriers(Pedigree.builder("kennel", "1"), "")
                .add(Individual.of("daughter", Sex.FEMALE))
                .add(Litter.of("litter", "dam", "sire", "daughter").with(Ascertainment.complete()))
                .add(Individual.of("neuter", Sex.MALE).with(Fertility.NEUTERED))
                .add(Individual.of("deaf", Sex.FEMALE)
                        .with(new HearingTest(Optional.empty(), Hearing.DEAF, Hearing.HEARS)))
                .build();
    }

    /** What is excluded, cannot be or should not be made is left out with the reason; asked for by the name of the caution, it is there. */
    @Test
    void what_speaks_against_a_mating_leaves_it_out() {
        TellApartQuestion question = TellApartQuestion.usual()
                .planned("sire", "daughter")
                .planned("neuter", "dam")
                .withNewMatings();
        TellApartAnswer answer = ask(question, kennel(), List.of(closeMating()), Coats.recessive(), Coats.lethal());
        assertEquals(
                List.of(
                        new LeftOut(
                                "planned mating of \"sire\" and \"daughter\"",
                                "Close relatives.",
                                Optional.of("close mating")),
                        new LeftOut(
                                "planned mating of \"neuter\" and \"dam\"",
                                "\"neuter\" is recorded as neutered",
                                Optional.empty())),
                answer.leftOut().subList(0, 2));
        assertTrue(
                answer.leftOut().stream()
                        .anyMatch(one -> one.step().equals("new mating of \"sire\" and \"deaf\"")
                                && one.reason().contains("deafness may be passed on")),
                answer.leftOut()::toString);
        assertFalse(efforts(answer).contains(Effort.PLANNED_MATING));
        assertEquals(
                List.of("sire", "dam"),
                List.copyOf(
                        answer.steps().get(answer.steps().size() - 1).worth().animals()));
        assertEquals(
                List.of("close mating"),
                answer.cautions().stream().map(Caution::id).toList());
        TellApartAnswer all = ask(
                question.inSpiteOf(List.of("close mating")),
                kennel(),
                List.of(closeMating()),
                Coats.recessive(),
                Coats.lethal());
        ApartStep close = all.steps().stream()
                .filter(one -> one.worth().step().effort() == Effort.PLANNED_MATING)
                .findFirst()
                .orElseThrow();
        assertEquals(Optional.of(Probability.of(1, 4)), close.worth().inbreeding());
        assertEquals(Relation.PARENT_OFFSPRING, close.concerns().orElseThrow().relation());
        assertEquals(
                List.of("close mating"),
                all.cautions().stream().map(Caution::id).toList());
        ProblemsException unknown = assertThrows(
                ProblemsException.class,
                () -> ask(
                        question.inSpiteOf(List.of("close matting")),
                        kennel(),
                        List.of(closeMating()),
                        Coats.recessive(),
                        Coats.lethal()));
        assertEquals("unknown-exclusion", unknown.problems().get(0).code());
    }

    /** D over l over w: dark, light, white. Whether w is seen makes the models differ. */
    private static Model series(String id, boolean white) {
        return Model.builder(
                        id,
                        "1",
                        Catalogue.builder("series", "1")
                                .trait("coat", "dark", "light", "white")
                                .build())
                .locus(
                        "A",
                        at -> at.alleles("D", "l", "w")
                                .dominant("D", "l")
                                .dominant("l", "w")
                                .shows("D", "full")
                                .shows("l", "less")
                                .shows("w", white ? "least" : "less"))
                .trait("coat", rule -> {
                    rule.when(Condition.where("A", "less"), "light").otherwise("dark");
                    if (white) {
                        rule.when(Condition.where("A", "least"), "white");
                    }
                })
                .population(
                        "even",
                        one -> one.frequency("A", "D", Probability.of(1, 3))
                                .frequency("A", "l", Probability.of(1, 3))
                                .frequency("A", "w", Probability.of(1, 3)))
                .build();
    }

    private static Pedigree lights(String reported) {
        PedigreeBuilder builder = Pedigree.builder("lights", "1");
        for (Sex sex : Sex.values()) {
            Individual one = seen(sex == Sex.MALE ? "sire" : "dam", LIGHT).with(sex);
            builder.add(
                    reported.isEmpty()
                            ? one
                            : one.with(new GenotypeTest(Optional.empty(), "A", Set.of(reported), Probability.ZERO)));
        }
        return builder.build();
    }

    /** Two light animals may hide white: that is said, and excludes nothing. That both carry it by a test does exclude. */
    @Test
    void what_is_merely_not_known_excludes_no_mating() {
        Caution caution = new Caution(
                "white",
                new Trigger.OnLook(Condition.where("coat", "white"), Set.of(Role.OFFSPRING)),
                "White kits may be deaf.",
                List.of(),
                List.of(),
                "2026-11",
                true);
        List<CautionSet> cautions =
                List.of(new CautionSet("invented", "1", Optional.empty(), Optional.empty(), Map.of("white", caution)));
        TellApartQuestion question = TellApartQuestion.usual().planned("sire", "dam");
        Model[] models = {series("three", true), series("two", false)};
        TellApartAnswer open = ask(question, lights(""), cautions, models);
        assertEquals(List.of(), open.leftOut());
        assertTrue(efforts(open).contains(Effort.PLANNED_MATING));
        assertEquals(List.of(caution), open.cautions());
        TellApartAnswer known = ask(question, lights("l/w"), cautions, models);
        assertEquals(Optional.of("white"), known.leftOut().get(0).caution());
        assertEquals(List.of(caution), known.cautions());
    }

    /** Where the model in use says that young are lost, a mating of carriers is not proposed. */
    @Test
    void lost_young_leave_a_mating_out() {
        TellApartAnswer answer =
                ask(TellApartQuestion.usual().planned("sire", "dam"), carriers(), Coats.lethal(), Coats.recessive());
        assertEquals(Optional.of("lost young"), answer.leftOut().get(0).caution());
        assertTrue(answer.steps().isEmpty());
        assertFalse(answer.decided());
        assertTrue(
                answer.verdict().startsWith("Nothing that was tried tells \"lethal\" and \"recessive\" apart"),
                answer.verdict());
    }

    /** Two models that differ in a frequency alone foretell the same of every mating, and no step is tried. */
    @Test
    void what_cannot_be_told_apart_is_the_verdict() {
        TellApartAnswer answer = ask(
                TellApartQuestion.usual().planned("sire", "dam"),
                carriers(),
                Coats.recessive(),
                Coats.recessive("rarer", Probability.of(1, 3)));
        assertEquals(
                "No look at any animal, and no mating, tells \"recessive\" and \"rarer\" apart by these traits: they foretell the"
                        + " same of every genotype and of every mating, which is proved.",
                answer.verdict());
        assertTrue(answer.decided());
        assertEquals(ToldApart.Verdict.NEVER, answer.apart().get(0).verdict());
        assertTrue(answer.tried().isEmpty());
        TellApartAnswer three = ask(
                TellApartQuestion.usual().planned("sire", "dam"),
                carriers(),
                Coats.recessive(),
                Coats.recessive("rarer", Probability.of(1, 3)),
                Coats.lethal());
        assertTrue(
                three.verdict()
                        .endsWith(
                                " \"recessive\" and \"rarer\" cannot be told apart by these looks at all, which is proved."),
                three.verdict());
    }

    /** Two dark parents with a light kit exclude that light is dominant; of three models two are left, and the bar stays that of three. */
    @Test
    void models_that_the_records_exclude_are_left_out() {
        Pedigree pedigree = Coats.litter(
                        Pedigree.builder("pair", "1").add(seen("sire", DARK)).add(seen("dam", DARK)),
                        "litter",
                        "",
                        1,
                        1,
                        Ascertainment.complete())
                .build();
        TellApartAnswer settled = ask(TellApartQuestion.usual(), pedigree, Coats.recessive(), Coats.dominant());
        assertEquals(
                "The records exclude \"dominant\" already. Nothing more is needed to tell \"recessive\" from it, if the records"
                        + " are right: look again at those it hangs on.",
                settled.verdict());
        assertTrue(settled.decided());
        TellApartAnswer left = ask(
                TellApartQuestion.usual().planned("sire", "dam"),
                pedigree,
                Coats.dominant(),
                Coats.recessive(),
                Coats.lethal());
        assertEquals(2, left.models().size());
        assertEquals("dominant", left.excluded().get(0).title());
        assertEquals(40, left.bar(), EXACT);
        assertFalse(left.steps().isEmpty());
    }

    /** A lone light animal excludes a model by which all are dark, though it is in no litter. */
    @Test
    void a_single_record_may_settle_it() {
        Model dark = Model.builder("all dark", "1", Coats.TRAITS)
                .locus(
                        "A",
                        at -> at.alleles("D", "d")
                                .dominant("D", "d")
                                .shows("D", "dark")
                                .shows("d", "light"))
                .trait("coat", rule -> rule.otherwise("dark"))
                .population(
                        "even",
                        one -> one.frequency("A", "D", Probability.of(1, 2)).frequency("A", "d", Probability.of(1, 2)))
                .build();
        Pedigree pedigree = Coats.carriers(Pedigree.builder("pair", "1"), "")
                .add(seen("Pip", LIGHT))
                .build();
        TellApartAnswer answer = ask(TellApartQuestion.usual(), pedigree, Coats.recessive(), dark);
        assertTrue(answer.verdict().contains("exclude"), answer.verdict());
        assertTrue(answer.verdict().contains("all dark"), answer.verdict());
        assertTrue(answer.decided());
    }

    /** Nothing is recorded of anybody: what is believed before counts. */
    @Test
    void records_may_be_bare() {
        Pedigree bare = Pedigree.builder("bare", "1")
                .add(Individual.of("sire", Sex.MALE))
                .add(Individual.of("dam", Sex.FEMALE))
                .build();
        TellApartAnswer answer =
                ask(TellApartQuestion.usual().planned("sire", "dam"), bare, Coats.recessive(), Coats.dominant());
        assertEquals(0.5, answer.models().get(0).belief(), EXACT);
        // light with 1/4 if recessive, with 3/4 if dominant
        ExpectedRatio look = ratio(answer.steps().get(0), 0, 1);
        assertEquals(0.5 * Math.log(3), look.expected(), EXACT);
        assertTrue(
                answer.assumptions().stream().anyMatch(one -> one.id().equals("population")),
                answer.assumptions()::toString);
    }

    /** Kits that lived and of whom nothing is written down are looked at before any mating. */
    @Test
    void kits_that_are_born_already_count_as_records() {
        Pedigree pedigree = Coats.carriers(Pedigree.builder("pair", "1"), "")
                .add(Litter.of("litter", "dam", "sire").counting(5, 4).with(Ascertainment.complete()))
                .build();
        ApartStep first = ask(TellApartQuestion.usual(), pedigree, Coats.recessive(), Coats.lethal())
                .steps()
                .get(0);
        assertEquals("look at coat in 4 kits of \"sire\" and \"dam\", born already", first.words());
        assertEquals(0, first.worth().kitsBorn());
        assertEquals(4 * 0.016417, ratio(first, 0, 1).expected(), 4e-6);
    }

    /** A mistaken test is tested again; what is known beyond doubt is not. */
    @Test
    void what_is_known_is_not_asked_again() {
        Individual unsure = Individual.of("Pip")
                .with(new GenotypeTest(Optional.empty(), "A", Set.of("D/d"), Probability.of(1, 20)));
        Pedigree pedigree = Coats.carriers(Pedigree.builder("pair", "1"), "")
                .add(unsure)
                .add(seen("Bo", DARK))
                .build();
        TellApartAnswer answer = ask(TellApartQuestion.usual(), pedigree, Coats.recessive(), Coats.lethal());
        Tried looks = answer.tried().get(0);
        Tried tests = answer.tried().get(1);
        assertEquals(3, looks.tried(), answer.tried()::toString); // sire, dam, Pip
        assertEquals(2, tests.tried(), answer.tried()::toString); // Pip, Bo
    }

    /** Of very many animals some are looked at, parents first, and how many were not is told. */
    @Test
    void what_was_not_tried_is_counted() {
        PedigreeBuilder many = Coats.carriers(Pedigree.builder("many", "1"), "");
        for (int k = 0; k < 250; k++) {
            many.add(Individual.of("animal " + k));
        }
        many.add(Litter.of("litter", "dam", "sire", "animal 249"));
        TellApartAnswer answer = ask(TellApartQuestion.usual(), many.build(), Coats.recessive(), Coats.dominant());
        assertEquals(
                List.of(new Tried(Effort.RECORD, 95, 0, 89, 157), new Tried(Effort.DNA_TEST, 60, 60, 0, 190)),
                answer.tried());
        assertEquals("look at coat in \"sire\"", answer.steps().get(0).words());
    }

    @Test
    void questions_that_cannot_be_asked_are_refused() {
        ProblemsException none = assertThrows(
                ProblemsException.class, () -> ask(TellApartQuestion.usual(), carriers(), Coats.recessive()));
        assertEquals("no-rival", none.problems().get(0).code());
        ProblemsException trait = assertThrows(
                ProblemsException.class,
                () -> ask(
                        TellApartQuestion.usual().inTraits(List.of("coats")),
                        carriers(),
                        Coats.recessive(),
                        Coats.lethal()));
        assertEquals("unknown-trait", trait.problems().get(0).code());
        assertThrows(
                IllegalArgumentException.class, () -> TellApartQuestion.usual().inLittersOf(0));
        assertThrows(
                IllegalArgumentException.class, () -> TellApartQuestion.usual().surely(List.of(Probability.ONE)));
        assertThrows(
                IllegalArgumentException.class,
                () -> ask(
                        TellApartQuestion.usual().planned("sire", "nobody"),
                        carriers(),
                        Coats.recessive(),
                        Coats.lethal()));
        assertThrows(
                ProblemsException.class,
                () -> ask(
                        TellApartQuestion.usual().at(LifeStage.unstated().in("spring")),
                        carriers(),
                        Coats.recessive(),
                        Coats.lethal()));
    }

    /** How far it has come is told, never less than before, and whoever is told may end it. */
    @Test
    void progress_is_told_and_may_end_it() {
        LitterAnswers asked = LitterAnswers.of(
                RecordedAnswers.of(Answers.of(CompiledModel.of(Coats.recessive()), List.of()), kennel()));
        List<Candidate> others = List.of(Candidate.of(Coats.lethal()));
        List<Long> seen = new ArrayList<>();
        List<Long> ends = new ArrayList<>();
        asked.tellApart(TellApartQuestion.usual(), others, (done, all) -> {
            seen.add(done);
            ends.add(all);
        });
        assertEquals(seen.stream().sorted().toList(), seen);
        assertEquals(1, ends.stream().distinct().count());
        assertEquals(ends.get(0), seen.get(seen.size() - 1));
        assertThrows(
                CancellationException.class,
                () -> asked.tellApart(TellApartQuestion.usual(), others, (done, all) -> {
                    throw new CancellationException("enough");
                }));
    }

    @Test
    void documents_and_texts_say_the_same() {
        String id = "urn:geneticsrules:schema:tell-apart-answer:0";
        Schema schema = SchemaRegistry.withDefaultDialect(
                        SpecificationVersion.DRAFT_2020_12,
                        builder -> builder.schemas(Map.of(id, TellApartDocument.schema())))
                .getSchema(SchemaLocation.of(id));
        TellApartQuestion question =
                TellApartQuestion.usual().planned("sire", "dam").withNewMatings();
        List<TellApartAnswer> answers = List.of(
                ask(
                        question.at(LifeStage.atWeek(8))
                                .inSpiteOf(List.of("close mating"))
                                .planned("sire", "daughter"),
                        kennel(),
                        List.of(closeMating()),
                        Coats.recessive(),
                        Coats.lethal()),
                ask(question, kennel(), List.of(closeMating()), Coats.recessive(), Coats.lethal(), Coats.twoLoci()),
                ask(question, Coats.ofCarriers(9, 3), Coats.recessive(), Coats.dominant()),
                ask(question, carriers(), Coats.lethal(), Coats.recessive()),
                ask(question, carriers(), Coats.recessive(), Coats.recessive("rarer", Probability.of(1, 3))));
        String first = Canonical.text(TellApartDocument.of(answers.get(0)));
        assertTrue(
                first.contains("\"inbreeding\":{\"decimal\":\"0.250000\",\"denominator\":\"4\",\"numerator\":\"1\"}"),
                first);
        assertTrue(first.contains("\"stage\":{\"weeks\":8}"), first);
        for (TellApartAnswer answer : answers) {
            String document = Documents.write(TellApartDocument.of(answer));
            assertEquals(List.of(), schema.validate(document, InputFormat.JSON));
            assertTrue(document.contains(answer.verdict().replace("\"", "\\\"")));
            assertFalse(document.contains("NaN") || document.contains("Infinity"), document);
            String text = TellApartText.of(answer);
            text.lines().forEach(line -> assertTrue(line.length() <= 100, line));
            String words = text.replaceAll("\\s+", " ");
            assertTrue(words.startsWith(answer.verdict()), text);
            answer.steps().forEach(step -> {
                assertTrue(words.contains("- " + step.words()), step.words());
                step.says().forEach(says -> assertTrue(words.contains(says), says));
            });
            answer.leftOut().forEach(left -> assertTrue(words.contains(left.step()), left.step()));
            answer.cautions().forEach(caution -> assertTrue(words.contains(caution.line()), caution.line()));
            assertTrue(words.contains("Nothing here says that a mating is advisable"), text);
        }
        assertTrue(answers.get(0).steps().stream().anyMatch(one -> one.worth().standing() == Worth.Standing.TELLS));
    }
}
