package org.geneticsrules.answer;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.cross.Parent;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.GenotypeText;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.model.Phase;
import org.geneticsrules.model.Population;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Phenotype;

/**
 * What is known of one animal: its look, its genotype or both, and where it comes from.
 *
 * <p>The look may name any trait of the catalogue. Traits that the model rules narrow down the genotypes; the others are kept, since a
 * caution may depend on them.
 *
 * @param genotypes the genotypes it may have; empty if what is known contradicts itself under the model
 * @param looks what it is described to look like
 * @param population the population it is taken to come from, if named
 * @param given what was stated of it, in words, to be echoed
 * @param notices what was stated but says nothing under the model
 * @param omitted how loci not named in its genotype were taken, if a genotype was stated that leaves some out
 */
public record Animal(
        GenotypeSet genotypes,
        Phenotype looks,
        Optional<Population> population,
        List<String> given,
        List<String> notices,
        Optional<OmittedLoci> omitted) {

    /**
     * Copies the lists.
     *
     * @param genotypes the genotypes it may have
     * @param looks its look
     * @param population its population
     * @param given what was stated
     * @param notices what says nothing
     * @param omitted how omitted loci were taken
     */
    public Animal {
        given = ImmutableList.copyOf(given);
        notices = ImmutableList.copyOf(notices);
    }

    /**
     * Describes an animal of which nothing is known.
     *
     * @param compiled the model
     * @return an animal that may have any genotype
     */
    public static Animal unknown(CompiledModel compiled) {
        return new Animal(
                GenotypeSet.all(compiled.model()),
                Phenotype.unspecified(),
                Optional.empty(),
                ImmutableList.of(),
                ImmutableList.of(),
                Optional.empty());
    }

    /**
     * Returns this animal with genotype text added to what is known.
     *
     * @param text genotype text of the model, full or partial
     * @param convention what it means that a locus is not named
     * @return the better known animal
     * @throws ProblemsException if the text is not understood
     */
    public Animal withGenotype(String text, OmittedLoci convention) {
        GenotypeText.Parsed parsed = GenotypeText.of(genotypes.model()).parse(text, convention);
        boolean partial = parsed.named().size() < genotypes.model().loci().size();
        return new Animal(
                genotypes.and(parsed.genotypes()),
                looks,
                population,
                plus(given, "genotype " + text.strip()),
                plus(notices, parsed.notices().toArray(String[]::new)),
                partial ? Optional.of(convention) : omitted);
    }

    /**
     * Returns this animal with a look added to what is known.
     *
     * @param compiled the model of this animal
     * @param description states of any traits of the catalogue
     * @return the better known animal
     * @throws ProblemsException if a trait or state is not in the catalogue
     */
    public Animal withLooks(CompiledModel compiled, Phenotype description) {
        Phenotype checked = compiled.model().catalogue().check(description);
        Set<String> ruled = compiled.model().visibleTraits();
        List<String> more = new ArrayList<>();
        for (String trait : checked.traits()) {
            if (!ruled.contains(trait)) {
                String reason = compiled.model().notModelled().getOrDefault(trait, "the model has no rule for it");
                more.add("the look \"" + trait + "\" says nothing about the genotype here: " + reason);
            }
        }
        GenotypeSet showing = compiled.showing(checked.restrictedTo(ruled));
        return new Animal(
                genotypes.and(showing),
                checked,
                population,
                plus(given, "look " + checked),
                plus(notices, more.toArray(String[]::new)),
                omitted);
    }

    /**
     * Returns this animal as one of a population.
     *
     * @param named the population
     * @return the animal with its origin
     */
    public Animal from(Population named) {
        return new Animal(
                genotypes, looks, Optional.of(named), plus(given, "population " + named.id()), notices, omitted);
    }

    /**
     * Returns this animal as the parent of a mating.
     *
     * @return the parent, weighted by its population if it has one
     */
    public Parent parent() {
        return new Parent(genotypes, Phase.unknown(), ImmutableList.of(), population);
    }

    /**
     * Tells at which of some loci the genotype is not known for certain.
     *
     * @param loci locus ids
     * @return those with more than one possible pair
     */
    public Set<String> uncertain(Set<String> loci) {
        return loci.stream().filter(locus -> genotypes.pairs(locus).size() != 1).collect(ImmutableSet.toImmutableSet());
    }

    private static List<String> plus(List<String> before, String... more) {
        List<String> all = new ArrayList<>(before);
        all.addAll(List.of(more));
        return all;
    }
}
