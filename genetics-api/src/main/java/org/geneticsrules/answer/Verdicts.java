package org.geneticsrules.answer;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Taxon;

/** Puts results into one sentence. */
final class Verdicts {

    private static final int MOST_LISTED = 8;

    private final Taxon.Young young;
    private final boolean afterOthers;

    /**
     * Prepares sentences.
     *
     * @param young what the young are called
     * @param afterOthers whether litter-mates were seen before
     */
    Verdicts(Taxon.Young young, boolean afterOthers) {
        this.young = young;
        this.afterOthers = afterOthers;
    }

    private String given() {
        return "Given the " + young.many() + " already seen, ";
    }

    /** As in "Of 16 kits on average: 9 hue black; 3 hue brown; 4 hue none seen." */
    String ratio(Distribution<Phenotype> outcomes) {
        List<Phenotype> looks = new ArrayList<>(outcomes.outcomes());
        Set<String> varying = varying(looks);
        if (looks.size() == 1) {
            return (afterOthers ? given() + young.every() + " yet to be seen" : capital(young.every())) + " shows "
                    + words(looks.get(0), looks.get(0).traits()) + ".";
        }
        List<BigInteger> parts = outcomes.ratio();
        BigInteger total = parts.stream().reduce(BigInteger.ZERO, BigInteger::add);
        List<String> listed = new ArrayList<>();
        for (int i = 0; i < Math.min(parts.size(), MOST_LISTED); i++) {
            listed.add(parts.get(i) + " " + words(looks.get(i), varying));
        }
        String more = looks.size() > MOST_LISTED ? "; and " + (looks.size() - MOST_LISTED) + " further looks" : "";
        Set<String> constant = new LinkedHashSet<>(looks.get(0).traits());
        constant.removeAll(varying);
        String alike = constant.isEmpty() ? "" : "; all show " + words(looks.get(0), constant);
        return (afterOthers ? given() + "of " : "Of ") + total + (afterOthers ? " further " : " ") + young.many()
                + " on average: " + String.join("; ", listed) + more + alike + ".";
    }

    /** As in "A kit shows hue black with a chance of 9/16 (56.25 %)." */
    String chance(Phenotype look, Probability chance) {
        String after = (afterOthers ? given() + "the next " + young.one() : capital(young.any()));
        if (chance.isZero()) {
            return after + " cannot show " + words(look, look.traits()) + " under this model.";
        }
        if (chance.isOne()) {
            return after + " always shows " + words(look, look.traits()) + " under this model.";
        }
        return after + " shows " + words(look, look.traits()) + " with a chance of " + percent(chance) + ".";
    }

    /** What can be said of one look without frequencies. */
    String possible(Phenotype look, Collection<Probability> chances) {
        String words = words(look, look.traits());
        if (chances.stream().allMatch(Probability::isZero)) {
            return capital(young.none()) + " can show " + words + " under this model, whatever the parents carry.";
        }
        if (chances.size() == 1) {
            return "Whatever else the parents carry, " + young.any() + " shows " + words + " with a chance of "
                    + percent(chances.iterator().next()) + ".";
        }
        String listed = chances.stream().map(Probability::toString).collect(Collectors.joining(" or "));
        return "It is possible that " + young.any() + " shows " + words
                + ": depending on what the parents carry, the chance is " + listed + ".";
    }

    /** What can be said of all looks without frequencies. */
    String possible(Collection<Phenotype> looks) {
        List<Phenotype> all = new ArrayList<>(looks);
        if (all.size() == 1) {
            return "Whatever the parents carry, " + young.every() + " shows "
                    + words(all.get(0), all.get(0).traits()) + ".";
        }
        Set<String> varying = varying(all);
        String listed = all.stream()
                .limit(MOST_LISTED)
                .map(look -> words(look, varying))
                .collect(Collectors.joining("; "));
        String more = all.size() > MOST_LISTED ? "; and " + (all.size() - MOST_LISTED) + " further looks" : "";
        return capital(young.many()) + " of " + all.size() + " looks are possible: " + listed + more + ".";
    }

    /** As in "hue black, eye colour dark"; a trait the model makes no claim about is said to be not modelled. */
    static String words(Phenotype look, Collection<String> traits) {
        String words = traits.stream()
                .map(trait -> (trait.equals(Sex.VARIABLE) ? "" : trait + " ")
                        + look.state(trait).orElse("not modelled"))
                .collect(Collectors.joining(", "));
        return words.isEmpty() ? "nothing that is modelled" : words;
    }

    /** What an animal of known genotype shows, where chance may decide. */
    static String shows(Distribution<Phenotype> looks, Collection<String> traits) {
        List<Phenotype> all = new ArrayList<>(looks.outcomes());
        if (all.size() == 1) {
            return "The animal shows " + words(all.get(0), traits) + ".";
        }
        Set<String> varying = varying(all);
        List<String> constant =
                traits.stream().filter(trait -> !varying.contains(trait)).toList();
        String listed = all.stream()
                .limit(MOST_LISTED)
                .map(look -> words(look, varying) + " with a chance of " + percent(looks.probability(look)))
                .collect(Collectors.joining("; "));
        String more = all.size() > MOST_LISTED ? "; or one of " + (all.size() - MOST_LISTED) + " further looks" : "";
        return "Chance decides: the animal shows " + listed + more
                + (constant.isEmpty() ? "" : "; in any case " + words(all.get(0), constant)) + ".";
    }

    private static String capital(String word) {
        return word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1);
    }

    static String percent(Probability chance) {
        return chance + " (" + Probabilities.percent(chance) + ")";
    }

    private static Set<String> varying(List<Phenotype> looks) {
        Set<String> traits = new LinkedHashSet<>();
        looks.forEach(look -> traits.addAll(look.traits()));
        Set<String> varying = new LinkedHashSet<>();
        for (String trait : traits) {
            Optional<String> first = looks.get(0).state(trait);
            if (looks.stream().anyMatch(look -> !look.state(trait).equals(first))) {
                varying.add(trait);
            }
        }
        return varying;
    }
}
