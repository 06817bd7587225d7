package org.geneticsrules.json;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.geneticsrules.model.Dominance;
import org.geneticsrules.model.DominanceBuilder;
import org.geneticsrules.model.LocusBuilder;
import org.geneticsrules.trait.Sex;

/** The shape of a dominance hypothesis: of both sexes together, or of each by itself. */
final class DominanceShape {

    private static final Pattern ORDER = Pattern.compile("([^\\s>]+) *> *([^\\s>]+)");

    private final Part part;
    private final Limits limits;

    DominanceShape(Part part, Limits limits) {
        this.part = part;
        this.limits = limits;
    }

    void fill(LocusBuilder locus) {
        boolean each =
                part.entries().keySet().stream().anyMatch(name -> Sex.of(name).isPresent());
        if (!each) {
            locus.dominance(this::fill);
            return;
        }
        Part.Members members = part.members("male", "female");
        for (Sex sex : Sex.values()) {
            members.required(sex.word())
                    .ifPresent(stated -> locus.in(sex, builder -> new DominanceShape(stated, limits).fill(builder)));
        }
    }

    private void fill(DominanceBuilder dominance) {
        Part.Members members = part.members("order", "shows", "evidence");
        members.optional("order").ifPresent(list -> {
            List<Part> items = list.items();
            // Beyond this, some pair is ordered twice.
            list.tooMany(items.size(), "order-statements", limits.alleles() * limits.alleles());
            items.forEach(item -> order(item).ifPresent(dominance::order));
        });
        members.required("shows")
                .ifPresent(shows -> shows.entries().forEach((key, shown) -> {
                    Stated stated = Stated.read(shown, "shows");
                    stated.value()
                            .flatMap(Part::text)
                            .ifPresent(value -> dominance.shows(key, value, stated.evidence()));
                }));
        members.optional("evidence").flatMap(Part::text).ifPresent(dominance::evidence);
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
