package org.geneticsrules.estimation;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.function.UnaryOperator;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.model.Viability;
import org.geneticsrules.probability.Probability;

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
        model.loci().values().forEach(builder::locus);
        model.groups().values().forEach(one -> builder.group(group.apply(one)));
        model.viability().values().forEach(one -> builder.viability(viability.apply(one)));
        model.rules().values().forEach(one -> builder.trait(changed(one)));
        model.masks().values().forEach(builder::mask);
        model.populations().values().forEach(builder::population);
        model.notModelled().forEach(builder::notModelled);
        return builder.build();
    }

    private TraitRule changed(TraitRule before) {
        return new TraitRule(
                before.trait(),
                before.visible(),
                before.states(),
                before.cases().stream()
                        .map(each -> rule.of(before.trait(), each))
                        .toList(),
                before.otherwise().map(each -> rule.of(before.trait(), each)),
                before.evidence());
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
