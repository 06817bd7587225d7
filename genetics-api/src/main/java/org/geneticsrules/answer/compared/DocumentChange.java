package org.geneticsrules.answer.compared;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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

    private record Stated(String kind, Reference reference, Node document) {
        boolean isVersionOf(Stated other) {
            return kind.equals(other.kind) && reference.id().equals(other.reference.id());
        }
    }

    /**
     * Compares what two analyses hang on. Of a document of which either holds several versions, those that differ go together in order.
     *
     * @param before the first
     * @param after the second
     * @return the documents that differ, those of the first in its order, then those that only the second has
     */
    public static List<DocumentChange> between(Analysis before, Analysis after) {
        List<Stated> gone = documents(before);
        List<Stated> come = documents(after);
        List<Stated> both = gone.stream().filter(come::contains).toList();
        gone.removeAll(both);
        come.removeAll(both);
        List<DocumentChange> changes = new ArrayList<>();
        for (Stated one : gone) {
            Optional<Stated> other = come.stream().filter(one::isVersionOf).findFirst();
            other.ifPresent(come::remove);
            changes.add(new DocumentChange(
                    one.kind(),
                    one.reference().id(),
                    Optional.of(one.reference()),
                    other.map(Stated::reference),
                    other.map(now -> Differences.between(one.document(), now.document(), 0))
                            .orElseGet(DocumentChange::nothing)));
        }
        come.forEach(one -> changes.add(new DocumentChange(
                one.kind(), one.reference().id(), Optional.empty(), Optional.of(one.reference()), nothing())));
        return ImmutableList.copyOf(changes);
    }

    private static Differences nothing() {
        return new Differences(List.of(), false, 0);
    }

    private static List<Stated> documents(Analysis analysis) {
        List<Stated> found = new ArrayList<>();
        analysis.documents().forEach((reference, document) -> {
            String kind =
                    document instanceof ObjectNode object && object.members().get("kind") instanceof TextNode text
                            ? text.value()
                            : "";
            found.add(new Stated(kind, reference, document));
        });
        return found;
    }
}
