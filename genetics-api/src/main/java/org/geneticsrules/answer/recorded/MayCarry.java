package org.geneticsrules.answer.recorded;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.geneticsrules.explanation.Hidden;
import org.geneticsrules.inference.Possibility;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.AllelePair;

/**
 * What an animal may be at some loci, by all records of it and its relatives.
 *
 * @param animal its id
 * @param origins the populations by which chances are weighed, one after another; none if frequencies are missing
 * @param loci what it may be, locus by locus
 */
public record MayCarry(String animal, List<Origin> origins, List<AtLocus> loci) implements Finding {

    /**
     * Copies the lists.
     *
     * @param animal its id
     * @param origins where chances are weighed by
     * @param loci what it may be, locus by locus
     */
    public MayCarry {
        origins = ImmutableList.copyOf(origins);
        loci = ImmutableList.copyOf(loci);
    }

    /** What records say of an allele, frequencies left out. */
    public enum Word {
        /** Every genotype that fits has it. */
        CARRIES,
        /** Some genotypes that fit have it, others have not. */
        MAY_CARRY,
        /** No genotype that fits has it. */
        CANNOT_CARRY,
        /** It was not found out whether a genotype with it, or one without it, fits. */
        UNDECIDED,
        /** No genotype fits at all, because records contradict one another. */
        CONTRADICTED;

        /**
         * Returns the word.
         *
         * @return for example {@code may carry}
         */
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    /**
     * What the animal may be at one locus.
     *
     * @param locus id of the locus
     * @param genotypes every genotype that an animal of its sex can have there
     * @param alleles every allele of the locus
     * @param hidden why its look does not tell, where its look is recorded and leaves open what the records of its relatives leave open too
     */
    public record AtLocus(String locus, List<OfPair> genotypes, List<OfAllele> alleles, Optional<Hidden> hidden) {
        /**
         * Copies the lists.
         *
         * @param locus id of the locus
         * @param genotypes the genotypes
         * @param alleles the alleles
         * @param hidden why its look does not tell
         */
        public AtLocus {
            genotypes = ImmutableList.copyOf(genotypes);
            alleles = ImmutableList.copyOf(alleles);
        }

        /** The genotypes that are not excluded. */
        List<AllelePair> left() {
            return genotypes.stream()
                    .filter(one -> !(one.possibility() instanceof Possibility.Excluded))
                    .map(OfPair::pair)
                    .toList();
        }
    }

    /**
     * What is known of a genotype.
     *
     * @param pair the genotype
     * @param possibility whether the animal can have it, frequencies left out
     * @param chances how likely it is, for each origin
     */
    public record OfPair(AllelePair pair, Possibility possibility, List<Chance> chances) {
        /**
         * Copies the chances.
         *
         * @param pair the genotype
         * @param possibility whether the animal can have it
         * @param chances how likely it is
         */
        public OfPair {
            chances = ImmutableList.copyOf(chances);
        }
    }

    /**
     * What is known of an allele.
     *
     * @param allele the allele
     * @param word whether the animal carries it, frequencies left out
     * @param chances how likely it has at least one dose of it, for each origin
     */
    public record OfAllele(Allele allele, Word word, List<Chance> chances) {
        /**
         * Copies the chances.
         *
         * @param allele the allele
         * @param word whether the animal carries it
         * @param chances how likely that is
         */
        public OfAllele {
            chances = ImmutableList.copyOf(chances);
        }
    }
}
