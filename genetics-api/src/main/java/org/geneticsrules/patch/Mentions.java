package org.geneticsrules.patch;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.LinkedHashMultimap;
import com.google.common.collect.SetMultimap;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.Node.ListNode;
import org.geneticsrules.document.Node.TextNode;
import org.geneticsrules.problem.Pointer;

/**
 * Where the document of a model mentions its own statements. The document may be unsound: what is not of the usual kind mentions
 * nothing.
 */
final class Mentions {

    /** Where names of statements stand: {@code *} is any name, {@code ?} the name that is mentioned, {@code =} a text that is one. */
    private static final List<Place> PLACES = ImmutableList.of(
            // A condition does not tell whether it means a locus or a trait; no name is both.
            new Place("loci", "traits/*/cases/*/when/?"),
            new Place("traits", "traits/*/cases/*/when/?"),
            new Place("loci", "traits/*/cases/*/threshold/doses/?"),
            new Place("loci", "traits/*/otherwise/threshold/doses/?"),
            new Place("loci", "masks/*/when/?"),
            new Place("traits", "masks/*/when/?"),
            new Place("traits", "masks/*/covers/?"),
            new Place("masks", "masks/*/over/*/="),
            new Place("loci", "groups/*/loci/*/="),
            new Place("loci", "viability/*/locus/="),
            new Place("loci", "populations/*/frequencies/?"));

    private record Place(String kind, List<String> path) {
        Place(String kind, String path) {
            this(kind, ImmutableList.copyOf(path.split("/", -1)));
        }
    }

    /** Pointers of the mentions, by pointers of what is mentioned. */
    private final SetMultimap<String, String> found = LinkedHashMultimap.create();

    private Mentions() {}

    static Mentions in(Node document) {
        Mentions mentions = new Mentions();
        PLACES.forEach(place -> mentions.search(place, 0, document, new ArrayList<>()));
        mentions.evidence(document, "");
        return mentions;
    }

    /** Where a statement is mentioned. */
    Set<String> of(String statement) {
        return found.get(statement);
    }

    private void search(Place place, int depth, Node node, List<String> names) {
        String step = place.path.get(depth);
        if (step.equals("=")) {
            if (node instanceof TextNode text) {
                found.put(Pointer.of(place.kind, text.value()), Pointer.of(names.toArray(String[]::new)));
            }
        } else if (step.equals("?")) {
            Tree.members(node).keySet().forEach(name -> {
                names.add(name);
                found.put(Pointer.of(place.kind, name), Pointer.of(names.toArray(String[]::new)));
                names.remove(names.size() - 1);
            });
        } else if (node instanceof ListNode list) {
            for (int i = 0; i < list.items().size(); i++) {
                enter(place, depth, list.items().get(i), Integer.toString(i), names);
            }
        } else {
            Tree.members(node).forEach((name, inner) -> {
                if (step.equals("*") || step.equals(name)) {
                    enter(place, depth, inner, name, names);
                }
            });
        }
    }

    private void enter(Place place, int depth, Node inner, String name, List<String> names) {
        names.add(name);
        search(place, depth + 1, inner, names);
        names.remove(names.size() - 1);
    }

    /** Evidence may be named by any statement. */
    private void evidence(Node node, String pointer) {
        Tree.members(node).forEach((name, inner) -> {
            String at = pointer + Pointer.of(name);
            if (name.equals("evidence") && inner instanceof TextNode text) {
                found.put(Pointer.of("evidence", text.value()), at);
            }
            evidence(inner, at);
        });
        if (node instanceof ListNode list) {
            for (int i = 0; i < list.items().size(); i++) {
                evidence(list.items().get(i), pointer + "/" + i);
            }
        }
    }
}
