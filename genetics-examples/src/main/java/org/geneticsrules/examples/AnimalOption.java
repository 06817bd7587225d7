package org.geneticsrules.examples;

import java.util.function.Supplier;
import picocli.CommandLine.Option;

/** The recorded animal that is asked about. */
final class AnimalOption {

    @Option(names = "--animal", paramLabel = "ID", required = true, description = "The animal, by its id.")
    private String animal = "";

    Supplier<String> among(Asked asked) {
        return asked.animal("--animal", animal);
    }
}
