package org.geneticsrules.model;

import com.google.common.collect.ImmutableMap;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.trait.Sex;

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

    /** The {@link #position} where a genotype says nothing about a locus. */
    public static final int UNKNOWN = -1;

    private final Model model;
    private final ImmutableMap<String, AllelePair> pairs;
    private final Phase phase;

    /** For each locus of the model, the position of the pair among those of the locus; {@link #UNKNOWN} where nothing is said. */
    private final int[] positions;

    private Genotype(Model model, ImmutableMap<String, AllelePair> pairs, Phase phase) {
        this.model = model;
        this.pairs = pairs;
        this.phase = phase;
        this.positions = new int[model.loci().size()];
        int at = 0;
        for (String locus : model.loci().keySet()) {
            AllelePair pair = pairs.get(locus);
            positions[at++] = pair == null ? UNKNOWN : pair.index;
        }
    }

    /**
     * Returns the genotype made of the given pairs, the phase of linked loci not being known.
     *
     * @param model the model whose loci are meant
     * @param pairs at most one pair per locus
     * @return the genotype in model order
     * @throws IllegalArgumentException if a pair is of no locus of the model, two are of one locus, or no sex can have all of them
     */
    public static Genotype of(Model model, Collection<AllelePair> pairs) {
        return of(model, pairs, Phase.unknown());
    }

    /**
     * Returns the genotype made of the given pairs, with what is known of the phase of linked loci.
     *
     * @param model the model whose loci are meant
     * @param pairs at most one pair per locus
     * @param phase which alleles lie on one strand
     * @return the genotype in model order
     * @throws IllegalArgumentException if a pair is of no locus of the model, two are of one locus, no sex can have all of them, or
     *     the phase names other alleles
     */
    public static Genotype of(Model model, Collection<AllelePair> pairs, Phase phase) {
        Map<String, AllelePair> byLocus = new LinkedHashMap<>();
        for (AllelePair pair : pairs) {
            Locus locus = model.locus(pair.locus());
            locus.expressions(pair); // refuses a pair of another model's locus
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
        Genotype genotype = new Genotype(model, ordered.buildOrThrow(), phase);
        if (genotype.sexes().isEmpty()) {
            throw new IllegalArgumentException("no animal of either sex has the genotype " + genotype);
        }
        phase.strands().forEach((locus, strands) -> {
            AllelePair pair = byLocus.get(locus);
            if (pair == null
                    || !pair.equals(model.locus(locus)
                            .pair(strands.one().id(), strands.other().id()))) {
                throw new IllegalArgumentException("the phase " + phase + " does not agree with " + genotype);
            }
        });
        return genotype;
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
     * Returns the model whose loci are meant.
     *
     * @return the model that the genotype was made with
     */
    public Model model() {
        return model;
    }

    /**
     * Returns the pair at a locus as a number, for engines that count.
     *
     * @param locus position of a locus in {@link Model#loci()}, from 0
     * @return position of the pair in {@link Locus#pairs()}, or {@link #UNKNOWN} if this genotype says nothing about the locus
     * @throws IndexOutOfBoundsException if the model has fewer loci
     */
    public int position(int locus) {
        return positions[locus];
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
     * Returns what is known of the phase of linked loci.
     *
     * @return the phase
     */
    public Phase phase() {
        return phase;
    }

    /**
     * Returns the sexes of animals that can have this genotype.
     *
     * @return both, unless a sex-linked locus tells
     */
    public Set<Sex> sexes() {
        Set<Sex> possible = new LinkedHashSet<>(List.of(Sex.values()));
        pairs.forEach((locus, pair) -> possible.removeIf(sex ->
                model.locus(locus).transmission().strands(sex) != pair.alleles().size()));
        return possible;
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
        return new Genotype(model, kept.buildOrThrow(), phase.restrictedTo(model, loci));
    }

    /**
     * Returns this genotype with another pair at one of its loci. What was known of the phase of that locus is given up.
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
        Set<String> others = new LinkedHashSet<>(pairs.keySet());
        others.remove(pair.locus());
        return new Genotype(model, ImmutableMap.copyOf(changed), phase.restrictedTo(model, others));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Genotype that && pairs.equals(that.pairs) && phase.equals(that.phase);
    }

    @Override
    public int hashCode() {
        return 31 * pairs.hashCode() + phase.hashCode();
    }

    /**
     * Returns the pairs separated by spaces, {@code B/b C/c}, with loci whose phase is known in brackets, {@code [B C]/[b c]}; {@link
     * #parse} reads it back. Loci on a chromosome that the animal lacks are not written, so reading back finds them only where another
     * locus tells the sex.
     */
    @Override
    public String toString() {
        return new GenotypePrinter(model).print(pairs, phase);
    }
}
