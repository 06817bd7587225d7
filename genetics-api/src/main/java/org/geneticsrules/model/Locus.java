package org.geneticsrules.model;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * A place in the genome with its alleles and the expressions that dominance maps their pairs onto.
 *
 * <p>Alleles are declared in display order, which means nothing else. Expressions are declared too, so that a dominance hypothesis
 * can be swapped without touching any rule: an expression that no genotype reaches is allowed.
 *
 * <p>Immutable and thread-safe. Obtained from a {@link Model}.
 */
public final class Locus {

    private final String id;
    private final String symbol;
    private final Optional<String> title;
    private final ImmutableMap<String, Allele> alleles;
    private final Optional<String> wildType;
    private final ImmutableList<String> expressions;
    private final ImmutableList<OrderStatement> order;
    private final ImmutableList<ShowsStatement> shows;
    private final Optional<String> evidence;
    private final ImmutableMap<AllelePair, DominanceTable.Decision> decisions;
    private final int[] expressionPositions;

    Locus(LocusBuilder builder, Map<AllelePair, DominanceTable.Decision> decisions) {
        this.id = builder.id;
        this.symbol = builder.symbol.orElse(builder.id);
        this.title = builder.title;
        this.alleles = ImmutableMap.copyOf(builder.alleles);
        this.wildType = builder.wildType;
        this.expressions = ImmutableList.copyOf(builder.expressions());
        this.order = ImmutableList.copyOf(builder.order);
        this.shows = ImmutableList.copyOf(builder.shows);
        this.evidence = builder.evidence;
        this.decisions = ImmutableMap.copyOf(decisions);
        this.expressionPositions = this.decisions.values().stream()
                .mapToInt(decision -> expressions.indexOf(decision.expression()))
                .toArray();
    }

    /**
     * Returns the id.
     *
     * @return the stable name by which rules refer to the locus
     */
    public String id() {
        return id;
    }

    /**
     * Returns the symbol printed in genotype text where the allele symbols alone are not clear.
     *
     * @return the symbol, often the id
     */
    public String symbol() {
        return symbol;
    }

    /**
     * Returns words for the locus.
     *
     * @return the title, if stated
     */
    public Optional<String> title() {
        return title;
    }

    /**
     * Returns the alleles.
     *
     * @return alleles by id in declared order
     */
    public Map<String, Allele> alleles() {
        return alleles;
    }

    /**
     * Returns the allele that genotype text writes as {@code +}.
     *
     * @return the wild-type allele, if one is declared
     */
    public Optional<Allele> wildType() {
        return wildType.map(name -> Objects.requireNonNull(alleles.get(name)));
    }

    /**
     * Returns the declared expressions.
     *
     * @return names in declared order
     */
    public List<String> expressions() {
        return expressions;
    }

    /**
     * Returns the order statements of the dominance hypothesis.
     *
     * @return statements in document order
     */
    public List<OrderStatement> order() {
        return order;
    }

    /**
     * Returns what alleles and pairs are stated to show.
     *
     * @return statements in document order
     */
    public List<ShowsStatement> shows() {
        return shows;
    }

    /**
     * Returns the evidence of dominance statements that name none of their own.
     *
     * @return an evidence id, if stated
     */
    public Optional<String> evidence() {
        return evidence;
    }

    /**
     * Returns every genotype of this locus, k(k+1)/2 for k alleles.
     *
     * @return pairs in declared order of the first, then the second allele
     */
    public List<AllelePair> pairs() {
        return decisions.keySet().asList();
    }

    /**
     * Returns a genotype of this locus.
     *
     * @param one id of an allele
     * @param other id of an allele
     * @return the pair, in declared order
     * @throws IllegalArgumentException if the locus has no such allele
     */
    public AllelePair pair(String one, String other) {
        return pair(position(one), position(other));
    }

    /**
     * Returns a genotype of this locus by the positions of its alleles, for engines that count.
     *
     * @param one position of an allele in {@link #alleles()}, from 0
     * @param other position of an allele
     * @return the pair, in declared order
     * @throws IndexOutOfBoundsException if the locus has fewer alleles
     */
    public AllelePair pair(int one, int other) {
        return pairs().get(AllelePair.index(Math.min(one, other), Math.max(one, other), alleles.size()));
    }

    /**
     * Returns the positions of a pair's alleles.
     *
     * @param pair a pair of this locus
     * @return two positions in {@link #alleles()}, the smaller first
     * @throws IllegalArgumentException if the pair belongs to another locus
     */
    public int[] positions(AllelePair pair) {
        require(pair);
        return new int[] {pair.firstPosition, pair.secondPosition};
    }

    /**
     * Returns the position of what a pair shows as.
     *
     * @param pair a pair of this locus
     * @return a position in {@link #expressions()}
     * @throws IllegalArgumentException if the pair belongs to another locus
     */
    public int expressionPosition(AllelePair pair) {
        require(pair);
        return expressionPositions[pair.index];
    }

    private void require(AllelePair pair) {
        if (pair.index >= expressionPositions.length || !pairs().get(pair.index).equals(pair)) {
            throw new IllegalArgumentException(pair + " is not a genotype of locus " + id + ": " + pairs());
        }
    }

    /**
     * Returns what a genotype of this locus shows as.
     *
     * @param pair a pair of this locus
     * @return one of the declared expressions
     * @throws IllegalArgumentException if the pair belongs to another locus
     */
    public String expression(AllelePair pair) {
        return expressions.get(expressionPosition(pair));
    }

    /**
     * Returns the dominance statements that decide what a genotype shows as.
     *
     * @param pair a pair of this locus
     * @return pointers of the statement of what the allele or pair shows, and of the shortest chain of order statements
     * @throws IllegalArgumentException if the pair belongs to another locus
     */
    public List<String> decidedBy(AllelePair pair) {
        require(pair);
        return decisions.values().asList().get(pair.index).pointers();
    }

    private int position(String allele) {
        int position = alleles.keySet().asList().indexOf(allele);
        if (position < 0) {
            throw new IllegalArgumentException(
                    "locus " + id + " has no allele \"" + allele + "\"; its alleles are " + alleles.keySet());
        }
        return position;
    }

    /** Returns the id. */
    @Override
    public String toString() {
        return id;
    }
}
