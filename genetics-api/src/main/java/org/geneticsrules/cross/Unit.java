package org.geneticsrules.cross;

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
 * The loci of a question that are handed down together: those of one linkage group, or one locus that stands alone.
 *
 * @param name id of the group, or of the locus
 * @param group the linkage group, if the loci are in one
 * @param loci the loci in map order
 */
record Unit(String name, Optional<LinkageGroup> group, List<Locus> loci) {

    Unit {
        loci = ImmutableList.copyOf(loci);
    }

    /** Sorts loci into units, in model order. */
    static List<Unit> of(Model model, Collection<String> read) {
        Map<String, Unit> units = new LinkedHashMap<>();
        for (Locus locus : model.loci().values()) {
            if (read.contains(locus.id())) {
                Optional<LinkageGroup> group = model.groupOf(locus.id());
                units.computeIfAbsent(
                        group.map(LinkageGroup::pointer).orElse(locus.id()),
                        key -> group.map(g -> new Unit(
                                        g.id(),
                                        group,
                                        g.loci().stream()
                                                .filter(read::contains)
                                                .map(model::locus)
                                                .toList()))
                                .orElseGet(() -> new Unit(locus.id(), group, List.of(locus))));
            }
        }
        return ImmutableList.copyOf(units.values());
    }

    Transmission transmission() {
        return loci.get(0).transmission();
    }

    /** Whether the loci stand side by side on a chromosome, so that it matters on which strand an allele lies. */
    boolean isLinked() {
        return loci.size() > 1;
    }

    List<String> names() {
        return loci.stream().map(Locus::id).toList();
    }
}
