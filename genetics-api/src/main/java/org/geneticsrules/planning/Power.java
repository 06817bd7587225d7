package org.geneticsrules.planning;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.function.IntConsumer;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.comparison.ComparedModels;
import org.geneticsrules.planning.EstimatedPower.AgainstRival;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.simulation.DrawnPedigree;
import org.geneticsrules.simulation.LitterPlan;
import org.geneticsrules.simulation.Simulation;
import org.jspecify.annotations.Nullable;

/**
 * The question how often litters of a plan would tell models apart: litters are drawn from one of them, and what would have been written
 * down is compared under all, again and again.
 *
 * <pre>{@code
 * Simulation drawing = Simulation.of(compiled).looking(PlannedLook.at("coat")).testing(PlannedTest.at("A").of(Whom.FOUNDERS));
 * EstimatedPower power = Power.of(List.of(recessive, lethal), 0, drawing, LitterPlan.of(carrier, carrier, 20, LitterSize.of(6)))
 *         .drawing(1000)
 *         .estimate();
 * power.share(power.reached());       // how often such litters make it sure
 * power.share(power.misled());        // how often a wrong model looks sure
 * power.littersUntil(0.5);            // the median number of litters
 * }</pre>
 *
 * <p>Step by step:
 *
 * <ol>
 *   <li>Couples with their litters are drawn, with what is planned to be written down of them ({@link Simulation}). So many as the plan has make
 *       a set.
 *   <li>What was written down is compared under all models ({@link org.geneticsrules.comparison.ModelComparison}), with the naming errors with
 *       which it was drawn. Couples share no animal, so they are independent of one another, and kits of one litter may be put in any
 *       order: those recorded alike are compared once, however often they come up.
 *   <li>Along each set, the likelihood ratio of the true model over each rival is multiplied litter by litter, and looked at each time.
 * </ol>
 *
 * <p>That a rival reaches the bar although it is wrong happens in at most 1 of 20 sets with the usual bar, whatever the plan (Ville 1939, from
 * memory), <b>if</b> the true model is true in all that the comparison takes from it: parents are as frequent among all that are recorded so as
 * its population says. Parents who are drawn as carriers and recorded as anybody are not. Nor are couples of several litters that are recorded
 * because of what kits showed, unless each parent's genotype is known: couples are drawn all of whose litters are noticed, while the comparison
 * takes each litter as noticed given those before it, whether or not later ones are.
 *
 * <p>No animal lives here. What is found says how much records could tell, and advises nobody to breed.
 *
 * <p>Immutable and thread-safe, if what watches is.
 */
public final class Power {

    /** So many sets are drawn unless stated otherwise. */
    public static final int USUAL_SETS = 1000;

    /** More sets than these are not drawn. */
    public static final int MOST_SETS = 100_000;

    /** Sets that are drawn before what is new among them is compared. */
    private static final int TOGETHER = 100;

    private static final double ROUNDING = 1e-9;

    private final ImmutableList<Candidate> candidates;
    private final int truth;
    private final Simulation drawing;
    private final LitterPlan plan;
    private final Optional<String> population;
    private final double bar;
    private final int sets;
    private final @Nullable IntConsumer watch;

    private Power(
            ImmutableList<Candidate> candidates,
            int truth,
            Simulation drawing,
            LitterPlan plan,
            Optional<String> population,
            double bar,
            int sets,
            @Nullable IntConsumer watch) {
        this.candidates = candidates;
        this.truth = truth;
        this.drawing = drawing;
        this.plan = plan;
        this.population = population;
        this.bar = bar;
        this.sets = sets;
        this.watch = watch;
    }

    /**
     * Asks about a plan.
     *
     * @param candidates the models, at least two, of one catalogue
     * @param truth number of the one from which litters are drawn, from 0
     * @param drawing draws from that model, and says what is written down, with what errors, how litters come to be recorded, and the seed
     * @param plan the litters
     * @return the question, with the usual bar and number of sets
     * @throws IllegalArgumentException if there are fewer than two models, no such number, or litters are drawn from another model
     */
    public static Power of(List<Candidate> candidates, int truth, Simulation drawing, LitterPlan plan) {
        if (candidates.size() < 2) {
            throw new IllegalArgumentException(
                    "two models at least are told apart, but there were " + candidates.size());
        }
        if (truth < 0 || truth >= candidates.size()) {
            throw new IllegalArgumentException(
                    "models are numbered from 0 to " + (candidates.size() - 1) + ", but the true one is " + truth);
        }
        if (!candidates.get(truth).model().equals(drawing.model())) {
            throw new IllegalArgumentException("litters are drawn from " + drawing.model() + ", but model " + truth
                    + " is " + candidates.get(truth).model());
        }
        return new Power(
                ImmutableList.copyOf(candidates),
                truth,
                drawing,
                plan,
                Optional.empty(),
                ComparedModels.bar(ComparedModels.USUAL_RISK, candidates.size() - 1),
                USUAL_SETS,
                null);
    }

    /**
     * Returns the question with a population by which the comparison weighs founders whose description names none.
     *
     * @param id id of a population that every model has
     * @return a copy
     */
    public Power from(String id) {
        return new Power(candidates, truth, drawing, plan, Optional.of(id), bar, sets, watch);
    }

    /**
     * Returns the question with another bar.
     *
     * @param ratio what a likelihood ratio has to reach; 20 for each rival unless stated ({@link ComparedModels#bar(double, int)})
     * @return a copy
     * @throws IllegalArgumentException if it is not a number above 1
     */
    public Power reaching(double ratio) {
        if (!(ratio > 1) || Double.isInfinite(ratio)) {
            throw new IllegalArgumentException("a bar is a number above 1, but was " + ratio);
        }
        return new Power(candidates, truth, drawing, plan, population, ratio, sets, watch);
    }

    /**
     * Returns the question with another number of sets.
     *
     * @param number how many sets are drawn, 1 to {@value #MOST_SETS}
     * @return a copy
     * @throws IllegalArgumentException if it is out of range
     */
    public Power drawing(int number) {
        if (number < 1 || number > MOST_SETS) {
            throw new IllegalArgumentException("expected 1 to " + MOST_SETS + " sets, but found " + number);
        }
        return new Power(candidates, truth, drawing, plan, population, bar, number, watch);
    }

    /**
     * Returns the question with somebody who watches.
     *
     * @param by is told now and then how many sets are done, by the thread that answers; what it throws ends the question
     * @return a copy
     */
    public Power watched(IntConsumer by) {
        return new Power(candidates, truth, drawing, plan, population, bar, sets, by);
    }

    /**
     * Draws the sets and compares them.
     *
     * @return how often the bar was reached
     * @throws ProblemsException if what is planned does not go with the model, nothing of it is spoken of by every model, or founders lack a
     *     population or frequencies that matter under one of them
     * @throws org.geneticsrules.simulation.TooRareException if no such parents or litters come up
     * @throws org.geneticsrules.problem.TooLargeException if records tie too much together for an exact comparison
     */
    public EstimatedPower estimate() {
        Iterator<DrawnPedigree> couples = drawing.couples(
                        new LitterPlan(plan.sire(), plan.dam(), 1, plan.littersOfEach(), plan.size(), plan.counted()))
                .iterator();
        DrawnEvidence evidence = new DrawnEvidence(candidates, drawing, plan, population, watch);
        Tally tally = new Tally();
        for (int done = 0; done < sets; ) {
            int together = Math.min(TOGETHER, sets - done);
            int[][] drawn = new int[together][plan.couples()];
            for (int[] set : drawn) {
                for (int c = 0; c < set.length; c++) {
                    set[c] = evidence.number(couples.next());
                }
            }
            evidence.compare(done);
            for (int[] set : drawn) {
                tally.add(set, evidence);
            }
            done += together;
            if (watch != null) {
                watch.accept(done);
            }
        }
        return tally.told(evidence);
    }

    /** Counts what sets of litters say. */
    private final class Tally {

        private final int[] reachedAfter = new int[plan.litters()];
        private final int[] reached = new int[candidates.size()];
        private final int[] atTheEnd = new int[candidates.size()];
        private final int[] misled = new int[candidates.size()];
        private int misledByAny;
        private int neither;

        void add(int[] couples, DrawnEvidence evidence) {
            double height = Math.log(bar) - ROUNDING;
            double[] sums = new double[candidates.size()];
            double[] ratios = new double[sums.length];
            boolean[] above = new boolean[sums.length];
            boolean[] below = new boolean[sums.length];
            above[truth] = true;
            int all = -1;
            int place = 0;
            for (int couple : couples) {
                for (double[] litter : evidence.litters(couple)) {
                    for (int m = 0; m < sums.length; m++) {
                        sums[m] += litter[m];
                    }
                    for (int rival = 0; rival < sums.length; rival++) {
                        boolean neitherCan =
                                sums[truth] == Double.NEGATIVE_INFINITY && sums[rival] == Double.NEGATIVE_INFINITY;
                        ratios[rival] = neitherCan ? ratios[rival] : sums[truth] - sums[rival];
                        above[rival] |= ratios[rival] >= height;
                        below[rival] |= -ratios[rival] >= height;
                    }
                    all = all < 0 && isAll(above) ? place : all;
                    place++;
                }
            }
            for (int t = all < 0 ? place : all; t < place; t++) {
                reachedAfter[t]++;
            }
            boolean any = false;
            for (int rival = 0; rival < sums.length; rival++) {
                reached[rival] += above[rival] ? 1 : 0;
                atTheEnd[rival] += ratios[rival] >= height ? 1 : 0;
                misled[rival] += below[rival] ? 1 : 0;
                any |= below[rival];
            }
            misledByAny += any ? 1 : 0;
            neither += !any && all < 0 ? 1 : 0;
        }

        EstimatedPower told(DrawnEvidence evidence) {
            List<AgainstRival> rivals = new ArrayList<>();
            for (int rival = 0; rival < candidates.size(); rival++) {
                if (rival != truth) {
                    rivals.add(new AgainstRival(rival, reached[rival], atTheEnd[rival], misled[rival]));
                }
            }
            return new EstimatedPower(
                    truth,
                    bar,
                    sets,
                    Arrays.stream(reachedAfter).boxed().toList(),
                    misledByAny,
                    neither,
                    rivals,
                    evidence.traits(),
                    evidence.dropped(),
                    drawing.randomness());
        }
    }

    private static boolean isAll(boolean[] all) {
        for (boolean one : all) {
            if (!one) {
                return false;
            }
        }
        return true;
    }
}
