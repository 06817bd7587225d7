package org.geneticsrules.answer.estimated;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.geneticsrules.estimation.Estimate;
import org.geneticsrules.estimation.GeneCounting;
import org.geneticsrules.estimation.HardyWeinberg;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.statistics.BinomialInterval;
import org.geneticsrules.statistics.ChiSquared;
import org.geneticsrules.statistics.ProfileLikelihood;

/** What answers about frequencies of alleles have in common. */
final class Frequencies {

    private static final String PROPORTIONS = "the genotypes are in Hardy-Weinberg proportions";

    private Frequencies() {}

    static void assume(Draft draft) {
        draft.assume(
                "unrelated",
                "The animals are unrelated, of one population, and mated without regard to the locus; they are counted whatever they"
                        + " show.",
                "Animals of a kennel are related, so the truth may lie further off than the interval says; and where animals were"
                        + " chosen by their looks, the frequencies are those of the choice.");
    }

    /** The share of alleles that were counted one by one. */
    static void proportion(String words, long counted, long all, double level, Draft draft) {
        double p = counted / (double) all;
        ProfileLikelihood profile = ProfileLikelihood.of(
                x -> (counted == 0 ? 0 : counted * Math.log(x))
                        + (counted == all ? 0 : (all - counted) * Math.log(1 - x)),
                0,
                1);
        boolean boundary = counted == 0 || counted == all;
        draft.number(new EstimatedNumber(
                words,
                new Estimate(
                        p,
                        boundary ? OptionalDouble.empty() : OptionalDouble.of(Math.sqrt(p * (1 - p) / all)),
                        profile.interval(level),
                        profile.maximum().logLikelihood(),
                        boundary,
                        false,
                        List.of()),
                Optional.of(BinomialInterval.clopperPearson(counted, all, level))));
    }

    /** What a model says of the lives of animals by the locus: those that are met are then not in Hardy-Weinberg proportions. */
    private static void lost(Model model, String locus, Draft draft) {
        model.viability().values().stream()
                .filter(one -> one.locus().equals(locus))
                .forEach(one -> draft.notices.add("the model says: " + one.words()
                        + ". Then animals that are met are not in Hardy-Weinberg proportions, even where their parents mate at"
                        + " random: frequencies by looks that leave several genotypes are off, and so is the test of the"
                        + " proportions"));
    }

    /** The frequency of every allele, and the test of proportions. */
    static void add(
            Model model,
            Locus locus,
            GeneCounting of,
            Optional<HardyWeinberg> genotypes,
            Optional<String> asked,
            double level,
            Draft draft) {
        GeneCounting counting = of.toldApart();
        List<String> order = new ArrayList<>(counting.frequencies().keySet());
        asked.ifPresent(allele -> {
            int position = order.indexOf(allele);
            if (position > 0) {
                order.add(0, order.remove(position));
            } else if (position < 0) {
                draft.notices.add("none of the animals tells allele " + allele + " from others");
            }
        });
        List<String> others = new ArrayList<>();
        for (String allele : order) {
            Estimate estimate = counting.estimate(allele, level);
            draft.number(new EstimatedNumber(
                    (allele.contains(" or ") ? "the frequency of alleles " : "the frequency of allele ")
                            + named(locus, allele.replace(" or ", " and "))
                            + (allele.contains(" or ") ? " together" : ""),
                    estimate,
                    Optional.empty()));
            if (draft.numbers.size() > 1) {
                others.add(allele.replace(" or ", " and ") + (allele.contains(" or ") ? " together " : " ")
                        + Words.number(estimate.value()) + " (" + Words.range(estimate.interval()) + ")");
            }
        }
        draft.more.add((others.size() == 1 ? "The other: " : "The others: ") + String.join(", ", others) + ".");
        if (order.stream().anyMatch(one -> one.contains(" or "))) {
            draft.notices.add("no record of these animals tells the alleles apart that are counted together");
        }
        if (order.size() == 2) {
            double one = draft.numbers.get(0).estimate().value();
            double other = draft.numbers.get(1).estimate().value();
            draft.reckonings.add(new Reckoning(
                    "share of animals with one allele of each, if the proportions hold", 2 * one * other));
        }
        test(genotypes, of.fit(), draft);
        lost(model, locus.id(), draft);
        assume(draft);
    }

    /** An allele with its title, if it has one. */
    private static String named(Locus locus, String allele) {
        Allele known = locus.alleles().get(allele);
        return known == null
                ? allele
                : known.title().map(title -> allele + " (" + title + ")").orElse(allele);
    }

    static void test(Optional<HardyWeinberg> genotypes, Optional<ChiSquared> fit, Draft draft) {
        if (genotypes.isPresent() && genotypes.get().chiSquared().isEmpty()) {
            draft.notices.add(
                    "only one allele was met, so whether the genotypes are in Hardy-Weinberg proportions cannot"
                            + " be tested");
            return;
        }
        genotypes.ifPresent(animals -> {
            EstimateTest exact =
                    EstimateTest.exact(PROPORTIONS, "exact, given how many alleles there are", animals.exactP());
            draft.tests.add(exact);
            animals.chiSquared().ifPresent(chi -> draft.tests.add(EstimateTest.of(PROPORTIONS, chi)));
            animals.heterozygoteDeficit()
                    .ifPresent(deficit ->
                            draft.reckonings.add(new Reckoning("deficit of animals with one allele of each", deficit)));
            told(exact, draft);
        });
        if (genotypes.isEmpty()) {
            fit.ifPresent(chi -> {
                EstimateTest test = EstimateTest.of(PROPORTIONS, chi);
                draft.tests.add(test);
                told(test, draft);
            });
        }
        if (genotypes.isEmpty() && fit.isEmpty()) {
            draft.notices.add(
                    "whether the genotypes are in Hardy-Weinberg proportions cannot be tested by these records: too"
                            + " few genotypes are told apart, so any counts fit. The frequencies hang on it that they are");
        }
    }

    private static void told(EstimateTest test, Draft draft) {
        draft.more.add(
                test.isRejected()
                        ? "The genotypes are not in Hardy-Weinberg proportions (p " + Words.p(test.p())
                                + "); relatives, choice by looks or several populations are causes, and the test does not"
                                + " say which."
                        : "The genotypes go with Hardy-Weinberg proportions (p " + Words.p(test.p()) + ").");
    }
}
