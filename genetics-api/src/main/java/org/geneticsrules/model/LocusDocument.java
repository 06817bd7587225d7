package org.geneticsrules.model;

import java.util.Optional;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.trait.Sex;

/** The document form of a locus with its dominance and mutation. */
final class LocusDocument {

    private LocusDocument() {}

    static Node of(Locus locus) {
        ObjectBuilder node = new ObjectBuilder().with("title", locus.title());
        if (!locus.symbol().equals(locus.id())) {
            node.with("symbol", locus.symbol());
        }
        node.with(
                        "alleles",
                        Node.list(locus.alleles().values().stream()
                                .map(LocusDocument::allele)
                                .toArray(Node[]::new)))
                .with("wildType", locus.wildType().map(Allele::id))
                .withAny("expressions", locus.expressions())
                .with("dominance", dominance(locus))
                .with("absent", locus.absent());
        ObjectBuilder mutation = new ObjectBuilder();
        locus.mutation().forEach((from, rates) -> {
            ObjectBuilder row = new ObjectBuilder();
            rates.forEach(
                    (to, rate) -> row.with(to, plainOr("rate", rate.toString(), locus.mutationEvidence(from, to))));
            mutation.with(from, row.build());
        });
        return node.withAny("mutation", mutation).build();
    }

    private static Node dominance(Locus locus) {
        if (!locus.dependsOnSex()) {
            return dominance(locus.dominance(Sex.FEMALE));
        }
        ObjectBuilder each = new ObjectBuilder();
        for (Sex sex : Sex.values()) {
            each.with(sex.word(), dominance(locus.dominance(sex)));
        }
        return each.build();
    }

    private static Node dominance(Dominance stated) {
        ObjectBuilder dominance = new ObjectBuilder();
        if (!stated.order().isEmpty()) {
            dominance.with(
                    "order",
                    Node.list(stated.order().stream().map(LocusDocument::order).toArray(Node[]::new)));
        }
        ObjectBuilder shows = new ObjectBuilder();
        stated.shows()
                .forEach(shown -> shows.with(shown.key(), plainOr("shows", shown.expression(), shown.evidence())));
        return dominance
                .with("shows", shows.build())
                .with("evidence", stated.evidence())
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
}
