package org.geneticsrules.json;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.geneticsrules.trait.Catalogue;

/** Small valid documents that use every feature of their kind. */
final class Samples {

    private Samples() {}

    static String text(DocumentKind kind) {
        return switch (kind) {
            case CATALOGUE -> resource("sample-traits.json");
            case MODEL -> resource("sample-model.json");
            case CAUTIONS -> resource("sample-cautions.json");
        };
    }

    static Catalogue catalogue() {
        return Documents.reader().readCatalogue(Source.of("sample", text(DocumentKind.CATALOGUE)));
    }

    /** Reads a document as what it should be, against the sample catalogue and those that are shipped. */
    static Object read(DocumentKind kind, Source source, DocumentReader reader, List<Catalogue> catalogues) {
        return switch (kind) {
            case CATALOGUE -> reader.readCatalogue(source);
            case MODEL -> reader.readModel(source, catalogues);
            case CAUTIONS -> reader.readCautions(source);
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
