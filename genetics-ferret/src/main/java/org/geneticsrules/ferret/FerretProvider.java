package org.geneticsrules.ferret;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import org.geneticsrules.spi.GeneticsProvider;
import org.geneticsrules.spi.Plugin;

/**
 * Brings the ferret catalogue; the model of common practice with its rival hypotheses as patches; models of what DNA shows, of what one
 * study of DNA adds, and of what pedigrees ranked; and the ferret cautions.
 *
 * <p>Stateless and thread-safe.
 */
@Plugin(
        id = "geneticsrules.ferret",
        version = "0.5.0",
        title = "Ferret coats",
        taxon = "Mustela furo",
        ncbi = 9669,
        licence = "Apache-2.0",
        defaultModel = "geneticsrules.ferret.common-practice")
public final class FerretProvider implements GeneticsProvider {

    private static final List<String> DOCUMENTS = List.of(
            "catalogue.json",
            "common-practice.json",
            "molecular-only.json",
            "tyr-and-mlph.json",
            "pedigree-data.json",
            "cautions.json",
            "names/british-isles.json",
            "names/continental-europe.json",
            "names/north-america.json",
            "patches/dark-eyed-white-is-marking.json",
            "patches/dark-eyed-white-is-old-silver.json",
            "patches/dark-eyed-white-is-pale-step.json",
            "patches/dark-eyed-white-is-silver.json",
            "patches/distribution-series.json",
            "patches/head-white-double-dose.json",
            "patches/head-white-lethal-twice.json",
            "patches/long-coat-by-dose.json",
            "patches/low-white-threshold.json",
            "patches/pale-apart.json",
            "patches/reddish-allele-of-brown.json",
            "patches/sandy-apart.json",
            "patches/silver-dominant.json",
            "patches/silver-never-darkens.json",
            "patches/silver-recessive.json");

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
