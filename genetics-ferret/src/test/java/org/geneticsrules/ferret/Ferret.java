package org.geneticsrules.ferret;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.geneticsrules.caution.CautionSet;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.Source;
import org.geneticsrules.model.Model;
import org.geneticsrules.spi.Registry;
import org.geneticsrules.trait.Catalogue;

/** What the plug-in ships, and the hypotheses that are only tested with. */
final class Ferret {

    /** The test runner says where the module is; without it, the working folder is the module. */
    static final Path MODULE = Path.of(System.getProperty("basedir", ""));

    static final Path SHIPPED = MODULE.resolve("src/main/resources/org/geneticsrules/ferret");
    static final Path CHECKS = MODULE.resolve("src/test/resources/org/geneticsrules/ferret");

    static final Registry REGISTRY = Registry.of(List.of(new FerretProvider()));

    private Ferret() {}

    static Model common() {
        return REGISTRY.model("geneticsrules.ferret.common-practice");
    }

    static CompiledModel compiled() {
        return CompiledModel.of(common());
    }

    static Catalogue catalogue() {
        return common().catalogue();
    }

    static CautionSet cautions() {
        return REGISTRY.cautions(common()).get(0);
    }

    static List<Path> hypothesisFiles() {
        return jsonFiles(CHECKS.resolve("hypotheses"));
    }

    static Model hypothesis(Path file) {
        return Documents.reader().readModel(Source.of(file), REGISTRY.catalogues());
    }

    /** The shipped models, then the hypotheses. */
    static List<Model> allModels() {
        return Stream.concat(
                        REGISTRY.models().stream(), hypothesisFiles().stream().map(Ferret::hypothesis))
                .toList();
    }

    static Model model(String id) {
        return allModels().stream()
                .filter(model -> model.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no model " + id + " among " + allModels()));
    }

    static List<Path> jsonFiles(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.toString().endsWith(".json"))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
