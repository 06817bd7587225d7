package org.geneticsrules.answer.compared;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import org.geneticsrules.answer.recorded.RecordBasis;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.comparison.ComparedModels;
import org.geneticsrules.comparison.ComparedModels.LeftOut;
import org.geneticsrules.comparison.FittedModel;
import org.geneticsrules.comparison.ModelComparison;
import org.geneticsrules.comparison.ModelFit;
import org.geneticsrules.hypothesis.Comparison;
import org.geneticsrules.hypothesis.WhatMoves;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Confusion;
import org.geneticsrules.trait.Confusions;
import org.jspecify.annotations.Nullable;

/** Puts together which of several models litters favour. */
final class Favouring {

    /** Leaving out each of more litters than these is not tried. */
    private static final int MOST_LEFT_OUT = 200;

    /** Nor is it where more litters are related than these. */
    private static final int MOST_RELATED = 12;

    /** Pairs of models that are alike and are asked whether they always are. */
    private static final int MOST_PAIRS = 20;

    private static final int MISREAD_OF = 100;

    private final ModelComparison question;
    private final Judging judging;
    private final List<Candidate> candidates;
    private final int draws;
    private final long seed;

    Favouring(ModelComparison question, RecordBasis basis, Pedigree pedigree, List<String> left, int draws, long seed) {
        this.question = question;
        this.judging = new Judging(question, basis, pedigree, draws, seed);
        this.candidates = question.candidates();
        this.draws = draws;
        this.seed = seed;
        if (!left.isEmpty()) {
            judging.notices.add(
                    "rival models that were not compared, because they do not know these records, leave a recorded"
                            + " trait open, or would take more work than allowed: " + String.join(", ", left));
        }
    }

    LitterAnswer answer() {
        Optional<String> named = judging.population(question);
        ModelComparison asked = named.map(question::from).orElse(question);
        ComparedModels compared = asked.compare();
        Optional<FittedModel> fit = compared.best().isPresent()
                ? Optional.of(ModelFit.of(asked, compared.best().getAsInt())
                        .drawing(draws, seed)
                        .judge())
                : Optional.empty();
        Judging.requireKits(compared.kits());
        Optional<FittedModel> other = fit.filter(FittedModel::isRejected).flatMap(best -> fitting(asked, compared));
        Standings standings = standings(asked, named, compared);
        return judging.answer(
                candidates.size() == 1
                        ? "Which model do these litters favour?"
                        : "Which of " + candidates.size() + " models do these litters favour, and does any fit?",
                verdict(standings, fit, other),
                decided(standings, fit, other),
                fit,
                List.of(),
                Optional.of(standings),
                named.map(id -> Objects.requireNonNull(
                        candidates.get(0).model().populations().get(id))));
    }

    /** A model that goes with the litters, where the best does not. */
    private Optional<FittedModel> fitting(ModelComparison asked, ComparedModels compared) {
        for (int m = 0; m < candidates.size(); m++) {
            if (!compared.impossible(m) && m != compared.best().orElseThrow()) {
                FittedModel fit = ModelFit.of(asked, m).drawing(draws, seed).judge();
                if (!fit.isRejected()) {
                    return Optional.of(fit);
                }
            }
        }
        return Optional.empty();
    }

    private Standings standings(ModelComparison asked, Optional<String> named, ComparedModels compared) {
        List<Standings.Standing> models = new ArrayList<>();
        List<Double> posteriors = compared.posteriors();
        if (posteriors.isEmpty() && compared.best().isPresent()) {
            judging.notices.add("of the models compared, none that was believed in beforehand allows these records:"
                    + " what may be believed afterwards has no number, and is told as 0 of each");
        }
        boolean fitted = candidates.stream().anyMatch(one -> one.fitted() > 0);
        if (fitted) {
            judging.notices.add(
                    "some numbers were fitted to these records: ratios and beliefs favour the models that have them,"
                            + " and are no evidence for these; compare AIC or BIC, or look at other litters");
        }
        double whole =
                candidates.stream().mapToDouble(one -> one.prior().toDouble()).sum();
        for (int m = 0; m < candidates.size(); m++) {
            double highest = 0;
            for (double one : compared.running(m, 0)) {
                highest = Math.max(highest, one);
            }
            OptionalInt reached = m == 0 ? OptionalInt.empty() : compared.reached(m, 0, compared.bar());
            Candidate candidate = candidates.get(m);
            models.add(new Standings.Standing(
                    candidate.name(),
                    candidate.model().reference(),
                    compared.log(m),
                    highest,
                    reached.isPresent()
                            ? Optional.of(compared.litter(reached.getAsInt()).litter())
                            : Optional.empty(),
                    whole > 0 ? candidate.prior().toDouble() / whole : 0,
                    posteriors.isEmpty() ? 0 : posteriors.get(m),
                    compared.impossible(m) ? compared.recheck(m) : List.of(),
                    fitted
                            ? Optional.of(new Standings.Fitting(candidate.fitted(), compared.aic(m), compared.bic(m)))
                            : Optional.empty()));
        }
        List<Standings.Pair> alike = new ArrayList<>();
        for (int one = 0; one < candidates.size(); one++) {
            for (int other = one + 1; other < candidates.size(); other++) {
                if (compared.alike(one, other)) {
                    alike.add(new Standings.Pair(one, other));
                }
            }
        }
        return new Standings(
                models,
                compared.best(),
                compared.bar(),
                compared.kits(),
                asked.records().dropped(),
                compared.litters(),
                alike,
                firsts(alike).stream()
                        .limit(MOST_PAIRS)
                        .filter(this::inseparable)
                        .toList(),
                otherwise(asked, named),
                leftOut(compared));
    }

    /** Pairs with the first of those that are alike: what holds of them holds of any two. */
    private static List<Standings.Pair> firsts(List<Standings.Pair> alike) {
        return alike.stream()
                .filter(pair -> alike.stream().noneMatch(other -> other.other() == pair.one()))
                .toList();
    }

    /** Whether two models foretell the compared traits alike, of every mating and at every stage. */
    private boolean inseparable(Standings.Pair pair) {
        return inseparable(
                candidates.get(pair.one()).model(),
                candidates.get(pair.other()).model(),
                question.records().traits());
    }

    /** Whether it is proved that two models foretell some traits alike. */
    static boolean inseparable(Model one, Model other, Collection<String> traits) {
        try {
            WhatMoves moves = Comparison.of(one, other).inTraits(traits).whatMoves();
            return moves.isNothing() && moves.limits().isEmpty();
        } catch (ProblemsException | TooLargeException | IllegalArgumentException notFoundOut) {
            return false;
        }
    }

    private List<Standings.Otherwise> otherwise(ModelComparison asked, Optional<String> named) {
        List<Standings.Otherwise> all = new ArrayList<>();
        judging.others(named).forEach(id -> attempt(Judging.founders(id), question.from(id), all));
        if (question.confusions().all().isEmpty()) {
            attempt(
                    "1 look in " + MISREAD_OF + " misread, as any other state of its trait alike",
                    asked.with(misread(question.records().traits())),
                    all);
        }
        return all;
    }

    private void attempt(String assumed, ModelComparison other, List<Standings.Otherwise> all) {
        judging.attempt(assumed, () -> {
            ComparedModels compared = other.compare();
            List<Double> logs = new ArrayList<>();
            for (int m = 0; m < candidates.size(); m++) {
                logs.add(compared.log(m));
            }
            all.add(new Standings.Otherwise(assumed, logs));
        });
    }

    private Confusions misread(Collection<String> traits) {
        List<Confusion> all = new ArrayList<>();
        for (String trait : traits) {
            List<String> states = candidates
                    .get(0)
                    .model()
                    .catalogue()
                    .trait(trait)
                    .orElseThrow()
                    .states();
            for (String shown : states) {
                for (String read : states) {
                    if (!read.equals(shown)) {
                        all.add(new Confusion(
                                trait,
                                shown,
                                read,
                                Optional.empty(),
                                Probability.of(1, (long) MISREAD_OF * (states.size() - 1))));
                    }
                }
            }
        }
        return Confusions.of(all);
    }

    private List<LeftOut> leftOut(ComparedModels compared) {
        if (compared.size() < 2) {
            return List.of();
        }
        if (compared.size() > MOST_LEFT_OUT) {
            judging.notices.add("how it comes out without each litter was not tried: there are " + compared.size());
            return List.of();
        }
        if (compared.related() > MOST_RELATED) {
            judging.notices.add("how it comes out without each litter was not tried: " + compared.related()
                    + " litters are related through more than one couple");
            return List.of();
        }
        return compared.leavingOut();
    }

    private static boolean decided(Standings standings, Optional<FittedModel> fit, Optional<FittedModel> other) {
        if (standings.best().isEmpty() || fit.filter(FittedModel::isRejected).isPresent()) {
            return other.isEmpty();
        }
        double lead = lead(standings);
        return !Double.isNaN(lead)
                && (lead >= Math.log(standings.bar()))
                && (lead == Double.POSITIVE_INFINITY || !isFitted(standings));
    }

    /** By how much the best is ahead of the next that does not foretell the same; no number if all do. */
    private static double lead(Standings standings) {
        int best = standings.best().orElseThrow();
        double next = Double.NaN;
        for (int m = 0; m < standings.models().size(); m++) {
            if (m != best && !alike(standings, best, m)) {
                double log = standings.models().get(m).log();
                next = Double.isNaN(next) ? log : Math.max(next, log);
            }
        }
        return standings.models().get(best).log() - next;
    }

    private static boolean alike(Standings standings, int one, int other) {
        return standings.alike().contains(new Standings.Pair(Math.min(one, other), Math.max(one, other)));
    }

    private String verdict(Standings standings, Optional<FittedModel> fit, Optional<FittedModel> other) {
        List<Standings.Standing> models = standings.models();
        if (standings.best().isEmpty()) {
            return "None of these models allows the records." + hanging(models);
        }
        int best = standings.best().getAsInt();
        String title = quoted(models.get(best));
        if (fit.filter(FittedModel::isRejected).isPresent()) {
            String p = Ratios.chance(fit.get().p().orElse(0.0));
            return other.isEmpty()
                    ? "None of these models fits: even the best of them, " + title + ", goes badly with the litters (p "
                            + p + "), and so does every other that allows them."
                    : "The best of these models, " + title + ", goes badly with the litters (p " + p + "), and \""
                            + other.get().name() + "\", under which they are less likely, "
                            + other.get()
                                    .p()
                                    .map(better -> "does not (p " + Ratios.chance(better) + ")")
                                    .orElse("could not be tested")
                            + ". That settles nothing.";
        }
        List<String> same = new ArrayList<>();
        for (int m = 0; m < models.size(); m++) {
            if (m != best && alike(standings, best, m)) {
                same.add(quoted(models.get(m)));
            }
        }
        String twins = same.isEmpty()
                ? ""
                : " It foretells the same of every litter as " + Ratios.some(same)
                        + "; these records cannot tell them apart" + always(standings, best) + ".";
        if (same.size() == models.size() - 1) {
            return "These records cannot tell the models apart: all foretell every litter alike"
                    + always(standings, best) + ".";
        }
        double lead = lead(standings);
        Standings.Standing next = next(standings, best);
        if (lead >= Math.log(standings.bar())) {
            if (lead == Double.POSITIVE_INFINITY) {
                return excluding(standings, best) + twins;
            }
            if (isFitted(standings)) {
                return "The records are " + Ratios.of(lead) + " likelier under " + title + " than under " + quoted(next)
                        + ", but numbers of it were fitted to them, so that is no evidence; compare AIC or BIC, or look at"
                        + " other litters." + twins;
            }
            return "The records favour " + title + ": they are " + Ratios.of(lead) + " likelier under it than under "
                    + quoted(next) + ", where " + bar(standings) + " is evidence." + turns(standings, best) + twins;
        }
        if (lead < 1e-9) {
            return "No model is ahead: the records are as likely under " + title + " as under " + quoted(next) + "."
                    + twins;
        }
        return "No model is ahead by enough: the records are " + Ratios.of(lead) + " likelier under " + title
                + " than under " + quoted(next) + ", where " + bar(standings) + " would be evidence." + twins;
    }

    /** Whether numbers of the best model were fitted to these records. */
    private static boolean isFitted(Standings standings) {
        return standings
                .models()
                .get(standings.best().orElseThrow())
                .fitting()
                .filter(fitted -> fitted.numbers() > 0)
                .isPresent();
    }

    private static String bar(Standings standings) {
        int rivals = standings.models().size() - 1;
        return String.format(Locale.ROOT, "%.0f : 1", standings.bar())
                + (rivals > 1 ? " (20 for each of " + rivals + " rivals)" : "");
    }

    private static Standings.Standing next(Standings standings, int best) {
        Standings.@Nullable Standing next = null;
        for (int m = 0; m < standings.models().size(); m++) {
            Standings.Standing one = standings.models().get(m);
            if (m != best && !alike(standings, best, m) && (next == null || one.log() > next.log())) {
                next = one;
            }
        }
        return Objects.requireNonNull(next);
    }

    /** That models which foretell these litters like the best one always do, as far as that is proved. */
    private static String always(Standings standings, int best) {
        long same = standings.alike().stream()
                .filter(pair -> pair.one() == best || pair.other() == best)
                .count();
        long proved = standings.inseparable().stream()
                .filter(pair -> pair.one() == best || pair.other() == best)
                .count();
        return proved == 0
                ? ""
                : proved == same
                        ? " (nor can any mating, by these traits)"
                        : " (" + proved + " of them by no mating, by these traits)";
    }

    /** On which single records it hangs that models are excluded, those together that hang on the same ones. */
    private static String hanging(List<Standings.Standing> excluded) {
        Map<List<String>, List<String>> models = new LinkedHashMap<>();
        for (Standings.Standing one : excluded) {
            if (one.recheck().size() == 1 && !one.recheck().get(0).animals().isEmpty()) {
                models.computeIfAbsent(one.recheck().get(0).animals(), key -> new ArrayList<>())
                        .add(quoted(one));
            }
        }
        if (models.isEmpty()) {
            return "";
        }
        List<String> each = new ArrayList<>();
        models.forEach((animals, ones) -> each.add("without any one of those of " + Ratios.some(animals)
                + (each.isEmpty() ? " the rest is possible" : "")
                + (ones.size() == excluded.size() ? "" : " under " + Ratios.some(ones))));
        return " That hangs on single records: " + Ratios.some(each)
                + ". Look at them again, or allow for errors of naming.";
    }

    /** The verdict where the best is the only model, but for its likes, that allows the records. */
    private static String excluding(Standings standings, int best) {
        List<Standings.Standing> excluded = standings.models().stream()
                .filter(Standings.Standing::isImpossible)
                .toList();
        return "The records exclude "
                + Ratios.some(excluded.stream().map(Favouring::quoted).toList())
                + (excluded.size() > 1 ? ", and allow " : " and allow ")
                + quoted(standings.models().get(best)) + "." + hanging(excluded) + misread(standings, best);
    }

    /** The least ratio of the best model over those that are excluded, once looks may be misread. */
    private static String misread(Standings standings, int best) {
        for (Standings.Otherwise one : standings.otherwise()) {
            if (one.assumed().startsWith("1 look in")) {
                int next = best;
                for (int m = 0; m < one.logs().size(); m++) {
                    if (standings.models().get(m).isImpossible()
                            && (next == best || one.logs().get(m) > one.logs().get(next))) {
                        next = m;
                    }
                }
                double log = one.logs().get(best) - one.logs().get(next);
                if ((next == best) || Double.isNaN(log)) {
                    return "";
                }
                return " With 1 look in " + MISREAD_OF + " misread "
                        + (log >= 0
                                ? "the ratio over " + quoted(standings.models().get(next)) + " is " + Ratios.of(log)
                                        + "."
                                : quoted(standings.models().get(next)) + " is ahead, " + Ratios.of(-log) + ".");
            }
        }
        return "";
    }

    /** Whether another assumption, or the want of one litter, makes another model the best. */
    private static String turns(Standings standings, int best) {
        List<String> turning = new ArrayList<>();
        standings.otherwise().stream()
                .filter(one -> one.best().isPresent()
                        && one.best().getAsInt() != best
                        && !alike(standings, best, one.best().getAsInt()))
                .forEach(one -> turning.add("with " + one.assumed()));
        standings.leftOut().stream()
                .filter(one -> {
                    OptionalInt other = new Standings.Otherwise("", one.logs()).best();
                    return other.isPresent() && other.getAsInt() != best && !alike(standings, best, other.getAsInt());
                })
                .forEach(one -> turning.add("without litter " + one.litter()));
        return turning.isEmpty() ? "" : " That turns " + Ratios.some(turning, ", ", ", or ") + ".";
    }

    private static String quoted(Standings.Standing one) {
        return "\"" + one.title() + "\"";
    }
}
