package org.geneticsrules.pedigree;

import com.google.common.collect.ImmutableSet;
import java.time.LocalDate;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.PlainWords;
import org.geneticsrules.vocabulary.PartialDate;

/**
 * What was recorded of an individual at one look.
 *
 * <p>Several looks mean that it showed <i>one of these</i>: whoever recorded it could not decide, or used a name that covers several. They
 * all speak of the same traits, so that no two can be true at once. A trait that none of them names was not recorded.
 *
 * <p>Who looked is personal data: it is kept with the record and written into documents and tables, and never into answers.
 *
 * @param date when it was looked at, if recorded
 * @param stage how old it was and in which season, as far as recorded
 * @param looks what it showed, or each thing it may have shown, in the order stated
 * @param light the light it was seen in, by the catalogue's word for it, if recorded
 * @param observer who looked, if recorded; spelt as ids are
 * @param name the name that the looks were read from, if they were not written down as looks; see {@link NamedRecords}
 */
public record Observation(
        Optional<LocalDate> date,
        LifeStage stage,
        Set<Phenotype> looks,
        Optional<String> light,
        Optional<String> observer,
        Optional<CalledName> name) {

    /**
     * Checks and copies the looks.
     *
     * @param date when it was looked at
     * @param stage how old it was
     * @param looks what it showed
     * @param light the light it was seen in
     * @param observer who looked
     * @param name the name that the looks were read from
     * @throws IllegalArgumentException if there is no look, one names no trait, two name different traits, a name or the light is not
     *     made of plain words, or the observer is not spelt as ids are
     */
    public Observation {
        looks = ImmutableSet.copyOf(looks);
        if (looks.isEmpty() || looks.iterator().next().traits().isEmpty()) {
            throw new IllegalArgumentException("an observation names a state of at least one trait, but had " + looks);
        }
        Set<String> traits = looks.iterator().next().traits();
        for (Phenotype look : looks) {
            if (!look.traits().equals(traits)) {
                throw new IllegalArgumentException(
                        "looks of which one was seen must all speak of the same traits, but \""
                                + looks.iterator().next() + "\" and \"" + look + "\" do not");
            }
            look.asMap().forEach((trait, state) -> {
                if (!PlainWords.are(trait) || !PlainWords.are(state)) {
                    throw new IllegalArgumentException(
                            "traits and states are named by plain words, but not \"" + trait + ": " + state + "\"");
                }
            });
        }
        light.filter(word -> !PlainWords.are(word)).ifPresent(word -> {
            throw new IllegalArgumentException("a light is named by plain words, but not \"" + word + "\"");
        });
        observer.ifPresent(who -> Ids.check("an observer", who));
    }

    /**
     * Makes an observation of which light and observer are not recorded.
     *
     * @param date when it was looked at
     * @param stage how old it was
     * @param looks what it showed
     * @throws IllegalArgumentException if there is no look, one names no trait, two name different traits, or a name is
     *     not made of plain words
     */
    public Observation(Optional<LocalDate> date, LifeStage stage, Set<Phenotype> looks) {
        this(date, stage, looks, Optional.empty(), Optional.empty(), Optional.empty());
    }

    /**
     * Returns an observation without a date.
     *
     * @param stage how old it was, as far as recorded
     * @param look what it showed
     * @return the observation
     */
    public static Observation of(LifeStage stage, Phenotype look) {
        return new Observation(Optional.empty(), stage, ImmutableSet.of(look));
    }

    /** What a name says of the look, on the occasion on which it was said. */
    static Observation read(CalledName name, Set<Phenotype> looks) {
        return new Observation(
                name.date().flatMap(PartialDate::exact),
                name.stage(),
                looks,
                name.light(),
                name.observer(),
                Optional.of(name));
    }

    /**
     * Returns this observation in a light.
     *
     * @param word the catalogue's word for it
     * @return a copy
     * @throws IllegalArgumentException if it is not made of plain words
     */
    public Observation in(String word) {
        return new Observation(date, stage, looks, Optional.of(word), observer, name);
    }

    /**
     * Returns this observation as one by somebody.
     *
     * @param who who looked
     * @return a copy
     * @throws IllegalArgumentException if it is not spelt as ids are, see {@link Individual#isId}
     */
    public Observation by(String who) {
        return new Observation(date, stage, looks, light, Optional.of(who), name);
    }

    /**
     * Returns the traits that were recorded.
     *
     * @return ids of traits, in the order of the first look
     */
    public Set<String> traits() {
        return looks.iterator().next().traits();
    }

    /** Returns the looks, when and in which light they were seen, and the name that they were read from; not who looked. */
    @Override
    public String toString() {
        return looks.stream().map(Phenotype::toString).collect(Collectors.joining(" or "))
                + date.map(day -> ", " + day).orElse("")
                + (stage.equals(LifeStage.unstated()) ? "" : ", at " + stage)
                + light.map(word -> ", in " + word).orElse("")
                + name.map(said -> ", read from " + said).orElse("");
    }
}
