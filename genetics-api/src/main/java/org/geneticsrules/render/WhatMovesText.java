package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.geneticsrules.expression.Census;
import org.geneticsrules.hypothesis.Change;
import org.geneticsrules.hypothesis.Fate;
import org.geneticsrules.hypothesis.Moment;
import org.geneticsrules.hypothesis.Moved;
import org.geneticsrules.hypothesis.WhatMoves;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.jspecify.annotations.Nullable;

/**
 * What moves between two models as plain text: the verdict, what the models state differently, the smallest examples with what either
 * model foretells side by side, and what was compared.
 *
 * <p>Stateless and thread-safe.
 */
public final class WhatMovesText {

    /** A reader looks at a few looks and at how many there are. */
    private static final int MOST_LOOKS = 12;

    private final WhatMoves moves;
    private final TextStyle style;
    private final TextLines text;

    private WhatMovesText(WhatMoves moves, TextStyle style) {
        this.moves = moves;
        this.style = style;
        this.text = new TextLines(style.width());
    }

    /**
     * Returns what moves in the standard style.
     *
     * @param moves what moves
     * @return lines that end in a newline
     */
    public static String of(WhatMoves moves) {
        return of(moves, TextStyle.standard());
    }

    /**
     * Returns what moves in a style.
     *
     * @param moves what moves
     * @param style how it is laid out
     * @return lines that end in a newline
     */
    public static String of(WhatMoves moves, TextStyle style) {
        WhatMovesText text = new WhatMovesText(moves, style);
        text.write();
        return text.text.toString();
    }

    private void write() {
        text.paragraph(moves.verdict());
        if (moves.isNothing()) {
            text.paragraph("This is proved, not sampled.");
        }
        text.heading("What is stated otherwise");
        if (moves.changes().isEmpty()) {
            text.paragraph("Nothing that bears on what animals look like, how they live or what they hand down.");
        }
        moves.changes().forEach(this::change);
        examples("Genotypes that move", moves.genotypes(), one -> {
            String sex = one.sex().map(of -> " (" + of.word() + ")").orElse("");
            text.blank().paragraph(animal(one.genotype(), one.counterpart()) + sex);
            fates(one.before(), one.after(), one.traits());
            drivers(one.drivers());
        });
        examples("Matings that move", moves.matings(), one -> {
            text.blank()
                    .paragraph("sire " + animal(one.sire(), one.sireCounterpart()) + ", dam "
                            + animal(one.dam(), one.damCounterpart()));
            fates(one.before(), one.after(), one.traits());
            drivers(one.drivers());
        });
        compared();
    }

    private void change(Change change) {
        text.item(change.pointer() + " is " + change.kind().word()
                + change.patch().map(patch -> " by patch " + patch).orElse(""));
        statements("    before: ", change.before());
        statements("    after:  ", change.after());
    }

    private void statements(String first, List<String> words) {
        if (!words.isEmpty()) {
            text.hanging(first, " ".repeat(first.length()), String.join("; ", words));
        }
    }

    private <T> void examples(String heading, Moved<T> moved, Consumer<T> write) {
        text.heading(heading);
        if (moved.isEmpty()) {
            text.paragraph("None.");
            return;
        }
        String when = when(moved.first().orElseThrow());
        int count = moved.smallest().size();
        String smallest = "The smallest" + (count > 1 ? " " + count : "");
        text.paragraph((moved.more() ? smallest : "All there are") + (when.isEmpty() ? "" : ", " + when) + ":");
        moved.smallest().forEach(write);
    }

    private static String when(Moment moment) {
        List<String> words = new ArrayList<>();
        if (!moment.stage().equals(LifeStage.unstated())) {
            words.add("at " + moment.stage());
        }
        if (moment.census() == Census.SCORED) {
            words.add("among those that live until they are scored");
        }
        return String.join(", ", words);
    }

    /** What tells an animal from the reference, in the terms of both models where they differ. */
    private String animal(Genotype before, Genotype after) {
        String one = genotype(moves.apart(before));
        String other = genotype(moves.apart(after));
        return one.equals(other) ? one : one + " (there: " + other + ")";
    }

    private String genotype(Genotype genotype) {
        if (genotype.loci().isEmpty()) {
            return "the reference";
        }
        return style.letters()
                ? genotype.toString()
                : genotype.pairs().values().stream().map(this::words).collect(Collectors.joining(", "));
    }

    private String words(AllelePair pair) {
        return style.locus(pair.locus()) + " " + style.pair(pair);
    }

    private void fates(Fate before, Fate after, Set<String> traits) {
        if (!before.lost().equals(after.lost())) {
            text.paragraph("  lost before they are counted: before " + Numbers.both(before.lost()) + ", after "
                    + Numbers.both(after.lost()));
        }
        if (traits.isEmpty()) {
            return;
        }
        Map<Phenotype, Probability> one = chances(before, traits);
        Map<Phenotype, Probability> other = chances(after, traits);
        List<Phenotype> looks = new ArrayList<>(one.keySet());
        other.keySet().stream().filter(look -> !one.containsKey(look)).forEach(looks::add);
        looks.sort(Comparator.comparing(
                look -> change(one.getOrDefault(look, Probability.ZERO), other.getOrDefault(look, Probability.ZERO)),
                Comparator.reverseOrder()));
        TextTable table = new TextTable("look", "before", "after").numbersFrom(1);
        looks.stream()
                .limit(MOST_LOOKS)
                .forEach(look -> table.row(
                        Looks.words(look, traits), chance(before, one.get(look)), chance(after, other.get(look))));
        table.lines(style.width() - 2).forEach(line -> text.line("  " + line));
        if (looks.size() > MOST_LOOKS) {
            text.paragraph("  and " + (looks.size() - MOST_LOOKS) + " more looks");
        }
    }

    /** What moves most comes first. */
    private static Probability change(Probability one, Probability other) {
        return one.compareTo(other) < 0 ? other.minus(one) : one.minus(other);
    }

    private static Map<Phenotype, Probability> chances(Fate fate, Set<String> traits) {
        return fate.looks()
                .map(looks -> looks.map(look -> look.restrictedTo(traits)).asMap())
                .orElse(new LinkedHashMap<>());
    }

    private static String chance(Fate fate, @Nullable Probability chance) {
        return Optional.ofNullable(chance)
                .map(share -> share.isOne() ? "always" : Numbers.both(share))
                .orElse(fate.looks().isPresent() ? "never" : "none live");
    }

    private void drivers(List<Change> drivers) {
        text.hanging(
                "  It rests on: ", "    ", drivers.stream().map(Change::pointer).collect(Collectors.joining(", ")));
    }

    private void compared() {
        text.heading("What was compared");
        text.item("Before: " + moves.before() + ". After: " + moves.after() + ".");
        text.item("Traits that both model: " + words(moves.traits()) + ".");
        if (!moves.onlyBefore().isEmpty()) {
            text.item("Only the first models " + words(moves.onlyBefore()) + "; that is left out.");
        }
        if (!moves.onlyAfter().isEmpty()) {
            text.item("Only the second models " + words(moves.onlyAfter()) + "; that is left out.");
        }
        text.item("Unless said otherwise animals carry only: "
                + moves.reference().entrySet().stream()
                        .map(locus -> style.shortLocus(locus.getKey()) + " " + locus.getValue())
                        .collect(Collectors.joining(", "))
                + ".");
        List<String> moments = moves.moments().stream()
                .map(WhatMovesText::when)
                .filter(when -> !when.isEmpty())
                .toList();
        if (!moments.isEmpty()) {
            text.item("Examined: "
                    + (moments.size() > 2
                            ? moments.get(0) + " to " + moments.get(moments.size() - 1)
                            : String.join(", then ", moments))
                    + (moves.isNothing() && moves.stage().isEmpty()
                            ? "; what holds at these holds at every stage."
                            : "."));
        }
        moves.limits().forEach(text::item);
        text.item(
                "Smallest first: fewest genotypes other than these, then fewest heterozygous ones, then declared order.");
    }

    private static String words(Set<String> traits) {
        return traits.stream()
                .map(trait -> trait.equals(Sex.VARIABLE) ? "the sexes" : trait)
                .collect(Collectors.joining(", "));
    }
}
