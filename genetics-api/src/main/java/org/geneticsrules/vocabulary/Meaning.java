package org.geneticsrules.vocabulary;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.BoxSet;
import org.geneticsrules.trait.Phenotype;

/**
 * What a name says of an animal that was called so on some occasion.
 *
 * <pre>{@code
 * Meaning sandy = Meaning.of(names, "Champagne", Occasion.unstated().on(LocalDate.of(1998, 11, 2)));
 * sandy.evidence().ifPresent(looks -> new Observation(date, stage, looks));
 * }</pre>
 *
 * <p>An ambiguous name means any of its senses, and a name without a date any sense that it ever had: who wrote it down cannot be asked.
 *
 * <p>Immutable and thread-safe.
 */
public final class Meaning {

    /** More phenotypes than this are no record that an engine should carry. */
    private static final int MOST_LOOKS = 10_000;

    private final Vocabulary vocabulary;
    private final String word;
    private final Occasion occasion;
    private final ImmutableList<Reading> readings;
    private final BoxSet set;
    private final BoxSet told;
    private final ImmutableList<String> weak;
    private final ImmutableList<String> takenAsTold;

    /**
     * One thing that the name may have meant.
     *
     * @param name the name for which the word stands
     * @param sense one of its senses
     */
    public record Reading(Name name, Sense sense) {}

    Meaning(
            Vocabulary vocabulary,
            String word,
            Occasion occasion,
            List<Reading> readings,
            BoxSet set,
            BoxSet told,
            List<String> weak,
            List<String> takenAsTold) {
        this.vocabulary = vocabulary;
        this.word = word;
        this.occasion = occasion;
        this.readings = ImmutableList.copyOf(readings);
        this.set = set;
        this.told = told;
        this.weak = ImmutableList.copyOf(weak);
        this.takenAsTold = ImmutableList.copyOf(takenAsTold);
    }

    /**
     * Finds the meaning of a name.
     *
     * @param vocabulary the vocabulary of whoever said it
     * @param word the name or a synonym; capitals and blanks do not matter
     * @param occasion when it was said of which kind of animal, as far as known
     * @return its meaning
     * @throws ProblemsException if the name is unknown, with the nearest known, was not in use on the date, or stands for names of
     *     several facets; or the season is unknown
     */
    public static Meaning of(Vocabulary vocabulary, String word, Occasion occasion) {
        return Interpreter.meaning(vocabulary, List.of(), word, occasion);
    }

    /**
     * Finds the meaning of a name of one facet.
     *
     * @param vocabulary the vocabulary of whoever said it
     * @param facet id of the facet that is spoken of
     * @param word the name or a synonym; capitals and blanks do not matter
     * @param occasion when it was said of which kind of animal, as far as known
     * @return its meaning
     * @throws ProblemsException if the facet or, in it, the name is unknown, with the nearest known, or it was not in use on the date; or
     *     the season is unknown
     */
    public static Meaning of(Vocabulary vocabulary, String facet, String word, Occasion occasion) {
        return Interpreter.meaning(vocabulary, List.of(facet), word, occasion);
    }

    /**
     * Finds the meaning of a name of one of some facets.
     *
     * @param vocabulary the vocabulary of whoever said it
     * @param facets ids of the facets that may be spoken of; if there are none, any
     * @param word the name or a synonym; capitals and blanks do not matter
     * @param occasion when it was said of which kind of animal, as far as known
     * @return its meaning
     * @throws ProblemsException if a facet or, in them, the name is unknown, with the nearest known, was not in use on the date, or stands
     *     for names of several of the facets; or the season is unknown
     */
    public static Meaning of(Vocabulary vocabulary, Collection<String> facets, String word, Occasion occasion) {
        return Interpreter.meaning(vocabulary, facets, word, occasion);
    }

    /**
     * Returns the vocabulary.
     *
     * @return the vocabulary of whoever said the name
     */
    public Vocabulary vocabulary() {
        return vocabulary;
    }

    /**
     * Returns the word that was said.
     *
     * @return the word as it was given
     */
    public String word() {
        return word;
    }

    /**
     * Returns the occasion.
     *
     * @return when it was said
     */
    public Occasion occasion() {
        return occasion;
    }

    /**
     * Returns all that the word may have meant on the occasion.
     *
     * @return names with one of their senses, in declared order; all of one facet
     */
    public List<Reading> readings() {
        return readings;
    }

    /**
     * Returns the facet spoken of.
     *
     * @return id of the facet
     */
    public String facet() {
        return readings.get(0).name().facet();
    }

    /**
     * Returns all that may be called so on the occasion, in any of the readings.
     *
     * @return a set in the vocabulary's space; empty if nobody is called so in the season, or of the sex, that is known
     */
    public BoxSet set() {
        return set;
    }

    /**
     * Returns what is weak about the name as evidence.
     *
     * @return sentences: that date, season or stage are not known, that the name is ambiguous, or that it was said too early
     */
    public List<String> notices() {
        return ImmutableList.<String>builder().addAll(weak).addAll(takenAsTold).build();
    }

    /**
     * Returns what is weak about the name itself: of the notices all but those that a trait is taken to have been told at a stage that
     * does not say so, which is asked of every record of looks alike.
     *
     * @return sentences, of {@link #notices}
     */
    public List<String> weaknesses() {
        return weak;
    }

    /**
     * Returns the name as a record of looks, of which the animal had one. It speaks of no more traits than the name does, and of none that
     * could not be told at the stage.
     *
     * @return the looks that the name covers, in catalogue order, all of the same traits; empty if the name says nothing of the animal
     * @throws TooLargeException if the name covers more than 10,000
     */
    public Optional<Set<Phenotype>> evidence() {
        Set<String> traits = vocabulary.traitSpace().decisive(told);
        if (traits.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(
                ImmutableSet.copyOf(Interpreter.phenotypes(told, ImmutableList.copyOf(traits), word, MOST_LOOKS)));
    }

    /** Returns the word and what it covers. */
    @Override
    public String toString() {
        return "\"" + word + "\": " + set;
    }
}
