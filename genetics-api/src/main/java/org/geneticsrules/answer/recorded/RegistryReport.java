package org.geneticsrules.answer.recorded;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.geneticsrules.answer.Assumption;
import org.geneticsrules.answer.EvidenceLevel;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.answer.Rival;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.document.Reference;
import org.geneticsrules.inference.Conclusions.Standing;

/**
 * What a check of a whole registry found, animal by animal.
 *
 * <p>It says which records do not fit one another under the model, and accuses nobody: which of them is mistaken cannot be told, and it may
 * be the model. The records hold no names of owners, and nor does this.
 *
 * <p>Immutable and thread-safe.
 *
 * @param verdict the result in one sentence
 * @param entries one for each animal, in the order of the pedigree
 * @param conflicts records that cannot all be true; entries name them by their place here
 * @param recheck the fewest records to look at again, for each group of relatives with conflicts
 * @param kindreds what the chances of each set of relatives cost, the cheapest first; none if no allele was asked about or frequencies are
 *     missing
 * @param carrying the alleles asked about
 * @param origins by which chances are weighed; none if no allele was asked about or frequencies are missing
 * @param assumptions what is taken for granted
 * @param rivals views that differ from statements this rests on
 * @param cautions what has to be said along with it
 * @param evidence what it rests on
 * @param model the model used
 * @param pedigree id and version of the pedigree
 * @param notices records that say nothing under the model
 */
public record RegistryReport(
        String verdict,
        List<Entry> entries,
        List<Conflict> conflicts,
        List<Recheck> recheck,
        List<Kindred> kindreds,
        List<HiddenAllele> carrying,
        List<Origin> origins,
        List<Assumption> assumptions,
        List<Rival> rivals,
        List<Caution> cautions,
        EvidenceLevel evidence,
        Reference model,
        Reference pedigree,
        List<String> notices) {

    /**
     * Copies the lists.
     *
     * @param verdict the result in one sentence
     * @param entries one for each animal
     * @param conflicts records that cannot all be true
     * @param recheck the fewest records to look at again
     * @param kindreds what chances cost
     * @param carrying the alleles asked about
     * @param origins where chances are weighed by
     * @param assumptions what is taken for granted
     * @param rivals differing views
     * @param cautions what has to be said
     * @param evidence what it rests on
     * @param model the model used
     * @param pedigree the pedigree
     * @param notices what says nothing
     */
    public RegistryReport {
        entries = ImmutableList.copyOf(entries);
        conflicts = ImmutableList.copyOf(conflicts);
        recheck = ImmutableList.copyOf(recheck);
        kindreds = ImmutableList.copyOf(kindreds);
        carrying = ImmutableList.copyOf(carrying);
        origins = ImmutableList.copyOf(origins);
        assumptions = ImmutableList.copyOf(assumptions);
        rivals = ImmutableList.copyOf(rivals);
        cautions = ImmutableList.copyOf(cautions);
        notices = ImmutableList.copyOf(notices);
    }

    /** What to do about the records of an animal. */
    public enum Verdict {
        /** They fit all others. That does not prove them. */
        ACCEPT,
        /** They are among records that do not fit one another: ask for them to be looked at, for the reason given. */
        QUERY,
        /** They fit, but something was recorded too early, or in a light in which it cannot be told: look at the animal again. */
        LOOK_AGAIN,
        /** Whether they fit was not found out. */
        NOT_DECIDED;

        /**
         * Returns the word.
         *
         * @return for example {@code look again}
         */
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    /**
     * What was found for an animal.
     *
     * @param animal its id
     * @param verdict what to do about its records
     * @param reason why, in sentences that can be sent; empty for what is accepted without remark
     * @param conflicts the places of its conflicts in the report, from 0
     * @param inbreeding its coefficient of inbreeding as recorded ancestors go, from 0 to 1: where sires are certain it is at least that; where
     *     several males may be the sire of it or of an ancestor, the expected value by their shares
     * @param generations to how many complete generations these ancestors add up ({@link
     *     org.geneticsrules.pedigree.RegistryKinship#generations})
     * @param chances how likely it is to carry each allele asked about, by each origin: all origins of the first allele first
     */
    public record Entry(
            String animal,
            Verdict verdict,
            String reason,
            Set<Integer> conflicts,
            double inbreeding,
            double generations,
            List<Chance> chances) {
        /**
         * Copies the collections.
         *
         * @param animal its id
         * @param verdict what to do about its records
         * @param reason why
         * @param conflicts the places of its conflicts
         * @param inbreeding its coefficient of inbreeding
         * @param generations how many generations are known
         * @param chances how likely it is to carry each allele
         */
        public Entry {
            conflicts = ImmutableSet.copyOf(conflicts);
            chances = ImmutableList.copyOf(chances);
        }
    }

    /**
     * The fewest records of a group of relatives to look at again: without one of these sets all other records fit, without fewer they do
     * not. Usually there are several, and nothing tells which one holds the mistakes.
     *
     * @param relatives how many animals the group has
     * @param atLeast how many records have to be looked at at least; the size of each set if there are sets
     * @param sets the smallest sets; none if they were not found within the limits
     * @param more true if there are more sets of this size
     */
    public record Recheck(int relatives, int atLeast, List<List<Cited>> sets, boolean more) {
        /**
         * Copies the sets.
         *
         * @param relatives how many animals
         * @param atLeast how many records at least
         * @param sets the smallest sets
         * @param more whether there are more
         */
        public Recheck {
            sets = sets.stream().map(ImmutableList::copyOf).collect(ImmutableList.toImmutableList());
        }
    }

    /**
     * What the chances of relatives cost.
     *
     * @param first id of the first of them in the pedigree
     * @param animals how many they are
     * @param cells the cells of all tables of the part of them that needs most, by the origin by which they need most; 0 if all is found from
     *     family to family
     * @param within whether that is allowed; if not, {@code cells} may be less than would be needed, and some chances are estimated or not
     *     told
     * @param inTime false if the time was over before all of their chances were worked out
     */
    public record Kindred(String first, int animals, double cells, boolean within, boolean inTime) {}

    /**
     * Counts the chances that are settled so far.
     *
     * @param wanted a standing
     * @return how many chances of all animals have it
     */
    public long count(Standing wanted) {
        return entries.stream()
                .flatMap(one -> one.chances().stream())
                .filter(chance -> chance.standing() == wanted)
                .count();
    }

    /**
     * Counts the animals with a verdict.
     *
     * @param wanted a verdict
     * @return how many there are
     */
    public long count(Verdict wanted) {
        return entries.stream().filter(one -> one.verdict() == wanted).count();
    }
}
