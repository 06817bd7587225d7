package org.geneticsrules.cross;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;

/**
 * The square of one parent's distinct gametes against the other's (after R. C. Punnett).
 *
 * <p>A box is a union of gametes with its chance, not a kit: four boxes are not four kits. Gametes that are the same are one row or
 * column with their chances added, so a homozygous parent has one. Alleles of linked loci come together as often as the model states,
 * without new mutation; at sex-linked loci half of the gametes of the heterogametic parent make daughters and half make sons.
 *
 * <p>This is a view for teaching; chances are computed without it. Immutable and thread-safe.
 */
public final class PunnettSquare {

    /** The most distinct gametes of one parent that a square shows. */
    public static final int MOST_GAMETES = 64;

    private final Model model;
    private final ImmutableList<String> loci;
    private final Distribution<Gamete> sireGametes;
    private final Distribution<Gamete> damGametes;

    private PunnettSquare(
            Model model,
            ImmutableList<String> loci,
            Distribution<Gamete> sireGametes,
            Distribution<Gamete> damGametes) {
        this.model = model;
        this.loci = loci;
        this.sireGametes = sireGametes;
        this.damGametes = damGametes;
    }

    static PunnettSquare of(Model model, ParentBox sire, ParentBox dam, Collection<String> loci) {
        ImmutableList<String> asked = ImmutableList.copyOf(loci);
        return new PunnettSquare(
                model,
                asked,
                new SquareGametes(model, sire, asked).list(),
                new SquareGametes(model, dam, asked).list());
    }

    /**
     * Returns the father's gametes.
     *
     * @return distinct gametes with their chances, one per row
     */
    public Distribution<Gamete> sireGametes() {
        return sireGametes;
    }

    /**
     * Returns the mother's gametes.
     *
     * @return distinct gametes with their chances, one per column
     */
    public Distribution<Gamete> damGametes() {
        return damGametes;
    }

    /**
     * Returns the genotype of one box.
     *
     * @param fromSire a gamete of the father
     * @param fromDam a gamete of the mother
     * @return the genotype of a kit that arises from them
     */
    public Genotype genotype(Gamete fromSire, Gamete fromDam) {
        List<AllelePair> pairs = new ArrayList<>();
        for (String name : loci) {
            Locus locus = model.locus(name);
            Allele one = fromSire.alleles().get(name);
            Allele other = fromDam.alleles().get(name);
            if (one != null && other != null) {
                pairs.add(locus.pair(one.id(), other.id()));
            } else if (one != null || other != null) {
                pairs.add(locus.hemizygous((one == null ? Objects.requireNonNull(other) : one).id()));
            } else {
                pairs.add(locus.of());
            }
        }
        return Genotype.of(model, pairs);
    }

    /**
     * Returns the chance of one box.
     *
     * @param fromSire a gamete of the father
     * @param fromDam a gamete of the mother
     * @return the product of the gametes' chances
     */
    public Probability probability(Gamete fromSire, Gamete fromDam) {
        return sireGametes.probability(fromSire).times(damGametes.probability(fromDam));
    }

    /**
     * Returns the chances of all genotypes in the square.
     *
     * @return the distribution of genotypes, boxes with one genotype added up
     */
    public Distribution<Genotype> genotypes() {
        return sireGametes.product(damGametes, this::genotype);
    }
}
