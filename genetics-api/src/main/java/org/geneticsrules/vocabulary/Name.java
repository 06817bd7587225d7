package org.geneticsrules.vocabulary;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A word or phrase that people say of an animal, with all it has meant.
 *
 * <p>A name that has several senses at one time is <i>ambiguous</i>: who hears it cannot tell which is meant.
 *
 * <p>Immutable and thread-safe.
 *
 * @param word the word or phrase itself, as it is written in the language of the vocabulary
 * @param facet id of the facet that it speaks of
 * @param synonyms further words for the same, in declared order
 * @param note what else there is to know
 * @param evidence id of the evidence for all senses that state none of their own
 * @param senses its senses by id, in declared order
 */
public record Name(
        String word,
        String facet,
        List<String> synonyms,
        Optional<String> note,
        Optional<String> evidence,
        Map<String, Sense> senses) {

    /**
     * Copies the synonyms and senses.
     *
     * @param word the word or phrase
     * @param facet id of its facet
     * @param synonyms further words for the same
     * @param note a note
     * @param evidence id of the evidence
     * @param senses its senses by id
     */
    public Name {
        synonyms = ImmutableList.copyOf(synonyms);
        senses = ImmutableMap.copyOf(senses);
    }

    /**
     * Returns a name without senses.
     *
     * @param word the word or phrase
     * @param facet id of its facet
     * @return the name
     */
    public static Name of(String word, String facet) {
        return new Name(word, facet, List.of(), Optional.empty(), Optional.empty(), Map.of());
    }

    /**
     * Returns this name with a further sense.
     *
     * @param sense the sense
     * @return a copy
     * @throws IllegalArgumentException if there is a sense of this id already
     */
    public Name withSense(Sense sense) {
        Map<String, Sense> more = new LinkedHashMap<>(senses);
        if (more.put(sense.id(), sense) != null) {
            throw new IllegalArgumentException("\"" + word + "\" has a sense \"" + sense.id() + "\" already");
        }
        return new Name(word, facet, synonyms, note, evidence, more);
    }

    /**
     * Returns this name with other synonyms.
     *
     * @param words further words for the same
     * @return a copy
     */
    public Name withSynonyms(String... words) {
        return new Name(word, facet, List.of(words), note, evidence, senses);
    }

    /**
     * Returns this name with a note.
     *
     * @param text the note
     * @return a copy
     */
    public Name withNote(String text) {
        return new Name(word, facet, synonyms, Optional.of(text), evidence, senses);
    }

    /**
     * Returns this name with evidence for all senses that state none of their own.
     *
     * @param support id of the evidence
     * @return a copy
     */
    public Name withEvidence(String support) {
        return new Name(word, facet, synonyms, note, Optional.of(support), senses);
    }

    /**
     * Returns every word for it.
     *
     * @return the word itself, then the synonyms
     */
    public List<String> words() {
        return ImmutableList.<String>builder().add(word).addAll(synonyms).build();
    }

    /**
     * Returns the senses in which the name is used.
     *
     * @param date a day, or a month or year: then the senses used on any day of it are meant; without a date, those that have no end
     * @return senses in declared order; none if nobody says so then, several if the name may be ambiguous then
     */
    public List<Sense> inUse(Optional<PartialDate> date) {
        return senses.values().stream()
                .filter(sense -> sense.period().meets(date))
                .collect(ImmutableList.toImmutableList());
    }

    /** Returns the word. */
    @Override
    public String toString() {
        return word;
    }
}
