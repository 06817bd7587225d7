package org.geneticsrules.model;

import java.util.Optional;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.document.Reference;
import org.geneticsrules.evidence.Evidence;
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
        model.loci().values().forEach(locus -> loci.with(locus.id(), locus(locus)));
        ObjectBuilder traits = new ObjectBuilder();
        model.rules().values().forEach(rule -> traits.with(rule.trait(), rule(rule)));
        ObjectBuilder masks = new ObjectBuilder();
        model.masks().values().forEach(mask -> masks.with(mask.id(), mask(mask)));
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
        return document.with("licence", model.licence())
                .with("catalogue", reference(model.catalogue().reference()))
                .withAny("evidence", evidence)
                .with("loci", loci.build())
                .with("traits", traits.build())
                .withAny("masks", masks)
                .withAny("populations", populations)
                .withAny("notModelled", notModelled)
                .build();
    }

    private static Node reference(Reference reference) {
        return new ObjectBuilder()
                .with("id", reference.id())
                .with("version", reference.version())
                .with("sha256", reference.sha256())
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

    private static Node locus(Locus locus) {
        ObjectBuilder dominance = new ObjectBuilder();
        Dominance stated = locus.dominance(Sex.FEMALE);
        if (!stated.order().isEmpty()) {
            dominance.with(
                    "order",
                    Node.list(stated.order().stream().map(ModelDocument::order).toArray(Node[]::new)));
        }
        ObjectBuilder shows = new ObjectBuilder();
        stated.shows()
                .forEach(shown -> shows.with(shown.key(), plainOr("shows", shown.expression(), shown.evidence())));
        dominance.with("shows", shows.build()).with("evidence", stated.evidence());
        ObjectBuilder node = new ObjectBuilder().with("title", locus.title());
        if (!locus.symbol().equals(locus.id())) {
            node.with("symbol", locus.symbol());
        }
        return node.with(
                        "alleles",
                        Node.list(locus.alleles().values().stream()
                                .map(ModelDocument::allele)
                                .toArray(Node[]::new)))
                .with("wildType", locus.wildType().map(Allele::id))
                .withAny("expressions", locus.expressions())
                .with("dominance", dominance.build())
                .build();
    }

    private static Node order(Dominance.Order order) {
        return plainOr("order", order.toString(), order.evidence());
    }

    /** A bare text where nothing but the value is stated, an object where evidence is stated too. */
    private static Node plainOr(String name, String value, Optional<String> evidence) {
        return evidence.isEmpty()
                ? Node.text(value)
                : new ObjectBuilder()
                        .with(name, value)
                        .with("evidence", evidence)
                        .build();
    }

    private static Node allele(Allele allele) {
        if (allele.equals(Allele.of(allele.id()))) {
            return Node.text(allele.id());
        }
        ObjectBuilder node = new ObjectBuilder().with("id", allele.id());
        if (!allele.symbol().equals(allele.id())) {
            node.with("symbol", allele.symbol());
        }
        return node.with("title", allele.title())
                .withAny("synonyms", allele.synonyms())
                .build();
    }

    private static Node rule(TraitRule rule) {
        ObjectBuilder cases = new ObjectBuilder();
        for (Case one : rule.cases()) {
            cases.with(
                    one.id(),
                    new ObjectBuilder()
                            .with("when", one.when().toNode())
                            .with("state", ((CaseState.Certain) one.gives()).state())
                            .with("evidence", one.evidence())
                            .build());
        }
        ObjectBuilder node = new ObjectBuilder();
        if (!rule.visible()) {
            node.with("visible", Node.flag(false)).withAny("states", rule.states());
        }
        node.with("cases", cases.build());
        rule.otherwise()
                .ifPresent(rest -> node.with(
                        "otherwise", plainOr("state", ((CaseState.Certain) rest.gives()).state(), rest.evidence())));
        return node.with("evidence", rule.evidence()).build();
    }

    private static Node mask(Mask mask) {
        ObjectBuilder covers = new ObjectBuilder();
        mask.covers().forEach((trait, cover) -> {
            ObjectBuilder changes = new ObjectBuilder();
            cover.changes().forEach(changes::with);
            covers.with(trait, cover.constant().map(Node::text).orElseGet(changes::build));
        });
        return new ObjectBuilder()
                .with("when", mask.when().toNode())
                .with("covers", covers.build())
                .withAny("over", mask.over())
                .with("evidence", mask.evidence())
                .build();
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
