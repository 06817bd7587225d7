package org.geneticsrules.vocabulary;

import java.util.Optional;

/**
 * What a name speaks of, such as colour or white marks. A coat mostly has one name per facet, and its whole name is made of them; names
 * of different facets never compete.
 *
 * @param id plain words by which names refer to it
 * @param title a longer title, if the id does not say it all
 */
public record Facet(String id, Optional<String> title) {

    /**
     * Returns a facet without a title.
     *
     * @param id plain words
     * @return the facet
     */
    public static Facet of(String id) {
        return new Facet(id, Optional.empty());
    }
}
