package org.geneticsrules.pedigree;

import com.google.common.collect.ImmutableList;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.trait.Sex;

/**
 * An animal, and what is recorded of it.
 *
 * <p>Its id is opaque: it tells nothing by itself and is compared letter by letter. There is no place for owners, breeders or the numbers
 * of chips, which are personal data; whoever needs them keeps them elsewhere under the same id. Who looked may be recorded with an
 * {@link Observation}, since it matters where looks are compared; it is not copied into answers.
 *
 * <p>Who its parents are is told by its {@link Litter}.
 *
 * @param id its id: 1 to 80 characters without control characters, not beginning or ending with a blank, not beginning with {@code x-}
 * @param sex its sex, if recorded
 * @param born its date of birth, if recorded; in a litter with a date that date stands for it where it is not recorded here
 * @param population id of the population that a parent not recorded comes from, or the animal itself if it is a founder; if stated
 * @param observations what it looked like, in the order recorded
 * @param names what it was called, in the order recorded; they are evidence once {@link NamedRecords} has read them
 * @param tests what tests of loci reported, in the order recorded
 * @param hearing what hearing tests found, in the order recorded
 * @param fertility whether it can have young from now on
 */
public record Individual(
        String id,
        Optional<Sex> sex,
        Optional<LocalDate> born,
        Optional<String> population,
        List<Observation> observations,
        List<CalledName> names,
        List<GenotypeTest> tests,
        List<HearingTest> hearing,
        Fertility fertility) {

    /**
     * Checks the id and copies the records.
     *
     * @param id its id
     * @param sex its sex
     * @param born its date of birth
     * @param population id of a population
     * @param observations what it looked like
     * @param names what it was called
     * @param tests what tests of loci reported
     * @param hearing what hearing tests found
     * @param fertility whether it can have young
     * @throws IllegalArgumentException if the id, or that of the population, is not one
     */
    public Individual {
        Ids.check("an individual", id);
        population.ifPresent(origin -> Ids.check("a population", origin));
        observations = ImmutableList.copyOf(observations);
        names = ImmutableList.copyOf(names);
        tests = ImmutableList.copyOf(tests);
        hearing = ImmutableList.copyOf(hearing);
    }

    /**
     * Tells whether a text can be the id of an individual or a litter.
     *
     * @param text a text
     * @return true if it is 1 to 80 characters without control characters, neither begins nor ends with a blank, and does not begin with
     *     {@code x-}, which documents leave to their authors' own use
     */
    public static boolean isId(String text) {
        return Ids.isId(text);
    }

    /**
     * Returns an individual of whom nothing is recorded.
     *
     * @param id its id
     * @return the individual
     * @throws IllegalArgumentException if the id is not one
     */
    public static Individual of(String id) {
        return new Individual(
                id,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                ImmutableList.of(),
                ImmutableList.of(),
                ImmutableList.of(),
                ImmutableList.of(),
                Fertility.UNKNOWN);
    }

    /**
     * Returns an individual of known sex of whom nothing else is recorded.
     *
     * @param id its id
     * @param sex its sex
     * @return the individual
     * @throws IllegalArgumentException if the id is not one
     */
    public static Individual of(String id, Sex sex) {
        return of(id).with(sex);
    }

    /**
     * Returns this individual with a sex.
     *
     * @param stated the sex
     * @return a copy
     */
    public Individual with(Sex stated) {
        return new Individual(
                id, Optional.of(stated), born, population, observations, names, tests, hearing, fertility);
    }

    /**
     * Returns this individual with a date of birth.
     *
     * @param date the date
     * @return a copy
     */
    public Individual bornOn(LocalDate date) {
        return new Individual(id, sex, Optional.of(date), population, observations, names, tests, hearing, fertility);
    }

    /**
     * Returns this individual with the population that it or its unrecorded parent comes from.
     *
     * @param stated id of a population
     * @return a copy
     * @throws IllegalArgumentException if it is not spelt as ids are
     */
    public Individual from(String stated) {
        return new Individual(id, sex, born, Optional.of(stated), observations, names, tests, hearing, fertility);
    }

    /**
     * Returns this individual with one more observation.
     *
     * @param seen what was observed
     * @return a copy
     */
    public Individual with(Observation seen) {
        return new Individual(
                id, sex, born, population, appended(observations, seen), names, tests, hearing, fertility);
    }

    /**
     * Returns this individual with one more name that it was called.
     *
     * @param called the name
     * @return a copy
     */
    public Individual with(CalledName called) {
        return new Individual(
                id, sex, born, population, observations, appended(names, called), tests, hearing, fertility);
    }

    /** This individual without what was read from its names. */
    Individual withoutReadNames() {
        List<Observation> seen =
                observations.stream().filter(one -> one.name().isEmpty()).toList();
        return new Individual(id, sex, born, population, seen, names, tests, hearing, fertility);
    }

    /**
     * Returns this individual with one more test of a locus.
     *
     * @param test what was reported
     * @return a copy
     */
    public Individual with(GenotypeTest test) {
        return new Individual(
                id, sex, born, population, observations, names, appended(tests, test), hearing, fertility);
    }

    /**
     * Returns this individual with one more hearing test.
     *
     * @param test what was found
     * @return a copy
     */
    public Individual with(HearingTest test) {
        return new Individual(
                id, sex, born, population, observations, names, tests, appended(hearing, test), fertility);
    }

    /**
     * Returns this individual with another fertility.
     *
     * @param status whether it can have young from now on
     * @return a copy
     */
    public Individual with(Fertility status) {
        return new Individual(id, sex, born, population, observations, names, tests, hearing, status);
    }

    private static <T> List<T> appended(List<T> list, T item) {
        return ImmutableList.<T>builder().addAll(list).add(item).build();
    }
}
