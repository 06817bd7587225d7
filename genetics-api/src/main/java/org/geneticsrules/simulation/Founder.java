package org.geneticsrules.simulation;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Phase;
import org.geneticsrules.trait.Sighting;

/**
 * What a founder is drawn from: the genotypes it may have and, where these are several, the population whose frequencies weigh them.
 *
 * <p>Weights are Hardy-Weinberg proportions restricted to the set ({@code C/-} is C/C and C/c as p² : 2pq), loci independent of one another,
 * and times the chance of such an animal to live; alleles at an X of males have weight p. Of linked loci whose phase is not known,
 * neighbouring heterozygous ones are in coupling or in repulsion with 1/2 each.
 *
 * @param genotypes the genotypes it may have
 * @param phase which alleles of linked loci are known to lie on one strand; at a locus where another genotype is drawn it says nothing
 * @param population id of the population it comes from; may be empty where only one genotype is left for its sex
 * @param looks what it was recorded with at looks planned; it is drawn anew until it is, so that each genotype counts as often as it shows this
 */
public record Founder(GenotypeSet genotypes, Phase phase, Optional<String> population, List<Sighting> looks) {

    /**
     * Copies the looks.
     *
     * @param genotypes the genotypes it may have
     * @param phase what is known of its phase
     * @param population id of its population
     * @param looks what it was recorded with
     */
    public Founder {
        looks = ImmutableList.copyOf(looks);
    }

    /**
     * Makes a founder of whose looks nothing is known.
     *
     * @param genotypes the genotypes it may have
     * @param phase what is known of its phase
     * @param population id of its population
     */
    public Founder(GenotypeSet genotypes, Phase phase, Optional<String> population) {
        this(genotypes, phase, population, ImmutableList.of());
    }

    /**
     * Returns a founder of known genotype.
     *
     * @param genotype its genotype with what is known of its phase; of loci that it leaves out nothing is known, so that a population has
     *     to be named
     * @return the founder
     */
    public static Founder of(Genotype genotype) {
        return new Founder(GenotypeSet.of(genotype.model(), genotype), genotype.phase(), Optional.empty());
    }

    /**
     * Returns a founder of which only a set of genotypes is known.
     *
     * @param genotypes the genotypes it may have
     * @param population id of the population it comes from
     * @return the founder
     */
    public static Founder among(GenotypeSet genotypes, String population) {
        return new Founder(genotypes, Phase.unknown(), Optional.of(population));
    }

    /**
     * Returns any animal of a population.
     *
     * @param model the model that names the population
     * @param population its id
     * @return the founder
     */
    public static Founder from(Model model, String population) {
        return among(GenotypeSet.all(model), population);
    }

    /**
     * Returns this founder as an animal of a population.
     *
     * @param named id of the population
     * @return a copy
     */
    public Founder from(String named) {
        return new Founder(genotypes, phase, Optional.of(named), looks);
    }

    /**
     * Returns this founder as one that was recorded with a look. A look at such traits has to be planned for founders, at the stage and in the
     * light that are stated here, if they are.
     *
     * @param seen what was written down of it
     * @return a copy
     */
    public Founder seen(Sighting seen) {
        return new Founder(
                genotypes,
                phase,
                population,
                ImmutableList.<Sighting>builder().addAll(looks).add(seen).build());
    }
}
