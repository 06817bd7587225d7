package org.geneticsrules.problem;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** Builds and splits JSON Pointers (RFC 6901), the stable addresses of statements. Stateless and thread-safe. */
public final class Pointer {

    private Pointer() {}

    /**
     * Returns the pointer made of the given names.
     *
     * @param names member names or item numbers from the root, unescaped
     * @return for example {@code /traits/hue/cases/dark}; a tilde or slash in a name is escaped
     */
    public static String of(String... names) {
        StringBuilder pointer = new StringBuilder();
        for (String name : names) {
            pointer.append('/').append(name.replace("~", "~0").replace("/", "~1"));
        }
        return pointer.toString();
    }

    /**
     * Returns the names that a pointer is made of.
     *
     * @param pointer a pointer as built by {@link #of}, or empty text for the whole document
     * @return the names from the root, unescaped
     */
    public static List<String> names(String pointer) {
        List<String> names = new ArrayList<>();
        for (String name : pointer.split("/", -1)) {
            names.add(name.replace("~1", "/").replace("~0", "~"));
        }
        return Collections.unmodifiableList(names.subList(1, names.size()));
    }
}
