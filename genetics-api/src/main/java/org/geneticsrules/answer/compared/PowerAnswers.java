package org.geneticsrules.answer.compared;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.IntConsumer;
import java.util.stream.Collectors;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.Assumption;
import org.geneticsrules.answer.MatingQuestion;
import org.geneticsrules.answer.RivalModel;
import org.geneticsrules.answer.recorded.RecordBasis;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.caution.QuestionKind;
import org.geneticsrules.caution.Role;
import org.geneticsrules.caution.Situation;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.planning.EstimatedPower;
import org.geneticsrules.planning.Power;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.simulation.LitterPlan;
import org.geneticsrules.simulation.PlannedLook;
import org.geneticsrules.simulation.PlannedTest;
import org.geneticsrules.simulation.Simulation;
import org.geneticsrules.simulation.TooRareException;
import org.geneticsrules.simulation.Whom;

/**
 * Answers how often litters of a plan would tell the model in use from its rivals, if it is true.
 *
 * <pre>{@code
 * PowerAnswers.of(answers).power(PowerQuestion.of(sire, dam, drawing, plan), List.of(another));
 * }</pre>
 *
 * <p>Litters are drawn and compared by {@link Power}. What a mating of such parents may raise in cautions is what {@link Answers#mating} raises.
 *
 * <p>Immutable and thread-safe.
 */
public final class PowerAnswers {

    private final Answers answers;
    private final Optional<String> population;
    private final IntConsumer watch;

    private PowerAnswers(Answers answers, Optional<String> population, IntConsumer watch) {
        this.answers = answers;
        this.population = population;
        this.watch = watch;
    }

    /**
     * Answers under a model.
     *
     * @param answers the model from which litters are drawn, its cautions and rivals
     * @return the answering service
     */
    public static PowerAnswers of(Answers answers) {
        return new PowerAnswers(answers, Optional.empty(), done -> {});
    }

    /**
     * Returns the same with a population by which the comparison weighs parents for whom the plan names none.
     *
     * @param id id of a population that every model has
     * @return a copy
     */
    public PowerAnswers from(String id) {
        return new PowerAnswers(answers, Optional.of(id), watch);
    }

    /**
     * Returns the same with somebody who watches.
     *
     * @param by is told now and then how many sets are done; what it throws ends the question
     * @return a copy
     */
    public PowerAnswers watched(IntConsumer by) {
        return new PowerAnswers(answers, population, by);
    }

    /**
     * Answers with the rivals that the model is asked with ({@link RivalModel}), as far as they speak of all that is planned to be written
     * down of which the model speaks.
     *
     * @param question the plan
     * @return the answer
     * @throws ProblemsException if there is no such rival, or as {@link Power#estimate}
     * @throws TooRareException if no such parents or litters come up
     */
    public PowerAnswer power(PowerQuestion question) {
        Candidate first = first();
        List<Candidate> candidates = new ArrayList<>(List.of(first));
        List<String> left = new ArrayList<>();
        List<Candidate> alike = new ArrayList<>();
        Set<String> spoken = probe(question, List.of(first, first.called(first.name() + " again")))
                .traits();
        for (RivalModel rival : answers.against()) {
            try {
                Candidate other =
                        LitterAnswers.named(Candidate.of(rival.compiled()).called(rival.title()), candidates);
                if (!probe(question, List.of(first, other)).traits().equals(spoken)) {
                    left.add("\"" + rival.title() + "\"");
                } else if (isNever(question, first, other, spoken)) {
                    alike.add(other);
                } else {
                    candidates.add(other);
                }
            } catch (ProblemsException | TooLargeException | IllegalArgumentException notOfThisPlan) {
                left.add("\"" + rival.title() + "\"");
            }
        }
        if (candidates.size() == 1) {
            candidates.addAll(alike);
            alike.clear();
        }
        if (candidates.size() == 1) {
            throw new ProblemsException(Problem.of(
                            Stage.MEANING,
                            "no-rival",
                            "",
                            "there is no rival that speaks of all that is planned to be written down"
                                    + (left.isEmpty() ? "" : ": " + String.join(", ", left)))
                    .expecting("a model or a patch to hold against it"));
        }
        return answer(question, candidates, left, alike);
    }

    /**
     * Answers with named rivals. What one of them leaves open is left out for all, and told.
     *
     * @param question the plan
     * @param others the models to be told from the one in use
     * @return the answer
     * @throws ProblemsException as {@link Power#estimate}
     * @throws TooRareException if no such parents or litters come up
     */
    public PowerAnswer power(PowerQuestion question, List<Candidate> others) {
        List<Candidate> candidates = new ArrayList<>(List.of(first()));
        others.forEach(other -> candidates.add(LitterAnswers.named(other, candidates)));
        return answer(question, candidates, List.of(), List.of());
    }

    private Candidate first() {
        Model model = answers.compiled().model();
        return Candidate.of(answers.compiled()).called(model.title().orElse(model.id()));
    }

    /** Draws a single set, to see whether it can be compared. */
    private EstimatedPower probe(PowerQuestion question, List<Candidate> candidates) {
        return asked(question, candidates).drawing(1).estimate();
    }

    private Power asked(PowerQuestion question, List<Candidate> candidates) {
        Power power = Power.of(candidates, 0, question.drawing(), question.plan());
        return population.map(power::from).orElse(power);
    }

    private PowerAnswer answer(
            PowerQuestion question, List<Candidate> candidates, List<String> left, List<Candidate> alike) {
        EstimatedPower power = asked(question, candidates)
                .drawing(question.sets())
                .watched(watch)
                .estimate();
        List<Integer> inseparable = power.rivals().stream()
                .filter(rival -> rival.reached() == 0)
                .map(EstimatedPower.AgainstRival::rival)
                .filter(rival -> isNever(question, candidates.get(0), candidates.get(rival), power.traits()))
                .toList();
        Set<String> notices = new LinkedHashSet<>();
        List<Caution> cautions = cautions(question, power, notices);
        if (!left.isEmpty()) {
            notices.add(
                    "rival models that were not compared, because they do not know such parents, leave a trait open, or would"
                            + " take more work than allowed: " + String.join(", ", left));
        }
        if (!alike.isEmpty()) {
            notices.add("rival models that no mating tells from it by these looks, and that were not compared: "
                    + quoted(alike));
        }
        power.dropped().forEach(one -> notices.add("left out: " + one));
        notices.add("all of these animals are drawn; none of them lives");
        notices.add("records of litters that there are come first");
        notices.add(Judging.NO_ADVICE);
        RecordBasis basis = basis(question, power);
        return new PowerAnswer(
                "How often would " + litters(question.plan()) + " tell \""
                        + candidates.get(0).name() + "\" from "
                        + (candidates.size() == 2
                                ? "\"" + candidates.get(1).name() + "\""
                                : (candidates.size() - 1) + " rivals")
                        + ", if it is true?",
                verdict(question, candidates, power, inseparable),
                given(question),
                question.plan(),
                power,
                candidates.stream()
                        .map(one ->
                                new PowerAnswer.Compared(one.name(), one.model().reference()))
                        .toList(),
                inseparable,
                assumptions(question, basis),
                Answers.rivals(basis.evidence()),
                cautions,
                basis.evidence(),
                answers.compiled().model().reference(),
                new ArrayList<>(notices));
    }

    /** Whether it is proved that no number of litters helps. Nothing is proved of what tests of kits would tell. */
    private static boolean isNever(PowerQuestion question, Candidate one, Candidate other, Set<String> traits) {
        return question.drawing().tests().stream().allMatch(test -> test.whom() == Whom.FOUNDERS)
                && Favouring.inseparable(one.model(), other.model(), traits);
    }

    private static String quoted(List<Candidate> models) {
        return models.stream().map(one -> "\"" + one.name() + "\"").collect(Collectors.joining(", "));
    }

    // ---- what goes with it -----------------------------------------------------------------------------------------

    /** What records of one such couple rest on. */
    private RecordBasis basis(PowerQuestion question, EstimatedPower power) {
        LitterPlan plan = question.plan();
        Pedigree example = question.drawing()
                .couples(new LitterPlan(plan.sire(), plan.dam(), 1, 1, plan.size(), plan.counted()))
                .map(drawn -> drawn.records())
                .findFirst()
                .orElseThrow();
        RecordedAnswers recorded =
                RecordedAnswers.of(answers, example).with(question.drawing().confusions());
        return population
                .filter(id -> answers.compiled().model().populations().containsKey(id))
                .map(recorded::from)
                .orElse(recorded)
                .basis(power.traits(), true);
    }

    private List<Caution> cautions(PowerQuestion question, EstimatedPower power, Set<String> notices) {
        List<Caution> stated = answers.cautions(Situation.of(QuestionKind.HYPOTHESIS.word())
                .with(
                        Role.PARENT,
                        List.of(question.sire().looks(), question.dam().looks())));
        Set<Caution> due = new LinkedHashSet<>(stated);
        MatingQuestion mating =
                MatingQuestion.of(question.sire(), question.dam()).inTraits(power.traits());
        Optional<PlannedLook> look = question.drawing().looks().stream()
                .filter(one -> one.whom() != Whom.FOUNDERS)
                .findFirst();
        try {
            due.addAll(answers.mating(look.map(one -> mating.at(one.stage())).orElse(mating))
                    .cautions());
        } catch (ProblemsException | TooLargeException notWorkedOut) {
            notices.add("which cautions the looks of such kits raise was not worked out; ask about the mating itself");
        }
        stated.stream()
                .filter(Caution::excludes)
                .forEach(caution -> notices.add("the caution \"" + caution.id()
                        + "\" speaks against matings of such parents; they are drawn here, and not to be made"));
        return ImmutableList.copyOf(due);
    }

    private List<Assumption> assumptions(PowerQuestion question, RecordBasis basis) {
        Map<String, Assumption> taken = new LinkedHashMap<>();
        basis.assumptions().forEach(one -> taken.put(one.id(), one));
        taken.remove("records");
        taken.put(
                "truth",
                new Assumption(
                        "truth",
                        "The litters are drawn from the first model, as if all of it were true, its frequencies included.",
                        "If another model is true, other litters come up; ask again with that model in use."));
        taken.put(
                "parents-as-recorded",
                new Assumption(
                        "parents-as-recorded",
                        "The comparison knows of the parents what is written down of them, and their population.",
                        "Parents who carry what no test of theirs tells are judged as any that look so; then a wrong model may"
                                + " be ahead more often than in 1 of 20 sets."));
        if (!(question.drawing().ascertainment() instanceof Ascertainment.Complete)) {
            taken.put(
                    "ascertainment",
                    new Assumption(
                            "ascertainment",
                            "Litters come to be recorded in the way stated, and that is written down of each.",
                            "Litters noticed in another way hold more or less of the look they are noticed for."));
            if (question.plan().littersOfEach() > 1) {
                taken.put(
                        "all-noticed",
                        new Assumption(
                                "all-noticed",
                                "Couples are drawn all of whose litters are noticed; the comparison takes each litter as noticed by"
                                        + " itself, given those before it.",
                                "Where parents may be of several genotypes, those whose young show the look more often are more"
                                        + " frequent among such couples than the comparison knows; then a wrong model may be ahead"
                                        + " more often than in 1 of 20 sets. With one litter of each couple that is not so."));
            }
        }
        return ImmutableList.copyOf(taken.values());
    }

    private static List<String> given(PowerQuestion question) {
        Simulation drawing = question.drawing();
        List<String> given = new ArrayList<>();
        given.add(
                litters(question.plan()) + ", each of " + question.plan().size().name() + " that are "
                        + question.plan().counted().word());
        question.sire().given().forEach(fact -> given.add("sire: " + fact));
        question.dam().given().forEach(fact -> given.add("dam: " + fact));
        question.plan().sire().population().ifPresent(id -> given.add("parents from population \"" + id + "\""));
        drawing.looks().forEach(look -> given.add("written down: " + look(look)));
        drawing.tests().forEach(test -> given.add("written down: " + test(test)));
        given.add("recorded: " + drawing.ascertainment());
        given.add("drawn with " + drawing.randomness());
        return ImmutableList.copyOf(given);
    }

    private static String look(PlannedLook look) {
        String when = look.stage().toString();
        return String.join(", ", look.traits()) + " of " + whom(look.whom()) + (when.isBlank() ? "" : " at " + when)
                + look.light().map(light -> " in " + light).orElse("");
    }

    private static String test(PlannedTest test) {
        return "DNA tests of " + whom(test.whom()) + " at " + test.locus();
    }

    private static String whom(Whom whom) {
        return switch (whom) {
            case ALL -> "everybody";
            case FOUNDERS -> "parents";
            case KITS -> "kits";
        };
    }

    // ---- words -----------------------------------------------------------------------------------------------------

    private static String litters(LitterPlan plan) {
        return plan.couples() == 1
                ? number(plan.littersOfEach(), "litter") + " of one couple"
                : number(plan.litters(), "litter") + " of " + plan.couples() + " couples";
    }

    private static String number(int count, String what) {
        return count + " " + what + (count == 1 ? "" : "s");
    }

    private static String verdict(
            PowerQuestion question, List<Candidate> candidates, EstimatedPower power, List<Integer> inseparable) {
        String bar = String.format(Locale.ROOT, "%.0f : 1", power.bar());
        String title = "\"" + candidates.get(0).name() + "\"";
        if (!inseparable.isEmpty()) {
            return "However many litters there are, no mating tells " + title + " from "
                    + quoted(inseparable.stream().map(candidates::get).toList()) + " by these looks."
                    + (inseparable.size() + 1 < candidates.size() ? " How it goes with the others is told below." : "");
        }
        OptionalInt median = power.littersUntil(0.5);
        return "If " + title + " is true, " + litters(question.plan())
                + (question.plan().litters() == 1 ? " lifts" : " lift") + " it to the bar of " + bar + " over "
                + (candidates.size() == 2 ? "the other model" : "every rival") + " in "
                + Shares.share(power, power.reached())
                + " of cases (between "
                + Shares.least(power, power.reached()) + " and "
                + Shares.most(power, power.reached()) + "). In "
                + Shares.share(power, power.misled()) + " a wrong model gets there. "
                + (median.isPresent()
                        ? "Half of the cases need " + number(median.getAsInt(), "litter")
                                + (median.getAsInt() == 1 ? "." : " or fewer.")
                        : "For half of the cases so many litters are not enough.");
    }
}
