package org.geneticsrules.spi;

import java.util.Comparator;
import java.util.Optional;
import org.geneticsrules.trait.Taxon;

/**
 * What is known of a plug-in without running it, and, once its documents are read, what they sum up to.
 *
 * <p>Descriptors are ordered by id, version and location.
 *
 * <p>Immutable and thread-safe.
 *
 * @param id id of the plug-in
 * @param version version of the plug-in
 * @param title what it brings, in a few words
 * @param taxon the kind of organism it is about, if one
 * @param licence SPDX identifier of the licence of its documents
 * @param defaultModel id of the model to use where only the plug-in is named, if one is singled out
 * @param location the jar, folder or module it came from
 * @param className name of the class that provides it
 * @param sha256 the SHA-256 of the canonical forms of all its documents, whatever their order; absent until they are read
 */
public record ProviderDescriptor(
        String id,
        String version,
        String title,
        Optional<Taxon> taxon,
        String licence,
        Optional<String> defaultModel,
        String location,
        String className,
        Optional<String> sha256)
        implements Comparable<ProviderDescriptor> {

    private static final Comparator<ProviderDescriptor> ORDER = Comparator.comparing(ProviderDescriptor::id)
            .thenComparing(ProviderDescriptor::version)
            .thenComparing(ProviderDescriptor::location)
            .thenComparing(ProviderDescriptor::className);

    static ProviderDescriptor of(Plugin plugin, Class<?> type) {
        Optional<Integer> ncbi = plugin.ncbi() > 0 ? Optional.of(plugin.ncbi()) : Optional.empty();
        return new ProviderDescriptor(
                plugin.id(),
                plugin.version(),
                plugin.title(),
                plugin.taxon().isEmpty()
                        ? Optional.empty()
                        : Optional.of(new Taxon(plugin.taxon(), ncbi, Optional.empty())),
                plugin.licence(),
                plugin.defaultModel().isEmpty() ? Optional.empty() : Optional.of(plugin.defaultModel()),
                Locations.of(type),
                type.getName(),
                Optional.empty());
    }

    ProviderDescriptor with(String checksum) {
        return new ProviderDescriptor(
                id, version, title, taxon, licence, defaultModel, location, className, Optional.of(checksum));
    }

    /** Returns {@code id version}. */
    String release() {
        return id + " " + version;
    }

    @Override
    public int compareTo(ProviderDescriptor other) {
        return ORDER.compare(this, other);
    }

    /** Returns {@code id version (location)}. */
    @Override
    public String toString() {
        return release() + " (" + location + ")";
    }
}
