package org.geneticsrules.answer;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.caution.Relation;
import org.geneticsrules.trait.Phenotype;

/**
 * What may come of a mating?
 *
 * <pre>{@code
 * MatingQuestion question = MatingQuestion.of(hob, jill).inTraits("hue", "eye colour").lookingFor(albino).inLitterOf(8);
 * }</pre>
 *
 * @param sire what is known of the father
 * @param dam what is known of the mother
 * @param traits the traits asked for; empty for all the model rules
 * @param event the look asked for in particular, if one is
 * @param litter the number of kits asked about, if one is
 * @param seen what the kits of this litter seen so far show
 * @param relation how the parents are related
 */
public record MatingQuestion(
        Animal sire,
        Animal dam,
        Set<String> traits,
        Optional<Phenotype> event,
        Optional<Integer> litter,
        List<Phenotype> seen,
        Relation relation) {

    /**
     * Copies the collections.
     *
     * @param sire the father
     * @param dam the mother
     * @param traits the traits asked for
     * @param event the look asked for
     * @param litter the number of kits
     * @param seen the kits seen so far
     * @param relation how the parents are related
     */
    public MatingQuestion {
        traits = ImmutableSet.copyOf(traits);
        seen = ImmutableList.copyOf(seen);
    }

    /**
     * Asks about all traits of the young of two parents of unknown relation.
     *
     * @param sire the father
     * @param dam the mother
     * @return the question
     */
    public static MatingQuestion of(Animal sire, Animal dam) {
        return new MatingQuestion(
                sire, dam, ImmutableSet.of(), Optional.empty(), Optional.empty(), ImmutableList.of(), Relation.UNKNOWN);
    }

    /**
     * Narrows the question to some traits.
     *
     * @param asked trait ids
     * @return a copy
     */
    public MatingQuestion inTraits(Collection<String> asked) {
        return new MatingQuestion(sire, dam, ImmutableSet.copyOf(asked), event, litter, seen, relation);
    }

    /**
     * Asks for one look in particular.
     *
     * @param look a full or partial phenotype
     * @return a copy
     */
    public MatingQuestion lookingFor(Phenotype look) {
        return new MatingQuestion(sire, dam, traits, Optional.of(look), litter, seen, relation);
    }

    /**
     * Asks about a litter, which needs a look to count.
     *
     * @param kits number of kits yet to be seen, at least 1
     * @return a copy
     */
    public MatingQuestion inLitterOf(int kits) {
        return new MatingQuestion(sire, dam, traits, event, Optional.of(kits), seen, relation);
    }

    /**
     * States what kits of this litter, seen already, look like.
     *
     * @param kits one phenotype per kit
     * @return a copy
     */
    public MatingQuestion havingSeen(List<Phenotype> kits) {
        return new MatingQuestion(sire, dam, traits, event, litter, kits, relation);
    }

    /**
     * States how the parents are related.
     *
     * @param between the relation
     * @return a copy
     */
    public MatingQuestion between(Relation between) {
        return new MatingQuestion(sire, dam, traits, event, litter, seen, between);
    }
}
