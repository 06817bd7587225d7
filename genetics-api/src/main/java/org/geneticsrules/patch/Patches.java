package org.geneticsrules.patch;

import com.google.common.collect.ImmutableList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.Node.ListNode;
import org.geneticsrules.document.Node.TextNode;
import org.geneticsrules.document.Reference;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelDocument;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;

/** Applies patches to the document of their base. */
public final class Patches {

    /** A reader looks at a few mentions and at how many there are. */
    private static final int MOST_MENTIONS = 12;

    private final Node base;
    private final List<Patch> patches;
    private final Problems problems = new Problems(Stage.REFERENCES);

    private Patches(Model base, Collection<Patch> patches) {
        this.base = ModelDocument.of(base);
        this.patches = patches.stream()
                .sorted(Comparator.comparing(Patch::id).thenComparing(Patch::version))
                .collect(ImmutableList.toImmutableList());
    }

    /**
     * Applies patches to the model that all of them are about.
     *
     * <p>They are applied in order of their ids, whatever order they are given in, and no statement that one of them changes lies in one
     * that another changes. What was added comes after what was there.
     *
     * @param base the model
     * @param patches at least one patch
     * @return the patched document, whose soundness is for the model's own checks
     * @throws ProblemsException if a patch is for another model, two of them change one statement, or one of them adds evidence that is
     *     there, changes or removes what is not there, removes what is still mentioned, or adds a locus without its baseline allele;
     *     pointers are into the document of the patch that is named, or of the only one
     * @throws IllegalArgumentException if there is no patch
     */
    public static PatchedDocument apply(Model base, Collection<Patch> patches) {
        if (patches.isEmpty()) {
            throw new IllegalArgumentException("there is no patch to apply");
        }
        return new Patches(base, patches).apply(base);
    }

    private PatchedDocument apply(Model model) {
        patches.forEach(patch -> {
            if (!patch.base().means(model.reference())) {
                problem(
                        "other-base",
                        patch,
                        "/base",
                        "the patch is for model " + full(patch.base()) + ", but was given " + full(model.reference()),
                        "the model that the patch was written for");
            }
        });
        // Statements of another model would be missed by the hundred.
        problems.throwIfAny();
        overlaps();
        Node document = base;
        for (Patch patch : patches) {
            document = edit(patch, document);
        }
        mentions(document);
        patches.forEach(this::baseline);
        problems.throwIfAny();
        return new PatchedDocument(model, patches, document);
    }

    private static String full(Reference reference) {
        return reference.id() + " " + reference.version()
                + reference.sha256().map(hash -> " with sha256 " + hash).orElse("");
    }

    private void overlaps() {
        Map<String, Patch> owners = new LinkedHashMap<>();
        Map<String, Patch> ids = new LinkedHashMap<>();
        for (Patch patch : patches) {
            if (ids.putIfAbsent(patch.id(), patch) != null) {
                problems.add(
                        "repeated-patch", "/id", "the patch " + patch.id() + " is applied twice", "each patch once");
                continue;
            }
            patch.changes().forEach((pointer, place) -> {
                Patch other = owners.putIfAbsent(pointer, patch);
                if (other != null) {
                    overlap(place, other, pointer, patch, pointer);
                }
            });
        }
        owners.forEach((pointer, patch) -> Changes.above(pointer, owners).ifPresent(outer -> {
            Patch other = owners.getOrDefault(outer, patch);
            overlap(patch.changes().getOrDefault(pointer, ""), other, outer, patch, pointer);
        }));
    }

    private void overlap(String place, Patch one, String first, Patch other, String second) {
        problems.add(
                "patches-overlap",
                place,
                "patch " + one + " changes " + first + ", and patch " + other + " changes " + second,
                "patches that touch different statements");
    }

    private Node edit(Patch patch, Node before) {
        Node document = before;
        for (Map.Entry<String, Node> added : patch.evidence().entrySet()) {
            List<String> names = List.of("evidence", added.getKey());
            if (Tree.at(base, names).isPresent()) {
                problem(
                        "evidence-exists",
                        patch,
                        Pointer.of("evidence", added.getKey()),
                        "the base has evidence \"" + added.getKey() + "\"",
                        "another name, or " + Pointer.of("evidence", added.getKey()) + " in set to replace it");
            }
            document = Tree.put(document, names, added.getValue());
        }
        for (Map.Entry<String, Node> set : patch.set().entrySet()) {
            List<String> names = Pointer.names(set.getKey());
            // A part of a locus, trait or population is set in one that is there.
            if (names.size() == 2 || known(patch, names.subList(0, 2), Pointer.of("set", set.getKey()))) {
                document = Tree.put(document, names, set.getValue());
            }
        }
        for (int i = 0; i < patch.remove().size(); i++) {
            List<String> names = Pointer.names(patch.remove().get(i));
            if (known(patch, names, "/remove/" + i)) {
                document = Tree.remove(document, names);
            }
        }
        return document;
    }

    private boolean known(Patch patch, List<String> names, String place) {
        boolean there = Tree.at(base, names).isPresent();
        if (!there) {
            List<String> around = names.subList(0, names.size() - 1);
            List<String> siblings = Tree.at(base, around).map(Tree::members).orElse(Map.of()).keySet().stream()
                    .map(name -> pointer(around) + Pointer.of(name))
                    .toList();
            problems.unknown(
                    "unknown-statement",
                    place,
                    "statement" + by(patch) + " of " + patch.base().id(),
                    pointer(names),
                    siblings);
        }
        return there;
    }

    private void mentions(Node document) {
        Mentions mentions = Mentions.in(document);
        for (Patch patch : patches) {
            for (int i = 0; i < patch.remove().size(); i++) {
                String removed = patch.remove().get(i);
                Set<String> left = mentions.of(removed);
                if (!left.isEmpty()) {
                    String more = left.size() > MOST_MENTIONS ? " and " + (left.size() - MOST_MENTIONS) + " more" : "";
                    problem(
                            "still-mentioned",
                            patch,
                            "/remove/" + i,
                            removed + " is removed but mentioned by "
                                    + left.stream().limit(MOST_MENTIONS).collect(Collectors.joining(", ")) + more,
                            "a patch that removes or sets those statements too");
                }
            }
        }
    }

    private void baseline(Patch patch) {
        patch.set().forEach((pointer, node) -> {
            List<String> names = Pointer.names(pointer);
            if (isAddedLocus(names) && !patch.baseline().containsKey(names.get(1))) {
                problem(
                        "missing-baseline",
                        patch,
                        Pointer.of("set", pointer),
                        "the patch adds locus " + names.get(1)
                                + " but states no baseline allele for animals of the base",
                        "one of its alleles under /baseline");
            }
        });
        patch.baseline().forEach((locus, allele) -> {
            List<String> names = List.of("loci", locus);
            Node added = patch.set().get(Pointer.of("loci", locus));
            if (added == null || !isAddedLocus(names)) {
                problem(
                        "needless-baseline",
                        patch,
                        Pointer.of("baseline", locus),
                        "the patch adds no locus " + locus,
                        "a baseline allele for added loci alone");
                return;
            }
            List<String> alleles = alleles(added);
            if (!alleles.contains(allele)) {
                problems.unknown(
                        "unknown-allele",
                        Pointer.of("baseline", locus),
                        "allele of locus " + locus + by(patch),
                        allele,
                        alleles);
            }
        });
    }

    private boolean isAddedLocus(List<String> names) {
        return names.size() == 2
                && names.get(0).equals("loci")
                && Tree.at(base, names).isEmpty();
    }

    private static List<String> alleles(Node locus) {
        Node stated = Tree.members(locus).get("alleles");
        List<Node> items = stated instanceof ListNode list ? list.items() : List.of();
        return items.stream()
                .map(item -> Tree.members(item).getOrDefault("id", item))
                .filter(TextNode.class::isInstance)
                .map(text -> ((TextNode) text).value())
                .toList();
    }

    private void problem(String code, Patch patch, String place, String message, String expected) {
        problems.add(code, place, PatchedDocument.prefix(patch, patches) + message, expected);
    }

    private String by(Patch patch) {
        return patches.size() > 1 ? " in patch " + patch : "";
    }

    private static String pointer(List<String> names) {
        return Pointer.of(names.toArray(String[]::new));
    }
}
