package org.geneticsrules.trait;

import java.util.Optional;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;

/**
 * The kind of organism that a catalogue, model or plug-in is about.
 *
 * @param name scientific name, for example {@code Pisum sativum}
 * @param ncbi identifier in the NCBI Taxonomy, for example 9669, if known
 */
public record Taxon(String name, Optional<Integer> ncbi) {

    /**
     * Returns a taxon with its NCBI Taxonomy identifier.
     *
     * @param name scientific name
     * @param ncbi the identifier
     * @return the taxon
     */
    public static Taxon of(String name, int ncbi) {
        return new Taxon(name, Optional.of(ncbi));
    }

    /**
     * Returns the document form.
     *
     * @return an object with {@code name} and, if known, {@code ncbi}
     */
    public Node toNode() {
        ObjectBuilder node = new ObjectBuilder().with("name", name);
        ncbi.ifPresent(number -> node.with("ncbi", Node.number(number)));
        return node.build();
    }

    /** Returns the name, with the identifier if it is known. */
    @Override
    public String toString() {
        return name + ncbi.map(number -> " (NCBI Taxonomy " + number + ")").orElse("");
    }
}
