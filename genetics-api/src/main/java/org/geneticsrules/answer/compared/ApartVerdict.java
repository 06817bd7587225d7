package org.geneticsrules.answer.compared;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.answer.compared.TellApartAnswer.OfModel;
import org.geneticsrules.answer.compared.TellApartAnswer.Tried;
import org.geneticsrules.planning.Effort;
import org.geneticsrules.planning.ExpectedRatio;
import org.geneticsrules.planning.ToldApart;

/**
 * What can be done to tell models apart, in a sentence or two.
 *
 * @param models the models that the records leave
 * @param excluded those that they exclude
 * @param bar the ratio that is evidence
 * @param steps what can be done
 * @param tried how many steps were tried
 * @param settled why nothing more is needed of some animals
 * @param apart whether looks can tell models apart at all
 */
record ApartVerdict(
        List<OfModel> models,
        List<OfModel> excluded,
        double bar,
        List<ApartStep> steps,
        List<Tried> tried,
        Set<String> settled,
        List<ToldApart> apart) {

    /** What excludes a model in fewer cases than this is not expected to. */
    private static final double SELDOM = 0.05;

    private boolean isNever() {
        return models.size() > 1
                && apart.size() == models.size() * (models.size() - 1) / 2
                && apart.stream().allMatch(one -> one.verdict() == ToldApart.Verdict.NEVER);
    }

    boolean decided() {
        return models.size() == 1 || isNever() || !steps.isEmpty() || !settled.isEmpty();
    }

    String words() {
        String out = (excluded.isEmpty() ? "" : "The records exclude " + names(excluded) + " already. ") + ahead();
        if (models.isEmpty()) {
            return "The records exclude all of these models: none is to be told from another, and one or the other record, or every"
                    + " model, is mistaken.";
        }
        if (models.size() == 1) {
            return out + "Nothing more is needed to tell " + names(models) + " from "
                    + (excluded.size() == 1 ? "it" : "them")
                    + ", if the records are right: look again at those it hangs on.";
        }
        if (isNever()) {
            return out + "No look at any animal, and no mating, tells " + names(models)
                    + " apart by these traits: they foretell the same of every genotype and of every mating, which is proved.";
        }
        if (!settled.isEmpty()) {
            return out + "Of some animals nothing more is needed: " + String.join("; ", settled)
                    + ". Look again at their records.";
        }
        if (steps.isEmpty()) {
            return out + "Nothing that was tried tells " + names(models) + " apart" + nothingTried() + "." + never();
        }
        return out + first(steps.get(0)) + never();
    }

    /** Where the records speak for one model by the bar already. */
    private String ahead() {
        if (models.size() < 2) {
            return "";
        }
        List<OfModel> order = models.stream()
                .sorted(Comparator.comparingDouble(one -> -one.logRatio()))
                .toList();
        double lead = order.get(0).logRatio() - order.get(1).logRatio();
        return lead < Math.log(bar)
                ? ""
                : "The records favour \"" + order.get(0).title() + "\" already, " + Ratios.of(lead)
                        + String.format(Locale.ROOT, " over the next, where %.0f : 1 is evidence. ", bar);
    }

    private static String names(List<OfModel> some) {
        List<String> quoted =
                some.stream().map(one -> "\"" + one.title() + "\"").toList();
        return quoted.size() == 1
                ? quoted.get(0)
                : String.join(", ", quoted.subList(0, quoted.size() - 1)) + " and " + quoted.get(quoted.size() - 1);
    }

    private String nothingTried() {
        int of = tried.stream().mapToInt(Tried::tried).sum();
        int left = tried.stream().mapToInt(Tried::left).sum();
        return of == 0
                ? ": there was nothing to try"
                : ", of " + of + (of == 1 ? " step" : " steps")
                        + (left == 0 ? "" : "; " + left + " more were not tried");
    }

    private String first(ApartStep step) {
        Effort effort = step.worth().step().effort();
        String words = ApartWords.plain(step.worth().step());
        String asks = switch (effort) {
            case RECORD ->
                "First " + words
                        + ": nobody is bred for it, and of all looks that are open it is expected to tell most.";
            case DNA_TEST -> before(effort) + "a " + words + " would, and nobody is bred for it.";
            case PLANNED_MATING ->
                before(effort) + "of what is planned in any case it is expected to tell most to " + words + ".";
            case NEW_MATING ->
                before(effort) + "what would is a mating made for this alone, and that is no advice to make it: "
                        + words + ".";
        };
        return asks + expected(step) + hardly(step);
    }

    /** What tells nothing, or little, of all that comes before an effort. */
    private String before(Effort effort) {
        List<String> some = new ArrayList<>();
        boolean little = false;
        for (Tried one : tried) {
            if (one.effort().compareTo(effort) < 0 && one.tried() > 0) {
                some.add(
                        switch (one.effort()) {
                            case RECORD -> "no look that is open";
                            case DNA_TEST -> "no DNA test";
                            case PLANNED_MATING, NEW_MATING -> "no planned mating";
                        });
                little |= one.little() > 0;
            }
        }
        if (some.isEmpty()) {
            return "No look is open; ";
        }
        String words = String.join(" and ", some);
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1) + " tells " + names(models)
                + " apart" + (little ? " by more than a trifle" : "") + "; ";
    }

    /** Of two models what is expected if either is true, of more if the first is. */
    private String expected(ApartStep step) {
        return step.worth().ratios().stream()
                .filter(one -> models.size() == 2 || one.truth() == 0)
                .limit(3)
                .map(this::sentence)
                .collect(Collectors.joining());
    }

    private String sentence(ExpectedRatio ratio) {
        return " If \"" + models.get(ratio.truth()).title() + "\" is true, "
                + ApartWords.expected(ratio, "\"" + models.get(ratio.rival()).title() + "\"") + ".";
    }

    /** Where one step is expected to be far from evidence. */
    private String hardly(ApartStep step) {
        double most = 0;
        for (ExpectedRatio ratio : step.worth().ratios()) {
            most = Math.max(
                    most,
                    ratio.excluding() >= SELDOM
                            ? Double.POSITIVE_INFINITY
                            : ratio.finite() / (1 - ratio.excluding())
                                    + models.get(ratio.truth()).logRatio()
                                    - models.get(ratio.rival()).logRatio());
        }
        return most < Math.log(bar)
                ? String.format(
                        Locale.ROOT,
                        " By itself that is not expected to be evidence, which is %.0f : 1 with what the records say already.",
                        bar)
                : "";
    }

    /** Pairs that looks cannot tell apart, where others can be. */
    private String never() {
        List<String> pairs = new ArrayList<>();
        apart.stream()
                .filter(one -> one.verdict() == ToldApart.Verdict.NEVER)
                .forEach(one -> pairs.add(names(List.of(models.get(one.first()), models.get(one.second())))));
        return pairs.isEmpty()
                ? ""
                : " " + String.join("; ", pairs) + " cannot be told apart by these looks at all, which is proved.";
    }
}
