package org.geneticsrules.model;

import org.geneticsrules.trait.Sex;

/** States anew what a model states, for another model that is being built. */
final class Restated {

    private Restated() {}

    static void locus(Locus locus, LocusBuilder described) {
        described.symbol(locus.symbol());
        locus.title().ifPresent(described::title);
        locus.alleles().values().forEach(described::allele);
        locus.wildType().ifPresent(allele -> described.wildType(allele.id()));
        described.expressions(locus.expressions().toArray(String[]::new));
        if (locus.dependsOnSex()) {
            for (Sex sex : Sex.values()) {
                described.in(sex, one -> dominance(locus.dominance(sex), one));
            }
        } else {
            described.dominance(both -> dominance(locus.dominance(Sex.FEMALE), both));
        }
        locus.absent().ifPresent(described::absent);
        locus.mutation()
                .forEach((from, rates) -> rates.forEach(
                        (to, rate) -> described.mutation(from, to, rate, locus.mutationEvidence(from, to))));
    }

    private static void dominance(Dominance dominance, DominanceBuilder described) {
        dominance.order().forEach(described::order);
        dominance.shows().forEach(one -> described.shows(one.key(), one.expression(), one.evidence()));
        dominance.evidence().ifPresent(described::evidence);
    }

    static void trait(TraitRule rule, TraitBuilder described) {
        if (!rule.visible()) {
            described.inner(rule.states().toArray(String[]::new));
        }
        rule.cases().forEach(described::when);
        rule.otherwise().ifPresent(rest -> described.otherwise(rest.gives(), rest.evidence()));
        rule.evidence().ifPresent(described::evidence);
    }

    static void population(Population population, ModelBuilder.PopulationBuilder described) {
        described.anew = true;
        population.title().ifPresent(described::title);
        population
                .frequencies()
                .forEach((locus, stated) -> stated.outcomes()
                        .forEach(allele -> described.frequency(locus, allele, stated.probability(allele))));
        population.evidence().ifPresent(described::evidence);
    }
}
