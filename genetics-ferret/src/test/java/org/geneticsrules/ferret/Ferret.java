package org.geneticsrules.ferret;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.geneticsrules.caution.CautionSet;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.json.Documents;
import org.geneticsrules.model.Model;
import org.geneticsrules.spi.Registry;
import org.geneticsrules.trait.Catalogue;

/** What the plug-in ships. */
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

    /** The models that are documents of their own, by the names of their files, the default first. */
    static final List<String> DOCUMENTS = List.of("common-practice", "molecular-only", "tyr-and-mlph", "pedigree-data");

    /** The patches on the default that make the other two of the six models: separate pale loci, and what makes a dark-eyed white. */
    static final List<String> RIVALS = List.of(
            "pale-apart",
            "dark-eyed-white-is-marking",
            "dark-eyed-white-is-old-silver",
            "dark-eyed-white-is-pale-step",
            "dark-eyed-white-is-silver");

    /** The six models of the guide by name, the sixth as its rivals. */
    static Map<String, Model> guided() {
        Map<String, Model> models = new LinkedHashMap<>();
        DOCUMENTS.forEach(name -> models.put(name, model(name)));
        RIVALS.forEach(name -> models.put(name, hypothesis(name)));
        return models;
    }

    /** A model that is a document of its own, by the name of its file. */
    static Model model(String name) {
        return REGISTRY.model("geneticsrules.ferret." + name);
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

    /** The default model under one of the shipped hypotheses, by the name of its file. */
    static Model hypothesis(String name) {
        return Documents.reader().apply(common(), List.of(REGISTRY.patch("geneticsrules.ferret." + name)));
    }

    /** The default model, then the same under each shipped hypothesis alone. */
    static List<Model> allModels() {
        return Stream.concat(
                        Stream.of(common()),
                        REGISTRY.patches(common()).stream()
                                .map(patch -> Documents.reader().apply(common(), List.of(patch))))
                .toList();
    }

    static List<Path> jsonFiles(Path folder) {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(file -> file.toString().endsWith(".json"))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
