package org.geneticsrules.answer.recorded;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.geneticsrules.answer.HiddenAllele;

/**
 * How likely an animal is to carry an allele, before any record and after each record.
 *
 * <p>Who is related to whom, and which sex they are, is known from the start; the records added one by one are looks and tests, of the
 * animal and of all its relatives. What a single record adds depends on what is known when it comes: in another order the steps are
 * others, and the end is the same.
 *
 * @param animal its id
 * @param allele the allele
 * @param order the order in which records are added
 * @param trails one for each origin of founders; none if frequencies are missing
 */
public record CarrierTrail(String animal, HiddenAllele allele, Order order, List<Trail> trails) implements Finding {

    /**
     * Copies the list.
     *
     * @param animal its id
     * @param allele the allele
     * @param order the order of records
     * @param trails one for each origin
     */
    public CarrierTrail {
        trails = ImmutableList.copyOf(trails);
    }

    /** An order of records. */
    public enum Order {
        /** By their dates, since each has one. */
        BY_DATE,
        /** Parents before their young, and of one animal in the order recorded, since not every record has a date. */
        BY_PEDIGREE;

        /**
         * Returns the word.
         *
         * @return for example {@code by date}
         */
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    /**
     * The trail for one origin of founders.
     *
     * @param origin where founders are taken to come from
     * @param before the chance before any record
     * @param steps the records that moved it, in order
     * @param still how many records moved nothing
     * @param after the chance by all records
     */
    public record Trail(Origin origin, Chance before, List<Step> steps, int still, Chance after) {
        /**
         * Copies the steps.
         *
         * @param origin where founders come from
         * @param before the chance before any record
         * @param steps the records that moved it
         * @param still how many moved nothing
         * @param after the chance by all records
         */
        public Trail {
            steps = ImmutableList.copyOf(steps);
        }
    }

    /**
     * A record that moved the chance.
     *
     * @param records the record; several where the chance was not calculated between them
     * @param after the chance after it
     * @param factor by what it multiplied the odds, which are the chance divided by 1 minus the chance; 0 if it makes the case impossible;
     *     empty if it makes it certain, or if the chance is not settled
     */
    public record Step(List<Cited> records, Chance after, OptionalDouble factor) {
        /**
         * Copies the records.
         *
         * @param records the records
         * @param after the chance after them
         * @param factor by what they multiplied the odds
         */
        public Step {
            records = ImmutableList.copyOf(records);
        }
    }
}
