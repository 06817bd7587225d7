package org.geneticsrules.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.geneticsrules.caution.CautionSet;
import org.geneticsrules.caution.Situation;
import org.geneticsrules.document.Reference;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.vocabulary.Vocabulary;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class DocumentsTest {

    private final DocumentReader reader = Documents.reader();

    @ParameterizedTest
    @EnumSource(DocumentKind.class)
    void the_kind_of_a_document_is_found(DocumentKind kind) {
        assertEquals(kind, reader.kindOf(Source.of("sample", Samples.text(kind))));
    }

    @Test
    void the_kind_of_anything_else_is_a_problem() {
        assertThrows(ProblemsException.class, () -> reader.kindOf(Source.of("list", "[]")));
        assertThrows(ProblemsException.class, () -> reader.kindOf(Source.of("empty", "{}")));
        assertThrows(ProblemsException.class, () -> reader.kindOf(Source.of("odd", "{\"kind\": 3}")));
    }

    @Test
    void keys_for_own_use_are_passed_over() {
        Catalogue without = reader.readCatalogue(
                Source.of("plain", Samples.text(DocumentKind.CATALOGUE).replaceFirst("  \"x-note\".*\n", "")));
        assertEquals(without.reference(), Samples.catalogue().reference());
    }

    @Test
    void a_model_asks_for_the_catalogue_it_was_written_for() {
        List<Reference> asked = new ArrayList<>();
        Source source = Source.of("sample", Samples.text(DocumentKind.MODEL));
        Model model = reader.readModel(source, reference -> {
            asked.add(reference);
            return Optional.of(Samples.catalogue());
        });
        assertEquals(List.of(Reference.of("example.traits", "1.0.0")), asked);
        assertEquals("example.model", model.id());
        assertThrows(ProblemsException.class, () -> reader.readModel(source, reference -> Optional.empty()));
    }

    @Test
    void a_catalogue_is_not_asked_for_while_the_shape_is_wrong() {
        Source source = Source.of("damaged", Samples.text(DocumentKind.MODEL).replace("\"loci\"", "\"locus\""));
        assertThrows(
                ProblemsException.class,
                () -> reader.readModel(source, reference -> {
                    throw new AssertionError("asked for " + reference);
                }));
    }

    @Test
    void all_problems_of_a_stage_are_found_at_once_and_in_order() {
        String text = Samples.text(DocumentKind.MODEL)
                .replace("\"title\": \"Colour\"", "\"title\": 1")
                .replace("\"one study\"", "\"one\"")
                .replace("\"masks\"", "\"mask\"");
        ProblemsException thrown = assertThrows(
                ProblemsException.class,
                () -> reader.readModel(Source.of("damaged", text), List.of(Samples.catalogue())));
        assertEquals(
                List.of("/mask", "/evidence/one/grade", "/loci/C/title"),
                thrown.problems().stream().map(problem -> problem.pointer()).toList());
    }

    @Test
    void the_sample_model_reads_back_with_its_frequency_of_zero() {
        Model model =
                reader.readModel(Source.of("sample", Samples.text(DocumentKind.MODEL)), List.of(Samples.catalogue()));
        Model again = reader.readModel(Source.of("written", Documents.write(model)), List.of(Samples.catalogue()));
        assertEquals(model, again);
    }

    @Test
    void cautions_read_back_with_forbidden_states() {
        CautionSet cautions =
                reader.readCautions(Source.of("sample", Samples.text(DocumentKind.CAUTIONS)), Samples.catalogue());
        assertEquals(cautions, reader.readCautions(Source.of("written", Documents.write(cautions))));
        assertEquals(
                List.of("always", "asked"),
                cautions.raisedBy(Situation.of("mating")).stream()
                        .map(caution -> caution.id())
                        .toList());
    }

    @Test
    void the_sample_vocabulary_reads_back_with_all_it_says() {
        Vocabulary names = reader.readVocabulary(
                Source.of("sample", Samples.text(DocumentKind.VOCABULARY)), List.of(Samples.catalogue()));
        String written = Documents.write(names);
        Vocabulary again = reader.readVocabulary(Source.of("written", written), List.of(Samples.catalogue()));
        assertEquals(names, again);
        assertEquals(names.names(), again.names());
        assertEquals(names.facets(), again.facets());
        assertEquals(names.evidence(), again.evidence());
        assertEquals(written, Documents.write(again));
        assertEquals(
                List.of("ash", "cinder", "Größe/2"), names.names().get("ash").words());
        assertEquals(
                "1985/2009-06",
                names.names().get("ash").senses().get("old").period().toString());
    }

    @Test
    void the_shipped_cautions_name_traits_of_their_catalogue() {
        for (Path file : Shipped.files(DocumentKind.CAUTIONS)) {
            CautionSet cautions = reader.readCautions(Source.of(file));
            Catalogue catalogue = Shipped.catalogues().stream()
                    .filter(found -> cautions.catalogue().orElseThrow().means(found.reference()))
                    .findFirst()
                    .orElseThrow();
            assertEquals(cautions, reader.readCautions(Source.of(file), catalogue));
        }
    }

    @Test
    void a_written_text_ends_in_a_newline_and_keeps_to_its_width() {
        String text = Documents.write(Samples.catalogue());
        assertTrue(text.endsWith("}\n"));
        assertTrue(text.lines().allMatch(line -> line.length() <= 120), text);
        assertTrue(text.contains("\n    \"eye\": {\"states\": [\"dark\", \"pink\"]},\n"), text);
    }

    @Test
    void a_file_is_replaced_as_a_whole_and_nothing_is_left_beside_it(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("traits.json");
        Documents.save("old", file);
        Documents.save(Documents.write(Samples.catalogue()), file);
        assertEquals(
                Samples.catalogue().reference(),
                reader.readCatalogue(Source.of(file)).reference());
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(List.of(file), files.toList());
        }
    }

    @Test
    void a_link_is_followed_and_kept(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("real.json"), "old", StandardCharsets.UTF_8);
        Path link = Files.createSymbolicLink(folder.resolve("link.json"), file);
        Documents.save("new", link);
        assertTrue(Files.isSymbolicLink(link));
        assertEquals("new", Files.readString(file));
    }

    @Test
    void a_failed_write_leaves_the_target_as_it_was(@TempDir Path folder) throws IOException {
        Path target = Files.createDirectory(folder.resolve("taken"));
        Files.createFile(target.resolve("inside"));
        assertThrows(UncheckedIOException.class, () -> Documents.save("text", target));
        assertTrue(Files.isDirectory(target));
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(List.of(target), files.toList());
        }
    }

    @Test
    void a_source_that_fails_is_named() {
        Source missing = Source.of(Path.of("no-such-folder", "pea.json"));
        UncheckedIOException thrown = assertThrows(UncheckedIOException.class, () -> reader.readCatalogue(missing));
        assertTrue(String.valueOf(thrown.getMessage()).contains("pea.json"), thrown::getMessage);
        assertFalse(missing.name().isEmpty());
    }
}
