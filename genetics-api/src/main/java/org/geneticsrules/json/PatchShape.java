package org.geneticsrules.json;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.Reference;
import org.geneticsrules.patch.Patch;

/** The shape of a patch. What the statements that it sets look like is for the patched model to say. */
final class PatchShape {

    private PatchShape() {}

    /** Notes what is wrong with the shape; the patch itself is absent if id, version or base is, and made only when asked for. */
    static Supplier<Optional<Patch>> read(Part document) {
        Part.Members members = document.members(
                "formatVersion", "kind", "id", "version", "title", "base", "evidence", "set", "remove", "baseline");
        Optional<Reference> head = Head.read(members, DocumentKind.PATCH);
        Optional<String> title = members.optional("title").flatMap(Part::text);
        Optional<Reference> base = members.required("base").flatMap(Head::pinned);
        Map<String, Node> evidence = statements(members.optional("evidence"));
        Map<String, Node> set = statements(members.optional("set"));
        Set<String> remove =
                members.optional("remove").map(list -> list.distinctTexts(0)).orElse(Set.of());
        Map<String, String> baseline = new LinkedHashMap<>();
        members.optional("baseline")
                .ifPresent(part -> part.entries()
                        .forEach((locus, allele) -> allele.text().ifPresent(name -> baseline.put(locus, name))));
        return () -> head.flatMap(self -> base.map(
                of -> new Patch(self.id(), self.version(), title, of, evidence, set, List.copyOf(remove), baseline)));
    }

    private static Map<String, Node> statements(Optional<Part> part) {
        Map<String, Node> statements = new LinkedHashMap<>();
        part.ifPresent(
                object -> object.entries().forEach((pointer, statement) -> statements.put(pointer, statement.plain())));
        return statements;
    }
}
