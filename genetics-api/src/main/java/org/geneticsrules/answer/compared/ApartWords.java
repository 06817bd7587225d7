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
            return plain(look) + when(look.traits(), catalogue);
        }
        if (step instanceof Step.Test test) {
            return plain(test);
        }
        Step.Kits kits = (Step.Kits) step;
        return plain(kits)
                + switch (kits.effort()) {
                    case RECORD, DNA_TEST -> ", born already";
                    case PLANNED_MATING -> ", a planned mating";
                    case NEW_MATING -> ", a mating made for this alone";
                }
                + when(kits.traits(), catalogue);
    }

    /** The same in as few words as will do. */
    static String plain(Step step) {
        if (step instanceof Step.Look look) {
            return "look at " + String.join(", ", look.traits()) + " in \"" + look.animal() + "\"";
        }
        if (step instanceof Step.Test test) {
            return "DNA test of \"" + test.animal() + "\" at locus " + test.locus();
        }
        Step.Kits kits = (Step.Kits) step;
        return "look at " + String.join(", ", kits.traits()) + " in " + number(kits.kits()) + " of \"" + kits.sire()
                + "\" and \"" + kits.dam() + "\"";
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
            says.add(
                    "if model " + (ratio.truth() + 1) + " is true: " + expected(ratio, "model " + (ratio.rival() + 1)));
            needed(worth, ratio.truth(), ratio.rival(), bar).ifPresent(says::add);
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
    private static Optional<String> needed(Worth worth, int truth, int rival, double bar) {
        List<KitsNeeded> all = worth.numbers().stream()
                .filter(one -> one.truth() == truth && one.rival() == rival)
                .toList();
        if (all.isEmpty()) {
            return Optional.empty();
        }
        String start = String.format(
                Locale.ROOT,
                "until model %d is ahead of model %d by %.0f : 1, if it is true: ",
                truth + 1,
                rival + 1,
                bar);
        if (all.stream().allMatch(one -> one.kits().isPresent() && one.kits().getAsInt() == 0)) {
            return Optional.of(start + "no kit, by the records held it is already");
        }
        int each = worth.step() instanceof Step.Kits kits ? kits.kits() : 1;
        List<String> designs = new ArrayList<>();
        List<KitsNeeded> couple = of(all, Design.COUPLE);
        boolean never = isNever(couple);
        designs.add(never ? "kits of this couple never do, which is proved" + limit(couple) : counts(couple, "kit", 1));
        if (!never) {
            designs.add(counts(of(all, Design.LITTERS), "litter", each));
        }
        List<KitsNeeded> jills = of(all, Design.JILLS);
        if (!jills.isEmpty()) {
            designs.add(
                    isNever(jills)
                            ? "one litter by each of several jills like her never does, which is proved" + limit(jills)
                            : "one litter by each of " + counts(jills, "jill", each));
        }
        return Optional.of(start + String.join("; ", designs));
    }

    private static List<KitsNeeded> of(List<KitsNeeded> all, Design design) {
        return all.stream().filter(one -> one.design() == design).toList();
    }

    private static boolean isNever(List<KitsNeeded> some) {
        return some.stream().allMatch(one -> one.standing() == KitsNeeded.Standing.NEVER);
    }

    /** What is the most that any number of kits reaches. */
    private static String limit(List<KitsNeeded> never) {
        double most = never.get(0).limit();
        return most < SAME ? "" : ": however many, the chance does not come above " + percent(most);
    }

    /** How many of something it takes, so many kits in each, with each chance asked for. */
    private static String counts(List<KitsNeeded> some, String what, int each) {
        List<String> numbers = new ArrayList<>();
        for (KitsNeeded one : some) {
            numbers.add(switch (one.standing()) {
                        case REACHED -> counted(one.kits().orElseThrow() / each, what);
                        case NEVER -> "never, which is proved,";
                        case NOT_FOUND -> "more than " + counted(one.tried() / each, what);
                    }
                    + " with " + percent(one.sureness()));
        }
        return String.join(", ", numbers);
    }

    private static String counted(int count, String what) {
        return count + " " + what + (count == 1 ? "" : "s");
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
