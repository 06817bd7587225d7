package org.geneticsrules.spi;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;

/**
 * What a plug-in implements: it lists its documents and opens them, and no more. Catalogues, models, patches, cautions and
 * vocabularies are data; the library reads and checks them as it does those of any other origin.
 *
 * <pre>{@code
 * @Plugin(id = "example.mice", version = "1.0.0", title = "Coats of mice", licence = "Apache-2.0")
 * public final class MouseProvider implements GeneticsProvider {
 *     public List<String> documents() {
 *         return List.of("traits.json", "agouti.json");
 *     }
 *
 *     public InputStream open(String name) throws IOException {
 *         InputStream in = MouseProvider.class.getResourceAsStream(name);
 *         if (in == null) {
 *             throw new FileNotFoundException(name);
 *         }
 *         return in;
 *     }
 * }
 * }</pre>
 *
 * <p>The class carries {@link Plugin}, is public, and has a public constructor without parameters. Its jar names it twice, so that it is
 * found on the class path and on the module path: in {@code META-INF/services/org.geneticsrules.spi.GeneticsProvider}, and by
 * {@code provides org.geneticsrules.spi.GeneticsProvider with ...} in its module descriptor. A plug-in is code and trusted as such; its
 * documents are not, and are read within limits.
 *
 * <p>A provider must be thread-safe.
 */
public interface GeneticsProvider {

    /**
     * Lists the documents.
     *
     * @return names by which {@link #open} finds them, each once
     */
    List<String> documents();

    /**
     * Opens a document. The caller closes the stream.
     *
     * @param name one of {@link #documents()}
     * @return a new stream of JSON text in UTF-8
     * @throws IOException if there is no such document or it cannot be read
     */
    InputStream open(String name) throws IOException;
}
