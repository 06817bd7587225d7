package org.geneticsrules.cross;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.stream.Collectors;
import org.geneticsrules.model.Allele;

/**
 * One allele for each of some loci: what a parent passes on.
 *
 * @param loci the loci, in the order asked for
 * @param alleles one allele for each
 */
public record Gamete(List<String> loci, List<Allele> alleles) {

    /**
     * Copies the lists.
     *
     * @param loci the loci
     * @param alleles one allele for each
     */
    public Gamete {
        loci = ImmutableList.copyOf(loci);
        alleles = ImmutableList.copyOf(alleles);
    }

    /** Returns the allele symbols separated by spaces, {@code C b}. */
    @Override
    public String toString() {
        return alleles.stream().map(Allele::symbol).collect(Collectors.joining(" "));
    }
}
