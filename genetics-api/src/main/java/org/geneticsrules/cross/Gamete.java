package org.geneticsrules.cross;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.model.Allele;
import org.geneticsrules.trait.Sex;

/**
 * What a parent passes on at some loci: an allele at each, except at those on a chromosome that the gamete does not have.
 *
 * @param loci the loci, in the order asked for
 * @param symbols what is written for each locus: the symbol of its allele; {@code Y} or {@code W} for the partner of an X or a Z; or
 *     {@code -} where nothing is passed on
 * @param alleles the alleles passed on, by locus
 * @param kit the sex of the kits that arise from it, where this gamete decides about that
 */
public record Gamete(List<String> loci, List<String> symbols, Map<String, Allele> alleles, Optional<Sex> kit) {

    /**
     * Copies the collections.
     *
     * @param loci the loci
     * @param symbols what is written for each
     * @param alleles the alleles passed on
     * @param kit the sex of the kits
     */
    public Gamete {
        loci = ImmutableList.copyOf(loci);
        symbols = ImmutableList.copyOf(symbols);
        alleles = ImmutableMap.copyOf(alleles);
    }

    /** Returns the symbols separated by spaces, {@code C b}. */
    @Override
    public String toString() {
        return String.join(" ", symbols);
    }
}
