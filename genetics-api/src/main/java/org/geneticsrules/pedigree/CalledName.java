package org.geneticsrules.pedigree;

import java.time.LocalDate;
import java.util.Optional;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.PlainWords;
import org.geneticsrules.vocabulary.PartialDate;

/**
 * A name that somebody called an animal by, kept as it was written: a word, and whose word it is. What it says of the look is found out
 * by {@link NamedRecords}, and may change as more becomes known of how people spoke; the record does not.
 *
 * <pre>{@code
 * Individual jill = Individual.of("Juniper")
 *         .with(CalledName.of("sandy", "British Isles").on(LocalDate.of(1998, 11, 2)).at(LifeStage.atMoult(2)));
 * }</pre>
 *
 * @param word the name, as written: spelt as ids are
 * @param vocabulary whose name it is: id of a vocabulary, the last part of its id, or its region; spelt as ids are
 * @param facet id of the facet of the vocabulary that is spoken of, if stated; needed where a word names several things
 * @param date when it was said, as far as recorded: a day, a month or a year
 * @param stage how old the animal was and in which season, as far as recorded
 * @param light the light the animal was looked at in, if recorded
 * @param observer who said it, if recorded; personal data that is kept here and never copied into answers; spelt as ids are
 */
public record CalledName(
        String word,
        String vocabulary,
        Optional<String> facet,
        Optional<PartialDate> date,
        LifeStage stage,
        Optional<String> light,
        Optional<String> observer) {

    /**
     * Checks the texts.
     *
     * @param word the name
     * @param vocabulary whose name it is
     * @param facet what is spoken of
     * @param date when it was said
     * @param stage how old the animal was
     * @param light the light it was looked at in
     * @param observer who said it
     * @throws IllegalArgumentException if word, vocabulary or observer are not spelt as ids are, or facet or light not made of plain words
     */
    public CalledName {
        Ids.check("a name", word);
        Ids.check("a vocabulary", vocabulary);
        observer.ifPresent(who -> Ids.check("an observer", who));
        plain("a facet", facet);
        plain("a light", light);
    }

    private static void plain(String what, Optional<String> stated) {
        stated.filter(text -> !PlainWords.are(text)).ifPresent(text -> {
            throw new IllegalArgumentException(what + " is named by plain words, but not \"" + text + "\"");
        });
    }

    /**
     * Returns a name of which nothing else is recorded.
     *
     * @param word the name, as written
     * @param vocabulary whose name it is
     * @return the name
     * @throws IllegalArgumentException if one is not spelt as ids are
     */
    public static CalledName of(String word, String vocabulary) {
        return new CalledName(
                word,
                vocabulary,
                Optional.empty(),
                Optional.empty(),
                LifeStage.unstated(),
                Optional.empty(),
                Optional.empty());
    }

    /**
     * Returns this name as one of a facet.
     *
     * @param stated id of a facet of the vocabulary
     * @return a copy
     */
    public CalledName ofFacet(String stated) {
        return new CalledName(word, vocabulary, Optional.of(stated), date, stage, light, observer);
    }

    /**
     * Returns this name as said on a day.
     *
     * @param day the day
     * @return a copy
     */
    public CalledName on(LocalDate day) {
        return on(PartialDate.of(day));
    }

    /**
     * Returns this name as said on a day, or on some day of a month or a year.
     *
     * @param when the date, as far as it is known
     * @return a copy
     */
    public CalledName on(PartialDate when) {
        return new CalledName(word, vocabulary, facet, Optional.of(when), stage, light, observer);
    }

    /**
     * Returns this name as said at a stage of life.
     *
     * @param when how old the animal was and in which season
     * @return a copy
     */
    public CalledName at(LifeStage when) {
        return new CalledName(word, vocabulary, facet, date, when, light, observer);
    }

    /**
     * Returns this name as said in a light.
     *
     * @param stated the catalogue's word for the light
     * @return a copy
     */
    public CalledName in(String stated) {
        return new CalledName(word, vocabulary, facet, date, stage, Optional.of(stated), observer);
    }

    /**
     * Returns this name as said by somebody.
     *
     * @param who who said it
     * @return a copy
     */
    public CalledName by(String who) {
        return new CalledName(word, vocabulary, facet, date, stage, light, Optional.of(who));
    }

    /** Returns the word in quotes, whose it is, and when it was said; not who said it. */
    @Override
    public String toString() {
        return "\"" + word + "\" (" + vocabulary + facet.map(of -> ", " + of).orElse("")
                + date.map(day -> ", " + day).orElse("")
                + (stage.equals(LifeStage.unstated()) ? "" : ", at " + stage)
                + light.map(word -> ", in " + word).orElse("") + ")";
    }
}
