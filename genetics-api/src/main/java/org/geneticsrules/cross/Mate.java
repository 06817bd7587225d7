package org.geneticsrules.cross;

import com.google.common.collect.ImmutableList;
import java.util.List;
import org.geneticsrules.trait.Sighting;

/**
 * The mates of an animal that is tested by its young, as far as they are known: by what is known of them, or by their own parents.
 *
 * <p>Several mates are several animals of one description. A mate that is known by its parents is any of their young of the right sex
 * that lives to be a parent and looks as stated; that there was such a young one to choose tells nothing about its parents.
 *
 * <pre>{@code
 * Mate.of(Parent.of(model, Genotype.parse(model, "c/c")));                // albino mates
 * Mate.ownYoung(Parent.of(model, Genotype.parse(model, "C/C")));          // daughters of the hob that is tested
 * }</pre>
 */
public sealed interface Mate {

    /**
     * Mates of whom something is known directly.
     *
     * @param animal what is known of each of them
     */
    record Known(Parent animal) implements Mate {
        @Override
        public List<Sighting> seen() {
            return ImmutableList.of();
        }

        @Override
        public boolean areSibs() {
            return false;
        }
    }

    /**
     * Young of the animal that is tested.
     *
     * @param partner what is known of the other parent
     * @param seen what was seen of each of them
     * @param areSibs true if all have the same other parent, false if each has one of its own
     */
    record OwnYoung(Parent partner, List<Sighting> seen, boolean areSibs) implements Mate {
        /**
         * Copies what was seen.
         *
         * @param partner the other parent
         * @param seen what was seen
         * @param areSibs whether they share it
         */
        public OwnYoung {
            seen = ImmutableList.copyOf(seen);
        }
    }

    /**
     * Young of two other animals, which are not related to the one that is tested.
     *
     * @param sire what is known of their sire
     * @param dam what is known of their dam
     * @param seen what was seen of each of them
     * @param areSibs true if all have the same parents, false if each has parents of its own
     */
    record YoungOf(Parent sire, Parent dam, List<Sighting> seen, boolean areSibs) implements Mate {
        /**
         * Copies what was seen.
         *
         * @param sire their sire
         * @param dam their dam
         * @param seen what was seen
         * @param areSibs whether they share their parents
         */
        public YoungOf {
            seen = ImmutableList.copyOf(seen);
        }
    }

    /**
     * Returns what was seen of each mate that is known by its parents.
     *
     * @return sightings; none for mates that are known directly, whose looks are part of what is known
     */
    List<Sighting> seen();

    /**
     * Tells whether the mates are brothers or sisters of one another.
     *
     * @return true if they share their parents
     */
    boolean areSibs();

    /**
     * Returns mates of whom something is known directly.
     *
     * @param animal what is known of each of them
     * @return mates that differ from one another in what is not known
     */
    static Mate of(Parent animal) {
        return new Known(animal);
    }

    /**
     * Returns daughters, or sons, of the animal that is tested.
     *
     * @param partner what is known of the other parent, which each of them has for itself
     * @return the mates; their young are closely inbred
     */
    static Mate ownYoung(Parent partner) {
        return new OwnYoung(partner, ImmutableList.of(), false);
    }

    /**
     * Returns young of two animals that are not related to the one that is tested.
     *
     * @param sire what is known of the sire, which each of them has for itself
     * @param dam what is known of the dam, which each of them has for itself
     * @return the mates
     */
    static Mate youngOf(Parent sire, Parent dam) {
        return new YoungOf(sire, dam, ImmutableList.of(), false);
    }

    /**
     * Returns the same mates, chosen by their look.
     *
     * @param sighting what was seen of each of them
     * @return mates that look so
     */
    default Mate seen(Sighting sighting) {
        if (this instanceof Known known) {
            return new Known(known.animal().seen(sighting));
        }
        if (this instanceof OwnYoung own) {
            return new OwnYoung(own.partner(), with(own.seen(), sighting), own.areSibs());
        }
        YoungOf young = (YoungOf) this;
        return new YoungOf(young.sire(), young.dam(), with(young.seen(), sighting), young.areSibs());
    }

    /**
     * Returns the same mates as brothers or sisters of one another.
     *
     * @return mates that share their parents; mates that are not known by their parents are returned as they are
     */
    default Mate asSibs() {
        if (this instanceof OwnYoung own) {
            return new OwnYoung(own.partner(), own.seen(), true);
        }
        return this instanceof YoungOf young ? new YoungOf(young.sire(), young.dam(), young.seen(), true) : this;
    }

    private static List<Sighting> with(List<Sighting> seen, Sighting sighting) {
        return ImmutableList.<Sighting>builder().addAll(seen).add(sighting).build();
    }
}
