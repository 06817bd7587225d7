package org.geneticsrules.json;

import java.util.List;
import java.util.Optional;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.LocusBuilder;

/** The shape of a locus; its dominance has a file of its own. */
final class LocusShape {

    private final Part part;
    private final Limits limits;

    LocusShape(Part part, Limits limits) {
        this.part = part;
        this.limits = limits;
    }

    void fill(LocusBuilder locus) {
        Part.Members members = part.members(
                "title", "symbol", "alleles", "wildType", "expressions", "dominance", "absent", "mutation");
        members.optional("title").flatMap(Part::text).ifPresent(locus::title);
        members.optional("symbol").flatMap(Part::text).ifPresent(locus::symbol);
        members.required("alleles").ifPresent(alleles -> {
            List<Part> items = alleles.items(1);
            alleles.tooMany(items.size(), "alleles", limits.alleles());
            items.forEach(allele -> allele(allele).ifPresent(locus::allele));
        });
        members.optional("wildType").flatMap(Part::text).ifPresent(locus::wildType);
        members.optional("expressions")
                .ifPresent(list -> list.texts(1).forEach(expression -> locus.expressions(expression)));
        members.required("dominance").ifPresent(dominance -> new DominanceShape(dominance, limits).fill(locus));
        members.optional("absent").flatMap(Part::text).ifPresent(locus::absent);
        members.optional("mutation")
                .ifPresent(rows -> rows.entries().forEach((from, row) -> mutation(from, row, locus)));
    }

    private static Optional<Allele> allele(Part part) {
        if (part.isText()) {
            return part.text().map(Allele::of);
        }
        Part.Members members = part.members("id", "symbol", "title", "synonyms");
        Optional<String> symbol = members.optional("symbol").flatMap(Part::text);
        Optional<String> title = members.optional("title").flatMap(Part::text);
        List<String> synonyms =
                members.optional("synonyms").map(list -> list.texts(0)).orElse(List.of());
        return members.required("id").flatMap(Part::text).map(id -> new Allele(id, symbol.orElse(id), title, synonyms));
    }

    /** A rate by the allele it leads to, alone or beside its evidence. */
    private static void mutation(String from, Part row, LocusBuilder locus) {
        row.entries().forEach((to, stated) -> {
            if (stated.isObject()) {
                Part.Members members = stated.members("rate", "evidence");
                Optional<String> evidence = members.optional("evidence").flatMap(Part::text);
                members.required("rate")
                        .flatMap(rate -> ChanceShape.read(rate, "bad-rate"))
                        .ifPresent(rate -> locus.mutation(from, to, rate, evidence));
            } else {
                ChanceShape.read(stated, "bad-rate").ifPresent(rate -> locus.mutation(from, to, rate));
            }
        });
    }
}
