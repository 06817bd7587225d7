package org.geneticsrules.answer.recorded;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.answer.recorded.LookNext.Information;
import org.geneticsrules.answer.recorded.LookNext.Whether;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Statement;
import org.geneticsrules.probability.Probability;

/**
 * What a DNA test of one locus of an animal may report, and what would be left to believe after each report.
 *
 * @param animal id of the animal
 * @param locus id of the locus tested
 * @param allele the allele that is asked about, if one is
 * @param error the chance that the test reports another genotype than the animal has
 * @param cause what the model knows of a cause in the DNA
 * @param support the statements of the model about this locus, or about the allele asked about
 * @param origins the populations by which chances are weighed, one after another; none if frequencies are missing
 * @param tells what the test is expected to tell of the genotype there, for each origin
 * @param before what is known without the test
 * @param reports what the test may report, each with what is known then, in the order of the model; none if the records contradict one
 *     another
 */
public record DnaTest(
        String animal,
        String locus,
        Optional<HiddenAllele> allele,
        Probability error,
        Cause cause,
        List<Statement> support,
        List<Origin> origins,
        List<Information> tells,
        Belief before,
        List<Report> reports)
        implements Finding {

    /**
     * Copies the lists.
     *
     * @param animal id of the animal
     * @param locus id of the locus
     * @param allele the allele that is asked about
     * @param error the chance of a wrong report
     * @param cause what the model knows of a cause
     * @param support the statements about it
     * @param origins where chances are weighed by
     * @param tells what the test is expected to tell
     * @param before what is known without the test
     * @param reports what the test may report
     */
    public DnaTest {
        support = ImmutableList.copyOf(support);
        origins = ImmutableList.copyOf(origins);
        tells = ImmutableList.copyOf(tells);
        reports = ImmutableList.copyOf(reports);
    }

    /**
     * What a model knows of a cause in the DNA, which a test could look for. Whether any laboratory offers a test is not known to any
     * model.
     */
    public enum Cause {
        /** Some statement is molecular: a variant was found. */
        ON_RECORD("on record"),
        /** No statement is molecular, but some rest on one published study, which may have found a variant. */
        ONE_STUDY("one study"),
        /** No variant is known to the model. */
        NONE_KNOWN("none known");

        private final String word;

        Cause(String word) {
            this.word = word;
        }

        /**
         * Returns the word for it in documents.
         *
         * @return for example {@code none known}
         */
        public String word() {
            return word;
        }
    }

    /**
     * What is known of the genotype at the locus.
     *
     * @param genotypes every genotype, in the order of the model
     * @param carries how likely the animal carries the allele asked about, for each origin; none if no allele is asked about
     */
    public record Belief(List<OfGenotype> genotypes, List<Chance> carries) {
        /**
         * Copies the lists.
         *
         * @param genotypes every genotype
         * @param carries how likely the animal carries the allele
         */
        public Belief {
            genotypes = ImmutableList.copyOf(genotypes);
            carries = ImmutableList.copyOf(carries);
        }

        /**
         * Returns the genotypes that are not excluded.
         *
         * @return genotypes in the order of the model
         */
        public List<AllelePair> left() {
            return genotypes.stream()
                    .filter(one -> one.whether() != Whether.EXCLUDED)
                    .map(OfGenotype::pair)
                    .toList();
        }
    }

    /**
     * What is known of a genotype.
     *
     * @param pair the genotype
     * @param whether whether records leave it possible, frequencies and mutation left out; a test that may be wrong excludes nothing
     * @param chances how likely the animal has it, for each origin
     */
    public record OfGenotype(AllelePair pair, Whether whether, List<Chance> chances) {
        /**
         * Copies the chances.
         *
         * @param pair the genotype
         * @param whether whether it is possible
         * @param chances how likely it is
         */
        public OfGenotype {
            chances = ImmutableList.copyOf(chances);
        }
    }

    /**
     * What the test may report.
     *
     * @param reported the genotype
     * @param chances how likely this is reported, for each origin
     * @param after what would be known then
     */
    public record Report(AllelePair reported, List<Chance> chances, Belief after) {
        /**
         * Copies the chances.
         *
         * @param reported the genotype
         * @param chances how likely this is reported
         * @param after what would be known then
         */
        public Report {
            chances = ImmutableList.copyOf(chances);
        }
    }
}
