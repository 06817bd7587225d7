package org.geneticsrules.vocabulary;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.BoxSet;

/**
 * What an animal that was called something is to be called in another vocabulary, or in the same at another time.
 *
 * <p>Immutable and thread-safe.
 *
 * @param names what the animal was called: one name, or several that make up the name of the whole coat
 * @param target the vocabulary asked
 * @param date the day on which the new names are used, or a month or year; without one, today
 * @param meaning what all the names say together
 * @param candidates what it may be called, with one name for each facet that has any: exact ones first, then broader, narrower and
 *     overlapping ones, and of these the nearest in meaning first
 * @param uncovered by facet of the target, the part of the meaning for which that facet has no name
 */
public record Conversion(
        List<Meaning> names,
        Vocabulary target,
        Optional<PartialDate> date,
        BoxSet meaning,
        List<Candidate> candidates,
        Map<String, BoxSet> uncovered) {

    /**
     * Copies the collections.
     *
     * @param names what the animal was called
     * @param target the vocabulary asked
     * @param date when the new names are used
     * @param meaning what the names say together
     * @param candidates what it may be called
     * @param uncovered what has no name
     */
    public Conversion {
        names = ImmutableList.copyOf(names);
        candidates = ImmutableList.copyOf(candidates);
        uncovered = ImmutableMap.copyOf(uncovered);
    }

    /**
     * Converts names within the facets that they speak of.
     *
     * @param names at least one name of an animal; all their vocabularies have the catalogue of the target
     * @param target the vocabulary asked, which has facets of the same ids
     * @param date the day on which the new names are used, or a month or year: senses used on any day of it; without a date, today: senses
     *     that have no end
     * @return the conversion
     * @throws ProblemsException if the target is about another catalogue or has no such facet, or no animal can have all the names
     * @throws TooLargeException if there are more than 1,000 candidates
     * @throws IllegalArgumentException if there is no name
     */
    public static Conversion of(List<Meaning> names, Vocabulary target, Optional<PartialDate> date) {
        return Converter.of(
                names, target, names.stream().map(Meaning::facet).distinct().toList(), date);
    }

    /**
     * Converts names into those of given facets.
     *
     * @param names at least one name of an animal; all their vocabularies have the catalogue of the target
     * @param target the vocabulary asked
     * @param facets ids of facets of the target, of which candidates are made
     * @param date the day on which the new names are used, or a month or year: senses used on any day of it; without a date, today: senses
     *     that have no end
     * @return the conversion
     * @throws ProblemsException if the target is about another catalogue or has no such facet, or no animal can have all the names
     * @throws TooLargeException if there are more than 1,000 candidates
     * @throws IllegalArgumentException if there is no name or no facet
     */
    public static Conversion of(
            List<Meaning> names, Vocabulary target, List<String> facets, Optional<PartialDate> date) {
        return Converter.of(names, target, facets, date);
    }

    /**
     * Tells whether something is lost or gained whatever candidate is taken.
     *
     * @return true if no candidate means exactly the same
     */
    public boolean isLossy() {
        return candidates.stream().noneMatch(candidate -> candidate.match() == Match.EXACT);
    }

    /**
     * Returns what is weak about the new names.
     *
     * @return a sentence if which day is not known, and a sense of a candidate was in use on a part of the days only
     */
    public List<String> notices() {
        return PartOfDate.notice(
                        date,
                        candidates.stream()
                                .flatMap(candidate -> candidate.names().stream())
                                .flatMap(name ->
                                        name.inUse(date).stream().map(sense -> new Meaning.Reading(name, sense)))
                                .toList())
                .stream()
                .toList();
    }

    /**
     * What the animal may be called.
     *
     * @param names one name for each facet that has any, in the order of the facets asked for
     * @param match how what they mean together stands to what was said: broader if they mean more, and so on
     * @param alsoMeans what they mean although it was not said: this is lost if they are written down instead
     * @param leavesOut what was said although they do not mean it: an animal that looks so must not be called so
     */
    public record Candidate(List<Name> names, Match match, BoxSet alsoMeans, BoxSet leavesOut) {
        /**
         * Copies the names.
         *
         * @param names one name for each facet
         * @param match how they stand to what was said
         * @param alsoMeans what they mean besides
         * @param leavesOut what they do not mean
         */
        public Candidate {
            names = ImmutableList.copyOf(names);
        }

        /**
         * Tells whether something is lost or gained.
         *
         * @return true unless both mean the same
         */
        public boolean isLossy() {
            return match != Match.EXACT;
        }
    }
}
