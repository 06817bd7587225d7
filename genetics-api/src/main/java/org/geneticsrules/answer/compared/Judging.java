package org.geneticsrules.answer.compared;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.Assumption;
import org.geneticsrules.answer.recorded.RecordBasis;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.caution.QuestionKind;
import org.geneticsrules.caution.Role;
import org.geneticsrules.caution.Situation;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.comparison.FittedModel;
import org.geneticsrules.comparison.KitFit;
import org.geneticsrules.comparison.ModelComparison;
import org.geneticsrules.comparison.ModelFit;
import org.geneticsrules.document.Reference;
import org.geneticsrules.model.Population;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Taxon;

/** Puts together how well litters go with one model, and what every answer about litters has in common. */
final class Judging {

    /** What every answer about litters says, be they recorded, planned or drawn. */
    static final String NO_ADVICE =
            "nothing here says that a mating is advisable; no mating is to be made or repeated only to learn from it,"
                    + " where hearing, health or inbreeding speak against it";

    final ModelComparison question;
    final RecordBasis basis;
    final Pedigree pedigree;
    final int draws;
    final long seed;
    final Taxon.Young young;
    final Map<String, Assumption> taken = new TreeMap<>();
    final Set<String> notices;

    Judging(ModelComparison question, RecordBasis basis, Pedigree pedigree, int draws, long seed) {
        this.question = question;
        this.basis = basis;
        this.pedigree = pedigree;
        this.draws = draws;
        this.seed = seed;
        this.young = basis.answers().young();
        this.notices = new LinkedHashSet<>(basis.notices());
    }

    LitterAnswer fit() {
        Origin from = origin(asked -> ModelFit.of(asked, 0).drawing(draws, seed).judge());
        FittedModel fit = from.fit();
        requireKits(fit.kits().size());
        List<FitOtherwise> otherwise = otherwise(from.population());
        return answer(
                "How well do these litters go with \"" + fit.name() + "\"?",
                verdict(fit, otherwise),
                fit.isImpossible() || fit.p().isPresent(),
                Optional.of(fit),
                otherwise,
                Optional.empty(),
                from.population());
    }

    /** How well litters go with the model where founders are as in another of its populations; not asked where the records name theirs. */
    private List<FitOtherwise> otherwise(Optional<Population> population) {
        List<FitOtherwise> all = new ArrayList<>();
        for (String id : others(population.map(Population::id))) {
            String assumed = founders(id);
            attempt(assumed, () -> {
                FittedModel fit =
                        ModelFit.of(question.from(id), 0).drawing(draws, seed).judge();
                all.add(new FitOtherwise(assumed, fit.isRejected(), fit.p(), fit.standardError()));
            });
        }
        return all;
    }

    /** The other populations that all models have; none if no population is assumed. */
    List<String> others(Optional<String> population) {
        return population
                .map(named -> populations(question).stream()
                        .filter(id -> !id.equals(named))
                        .toList())
                .orElse(List.of());
    }

    static String founders(String population) {
        return "founders as in \"" + population + "\"";
    }

    /** Asks under another assumption, and tells if that cannot be told. */
    void attempt(String assumed, Runnable question) {
        try {
            question.run();
        } catch (TooLargeException e) {
            notices.add("how it comes out with " + assumed + " would take more work than allowed");
        } catch (ProblemsException e) {
            notices.add("how it comes out with " + assumed + " cannot be told: a frequency that matters is not stated");
        }
    }

    /** Refuses records that say nothing of inheritance. */
    static void requireKits(int kits) {
        if (kits == 0) {
            throw new ProblemsException(Problem.of(
                            Stage.MEANING,
                            "no-kits",
                            "",
                            "no kit of a recorded litter has a look or a test that is compared")
                    .expecting("litters of which something is recorded of the kits"));
        }
    }

    /** By which population founders are weighed, and what came of it. */
    record Origin(Optional<Population> population, FittedModel fit) {}

    private Origin origin(Function<ModelComparison, FittedModel> judge) {
        Optional<String> named = population(question);
        ModelComparison asked = named.map(question::from).orElse(question);
        return new Origin(
                named.map(id -> Objects.requireNonNull(
                        basis.answers().compiled().model().populations().get(id))),
                judge.apply(asked));
    }

    /** The population named; else none, if the records state it of all; else the first that all models have. */
    Optional<String> population(ModelComparison asked) {
        if (basis.population().isPresent()) {
            return basis.population();
        }
        try {
            asked.compare();
            return Optional.empty();
        } catch (ProblemsException e) {
            if (!e.problems().stream().allMatch(problem -> problem.code().equals("population-needed"))) {
                throw e;
            }
            List<String> shared = populations(asked);
            for (String id : shared) {
                try {
                    asked.from(id).compare();
                    return Optional.of(id);
                } catch (ProblemsException other) {
                    if (!other.problems().stream()
                            .allMatch(problem -> problem.code().equals("population-needed"))) {
                        throw other;
                    }
                    notices.add("population \"" + id + "\" names no frequencies for all loci that matter here");
                }
            }
            throw new ProblemsException(Problem.of(
                            Stage.MEANING,
                            "population-needed",
                            "",
                            "no population that all of these models have names the frequencies that matter here")
                    .expecting("a population for founders, in the records or by name"));
        }
    }

    /** Populations that all models have, in the order of the first. */
    static List<String> populations(ModelComparison asked) {
        return populations(asked.candidates());
    }

    /** The same of some models. */
    static List<String> populations(List<Candidate> candidates) {
        List<String> shared = new ArrayList<>();
        candidates.get(0).model().populations().keySet().forEach(id -> {
            if (candidates.stream().allMatch(one -> one.model().populations().containsKey(id))) {
                shared.add(id);
            }
        });
        return shared;
    }

    /** Whether an exact answer takes no more room than allowed. */
    static boolean isSmall(ModelComparison both) {
        List<String> shared = populations(both);
        try {
            (shared.isEmpty() ? both : both.from(shared.get(0))).compare();
            return true;
        } catch (TooLargeException e) {
            return false;
        }
    }

    private String verdict(FittedModel fit, List<FitOtherwise> otherwise) {
        List<KitFit> impossible = fit.kits().stream()
                .filter(kit -> kit.standing() == KitFit.Standing.IMPOSSIBLE)
                .toList();
        if (fit.isImpossible()) {
            return (impossible.isEmpty()
                            ? "The records exclude one another under this model, and no single " + young.one()
                                    + " decides it."
                            : "Under this model " + listed(impossible) + " cannot be, given the other records.")
                    + " Look again, ask whether the recorded parents are the parents, or allow for errors of naming;"
                    + " or the model is mistaken.";
        }
        String rare = fit.kits().stream().anyMatch(kit -> kit.standing() == KitFit.Standing.UNLIKELY)
                ? " Unlikely, though possible: "
                        + listed(fit.kits().stream()
                                .filter(kit -> kit.standing() == KitFit.Standing.UNLIKELY)
                                .toList())
                        + "."
                : "";
        if (fit.p().isEmpty()) {
            return "Nothing that was recorded is impossible under this model; how likely all of it is together was not found out."
                    + rare;
        }
        double p = fit.p().get();
        String left = fit.untested() == 0
                ? ""
                : " Of " + fit.untested() + (fit.untested() == 1 ? " litter" : " litters")
                        + " more that is not known; see below.";
        return (p < FittedModel.USUAL_RISK
                        ? "These litters go badly with the model: only " + Ratios.chance(p)
                                + " of all sets like them are as unlikely as they are, or more. That speaks against the model as a"
                                + " whole, or against how litters were recorded; it does not say which of its rules is wrong."
                        : "These litters go with the model: " + Ratios.chance(p)
                                + " of all sets like them are as unlikely as they are, or more. That does not prove it; others may"
                                + " go with them as well.")
                + left
                + rare
                + turns(fit, otherwise);
    }

    /** In which other populations it would be the other way round. */
    private static String turns(FittedModel fit, List<FitOtherwise> otherwise) {
        List<String> turning = otherwise.stream()
                .filter(one -> one.rejected()
                        ? !fit.isRejected()
                        : fit.isRejected() && one.p().isPresent())
                .map(FitOtherwise::assumed)
                .toList();
        return turning.isEmpty() ? "" : " That turns with " + Ratios.some(turning, ", ", ", or with ") + ".";
    }

    private String listed(List<KitFit> kits) {
        List<String> words = new ArrayList<>();
        kits.stream().limit(5).forEach(kit -> words.add(kit.kit() + " of litter " + kit.litter()));
        if (kits.size() > 5) {
            words.add((kits.size() - 5) + " more");
        }
        return String.join(", ", words);
    }

    /** Everything that goes with what was found. */
    LitterAnswer answer(
            String asked,
            String verdict,
            boolean decided,
            Optional<FittedModel> fit,
            List<FitOtherwise> fitOtherwise,
            Optional<Standings> comparison,
            Optional<Population> population) {
        assume(population);
        notices.add(NO_ADVICE);
        Answers answers = basis.answers();
        List<Phenotype> looks = looks(pedigree);
        Set<Caution> cautions = new LinkedHashSet<>(answers.cautions(Situation.of(QuestionKind.LITTER.word())
                .with(Role.OFFSPRING, looks)
                .with(Role.ANIMAL, looks)));
        if (comparison.isPresent()) {
            cautions.addAll(answers.cautions(Situation.of(QuestionKind.HYPOTHESIS.word())));
        }
        return new LitterAnswer(
                asked,
                verdict,
                decided,
                given(),
                fit,
                fitOtherwise,
                comparison,
                new ArrayList<>(taken.values()),
                Answers.rivals(basis.evidence()),
                new ArrayList<>(cautions),
                basis.evidence(),
                answers.compiled().model().reference(),
                new Reference(pedigree.id(), pedigree.version(), Optional.empty()),
                new ArrayList<>(notices));
    }

    private List<String> given() {
        long born = pedigree.litters().size();
        List<String> given = new ArrayList<>();
        given.add(born + (born == 1 ? " litter" : " litters") + " of " + pedigree);
        given.add("traits compared: " + String.join(", ", question.records().traits()));
        question.records().dropped().forEach(one -> given.add("left out: " + one));
        return given;
    }

    /** What was seen of anybody. */
    static List<Phenotype> looks(Pedigree pedigree) {
        Set<Phenotype> looks = new LinkedHashSet<>();
        for (Individual one : pedigree.individuals().values()) {
            one.observations().forEach(seen -> looks.addAll(seen.looks()));
        }
        return new ArrayList<>(looks);
    }

    /** Takes for granted what every answer about litters does. */
    void assume(Optional<Population> population) {
        basis.assumptions().forEach(this::take);
        population
                .filter(one -> basis.population().isEmpty())
                .map(Judging::foundersAsIn)
                .ifPresent(this::take);
        take(new Assumption(
                "founders-given",
                "What was recorded of founders is taken as given, and no evidence for or against a model.",
                "Which looks are common among founders would count if founders were a sample of a known population."));
        List<String> silent = pedigree.litters().values().stream()
                .filter(litter -> litter.ascertainment() instanceof Ascertainment.Unknown)
                .map(Litter::id)
                .toList();
        if (!silent.isEmpty()) {
            take(new Assumption(
                    "litters-complete",
                    "The litters of which nobody wrote down why they are recorded ("
                            + (silent.size() > 5 ? silent.size() + " of them" : String.join(", ", silent))
                            + ") would have been recorded whatever they showed.",
                    "Litters that were noticed for a rare look hold more of it than others do; say how each came to be"
                            + " recorded."));
        }
        if (question.candidates().size() > 1) {
            NoticedAgain.assumed(question, pedigree).ifPresent(this::take);
        }
    }

    private void take(Assumption one) {
        taken.put(one.id(), one);
    }

    /** That founders come from a population which nobody stated. */
    static Assumption foundersAsIn(Population one) {
        return new Assumption(
                "population",
                "Founders and unrecorded parents for whom no population is stated are as in population \"" + one.id()
                        + "\"" + one.title().map(title -> " (" + title + ")").orElse("") + ".",
                "Other frequencies give other chances; name another population.");
    }
}
