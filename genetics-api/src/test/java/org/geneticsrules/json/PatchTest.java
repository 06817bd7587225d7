package org.geneticsrules.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.document.Reference;
import org.geneticsrules.model.Model;
import org.geneticsrules.patch.Patch;
import org.geneticsrules.problem.Position;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** A patch is read, applied to its base, and blamed for what it breaks. */
class PatchTest {

    private final DocumentReader reader = Documents.reader();
    private final Model base = Samples.model();
    private final Patch sample = reader.readPatch(Source.of("sample", Samples.text(DocumentKind.PATCH)), base);

    private Patch patch(String id, Map<String, Node> set, String... remove) {
        return new Patch(
                id,
                "0.1.0",
                Optional.empty(),
                base.reference(),
                ImmutableMap.of(),
                set,
                ImmutableList.copyOf(remove),
                ImmutableMap.of());
    }

    private static Node state(String state) {
        return new ObjectBuilder().with("state", state).build();
    }

    private List<Problem> refused(Patch... patches) {
        return assertThrows(ProblemsException.class, () -> reader.apply(base, List.of(patches)))
                .problems();
    }

    @Test
    void a_patch_reads_back_as_it_was_written() {
        String written = Documents.write(sample);
        Patch again = reader.readPatch(Source.of("written", written));
        assertEquals(sample, again);
        assertEquals(sample.reference(), again.reference());
        assertEquals(written, Documents.write(again));
    }

    @Test
    void the_patched_model_states_what_is_set_and_not_what_is_removed() {
        Model patched = reader.apply(base, List.of(sample));
        assertEquals("example.patch 0.1.0", patched.toString());
        assertEquals(Optional.of("Every feature once, with Every kind of change once"), patched.title());
        assertEquals(List.of(base.reference(), sample.reference()), patched.derivedFrom());
        assertEquals("dark", patched.locus("B").expression(patched.locus("B").pair("B", "b"), Sex.FEMALE));
        assertEquals("middle", base.locus("B").expression(base.locus("B").pair("B", "b"), Sex.FEMALE));
        assertTrue(patched.loci().containsKey("L"));
        assertEquals(
                List.of("white", "weak", "thin"), List.copyOf(patched.masks().keySet()));
        assertEquals(Map.of(), patched.notModelled());
        assertTrue(patched.statements().containsKey("/traits/ear/cases/short"));
        assertEquals(
                "An invented hypothesis.",
                patched.statements()
                        .get("/traits/hue/cases/dark")
                        .evidence()
                        .orElseThrow()
                        .claim());
        // Written to a file, it is a model like any other.
        Model again = reader.readModel(Source.of("patched", Documents.write(patched)), List.of(base.catalogue()));
        assertEquals(patched, again);
        assertEquals(patched.derivedFrom(), again.derivedFrom());
    }

    @Test
    void what_a_removal_leaves_incomplete_is_told_at_the_removal() {
        Problem problem = refused(patch("p", Map.of(), "/loci/B/dominance")).get(0);
        assertEquals("missing-key", problem.code());
        assertEquals("/remove/0", problem.pointer());
        assertEquals("at /loci/B of the patched model: the key \"dominance\" is missing", problem.message());
    }

    @Test
    void a_misshapen_statement_is_told_where_the_patch_sets_it() {
        String text = Samples.text(DocumentKind.PATCH).replace("\"order\": [\"B > b\"]", "\"order\": \"B > b\"");
        Problem problem = assertThrows(ProblemsException.class, () -> reader.readPatch(Source.of("bad", text), base))
                .problems()
                .get(0);
        assertEquals(Stage.SHAPE, problem.stage());
        assertEquals("/set/~1loci~1B~1dominance/order", problem.pointer());
        assertEquals(Optional.of(new Position(12, 27)), problem.position());
    }

    @Test
    void patches_of_one_statement_are_refused_by_name() {
        Patch one = patch("one", Map.of("/traits/eye/otherwise", state("dark")));
        Patch two = patch("two", Map.of("/traits/eye/otherwise", state("pink")));
        Problem same = refused(two, one).get(0);
        assertEquals("patches-overlap", same.code());
        assertEquals("/set/~1traits~1eye~1otherwise", same.pointer());
        assertEquals(
                "patch one 0.1.0 changes /traits/eye/otherwise, and patch two 0.1.0 changes /traits/eye/otherwise",
                same.message());
        Problem inside = refused(one, patch("three", Map.of(), "/traits/eye")).get(0);
        assertEquals("patches-overlap", inside.code());
        assertEquals(
                "patch three 0.1.0 changes /traits/eye, and patch one 0.1.0 changes /traits/eye/otherwise",
                inside.message());
        assertEquals("repeated-patch", refused(one, one).get(0).code());
    }

    @Test
    void of_several_patches_the_one_to_blame_is_named() {
        Patch good = patch("good", Map.of("/traits/eye/otherwise", state("dark")));
        Patch bad = patch("bad", Map.of("/traits/depth/otherwise", state("deep")));
        Problem problem = refused(good, bad).get(0);
        assertEquals("unknown-state", problem.code());
        assertEquals("/set/~1traits~1depth~1otherwise", problem.pointer());
        assertTrue(problem.message().startsWith("patch bad 0.1.0: "), problem::toString);
    }

    @Test
    void a_patch_that_does_not_pin_its_base_is_not_made() {
        assertThrows(
                IllegalArgumentException.class,
                () -> new Patch(
                        "p",
                        "1",
                        Optional.empty(),
                        Reference.of("example.model", "1.0.0"),
                        Map.of(),
                        Map.of(),
                        List.of(),
                        Map.of()));
        assertThrows(IllegalArgumentException.class, () -> reader.apply(base, List.of()));
    }
}
