package org.geneticsrules.json;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ConcurrentHashMap;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.Catalogue;

/** Small valid documents that use every feature of their kind. */
final class Samples {

    /** Asked for thousands of times. */
    private static final Map<DocumentKind, String> TEXTS = new ConcurrentHashMap<>();

    private static final Model MODEL = Documents.reader()
            .readModel(
                    Source.of("sample", resource("sample-model.json")),
                    List.of(Documents.reader().readCatalogue(Source.of("sample", resource("sample-traits.json")))));

    private Samples() {}

    static String text(DocumentKind kind) {
        return TEXTS.computeIfAbsent(kind, Samples::made);
    }

    private static String made(DocumentKind kind) {
        return switch (kind) {
            case CATALOGUE -> resource("sample-traits.json");
            case MODEL -> resource("sample-model.json");
            case CAUTIONS -> resource("sample-cautions.json");
            case PEDIGREE -> resource("sample-pedigree.json");
            case VOCABULARY -> resource("sample-vocabulary.json");
            case PATCH ->
                resource("sample-patch.json")
                        .replace(
                                "@sha256 of the sample model@",
                                model().reference().sha256().orElseThrow());
            case ANALYSIS -> Documents.write(FrozenAnalysis.of(FrozenSamples.everything()));
        };
    }

    static Catalogue catalogue() {
        return Documents.reader().readCatalogue(Source.of("sample", text(DocumentKind.CATALOGUE)));
    }

    static Model model() {
        return MODEL;
    }

    /** Reads a document as what it should be, against the sample catalogue and those that are shipped. */
    static Object read(DocumentKind kind, Source source, DocumentReader reader, List<Catalogue> catalogues) {
        return switch (kind) {
            case CATALOGUE -> reader.readCatalogue(source);
            case MODEL -> reader.readModel(source, catalogues);
            case CAUTIONS -> reader.readCautions(source);
            case PATCH -> reader.readPatch(source, List.of(model()));
            case PEDIGREE -> reader.readPedigree(source);
            case VOCABULARY -> reader.readVocabulary(source, catalogues);
            case ANALYSIS -> reader.readAnalysis(source);
        };
    }

    static String resource(String name) {
        try (InputStream in = Samples.class.getResourceAsStream(name)) {
            return new String(Objects.requireNonNull(in, name).readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
