package org.geneticsrules.model;

import java.util.List;
import java.util.Objects;

/**
 * The genotype of one locus: the two alleles an animal carries there, without order.
 *
 * <p>The alleles are kept in the order in which the locus declares them, so {@code c/C} and {@code C/c} are one value. Pairs are
 * obtained from {@link Locus#pair}; that is how allele and locus are known to belong together.
 *
 * <p>Immutable and thread-safe.
 */
public final class AllelePair {

    private final String locus;
    private final Allele first;
    private final Allele second;
    private final String text;

    /** Position among the pairs of its locus, and of its alleles among those of its locus. */
    final int index;

    final int firstPosition;
    final int secondPosition;

    /** Makes a pair whose text starts with the locus if its symbols alone would not say which locus is meant. */
    AllelePair(String locus, List<Allele> alleles, int first, int second, String prefix) {
        this.locus = locus;
        this.first = alleles.get(first);
        this.second = alleles.get(second);
        this.text = prefix + this.first.symbol() + "/" + this.second.symbol();
        this.index = index(first, second, alleles.size());
        this.firstPosition = first;
        this.secondPosition = second;
    }

    /** Pairs are numbered by the first allele, then by the second: 00, 01, .. 0k, 11, 12, .. */
    static int index(int first, int second, int alleles) {
        return first * alleles - first * (first - 1) / 2 + second - first;
    }

    /**
     * Returns the locus.
     *
     * @return the id of the locus
     */
    public String locus() {
        return locus;
    }

    /**
     * Returns the allele that the locus declares earlier.
     *
     * @return one of the two alleles
     */
    public Allele first() {
        return first;
    }

    /**
     * Returns the allele that the locus declares later.
     *
     * @return the other allele, the same one in a homozygote
     */
    public Allele second() {
        return second;
    }

    /**
     * Tells whether both alleles are the same.
     *
     * @return true for a homozygote
     */
    public boolean isHomozygous() {
        return first.id().equals(second.id());
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof AllelePair that
                && locus.equals(that.locus)
                && first.id().equals(that.first.id())
                && second.id().equals(that.second.id());
    }

    @Override
    public int hashCode() {
        return Objects.hash(locus, first.id(), second.id());
    }

    /**
     * Tells whether the pair holds an allele.
     *
     * @param allele id of an allele of this locus
     * @return true if it is one of the two, or both
     */
    public boolean has(String allele) {
        return first.id().equals(allele) || second.id().equals(allele);
    }

    /** Returns the symbols with a slash, {@code C/c}, after the symbol of the locus and a colon where the symbols are not unique to the locus. */
    @Override
    public String toString() {
        return text;
    }
}
