package org.geneticsrules.cross;

import com.google.common.collect.ImmutableList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import org.geneticsrules.explanation.MatingExplanation;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Diagram;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/**
 * A mating of two parents whose genotypes are known at every locus that is asked about.
 *
 * <pre>{@code
 * Cross cross = Cross.of(model, Genotype.parse(model, "C/c B/b"), Genotype.parse(model, "C/c B/b"));
 * cross.phenotypes(List.of("hue"));          // {hue: black=9/16, hue: brown=3/16, hue: none seen=1/4}
 * cross.atLeastOne(Phenotype.of("eye", "pink"), 8);
 * }</pre>
 *
 * <p>Kits of known parents are independent. All chances are per kit born, all genotypes being taken as equally viable.
 *
 * <p>Immutable and thread-safe.
 */
public final class Cross {

    /** More offspring genotypes than this are not listed. */
    private static final double MOST_GENOTYPES = 1 << 20;

    private final CompiledModel compiled;
    private final Genotype sire;
    private final Genotype dam;

    private Cross(CompiledModel compiled, Genotype sire, Genotype dam) {
        this.compiled = compiled;
        this.sire = sire;
        this.dam = dam;
    }

    /**
     * Returns the mating of two parents.
     *
     * @param model the model of inheritance
     * @param sire the father's genotype
     * @param dam the mother's genotype
     * @return the mating
     */
    public static Cross of(Model model, Genotype sire, Genotype dam) {
        return of(CompiledModel.of(model), sire, dam);
    }

    /**
     * Returns the mating of two parents under a model that is compiled already.
     *
     * @param compiled the model of inheritance
     * @param sire the father's genotype
     * @param dam the mother's genotype
     * @return the mating
     */
    public static Cross of(CompiledModel compiled, Genotype sire, Genotype dam) {
        return new Cross(compiled, sire, dam);
    }

    /**
     * Returns the father's genotype.
     *
     * @return the genotype as given
     */
    public Genotype sire() {
        return sire;
    }

    /**
     * Returns the mother's genotype.
     *
     * @return the genotype as given
     */
    public Genotype dam() {
        return dam;
    }

    /**
     * Returns the chances of the pairs a kit may have at one locus.
     *
     * @param locus id of a locus that both parents' genotypes cover
     * @return the distribution of pairs, in declared order
     * @throws IllegalArgumentException if a parent's genotype does not cover the locus
     */
    public Distribution<AllelePair> segregation(String locus) {
        Locus at = compiled.model().locus(locus);
        return Distribution.ofWeights(pairWeights(at));
    }

    /**
     * Returns the chances of the genotypes a kit may have at some loci.
     *
     * @param loci loci that both parents' genotypes cover
     * @return the distribution of genotypes
     * @throws IllegalArgumentException if a parent's genotype does not cover a locus
     * @throws TooLargeException if there are too many genotypes to list
     */
    public Distribution<Genotype> genotypes(Collection<String> loci) {
        Model model = compiled.model();
        double count = 1;
        for (String locus : loci) {
            count *= pairWeights(model.locus(locus)).size();
        }
        if (count > MOST_GENOTYPES) {
            throw new TooLargeException(
                    "offspring genotypes", count, MOST_GENOTYPES, "ask about fewer loci, or about phenotypes.");
        }
        Distribution<ImmutableList<AllelePair>> pairs = Distribution.certain(ImmutableList.of());
        for (String locus : loci) {
            pairs = pairs.product(
                    segregation(locus),
                    (before, pair) -> ImmutableList.<AllelePair>builder()
                            .addAll(before)
                            .add(pair)
                            .build());
        }
        return pairs.map(list -> Genotype.of(model, list));
    }

    /**
     * Returns the chances of what a kit may show in all visible traits of the model.
     *
     * @return the distribution of phenotypes
     * @throws IllegalArgumentException if a parent's genotype does not cover a locus read
     * @throws TooLargeException if there are too many phenotypes to list
     */
    public Distribution<Phenotype> phenotypes() {
        return phenotypes(compiled.diagram());
    }

    /**
     * Returns the chances of what a kit may show in some traits.
     *
     * @param traits the traits asked for
     * @return the distribution of phenotypes, in the declared order of states; where the model makes no claim about a trait for some
     *     kits, their phenotype does not name it
     * @throws IllegalArgumentException if a trait is unknown or a parent's genotype does not cover a locus read
     * @throws TooLargeException if there are too many phenotypes to list
     */
    public Distribution<Phenotype> phenotypes(Collection<String> traits) {
        return phenotypes(compiled.diagram(traits));
    }

    private Distribution<Phenotype> phenotypes(Diagram<Phenotype> diagram) {
        return diagram.distribution(weights(diagram));
    }

    /**
     * Returns the chance that a kit shows a phenotype.
     *
     * @param description a full or partial phenotype
     * @return the chance that every state named is shown; kits for which the model makes no claim do not count
     * @throws IllegalArgumentException if a trait is unknown or a parent's genotype does not cover a locus read
     */
    public Probability probability(Phenotype description) {
        return phenotypes(description.traits()).probability(description);
    }

    /**
     * Returns the chances of how many kits of a litter show a phenotype.
     *
     * @param description a full or partial phenotype
     * @param kits number of kits, at least 0
     * @return the binomial distribution of the number, from 0 to {@code kits}
     */
    public Distribution<Integer> count(Phenotype description, int kits) {
        return Binomial.of(probability(description), kits);
    }

    /**
     * Returns the chance that at least one kit of a litter shows a phenotype.
     *
     * @param description a full or partial phenotype
     * @param kits number of kits, at least 0
     * @return 1 - (1 - p)^kits
     */
    public Probability atLeastOne(Phenotype description, int kits) {
        return probability(description).atLeastOnceIn(kits);
    }

    /**
     * Returns the Punnett square of some loci.
     *
     * @param loci loci that both parents' genotypes cover
     * @return the square
     * @throws TooLargeException if a parent makes more than {@link PunnettSquare#MOST_GAMETES} distinct gametes
     */
    public PunnettSquare square(Collection<String> loci) {
        return PunnettSquare.of(compiled.model(), sire, dam, loci);
    }

    /**
     * Returns the reasons behind {@link #phenotypes(Collection)}, from the same diagram.
     *
     * @param traits the traits asked for
     * @return what the parents pass on, the ways to each phenotype, what stays hidden and which statements all this rests on
     * @throws IllegalArgumentException if a trait is unknown or a parent's genotype does not cover a locus read
     * @throws TooLargeException if there are too many ways to list
     */
    public MatingExplanation explain(Collection<String> traits) {
        return UncertainCross.of(compiled, known(sire, "sire", traits), known(dam, "dam", traits))
                .explain(traits)
                .orElseThrow();
    }

    private Parent known(Genotype parent, String role, Collection<String> traits) {
        Model model = compiled.model();
        compiled.lociRead(traits).forEach(locus -> pair(parent, model.locus(locus), role));
        return Parent.of(model, parent);
    }

    private long[][] weights(Diagram<Phenotype> diagram) {
        long[][] weights = new long[diagram.loci().size()][];
        for (int level = 0; level < weights.length; level++) {
            Locus locus = compiled.model().locus(diagram.loci().get(level));
            long[] shares = new long[locus.expressions().size()];
            int[] fromSire = locus.positions(pair(sire, locus, "sire"));
            int[] fromDam = locus.positions(pair(dam, locus, "dam"));
            for (int mine : fromSire) {
                for (int theirs : fromDam) {
                    shares[locus.expressionPosition(locus.pair(mine, theirs), Sex.FEMALE)]++;
                }
            }
            reduce(shares);
            weights[level] = shares;
        }
        return weights;
    }

    /** Divides weights that sum to 4 by what they have in common, so that totals stay small. */
    private static void reduce(long[] shares) {
        long bits = 0;
        for (long share : shares) {
            bits |= share;
        }
        int twos = Long.numberOfTrailingZeros(bits); // 4 alone, 2 : 2, or nothing in common
        for (int e = 0; e < shares.length; e++) {
            shares[e] >>= twos;
        }
    }

    private Map<AllelePair, Integer> pairWeights(Locus locus) {
        int[] fromSire = locus.positions(pair(sire, locus, "sire"));
        int[] fromDam = locus.positions(pair(dam, locus, "dam"));
        int[] counts = new int[locus.pairs().size()];
        for (int mine : fromSire) {
            for (int theirs : fromDam) {
                counts[locus.pairs().indexOf(locus.pair(mine, theirs))]++;
            }
        }
        Map<AllelePair, Integer> weights = new LinkedHashMap<>();
        for (int i = 0; i < counts.length; i++) {
            if (counts[i] > 0) {
                weights.put(locus.pairs().get(i), counts[i]);
            }
        }
        return weights;
    }

    private static AllelePair pair(Genotype parent, Locus locus, String role) {
        return parent.pair(locus.id())
                .orElseThrow(() -> new IllegalArgumentException("the " + role + "'s genotype \"" + parent
                        + "\" does not say what locus " + locus.id() + " carries"));
    }

    /** Returns the parents' genotypes with a multiplication sign. */
    @Override
    public String toString() {
        return sire + " \u00d7 " + dam;
    }
}
