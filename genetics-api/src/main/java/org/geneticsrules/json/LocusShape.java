package org.geneticsrules.json;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.Dominance;
import org.geneticsrules.model.LocusBuilder;

/** The shape of a locus with its dominance. */
final class LocusShape {

    private static final Pattern ORDER = Pattern.compile("([^\\s>]+) *> *([^\\s>]+)");

    private final Part part;
    private final Limits limits;

    LocusShape(Part part, Limits limits) {
        this.part = part;
        this.limits = limits;
    }

    void fill(LocusBuilder locus) {
        Part.Members members = part.members("title", "symbol", "alleles", "wildType", "expressions", "dominance");
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
        members.required("dominance").ifPresent(dominance -> dominance(dominance, locus));
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

    private void dominance(Part part, LocusBuilder locus) {
        Part.Members members = part.members("order", "shows", "evidence");
        members.optional("order").ifPresent(list -> {
            List<Part> items = list.items();
            // Beyond this, some pair is ordered twice.
            list.tooMany(items.size(), "order-statements", limits.alleles() * limits.alleles());
            items.forEach(item -> order(item).ifPresent(locus::order));
        });
        members.required("shows")
                .ifPresent(shows -> shows.entries().forEach((key, shown) -> {
                    Stated stated = Stated.read(shown, "shows");
                    stated.value().flatMap(Part::text).ifPresent(value -> locus.shows(key, value, stated.evidence()));
                }));
        members.optional("evidence").flatMap(Part::text).ifPresent(locus::evidence);
    }

    private static Optional<Dominance.Order> order(Part part) {
        Stated stated = Stated.read(part, "order");
        return stated.value()
                .flatMap(value -> value.text(ORDER, "bad-order", "an order of dominance such as \"C > c\""))
                .map(ORDER::matcher)
                .filter(Matcher::matches)
                .map(pair -> new Dominance.Order(pair.group(1), pair.group(2), stated.evidence()));
    }
}
