package org.geneticsrules.json;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Where the text of a document comes from.
 *
 * <pre>{@code
 * Source.of(Path.of("pea.json"))
 * Source.of("what the user typed", text)
 * Source.opening("pea.json", () -> getClass().getResourceAsStream("pea.json"))
 * }</pre>
 *
 * <p>Immutable; thread-safe if its opener is. Nothing is opened before a document is read from it.
 */
public final class Source {

    /** Opens a stream of bytes; a source that is read twice opens two. */
    @FunctionalInterface
    public interface Opener {

        /**
         * Opens the bytes. The reader closes the stream.
         *
         * @return a new stream
         * @throws IOException if it cannot be opened
         */
        InputStream open() throws IOException;
    }

    private final String name;
    private final Opener opener;

    private Source(String name, Opener opener) {
        this.name = name;
        this.opener = opener;
    }

    /**
     * Returns a file as a source.
     *
     * @param file the file; its name is the name of the source
     * @return the source
     */
    public static Source of(Path file) {
        return new Source(file.toString(), () -> Files.newInputStream(file));
    }

    /**
     * Returns a text as a source.
     *
     * @param name what to call it in messages
     * @param text the JSON text
     * @return the source
     */
    public static Source of(String name, String text) {
        return new Source(name, () -> new ByteArrayInputStream(Utf8.encode(text)));
    }

    /**
     * Returns bytes as a source.
     *
     * @param name what to call them in messages
     * @param bytes the JSON text in UTF-8; copied
     * @return the source
     */
    public static Source of(String name, byte[] bytes) {
        byte[] copy = bytes.clone();
        return new Source(name, () -> new ByteArrayInputStream(copy));
    }

    /**
     * Returns a stream as a source, such as a resource of a jar or a request to a service.
     *
     * @param name what to call it in messages
     * @param opener opens the bytes
     * @return the source
     */
    public static Source opening(String name, Opener opener) {
        return new Source(name, opener);
    }

    /**
     * Returns what to call this source in messages.
     *
     * @return the path of a file, or the name given
     */
    public String name() {
        return name;
    }

    InputStream open() throws IOException {
        return opener.open();
    }

    /** Returns the name. */
    @Override
    public String toString() {
        return name;
    }
}
