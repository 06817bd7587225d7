package org.geneticsrules.expression;

import com.google.common.collect.ImmutableMap;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.trait.Sex;

/**
 * The chances of what an animal of one sex shows at its loci, before anything is seen of it: one {@link Chain} for each linkage group
 * and each locus that stands alone. Groups are independent of one another. Immutable and thread-safe.
 */
public final class KitLaw {

    private final Sex sex;
    private final ImmutableMap<String, Chain> chains;

    private KitLaw(Sex sex, ImmutableMap<String, Chain> chains) {
        this.sex = sex;
        this.chains = chains;
    }

    /**
     * Returns the law made of chains.
     *
     * @param sex the sex of the animal
     * @param chains chains without a locus in common
     * @return the law
     */
    public static KitLaw of(Sex sex, Collection<Chain> chains) {
        Map<String, Chain> byLocus = new LinkedHashMap<>();
        for (Chain chain : chains) {
            for (String locus : chain.loci()) {
                if (byLocus.put(locus, chain) != null) {
                    throw new IllegalArgumentException("locus " + locus + " is in two of the chains " + chains);
                }
            }
        }
        return new KitLaw(sex, ImmutableMap.copyOf(byLocus));
    }

    /**
     * Returns the sex.
     *
     * @return the sex of the animal
     */
    public Sex sex() {
        return sex;
    }

    /**
     * Returns the loci.
     *
     * @return locus ids, chain by chain
     */
    public Set<String> loci() {
        return chains.keySet();
    }

    /** The chain that a locus belongs to. */
    Optional<Chain> chain(String locus) {
        return Optional.ofNullable(chains.get(locus));
    }

    /** Returns the sex and the chains. */
    @Override
    public String toString() {
        return sex.word() + " " + chains.values();
    }
}
