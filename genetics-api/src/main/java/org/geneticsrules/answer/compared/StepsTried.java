package org.geneticsrules.answer.compared;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.geneticsrules.answer.compared.TellApartAnswer.LeftOut;
import org.geneticsrules.answer.compared.TellApartAnswer.Tried;
import org.geneticsrules.answer.recorded.Progress;
import org.geneticsrules.planning.Distinguishing;
import org.geneticsrules.planning.Effort;
import org.geneticsrules.planning.Outcome;
import org.geneticsrules.planning.Step;
import org.geneticsrules.planning.Worth;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Catalogue;

/** Finds out what steps are worth, and which of them are worth telling. */
final class StepsTried {

    /** So many steps of one effort are told. */
    private static final int MOST_TOLD = 6;

    /** What clears up less than this share of what the best step does is not told by itself. */
    private static final double LEAST = 0.01;

    /** So many looks of a kit are told. */
    private static final int MOST_LOOKS = 6;

    private static final double SAME = 1e-9;

    private final Distinguishing asked;
    private final Catalogue catalogue;
    private final Progress progress;
    private final Map<Effort, List<Found>> telling = new EnumMap<>(Effort.class);
    private final Map<Effort, Integer> nothing = new EnumMap<>(Effort.class);
    private final Map<Effort, Integer> tried = new EnumMap<>(Effort.class);
    private final Map<Effort, Integer> little = new EnumMap<>(Effort.class);
    private final Map<String, Set<String>> refused = new LinkedHashMap<>();
    private final Map<Integer, Set<String>> fewer = new TreeMap<>();
    private final List<LeftOut> leftOut = new ArrayList<>();
    private final Set<String> settled = new LinkedHashSet<>();

    /** A step that tells something. */
    private record Found(PossibleSteps.Possible of, Worth worth) {}

    private long done;
    private long all = 1;

    StepsTried(Distinguishing asked, Progress progress) {
        this.asked = asked.watched(this::tick);
        this.catalogue = asked.candidates().get(0).model().catalogue();
        this.progress = progress;
    }

    /** Tries steps, and returns those that are told, in order. */
    List<ApartStep> of(List<PossibleSteps.Possible> possible) {
        all = possible.size() + 1L;
        Distinguishing withoutNumbers = asked.surely();
        for (PossibleSteps.Possible one : possible) {
            attempt(withoutNumbers, one);
            done++;
            tick();
        }
        double best = telling.values().stream()
                .flatMap(List::stream)
                .mapToDouble(one -> one.worth().bits())
                .max()
                .orElse(0);
        List<ApartStep> told = new ArrayList<>();
        telling.forEach((effort, of) -> {
            List<Found> kept = of.stream()
                    .filter(one ->
                            one.worth().bits() >= LEAST * best && of.stream().noneMatch(other -> asMuch(other, one)))
                    .sorted(Comparator.comparingDouble(
                            one -> -Math.rint(one.worth().bits() * 1e9)))
                    .limit(MOST_TOLD)
                    .toList();
            little.put(effort, of.size() - kept.size());
            kept.forEach(one -> told.add(told(one)));
        });
        done = all;
        tick();
        return told;
    }

    /** Whether a look at fewer traits of the same animals says as much as another. */
    private static boolean asMuch(Found fewer, Found more) {
        List<String> one = traits(fewer);
        List<String> all = traits(more);
        return one.size() < all.size()
                && all.containsAll(one)
                && fewer.worth().animals().equals(more.worth().animals())
                && fewer.worth().bits() >= more.worth().bits() - SAME;
    }

    private static List<String> traits(Found one) {
        return one.worth().step() instanceof Step.Look look
                ? look.traits()
                : one.worth().step() instanceof Step.Kits kits ? kits.traits() : List.of();
    }

    private void tick() {
        progress.at(done, all);
    }

    private void attempt(Distinguishing withoutNumbers, PossibleSteps.Possible one) {
        Effort effort = one.step().effort();
        String words = ApartWords.step(one.step(), catalogue);
        tried.merge(effort, 1, Integer::sum);
        Worth worth;
        try {
            worth = worth(withoutNumbers, one.step());
        } catch (ProblemsException e) {
            if (e.problems().stream().anyMatch(problem -> problem.code().equals("population-needed"))) {
                throw e;
            }
            e.problems().stream()
                    .map(Problem::message)
                    .forEach(why -> refused.computeIfAbsent(why, key -> new LinkedHashSet<>())
                            .add(words));
            return;
        } catch (TooLargeException e) {
            refused.computeIfAbsent(String.valueOf(e.getMessage()), key -> new LinkedHashSet<>())
                    .add(words);
            return;
        }
        String reason = worth.reason().orElse("no reason is known");
        switch (worth.standing()) {
            case TELLS ->
                telling.computeIfAbsent(effort, key -> new ArrayList<>()).add(new Found(one, worth));
            case TELLS_NOTHING -> nothing.merge(effort, 1, Integer::sum);
            case NOT_WORKED_OUT ->
                refused.computeIfAbsent(reason, key -> new LinkedHashSet<>()).add(words);
            case NOT_PROPOSED -> leftOut.add(new LeftOut(words, reason, Optional.empty()));
            case SETTLED -> settled.add(reason);
        }
    }

    /** What a step is worth; of kits, if so many would take too much work, what half of them are, and so on. */
    private Worth worth(Distinguishing withoutNumbers, Step step) {
        Worth all = withoutNumbers.worth(step);
        Worth worth = all;
        while (worth.standing() == Worth.Standing.NOT_WORKED_OUT
                && worth.step() instanceof Step.Kits kits
                && kits.kits() > 1) {
            worth = withoutNumbers.worth(new Step.Kits(
                    kits.effort(),
                    kits.sire(),
                    kits.dam(),
                    kits.kits() / 2,
                    kits.litters(),
                    kits.traits(),
                    kits.stage(),
                    kits.light()));
        }
        if (worth.standing() == Worth.Standing.NOT_WORKED_OUT) {
            return all; // with its own reason
        }
        if (worth.step() instanceof Step.Kits kits && !kits.equals(step)) {
            fewer.computeIfAbsent(kits.kits(), number -> new LinkedHashSet<>()).add(ApartWords.step(step, catalogue));
        }
        return worth;
    }

    /** A step with all that is told of it. */
    private ApartStep told(Found found) {
        Worth worth = found.worth();
        List<ApartStep.KitLook> looks = List.of();
        if (worth.step() instanceof Step.Kits kits) {
            worth = asked.worth(kits);
            looks = looks(kits);
        }
        List<String> says = new ArrayList<>();
        looks.forEach(look -> says.add(ApartWords.look(look)));
        says.addAll(ApartWords.says(worth, asked.candidates().size(), asked.bar()));
        ApartWords.cleared(worth.bits(), asked.beliefs()).ifPresent(says::add);
        return new ApartStep(
                ApartWords.step(worth.step(), catalogue),
                worth,
                found.of().alike(),
                looks,
                says,
                found.of().concerns());
    }

    /** How likely one kit is to show something, where models differ. */
    private List<ApartStep.KitLook> looks(Step.Kits kits) {
        Step one =
                new Step.Kits(kits.effort(), kits.sire(), kits.dam(), 1, 1, kits.traits(), kits.stage(), kits.light());
        return asked.surely().worth(one).outcomes().stream()
                .filter(outcome -> spread(outcome) > SAME)
                .sorted(Comparator.comparingDouble(outcome -> -spread(outcome)))
                .limit(MOST_LOOKS)
                .map(outcome -> new ApartStep.KitLook(
                        outcome.found().keySet().iterator().next(), outcome.chances()))
                .toList();
    }

    private static double spread(Outcome outcome) {
        double most = outcome.chances().stream().mapToDouble(one -> one).max().orElse(0);
        return most - outcome.chances().stream().mapToDouble(one -> one).min().orElse(0);
    }

    /** How many were tried, by effort. */
    List<Tried> tried(Map<Effort, Integer> left) {
        List<Tried> all = new ArrayList<>();
        for (Effort effort : Effort.values()) {
            int of = tried.getOrDefault(effort, 0);
            int more = left.getOrDefault(effort, 0);
            if (of + more > 0) {
                all.add(new Tried(effort, of, nothing.getOrDefault(effort, 0), little.getOrDefault(effort, 0), more));
            }
        }
        return all;
    }

    /** What was not proposed. */
    List<LeftOut> leftOut() {
        return leftOut;
    }

    /** Why nothing more is needed of some animals. */
    Set<String> settled() {
        return settled;
    }

    /** What could not be worked out, and why, once for each reason; and what was worked out of fewer kits. */
    List<String> notWorkedOut() {
        List<String> told = new ArrayList<>();
        fewer.forEach((number, steps) -> told.add("worked out of " + number + (number == 1 ? " kit" : " kits")
                + " only, since more would take too much work: " + String.join("; ", steps)));
        refused.forEach((why, steps) -> told.add((steps.size() == 1
                        ? "not worked out: " + steps.iterator().next()
                        : steps.size() + " steps were not worked out, such as: "
                                + steps.iterator().next())
                + ": " + why));
        return told;
    }
}
