package org.geneticsrules.json;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import org.geneticsrules.caution.CautionSet;
import org.geneticsrules.model.Model;
import org.geneticsrules.testing.RandomModels;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.vocabulary.Vocabulary;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * The hash of a document is the SHA-256 of RFC 8785 of the file that is written: computed here by another reader and another writer, so
 * that any JCS library can check a reference.
 */
class CanonicalHashTest {

    private static final int RANDOM_MODELS = 300;

    static LongStream seeds() {
        return LongStream.range(0, RANDOM_MODELS);
    }

    @Test
    void the_hash_of_a_shipped_document_is_that_of_its_written_file() throws NoSuchAlgorithmException {
        for (Catalogue catalogue : Shipped.catalogues()) {
            assertEquals(catalogue.reference().sha256().orElseThrow(), hash(Documents.write(catalogue)));
        }
        for (var file : Shipped.files(DocumentKind.MODEL)) {
            Model model = Shipped.model(file);
            assertEquals(model.reference().sha256().orElseThrow(), hash(Documents.write(model)), file::toString);
        }
        for (var file : Shipped.files(DocumentKind.CAUTIONS)) {
            CautionSet cautions = Documents.reader().readCautions(Source.of(file));
            assertEquals(cautions.reference().sha256().orElseThrow(), hash(Documents.write(cautions)));
        }
    }

    @Test
    void the_hash_of_a_vocabulary_is_that_of_its_written_file() throws NoSuchAlgorithmException {
        Vocabulary names = Documents.reader()
                .readVocabulary(
                        Source.of("sample", Samples.text(DocumentKind.VOCABULARY)), List.of(Samples.catalogue()));
        assertEquals(names.reference().sha256().orElseThrow(), hash(Documents.write(names)));
    }

    @Test
    void a_catalogue_that_is_written_as_it_stands_has_the_hash_of_its_file() throws NoSuchAlgorithmException {
        String plain = Samples.text(DocumentKind.CATALOGUE).replaceFirst("  \"x-note\".*\n", "");
        assertEquals(
                hash(plain),
                Documents.reader()
                        .readCatalogue(Source.of("plain", plain))
                        .reference()
                        .sha256()
                        .orElseThrow());
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void a_random_model_reads_back_and_has_the_hash_of_its_file(long seed) throws NoSuchAlgorithmException {
        Model model = RandomModels.model(seed, RandomModels.Size.FULL);
        String written = Documents.write(model);
        Catalogue catalogue =
                Documents.reader().readCatalogue(Source.of("written", Documents.write(model.catalogue())));
        Model again = Documents.reader().readModel(Source.of("written", written), List.of(catalogue));
        assertEquals(model, again);
        assertEquals(written, Documents.write(again));
        assertEquals(model.reference().sha256().orElseThrow(), hash(written));
    }

    private static String hash(String json) throws NoSuchAlgorithmException {
        String canonical = canonical(JsonMapper.builder().build().readTree(json));
        byte[] digest = MessageDigest.getInstance("SHA-256").digest(canonical.getBytes(StandardCharsets.UTF_8));
        return HexFormat.of().formatHex(digest);
    }

    /** RFC 8785, section 3.2: no spaces, members sorted by UTF-16 code units, shortest escapes. Numbers here are small and whole. */
    private static String canonical(JsonNode node) {
        if (node.isObject()) {
            return node.propertyNames().stream()
                    .sorted()
                    .map(name -> quoted(name) + ":" + canonical(node.get(name)))
                    .collect(Collectors.joining(",", "{", "}"));
        }
        if (node.isArray()) {
            return node.valueStream().map(CanonicalHashTest::canonical).collect(Collectors.joining(",", "[", "]"));
        }
        return node.isString() ? quoted(node.stringValue()) : node.toString();
    }

    private static String quoted(String text) {
        return text.chars()
                .mapToObj(c -> switch (c) {
                    case '"' -> "\\\"";
                    case '\\' -> "\\\\";
                    case 8 -> "\\b";
                    case 9 -> "\\t";
                    case 10 -> "\\n";
                    case 12 -> "\\f";
                    case 13 -> "\\r";
                    default -> c < 32 ? "\\u00" + HexFormat.of().toHexDigits((byte) c) : Character.toString(c);
                })
                .collect(Collectors.joining("", "\"", "\""));
    }
}
