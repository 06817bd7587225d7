package org.geneticsrules.json;

import java.util.List;
import java.util.Optional;
import org.geneticsrules.document.Reference;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Trait;

/** The shape of a catalogue document. */
final class CatalogueShape {

    private CatalogueShape() {}

    /** Fills a builder; absent if id or version is. What was filled in is sound only if no problem was noted. */
    static Optional<Catalogue.Builder> read(Part document, Limits limits) {
        Part.Members members = document.members(
                "formatVersion", "kind", "id", "version", "title", "taxon", "seasons", "lights", "traits");
        Optional<Reference> head = Head.read(members, DocumentKind.CATALOGUE);
        Catalogue.Builder builder = Catalogue.builder(
                head.map(Reference::id).orElse(""), head.map(Reference::version).orElse(""));
        members.optional("title").flatMap(Part::text).ifPresent(builder::title);
        members.optional("taxon").flatMap(Head::taxon).ifPresent(builder::taxon);
        members.optional("seasons")
                .ifPresent(seasons -> builder.seasons(seasons.distinctTexts(1).toArray(String[]::new)));
        members.optional("lights")
                .ifPresent(lights -> builder.lights(lights.distinctTexts(1).toArray(String[]::new)));
        members.required("traits")
                .ifPresent(traits -> traits.entries("traits", limits.traits())
                        .forEach((id, part) -> builder.trait(trait(id, part))));
        return head.map(stated -> builder);
    }

    private static Trait trait(String id, Part part) {
        Part.Members members = part.members("title", "states", "ordered", "judgeableFrom", "judgeableIn", "note");
        return new Trait(
                id,
                members.optional("title").flatMap(Part::text),
                members.required("states").map(states -> states.texts(1)).orElse(List.of()),
                members.optional("ordered").flatMap(Part::flag).orElse(false),
                members.optional("judgeableFrom").flatMap(Head::countedStage),
                members.optional("judgeableIn")
                        .map(lights -> lights.distinctTexts(1).stream().toList())
                        .orElse(List.of()),
                members.optional("note").flatMap(Part::text));
    }
}
