package org.geneticsrules.answer.compared;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.answer.RivalModel;
import org.geneticsrules.answer.recorded.Progress;
import org.geneticsrules.answer.recorded.RecordBasis;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.comparison.ModelComparison;
import org.geneticsrules.comparison.ModelFit;
import org.geneticsrules.document.Reference;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;

/**
 * Answers what litters say of what is believed of their inheritance.
 *
 * <pre>{@code
 * LitterAnswers litters = LitterAnswers.of(RecordedAnswers.of(answers, records));
 * litters.fit();                      // does one model go with these litters
 * litters.favour(List.of(another));   // which of several do they favour, and does any fit
 * }</pre>
 *
 * <p>What is asked and how stands in the package's description. Immutable and thread-safe.
 */
public final class LitterAnswers {

    private final RecordedAnswers recorded;
    private final ImmutableList<String> traits;
    private final int draws;
    private final long seed;
    private final ImmutableMap<Reference, Probability> shares;
    private final ImmutableMap<Reference, Integer> fitted;

    private LitterAnswers(
            RecordedAnswers recorded,
            ImmutableList<String> traits,
            int draws,
            long seed,
            ImmutableMap<Reference, Probability> shares,
            ImmutableMap<Reference, Integer> fitted) {
        this.recorded = recorded;
        this.traits = traits;
        this.draws = draws;
        this.seed = seed;
        this.shares = shares;
        this.fitted = fitted;
    }

    /**
     * Answers about the litters of a pedigree.
     *
     * @param recorded the model, its cautions and rivals, the records, and what is assumed of founders and naming errors
     * @return the answering service, about all traits that were recorded
     */
    public static LitterAnswers of(RecordedAnswers recorded) {
        return new LitterAnswers(
                recorded,
                ImmutableList.of(),
                ModelFit.USUAL_DRAWS,
                ModelFit.USUAL_SEED,
                ImmutableMap.of(),
                ImmutableMap.of());
    }

    /**
     * Returns the same about some traits only.
     *
     * @param ids ids of traits; none for all
     * @return a copy
     */
    public LitterAnswers about(Collection<String> ids) {
        return new LitterAnswers(recorded, ImmutableList.copyOf(ids), draws, seed, shares, fitted);
    }

    /**
     * Returns the same with other draws where not all outcomes can be gone through.
     *
     * @param number how many sets of litters are drawn, at least 99
     * @param start the seed
     * @return a copy
     */
    public LitterAnswers drawing(int number, long start) {
        return new LitterAnswers(recorded, traits, number, start, shares, fitted);
    }

    /**
     * Returns the same with what is believed of models before the litters are looked at. It moves what may be believed of them afterwards
     * (Bayes' rule), and no likelihood ratio.
     *
     * @param stated by the reference of a model, its share of belief in proportion to those of the others, 1 unless stated; models that do not
     *     take part are left aside
     * @return a copy
     */
    public LitterAnswers believing(Map<Reference, Probability> stated) {
        return new LitterAnswers(recorded, traits, draws, seed, ImmutableMap.copyOf(stated), fitted);
    }

    /**
     * Returns the same with how many numbers of models were fitted to these records. A likelihood ratio is then no evidence for such a model,
     * and Akaike's and Schwarz's criteria are told of all.
     *
     * @param numbers by the reference of a model, how many of its numbers were fitted, 0 unless stated; models that do not take part are left
     *     aside
     * @return a copy
     */
    public LitterAnswers fitted(Map<Reference, Integer> numbers) {
        return new LitterAnswers(recorded, traits, draws, seed, shares, ImmutableMap.copyOf(numbers));
    }

    /**
     * Answers how well the litters go with the model.
     *
     * @return what fits, what is unlikely and what cannot be, kit by kit and litter by litter
     * @throws ProblemsException if nothing was recorded of which the model speaks, founders lack frequencies, or how litters came to be
     *     recorded does not go with their records
     * @throws org.geneticsrules.problem.TooLargeException if relatives and records tie too much together for an exact answer
     */
    public LitterAnswer fit() {
        RecordBasis basis = recorded.basis(spoken(), true);
        ModelComparison question = question(List.of(first(basis)));
        return new Judging(question, basis, recorded.pedigree(), draws, seed).fit();
    }

    /**
     * Answers which model the litters favour: the one in use or one of those it is asked with ({@link RivalModel}).
     *
     * @return the comparison with every rival that speaks of all recorded traits of which the model in use speaks, and under which the
     *     records are not too much to be looked at together
     * @throws ProblemsException as {@link #fit} does; and if there is no such rival
     * @throws org.geneticsrules.problem.TooLargeException if relatives and records tie too much together for an exact answer
     */
    public LitterAnswer favour() {
        RecordBasis basis = recorded.basis(spoken(), true);
        Candidate first = first(basis);
        Set<String> spoken = question(List.of(first)).records().traits();
        List<Candidate> candidates = new ArrayList<>(List.of(first));
        List<String> left = new ArrayList<>();
        for (RivalModel rival : basis.answers().against()) {
            try {
                Candidate other = named(Candidate.of(rival.compiled()).called(rival.title()), candidates);
                ModelComparison both = question(List.of(first, other));
                boolean knows = recorded.pedigree().problemsUnder(other.model()).isEmpty()
                        && both.records().traits().equals(spoken);
                if (knows && Judging.isSmall(both)) {
                    candidates.add(other);
                } else {
                    left.add("\"" + rival.title() + "\"");
                }
            } catch (ProblemsException notOfTheseRecords) {
                left.add("\"" + rival.title() + "\"");
            }
        }
        if (candidates.size() == 1) {
            throw new ProblemsException(Problem.of(
                            Stage.MEANING,
                            "no-rival",
                            "",
                            "there is no rival that speaks of all recorded traits of which the model in use speaks"
                                    + (left.isEmpty() ? "" : ": " + String.join(", ", left)))
                    .expecting("a model or a patch to hold against it"));
        }
        return favour(basis, candidates, left);
    }

    /**
     * Answers which of several models the litters favour.
     *
     * @param others the models that are held against the one in use, which need not speak of all traits: what one leaves open is left out for
     *     all, and told
     * @return the comparison
     * @throws ProblemsException as {@link #fit} does; and if a model does not know the records
     * @throws org.geneticsrules.problem.TooLargeException if relatives and records tie too much together for an exact answer
     */
    public LitterAnswer favour(List<Candidate> others) {
        RecordBasis basis = recorded.basis(spoken(), true);
        List<Candidate> candidates = new ArrayList<>(List.of(first(basis)));
        others.forEach(other -> candidates.add(named(other, candidates)));
        return favour(basis, candidates, List.of());
    }

    /**
     * Answers what can be done next to tell models apart: looks, DNA tests and matings, in this order, with what each is expected to say. It
     * advises no mating; those that a caution excludes are left out, with the reason.
     *
     * <p>All that is recorded counts, whatever traits this is {@linkplain #about about}; the question says which are looked at.
     *
     * @param question the question
     * @param others the models that the one in use is to be told from, at least one
     * @param progress is told how far it has come
     * @return what each step is worth; that none tells anything, or can, is an answer, too
     * @throws IllegalArgumentException if a planned mating names an animal that is not recorded
     * @throws ProblemsException if there is no other model, none that the records leave is believed in beforehand ({@code no-belief}),
     *     something is recorded and not every model speaks of any of it, a trait, a stage or a caution is unknown, founders lack frequencies, or how litters came to be recorded does not go with their records
     * @throws org.geneticsrules.problem.TooLargeException if relatives and records tie too much together for an exact answer
     */
    public TellApartAnswer tellApart(TellApartQuestion question, List<Candidate> others, Progress progress) {
        if (others.isEmpty()) {
            throw new ProblemsException(Problem.of(Stage.MEANING, "no-rival", "", "there is one model only")
                    .expecting("a model or a patch to tell it from"));
        }
        recorded.model().catalogue().check(question.stage());
        RecordBasis basis = recorded.basis(spoken(), true);
        basis.answers().requireExclusions(question.inSpiteOf());
        List<Candidate> candidates = new ArrayList<>(List.of(first(basis)));
        others.forEach(other -> candidates.add(named(other, candidates)));
        return new TellingApart(recorded, basis, question, believed(candidates)).answer(progress);
    }

    private LitterAnswer favour(RecordBasis basis, List<Candidate> candidates, List<String> left) {
        return new Favouring(question(believed(candidates)), basis, recorded.pedigree(), left, draws, seed).answer();
    }

    /** Models with what is stated to be believed of them, and to be fitted. */
    private List<Candidate> believed(List<Candidate> candidates) {
        return candidates.stream()
                .map(one -> Optional.ofNullable(shares.get(one.model().reference()))
                        .map(one::believed)
                        .orElse(one))
                .map(one -> Optional.ofNullable(fitted.get(one.model().reference()))
                        .map(one::fitted)
                        .orElse(one))
                .toList();
    }

    /** A model under its own name, unless another one has that. */
    static Candidate named(Candidate candidate, List<Candidate> others) {
        boolean taken = others.stream()
                .anyMatch(other -> other.name().equals(candidate.name())
                        && !other.model().reference().equals(candidate.model().reference()));
        return taken ? candidate.called(candidate.name() + " (" + candidate.model() + ")") : candidate;
    }

    private static Candidate first(RecordBasis basis) {
        Model model = basis.answers().compiled().model();
        return Candidate.of(basis.answers().compiled()).called(model.title().orElse(model.id()));
    }

    private ModelComparison question(List<Candidate> candidates) {
        Pedigree pedigree = recorded.pedigree();
        ModelComparison all = ModelComparison.of(candidates, pedigree);
        ModelComparison asked = traits.isEmpty() ? all : all.about(traits);
        return asked.with(recorded.confusions());
    }

    /** The recorded traits of which the model speaks. */
    private Collection<String> spoken() {
        Set<String> found = new LinkedHashSet<>();
        for (Individual one : recorded.pedigree().individuals().values()) {
            one.observations().forEach(seen -> found.addAll(seen.traits()));
        }
        found.retainAll(recorded.model().visibleTraits());
        if (!traits.isEmpty()) {
            found.retainAll(traits);
        }
        return found;
    }
}
