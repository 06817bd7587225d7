package org.geneticsrules.vocabulary;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;

/**
 * What an animal may be called, by what was seen of it.
 *
 * <p>Immutable and thread-safe.
 *
 * @param vocabulary the vocabulary asked
 * @param seen what was seen
 * @param occasion when it was seen
 * @param told what was seen of traits that can be told by then; only this counts
 * @param facets for each facet what becomes of its names, in declared order
 * @param notices what was left out or taken for granted, in sentences
 */
public record Naming(
        Vocabulary vocabulary,
        Phenotype seen,
        Occasion occasion,
        Phenotype told,
        List<InFacet> facets,
        List<String> notices) {

    /**
     * Copies the lists.
     *
     * @param vocabulary the vocabulary asked
     * @param seen what was seen
     * @param occasion when it was seen
     * @param told what counts of it
     * @param facets what becomes of the names of each facet
     * @param notices what was left out or taken for granted
     */
    public Naming {
        facets = ImmutableList.copyOf(facets);
        notices = ImmutableList.copyOf(notices);
    }

    /**
     * Finds the names of an animal.
     *
     * @param vocabulary the vocabulary; without a date on the occasion, the names in use today are meant: senses that have no end. Of a
     *     month or year any day is allowed for
     * @param seen what was seen, of some or all traits
     * @param occasion when it was seen, as far as known
     * @return every name that was in use on some day of the date, and what becomes of it
     * @throws ProblemsException if a trait, state or season is unknown, with the nearest known
     * @throws TooLargeException if the looks of a name are too many or too entangled
     */
    public static Naming of(Vocabulary vocabulary, Phenotype seen, Occasion occasion) {
        return Namer.of(vocabulary, seen, occasion);
    }

    /**
     * Returns what becomes of the names of one facet.
     *
     * @param facet id of a facet of the vocabulary
     * @return its names
     * @throws IllegalArgumentException if the vocabulary has no such facet
     */
    public InFacet facet(String facet) {
        return facets.stream()
                .filter(one -> one.facet().id().equals(facet))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("vocabulary " + vocabulary + " has no facet \"" + facet
                        + "\"; it has " + vocabulary.facets().keySet()));
    }

    /** What becomes of a name. */
    public enum Standing {
        /** Every animal that agrees with what was seen may be called so, whichever day of the date it was. */
        CERTAIN,
        /** Some animals that agree with what was seen may be called so, and that can be found out now; or all, but not on each day. */
        POSSIBLE,
        /** Nothing seen stands against it, but nobody can be called so yet. */
        TOO_EARLY,
        /** No animal that agrees with what was seen is called so on any day of the date. */
        EXCLUDED;

        /**
         * Returns the word for this standing in documents.
         *
         * @return for example {@code too early}
         */
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    /**
     * The names of one facet.
     *
     * @param facet the facet
     * @param names every name in use, in declared order
     */
    public record InFacet(Facet facet, List<OfName> names) {
        /**
         * Copies the names.
         *
         * @param facet the facet
         * @param names every name in use
         */
        public InFacet {
            names = ImmutableList.copyOf(names);
        }

        /**
         * Returns the names of one standing.
         *
         * @param standing what has become of them
         * @return names in declared order
         */
        public List<OfName> of(Standing standing) {
            return names.stream().filter(name -> name.standing() == standing).collect(ImmutableList.toImmutableList());
        }

        /**
         * Returns the most telling of the names that certainly apply: those that are not broader than another one that does.
         *
         * @return names in declared order
         */
        public List<OfName> narrowest() {
            return of(Standing.CERTAIN).stream()
                    .filter(name -> name.narrower().isEmpty())
                    .collect(ImmutableList.toImmutableList());
        }

        /**
         * Returns the nearest neighbours: of the excluded names those to which the fewest differences lead.
         *
         * @return names in declared order, each with equally many differences
         */
        public List<OfName> nearest() {
            List<OfName> excluded = of(Standing.EXCLUDED);
            int fewest = excluded.stream()
                    .mapToInt(name -> name.differences().size())
                    .min()
                    .orElse(0);
            return excluded.stream()
                    .filter(name -> name.differences().size() == fewest)
                    .collect(ImmutableList.toImmutableList());
        }
    }

    /**
     * What becomes of one name.
     *
     * @param name the name
     * @param standing what becomes of it, in any of its senses
     * @param senses the same for each sense in use on some day, by id; if there are several, the name is ambiguous
     * @param partly those of them that were in use on a part of the days only that the date allows for, by id
     * @param narrower if it certainly applies, the names of the facet that do so too and mean less, on no day more; then it is a broader
     *     name
     * @param lookAt the traits still to look at, and perhaps sex and season, in catalogue order: those on which it depends whether the
     *     name applies
     * @param lookAgain from when on all of these can be told and every open sense can be said; empty if that is so already
     * @param against if it is excluded, the fewest things seen that by themselves rule it out, in catalogue order
     * @param differences if it is excluded, what would have to be different for it to be left open; the fewest such
     */
    public record OfName(
            Name name,
            Standing standing,
            Map<String, Standing> senses,
            Set<String> partly,
            List<String> narrower,
            Set<String> lookAt,
            Optional<LifeStage> lookAgain,
            Map<String, String> against,
            List<Difference> differences) {
        /**
         * Copies the collections.
         *
         * @param name the name
         * @param standing what becomes of it
         * @param senses the same for each sense in use
         * @param partly those in use on a part of the days
         * @param narrower names that apply and mean less
         * @param lookAt the traits still to look at
         * @param lookAgain from when on all can be told
         * @param against what rules it out
         * @param differences what would have to be different
         */
        public OfName {
            senses = ImmutableMap.copyOf(senses);
            partly = ImmutableSet.copyOf(partly);
            narrower = ImmutableList.copyOf(narrower);
            lookAt = ImmutableSet.copyOf(lookAt);
            against = ImmutableMap.copyOf(against);
            differences = ImmutableList.copyOf(differences);
        }

        /**
         * Tells whether a sense is one of those by which the name certainly applies: it does so by itself, or, where none does, together with
         * the others that are left.
         *
         * @param sense id of a sense in use
         * @return false if the sense does not count, or the name is not certain
         */
        public boolean applies(String sense) {
            Standing counts = senses.containsValue(Standing.CERTAIN) ? Standing.CERTAIN : Standing.POSSIBLE;
            return standing == Standing.CERTAIN && senses.get(sense) == counts;
        }

        /**
         * Returns what is noted of the name and of its senses that are not excluded.
         *
         * @return notes, each once
         */
        public List<String> notes() {
            return Stream.concat(
                            name.note().stream(),
                            senses.entrySet().stream()
                                    .filter(sense -> sense.getValue() != Standing.EXCLUDED)
                                    .flatMap(sense ->
                                            Objects.requireNonNull(name.senses().get(sense.getKey())).note().stream()))
                    .distinct()
                    .collect(ImmutableList.toImmutableList());
        }

        /**
         * Tells whether several senses are in use, so that who hears the name cannot tell which is meant.
         *
         * @return true if there is more than one
         */
        public boolean isAmbiguous() {
            return senses.size() > 1;
        }
    }

    /**
     * Something seen that a name does not allow.
     *
     * @param trait a trait, or {@code sex} or {@code season}
     * @param seen what was seen
     * @param needed what the name needs instead: any of these, in declared order
     */
    public record Difference(String trait, String seen, List<String> needed) {
        /**
         * Copies the states.
         *
         * @param trait the trait
         * @param seen what was seen
         * @param needed what the name needs
         */
        public Difference {
            needed = ImmutableList.copyOf(needed);
        }
    }
}
