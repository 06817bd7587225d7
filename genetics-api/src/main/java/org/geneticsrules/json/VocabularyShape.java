package org.geneticsrules.json;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.geneticsrules.document.Reference;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.vocabulary.Facet;
import org.geneticsrules.vocabulary.Name;
import org.geneticsrules.vocabulary.PartialDate;
import org.geneticsrules.vocabulary.Period;
import org.geneticsrules.vocabulary.Sense;
import org.geneticsrules.vocabulary.VocabularyBuilder;

/** The shape of a vocabulary. */
final class VocabularyShape {

    private static final Pattern DATE = Pattern.compile("[0-9]{4}(-(0[1-9]|1[0-2])(-(0[1-9]|[12][0-9]|3[01]))?)?");

    private final Limits limits;
    private final Part.Members members;

    VocabularyShape(Part document, Limits limits) {
        this.limits = limits;
        this.members = document.members(
                "formatVersion",
                "kind",
                "id",
                "version",
                "title",
                "licence",
                "region",
                "language",
                "catalogue",
                "evidence",
                "facets",
                "names");
    }

    /** Id and version, if both are stated. */
    Optional<Reference> head() {
        return Head.read(members, DocumentKind.VOCABULARY);
    }

    /** The catalogue that the vocabulary was written for, if it is stated. */
    Optional<Reference> catalogue() {
        return members.required("catalogue").flatMap(Head::reference);
    }

    /** Fills a builder. What was filled in is sound only if no problem was noted. */
    void fill(VocabularyBuilder vocabulary) {
        members.optional("title").flatMap(Part::text).ifPresent(vocabulary::title);
        members.optional("licence").flatMap(Part::text).ifPresent(vocabulary::licence);
        members.optional("region").flatMap(Part::text).ifPresent(vocabulary::region);
        members.optional("language").flatMap(Part::text).ifPresent(vocabulary::language);
        members.optional("evidence")
                .ifPresent(part ->
                        part.entries().forEach((id, support) -> vocabulary.evidence(Head.evidence(id, support))));
        members.required("facets")
                .ifPresent(part -> part.entries().forEach((id, facet) -> vocabulary.facet(facet(id, facet))));
        members.required("names")
                .ifPresent(part -> part.entries().forEach((word, name) -> vocabulary.name(name(word, name))));
    }

    private static Facet facet(String id, Part part) {
        return new Facet(id, part.members("title").optional("title").flatMap(Part::text));
    }

    private Name name(String word, Part part) {
        Part.Members stated = part.members("facet", "synonyms", "note", "evidence", "senses");
        Map<String, Sense> senses = new LinkedHashMap<>();
        stated.required("senses")
                .ifPresent(list -> list.entries().forEach((id, sense) -> senses.put(id, sense(id, sense))));
        return new Name(
                word,
                stated.required("facet").flatMap(Part::text).orElse(""),
                stated.optional("synonyms")
                        .map(list -> List.copyOf(list.distinctTexts(0)))
                        .orElse(List.of()),
                stated.optional("note").flatMap(Part::text),
                stated.optional("evidence").flatMap(Part::text),
                senses);
    }

    private Sense sense(String id, Part part) {
        Part.Members stated = part.members("looks", "from", "to", "judgeableFrom", "note", "evidence");
        Map<String, Condition> looks = new LinkedHashMap<>();
        stated.required("looks")
                .ifPresent(list -> list.entries("looks", limits.cases())
                        .forEach((name, look) -> looks.put(name, ConditionShape.read(look))));
        return new Sense(
                id,
                looks,
                new Period(
                        stated.optional("from").flatMap(VocabularyShape::date),
                        stated.optional("to").flatMap(VocabularyShape::date)),
                stated.optional("judgeableFrom").flatMap(Head::countedStage),
                stated.optional("note").flatMap(Part::text),
                stated.optional("evidence").flatMap(Part::text));
    }

    private static Optional<PartialDate> date(Part part) {
        return part.text(DATE, "bad-date", "a year, a month or a day, such as 1985, 1985-06 or 1985-06-30")
                .flatMap(text -> {
                    try {
                        return Optional.of(PartialDate.parse(text));
                    } catch (IllegalArgumentException e) {
                        part.problems()
                                .add("no-such-date", part.pointer(), "there is no " + text, "a day of the calendar");
                        return Optional.empty();
                    }
                });
    }
}
