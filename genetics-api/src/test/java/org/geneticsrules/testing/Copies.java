package org.geneticsrules.testing;

import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;

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
        model.rules().values().forEach(builder::trait);
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
        model.loci().values().forEach(builder::locus);
        model.groups().values().forEach(builder::group);
        model.viability().values().forEach(builder::viability);
        return builder;
    }
}
