package org.geneticsrules.problem;

/** Builds JSON Pointers (RFC 6901), the stable addresses of statements. Stateless and thread-safe. */
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
}
