package org.geneticsrules.hypothesis;

import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.expression.Census;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;

/** What moves, in one sentence. */
final class Verdict {

    private Verdict() {}

    static String of(WhatMoves moves) {
        if (moves.isNothing()) {
            return "Nothing moves: both models foretell the same of every genotype and every mating that can be compared, in "
                    + traits(moves.traits()) + every(moves) + ".";
        }
        String genotype = moves.genotypes().isEmpty()
                ? "No genotype moves, but matings do; the smallest"
                : "The smallest genotype that moves is "
                        + genotype(moves, moves.genotypes().smallest().get(0))
                        + when(moves.genotypes()) + "; ";
        if (moves.matings().isEmpty()) {
            return genotype + "no mating moves of parents that live under both models.";
        }
        MovedMating mating = moves.matings().smallest().get(0);
        return genotype + (moves.genotypes().isEmpty() ? " is " : "the smallest mating that moves is ")
                + text(moves, mating.sire()) + " x " + text(moves, mating.dam()) + ", in "
                + shown(mating.traits()) + when(moves.matings()) + ".";
    }

    private static String genotype(WhatMoves moves, MovedGenotype one) {
        return text(moves, one.genotype())
                + one.sex().map(sex -> " in " + sex.word() + "s").orElse("") + ", in " + shown(one.traits());
    }

    private static String text(WhatMoves moves, Genotype genotype) {
        Genotype apart = moves.apart(genotype);
        return apart.loci().isEmpty() ? "the reference" : apart.toString();
    }

    private static String shown(Set<String> traits) {
        return traits.isEmpty() ? "the share that is lost" : traits(traits);
    }

    private static String traits(Set<String> traits) {
        return traits.stream()
                .map(trait -> trait.equals(Sex.VARIABLE) ? "the sexes" : trait)
                .collect(Collectors.joining(" and "));
    }

    private static String when(Moved<?> moved) {
        Moment moment = moved.first().orElseThrow();
        return (moment.stage().equals(LifeStage.unstated()) ? "" : ", first at " + moment.stage())
                + (moment.census() == Census.SCORED ? ", among those that live until they are scored" : "");
    }

    private static String every(WhatMoves moves) {
        boolean staged =
                moves.moments().stream().anyMatch(moment -> !moment.stage().equals(LifeStage.unstated()));
        return !staged ? "" : " at " + moves.stage().map(LifeStage::toString).orElse("every stage of life");
    }
}
