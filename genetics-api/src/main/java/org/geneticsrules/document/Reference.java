package org.geneticsrules.document;

import java.util.Optional;

/**
 * How one document names another, and how an answer names the model it rests on.
 *
 * @param id the document's id, for example {@code example.pea}
 * @param version the document's version
 * @param sha256 the SHA-256 of its canonical form, if the reference pins the content
 */
public record Reference(String id, String version, Optional<String> sha256) {

    /**
     * Returns a reference that does not pin the content.
     *
     * @param id the document's id
     * @param version the document's version
     * @return the reference
     */
    public static Reference of(String id, String version) {
        return new Reference(id, version, Optional.empty());
    }

    /**
     * Tells whether this reference means the given document: same id and version, and same hash where both state one.
     *
     * @param document the document's own full reference
     * @return true if it is meant
     */
    public boolean means(Reference document) {
        return id.equals(document.id)
                && version.equals(document.version)
                && (sha256.isEmpty() || document.sha256.isEmpty() || sha256.equals(document.sha256));
    }

    /**
     * Returns the document form.
     *
     * @return an object with id, version and, if it is stated, the hash
     */
    public Node toNode() {
        return new ObjectBuilder()
                .with("id", id)
                .with("version", version)
                .with("sha256", sha256)
                .build();
    }

    /** Returns {@code id version}, with the first twelve digits of the hash if there is one. */
    @Override
    public String toString() {
        return id + " " + version
                + sha256.map(hash -> " (sha256 " + hash.substring(0, Math.min(12, hash.length())) + "...)")
                        .orElse("");
    }
}
