package org.geneticsrules.cross;

import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.model.Allele;
import org.geneticsrules.trait.Sex;

/**
 * What a parent passes on at some loci: one allele for each that lies on a chromosome it passes on.
 *
 * @param alleles alleles by locus, in the order asked for
 * @param kit the sex of the kits that come of it, if it is the gamete that decides about the sex of the kit
 * @param chromosome the sex chromosome, such as {@code Y}, if the gamete passes on one that carries none of the loci
 */
public record Gamete(Map<String, Allele> alleles, Optional<Sex> kit, Optional<String> chromosome) {

    /**
     * Copies the alleles.
     *
     * @param alleles alleles by locus
     * @param kit the sex of the kit
     * @param chromosome the sex chromosome without alleles
     */
    public Gamete {
        alleles = ImmutableMap.copyOf(alleles);
    }

    /**
     * Returns the allele symbols separated by spaces, and the sex chromosome that carries none: {@code C b} or {@code C Y}; {@code no
     * allele} where a parent passes on nothing, as a sire does of what is inherited from the dam alone.
     */
    @Override
    public String toString() {
        List<String> parts = new ArrayList<>();
        alleles.values().forEach(allele -> parts.add(allele.symbol()));
        chromosome.ifPresent(parts::add);
        return parts.isEmpty() ? "no allele" : String.join(" ", parts);
    }
}
