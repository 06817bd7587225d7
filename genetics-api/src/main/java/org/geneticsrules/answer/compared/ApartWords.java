package org.geneticsrules.answer.compared;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.planning.ExpectedRatio;
import org.geneticsrules.planning.KitsNeeded;
import org.geneticsrules.planning.KitsNeeded.Design;
import org.geneticsrules.planning.Step;
import org.geneticsrules.planning.Worth;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Trait;

/** What steps are and are worth, in sentences. */
final class ApartWords {

    /** Fractions with larger denominators are no help to a reader. */
    private static final int MOST_PARTS = 10;

    /** A chance this near to a fraction is told as it. */
    private static final double NEAR = 0.02;

    private static final double SAME = 1e-9;

    private ApartWords() {}

    /** What a step is, for example {@code look at hue in "Pip"}. */
    static String step(Step step, Catalogue catalogue) {
        if (step instanceof Step.Look look) {
            return "look at " + String.join(", ", look.traits()) + " in \"" + look.animal() + "\""
                    + when(look.traits(), catalogue);
        }
        if (step instanceof Step.Test test) {
            return "DNA test of \"" + test.animal() + "\" at locus " + test.locus();
        }
        Step.Kits kits = (Step.Kits) step;
        return "look at " + String.join(", ", kits.traits()) + " in " + number(kits.kits()) + " of \"" + kits.sire()
                + "\" and \"" + kits.dam() + "\""
                + switch (kits.effort()) {
                    case RECORD, DNA_TEST -> ", born already";
                    case PLANNED_MATING -> ", a planned mating";
                    case NEW_MATING -> ", a mating made for this alone";
                }
                + when(kits.traits(), catalogue);
    }

    private static String number(int kits) {
        return kits == 1 ? "1 kit" : kits + " kits";
    }

    /** From when on, and in which light, traits can be told. */
    private static String when(List<String> traits, Catalogue catalogue) {
        Set<String> said = new LinkedHashSet<>();
        for (String id : traits) {
            Trait trait = catalogue.trait(id).orElseThrow();
            String name = traits.size() == 1 ? "" : id + " ";
            trait.judgeableFrom().ifPresent(first -> said.add(name + "from " + first + " on"));
            if (!trait.judgeableIn().isEmpty()) {
                said.add(name + "in " + String.join(" or ", trait.judgeableIn()));
            }
        }
        return said.isEmpty() ? "" : " (" + String.join(", ", said) + ")";
    }

    /** How likely a kit is to have a look, by each model. */
    static String look(ApartStep.KitLook look) {
        StringBuilder words = new StringBuilder(look.look()).append(" in ");
        for (int m = 0; m < look.chances().size(); m++) {
            double chance = look.chances().get(m);
            words.append(m == 0 ? "" : ", ")
                    .append(chance <= 0 ? "no kit" : chance >= 1 - SAME ? "every kit" : share(chance) + " kits")
                    .append(" by model ")
                    .append(m + 1);
        }
        return words.toString();
    }

    /** What a step is expected to say of each ordered pair of models; of more than three, of pairs with the first. */
    static List<String> says(Worth worth, int models, double bar) {
        List<String> says = new ArrayList<>();
        for (ExpectedRatio ratio : worth.ratios()) {
            if (models > 3 && ratio.truth() != 0 && ratio.rival() != 0) {
                continue;
            }
            says.add("if model " + (ratio.truth() + 1) + " is true: "
                    + expected(ratio, "model " + (ratio.rival() + 1))
                    + needed(worth, ratio.truth(), ratio.rival(), bar));
        }
        return says;
    }

    /** What is expected of a ratio, if its first model is true. */
    static String expected(ExpectedRatio ratio, String rival) {
        if (ratio.expected() == 0) {
            return "it says nothing against " + rival;
        }
        if (ratio.excluding() == 0) {
            return "it speaks against " + rival + ", on average " + odds(ratio.expected());
        }
        String excludes = "it excludes " + rival + " " + times(ratio.excluding());
        double left = 1 - ratio.excluding();
        if (left < SAME || Math.abs(ratio.finite()) < SAME) {
            return excludes;
        }
        double else_ = ratio.finite() / left;
        return excludes + ", and else speaks " + (else_ > 0 ? "against it" : "for it") + ", on average "
                + odds(Math.abs(else_));
    }

    /** A ratio, by its logarithm. */
    private static String odds(double log) {
        double ratio = Math.exp(log);
        return ratio < 1.005
                ? String.format(Locale.ROOT, "%.5f : 1", ratio)
                : ratio < 1000 ? String.format(Locale.ROOT, "%.2f : 1", ratio) : Ratios.of(log);
    }

    /** How often something happens. */
    static String times(double chance) {
        if (chance >= 1 - SAME) {
            return "in any case";
        }
        return "in " + share(chance) + " cases";
    }

    /** A chance between 0 and 1 as one of so many. */
    static String share(double chance) {
        for (int parts = 2; parts <= MOST_PARTS; parts++) {
            long count = Math.round(chance * parts);
            double off = Math.abs(chance - (double) count / parts);
            if (count > 0 && count < parts && off < NEAR * Math.min(1, 5 * Math.min(chance, 1 - chance))) {
                return (off < SAME ? "" : "about ") + count + " of " + parts;
            }
        }
        return chance < 0.5
                ? String.format(Locale.ROOT, "about 1 of %.0f", 1 / chance)
                : String.format(Locale.ROOT, "all but about 1 of %.0f", 1 / (1 - chance));
    }

    /** How many kits it takes until a ratio reaches the bar. */
    private static String needed(Worth worth, int truth, int rival, double bar) {
        List<String> designs = new ArrayList<>();
        for (Design design : Design.values()) {
            List<KitsNeeded> of = worth.numbers().stream()
                    .filter(one -> one.truth() == truth && one.rival() == rival && one.design() == design)
                    .toList();
            if (!of.isEmpty()) {
                designs.add(design(design, of));
            }
        }
        if (designs.isEmpty()) {
            return "";
        }
        boolean held = worth.numbers().stream()
                .filter(one -> one.truth() == truth && one.rival() == rival)
                .allMatch(one -> one.kits().isPresent() && one.kits().getAsInt() == 0);
        return held
                ? "; the records held are evidence for that already"
                : String.format(Locale.ROOT, "; until all is %.0f : 1, which is evidence, it takes ", bar)
                        + String.join("; ", designs);
    }

    private static String design(Design design, List<KitsNeeded> of) {
        Set<String> numbers = new LinkedHashSet<>();
        for (KitsNeeded one : of) {
            numbers.add(number(one) + " (" + percent(one.sureness()) + ")");
        }
        List<KitsNeeded.Standing> standings =
                of.stream().map(KitsNeeded::standing).distinct().toList();
        KitsNeeded last = of.get(of.size() - 1);
        String words = switch (design) {
            case COUPLE -> "of this couple: ";
            case LITTERS -> "in whole litters: ";
            case JILLS -> "of one litter by each of several jills like her: ";
        };
        if (standings.equals(List.of(KitsNeeded.Standing.NEVER))) {
            return words + "no number of kits is enough, which is proved" + limit(last);
        }
        if (standings.equals(List.of(KitsNeeded.Standing.NOT_FOUND))) {
            return words + "more than " + last.tried() + " kits";
        }
        return words + String.join(", ", numbers);
    }

    /** What is the most that any number of kits reaches. */
    private static String limit(KitsNeeded never) {
        return never.limit() < SAME ? "" : " (with " + percent(never.limit()) + " at most it is)";
    }

    private static String number(KitsNeeded one) {
        return switch (one.standing()) {
            case REACHED -> {
                String kits = number(one.kits().orElseThrow());
                yield one.litters().isPresent()
                        ? one.litters().getAsInt() + (one.litters().getAsInt() == 1 ? " litter, " : " litters, ") + kits
                        : kits;
            }
            case NEVER -> "never, which is proved" + limit(one);
            case NOT_FOUND -> "more than " + one.tried() + " kits";
        };
    }

    static String percent(double chance) {
        return BigDecimal.valueOf(chance * 100)
                        .round(new MathContext(4))
                        .stripTrailingZeros()
                        .toPlainString()
                + " %";
    }

    /** How much of what is not known a step is expected to clear up. */
    static Optional<String> cleared(double bits, List<Double> beliefs) {
        double all = 0;
        for (double belief : beliefs) {
            all -= belief > 0 ? belief * Math.log(belief) / Math.log(2) : 0;
        }
        if (all < SAME) {
            return Optional.empty();
        }
        double share = 100 * bits / all;
        return Optional.of("on average it clears up "
                + (share < 0.05
                        ? "hardly anything"
                        : String.format(Locale.ROOT, share < 9.95 ? "%.1f %%" : "%.0f %%", share))
                + " of what is not known of these models");
    }
}
