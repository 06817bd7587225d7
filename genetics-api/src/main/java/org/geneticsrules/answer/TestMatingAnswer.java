package org.geneticsrules.answer;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.explanation.Miss;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Population;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;

/** Puts one answer about test matings together. */
final class TestMatingAnswer {

    /** Of the mates that a model suggests for one allele, so many are told of. */
    private static final int MOST_SUGGESTED = 2;

    /** More alleles, mates and traits together than this are not gone through. */
    private static final int MOST_TRIED = 4_000;

    private final Answers answers;
    private final CompiledModel compiled;
    private final Model model;
    private final TestMatingQuestion question;
    private final Animal animal;
    private final Sex sex;
    private final MatePool pool;
    private final WatchedTraits watched;
    private final Exclusions exclusions;
    private final Draft draft = new Draft();
    private final TestVerdicts verdicts;

    TestMatingAnswer(Answers answers, TestMatingQuestion question) {
        this.answers = answers;
        this.compiled = answers.compiled();
        this.model = answers.model();
        this.question = question;
        this.sex = sex(question);
        this.animal = question.animal().as(sex);
        this.pool = new MatePool(compiled, sex.other());
        this.watched = new WatchedTraits(answers, question);
        this.exclusions = new Exclusions(answers, animal, sex, watched.stage(), pool, question.inSpiteOf());
        this.verdicts = new TestVerdicts(answers.young(), question.confidences().get(0));
    }

    private static Sex sex(TestMatingQuestion question) {
        Sex sex = question.animal()
                .sex()
                .orElseThrow(() -> new ProblemsException(
                        Problem.of(Stage.MEANING, "sex-needed", "", "the sex of the animal to be tested is not stated")
                                .expecting("female or male")));
        Problems problems = new Problems(Stage.MEANING);
        for (TestMate mate : question.mates()) {
            if (mate.kind() == TestMate.Kind.YOUNG_OF_TWO) {
                wrong(mate.animals().get(0), Sex.FEMALE, "the sire of " + mate.name(), problems);
                wrong(mate.animals().get(1), Sex.MALE, "the dam of " + mate.name(), problems);
            } else {
                String who = mate.kind() == TestMate.Kind.KNOWN ? mate.name() : "the other parent of " + mate.name();
                wrong(mate.animals().get(0), sex, who, problems);
            }
        }
        problems.throwIfAny();
        return sex;
    }

    private static void wrong(Animal animal, Sex no, String who, Problems problems) {
        if (animal.sex().filter(stated -> stated == no).isPresent()) {
            problems.add(
                    "wrong-sex",
                    "",
                    who + " is stated to be " + no.word(),
                    "a " + no.other().word());
        }
    }

    Answer answer() {
        draft.notices.addAll(animal.notices());
        String verdict = verdict();
        given();
        assumptions();
        draft.notices.addAll(watched.notices());
        draft.cautions.addAll(exclusions.cautions());
        String whether = question.alleles().isEmpty()
                ? "what this animal hides"
                : "whether this animal carries "
                        + String.join(
                                " or ",
                                question.alleles().stream()
                                        .map(HiddenAllele::words)
                                        .toList());
        return draft.answer(
                answers,
                new Question(
                        "test mating",
                        "Which test matings would show " + whether + ", and how many "
                                + answers.young().many() + " would that take?",
                        new ArrayList<>(watchedInResults()),
                        question.stage(),
                        Census.BORN,
                        Optional.empty(),
                        animal.sightings(),
                        answers.young()),
                verdict,
                this::opinion);
    }

    private Set<String> watchedInResults() {
        Set<String> traits = new LinkedHashSet<>(question.traits());
        draft.tests.forEach(test -> traits.addAll(test.traits()));
        return traits;
    }

    private RivalModel.Opinion opinion(Answers other) {
        Answer same = new TestMatingAnswer(other, question.under(other.compiled())).answer();
        return new RivalModel.Opinion(same.verdict(), true, same::cautions);
    }

    private String verdict() {
        if (animal.genotypes().isEmpty()) {
            draft.undecided();
            return "What is stated of the animal contradicts itself under this model: no "
                    + (animal.stated().isEmpty()
                            ? sex.word() + " has that genotype"
                            : "genotype has that look and those alleles")
                    + ". Re-examine the record, or the model.";
        }
        draft.statements.addAll(answers.behindLooks(animal, model.loci().keySet()));
        List<HiddenAllele> asked = question.alleles().isEmpty() ? hidden() : question.alleles();
        List<HiddenAllele> open = asked.stream().filter(this::isOpen).toList();
        if (open.isEmpty()) {
            return asked.isEmpty()
                    ? "By what is stated the animal hides nothing that the traits asked about could show; there is nothing to test."
                    : verdicts.settled(asked, this::isCarried);
        }
        asked.stream()
                .filter(allele -> !open.contains(allele))
                .forEach(allele -> draft.notices.add(verdicts.settled(List.of(allele), this::isCarried)));
        draft.notices.add("before " + answers.young().any()
                + " is bred for this: records already held, and a DNA test of the animal"
                + " itself where one is offered, may answer without a single one; ask a veterinarian");
        open.forEach(this::molecular);
        requireFew(open);
        Evaluation evaluation = new Evaluation(answers, question, sex, watched, draft.notices);
        for (HiddenAllele allele : open) {
            if (question.mates().isEmpty()) {
                suggest(allele, evaluation);
            } else {
                question.mates().forEach(mate -> draft.tests.add(result(allele, mate, evaluation)));
            }
        }
        for (int test = 0; test < draft.tests.size(); test++) {
            reasons(test, draft.tests.get(test));
        }
        if (draft.tests.stream().allMatch(TestResult::lacksFrequencies) && !draft.tests.isEmpty()) {
            draft.status = Status.UNDECIDED;
        }
        return verdicts.of(open, draft.tests);
    }

    /** The alleles that the animal may carry or not, at loci that bear on what can be watched. */
    private List<HiddenAllele> hidden() {
        List<HiddenAllele> found = new ArrayList<>();
        for (Locus locus : model.loci().values()) {
            if (!watched.of(locus.id()).isEmpty()) {
                locus.alleles().values().stream()
                        .map(allele -> new HiddenAllele(locus.id(), allele))
                        .filter(this::isOpen)
                        .forEach(found::add);
            }
        }
        return found;
    }

    private boolean isOpen(HiddenAllele allele) {
        return !with(allele).isEmpty() && !without(allele).isEmpty();
    }

    private boolean isCarried(HiddenAllele allele) {
        return without(allele).isEmpty();
    }

    private List<AllelePair> with(HiddenAllele allele) {
        return animal.genotypes().pairs(allele.locus()).stream()
                .filter(pair -> pair.has(allele.allele().id()))
                .toList();
    }

    private List<AllelePair> without(HiddenAllele allele) {
        return animal.genotypes().pairs(allele.locus()).stream()
                .filter(pair -> !pair.has(allele.allele().id()))
                .toList();
    }

    private void requireFew(List<HiddenAllele> open) {
        double tried = 0;
        for (HiddenAllele allele : open) {
            int mates = question.mates().isEmpty()
                    ? model.locus(allele.locus()).pairs(sex.other()).size()
                    : question.mates().size();
            tried += (double) mates * watched.of(allele.locus()).size();
        }
        if (tried > MOST_TRIED) {
            throw new TooLargeException(
                    "alleles, mates and traits together",
                    tried,
                    MOST_TRIED,
                    "name the allele that the animal is tested for, or the traits to look at.");
        }
    }

    private Animal carrier(HiddenAllele allele) {
        return animal.having(allele.locus(), with(allele), List.of());
    }

    private void suggest(HiddenAllele allele, Evaluation evaluation) {
        Animal clear = animal.having(allele.locus(), without(allele), List.of());
        List<TestResult> found = pool.suggested(allele.locus()).stream()
                .map(mate -> evaluation.of(allele, carrier(allele), clear, mate))
                .filter(result -> !result.signs().isEmpty())
                .sorted(Comparator.comparingInt(result -> result.fewest().orElse(Integer.MAX_VALUE)))
                .toList();
        Set<Optional<Integer>> told = new LinkedHashSet<>();
        for (TestResult result : found) {
            if (told.size() < MOST_SUGGESTED && told.add(result.fewest())) {
                draft.tests.add(checked(result));
            }
        }
        if (found.isEmpty()) {
            draft.notices.add("no mate that differs from the wild type in the locus of " + allele.words()
                    + " alone would show it; describe a mate to ask about others");
        }
    }

    private TestResult result(HiddenAllele allele, TestMate mate, Evaluation evaluation) {
        if (pool.genotypes(animal, mate).isEmpty()) {
            draft.notices.add("what is stated of " + mate.name() + " contradicts itself under this model");
        }
        Animal clear = animal.having(allele.locus(), without(allele), List.of());
        return checked(evaluation.of(allele, carrier(allele), clear, mate));
    }

    /** The result, or why there is none to be told. */
    private TestResult checked(TestResult result) {
        List<TestResult.Exclusion> found = exclusions.of(result.allele(), carrier(result.allele()), result.mate());
        return found.isEmpty()
                ? result
                : new TestResult(result.allele(), result.mate(), List.of(), Set.of(), List.of(), found);
    }

    /** Says where the change behind an allele is known, so that there may be a DNA test. */
    private void molecular(HiddenAllele allele) {
        String prefix = Pointer.of("loci", allele.locus());
        model.statements().values().stream()
                .filter(statement -> statement.pointer().startsWith(prefix + "/")
                        || statement.pointer().equals(prefix))
                .filter(statement -> statement.grade() == Grade.MOLECULAR)
                .flatMap(statement -> statement.evidence().stream())
                .findFirst()
                .ifPresent(support -> draft.notices.add("the cause behind " + allele.words()
                        + " or another allele of its locus is on record in the DNA (" + support.claim()
                        + "): a test of the animal itself may be had"));
    }

    private void reasons(int test, TestResult result) {
        for (TestResult.Course course : result.courses()) {
            draft.because.add(new Miss(
                    test,
                    course.step().words(),
                    course.population().map(Population::id),
                    course.detection().step()));
            course.population().ifPresent(draft.populations::add);
        }
        if (!result.signs().isEmpty()) {
            View view = watched.view(result.traits());
            GenotypeSet carrier = carrier(result.allele()).genotypes();
            GenotypeSet mate = pool.genotypes(animal, result.mate());
            draft.statements.addAll(Inherited.statements(
                    compiled, List.of(carrier, mate), pool.young(carrier, mate, compiled.lociRead(view)), view));
        }
    }

    private void given() {
        draft.given.addAll(animal.given().isEmpty() ? List.of("nothing stated") : animal.given());
        Set<TestMate> mates = new LinkedHashSet<>(question.mates());
        draft.tests.forEach(test -> mates.add(test.mate()));
        for (TestMate mate : mates) {
            List<String> facts = new ArrayList<>();
            mate.animals().forEach(parent -> facts.addAll(parent.given()));
            mate.seen().forEach(sighting -> facts.add("look " + sighting));
            String who = switch (mate.kind()) {
                case KNOWN -> "";
                case OWN_YOUNG -> "own young; other parent: ";
                case YOUNG_OF_TWO -> "young of two; sire and dam: ";
            };
            draft.given.add(mate.name() + ": " + who + (facts.isEmpty() ? "nothing stated" : String.join(", ", facts))
                    + (mate.sibs() ? "; sibs" : "") + "; relation to the animal: "
                    + mate.relation().word());
        }
        if (!question.stage().equals(LifeStage.unstated())) {
            draft.given.add("looked at: " + question.stage());
        }
        question.litter().ifPresent(size -> draft.given.add("litter: " + size.name()));
        question.before().ifPresent(chance -> draft.given.add("chance that it carries it, before: " + chance));
        question.inSpiteOf().forEach(name -> draft.given.add("asked for in spite of \"" + name + "\""));
    }

    private void assumptions() {
        Set<String> traits = watchedInResults();
        Assumptions made = draft.assumptions
                .model(model)
                .omitted("the animal", animal)
                .told(compiled, animal.takenAsTold())
                .lit(animal.takenAsLit())
                .named(animal.names());
        if (draft.tests.isEmpty()) {
            return;
        }
        View view = watched.view(ImmutableList.copyOf(traits));
        Set<String> read = compiled.lociRead(view);
        made.power(answers.young());
        made.inheritance(model, read, answers.young(), true);
        made.phase("the animal", animal, sex, model, read);
        question.mates()
                .forEach(mate -> mate.animals().forEach(known -> {
                    made.omitted(mate.name(), known);
                    made.phase(mate.name(), known, sex.other(), model, read);
                    made.told(compiled, known.takenAsTold())
                            .lit(known.takenAsLit())
                            .named(known.names());
                }));
        if (question.mates().stream().anyMatch(mate -> mate.kind() != TestMate.Kind.KNOWN)) {
            made.chosenBlindly();
        }
        if (compiled.dependsOnSex(view)) {
            made.sexes(answers.young());
        }
        boolean dies = compiled.survival(Census.BORN).loses();
        if (dies) {
            made.someDie(Census.BORN.word(), answers.young());
        } else {
            made.allLive(answers.young());
        }
        made.stage(answers.young().every(), question.stage(), compiled, watched.takenAsTold(traits));
        question.litter().ifPresent(made::litterSize);
        boolean linked = model.groups().values().stream()
                .anyMatch(group -> group.loci().stream().filter(read::contains).count() > 1);
        List<Animal> all = new ArrayList<>(List.of(animal));
        question.mates().forEach(mate -> all.addAll(mate.animals()));
        all.stream()
                .filter(one -> !one.uncertain(read).isEmpty())
                .forEach(one -> one.population().ifPresent(draft.populations::add));
        draft.populations.forEach(population ->
                made.weighting(population, linked, !model.viability().isEmpty()));
    }
}
