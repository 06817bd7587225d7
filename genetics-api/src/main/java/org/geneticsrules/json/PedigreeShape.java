package org.geneticsrules.json;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.geneticsrules.document.Reference;
import org.geneticsrules.pedigree.Change;
import org.geneticsrules.pedigree.Correction;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.vocabulary.PartialDate;

/** The shape of a pedigree: its head, its records and the trail of its corrections. */
final class PedigreeShape {

    private static final Pattern DATE = Pattern.compile("[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])");

    private static final Pattern PARTIAL_DATE =
            Pattern.compile("[0-9]{4}(-(0[1-9]|1[0-2])(-(0[1-9]|[12][0-9]|3[01]))?)?");

    private PedigreeShape() {}

    /** Reads a pedigree; absent if id or version is. It is sound only if no problem was noted. */
    static Optional<PedigreeBuilder> read(Part document) {
        Part.Members members = document.members(
                "formatVersion",
                "kind",
                "id",
                "version",
                "title",
                "catalogue",
                "individuals",
                "litters",
                "corrections");
        Optional<Reference> head = Head.read(members, DocumentKind.PEDIGREE);
        PedigreeBuilder pedigree = head.map(self -> Pedigree.builder(self.id(), self.version()))
                .orElseGet(() -> Pedigree.builder("shape", "0"));
        members.optional("title").flatMap(Part::text).ifPresent(pedigree::title);
        members.optional("catalogue").flatMap(Head::reference).ifPresent(pedigree::catalogue);
        members.required("individuals")
                .ifPresent(part -> part.entries()
                        .forEach((id, stated) -> id(id, stated)
                                .map(good -> IndividualShape.read(good, stated))
                                .ifPresent(pedigree::add)));
        members.optional("litters")
                .ifPresent(part -> part.entries()
                        .forEach((id, stated) -> id(id, stated)
                                .map(good -> LitterShape.read(good, stated))
                                .ifPresent(pedigree::add)));
        members.optional("corrections")
                .ifPresent(list -> list.items().forEach(item -> correction(item).ifPresent(pedigree::add)));
        return head.map(self -> pedigree);
    }

    /** The name of a member that is the id of an individual or a litter. */
    private static Optional<String> id(String id, Part stated) {
        if (Individual.isId(id)) {
            return Optional.of(id);
        }
        badId(id, stated);
        return Optional.empty();
    }

    private static void badId(String id, Part part) {
        part.problems()
                .add(
                        "bad-id",
                        part.pointer(),
                        "\"" + id + "\" is not an id",
                        "1 to 80 characters, no control characters, no blank at either end, not beginning with x-");
    }

    /** A text that is the id of an individual or a litter. */
    static Optional<String> id(Part part) {
        return part.text().filter(text -> {
            boolean good = Individual.isId(text);
            if (!good) {
                badId(text, part);
            }
            return good;
        });
    }

    /** A day of the calendar. */
    static Optional<LocalDate> date(Part part) {
        return part.text(DATE, "bad-date", "a date such as 2026-05-01").flatMap(text -> {
            try {
                return Optional.of(LocalDate.parse(text));
            } catch (DateTimeParseException e) {
                part.problems().add("no-such-date", part.pointer(), "there is no " + text, "a day of the calendar");
                return Optional.empty();
            }
        });
    }

    /** A day, a month or a year of the calendar. */
    static Optional<PartialDate> partialDate(Part part) {
        return part.text(PARTIAL_DATE, "bad-date", "a date such as 2026-05-01, 2026-05 or 2026")
                .flatMap(text -> {
                    try {
                        return Optional.of(PartialDate.parse(text));
                    } catch (IllegalArgumentException e) {
                        part.problems()
                                .add("no-such-date", part.pointer(), "there is no " + text, "a date of the calendar");
                        return Optional.empty();
                    }
                });
    }

    private static Optional<Correction> correction(Part part) {
        Part.Members members = part.members("date", "by", "reason", "changes");
        Optional<LocalDate> date = members.required("date").flatMap(PedigreeShape::date);
        Optional<String> by = members.optional("by").flatMap(Part::sentence);
        Optional<String> reason = members.required("reason").flatMap(Part::sentence);
        List<Change> changes = new ArrayList<>();
        Set<String> seen = new LinkedHashSet<>();
        for (Part item : members.required("changes").map(list -> list.items(1)).orElse(List.of())) {
            change(item)
                    .filter(change -> {
                        boolean first = seen.add(change.pointer());
                        if (!first) {
                            item.problems()
                                    .add(
                                            "repeated-change",
                                            item.pointer(),
                                            change.pointer() + " changes twice in one correction",
                                            "each record once");
                        }
                        return first;
                    })
                    .ifPresent(changes::add);
        }
        return date.flatMap(
                day -> reason.filter(text -> !changes.isEmpty()).map(text -> new Correction(day, by, text, changes)));
    }

    private static Optional<Change> change(Part part) {
        Part.Members members = part.members("individual", "litter", "before", "after");
        Optional<Part> before = members.optional("before");
        Optional<Part> after = members.optional("after");
        Optional<Part> individual = members.optional("individual");
        Optional<Part> litter = members.optional("litter");
        if (individual.isPresent() == litter.isPresent() || (before.isEmpty() && after.isEmpty())) {
            part.problems()
                    .add(
                            "unclear-change",
                            part.pointer(),
                            "the change states " + members.found().keySet(),
                            "either individual or litter, and before, after or both");
            return Optional.empty();
        }
        Optional<String> id = individual.or(() -> litter).flatMap(PedigreeShape::id);
        if (id.isEmpty()) {
            return Optional.empty();
        }
        boolean same;
        Optional<Change> change;
        if (individual.isPresent()) {
            var from = before.map(one -> IndividualShape.read(id.get(), one));
            var to = after.map(one -> IndividualShape.read(id.get(), one));
            same = from.equals(to);
            change = same ? Optional.empty() : Optional.of(new Change.OfIndividual(from, to));
        } else {
            var from = before.map(one -> LitterShape.read(id.get(), one));
            var to = after.map(one -> LitterShape.read(id.get(), one));
            same = from.equals(to);
            change = same ? Optional.empty() : Optional.of(new Change.OfLitter(from, to));
        }
        if (same) {
            part.problems()
                    .add(
                            "no-change",
                            part.pointer(),
                            "the record is the same before and after",
                            "a record that differs");
        }
        return change;
    }
}
