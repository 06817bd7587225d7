package org.geneticsrules.model;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.BoxSet;
import org.jspecify.annotations.Nullable;

/** Checks that the statements of a model do not contradict one another, pairwise and with witnesses. */
final class MeaningChecks {

    private final Model model;
    private final Problems problems;
    private final Regions regions;

    MeaningChecks(Model model, Problems problems) {
        this.model = model;
        this.problems = problems;
        this.regions = Regions.of(model);
    }

    void run() {
        model.rules().values().forEach(this::casesAreDisjoint);
        List<Mask> masks = new ArrayList<>(model.masks().values());
        for (int i = 0; i < masks.size(); i++) {
            for (int j = i + 1; j < masks.size(); j++) {
                masksAgree(masks.get(i), masks.get(j));
            }
        }
    }

    /** Traits must not read one another in a circle, nor masks give way in one. */
    static void circles(ModelBuilder model, Problems problems) {
        Map<String, Set<String>> reads = new LinkedHashMap<>();
        model.traits.forEach((name, trait) -> {
            Set<String> read = new LinkedHashSet<>();
            trait.cases.forEach(rule -> read.addAll(rule.when().names()));
            reads.put(name, read);
        });
        Circles.find(reads)
                .ifPresent(circle -> problems.add(
                        "trait-circle",
                        Pointer.of("traits", circle.get(0)),
                        "traits read one another in a circle: " + String.join(" reads ", circle)));
        Map<String, Set<String>> over = new LinkedHashMap<>();
        model.masks.forEach((name, mask) -> over.put(name, mask.over()));
        Circles.find(over)
                .ifPresent(circle -> problems.add(
                        "mask-circle",
                        Pointer.of("masks", circle.get(0), "over"),
                        "masks lie over one another in a circle: " + String.join(" over ", circle)));
    }

    /** Frequencies of one population; absent if one of its loci does not sum to 1. */
    static Optional<Map<String, Distribution<String>>> frequencies(
            ModelBuilder.PopulationBuilder population, Problems problems) {
        Map<String, Distribution<String>> distributions = new LinkedHashMap<>();
        population.frequencies.forEach((locus, alleles) -> {
            try {
                distributions.put(locus, Distribution.of(alleles));
            } catch (IllegalArgumentException e) {
                problems.add(
                        "frequencies-sum",
                        Pointer.of("populations", population.id, "frequencies", locus),
                        "the frequencies of locus " + locus + " do not sum to 1: " + alleles,
                        "frequencies of all alleles that sum to exactly 1");
            }
        });
        return distributions.size() == population.frequencies.size() ? Optional.of(distributions) : Optional.empty();
    }

    private void casesAreDisjoint(TraitRule rule) {
        for (int i = 0; i < rule.cases().size(); i++) {
            for (int j = i + 1; j < rule.cases().size(); j++) {
                Case one = rule.cases().get(i);
                Case other = rule.cases().get(j);
                BoxSet both = regions.holds(one.when()).and(regions.holds(other.when()));
                if (!both.isEmpty()) {
                    problems.add(
                            "overlapping-cases",
                            rule.pointer(other),
                            "cases \"" + one.id() + "\" and \"" + other.id() + "\" of " + rule.trait()
                                    + " both hold for " + example(both),
                            "cases that exclude each other");
                }
            }
        }
    }

    private void masksAgree(Mask one, Mask other) {
        if (model.isOver(one.id(), other.id()) || model.isOver(other.id(), one.id())) {
            return;
        }
        BoxSet both = regions.holds(one.when()).and(regions.holds(other.when()));
        if (both.isEmpty()) {
            return;
        }
        for (String trait : one.covers().keySet()) {
            Mask.Cover second = other.covers().get(trait);
            if (second != null) {
                disagreement(trait, one.covers().get(trait), second, both)
                        .ifPresent(where -> problems.add(
                                "mask-conflict",
                                Pointer.of("masks", other.id(), "covers", trait),
                                "masks \"" + one.id() + "\" and \"" + other.id() + "\" show " + trait
                                        + " differently for " + where,
                                "one of them stated \"over\" the other"));
            }
        }
    }

    private Optional<String> disagreement(String trait, Mask.@Nullable Cover first, Mask.Cover second, BoxSet both) {
        if (first == null) {
            return Optional.empty();
        }
        if (first.constant().isPresent() && second.constant().isPresent()) {
            return first.constant().equals(second.constant())
                    ? Optional.empty()
                    : Optional.of(shownBy(first, second, first.constant().get(), both));
        }
        for (String own : model.states(trait)) {
            boolean modelled = model.rules().containsKey(trait);
            BoxSet where = modelled ? both.and(regions.own(trait, Allowed.only(own))) : both;
            if (!first.shown(own).equals(second.shown(own)) && !where.isEmpty()) {
                return Optional.of(shownBy(first, second, own, where));
            }
        }
        return Optional.empty();
    }

    private String shownBy(Mask.Cover first, Mask.Cover second, String own, BoxSet where) {
        return example(where) + ": \"" + first.shown(own) + "\" and \"" + second.shown(own) + "\"";
    }

    private String example(BoxSet region) {
        return regions.witness(region)
                .map(Regions.Witness::toString)
                .orElseGet(() -> "the declared expressions " + region.boxes().get(0)
                        + (regions.isWide(region)
                                ? " (of which no animal was found as an example)"
                                : " (which no genotype reaches under this dominance)"));
    }
}
