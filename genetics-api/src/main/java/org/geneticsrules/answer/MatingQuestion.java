package org.geneticsrules.answer;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.caution.Relation;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sighting;

/**
 * What may come of a mating?
 *
 * <pre>{@code
 * MatingQuestion question = MatingQuestion.of(hob, jill).inTraits(List.of("hue", "eye colour")).lookingFor(albino).inLitterOf(8);
 * MatingQuestion sons = MatingQuestion.of(PossibleSires.perKit(List.of(tarn, fennick)), jill)
 *         .lookingFor(Phenotype.parse("sex: male, eye colour: pink"))
 *         .at(LifeStage.atWeek(8));
 * }</pre>
 *
 * <p>{@code sex} may stand among the traits and in looks: then daughters and sons are counted apart.
 *
 * @param sires who is, or may be, the father
 * @param dam what is known of the mother
 * @param traits the traits asked for; empty for all the model rules that can be told at the stage
 * @param event the look asked for in particular, if one is
 * @param litter how many kits of a litter the look is counted in, if it is
 * @param seen what the kits of this litter seen so far show; where no stage is stated, at the stage of the question
 * @param stage when the kits are looked at
 * @param census which of the kits conceived are counted
 * @param relation how the parents are related
 */
public record MatingQuestion(
        PossibleSires sires,
        Animal dam,
        Set<String> traits,
        Optional<Phenotype> event,
        Optional<LitterSize> litter,
        List<Sighting> seen,
        LifeStage stage,
        Census census,
        Relation relation) {

    /**
     * Copies the collections.
     *
     * @param sires the males
     * @param dam the mother
     * @param traits the traits asked for
     * @param event the look asked for
     * @param litter the number of kits
     * @param seen the kits seen so far
     * @param stage when the kits are looked at
     * @param census which kits are counted
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
        return of(PossibleSires.of(sire), dam);
    }

    /**
     * Asks about all traits of the young born of a dam to whom one male or several had access, of unknown relation.
     *
     * @param sires the males
     * @param dam the mother
     * @return the question
     */
    public static MatingQuestion of(PossibleSires sires, Animal dam) {
        return new MatingQuestion(
                sires,
                dam,
                ImmutableSet.of(),
                Optional.empty(),
                Optional.empty(),
                ImmutableList.of(),
                LifeStage.unstated(),
                Census.BORN,
                Relation.UNKNOWN);
    }

    /**
     * Narrows the question to some traits.
     *
     * @param asked trait ids
     * @return a copy
     */
    public MatingQuestion inTraits(Collection<String> asked) {
        return new MatingQuestion(sires, dam, ImmutableSet.copyOf(asked), event, litter, seen, stage, census, relation);
    }

    /**
     * Asks for one look in particular.
     *
     * @param look a full or partial phenotype, perhaps with the sex
     * @return a copy
     */
    public MatingQuestion lookingFor(Phenotype look) {
        return new MatingQuestion(sires, dam, traits, Optional.of(look), litter, seen, stage, census, relation);
    }

    /**
     * Asks about a litter, which needs a look to count.
     *
     * @param kits number of kits yet to be seen, at least 1
     * @return a copy
     */
    public MatingQuestion inLitterOf(int kits) {
        return inLitterOf(LitterSize.of(kits));
    }

    /**
     * Asks about a litter, which needs a look to count.
     *
     * @param size how many kits are yet to be seen: a number, or a named distribution
     * @return a copy
     */
    public MatingQuestion inLitterOf(LitterSize size) {
        return new MatingQuestion(sires, dam, traits, event, Optional.of(size), seen, stage, census, relation);
    }

    /**
     * States what kits of this litter, seen already, look like at the stage of the question.
     *
     * @param kits one phenotype per kit
     * @return a copy
     */
    public MatingQuestion havingSeen(List<Phenotype> kits) {
        return withSightings(kits.stream().map(Sighting::of).toList());
    }

    /**
     * States what kits of this litter, seen already, looked like and when.
     *
     * @param kits one sighting per kit
     * @return a copy
     */
    public MatingQuestion withSightings(List<Sighting> kits) {
        return new MatingQuestion(sires, dam, traits, event, litter, kits, stage, census, relation);
    }

    /**
     * Asks what the kits show at a stage of their lives.
     *
     * @param when when they are looked at
     * @return a copy
     */
    public MatingQuestion at(LifeStage when) {
        return new MatingQuestion(sires, dam, traits, event, litter, seen, when, census, relation);
    }

    /**
     * Asks about other kits than those born.
     *
     * @param counted which of the kits conceived are counted
     * @return a copy
     */
    public MatingQuestion among(Census counted) {
        return new MatingQuestion(sires, dam, traits, event, litter, seen, stage, counted, relation);
    }

    /**
     * States how the parents are related.
     *
     * @param between the relation
     * @return a copy
     */
    public MatingQuestion between(Relation between) {
        return new MatingQuestion(sires, dam, traits, event, litter, seen, stage, census, between);
    }

    /** The same question under another model. */
    MatingQuestion under(CompiledModel other) {
        return new MatingQuestion(
                sires.under(other), dam.under(other), traits, event, litter, seen, stage, census, relation);
    }
}
