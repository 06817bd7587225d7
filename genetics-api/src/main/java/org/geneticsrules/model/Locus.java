package org.geneticsrules.model;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Sex;

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
    private final Transmission transmission;
    private final ImmutableMap<Sex, Dominance> dominance;
    private final boolean dependsOnSex;
    private final Optional<String> absent;
    private final ImmutableMap<String, ImmutableMap<String, Probability>> mutation;
    private final ImmutableMap<String, ImmutableMap<String, String>> mutationEvidence;
    private final ImmutableList<AllelePair> pairs;
    private final ImmutableMap<Sex, ImmutableList<DominanceTable.Decision>> decisions;

    /** For each sex, the position of the expression of each genotype. */
    private final int[] inFemales;

    private final int[] inMales;

    Locus(LocusBuilder builder, Transmission transmission, Map<Sex, Map<AllelePair, DominanceTable.Decision>> decided) {
        this.id = builder.id;
        this.symbol = builder.symbol.orElse(builder.id);
        this.title = builder.title;
        this.alleles = ImmutableMap.copyOf(builder.alleles);
        this.wildType = builder.wildType;
        this.expressions = ImmutableList.copyOf(builder.expressions());
        this.transmission = transmission;
        this.dependsOnSex = !builder.bySex.isEmpty();
        this.absent = builder.absent;
        ImmutableMap.Builder<String, ImmutableMap<String, Probability>> rates = ImmutableMap.builder();
        builder.mutation.forEach((from, to) -> rates.put(from, ImmutableMap.copyOf(to)));
        this.mutation = rates.buildOrThrow();
        ImmutableMap.Builder<String, ImmutableMap<String, String>> support = ImmutableMap.builder();
        builder.mutationEvidence.forEach((from, to) -> support.put(from, ImmutableMap.copyOf(to)));
        this.mutationEvidence = support.buildOrThrow();
        this.pairs = ImmutableList.copyOf(
                Objects.requireNonNull(decided.get(Sex.FEMALE)).keySet());
        ImmutableMap.Builder<Sex, Dominance> stated = ImmutableMap.builder();
        ImmutableMap.Builder<Sex, ImmutableList<DominanceTable.Decision>> tables = ImmutableMap.builder();
        Map<Sex, int[]> positions = new EnumMap<>(Sex.class);
        for (Sex sex : Sex.values()) {
            Map<AllelePair, DominanceTable.Decision> table = Objects.requireNonNull(decided.get(sex));
            stated.put(sex, builder.dominance(sex).build());
            tables.put(sex, ImmutableList.copyOf(table.values()));
            positions.put(
                    sex,
                    table.values().stream()
                            .mapToInt(decision -> expressions.indexOf(decision.expression()))
                            .toArray());
        }
        this.inFemales = Objects.requireNonNull(positions.get(Sex.FEMALE));
        this.inMales = Objects.requireNonNull(positions.get(Sex.MALE));
        this.dominance = stated.buildOrThrow();
        this.decisions = tables.buildOrThrow();
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
     * Returns the way in which the locus is handed down.
     *
     * @return that of its linkage group; autosomal if it is in none
     */
    public Transmission transmission() {
        return transmission;
    }

    /**
     * Returns the dominance hypothesis that holds in a sex.
     *
     * @param sex a sex
     * @return its statements; the same in both sexes unless {@link #dependsOnSex()}
     */
    public Dominance dominance(Sex sex) {
        return Objects.requireNonNull(dominance.get(sex));
    }

    /**
     * Tells whether dominance is stated for each sex by itself.
     *
     * @return true if one genotype may show differently in the two sexes
     */
    public boolean dependsOnSex() {
        return dependsOnSex;
    }

    /**
     * Returns what animals show that lack the chromosome of this locus.
     *
     * @return one of the expressions; empty unless the locus is on a Y or W
     */
    public Optional<String> absent() {
        return absent;
    }

    /**
     * Returns how often alleles turn into others from parent to gamete.
     *
     * @return rates by allele of the parent and allele of the gamete; what is not named does not happen
     */
    public Map<String, ? extends Map<String, Probability>> mutation() {
        return mutation;
    }

    /**
     * Returns the evidence of a mutation rate.
     *
     * @param from id of the allele of the parent
     * @param to id of the allele of the gamete
     * @return id of the evidence, if stated
     */
    public Optional<String> mutationEvidence(String from, String to) {
        return Optional.ofNullable(
                mutationEvidence.getOrDefault(from, ImmutableMap.of()).get(to));
    }

    /**
     * Returns every genotype of this locus: k(k+1)/2 pairs for k alleles, k hemizygotes where one sex or both have a single strand, and
     * the genotype without alleles where one sex has none.
     *
     * @return genotypes, pairs first, in declared order of the first, then the second allele
     */
    public List<AllelePair> pairs() {
        return pairs;
    }

    /**
     * Returns every genotype that animals of one sex may have here.
     *
     * @param sex a sex
     * @return genotypes in the order of {@link #pairs()}
     */
    public List<AllelePair> pairs(Sex sex) {
        int strands = transmission.strands(sex);
        return pairs.stream().filter(pair -> pair.alleles().size() == strands).toList();
    }

    /**
     * Returns the genotype of an animal that has a single strand here.
     *
     * @param allele id of its allele
     * @return the hemizygote
     * @throws IllegalArgumentException if the locus has no such allele, or animals of both sexes have two strands
     */
    public AllelePair hemizygous(String allele) {
        return of(position(allele));
    }

    /**
     * Returns a genotype of this locus by the positions of its alleles, for engines that count.
     *
     * @param positions positions of two alleles, of one, or of none in {@link #alleles()}, from 0, in any order
     * @return the genotype
     * @throws IllegalArgumentException if no animal has so many strands here
     * @throws IndexOutOfBoundsException if the locus has fewer alleles
     */
    public AllelePair of(int... positions) {
        int count = alleles.size();
        int diploid = transmission.recombines() ? count * (count + 1) / 2 : 0;
        boolean possible = false;
        for (Sex sex : Sex.values()) {
            possible |= transmission.strands(sex) == positions.length;
        }
        if (!possible) {
            throw new IllegalArgumentException("no animal has " + positions.length + " strands at locus " + id);
        }
        return switch (positions.length) {
            case 2 -> pair(positions[0], positions[1]);
            case 1 -> pairs.get(diploid + positions[0]);
            default -> pairs.get(diploid + count);
        };
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
     * Returns the positions of a genotype's alleles.
     *
     * @param pair a genotype of this locus
     * @return two positions in {@link #alleles()}, the smaller first; one for a hemizygote, none without the chromosome
     * @throws IllegalArgumentException if the pair belongs to another locus
     */
    public int[] positions(AllelePair pair) {
        require(pair);
        return pair.positions().clone();
    }

    /**
     * Returns the position of a genotype among all of this locus, for engines that count.
     *
     * @param pair a genotype of this locus
     * @return its position in {@link #pairs()}
     * @throws IllegalArgumentException if the pair belongs to another locus
     */
    public int position(AllelePair pair) {
        require(pair);
        return pair.index;
    }

    /**
     * Returns the position of what a genotype shows as.
     *
     * @param pair a genotype of this locus
     * @param sex sex of the animal, which matters where {@link #dependsOnSex()}
     * @return a position in {@link #expressions()}
     * @throws IllegalArgumentException if the genotype belongs to another locus
     */
    public int expressionPosition(AllelePair pair, Sex sex) {
        require(pair);
        return (sex == Sex.FEMALE ? inFemales : inMales)[pair.index];
    }

    @SuppressWarnings("ReferenceEquality") // identity first: nearly always it is the same pair
    private void require(AllelePair pair) {
        if (pair.index >= pairs.size() || !pairs.get(pair.index).equals(pair)) {
            throw new IllegalArgumentException(pair + " is not a genotype of locus " + id + ": " + pairs);
        }
    }

    /**
     * Returns what a genotype of this locus shows as.
     *
     * @param pair a genotype of this locus
     * @param sex sex of the animal, which matters where {@link #dependsOnSex()}
     * @return one of the declared expressions
     * @throws IllegalArgumentException if the genotype belongs to another locus
     */
    public String expression(AllelePair pair, Sex sex) {
        return expressions.get(expressionPosition(pair, sex));
    }

    /**
     * Returns what a genotype of this locus shows as in the sexes that may have it.
     *
     * @param pair a genotype of this locus
     * @return one expression, or two where the sexes differ
     * @throws IllegalArgumentException if the genotype belongs to another locus
     */
    public Set<String> expressions(AllelePair pair) {
        Set<String> shown = new LinkedHashSet<>();
        for (Sex sex : Sex.values()) {
            if (transmission.strands(sex) == pair.alleles().size()) {
                shown.add(expression(pair, sex));
            }
        }
        return shown;
    }

    /**
     * Returns the dominance statements that decide what a genotype shows as.
     *
     * @param pair a genotype of this locus
     * @param sex sex of the animal
     * @return pointers of the statement of what the allele or pair shows, and of the shortest chain of order statements
     * @throws IllegalArgumentException if the genotype belongs to another locus
     */
    public List<String> decidedBy(AllelePair pair, Sex sex) {
        require(pair);
        return Objects.requireNonNull(decisions.get(sex)).get(pair.index).pointers();
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
