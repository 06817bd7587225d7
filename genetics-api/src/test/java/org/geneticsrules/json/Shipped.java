package org.geneticsrules.json;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.Catalogue;

/** The documents that the sister modules ship or test with. */
final class Shipped {

    private static final List<Path> FOLDERS = List.of(
            Path.of("../genetics-ferret/src/main/resources"),
            Path.of("../genetics-ferret/src/test/resources"),
            Path.of("../genetics-examples/src/main/resources"));

    private Shipped() {}

    /** All documents of one kind, in order of their paths. */
    static List<Path> files(DocumentKind kind) {
        List<Path> found = new ArrayList<>();
        for (Path folder : FOLDERS) {
            try (Stream<Path> files = Files.walk(folder)) {
                files.filter(file -> file.toString().endsWith(".json"))
                        .filter(file -> text(file).contains("\"kind\": \"" + kind.word() + "\""))
                        .sorted()
                        .forEach(found::add);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return found;
    }

    static List<Catalogue> catalogues() {
        return files(DocumentKind.CATALOGUE).stream()
                .map(file -> Documents.reader().readCatalogue(Source.of(file)))
                .toList();
    }

    static Model model(Path file) {
        return Documents.reader().readModel(Source.of(file), catalogues());
    }

    static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
