package org.geneticsrules.model;

import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.linkage.LinkageGroup;

/**
 * Which alleles of linked loci lie together on one strand, as far as that is known.
 *
 * <p>It is kept only where it says something: for heterozygous loci of one linkage group, at least two of them. Strands have no
 * order; the first heterozygous locus of a group is written in the declared order of its alleles.
 *
 * <p>Immutable and thread-safe.
 */
public final class Phase {

    private static final Phase UNKNOWN = new Phase(ImmutableMap.of());

    /** Alleles of the two strands by locus, loci of one group together and in map order. */
    private final ImmutableMap<String, Strands> strands;

    /**
     * The alleles of one locus on the two strands of an animal.
     *
     * @param one the allele on one strand
     * @param other the allele on the other strand
     */
    public record Strands(Allele one, Allele other) {
        private Strands swapped() {
            return new Strands(other, one);
        }
    }

    private Phase(ImmutableMap<String, Strands> strands) {
        this.strands = strands;
    }

    /**
     * Returns the phase of which nothing is known.
     *
     * @return a phase without loci
     */
    public static Phase unknown() {
        return UNKNOWN;
    }

    /**
     * Returns the phase that strands show. What they say about homozygous or unlinked loci, or about a single heterozygous locus of a
     * group, is no phase and is left out.
     *
     * @param model the model whose linkage groups are meant
     * @param strands alleles by locus; those of one linkage group lie on the strands as given
     * @return the phase
     */
    public static Phase of(Model model, Map<String, Strands> strands) {
        ImmutableMap.Builder<String, Strands> kept = ImmutableMap.builder();
        for (LinkageGroup group : model.groups().values()) {
            Map<String, Strands> open = new LinkedHashMap<>();
            for (String locus : group.loci()) {
                Strands both = strands.get(locus);
                if (both != null && !both.one().id().equals(both.other().id())) {
                    open.put(locus, both);
                }
            }
            if (open.size() > 1) {
                boolean swap = isSwapped(model, open.entrySet().iterator().next());
                open.forEach((locus, both) -> kept.put(locus, swap ? both.swapped() : both));
            }
        }
        return new Phase(kept.buildOrThrow());
    }

    private static boolean isSwapped(Model model, Map.Entry<String, Strands> first) {
        List<String> declared =
                new ArrayList<>(model.locus(first.getKey()).alleles().keySet());
        return declared.indexOf(first.getValue().one().id())
                > declared.indexOf(first.getValue().other().id());
    }

    /**
     * Returns the alleles of a locus strand by strand.
     *
     * @param locus id of a locus
     * @return its alleles; empty if its phase is not known
     */
    public Optional<Strands> at(String locus) {
        return Optional.ofNullable(strands.get(locus));
    }

    /**
     * Returns all that is known.
     *
     * @return alleles by locus, in the order of groups and of the map
     */
    public Map<String, Strands> strands() {
        return strands;
    }

    /**
     * Returns what is known about some loci.
     *
     * @param model the model of this phase
     * @param loci the loci to keep
     * @return the part
     */
    public Phase restrictedTo(Model model, Collection<String> loci) {
        Map<String, Strands> kept = new LinkedHashMap<>(strands);
        kept.keySet().retainAll(loci);
        return of(model, kept);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Phase that && strands.equals(that.strands);
    }

    @Override
    public int hashCode() {
        return strands.hashCode();
    }

    /** Returns the loci with the alleles of both strands. */
    @Override
    public String toString() {
        return strands.toString();
    }
}
