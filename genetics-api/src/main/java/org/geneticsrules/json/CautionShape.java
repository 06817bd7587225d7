package org.geneticsrules.json;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.caution.CautionSet;
import org.geneticsrules.caution.QuestionKind;
import org.geneticsrules.caution.Relation;
import org.geneticsrules.caution.Role;
import org.geneticsrules.caution.Trigger;
import org.geneticsrules.document.Reference;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.PlainWords;

/** The shape of a document of cautions. */
final class CautionShape {

    private static final Pattern MONTH = Pattern.compile("[0-9]{4}-(0[1-9]|1[0-2])");

    private CautionShape() {}

    /** Reads a set; absent if id or version is. It is sound only if no problem was noted. */
    static Optional<CautionSet> read(Part document) {
        Part.Members members =
                document.members("formatVersion", "kind", "id", "version", "title", "catalogue", "cautions");
        Optional<Reference> head = Head.read(members, DocumentKind.CAUTIONS);
        Optional<String> title = members.optional("title").flatMap(Part::text);
        Optional<Reference> catalogue = members.optional("catalogue").flatMap(Head::reference);
        Map<String, Caution> cautions = new LinkedHashMap<>();
        members.required("cautions")
                .ifPresent(part -> part.entries().forEach((id, stated) -> {
                    PlainWords.check(id, "caution", stated.pointer(), stated.problems());
                    cautions.put(id, caution(id, stated));
                }));
        return head.map(self -> new CautionSet(self.id(), self.version(), title, catalogue, cautions));
    }

    private static Caution caution(String id, Part part) {
        Part.Members members = part.members("trigger", "line", "detail", "sources", "date", "excludes");
        return new Caution(
                id,
                members.required("trigger").map(CautionShape::trigger).orElse(new Trigger.Always()),
                members.required("line").flatMap(Part::sentence).orElse(""),
                members.optional("detail").map(list -> list.sentences(0)).orElse(List.of()),
                members.optional("sources").map(list -> list.sentences(0)).orElse(List.of()),
                members.required("date")
                        .flatMap(date -> date.text(MONTH, "bad-date", "a year and month such as 2026-11"))
                        .orElse(""),
                members.optional("excludes").flatMap(Part::flag).orElse(false));
    }

    private static Trigger trigger(Part part) {
        Part.Members members = part.members("always", "question", "shows", "in", "relation");
        List<String> stated = members.found().keySet().stream()
                .filter(key -> !"in".equals(key))
                .toList();
        boolean one = stated.size() == 1 && members.found().containsKey("in") == stated.contains("shows");
        if (!one) {
            part.problems()
                    .add(
                            "unclear-trigger",
                            part.pointer(),
                            "the trigger states " + members.found().keySet(),
                            "exactly one of always, question, relation, or shows together with in");
        }
        members.optional("always")
                .ifPresent(always -> always.flag()
                        .filter(value -> !value)
                        .ifPresent(never -> always.problems()
                                .add("never-due", always.pointer(), "this caution would never be due", "true")));
        Set<String> kinds = words(members, "question", "question", QuestionKind::word, QuestionKind.values()).stream()
                .map(QuestionKind::word)
                .collect(Collectors.toCollection(LinkedHashSet::new));
        Set<Relation> relations = words(members, "relation", "relation", Relation::word, Relation.values());
        Set<Role> roles = words(members, "in", "role", Role::word, Role.values());
        Optional<Trigger> look = members.optional("shows").map(shows -> new Trigger.OnLook(look(shows), roles));
        if (look.isPresent()) {
            return look.get();
        }
        if (!relations.isEmpty()) {
            return new Trigger.OnRelation(relations);
        }
        return kinds.isEmpty() ? new Trigger.Always() : new Trigger.OnQuestion(kinds);
    }

    private static Condition look(Part part) {
        Condition look = ConditionShape.read(part);
        look.variables().forEach((trait, allowed) -> {
            if (!allowed.except() && allowed.values().isEmpty()) {
                part.problems()
                        .add(
                                "never-due",
                                part.pointer() + Pointer.of(trait),
                                "this caution would never be due, because no state of " + trait + " is listed",
                                "at least one state");
            }
        });
        return look;
    }

    private static <T> Set<T> words(
            Part.Members members, String key, String what, Function<T, String> word, T[] values) {
        List<String> words = Arrays.stream(values).map(word).toList();
        return members.optional(key)
                .map(list -> Part.distinct(
                        list.items(1),
                        item -> item.word(
                                what,
                                text -> Arrays.stream(values)
                                        .filter(value -> word.apply(value).equals(text))
                                        .findFirst(),
                                words)))
                .orElse(Set.of());
    }
}
