package org.geneticsrules.answer;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.caution.CautionSet;
import org.geneticsrules.caution.QuestionKind;
import org.geneticsrules.caution.Relation;
import org.geneticsrules.caution.Role;
import org.geneticsrules.caution.Situation;
import org.geneticsrules.caution.Trigger;
import org.geneticsrules.explanation.RestsOn;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Population;
import org.geneticsrules.model.Statement;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Reading;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Taxon;

/**
 * Answers questions under one model, with reasons, cautions and evidence.
 *
 * <pre>{@code
 * Answers answers = Answers.of(CompiledModel.of(model), cautions);
 * Answer answer = answers.mating(MatingQuestion.of(hob, jill));
 * }</pre>
 *
 * <p>Rival models ({@link #against}) are asked the same, and an answer tells where their verdict is another.
 *
 * <p>Immutable and thread-safe.
 */
public final class Answers {

    private final CompiledModel compiled;
    private final ImmutableList<CautionSet> cautions;
    private final ImmutableList<RivalModel> rivals;

    private Answers(CompiledModel compiled, ImmutableList<CautionSet> cautions, ImmutableList<RivalModel> rivals) {
        this.compiled = compiled;
        this.cautions = cautions;
        this.rivals = rivals;
    }

    /**
     * Answers under a model.
     *
     * @param compiled the model
     * @param cautions the cautions to raise
     * @return the answering service
     */
    public static Answers of(CompiledModel compiled, Collection<CautionSet> cautions) {
        return new Answers(compiled, ImmutableList.copyOf(cautions), ImmutableList.of());
    }

    /**
     * Returns the same with rival models, each of which is asked every question too.
     *
     * @param held models of the same traits
     * @return a copy; its answers tell which of them come to another verdict, and which cannot be asked
     */
    public Answers against(Collection<RivalModel> held) {
        return new Answers(compiled, cautions, ImmutableList.copyOf(held));
    }

    /**
     * Asks the rival models, for those who put answers together. A rival that makes no claim about a trait that is asked for or was seen is
     * left out; one to which what is stated has no meaning, or that would take too much work, is noticed.
     *
     * @param verdict the verdict of the answer
     * @param question asks the same under another model
     * @param notices takes which rivals were not asked
     * @param due takes the cautions that go with verdicts that differ
     * @return the verdicts that differ from it in more than what alleles and loci are called, in the order of the rivals
     */
    public List<RivalVerdict> rivalVerdicts(
            String verdict,
            Function<Answers, RivalModel.Opinion> question,
            Collection<String> notices,
            Collection<Caution> due) {
        List<RivalVerdict> found = new ArrayList<>();
        List<String> silent = new ArrayList<>();
        for (RivalModel rival : rivals) {
            boolean asked = false;
            try {
                CompiledModel other = rival.compiled();
                RivalModel.Opinion opinion = question.apply(new Answers(other, cautions, ImmutableList.of()));
                asked = opinion.isAnswer();
                if (asked && !new SameWords(model(), other.model()).are(verdict, opinion.verdict())) {
                    found.add(new RivalVerdict(rival.title(), other.model().reference(), opinion.verdict()));
                    opinion.cautions().get().stream()
                            .filter(caution -> !due.contains(caution))
                            .forEach(due::add);
                }
            } catch (ProblemsException e) {
                asked = e.problems().stream().allMatch(problem -> problem.code().equals("not-modelled"));
            } catch (TooLargeException e) {
                asked = false;
            }
            if (!asked) {
                silent.add("\"" + rival.title() + "\"");
            }
        }
        if (!silent.isEmpty()) {
            notices.add(
                    "rival models that were not asked, because what is stated or asked means nothing to them or would take"
                            + " too much work: " + String.join(", ", silent));
        }
        return found;
    }

    /**
     * Returns the rival models that are asked, too.
     *
     * @return what is held instead, in the order stated
     */
    public List<RivalModel> against() {
        return rivals;
    }

    /**
     * Returns the model the answers rest on.
     *
     * @return the compiled model
     */
    public CompiledModel compiled() {
        return compiled;
    }

    /**
     * Answers what may come of a mating.
     *
     * @param question the question
     * @return the answer; a contradiction in what is stated of a parent is an answer too
     * @throws ProblemsException if a trait, state or season is unknown; or with the code {@code stage-needed} if what is asked depends on
     *     an age, a moult or a season that is not stated, or cannot be told yet at the stage
     * @throws TooLargeException if an exact answer would take too much work
     */
    public Answer mating(MatingQuestion question) {
        return new MatingAnswer(this, question).answer();
    }

    /**
     * Answers how an animal's look comes about and what it does not tell.
     *
     * @param question the question
     * @return the answer; a contradiction in what is stated of the animal is an answer too
     * @throws ProblemsException if a trait or season is unknown; or with the code {@code stage-needed} if what is asked depends on an age,
     *     a moult or a season that is not stated, or cannot be told yet at the stage
     * @throws TooLargeException if an exact answer would take too much work
     */
    public Answer coat(CoatQuestion question) {
        return new CoatAnswer(this, question, QuestionKind.COAT).answer();
    }

    /**
     * Answers what is to be told of an animal to whoever takes it over: how it looks, how that comes about, what it may carry that nobody can
     * see, and every caution that goes with such an animal and with handing it over.
     *
     * @param question the question
     * @return the answer; a contradiction in what is stated of the animal is an answer too
     * @throws ProblemsException as {@link #coat} throws
     * @throws TooLargeException if an exact answer would take too much work
     */
    public Answer handOver(CoatQuestion question) {
        return new CoatAnswer(this, question, QuestionKind.SALE).answer();
    }

    /**
     * Answers which test matings would show what an animal hides, and how many young that would take.
     *
     * <p>This tells what a test would take; it advises none. A mating that raises a caution which {@linkplain Caution#excludes() excludes}
     * it, or some of whose young are lost, is left out with the reason, unless it is asked for by the name of the reason.
     *
     * @param question the question
     * @return the answer; that an animal hides nothing, or that no number is enough, is an answer too
     * @throws ProblemsException if the animal's sex is not stated ({@code sex-needed}), a mate is of the same sex ({@code wrong-sex}), a
     *     trait, season or caution is unknown, or the traits asked for cannot be told at the stage ({@code stage-needed})
     * @throws TooLargeException if an exact answer would take too much work
     */
    public Answer testMatings(TestMatingQuestion question) {
        return new TestMatingAnswer(this, question).answer();
    }

    /**
     * Returns what speaks against a mating of two animals, as {@link #testMatings} leaves matings out, for those who put other answers
     * together.
     *
     * @param sire what is known of the sire
     * @param dam what is known of the dam
     * @param relation how they are related
     * @param inSpiteOf names of cautions that exclude a mating, and shall not
     * @return why it is not proposed, and what has to be said of it
     * @throws ProblemsException if there is no such caution ({@code unknown-exclusion}), or what is stated of one of the two contradicts itself
     * @throws TooLargeException if an exact answer would take too much work
     */
    public MatingConcerns concerns(Animal sire, Animal dam, Relation relation, Collection<String> inSpiteOf) {
        Animal male = sire.as(Sex.MALE);
        Animal female = dam.as(Sex.FEMALE);
        for (Animal one : List.of(male, female)) {
            if (one.genotypes().isEmpty()) {
                throw new ProblemsException(Problem.of(
                                Stage.MEANING,
                                "contradiction",
                                "",
                                "what is stated of one of the two excludes every genotype: " + one.looks())
                        .expecting("records that go with one another under this model"));
            }
        }
        Exclusions exclusions = new Exclusions(
                this,
                male,
                Sex.MALE,
                LifeStage.unstated(),
                new MatePool(compiled, Sex.FEMALE),
                ImmutableSet.copyOf(inSpiteOf));
        List<TestResult.Exclusion> found = exclusions.of(female, relation);
        return new MatingConcerns(relation, Optional.empty(), found, exclusions.cautions(), List.of());
    }

    /**
     * Refuses names by which no mating is left out, whether or not one is asked about.
     *
     * @param inSpiteOf names of cautions that exclude a mating, and shall not
     * @throws ProblemsException if there is no such caution ({@code unknown-exclusion})
     */
    public void requireExclusions(Collection<String> inSpiteOf) {
        Exclusions.requireKnown(this, inSpiteOf);
    }

    Model model() {
        return compiled.model();
    }

    /**
     * Returns what the young are called in texts.
     *
     * @return the words of the model's taxon, of its catalogue's, or neutral ones
     */
    public Taxon.Young young() {
        return model().taxon()
                .flatMap(Taxon::young)
                .or(() -> model().catalogue().taxon().flatMap(Taxon::young))
                .orElse(Taxon.Young.NEUTRAL);
    }

    /** The statements by which the looks of an animal narrow down what it carries at loci that matter. */
    Set<String> behindLooks(Animal animal, Set<String> matter) {
        Set<String> found = new LinkedHashSet<>();
        for (Reading seen : animal.readings()) {
            for (String trait : seen.traits()) {
                View alone = new View(List.of(trait), seen.stage(), Census.CONCEIVED);
                Set<String> read = trait.equals(Sex.VARIABLE) ? Set.of() : compiled.lociRead(alone);
                if (read.stream().anyMatch(matter::contains) && !animal.stated().isEmpty()) {
                    Map<String, List<AllelePair>> pairs = new LinkedHashMap<>();
                    read.forEach(locus -> pairs.put(locus, animal.stated().pairs(locus)));
                    found.addAll(RestsOn.of(compiled, pairs, alone).statements());
                }
            }
        }
        return found;
    }

    /**
     * Returns what an answer rests on, for those who put answers together.
     *
     * @param pointers pointers of the statements of the model that it rests on
     * @param populations the populations whose frequencies weigh it
     * @return the statements, in the order of the model's document, with the weakest grade among them
     */
    public EvidenceLevel evidence(Set<String> pointers, Collection<Population> populations) {
        List<Statement> statements = new ArrayList<>();
        for (Statement statement : model().statements().values()) {
            boolean weighs = populations.stream()
                    .anyMatch(population -> statement.pointer().equals(pointer(population)));
            if (pointers.contains(statement.pointer()) || weighs) {
                statements.add(statement);
            }
        }
        return EvidenceLevel.of(statements);
    }

    private static String pointer(Population population) {
        return Pointer.of("populations", population.id());
    }

    /**
     * Returns the views recorded as dissent on what an answer rests on.
     *
     * @param evidence what it rests on
     * @return each view once, with the first statement that it differs from
     */
    public static List<Rival> rivals(EvidenceLevel evidence) {
        List<Rival> rivals = new ArrayList<>();
        for (Statement statement : evidence.statements()) {
            statement
                    .evidence()
                    .ifPresent(support -> support.dissent().stream()
                            .filter(view -> rivals.stream()
                                    .noneMatch(rival -> rival.view().equals(view)))
                            .forEach(view -> rivals.add(new Rival(statement.pointer(), view))));
        }
        return rivals;
    }

    List<Phenotype> cautionLooks(Phenotype described, Function<List<String>, Set<Phenotype>> possible) {
        return CautionLooks.of(cautions, model().visibleTraits(), described, List.of(), possible);
    }

    List<Phenotype> cautionLooks(Animal animal, Function<List<String>, Set<Phenotype>> possible) {
        return CautionLooks.of(cautions, model().visibleTraits(), animal.looks(), animal.perhaps(), possible);
    }

    /**
     * Returns the names of the cautions that exclude a mating, unless somebody asks for it by that name.
     *
     * @return names in declared order
     */
    public List<String> excludingCautions() {
        return cautions().stream().filter(Caution::excludes).map(Caution::id).toList();
    }

    /** All cautions of the sets, in declared order. */
    List<Caution> cautions() {
        return cautions.stream()
                .flatMap(set -> set.cautions().values().stream())
                .toList();
    }

    /**
     * Returns the cautions that go with one kind of question about an animal of which it can be told what it may look like.
     *
     * @param kind the kind of question
     * @param mayShow whether the animal may show a look
     * @return cautions in declared order
     */
    public List<Caution> cautions(QuestionKind kind, Predicate<Condition> mayShow) {
        List<Caution> anyhow = cautions(Situation.of(kind.word()));
        return cautions().stream()
                .filter(caution -> anyhow.contains(caution)
                        || (caution.trigger() instanceof Trigger.OnLook on
                                && on.roles().contains(Role.ANIMAL)
                                && mayShow.test(on.look())))
                .toList();
    }

    /**
     * Returns the cautions that are due.
     *
     * @param situation what an answer is about
     * @return cautions in declared order
     */
    public List<Caution> cautions(Situation situation) {
        return cautions.stream()
                .flatMap(set -> set.raisedBy(situation).stream())
                .toList();
    }
}
