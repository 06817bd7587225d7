package org.geneticsrules.testing;

import org.geneticsrules.model.Dominance;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.trait.Sex;

/** Starts a model from the rules of another, so that a test can add to them. Populations are not copied. */
public final class Copies {

    private Copies() {}

    /**
     * Returns a builder that holds the loci, rules and masks of a model.
     *
     * @param model a model
     * @return a builder to be added to
     */
    public static ModelBuilder of(Model model) {
        ModelBuilder builder = Model.builder(model.id(), model.version(), model.catalogue());
        model.evidence().values().forEach(builder::evidence);
        for (Locus locus : model.loci().values()) {
            builder.locus(locus.id(), described -> {
                locus.alleles().values().forEach(described::allele);
                described.symbol(locus.symbol());
                locus.wildType().ifPresent(allele -> described.wildType(allele.id()));
                described.expressions(locus.expressions().toArray(String[]::new));
                Dominance stated = locus.dominance(Sex.FEMALE);
                stated.order().forEach(described::order);
                stated.shows().forEach(shown -> described.shows(shown.key(), shown.expression(), shown.evidence()));
                stated.evidence().ifPresent(described::evidence);
            });
        }
        for (TraitRule rule : model.rules().values()) {
            builder.trait(rule.trait(), described -> {
                if (!rule.visible()) {
                    described.inner(rule.states().toArray(String[]::new));
                }
                rule.cases().forEach(described::when);
                rule.otherwise().ifPresent(rest -> described.otherwise(rest.gives(), rest.evidence()));
                rule.evidence().ifPresent(described::evidence);
            });
        }
        model.masks().values().forEach(builder::mask);
        return builder;
    }
}
