package org.geneticsrules.inference;

import com.google.common.collect.ImmutableList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;

/**
 * Loci that are handed down together: those of one linkage group that matter, in map order, or one locus that stands alone.
 *
 * @param group the linkage group, if the loci are in one
 * @param loci the loci in map order
 */
record Unit(Optional<LinkageGroup> group, List<Locus> loci) {

    Unit {
        loci = ImmutableList.copyOf(loci);
    }

    /** Sorts loci into units, in model order. */
    static List<Unit> of(Model model, Collection<String> matter) {
        Map<String, Unit> units = new LinkedHashMap<>();
        for (Locus locus : model.loci().values()) {
            if (matter.contains(locus.id())) {
                Optional<LinkageGroup> group = model.groupOf(locus.id());
                List<String> together = group.map(LinkageGroup::loci).orElse(List.of(locus.id()));
                units.computeIfAbsent(
                        together.get(0),
                        key -> new Unit(
                                group,
                                together.stream()
                                        .filter(matter::contains)
                                        .map(model::locus)
                                        .toList()));
            }
        }
        return ImmutableList.copyOf(units.values());
    }

    Transmission transmission() {
        return loci.get(0).transmission();
    }

    /** The number of haplotypes: combinations of one allele at each locus. */
    double haplotypes() {
        double product = 1;
        for (Locus locus : loci) {
            product *= locus.alleles().size();
        }
        return product;
    }
}
