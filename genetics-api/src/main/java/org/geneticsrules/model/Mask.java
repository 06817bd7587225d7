package org.geneticsrules.model;

import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.trait.Condition;

/**
 * Epistasis as it is seen: under a condition, some traits no longer show their own state.
 *
 * <p>A mask reads expressions and own states, never shown ones, so masks cannot form a circle. It hides from view, not from effect.
 *
 * @param id its name
 * @param when when it is active
 * @param covers what it makes of each trait it covers
 * @param over the masks that give way where both are active and disagree
 * @param evidence id of its evidence, if stated
 */
public record Mask(String id, Condition when, Map<String, Cover> covers, Set<String> over, Optional<String> evidence) {

    /**
     * Copies the collections.
     *
     * @param id its name
     * @param when when it is active
     * @param covers what it covers
     * @param over the masks that give way
     * @param evidence id of its evidence
     */
    public Mask {
        covers = ImmutableMap.copyOf(covers);
        over = ImmutableSet.copyOf(over);
    }

    /**
     * Returns a mask that covers nothing yet.
     *
     * @param id its name
     * @param when when it is active
     * @return the mask, to be continued with {@link #covering}
     */
    public static Mask of(String id, Condition when) {
        return new Mask(id, when, ImmutableMap.of(), ImmutableSet.of(), Optional.empty());
    }

    /**
     * Returns this mask covering a further trait with one shown state.
     *
     * @param trait id of the trait
     * @param shown the state shown whatever lies beneath
     * @return a copy
     */
    public Mask covering(String trait, String shown) {
        return covering(trait, Cover.with(shown));
    }

    /**
     * Returns this mask covering a further trait.
     *
     * @param trait id of the trait
     * @param cover what it makes of the trait
     * @return a copy
     */
    public Mask covering(String trait, Cover cover) {
        Map<String, Cover> more = new LinkedHashMap<>(covers);
        more.put(trait, cover);
        return new Mask(id, when, more, over, evidence);
    }

    /**
     * Returns this mask with the masks that give way to it.
     *
     * @param masks ids of masks
     * @return a copy
     */
    public Mask over(String... masks) {
        return new Mask(id, when, covers, ImmutableSet.copyOf(masks), evidence);
    }

    /**
     * What a mask makes of one trait: the same shown state for every own state, or a changed state for some own states.
     *
     * @param constant the state shown whatever lies beneath, if it is the same for all
     * @param changes the shown state by own state; own states not named show unchanged
     */
    public record Cover(Optional<String> constant, Map<String, String> changes) {

        /**
         * Copies the changes.
         *
         * @param constant the state shown for all
         * @param changes the shown state by own state
         */
        public Cover {
            changes = ImmutableMap.copyOf(changes);
        }

        /**
         * Shows one state whatever lies beneath.
         *
         * @param shown the state
         * @return the cover
         */
        public static Cover with(String shown) {
            return new Cover(Optional.of(shown), ImmutableMap.of());
        }

        /**
         * Changes some states and leaves the others.
         *
         * @param changes the shown state by own state
         * @return the cover
         */
        public static Cover changing(Map<String, String> changes) {
            return new Cover(Optional.empty(), changes);
        }

        /**
         * Returns the shown state of an own state.
         *
         * @param own the state beneath
         * @return the state that is seen
         */
        public String shown(String own) {
            return constant.orElseGet(() -> changes.getOrDefault(own, own));
        }
    }
}
