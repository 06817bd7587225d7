package org.geneticsrules.model;

import com.google.common.collect.ImmutableMap;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The alleles an animal carries at some or all loci of a model, fully known at each of these loci.
 *
 * <p>What is only partly known is a {@link GenotypeSet}. Loci are kept in model order, so a genotype has one text form:
 *
 * <pre>{@code
 * Genotype jill = Genotype.parse(model, "b/B C/c");
 * jill.toString();   // B/b C/c
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Genotype {

    private final ImmutableMap<String, AllelePair> pairs;

    private Genotype(ImmutableMap<String, AllelePair> pairs) {
        this.pairs = pairs;
    }

    /**
     * Returns the genotype made of the given pairs.
     *
     * @param model the model whose loci are meant
     * @param pairs at most one pair per locus
     * @return the genotype in model order
     * @throws IllegalArgumentException if a pair is of no locus of the model, or two are of one locus
     */
    public static Genotype of(Model model, Collection<AllelePair> pairs) {
        Map<String, AllelePair> byLocus = new LinkedHashMap<>();
        for (AllelePair pair : pairs) {
            Locus locus = model.locus(pair.locus());
            locus.expression(pair); // refuses a pair of another model's locus
            if (byLocus.put(pair.locus(), pair) != null) {
                throw new IllegalArgumentException("locus " + pair.locus() + " is given twice in " + pairs);
            }
        }
        ImmutableMap.Builder<String, AllelePair> ordered = ImmutableMap.builder();
        for (String locus : model.loci().keySet()) {
            AllelePair pair = byLocus.get(locus);
            if (pair != null) {
                ordered.put(locus, pair);
            }
        }
        return new Genotype(ordered.buildOrThrow());
    }

    /**
     * Reads genotype text such as {@code C/c B/b}, in which every named locus is fully known.
     *
     * @param model the model whose symbols are used
     * @param text genotype text
     * @return the genotype of the loci named
     * @throws org.geneticsrules.problem.ProblemsException if the text is not understood, with the place and what was expected
     */
    public static Genotype parse(Model model, String text) {
        return GenotypeText.of(model).genotype(text);
    }

    /**
     * Returns the loci at which the genotype is known.
     *
     * @return locus ids in model order
     */
    public Set<String> loci() {
        return pairs.keySet();
    }

    /**
     * Returns the pair at a locus.
     *
     * @param locus id of a locus
     * @return the pair, or empty if this genotype says nothing about the locus
     */
    public Optional<AllelePair> pair(String locus) {
        return Optional.ofNullable(pairs.get(locus));
    }

    /**
     * Returns all pairs.
     *
     * @return pairs by locus in model order
     */
    public Map<String, AllelePair> pairs() {
        return pairs;
    }

    /**
     * Returns what this genotype says about some loci.
     *
     * @param loci the loci to keep
     * @return the part
     */
    public Genotype restrictedTo(Collection<String> loci) {
        ImmutableMap.Builder<String, AllelePair> kept = ImmutableMap.builder();
        pairs.forEach((locus, pair) -> {
            if (loci.contains(locus)) {
                kept.put(locus, pair);
            }
        });
        return new Genotype(kept.buildOrThrow());
    }

    /**
     * Returns this genotype with another pair at one of its loci.
     *
     * @param pair the pair to put
     * @return the changed genotype
     * @throws IllegalArgumentException if this genotype says nothing about the pair's locus
     */
    public Genotype with(AllelePair pair) {
        if (!pairs.containsKey(pair.locus())) {
            throw new IllegalArgumentException("the genotype " + this + " does not cover locus " + pair.locus());
        }
        Map<String, AllelePair> changed = new LinkedHashMap<>(pairs);
        changed.put(pair.locus(), pair);
        return new Genotype(ImmutableMap.copyOf(changed));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Genotype that && pairs.equals(that.pairs);
    }

    @Override
    public int hashCode() {
        return pairs.hashCode();
    }

    /**
     * Returns the pairs separated by spaces, {@code B/b C/c}; {@link #parse} reads it back.
     */
    @Override
    public String toString() {
        return pairs.values().stream().map(AllelePair::toString).collect(Collectors.joining(" "));
    }
}
