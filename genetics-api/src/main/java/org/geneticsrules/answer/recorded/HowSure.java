package org.geneticsrules.answer.recorded;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.List;
import java.util.Set;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.trait.Phenotype;

/**
 * Three kinds of sure about an allele that an animal may carry, and a mating that may show it. They answer different questions and are
 * never the same number: how good the test is, what to believe, and what to expect of the next litter.
 *
 * @param animal id of the animal
 * @param mate id of its mate
 * @param allele what it may carry
 * @param signs the looks of a kit that show it
 * @param courses one for each origin of founders; none if frequencies are missing
 */
public record HowSure(String animal, String mate, HiddenAllele allele, Set<Phenotype> signs, List<Course> courses)
        implements Finding {

    /**
     * Copies the collections.
     *
     * @param animal id of the animal
     * @param mate id of its mate
     * @param allele what it may carry
     * @param signs what shows it
     * @param courses one for each origin
     */
    public HowSure {
        signs = ImmutableSet.copyOf(signs);
        courses = ImmutableList.copyOf(courses);
    }

    /**
     * The three kinds of sure for one origin of founders.
     *
     * @param origin where founders are taken to come from
     * @param now how likely the animal is to carry the allele by all records
     * @param rows what more kits would tell, from 1 kit on
     */
    public record Course(Origin origin, Chance now, List<Row> rows) {
        /**
         * Copies the rows.
         *
         * @param origin where founders come from
         * @param now how likely it is now
         * @param rows what more kits would tell
         */
        public Course {
            rows = ImmutableList.copyOf(rows);
        }
    }

    /**
     * The three kinds for one number of kits.
     *
     * @param kits how many kits of this mating
     * @param detected how likely it is that at least one of them shows a sign <i>if</i> the animal carries the allele: the power of the test
     * @param carries how likely the animal is to carry it if none of them shows a sign: what is left to believe
     * @param atLeastOne how likely at least one of them is to show a sign, by what is known now: what to expect
     */
    public record Row(int kits, Chance detected, Chance carries, Chance atLeastOne) {}
}
