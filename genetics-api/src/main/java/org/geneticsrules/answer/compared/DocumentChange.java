package org.geneticsrules.answer.compared;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.document.Differences;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.Node.ObjectNode;
import org.geneticsrules.document.Node.TextNode;
import org.geneticsrules.document.Reference;

/**
 * A document that is another in one of two analyses: another version, another content, or not there.
 *
 * <p>Immutable and thread-safe.
 *
 * @param kind the kind of document, for example {@code model}
 * @param id its id
 * @param before the document in the first analysis; none if it is not there
 * @param after the document in the second; none if it is not there
 * @param statements what is otherwise in it, by the pointers of its statements; nothing if it is in one of them only
 */
public record DocumentChange(
        String kind, String id, Optional<Reference> before, Optional<Reference> after, Differences statements) {

    private record Key(String kind, String id) {}

    private record Stated(Reference reference, Node document) {}

    /**
     * Compares what two analyses hang on.
     *
     * @param before the first
     * @param after the second
     * @return the documents that differ, those of the first in its order, then those that only the second has
     */
    public static List<DocumentChange> between(Analysis before, Analysis after) {
        Map<Key, Stated> first = documents(before);
        Map<Key, Stated> second = documents(after);
        Set<Key> keys = new LinkedHashSet<>(first.keySet());
        keys.addAll(second.keySet());
        List<DocumentChange> changes = new ArrayList<>();
        for (Key key : keys) {
            Optional<Stated> one = Optional.ofNullable(first.get(key));
            Optional<Stated> other = Optional.ofNullable(second.get(key));
            if (!one.equals(other)) {
                Differences statements = one.isPresent() && other.isPresent()
                        ? Differences.between(one.get().document(), other.get().document(), 0)
                        : new Differences(List.of(), false, 0);
                changes.add(new DocumentChange(
                        key.kind(),
                        key.id(),
                        one.map(Stated::reference),
                        other.map(Stated::reference),
                        statements));
            }
        }
        return ImmutableList.copyOf(changes);
    }

    private static Map<Key, Stated> documents(Analysis analysis) {
        Map<Key, Stated> found = new LinkedHashMap<>();
        analysis.documents().forEach((reference, document) -> {
            String kind = document instanceof ObjectNode object && object.members().get("kind") instanceof TextNode text
                    ? text.value()
                    : "";
            found.put(new Key(kind, reference.id()), new Stated(reference, document));
        });
        return found;
    }
}
