package org.geneticsrules.comparison;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SplittableRandom;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.problem.ProblemsException;

/**
 * The question how well records of litters go with one model.
 *
 * <pre>{@code
 * FittedModel fit = ModelFit.of(Candidate.of(model), pedigree).from("even").judge();
 * fit.kits();        // impossible, unlikely, fine
 * fit.isRejected();
 * }</pre>
 *
 * <p>What is judged, and how, stands in the package's description. Immutable and thread-safe.
 */
public final class ModelFit {

    /** How many sets of litters are drawn unless stated otherwise. */
    public static final int USUAL_DRAWS = 9_999;

    /** The seed unless stated otherwise. */
    public static final long USUAL_SEED = 1;

    private final ModelComparison question;
    private final Candidate candidate;
    private final int draws;
    private final long seed;

    private ModelFit(ModelComparison question, Candidate candidate, int draws, long seed) {
        this.question = question;
        this.candidate = candidate;
        this.draws = draws;
        this.seed = seed;
    }

    /**
     * Asks about a model and all that was recorded of kits and their parents.
     *
     * @param candidate the model
     * @param pedigree the records; names have been read
     * @return the question
     * @throws ProblemsException as {@link ModelComparison#of} does
     */
    public static ModelFit of(Candidate candidate, Pedigree pedigree) {
        return of(ModelComparison.of(List.of(candidate), pedigree), 0);
    }

    /**
     * Asks about one of several models, and about the records that all of them speak of.
     *
     * @param question the comparison, with its traits, naming errors and populations
     * @param candidate number of the model
     * @return the question
     */
    public static ModelFit of(ModelComparison question, int candidate) {
        return new ModelFit(question, question.candidates().get(candidate), USUAL_DRAWS, USUAL_SEED);
    }

    /**
     * Returns the question with a population for founders for whom the records state none.
     *
     * @param id id of a population of the model
     * @return a copy
     * @throws IllegalArgumentException if the model has none such
     */
    public ModelFit from(String id) {
        return new ModelFit(question.from(id), candidate, draws, seed);
    }

    /**
     * Returns the question with other draws, where not all outcomes can be gone through.
     *
     * @param number how many sets of litters are drawn, at least 99
     * @param start the seed of the generator, {@link SplittableRandom}
     * @return a copy
     * @throws IllegalArgumentException if there are fewer
     */
    public ModelFit drawing(int number, long start) {
        if (number < 99) {
            throw new IllegalArgumentException(
                    "a p is found from at least 99 draws, but " + number + " were asked for");
        }
        return new ModelFit(question, candidate, number, start);
    }

    /**
     * Judges the records.
     *
     * @return how well they go with the model
     * @throws ProblemsException if a founder has no population, or one without frequencies that are needed
     * @throws org.geneticsrules.problem.TooLargeException if relatives and records tie too much together for an exact answer
     */
    public FittedModel judge() {
        Prepared prepared = question.prepared();
        ModelChances chances = question.chances(candidate);
        SplittableRandom random = new SplittableRandom(seed);
        LitterJudge judge = new LitterJudge(
                candidate.compiled(), !question.confusions().all().isEmpty(), random);
        KitJudge kitJudge =
                new KitJudge(candidate.compiled(), !question.confusions().all().isEmpty());
        MatingJudge matingJudge = new MatingJudge(
                candidate.compiled(), !question.confusions().all().isEmpty(), seed);
        Map<Integer, LitterFit> litters = new LinkedHashMap<>();
        List<KitFit> kits = new ArrayList<>();
        List<LitterOutcomes> outcomes = new ArrayList<>();
        for (int k = 0; k < prepared.kindreds().size(); k++) {
            Kindred kindred = prepared.kindreds().get(k);
            List<Noticed> all = prepared.litters().get(k);
            int animals = kindred.founders().size()
                    + all.stream().mapToInt(litter -> litter.kits().size()).sum();
            Chances growing = chances.chances(kindred);
            Chances whole = chances.whole(kindred, all);
            boolean possible = growing.soFar() != Double.NEGATIVE_INFINITY;
            for (int t = 0; t < all.size(); t++) {
                Noticed litter = all.get(t);
                LitterJudge.Judged judged = judge.judge(litter, growing, possible, whole, t == 0, animals);
                litters.put(kindred.turns()[t], judged.fit());
                judged.outcomes().ifPresent(outcomes::add);
                growing.add(litter.litter(), litter.recorded());
                possible &= growing.soFar() != Double.NEGATIVE_INFINITY;
                question.tick();
            }
            for (int t = 0; t < all.size(); t++) {
                Map<Object, KitFit> alike = new HashMap<>();
                for (Individual kit : all.get(t).kits()) {
                    if (Noticed.isRecorded(kit)) {
                        int litter = t;
                        KitFit fit = alike.computeIfAbsent(
                                List.of(kit.sex(), kit.observations(), kit.tests()),
                                key -> kitJudge.judge(kindred, all, litter, kit, chances, whole, animals));
                        kits.add(new KitFit(kit.id(), fit.litter(), fit.standing(), fit.chance(), fit.rarer()));
                        question.tick();
                    }
                }
            }
            matingJudge.add(question.records().pedigree(), kindred, all, whole);
        }
        Whole whole = Whole.of(outcomes, draws, random);
        int recorded = (int) prepared.litters().stream()
                .flatMap(List::stream)
                .filter(litter -> litter.kits().stream().anyMatch(Noticed::isRecorded))
                .count();
        return new FittedModel(
                candidate.name(),
                question.records(),
                kits,
                litters.entrySet().stream()
                        .sorted(Map.Entry.comparingByKey())
                        .map(Map.Entry::getValue)
                        .toList(),
                matingJudge.judge(),
                recorded - outcomes.size(),
                whole.p(),
                whole.standardError(),
                whole.drawn() ? Optional.of(new FittedModel.Draws(draws, seed)) : Optional.empty());
    }

    /** Returns the name of the model. */
    @Override
    public String toString() {
        return Objects.toString(candidate);
    }
}
