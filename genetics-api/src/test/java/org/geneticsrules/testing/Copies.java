package org.geneticsrules.testing;

import org.geneticsrules.model.Dominance;
import org.geneticsrules.model.DominanceBuilder;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.LocusBuilder;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Sex;

/** Starts a model from the statements of another, so that a test can add to them. Populations are not copied. */
public final class Copies {

    private Copies() {}

    /**
     * Returns a builder that holds the loci, groups, viability, rules and masks of a model.
     *
     * @param model a model
     * @return a builder to be added to
     */
    public static ModelBuilder of(Model model) {
        ModelBuilder builder = genome(model, Model.builder(model.id(), model.version(), model.catalogue()));
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

    /**
     * Returns a model of the same loci, groups and viability in which every locus is read by a visible trait of its own, whose states
     * are the expressions of the locus.
     *
     * @param model a model
     * @return the model that hides nothing
     */
    public static Model readable(Model model) {
        Catalogue.Builder catalogue = Catalogue.builder("readable.traits", "1.0.0");
        model.loci()
                .values()
                .forEach(locus ->
                        catalogue.trait(shows(locus.id()), locus.expressions().toArray(String[]::new)));
        ModelBuilder builder = genome(model, Model.builder(model.id() + ".readable", "1.0.0", catalogue.build()));
        model.loci()
                .values()
                .forEach(locus -> builder.trait(
                        shows(locus.id()),
                        rule -> locus.expressions()
                                .forEach(
                                        expression -> rule.when(Condition.where(locus.id(), expression), expression))));
        return builder.build();
    }

    /**
     * Returns the trait that reads a locus of a readable model.
     *
     * @param locus id of a locus
     * @return id of the trait
     */
    public static String shows(String locus) {
        return "shows " + locus;
    }

    private static ModelBuilder genome(Model model, ModelBuilder builder) {
        model.evidence().values().forEach(builder::evidence);
        model.loci().values().forEach(locus -> builder.locus(locus.id(), described -> locus(locus, described)));
        model.groups().values().forEach(builder::group);
        model.viability().values().forEach(builder::viability);
        return builder;
    }

    private static void locus(Locus locus, LocusBuilder described) {
        locus.alleles().values().forEach(described::allele);
        described.symbol(locus.symbol());
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

    private static void dominance(Dominance stated, DominanceBuilder described) {
        stated.order().forEach(described::order);
        stated.shows().forEach(shown -> described.shows(shown.key(), shown.expression(), shown.evidence()));
        stated.evidence().ifPresent(described::evidence);
    }
}
