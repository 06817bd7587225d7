package org.geneticsrules.architecture;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.nio.file.Path;

/** Where this module keeps its sources and class files, and the classes read from there. */
final class Compiled {
    /** The root package of the library. */
    static final String ROOT = "org.geneticsrules";

    /** The root package of the classes that break the rules on purpose. */
    static final String FIXTURE = ROOT + ".architecture.fixture";

    /** The test runner says where the module is; without it, the working folder is the module. */
    private static final Path MODULE = Path.of(System.getProperty("basedir", ""));

    static final Path CLASSES = MODULE.resolve("target/classes");
    static final Path SOURCES = MODULE.resolve("src/main/java");
    static final Path FIXTURE_SOURCES = MODULE.resolve("src/test/java/org/geneticsrules/architecture/fixture");
    private static final Path FIXTURE_CLASSES =
            MODULE.resolve("target/test-classes/org/geneticsrules/architecture/fixture");

    private Compiled() {}

    static JavaClasses library() {
        return new ClassFileImporter().importPath(CLASSES);
    }

    static JavaClasses fixtures() {
        return new ClassFileImporter().importPath(FIXTURE_CLASSES);
    }
}
