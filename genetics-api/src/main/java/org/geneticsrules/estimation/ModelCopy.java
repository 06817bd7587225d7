package org.geneticsrules.estimation;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.function.UnaryOperator;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.Dominance;
import org.geneticsrules.model.DominanceBuilder;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.LocusBuilder;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.model.Viability;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Sex;

/**
 * A model stated anew with some statements exchanged. It keeps id and version, and what it was made from; its hash is its own.
 *
 * @param group what becomes of each linkage group
 * @param viability what becomes of each statement of viability
 * @param rule what becomes of each case, the trait given first
 */
record ModelCopy(UnaryOperator<LinkageGroup> group, UnaryOperator<Viability> viability, CaseChange rule) {

    /** What becomes of a case of a trait. */
    interface CaseChange {
        Case of(String trait, Case before);
    }

    static ModelCopy exchanging(CaseChange rule) {
        return new ModelCopy(UnaryOperator.identity(), UnaryOperator.identity(), rule);
    }

    static ModelCopy exchangingGroups(UnaryOperator<LinkageGroup> group) {
        return new ModelCopy(group, UnaryOperator.identity(), (trait, before) -> before);
    }

    static ModelCopy exchangingViability(UnaryOperator<Viability> viability) {
        return new ModelCopy(UnaryOperator.identity(), viability, (trait, before) -> before);
    }

    Model of(Model model) {
        ModelBuilder builder = Model.builder(model.id(), model.version(), model.catalogue());
        model.title().ifPresent(builder::title);
        model.taxon().ifPresent(builder::taxon);
        model.licence().ifPresent(builder::licence);
        builder.derivedFrom(model.derivedFrom());
        model.evidence().values().forEach(builder::evidence);
        model.loci().values().forEach(locus -> builder.locus(locus.id(), described -> describe(locus, described)));
        model.groups().values().forEach(one -> builder.group(group.apply(one)));
        model.viability().values().forEach(one -> builder.viability(viability.apply(one)));
        model.rules()
                .values()
                .forEach(one -> builder.trait(one.trait(), described -> {
                    if (!one.visible()) {
                        described.inner(one.states().toArray(String[]::new));
                    }
                    one.cases().forEach(each -> described.when(rule.of(one.trait(), each)));
                    one.otherwise()
                            .map(each -> rule.of(one.trait(), each))
                            .ifPresent(each -> described.otherwise(each.gives(), each.evidence()));
                    one.evidence().ifPresent(described::evidence);
                }));
        model.masks().values().forEach(builder::mask);
        populations(model, builder);
        model.notModelled().forEach(builder::notModelled);
        return builder.build();
    }

    private static void populations(Model model, ModelBuilder builder) {
        model.populations()
                .values()
                .forEach(one -> builder.population(one.id(), described -> {
                    one.title().ifPresent(described::title);
                    one.frequencies()
                            .forEach((locus, stated) -> model.locus(locus)
                                    .alleles()
                                    .keySet()
                                    .forEach(allele -> described.frequency(locus, allele, stated.probability(allele))));
                    one.evidence().ifPresent(described::evidence);
                }));
    }

    private static void describe(Locus locus, LocusBuilder described) {
        described.symbol(locus.symbol());
        locus.title().ifPresent(described::title);
        locus.alleles().values().forEach(described::allele);
        locus.wildType().ifPresent(allele -> described.wildType(allele.id()));
        described.expressions(locus.expressions().toArray(String[]::new));
        if (locus.dependsOnSex()) {
            for (Sex sex : Sex.values()) {
                described.in(sex, one -> describe(locus.dominance(sex), one));
            }
        } else {
            described.dominance(both -> describe(locus.dominance(Sex.FEMALE), both));
        }
        locus.absent().ifPresent(described::absent);
        locus.mutation()
                .forEach((from, rates) -> rates.forEach(
                        (to, rate) -> described.mutation(from, to, rate, locus.mutationEvidence(from, to))));
    }

    private static void describe(Dominance dominance, DominanceBuilder described) {
        dominance.order().forEach(described::order);
        dominance.shows().forEach(one -> described.shows(one.key(), one.expression(), one.evidence()));
        dominance.evidence().ifPresent(described::evidence);
    }

    /** A chance that was calculated, as near as twelve decimals come to it; that is the precision of converted map distances too. */
    static Probability chance(double value) {
        return Probability.from(BigDecimal.valueOf(value).setScale(12, RoundingMode.HALF_EVEN));
    }

    /** The rule of a trait, if the model has one. */
    static TraitRule rule(Model model, String trait) {
        TraitRule found = model.rules().get(trait);
        if (found == null) {
            throw new IllegalArgumentException("model " + model + " has no rule for trait \"" + trait
                    + "\"; expected one of " + model.rules().keySet());
        }
        return found;
    }
}
