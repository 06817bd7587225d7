package org.geneticsrules.answer.recorded;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.EvidenceLevel;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.answer.MatingConcerns;
import org.geneticsrules.answer.RivalModel;
import org.geneticsrules.answer.RivalVerdict;
import org.geneticsrules.answer.Status;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.inference.Sampling;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.NamedRecords;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Confusions;

/**
 * Answers questions about the animals of a pedigree, with reasons, cautions and evidence.
 *
 * <pre>{@code
 * RecordedAnswers kennel = RecordedAnswers.of(answers, pedigree).from("few carriers");
 * RecordedAnswer hides = kennel.mayCarry("Kit 3", Set.of());
 * }</pre>
 *
 * <p>Where chances need frequencies and no population is named, they are given for each population of the model, one after another.
 *
 * <p>Immutable and thread-safe.
 */
public final class RecordedAnswers {

    private final Ground ground;

    private RecordedAnswers(Ground ground) {
        this.ground = ground;
    }

    /**
     * Answers about a pedigree under a model. Names that animals were called by are told not to have been read; see
     * {@link #of(Answers, NamedRecords)}.
     *
     * @param answers the model and its cautions
     * @param pedigree the recorded animals
     * @return the answering service
     * @throws ProblemsException if the records name what the model does not know
     */
    public static RecordedAnswers of(Answers answers, Pedigree pedigree) {
        return of(answers, pedigree, Optional.empty());
    }

    /**
     * Answers about a pedigree under a model, with what animals were called by as records of their looks.
     *
     * @param answers the model and its cautions
     * @param records the recorded animals, with their names read
     * @return the answering service
     * @throws ProblemsException if the records name what the model does not know
     */
    public static RecordedAnswers of(Answers answers, NamedRecords records) {
        return of(answers, records.pedigree(), Optional.of(records));
    }

    private static RecordedAnswers of(Answers answers, Pedigree pedigree, Optional<NamedRecords> names) {
        return new RecordedAnswers(new Ground(
                answers,
                pedigree,
                Optional.empty(),
                Confusions.none(),
                Inference.of(answers.compiled(), pedigree),
                names,
                Optional.empty()));
    }

    /**
     * Returns the same with a population for founders and unrecorded parents for whom the pedigree states none.
     *
     * @param population id of a population of the model
     * @return a copy
     * @throws IllegalArgumentException if the model has no such population
     */
    public RecordedAnswers from(String population) {
        if (!ground.model().populations().containsKey(population)) {
            throw new IllegalArgumentException("model " + ground.model() + " has no population \"" + population
                    + "\"; expected one of " + ground.model().populations().keySet());
        }
        return new RecordedAnswers(ground.from(population));
    }

    /**
     * Returns the same with naming errors.
     *
     * @param named how often a state is recorded as another
     * @return a copy
     */
    public RecordedAnswers with(Confusions named) {
        return new RecordedAnswers(ground.with(named));
    }

    /**
     * Returns the same with another limit on what is calculated exactly.
     *
     * @param cells the cells that all tables of one part may have together, eight bytes each; 0 for none
     * @return a copy
     */
    public RecordedAnswers within(double cells) {
        return new RecordedAnswers(ground.within(cells));
    }

    /**
     * Returns the same where chances that are too large to be calculated are estimated by sampling, each with its standard error: what an
     * animal may carry, trails, and the chances of a registry. What compares the chances of whole sets of records, namely how sure one may
     * be, who may be a sire, what the next litter or the animal itself may show, and what a look or a DNA test tells, is calculated exactly or
     * not at all.
     *
     * @param how how it is sampled
     * @return a copy
     */
    public RecordedAnswers sampling(Sampling how) {
        return new RecordedAnswers(ground.sampling(how));
    }

    /**
     * Returns the model.
     *
     * @return the model under which records are read
     */
    public Model model() {
        return ground.model();
    }

    /**
     * Returns the naming errors that are reckoned with.
     *
     * @return how often a state is recorded as another
     */
    public Confusions confusions() {
        return ground.confusions();
    }

    /**
     * Returns what any answer from these records rests on, for those who put other answers together.
     *
     * @param traits ids of the traits that records speak of and that matter
     * @param weighted whether the answer gives chances
     * @return the assumptions, evidence and notices
     */
    public RecordBasis basis(Collection<String> traits, boolean weighted) {
        Draft draft = new Draft(ground);
        List<Origin> origins = weighted ? List.of(new Origin(ground.population().map(ground::population))) : List.of();
        draft.rest(ground.pedigree(), ground.compiled().lociRead(traits), origins);
        draft.notices(ground.pedigree(), ground.inference(ground.pedigree()).notices());
        EvidenceLevel evidence = ground.answers().evidence(draft.statements, draft.populations);
        return new RecordBasis(
                ground.answers(),
                ground.population(),
                ground.confusions(),
                draft.taken.list(),
                evidence,
                new ArrayList<>(draft.notices));
    }

    /**
     * Returns what speaks against a mating of two recorded animals, and what has to be said of it, for those who put other answers
     * together.
     *
     * @param sire id of the sire
     * @param dam id of the dam
     * @param inSpiteOf names of cautions that exclude a mating, and shall not
     * @return why it is not proposed, by what is recorded of the two themselves and of their relation; cautions, by all that they may carry
     * @throws IllegalArgumentException if there is no such animal
     * @throws ProblemsException if the two cannot be mates, there is no such caution, or their own records contradict one another
     * @throws TooLargeException if an exact answer would take too much work
     */
    public MatingConcerns concerns(String sire, String dam, Collection<String> inSpiteOf) {
        return PlannedMating.of(ground, sire, dam).concerns(inSpiteOf);
    }

    /**
     * Returns the recorded animals.
     *
     * @return the pedigree that is asked about
     */
    public Pedigree pedigree() {
        return ground.pedigree();
    }

    /**
     * Answers what an animal may be and hide: for each genotype whether all records exclude it, with a witness if they do not, and how
     * likely it is.
     *
     * @param animal id of the animal
     * @param loci ids of loci; empty for all
     * @return the answer; its finding is a {@link MayCarry}
     * @throws IllegalArgumentException if there is no such animal or locus
     */
    public RecordedAnswer mayCarry(String animal, Collection<String> loci) {
        Collection<String> asked = loci.isEmpty() ? ground.model().loci().keySet() : loci;
        return against(at -> {
            at.requireLoci(asked, ground);
            return new MayCarryAnswer(at, animal, asked).answer();
        });
    }

    /**
     * Answers how likely an animal is to carry an allele, before any record and after each.
     *
     * @param animal id of the animal
     * @param allele the allele
     * @return the answer; its finding is a {@link CarrierTrail}
     * @throws IllegalArgumentException if there is no such animal
     */
    public RecordedAnswer carrierTrail(String animal, HiddenAllele allele) {
        return against(at -> new CarrierTrailAnswer(at, animal, allele.under(at.model())).answer());
    }

    /**
     * Answers how sure one may be, by a planned mating, whether an animal carries an allele: how good the test is, what to believe, and
     * what to expect, side by side.
     *
     * @param question the question
     * @return the answer; its finding is a {@link HowSure}
     * @throws IllegalArgumentException if there is no such animal
     * @throws ProblemsException if the two cannot be mates, no look of a kit proves the allele and none is named, or a trait, state or
     *     stage is not as the model needs it
     */
    public RecordedAnswer howSure(HowSureQuestion question) {
        return against(at -> new HowSureAnswer(at, question.under(at.model())).answer());
    }

    /**
     * Answers which males may have sired a litter or its kits, and how likely each is. Colour is weak evidence of parentage: it can exclude
     * a male under the model, and proves none.
     *
     * @param question the question
     * @return the answer; its finding is a {@link Parentage}
     * @throws IllegalArgumentException if there is no such litter or male
     * @throws ProblemsException if a male cannot have sired it, because of his sex or age
     */
    public RecordedAnswer parentage(ParentageQuestion question) {
        return against(at -> new ParentageAnswer(at, question).answer());
    }

    /**
     * Answers what the next litter of two recorded animals may show.
     *
     * @param question the question
     * @return the answer; its finding is a {@link NextLitter}
     * @throws IllegalArgumentException if there is no such animal
     * @throws ProblemsException if the two cannot be mates, or a trait, state or stage is not as the model needs it
     * @throws TooLargeException if the traits have too many looks together
     */
    public RecordedAnswer nextLitter(NextLitterQuestion question) {
        return against(at -> new NextLitterAnswer(at, question).answer());
    }

    /**
     * Answers what should be looked at next in an animal, alone or with relatives: what each look is expected to tell of what it carries,
     * in bits of information (Shannon 1948), and which expressions are left.
     *
     * @param question the question
     * @return the answer; its finding is a {@link LookNext}
     * @throws IllegalArgumentException if there is no such animal
     * @throws ProblemsException if a trait or season is unknown, or the model makes no claim about a trait asked for
     */
    public RecordedAnswer lookNext(LookNextQuestion question) {
        return against(at -> new LookNextAnswer(at, question).answer());
    }

    /**
     * Answers what an animal, alone or with relatives, may show at a stage of its life: for each trait which states all records leave
     * possible, how likely each is, and by which masks it may be hidden.
     *
     * @param question the question
     * @return the answer; its finding is a {@link Later}
     * @throws IllegalArgumentException if there is no such animal
     * @throws ProblemsException if a trait or season is unknown, or a trait asked for by name is not modelled; with the code {@code
     *     stage-needed} if it cannot be told at the stage, or hangs on an age, a moult or a season that the stage does not state
     */
    public RecordedAnswer later(LaterQuestion question) {
        // of rivals only the verdict is told, in which there are no masks
        return against(at -> new LaterAnswer(at, question, at.answers() == ground.answers()).answer());
    }

    /**
     * Answers what a DNA test of an animal, alone or with relatives, would tell without any mating: each report with how likely it is and
     * what would be left to believe after it, and what the model knows of a cause in the DNA. It never says that a laboratory offers a test.
     *
     * @param question the question
     * @return the answer; its finding is a {@link DnaTest}
     * @throws IllegalArgumentException if there is no such animal or locus
     * @throws ProblemsException with the code {@code nothing-to-test} if the animal has no allele at the locus, or may have none because its
     *     sex is not known
     */
    public RecordedAnswer dnaTest(DnaTestQuestion question) {
        return against(at -> {
            at.requireLoci(List.of(question.locus()), ground);
            return new DnaTestAnswer(at, question.under(at.model())).answer();
        });
    }

    /** Asks, and asks rival models the same. */
    private RecordedAnswer against(Function<Ground, RecordedAnswer> question) {
        RecordedAnswer found = question.apply(ground);
        List<String> notices = new ArrayList<>(found.notices());
        List<Caution> cautions = new ArrayList<>(found.cautions());
        List<RivalVerdict> otherwise = ground.answers()
                .rivalVerdicts(
                        found.verdict(),
                        other -> {
                            RecordedAnswer same = question.apply(ground.under(other));
                            boolean isAnswer = same.status() != Status.UNDECIDED
                                    || !same.conflicts().isEmpty();
                            return new RivalModel.Opinion(same.verdict(), isAnswer, same::cautions);
                        },
                        notices,
                        cautions);
        return found.against(otherwise, notices, cautions);
    }

    /**
     * Checks all records: which do not fit one another, which fewest to look at again, and for each animal what to do about its records.
     *
     * <p>Large registries are gone through in portions of whole kindreds. Between portions the progress is told; an interruption of the
     * thread is noticed at any time, within a second or so.
     *
     * @param question the question
     * @param progress is told how far it has come
     * @return the report
     * @throws CancellationException if the thread is interrupted
     */
    public RegistryReport check(RegistryQuestion question, Progress progress) {
        return check(question, progress, () -> false);
    }

    /**
     * Checks all records, and takes a limited time for chances. Which records do not fit, and inbreeding, are found out in any case, and so is
     * what chances cost, unless frequencies are missing that they need. Then the chances of those relatives are worked out first that cost
     * least. What is not come to has the standing {@link org.geneticsrules.inference.Conclusions.Standing#NOT_IN_TIME}; where frequencies are
     * missing there are no chances at all, and the notices of the report say so.
     *
     * <pre>{@code
     * Instant end = clock.instant().plus(Duration.ofMinutes(5));
     * recorded.check(question, Progress.NONE, () -> clock.instant().isAfter(end));
     * }</pre>
     *
     * @param question the question
     * @param progress is told how far it has come
     * @param isOver tells whether the time is over; is asked now and then by the thread that answers
     * @return the report; the same each time but for what was not come to
     * @throws CancellationException if the thread is interrupted
     */
    public RegistryReport check(RegistryQuestion question, Progress progress, BooleanSupplier isOver) {
        return new RegistryCheck(ground, question, progress, isOver).report();
    }
}
