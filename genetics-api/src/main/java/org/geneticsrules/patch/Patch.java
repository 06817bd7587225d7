package org.geneticsrules.patch;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.geneticsrules.document.Canonical;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.Reference;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;

/**
 * A hypothesis: what is otherwise in a base model.
 *
 * <p>A patch speaks of whole statements by their pointers in the document of the base: {@code /loci/M}, {@code /loci/M/dominance},
 * {@code /groups/g}, {@code /traits/hue}, {@code /traits/hue/cases/dark}, {@code /traits/hue/otherwise}, {@code /masks/white},
 * {@code /viability/lethal}, {@code /populations/here}, {@code /populations/here/frequencies/M}, {@code /evidence/study} or
 * {@code /notModelled/ear}. No statement of a patch lies inside another one of it.
 *
 * @param id its id, which is the id of the patched model too
 * @param version its version, which is the version of the patched model too
 * @param title words for it, if stated
 * @param base the model it changes, with the hash of its content
 * @param evidence pieces of evidence that it adds, by id, in document form
 * @param set the statements that it adds or replaces, by pointer, in document form
 * @param remove pointers of the statements that it takes out
 * @param baseline for each locus that it adds, the allele that animals of the base are thought to carry twice; used only to compare the
 *     patched model with its base
 */
public record Patch(
        String id,
        String version,
        Optional<String> title,
        Reference base,
        Map<String, Node> evidence,
        Map<String, Node> set,
        List<String> remove,
        Map<String, String> baseline) {

    private static final String NAME = "/(?!x-)(?:[^/~]|~[01])+";

    /** Names that begin with {@code x-} are for whoever wrote them; no model holds them. */
    private static final Pattern STATEMENT = Pattern.compile(
            "/loci" + NAME + "(/dominance)?|/traits" + NAME + "(/otherwise|/cases" + NAME + ")?|/populations" + NAME
                    + "(/frequencies" + NAME + ")?|/(groups|masks|viability|evidence|notModelled)" + NAME);

    /**
     * Copies the collections and checks the pointers.
     *
     * @param id its id
     * @param version its version
     * @param title words for it
     * @param base the model it changes
     * @param evidence pieces of evidence that it adds
     * @param set the statements that it adds or replaces
     * @param remove pointers of the statements that it takes out
     * @param baseline the baseline allele of each locus that it adds
     * @throws ProblemsException if a pointer names no whole statement, or one statement lies inside another
     * @throws IllegalArgumentException if the base is named without its hash
     */
    public Patch {
        if (base.sha256().isEmpty()) {
            throw new IllegalArgumentException("patch " + id + " names its base without the hash");
        }
        evidence = ImmutableMap.copyOf(evidence);
        set = ImmutableMap.copyOf(set);
        remove = ImmutableList.copyOf(remove);
        baseline = ImmutableMap.copyOf(baseline);
        check(evidence, set, remove);
    }

    private static void check(Map<String, Node> evidence, Map<String, Node> set, List<String> remove) {
        Problems problems = new Problems(Stage.SHAPE);
        Changes changes = new Changes();
        evidence.keySet().forEach(name -> changes.add(Pointer.of("evidence", name), Pointer.of("evidence", name)));
        set.keySet().forEach(pointer -> change(pointer, Pointer.of("set", pointer), changes, problems));
        for (int i = 0; i < remove.size(); i++) {
            change(remove.get(i), "/remove/" + i, changes, problems);
        }
        changes.all()
                .forEach((pointer, place) -> changes.above(pointer)
                        .ifPresent(outer -> problems.add(
                                "repeated-change",
                                place,
                                pointer + " lies inside " + outer + ", which this patch changes too",
                                "each statement in one place")));
        problems.throwIfAny();
    }

    private static void change(String pointer, String place, Changes changes, Problems problems) {
        if (!STATEMENT.matcher(pointer).matches()) {
            problems.add(
                    "not-a-statement",
                    place,
                    "\"" + pointer + "\" is not the pointer of a whole statement",
                    "a pointer such as /loci/M, /loci/M/dominance, /traits/hue/cases/dark or /masks/white");
        } else if (!changes.add(pointer, place)) {
            problems.add(
                    "repeated-change",
                    place,
                    "this patch changes " + pointer + " twice",
                    "each statement in one place");
        }
    }

    /**
     * Returns the full reference by which a patched model names this patch.
     *
     * @return id, version and the hash of the canonical document
     */
    public Reference reference() {
        return new Reference(id, version, Optional.of(Canonical.sha256(PatchDocument.of(this))));
    }

    /**
     * Returns every statement that this patch changes and where it says so.
     *
     * @return pointers into the document of this patch, by pointers into that of the base, evidence first, in declared order
     */
    public Map<String, String> changes() {
        Map<String, String> changes = new LinkedHashMap<>();
        evidence.keySet().forEach(name -> changes.put(Pointer.of("evidence", name), Pointer.of("evidence", name)));
        set.keySet().forEach(pointer -> changes.put(pointer, Pointer.of("set", pointer)));
        for (int i = 0; i < remove.size(); i++) {
            changes.put(remove.get(i), "/remove/" + i);
        }
        return ImmutableMap.copyOf(changes);
    }

    /** Returns {@code id version}. */
    @Override
    public String toString() {
        return id + " " + version;
    }
}
