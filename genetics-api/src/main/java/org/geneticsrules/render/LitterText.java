package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import org.geneticsrules.answer.compared.FitOtherwise;
import org.geneticsrules.answer.compared.LitterAnswer;
import org.geneticsrules.answer.compared.Standings;
import org.geneticsrules.comparison.FittedModel;
import org.geneticsrules.comparison.KitFit;
import org.geneticsrules.comparison.LitterFit;
import org.geneticsrules.comparison.MatingFit;
import org.geneticsrules.statistics.ChiSquared;

/**
 * What litters say of models as plain text: the verdict, how models compare, what would turn that, litter by litter, the cautions and the
 * evidence.
 *
 * <p>Stateless and thread-safe.
 */
public final class LitterText {

    /** More litters, kits or assumptions than these are told by their number. */
    private static final int MOST = 24;

    /** What nobody showed and fewer than this are expected to show is not told; it would be printed as 0. */
    private static final double LEAST_EXPECTED = 0.005;

    private LitterText() {}

    /**
     * Returns an answer in the standard style.
     *
     * @param answer what litters say
     * @return lines that end in a newline
     */
    public static String of(LitterAnswer answer) {
        return of(answer, TextStyle.standard());
    }

    /**
     * Returns an answer in a style.
     *
     * @param answer what litters say
     * @param style how it is laid out
     * @return lines that end in a newline
     */
    public static String of(LitterAnswer answer, TextStyle style) {
        TextLines text = new TextLines(style.width());
        text.paragraph(answer.verdict());
        AnswerText.rivals(answer.rivals().size(), text);
        answer.comparison().ifPresent(standings -> {
            models(standings, text);
            litters(standings, text);
            otherwise(standings, text);
        });
        answer.fit().ifPresent(fit -> fit(fit, answer.comparison().isPresent(), text));
        fitOtherwise(answer.fitOtherwise(), text);
        AnswerText.asked(answer.notices(), answer.question(), answer.given(), Integer.MAX_VALUE, text);
        AnswerText.changes(answer.assumptions(), text);
        AnswerText.cautions(answer.cautions(), text);
        AnswerText.evidence(answer.evidence(), answer.model(), text);
        return text.toString();
    }

    private static void models(Standings standings, TextLines text) {
        text.heading("The models, and how likely the kits were under each");
        List<Standings.Standing> models = standings.models();
        for (int m = 0; m < models.size(); m++) {
            Standings.Standing one = models.get(m);
            OptionalInt like = like(standings, m);
            if (like.isPresent()) {
                text.item((m + 1) + ". " + one.title() + ": as likely in every litter as under " + (like.getAsInt() + 1)
                        + "; " + belief(one)
                        + one.fitting().map(fitted -> "; " + fitting(fitted)).orElse(""));
                continue;
            }
            List<String> words = new ArrayList<>();
            words.add(one.isImpossible() ? "excludes the records" : "log likelihood " + ModelNumbers.number(one.log()));
            if (m > 0) {
                words.add("over the first: "
                        + (one.isImpossible() || models.get(0).isImpossible()
                                ? "no number"
                                : ratio(one.log() - models.get(0).log())));
                one.reached().ifPresent(litter -> words.add("ahead of it by the bar from litter " + litter + " on"));
            }
            words.add(belief(one));
            one.fitting().filter(fitted -> !one.isImpossible()).ifPresent(fitted -> words.add(fitting(fitted)));
            text.item((m + 1) + ". " + one.title() + ": " + String.join("; ", words));
            for (var recheck : one.recheck()) {
                nested(
                        text,
                        "excluded in " + ModelNumbers.some(recheck.litters())
                                + (recheck.animals().isEmpty()
                                        ? "; no single animal decides it"
                                        : "; without any one of the records of " + ModelNumbers.some(recheck.animals())
                                                + " it is possible"));
            }
        }
        text.paragraph("A likelihood ratio of " + String.format(Locale.ROOT, "%.0f", standings.bar())
                + " : 1 is evidence here, 20 for each rival tried. It may be looked at after every litter, as long as none is left out."
                + " Beliefs are by likelihood and what was believed before, and hold if one of these models is true.");
        alike(standings, text);
    }

    /** The first model that foretells every litter like one, if that is another and none of them is excluded. */
    private static OptionalInt like(Standings standings, int model) {
        return standings.models().get(model).isImpossible()
                ? OptionalInt.empty()
                : standings.alike().stream()
                        .filter(pair -> pair.other() == model)
                        .mapToInt(Standings.Pair::one)
                        .min();
    }

    private static String belief(Standings.Standing one) {
        return "belief " + share(one.prior()) + " before, " + share(one.posterior()) + " after";
    }

    private static String fitting(Standings.Fitting fitted) {
        return (fitted.numbers() == 1 ? "1 number" : fitted.numbers() + " numbers") + " fitted, AIC "
                + ModelNumbers.number(fitted.aic()) + ", BIC " + ModelNumbers.number(fitted.bic());
    }

    /** A line that belongs to the item before it. */
    private static void nested(TextLines text, String line) {
        text.hanging("    ", "    ", line);
    }

    /** Sets of models that foretell all alike; what is alike is so of any two of them. */
    private static void alike(Standings standings, TextLines text) {
        boolean[] told = new boolean[standings.models().size()];
        for (int m = 0; m < told.length; m++) {
            int first = m;
            List<Integer> others = standings.alike().stream()
                    .filter(pair -> pair.one() == first)
                    .map(Standings.Pair::other)
                    .toList();
            if (told[m] || others.isEmpty()) {
                continue;
            }
            text.item("these foretell every litter here alike: " + (m + 1) + ", "
                    + others.stream().map(other -> Integer.toString(other + 1)).collect(Collectors.joining(", ")));
            List<String> always = standings.inseparable().stream()
                    .filter(pair -> pair.one() == first)
                    .map(pair -> Integer.toString(pair.other() + 1))
                    .toList();
            if (!always.isEmpty()) {
                text.item("no mating tells " + (m + 1) + " from " + String.join(", ", always) + " by these traits");
            }
            others.forEach(other -> told[other] = true);
        }
    }

    static String ratio(double log) {
        if (Math.abs(log) < 1e-9) {
            return "the same";
        }
        double ratio = Math.exp(Math.abs(log));
        String words = ratio < 1e6
                ? String.format(Locale.ROOT, ratio < 100 ? "%.2f" : "%.0f", ratio)
                : String.format(Locale.ROOT, "about 10^%.1f", Math.abs(log) / Math.log(10));
        return log >= 0 ? words + " : 1" : "1 : " + words;
    }

    static String share(double belief) {
        return String.format(Locale.ROOT, belief > 0 && belief < 0.001 ? "%.1e" : "%.3f", belief);
    }

    private static void litters(Standings standings, TextLines text) {
        text.heading("Litter by litter: log likelihood, each given those before it");
        standings.litters().stream()
                .limit(MOST)
                .forEach(litter -> text.item("litter " + litter.litter() + ": "
                        + ModelNumbers.logs(litter.logs(), m -> litter.known().get(m), "cannot be")));
        if (standings.litters().size() > MOST) {
            text.item("and " + (standings.litters().size() - MOST)
                    + " more, all of them in the document (--format json)");
        }
    }

    private static void otherwise(Standings standings, TextLines text) {
        if (standings.otherwise().isEmpty() && standings.leftOut().isEmpty()) {
            return;
        }
        text.heading("How it comes out otherwise");
        List<Standings.Otherwise> all = new ArrayList<>(standings.otherwise());
        standings.leftOut().stream()
                .limit(MOST)
                .forEach(one -> all.add(new Standings.Otherwise("without litter " + one.litter(), one.logs())));
        for (Standings.Otherwise one : all) {
            OptionalInt best = one.best();
            boolean same =
                    one.logs().stream().map(ModelNumbers::number).distinct().count() == 1;
            text.item(one.assumed() + ": "
                    + (best.isEmpty()
                            ? "all exclude the records"
                            : same
                                    ? "all the same ("
                                            + ModelNumbers.number(one.logs().get(0)) + ")"
                                    : standings.models().get(best.getAsInt()).title() + " is best ("
                                            + ModelNumbers.logs(one.logs(), m -> true, "excluded") + ")"));
        }
        if (standings.leftOut().size() > MOST) {
            text.item("and " + (standings.leftOut().size() - MOST) + " more litters left out, one by one");
        }
    }

    private static void fitOtherwise(List<FitOtherwise> all, TextLines text) {
        if (!all.isEmpty()) {
            text.heading("How well it fits otherwise");
        }
        for (FitOtherwise one : all) {
            text.item(one.assumed() + ": "
                    + one.p()
                            .map(p -> "p " + chance(p)
                                    + (one.standardError() > 0
                                            ? ", standard error " + chance(one.standardError())
                                            : ""))
                            .orElse(one.rejected() ? "excluded" : "not tested"));
        }
    }

    private static void fit(FittedModel fit, boolean best, TextLines text) {
        text.heading(best ? "How well the best fits: " + fit.name() : "How well it fits");
        fit.p()
                .ifPresent(p -> text.item("all litters together: p " + chance(p)
                        + fit.draws()
                                .map(draws -> ", from " + draws.number() + " draws with seed " + draws.seed()
                                        + ", standard error " + chance(fit.standardError()))
                                .orElse(", exact")));
        fit.litters().stream()
                .filter(litter -> !best || litter.standing() != KitFit.Standing.FINE)
                .limit(MOST)
                .forEach(litter -> text.item("litter " + litter.litter() + ": " + litter(litter)));
        Map<String, List<KitFit>> kits = new LinkedHashMap<>();
        fit.kits().stream()
                .filter(kit ->
                        kit.standing() == KitFit.Standing.IMPOSSIBLE || kit.standing() == KitFit.Standing.UNLIKELY)
                .limit(MOST)
                .forEach(kit -> kits.computeIfAbsent(kit.standing().words(), key -> new ArrayList<>())
                        .add(kit));
        kits.forEach((words, ones) -> text.item(words + ": "
                + ones.stream()
                        .map(kit -> kit.kit() + " of litter " + kit.litter()
                                + (kit.chance() > 0 ? " (a look as rare has " + chance(kit.rarer()) + ")" : ""))
                        .collect(Collectors.joining(", "))));
        if (!best) {
            fit.matings().stream().limit(MOST).forEach(mating -> mating(mating, text));
        }
    }

    private static String litter(LitterFit litter) {
        String counts = litter.counts().entrySet().stream()
                .filter(one -> one.getValue() > 0
                        || (litter.counts().size() <= 8
                                && litter.expected().getOrDefault(one.getKey(), 1.0) >= LEAST_EXPECTED))
                .map(one -> one.getValue() + " " + one.getKey()
                        + (litter.expected().containsKey(one.getKey())
                                ? String.format(
                                        Locale.ROOT,
                                        " (%.2f expected)",
                                        litter.expected().get(one.getKey()))
                                : ""))
                .collect(Collectors.joining(", "));
        return litter.standing().words()
                + litter.p().map(p -> ", p " + chance(p)).orElse("")
                + (litter.standardError() > 0 ? " (standard error " + chance(litter.standardError()) + ")" : "")
                + litter.untested().map(why -> "; not tested: " + why).orElse("")
                + (counts.isEmpty() ? "" : "; " + counts);
    }

    private static void mating(MatingFit mating, TextLines text) {
        text.item("kits of " + mating.parents() + ", " + mating.litters().size()
                + (mating.litters().size() == 1 ? " litter" : " litters"));
        List<Double> expected = mating.test().expected();
        List<String> names = mating.test().observed().names();
        List<Long> counts = mating.test().observed().values();
        for (int at = 0; at < names.size(); at++) {
            nested(
                    text,
                    String.format(
                            Locale.ROOT,
                            "%s: %d, %.2f expected; share %.3f, 95 %% interval %.3f to %.3f",
                            names.get(at),
                            counts.get(at),
                            expected.get(at),
                            (double) counts.get(at) / mating.test().observed().total(),
                            mating.shares().get(at).low(),
                            mating.shares().get(at).high()));
        }
        if (!mating.independent()) {
            nested(
                    text,
                    "these parents may differ in what they hand down, so kits of one litter are alike: chi-squared does not apply");
            return;
        }
        mating.exact()
                .ifPresent(exact -> nested(
                        text,
                        "exact multinomial test: p " + chance(exact.p())
                                + (exact.exact() ? "" : ", drawn, standard error " + chance(exact.standardError()))));
        mating.test().chiSquared().ifPresent(chi -> nested(text, "chi-squared " + statistic(chi)));
        mating.test().g().ifPresent(g -> nested(text, "G " + statistic(g)));
        if (!mating.test().small().isEmpty()) {
            nested(
                    text,
                    "fewer than 5 are expected of "
                            + String.join(", ", mating.test().small()) + ": go by the exact test");
        }
    }

    private static String statistic(ChiSquared test) {
        return String.format(Locale.ROOT, "%.4f, %d df, p ", test.statistic(), test.degreesOfFreedom())
                + chance(test.p());
    }

    private static String chance(double p) {
        return Double.isNaN(p) ? "not compared" : String.format(Locale.ROOT, p > 0 && p < 0.0005 ? "%.1e" : "%.4f", p);
    }
}
