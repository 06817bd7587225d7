package org.geneticsrules.model;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * A variant of a locus.
 *
 * @param id the stable name by which rules refer to it
 * @param symbol how it is printed in genotype text; often the id
 * @param title words for it, for example {@code albino}
 * @param synonyms other symbols accepted when genotype text is read
 */
public record Allele(String id, String symbol, Optional<String> title, List<String> synonyms) {

    /**
     * Copies the synonyms.
     *
     * @param id the stable name
     * @param symbol the printed symbol
     * @param title words for it
     * @param synonyms other symbols
     */
    public Allele {
        synonyms = ImmutableList.copyOf(synonyms);
    }

    /**
     * Returns an allele whose symbol is its id.
     *
     * @param id the id
     * @return the allele
     */
    public static Allele of(String id) {
        return new Allele(id, id, Optional.empty(), List.of());
    }

    /** Every spelling by which genotype text may name this allele, symbol first. */
    List<String> spellings() {
        List<String> all = new ArrayList<>(List.of(symbol, id));
        all.addAll(synonyms);
        return Collections.unmodifiableList(all.stream().distinct().toList());
    }

    /** Returns the symbol. */
    @Override
    public String toString() {
        return symbol;
    }
}
