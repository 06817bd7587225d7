package org.geneticsrules.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.geneticsrules.answer.compared.Analysis;
import org.geneticsrules.answer.compared.DocumentChange;
import org.geneticsrules.answer.compared.HeldModel;
import org.geneticsrules.document.Canonical;
import org.geneticsrules.document.Difference;
import org.geneticsrules.document.Differences;
import org.geneticsrules.document.Library;
import org.geneticsrules.document.Node;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.testing.Coats;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** An analysis that is written down, read and run again. */
class FrozenAnalysisTest {

    private final DocumentReader reader = Documents.reader();

    static Stream<Analysis> analyses() {
        return Stream.of(FrozenSamples.fit(), FrozenSamples.atHand(), FrozenSamples.everything());
    }

    private FrozenAnalysis read(String text) {
        return reader.readAnalysis(Source.of("analysis", text));
    }

    private List<Problem> problems(String text) {
        return assertThrows(ProblemsException.class, () -> read(text)).problems();
    }

    @ParameterizedTest
    @MethodSource("analyses")
    void what_is_frozen_reads_back_and_comes_out_the_same(Analysis analysis) {
        FrozenAnalysis frozen = FrozenAnalysis.of(analysis);
        String text = Documents.write(frozen);
        FrozenAnalysis read = read(text);
        assertEquals(text, Documents.write(read));
        assertEquals(Library.VERSION, read.library());
        Rerun rerun = read.rerun();
        assertTrue(rerun.answer().identical(), () -> rerun.answer().toString());
        assertEquals(List.of(), rerun.documents());
        assertFalse(rerun.isOtherLibrary());
        assertEquals(
                Canonical.text(frozen.answer()), Canonical.text(rerun.after().answer()));
    }

    /** The same question asked of the library itself, without freezing anything. */
    @Test
    void the_answer_is_that_of_the_question_asked_directly() {
        Node frozen = FrozenAnalysis.of(FrozenSamples.fit()).answer();
        assertEquals(Node.text("How well do these litters go with \"recessive\"?"), member(frozen, "question"));
        Node fit = member(frozen, "fit");
        // nine dark and three light of twelve kits of carriers are just as expected, so nothing is likelier
        assertEquals(
                List.of(),
                Differences.between(Node.text("1.0"), member(fit, "p")).all());
    }

    private static Node member(Node node, String name) {
        return ((Node.ObjectNode) node).members().getOrDefault(name, new Node.NullNode());
    }

    @Test
    void a_name_that_was_said_is_read_with_the_vocabulary_inside() {
        FrozenAnalysis frozen = FrozenAnalysis.of(FrozenSamples.everything());
        assertTrue(Documents.write(frozen).contains("\"cream\""));
        // 5 dark and 2 light, then 6 recorded as dark of which one was called cream: it is both, so one of them is an
        // error
        assertTrue(frozen.answer().toString().contains("cream"), frozen.answer().toString());
    }

    @Test
    void every_tampered_part_is_named_at_once() {
        String text = Documents.write(FrozenAnalysis.of(FrozenSamples.fit()));
        String tampered = text.replaceFirst("\"D\": \"1/2\", \"d\": \"1/2\"", "\"D\": \"1/3\", \"d\": \"2/3\"")
                .replaceFirst("\"coat\": \"light\"", "\"coat\": \"dark\"")
                .replaceFirst("These litters go with the model", "These litters go badly with the model");
        List<Problem> found = problems(tampered);
        assertEquals(
                List.of("/documents/1/sha256", "/documents/2/sha256", "/answer/sha256"),
                found.stream().map(Problem::pointer).toList());
        assertTrue(found.stream().allMatch(one -> one.code().equals("other-content")), found.toString());
        assertTrue(found.stream().allMatch(one -> one.stage() == Stage.REFERENCES), found.toString());
        assertTrue(found.get(0).message().contains("model recessive 1 is not what was frozen"), found.toString());
        assertTrue(found.get(1).message().contains("pedigree carriers 1 is not what was frozen"), found.toString());
        assertTrue(found.get(2).message().contains("answer is not what was frozen"), found.toString());
    }

    /** A seed that was not the one asked with is no other result of the same question. */
    @Test
    void a_question_that_was_changed_is_not_the_one_answered() {
        String text = Documents.write(FrozenAnalysis.of(FrozenSamples.fit()));
        List<Problem> found = problems(text.replaceFirst("\"seed\": \\d+", "\"seed\": 77"));
        assertEquals(
                List.of("/questionSha256"), found.stream().map(Problem::pointer).toList());
        assertTrue(found.get(0).message().contains("the question is not what was frozen"), found.toString());
    }

    /** Another model under a new hash of its own is still not the one that was asked about. */
    @Test
    void a_model_that_was_exchanged_with_its_hash_is_not_the_one_named() {
        String text = Documents.write(FrozenAnalysis.of(FrozenSamples.fit()));
        String hash = Coats.recessive().reference().sha256().orElseThrow();
        String other = Coats.recessive("recessive", Probability.of(1, 3))
                .reference()
                .sha256()
                .orElseThrow();
        String exchanged = text.replaceFirst("\"D\": \"1/2\", \"d\": \"1/2\"", "\"D\": \"2/3\", \"d\": \"1/3\"")
                .replaceFirst(
                        "\"sha256\": \"" + hash + "\",\n( *)\"document\"",
                        "\"sha256\": \"" + other + "\",\n$1\"document\"");
        List<Problem> found = problems(exchanged);
        assertEquals(
                List.of("/question/model/base"),
                found.stream().map(Problem::pointer).toList());
        assertTrue(found.get(0).message().contains(other), found.toString());
        assertTrue(found.get(0).expected().orElseThrow().contains(hash), found.toString());
    }

    @Test
    void what_lacks_is_named() {
        String text = Documents.write(FrozenAnalysis.of(FrozenSamples.everything()));
        String without = text.replaceFirst("(\"kind\": \"patch\",\\s+\"id\": )\"coats.rarer\"", "$1\"coats.rare\"");
        List<String> found = problems(without).stream().map(Problem::toString).toList();
        assertTrue(
                found.stream()
                        .anyMatch(
                                one -> one.contains("unknown patch \"coats.rarer 1\"") && one.contains("coats.rare 1")),
                found.toString());
    }

    /** A document whose hash is right may still be no model; that is told where it stands. */
    @Test
    void what_is_wrong_within_a_document_is_placed_in_the_whole() {
        String text = Documents.write(FrozenAnalysis.of(FrozenSamples.fit()));
        String hash = Coats.recessive().reference().sha256().orElseThrow();
        String wrong = text.replaceFirst("\"shows\": \\{\"D\": \"dark\"", "\"show\": {\"D\": \"dark\"");
        Matcher told = Pattern.compile("hash of its content is ([0-9a-f]{64})")
                .matcher(problems(wrong).get(0).message());
        assertTrue(told.find());
        List<Problem> found = problems(wrong.replaceFirst(hash, told.group(1)).replaceFirst(hash, told.group(1)));
        assertTrue(
                found.stream().allMatch(one -> one.pointer().startsWith("/documents/1/document/loci/A/dominance")),
                found.toString());
        assertTrue(found.stream().allMatch(one -> one.position().isPresent()), found.toString());
        assertTrue(
                found.stream().anyMatch(one -> one.toString().contains("did you mean \"shows\"?")), found.toString());
    }

    @Test
    void an_answer_of_another_version_of_the_library_is_told_and_compared() {
        String text = Documents.write(FrozenAnalysis.of(FrozenSamples.fit()));
        Rerun rerun = read(text.replace("\"library\": \"" + Library.VERSION, "\"library\": \"0.0.9"))
                .rerun();
        assertTrue(rerun.isOtherLibrary());
        assertEquals("0.0.9", rerun.before().library());
        assertTrue(rerun.answer().identical());
    }

    @Test
    void with_another_model_the_statement_and_what_moved_are_told() {
        FrozenAnalysis frozen = FrozenAnalysis.of(FrozenSamples.fit());
        Analysis other = Analysis.of(
                Analysis.Kind.FIT,
                HeldModel.of(Coats.recessive("recessive", Probability.of(1, 3))),
                frozen.analysis().pedigree());
        Rerun rerun = frozen.rerun(other);
        DocumentChange changed = rerun.documents().get(0);
        assertEquals(1, rerun.documents().size());
        assertEquals("model", changed.kind());
        assertEquals(
                List.of("/populations/even/frequencies/A/D", "/populations/even/frequencies/A/d"),
                changed.statements().all().stream()
                        .map(one -> one.pointerBefore().orElseThrow())
                        .toList());
        assertEquals(
                List.of("model sha256"),
                rerun.answer().all().stream()
                        .map(Difference::place)
                        .map(place -> String.join(" ", place))
                        .toList(),
                "kits of tested parents do not hang on the frequency, so only the model's hash moves");
    }

    @Test
    void an_answer_alone_and_that_of_an_analysis_can_be_read() {
        FrozenAnalysis frozen = FrozenAnalysis.of(FrozenSamples.fit());
        Source alone = Source.of("answer", Documents.write(frozen.answer()));
        Source within = Source.of("analysis", Documents.write(frozen));
        assertEquals(frozen.answer(), reader.readAnswer(alone));
        assertEquals(frozen.answer(), reader.readAnswer(within));
        for (String wrong :
                List.of("[]", "{}", "{\"kind\": \"model\"}", "{\"kind\": \"../model\"}", "{\"kind\": \"x\"}")) {
            assertThrows(ProblemsException.class, () -> reader.readAnswer(Source.of("wrong", wrong)), wrong);
        }
        String tampered = Documents.write(frozen).replace("These litters go", "Those litters go");
        assertThrows(ProblemsException.class, () -> reader.readAnswer(Source.of("tampered", tampered)));
    }

    @Test
    void what_moved_is_valid_under_its_schema() {
        Schema schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(ChangesDocument.schema(), InputFormat.JSON);
        FrozenAnalysis frozen = FrozenAnalysis.of(FrozenSamples.everything());
        Rerun rerun = frozen.rerun(FrozenSamples.atHand());
        assertTrue(rerun.answer().all().size() > 10, rerun.answer().toString());
        assertTrue(rerun.documents().size() > 3, rerun.documents().toString());
        for (Node node : List.of(ChangesDocument.of(rerun), ChangesDocument.of(rerun.answer()))) {
            assertEquals(List.of(), schema.validate(Documents.write(node), InputFormat.JSON));
        }
    }

    @Test
    void the_version_is_that_of_the_build() throws IOException {
        String pom = Files.readString(Path.of("pom.xml"));
        assertTrue(pom.contains("<version>" + Library.VERSION + "</version>"), Library.VERSION);
    }
}
