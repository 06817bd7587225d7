package org.geneticsrules.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelDocument;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.CatalogueDocument;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class RoundTripTest {

    static List<Path> catalogueFiles() {
        return Shipped.files(DocumentKind.CATALOGUE);
    }

    static List<Path> modelFiles() {
        return Shipped.files(DocumentKind.MODEL);
    }

    @Test
    void the_sister_modules_ship_documents() {
        assertTrue(catalogueFiles().size() >= 12, () -> catalogueFiles().toString());
        assertTrue(modelFiles().size() >= 15, () -> modelFiles().toString());
    }

    @ParameterizedTest
    @MethodSource("catalogueFiles")
    void a_shipped_catalogue_reads_back_as_it_was_written(Path file) {
        Catalogue read = Documents.reader().readCatalogue(Source.of(file));
        String written = Documents.write(read);
        Catalogue again = Documents.reader().readCatalogue(Source.of("written", written));
        assertEquals(CatalogueDocument.of(read), CatalogueDocument.of(again));
        assertEquals(read.reference(), again.reference());
        assertEquals(written, Documents.write(again));
    }

    @ParameterizedTest
    @MethodSource("modelFiles")
    void a_shipped_model_reads_back_as_it_was_written(Path file) {
        Model read = Shipped.model(file);
        String written = Documents.write(read);
        Model again = Documents.reader().readModel(Source.of("written", written), Shipped.catalogues());
        assertEquals(ModelDocument.of(read), ModelDocument.of(again));
        assertEquals(read, again);
        assertEquals(written, Documents.write(again));
    }
}
