package org.geneticsrules.spi;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The library with Guava and nothing else builds a model in code, mates and explains. */
class ThinTest {

    @TempDir
    private Path folder;

    @Test
    void on_the_class_path_and_on_the_module_path() throws IOException {
        List<Path> path = new ArrayList<>(Workshop.guava());
        path.add(Workshop.LIBRARY);
        path.add(new Workshop(folder).program("thin", "Thin"));
        assertEquals(printed("null"), Workshop.onClassPath(path, "thin", "Thin"));
        assertEquals(printed("org.geneticsrules.api"), Workshop.onModulePath(path, "", "thin", "Thin"));
    }

    /** 9:3:4: Little C. C. (1957), as a ratio. Hidden are A and C behind agouti, C behind black and A behind white: four. */
    private static List<String> printed(String module) {
        return List.of(
                "9:3:4",
                "true 4",
                "module " + module,
                "absent tools.jackson.core.JsonParser",
                "absent org.jspecify.annotations.NullMarked");
    }
}
