package org.geneticsrules.answer.recorded;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.geneticsrules.pedigree.Paternity;

/**
 * Which males may have sired a litter, by all records under the model.
 *
 * @param litter id of the litter
 * @param perKit true if each kit may have a sire of its own
 * @param origins the populations by which chances are weighed; none if frequencies are missing
 * @param kits what follows for the litter as a whole, or for each kit that is recorded
 */
public record Parentage(String litter, boolean perKit, List<Origin> origins, List<OfKit> kits) implements Finding {

    /**
     * Copies the lists.
     *
     * @param litter id of the litter
     * @param perKit whether each kit may have a sire of its own
     * @param origins where chances are weighed by
     * @param kits what follows
     */
    public Parentage {
        origins = ImmutableList.copyOf(origins);
        kits = ImmutableList.copyOf(kits);
    }

    /** Whether a male may be the sire. */
    public enum Word {
        /** If he were the sire, some records could not all be true. */
        EXCLUDED,
        /** All records fit with him as the sire; that does not prove that he is. */
        NOT_EXCLUDED,
        /** It was not found out. */
        UNDECIDED,
        /** The records contradict one another whoever the sire is. */
        CONTRADICTED;

        /**
         * Returns the word.
         *
         * @return for example {@code not excluded}
         */
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    /**
     * What follows for the litter as a whole, or for a kit.
     *
     * @param kit id of the kit; empty for the whole litter
     * @param males the males
     */
    public record OfKit(Optional<String> kit, List<OfMale> males) {
        /**
         * Copies the list.
         *
         * @param kit id of the kit
         * @param males the males
         */
        public OfKit {
            males = ImmutableList.copyOf(males);
        }
    }

    /**
     * What follows for a male.
     *
     * @param male who he is, and his share before anything is looked at
     * @param word whether he may be the sire, frequencies left out
     * @param against why he is excluded: sets of records each of which cannot all be true if he is the sire; none if he is not
     * @param chances how likely he is to be the sire, one of the males named being it, for each origin
     */
    public record OfMale(Paternity.Candidate male, Word word, List<List<Cited>> against, List<Chance> chances) {
        /**
         * Copies the lists.
         *
         * @param male who he is
         * @param word whether he may be the sire
         * @param against why he is excluded
         * @param chances how likely he is to be the sire
         */
        public OfMale {
            against = against.stream().map(ImmutableList::copyOf).collect(ImmutableList.toImmutableList());
            chances = ImmutableList.copyOf(chances);
        }

        /**
         * Returns who he is.
         *
         * @return his id, or that he is not recorded
         */
        public String name() {
            return male.male().map(RecordWords::quoted).orElse("a male who is not recorded");
        }
    }
}
