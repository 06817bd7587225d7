package org.geneticsrules.model;

import java.util.List;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.document.Reference;
import org.geneticsrules.evidence.Evidence;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Recombination;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Sex;

/** The document form of a model: what is written to a file and what is hashed. Stateless and thread-safe. */
public final class ModelDocument {

    private ModelDocument() {}

    /**
     * Returns the document that states a model.
     *
     * @param model a model
     * @return a document of kind {@code model}, format version 0
     */
    public static Node of(Model model) {
        ObjectBuilder evidence = new ObjectBuilder();
        model.evidence().values().forEach(support -> evidence.with(support.id(), evidence(support)));
        ObjectBuilder loci = new ObjectBuilder();
        model.loci().values().forEach(locus -> loci.with(locus.id(), LocusDocument.of(locus)));
        ObjectBuilder groups = new ObjectBuilder();
        model.groups().values().forEach(group -> groups.with(group.id(), group(group)));
        ObjectBuilder viability = new ObjectBuilder();
        model.viability().values().forEach(stated -> viability.with(stated.id(), viability(stated)));
        ObjectBuilder traits = new ObjectBuilder();
        model.rules().values().forEach(rule -> traits.with(rule.trait(), RuleDocument.of(rule)));
        ObjectBuilder masks = new ObjectBuilder();
        model.masks().values().forEach(mask -> masks.with(mask.id(), RuleDocument.of(mask)));
        ObjectBuilder populations = new ObjectBuilder();
        model.populations()
                .values()
                .forEach(population -> populations.with(population.id(), population(model, population)));
        ObjectBuilder notModelled = new ObjectBuilder();
        model.notModelled().forEach(notModelled::with);
        ObjectBuilder document = new ObjectBuilder()
                .with("formatVersion", Node.number(0))
                .with("kind", "model")
                .with("id", model.id())
                .with("version", model.version())
                .with("title", model.title());
        model.taxon().ifPresent(taxon -> document.with("taxon", taxon.toNode()));
        document.with("licence", model.licence());
        if (!model.derivedFrom().isEmpty()) {
            document.with(
                    "derivedFrom",
                    Node.list(
                            model.derivedFrom().stream().map(Reference::toNode).toArray(Node[]::new)));
        }
        return document.with("catalogue", model.catalogue().reference().toNode())
                .withAny("evidence", evidence)
                .with("loci", loci.build())
                .withAny("groups", groups)
                .withAny("viability", viability)
                .with("traits", traits.build())
                .withAny("masks", masks)
                .withAny("populations", populations)
                .withAny("notModelled", notModelled)
                .build();
    }

    private static Node evidence(Evidence support) {
        return new ObjectBuilder()
                .with("grade", support.grade().word())
                .with("claim", support.claim())
                .with("sources", Node.texts(support.sources()))
                .withAny("dissent", support.dissent())
                .build();
    }

    private static Node group(LinkageGroup group) {
        ObjectBuilder node = new ObjectBuilder().with("title", group.title());
        if (group.transmission() != Transmission.AUTOSOMAL) {
            node.with("transmission", group.transmission().word());
        }
        node.with("loci", Node.texts(group.loci()));
        if (group.recombination() instanceof Recombination.Crossovers table) {
            node.with("crossovers", RuleDocument.chances(table.patterns()));
        } else if (group.recombination() instanceof Recombination.Fractions fractions) {
            if (!fractions.female().equals(fractions.male())) {
                ObjectBuilder each = new ObjectBuilder();
                for (Sex sex : Sex.values()) {
                    each.with(sex.word(), fractions(fractions.of(sex)));
                }
                node.with("recombination", each.build());
            } else if (!fractions.female().isEmpty()) {
                node.with("recombination", fractions(fractions.female()));
            }
        }
        return node.with("evidence", group.evidence()).build();
    }

    private static Node fractions(List<Probability> fractions) {
        return Node.texts(fractions.stream().map(Probability::toString).toList());
    }

    private static Node viability(Viability stated) {
        ObjectBuilder node = new ObjectBuilder()
                .with("locus", stated.locus())
                .with("expressions", Node.texts(stated.expressions()))
                .with("sex", stated.sex().map(Sex::word));
        if (stated.decidesBirth()) {
            node.with("birth", stated.birth().toString());
        }
        if (!stated.scored().isOne()) {
            node.with("scored", stated.scored().toString());
        }
        return node.with("evidence", stated.evidence()).build();
    }

    /** Every allele of a locus is named, those of frequency 0 too, as the checks demand. */
    private static Node population(Model model, Population population) {
        ObjectBuilder frequencies = new ObjectBuilder();
        population.frequencies().forEach((locus, alleles) -> {
            ObjectBuilder node = new ObjectBuilder();
            model.locus(locus)
                    .alleles()
                    .keySet()
                    .forEach(allele ->
                            node.with(allele, alleles.probability(allele).toString()));
            frequencies.with(locus, node.build());
        });
        return new ObjectBuilder()
                .with("title", population.title())
                .with("frequencies", frequencies.build())
                .with("evidence", population.evidence())
                .build();
    }
}
