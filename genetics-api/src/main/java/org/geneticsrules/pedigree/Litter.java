package org.geneticsrules.pedigree;

import com.google.common.collect.ImmutableList;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The young that one dam bore at one time.
 *
 * <p>Kits are listed where something is recorded of them; the counts say how many there were. A kit was <i>scored</i> if it lived until
 * somebody looked at its coat.
 *
 * @param id its id, spelt as those of individuals are
 * @param dam id of the mother, if recorded
 * @param sires who the sire is or may be
 * @param born the date of birth, if recorded
 * @param bornCount number of kits born, if recorded
 * @param scoredCount number of kits scored, if recorded
 * @param fosterDam id of a female who raised the litter but did not bear it; it inherits nothing from her
 * @param kits ids of the kits that are recorded, in the order stated
 * @param ascertainment how it came to be among these records
 */
public record Litter(
        String id,
        Optional<String> dam,
        Paternity sires,
        Optional<LocalDate> born,
        OptionalInt bornCount,
        OptionalInt scoredCount,
        Optional<String> fosterDam,
        List<String> kits,
        Ascertainment ascertainment) {

    /**
     * Checks the ids and copies the kits.
     *
     * @param id its id
     * @param dam id of the mother
     * @param sires who the sire is
     * @param born the date of birth
     * @param bornCount number of kits born
     * @param scoredCount number of kits scored
     * @param fosterDam id of a foster dam
     * @param kits ids of the kits
     * @param ascertainment how it came to be recorded
     * @throws IllegalArgumentException if an id is none, or a count is negative
     */
    public Litter {
        Ids.check("a litter", id);
        dam.ifPresent(mother -> Ids.check("a dam", mother));
        fosterDam.ifPresent(mother -> Ids.check("a foster dam", mother));
        kits = ImmutableList.copyOf(kits);
        kits.forEach(kit -> Ids.check("a kit", kit));
        if (bornCount.orElse(0) < 0 || scoredCount.orElse(0) < 0) {
            throw new IllegalArgumentException("litter \"" + id + "\" has a negative count");
        }
    }

    /**
     * Makes a litter of which nobody wrote down how it came to be recorded.
     *
     * @param id its id
     * @param dam id of the mother
     * @param sires who the sire is
     * @param born the date of birth
     * @param bornCount number of kits born
     * @param scoredCount number of kits scored
     * @param fosterDam id of a foster dam
     * @param kits ids of the kits
     * @throws IllegalArgumentException if an id is none, or a count is negative
     */
    public Litter(
            String id,
            Optional<String> dam,
            Paternity sires,
            Optional<LocalDate> born,
            OptionalInt bornCount,
            OptionalInt scoredCount,
            Optional<String> fosterDam,
            List<String> kits) {
        this(id, dam, sires, born, bornCount, scoredCount, fosterDam, kits, Ascertainment.unknown());
    }

    /**
     * Returns a litter of known parents.
     *
     * @param id its id
     * @param dam id of the mother
     * @param sire id of the father
     * @param kits ids of the kits
     * @return the litter
     */
    public static Litter of(String id, String dam, String sire, String... kits) {
        return of(id, Optional.of(dam), Paternity.of(sire), kits);
    }

    /**
     * Returns a litter.
     *
     * @param id its id
     * @param dam id of the mother, if recorded
     * @param sires who the sire is or may be
     * @param kits ids of the kits
     * @return the litter
     */
    public static Litter of(String id, Optional<String> dam, Paternity sires, String... kits) {
        return new Litter(
                id,
                dam,
                sires,
                Optional.empty(),
                OptionalInt.empty(),
                OptionalInt.empty(),
                Optional.empty(),
                Arrays.asList(kits));
    }

    /**
     * Returns this litter with a date of birth.
     *
     * @param date the date
     * @return a copy
     */
    public Litter bornOn(LocalDate date) {
        return new Litter(id, dam, sires, Optional.of(date), bornCount, scoredCount, fosterDam, kits, ascertainment);
    }

    /**
     * Returns this litter with counts.
     *
     * @param bornKits number of kits born
     * @param scoredKits number of kits scored
     * @return a copy
     */
    public Litter counting(int bornKits, int scoredKits) {
        return new Litter(
                id,
                dam,
                sires,
                born,
                OptionalInt.of(bornKits),
                OptionalInt.of(scoredKits),
                fosterDam,
                kits,
                ascertainment);
    }

    /**
     * Returns this litter with a foster dam.
     *
     * @param female her id
     * @return a copy
     */
    public Litter raisedBy(String female) {
        return new Litter(id, dam, sires, born, bornCount, scoredCount, Optional.of(female), kits, ascertainment);
    }

    /**
     * Returns this litter with other sires.
     *
     * @param paternity who the sire is or may be
     * @return a copy
     */
    public Litter with(Paternity paternity) {
        return new Litter(id, dam, paternity, born, bornCount, scoredCount, fosterDam, kits, ascertainment);
    }

    /**
     * Returns this litter with how it came to be recorded.
     *
     * @param how how it came to be among these records
     * @return a copy
     */
    public Litter with(Ascertainment how) {
        return new Litter(id, dam, sires, born, bornCount, scoredCount, fosterDam, kits, how);
    }
}
