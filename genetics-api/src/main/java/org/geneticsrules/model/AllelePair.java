package org.geneticsrules.model;

import com.google.common.collect.ImmutableList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * The genotype of one locus: the two alleles an animal carries there, without order; or the only one, where its chromosome has no
 * partner; or none, where the animal has no such chromosome.
 *
 * <p>The alleles are kept in the order in which the locus declares them, so {@code c/C} and {@code C/c} are one value. Pairs are
 * obtained from {@link Locus#pair}; that is how allele and locus are known to belong together.
 *
 * <p>Immutable and thread-safe.
 */
public final class AllelePair {

    private final String locus;
    private final ImmutableList<Allele> alleles;
    private final ImmutableList<String> ids;
    private final int hash;
    private final String text;

    /** Position among the genotypes of its locus. */
    final int index;

    /** Positions of the alleles among those of the locus, the smaller first. */
    private final int[] positions;

    private AllelePair(String locus, List<Allele> all, int[] positions, int index, String text) {
        this.locus = locus;
        this.alleles = Arrays.stream(positions).mapToObj(all::get).collect(ImmutableList.toImmutableList());
        this.ids = alleles.stream().map(Allele::id).collect(ImmutableList.toImmutableList());
        this.hash = Objects.hash(locus, ids);
        this.text = text;
        this.index = index;
        this.positions = positions;
    }

    /** Makes a pair whose text starts with the locus if its symbols alone would not say which locus is meant. */
    static AllelePair of(String locus, List<Allele> all, int first, int second, String prefix) {
        String text = prefix + all.get(first).symbol() + "/" + all.get(second).symbol();
        return new AllelePair(locus, all, new int[] {first, second}, index(first, second, all.size()), text);
    }

    /** Makes the genotype of an animal with one strand; a partner chromosome is written where the notation has one. */
    static AllelePair hemizygous(
            String locus, List<Allele> all, int only, int index, String prefix, Optional<String> partner) {
        String text = prefix
                + all.get(only).symbol()
                + partner.map(symbol -> "/" + symbol).orElse("");
        return new AllelePair(locus, all, new int[] {only}, index, text);
    }

    /** Makes the genotype of an animal without the chromosome. */
    static AllelePair absent(String locus, int index, String prefix) {
        return new AllelePair(locus, List.of(), new int[0], index, prefix + "absent");
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
     * Returns the alleles.
     *
     * @return two alleles, the same one twice in a homozygote; one in a hemizygote; none without the chromosome
     */
    public List<Allele> alleles() {
        return alleles;
    }

    /** Positions of the alleles among those of the locus; never modified. */
    int[] positions() {
        return positions;
    }

    /**
     * Tells whether the animal has two alleles here and both are the same.
     *
     * @return true for a homozygote
     */
    public boolean isHomozygous() {
        return positions.length == 2 && positions[0] == positions[1];
    }

    /**
     * Tells whether the animal has two alleles here and they differ.
     *
     * @return true for a heterozygote
     */
    public boolean isHeterozygous() {
        return positions.length == 2 && positions[0] != positions[1];
    }

    /**
     * Tells whether the animal has one allele only here.
     *
     * @return true for a hemizygote
     */
    public boolean isHemizygous() {
        return positions.length == 1;
    }

    @Override
    public boolean equals(Object other) {
        return other == this
                || (other instanceof AllelePair that
                        && hash == that.hash
                        && locus.equals(that.locus)
                        && ids.equals(that.ids));
    }

    @Override
    public int hashCode() {
        return hash;
    }

    /**
     * Tells whether the pair holds an allele.
     *
     * @param allele id of an allele of this locus
     * @return true if it is one of the two, or both
     */
    public boolean has(String allele) {
        return alleles.stream().anyMatch(mine -> mine.id().equals(allele));
    }

    /**
     * Returns the symbols with a slash, {@code C/c}, after the symbol of the locus and a colon where the symbols are not unique to the
     * locus; for a hemizygote {@code O/Y}, {@code B/W} or the lone symbol.
     */
    @Override
    public String toString() {
        return text;
    }
}
