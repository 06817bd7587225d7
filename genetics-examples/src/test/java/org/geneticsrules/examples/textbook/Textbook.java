package org.geneticsrules.examples.textbook;

import java.nio.file.Path;
import java.util.List;
import org.geneticsrules.model.Model;
import org.geneticsrules.spi.Registry;

/** What the plug-in ships, and the tables it is checked against. */
final class Textbook {

    /** The test runner says where the module is; without it, the working folder is the module. */
    static final Path MODULE = Path.of(System.getProperty("basedir", ""));

    static final Path SHIPPED = MODULE.resolve("src/main/resources/org/geneticsrules/examples/textbook");
    static final Path CHECKS = MODULE.resolve("src/test/resources/org/geneticsrules/examples/textbook");

    static final Registry REGISTRY = Registry.of(List.of(new TextbookProvider()));

    private Textbook() {}

    static Model model(String id) {
        return REGISTRY.model(id);
    }
}
