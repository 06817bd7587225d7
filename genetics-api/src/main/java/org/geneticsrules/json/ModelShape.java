package org.geneticsrules.json;

import java.util.Optional;
import org.geneticsrules.document.Reference;
import org.geneticsrules.model.ModelBuilder;

/** The shape of a model document; loci have a file of their own, and so have the rules. */
final class ModelShape {

    private final Limits limits;
    private final Part.Members members;

    ModelShape(Part document, Limits limits) {
        this.limits = limits;
        this.members = document.members(
                "formatVersion",
                "kind",
                "id",
                "version",
                "title",
                "taxon",
                "licence",
                "derivedFrom",
                "catalogue",
                "evidence",
                "loci",
                "groups",
                "viability",
                "traits",
                "masks",
                "populations",
                "notModelled");
    }

    /** Id and version, if both are stated. */
    Optional<Reference> head() {
        return Head.read(members, DocumentKind.MODEL);
    }

    /** The catalogue that the model was written for, if it is stated. */
    Optional<Reference> catalogue() {
        return members.required("catalogue").flatMap(Head::reference);
    }

    /** Fills a builder. What was filled in is sound only if no problem was noted. */
    void fill(ModelBuilder model) {
        members.optional("title").flatMap(Part::text).ifPresent(model::title);
        members.optional("taxon").flatMap(Head::taxon).ifPresent(model::taxon);
        members.optional("licence").flatMap(Part::text).ifPresent(model::licence);
        members.optional("derivedFrom")
                .ifPresent(list -> model.derivedFrom(list.items(2).stream()
                        .flatMap(item -> Head.reference(item).stream())
                        .toList()));
        members.optional("evidence")
                .ifPresent(part -> part.entries().forEach((id, support) -> model.evidence(Head.evidence(id, support))));
        members.required("loci")
                .ifPresent(part -> part.entries("loci", limits.loci())
                        .forEach((id, locus) ->
                                model.locus(id, builder -> new LocusShape(locus, limits).fill(builder))));
        members.optional("groups")
                .ifPresent(part -> part.entries("groups", limits.loci())
                        .forEach((id, group) -> model.group(new GroupShape(group, limits).read(id))));
        members.optional("viability")
                .ifPresent(part ->
                        part.entries().forEach((id, stated) -> model.viability(ViabilityShape.read(id, stated))));
        members.required("traits")
                .ifPresent(part -> part.entries("traits", limits.traits())
                        .forEach((id, rule) -> model.trait(id, builder -> RuleShape.trait(rule, limits, builder))));
        members.optional("masks")
                .ifPresent(part -> part.entries("masks", limits.masks())
                        .forEach((id, mask) -> model.mask(RuleShape.mask(id, mask))));
        members.optional("populations")
                .ifPresent(part -> part.entries()
                        .forEach((id, population) -> model.population(id, builder -> population(population, builder))));
        members.optional("notModelled")
                .ifPresent(part -> part.entries()
                        .forEach((trait, reason) -> reason.text().ifPresent(words -> model.notModelled(trait, words))));
    }

    private static void population(Part part, ModelBuilder.PopulationBuilder population) {
        Part.Members stated = part.members("title", "frequencies", "evidence");
        stated.optional("title").flatMap(Part::text).ifPresent(population::title);
        stated.optional("evidence").flatMap(Part::text).ifPresent(population::evidence);
        stated.required("frequencies")
                .ifPresent(frequencies -> frequencies
                        .entries()
                        .forEach((locus, alleles) -> alleles.entries()
                                .forEach((allele, share) -> ChanceShape.read(share, "bad-frequency")
                                        .ifPresent(value -> population.frequency(locus, allele, value)))));
    }
}
