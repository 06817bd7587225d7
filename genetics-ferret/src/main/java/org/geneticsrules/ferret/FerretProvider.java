package org.geneticsrules.ferret;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import org.geneticsrules.spi.GeneticsProvider;
import org.geneticsrules.spi.Plugin;

/**
 * Brings the ferret catalogue, the ferret models and the ferret cautions.
 *
 * <p>Stateless and thread-safe.
 */
@Plugin(
        id = "geneticsrules.ferret",
        version = "0.1.0",
        title = "Ferret coats",
        taxon = "Mustela furo",
        ncbi = 9669,
        licence = "Apache-2.0",
        defaultModel = "geneticsrules.ferret.common-practice")
public final class FerretProvider implements GeneticsProvider {

    private static final List<String> DOCUMENTS = List.of("catalogue.json", "common-practice.json", "cautions.json");

    /** Makes the provider. */
    public FerretProvider() {}

    @Override
    public List<String> documents() {
        return DOCUMENTS;
    }

    @Override
    public InputStream open(String name) throws IOException {
        InputStream in = FerretProvider.class.getResourceAsStream(name);
        if (in == null) {
            throw new FileNotFoundException(name);
        }
        return in;
    }
}
