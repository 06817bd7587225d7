package org.geneticsrules.answer.compared;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import org.geneticsrules.planning.Step;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.LifeStage;

/**
 * What can be done next to tell models of inheritance apart.
 *
 * <pre>{@code
 * TellApartQuestion question = TellApartQuestion.usual()
 *         .planned("Rowan", "Fern")          // a mating that is made in any case
 *         .at(LifeStage.parse("week 60, moult 2"));
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 *
 * @param planned matings that are made in any case; one that is named twice counts once
 * @param newMatings whether matings are worked out, too, that would be made for this alone
 * @param traits ids of the traits that are looked at, alone and together; empty for those that were recorded of any animal and of which every
 *     model speaks, or, where there are none, for all of which every model speaks
 * @param stage how old animals and kits are when they are looked at
 * @param kits how many kits of a litter are looked at, 1 to {@value #MOST_KITS}
 * @param sure with which chances numbers of kits shall be enough, each between 0 and 1 without both
 * @param inSpiteOf names of cautions that exclude a mating, and shall not
 */
public record TellApartQuestion(
        List<Couple> planned,
        boolean newMatings,
        Set<String> traits,
        LifeStage stage,
        int kits,
        List<Probability> sure,
        Set<String> inSpiteOf) {

    /** So many kits of a litter are looked at unless stated otherwise. */
    public static final int USUAL_KITS = 8;

    /** More kits of a litter are not asked for. */
    public static final int MOST_KITS = 30;

    /**
     * Two animals that are mated.
     *
     * @param sire id of the sire
     * @param dam id of the dam
     */
    public record Couple(String sire, String dam) {

        /** Returns both. */
        @Override
        public String toString() {
            return sire + " and " + dam;
        }
    }

    /**
     * Checks the numbers and copies the collections.
     *
     * @param planned matings that are made in any case
     * @param newMatings whether others are worked out
     * @param traits ids of the traits that are looked at
     * @param stage how old they are then
     * @param kits how many kits of a litter
     * @param sure with which chances numbers shall be enough
     * @param inSpiteOf cautions that shall not exclude
     * @throws IllegalArgumentException if the number of kits is out of its range, or a chance is 0 or 1
     */
    public TellApartQuestion {
        planned = ImmutableSet.copyOf(planned).asList();
        traits = ImmutableSet.copyOf(traits);
        sure = ImmutableList.copyOf(sure);
        inSpiteOf = ImmutableSet.copyOf(inSpiteOf);
        if (kits < 1 || kits > Math.min(MOST_KITS, Step.MOST)) {
            throw new IllegalArgumentException(
                    "1 to " + MOST_KITS + " kits of a litter are looked at, but not " + kits);
        }
        if (sure.stream().anyMatch(one -> one.isZero() || one.isOne())) {
            throw new IllegalArgumentException("no number of kits makes it certain, and none is needed for a chance of"
                    + " 0: a chance is between both, but they were " + sure);
        }
    }

    /**
     * Asks for records and DNA tests alone, with no mating.
     *
     * @return the question, with the usual numbers
     */
    public static TellApartQuestion usual() {
        return new TellApartQuestion(
                List.of(),
                false,
                Set.of(),
                LifeStage.unstated(),
                USUAL_KITS,
                List.of(Probability.of(4, 5), Probability.of(19, 20)),
                Set.of());
    }

    /**
     * Adds a mating that is made in any case. Where the records say that the first is the female, it is taken the other way round.
     *
     * @param sire id of the sire
     * @param dam id of the dam
     * @return a copy
     */
    public TellApartQuestion planned(String sire, String dam) {
        List<Couple> more = ImmutableList.<Couple>builder()
                .addAll(planned)
                .add(new Couple(sire, dam))
                .build();
        return new TellApartQuestion(more, newMatings, traits, stage, kits, sure, inSpiteOf);
    }

    /**
     * Asks for matings, too, that would be made for this alone. They are told last, and are no advice.
     *
     * @return a copy
     */
    public TellApartQuestion withNewMatings() {
        return new TellApartQuestion(planned, true, traits, stage, kits, sure, inSpiteOf);
    }

    /**
     * Says what is looked at.
     *
     * @param ids ids of traits; none for those that were recorded of any animal, or for all if there are none
     * @return a copy
     */
    public TellApartQuestion inTraits(Collection<String> ids) {
        return new TellApartQuestion(planned, newMatings, ImmutableSet.copyOf(ids), stage, kits, sure, inSpiteOf);
    }

    /**
     * Says how old animals are when they are looked at.
     *
     * @param when the stage
     * @return a copy
     */
    public TellApartQuestion at(LifeStage when) {
        return new TellApartQuestion(planned, newMatings, traits, when, kits, sure, inSpiteOf);
    }

    /**
     * Says how many kits of a litter are looked at.
     *
     * @param number the number
     * @return a copy
     * @throws IllegalArgumentException if it is out of its range
     */
    public TellApartQuestion inLittersOf(int number) {
        return new TellApartQuestion(planned, newMatings, traits, stage, number, sure, inSpiteOf);
    }

    /**
     * Says how surely numbers of kits shall be enough.
     *
     * @param chances chances between 0 and 1, without both
     * @return a copy
     * @throws IllegalArgumentException if one is 0 or 1
     */
    public TellApartQuestion surely(List<Probability> chances) {
        return new TellApartQuestion(planned, newMatings, traits, stage, kits, chances, inSpiteOf);
    }

    /**
     * Asks for matings in spite of some cautions, by name.
     *
     * @param names names of cautions that exclude a mating
     * @return a copy
     */
    public TellApartQuestion inSpiteOf(Collection<String> names) {
        return new TellApartQuestion(planned, newMatings, traits, stage, kits, sure, ImmutableSet.copyOf(names));
    }
}
