package org.geneticsrules.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import org.geneticsrules.document.Node;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Position;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Catalogue;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;

/** Whatever becomes of a document, reading it ends in a value or in problems that say where they are. */
@Tag("default-jdk")
class HostileDocumentsTest {

    private static final int TREES = 900;
    private static final int BYTES = 300;
    private static final int FEWEST = 10;

    private record Base(DocumentKind kind, String text) {}

    private final List<Catalogue> catalogues = new ArrayList<>(Shipped.catalogues());
    private final List<Base> bases = new ArrayList<>();
    private final Map<String, Integer> outcomes = new TreeMap<>();

    @Test
    void every_damaged_document_ends_in_a_value_or_in_problems(TestReporter reporter) throws IOException {
        catalogues.add(Samples.catalogue());
        for (DocumentKind kind : DocumentKind.values()) {
            // The samples use every feature, so they are damaged at least as often as all shipped documents together.
            List<Base> shipped = Shipped.files(kind).stream()
                    .map(file -> new Base(kind, Shipped.text(file)))
                    .toList();
            bases.addAll(shipped);
            for (int i = 0; i < Math.max(FEWEST, shipped.size()); i++) {
                bases.add(new Base(kind, Samples.text(kind)));
            }
        }
        int read = 0;
        for (int seed = 0; seed < TREES + BYTES; seed++) {
            Base base = bases.get(new Random(seed).nextInt(bases.size()));
            Mutations mutations = new Mutations(seed);
            byte[] damaged = seed < TREES
                    ? Documents.write(mutations.tree(tree(base.text))).getBytes(StandardCharsets.UTF_8)
                    : mutations.bytes(base.text.getBytes(StandardCharsets.UTF_8));
            read += check(base.kind, damaged, seed) ? 1 : 0;
        }
        reporter.publishEntry("outcomes", outcomes.toString());
        reporter.publishEntry("read as JSON", read + " of " + (TREES + BYTES));
        assertTrue(read >= 0.8 * (TREES + BYTES), "only " + read + " were JSON");
        assertTrue(outcomes.size() >= 30, "only these outcomes occurred: " + outcomes);
    }

    private static Node tree(String text) throws IOException {
        return Tokeniser.read(Source.of("base", text), Limits.standard()).node();
    }

    /** Reads a damaged document and checks what it ends in; true if it was JSON. */
    private boolean check(DocumentKind kind, byte[] damaged, int seed) {
        Source source = Source.of("seed " + seed, damaged);
        String what = "seed " + seed;
        try {
            assertNotNull(Samples.read(kind, source, Documents.reader(), catalogues), what);
            outcomes.merge("value", 1, Integer::sum);
            return true;
        } catch (ProblemsException e) {
            Stage stage = e.problems().get(0).stage();
            String[] lines = new String(damaged, StandardCharsets.UTF_8).split("\r\n|\r|\n", -1);
            Optional<Node> root = stage == Stage.SYNTAX ? Optional.empty() : Optional.of(root(source));
            for (Problem problem : e.problems()) {
                assertEquals(stage, problem.stage(), what);
                checkPlace(problem, root, lines, what + ": " + problem);
                outcomes.merge(problem.code(), 1, Integer::sum);
            }
            return stage != Stage.SYNTAX;
        }
    }

    private static void checkPlace(Problem problem, Optional<Node> root, String[] lines, String what) {
        assertTrue(problem.code().matches("[a-z0-9]+(-[a-z0-9]+)*"), what);
        Position at = problem.position().orElseThrow(() -> new AssertionError(what));
        assertTrue(at.line() <= lines.length, what);
        assertTrue(at.column() <= lines[at.line() - 1].length() + 1, what);
        if (root.isEmpty()) {
            assertEquals("", problem.pointer(), what);
            return;
        }
        List<String> names = Pointer.names(problem.pointer());
        Node found = root.get();
        Node around = found;
        for (String name : names) {
            around = found;
            found = found instanceof Node.ListNode list
                    ? list.items().get(Integer.parseInt(name))
                    : ((Node.ObjectNode) found).members().get(name);
            assertNotNull(found, what);
        }
        if (around instanceof Node.ObjectNode && !names.isEmpty()) {
            String rest = lines[at.line() - 1].substring(at.column() - 1);
            assertTrue(rest.startsWith("\""), what + " points at " + rest);
        }
    }

    private static Node root(Source source) {
        try {
            return Tokeniser.read(source, Limits.standard()).node();
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }
}
