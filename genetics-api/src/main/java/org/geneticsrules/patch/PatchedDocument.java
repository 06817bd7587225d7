package org.geneticsrules.patch;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.Node.ListNode;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.Problem;

/**
 * The document of a base with patches applied, which knows what it came from. Made by {@link Patches#apply}.
 *
 * <p>Immutable and thread-safe.
 */
public final class PatchedDocument {

    private final ImmutableList<Patch> patches;
    private final Node document;

    PatchedDocument(Model base, List<Patch> patches, Node edited) {
        this.patches = ImmutableList.copyOf(patches);
        List<Node> origin = new ArrayList<>();
        origin.add(base.reference().toNode());
        patches.forEach(patch -> origin.add(patch.reference().toNode()));
        Node named = Tree.put(edited, List.of("id"), Node.text(joined(Patch::id)));
        named = Tree.put(named, List.of("version"), Node.text(joined(Patch::version)));
        Optional<String> title = base.title()
                .map(text -> text + ", with "
                        + patches.stream()
                                .map(patch -> patch.title().orElse(patch.id()))
                                .collect(Collectors.joining(" and ")));
        if (title.isPresent()) {
            named = Tree.put(named, List.of("title"), Node.text(title.get()));
        }
        this.document = Tree.put(named, List.of("derivedFrom"), new ListNode(origin));
    }

    private String joined(Function<Patch, String> part) {
        return patches.stream().map(part).collect(Collectors.joining("+"));
    }

    /**
     * Returns the document.
     *
     * @return a document of kind {@code model}, named as the patch, or as all of them joined by a plus sign, and with references to the base
     *     and the patches
     */
    public Node document() {
        return document;
    }

    /**
     * Returns a problem of the patched model as a problem of the patch that brought it about.
     *
     * @param problem what the checks of the model found, with a pointer into {@link #document()}
     * @return the same problem at the statement of the patch that holds the part or lies in it, or else of the whole patch; the message names
     *     the part if the patch does not state it, and the patch if there are several
     */
    public Problem inPatch(Problem problem) {
        String pointer = problem.pointer();
        for (Patch patch : patches) {
            Map<String, String> changes = patch.changes();
            Optional<String> holder =
                    changes.containsKey(pointer) ? Optional.of(pointer) : Changes.above(pointer, changes);
            if (holder.isPresent() && !patch.remove().contains(holder.get())) {
                String place = changes.getOrDefault(holder.get(), "");
                return at(problem, place + pointer.substring(holder.get().length()), prefix(patch, patches));
            }
        }
        String where = pointer.isEmpty() ? "" : "at " + pointer + " of the patched model: ";
        for (Patch patch : patches) {
            Optional<String> inner = patch.changes().entrySet().stream()
                    .filter(change -> touches(change.getKey(), pointer))
                    .map(Map.Entry::getValue)
                    .findFirst();
            if (inner.isPresent()) {
                return at(problem, inner.get(), prefix(patch, patches) + where);
            }
        }
        return at(problem, "", where);
    }

    private static boolean touches(String change, String pointer) {
        return !pointer.isEmpty()
                && (change.startsWith(pointer + "/") || pointer.equals(change) || pointer.startsWith(change + "/"));
    }

    /** Says which patch is meant, unless there is only one. */
    static String prefix(Patch patch, List<Patch> patches) {
        return patches.size() > 1 ? "patch " + patch + ": " : "";
    }

    private static Problem at(Problem problem, String pointer, String prefix) {
        return new Problem(
                problem.stage(),
                problem.code(),
                pointer,
                Optional.empty(),
                prefix + problem.message(),
                problem.expected(),
                problem.nearest());
    }
}
