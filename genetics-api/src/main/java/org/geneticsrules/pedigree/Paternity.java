package org.geneticsrules.pedigree;

import com.google.common.collect.ImmutableList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.probability.Probability;

/**
 * What is recorded of the sire of a litter.
 *
 * <p>Immutable and thread-safe.
 */
public sealed interface Paternity {

    /** Nothing is recorded: one male of whom nothing is known sired the litter. */
    record Unknown() implements Paternity {
        /** Returns {@code unknown}. */
        @Override
        public String toString() {
            return "unknown";
        }
    }

    /**
     * One recorded male sired the litter.
     *
     * @param sire his id
     */
    record Known(String sire) implements Paternity {
        /**
         * Checks the id.
         *
         * @param sire his id
         * @throws IllegalArgumentException if it is no id
         */
        public Known {
            Ids.check("a sire", sire);
        }

        /** Returns the id. */
        @Override
        public String toString() {
            return sire;
        }
    }

    /**
     * Several males had access to the dam.
     *
     * @param candidates the males, at least one, with shares that sum to 1
     * @param perKit true if each kit has a sire of its own, each drawn by the shares; false if one male sired the whole litter
     */
    record Candidates(List<Candidate> candidates, boolean perKit) implements Paternity {
        /**
         * Checks the shares.
         *
         * @param candidates the males with their shares
         * @param perKit whether each kit has a sire of its own
         * @throws IllegalArgumentException if there is none, one is named twice, or the shares do not sum to 1
         */
        public Candidates {
            candidates = ImmutableList.copyOf(candidates);
            if (candidates.isEmpty()) {
                throw new IllegalArgumentException("candidate sires need at least one male");
            }
            Set<Object> seen = new HashSet<>();
            for (Candidate candidate : candidates) {
                if (!seen.add(candidate.male().isPresent() ? candidate.male() : List.of(candidate.population()))) {
                    throw new IllegalArgumentException("the candidate sire " + candidate.name() + " is named twice");
                }
            }
            String total =
                    Probability.total(candidates.stream().map(Candidate::share).toList());
            if (!total.equals("1")) {
                throw new IllegalArgumentException(
                        "the shares of the candidate sires must sum to 1, but sum to " + total);
            }
        }

        /** Returns the candidates with their shares. */
        @Override
        public String toString() {
            return candidates + (perKit ? " for each kit" : " for the litter");
        }
    }

    /**
     * A male who may be the sire.
     *
     * @param male his id; empty for a male who is not recorded, whose parents are unknown and who sired no other litter
     * @param population id of the population that an unrecorded male comes from, if stated; empty for a recorded male
     * @param share the chance that he is the sire, of the litter or of each kit, more than 0
     */
    record Candidate(Optional<String> male, Optional<String> population, Probability share) {
        /**
         * Checks what is stated.
         *
         * @param male his id
         * @param population id of the population of an unrecorded male
         * @param share the chance that he is the sire
         * @throws IllegalArgumentException if an id is none, a population is stated of a recorded male, or the share is 0
         */
        public Candidate {
            male.ifPresent(id -> Ids.check("a candidate sire", id));
            population.ifPresent(origin -> Ids.check("a population", origin));
            if (male.isPresent() && population.isPresent()) {
                throw new IllegalArgumentException("only a male who is not recorded is given a population");
            }
            if (share.isZero()) {
                throw new IllegalArgumentException("a male whose share is 0 is no candidate");
            }
        }

        /**
         * Returns a recorded male.
         *
         * @param id his id
         * @param share the chance that he is the sire
         * @return the candidate
         */
        public static Candidate of(String id, Probability share) {
            return new Candidate(Optional.of(id), Optional.empty(), share);
        }

        /**
         * Returns a male who is not recorded.
         *
         * @param population id of the population that he comes from
         * @param share the chance that he is the sire
         * @return the candidate
         */
        public static Candidate unrecorded(String population, Probability share) {
            return new Candidate(Optional.empty(), Optional.of(population), share);
        }

        private String name() {
            return male.orElseGet(() -> population.map(from -> "from " + from).orElse("who is not recorded"));
        }

        /** Returns who he is and his share. */
        @Override
        public String toString() {
            return name() + " " + share;
        }
    }

    /**
     * Returns that nothing is recorded.
     *
     * @return an unknown sire
     */
    static Paternity unknown() {
        return new Unknown();
    }

    /**
     * Returns that one recorded male is the sire.
     *
     * @param sire his id
     * @return a sire beyond doubt
     */
    static Paternity of(String sire) {
        return new Known(sire);
    }

    /**
     * Returns that one of several males sired the whole litter.
     *
     * @param candidates the males with their shares
     * @return the candidates
     * @throws IllegalArgumentException if the shares do not sum to 1
     */
    static Paternity oneOf(Candidate... candidates) {
        return new Candidates(ImmutableList.copyOf(candidates), false);
    }

    /**
     * Returns that each kit was sired by one of several males.
     *
     * @param candidates the males with their shares
     * @return the candidates
     * @throws IllegalArgumentException if the shares do not sum to 1
     */
    static Paternity perKit(Candidate... candidates) {
        return new Candidates(ImmutableList.copyOf(candidates), true);
    }

    /**
     * Returns every recorded male who may be the sire.
     *
     * @return ids in the order stated; none if nothing is recorded
     */
    default List<String> males() {
        if (this instanceof Known known) {
            return ImmutableList.of(known.sire());
        }
        if (this instanceof Candidates several) {
            return several.candidates().stream()
                    .flatMap(candidate -> candidate.male().stream())
                    .collect(ImmutableList.toImmutableList());
        }
        return ImmutableList.of();
    }
}
