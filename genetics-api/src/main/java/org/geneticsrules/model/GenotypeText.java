package org.geneticsrules.model;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.problem.Position;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Sex;

/**
 * Reads and prints genotypes as text.
 *
 * <pre>
 *   genotype = part { (space | ";") part }
 *   part     = phased | unphased
 *   unphased = [ locus ":" ] ( pair | allele )
 *   pair     = allele ( "/" | "|" ) ( allele | partner )   C/c    order without meaning
 *   phased   = hap [ ( "/" | "|" ) ( hap | partner ) ]     [C B]/[c b]
 *   hap      = "[" [ locus ":" ] allele { space [ locus ":" ] allele } "]"
 *   allele   = "+" | "-" | "?" | symbol
 *   partner  = "Y" | "W"
 * </pre>
 *
 * <p>{@code -} (also {@code _}) is an allele that is not known, {@code ?} a locus not examined, {@code +} the wild type of the locus.
 * The two alleles may also be written together, {@code Cc}, and so may several loci, {@code CcBb}, if that has only one reading; it
 * is never printed.
 *
 * <p>An animal with a single strand of a locus has one allele there. At a locus on the X or Z it is written before the partner
 * chromosome, {@code O/Y} or {@code B/W}; at a locus on the Y or W and outside the nucleus it stands alone. {@code O/-} on the X is
 * any animal with an {@code O}, of either sex. An animal without the chromosome has nothing to write.
 *
 * <p>Alleles in one pair of brackets lie on one strand; both strands name the same loci, all of one linkage group, in the same order.
 * Loci in brackets are printed in map order, and only those of which the phase is known. Loci that are not linked have no phase:
 * brackets are read, and {@link Parsed#notices()} says that they mean nothing.
 *
 * <p>Immutable and thread-safe.
 */
public final class GenotypeText {

    private final Model model;

    private GenotypeText(Model model) {
        this.model = model;
    }

    /**
     * Returns the text form of a model's genotypes.
     *
     * @param model the model whose symbols are used
     * @return a reader and printer
     */
    public static GenotypeText of(Model model) {
        return new GenotypeText(model);
    }

    /**
     * What a text says.
     *
     * @param genotypes the genotypes it allows
     * @param phase which alleles of linked loci it puts on one strand
     * @param named the loci it names, in model order
     * @param omitted how loci that it does not name were taken
     * @param notices what was read but means nothing under this model
     */
    public record Parsed(
            GenotypeSet genotypes, Phase phase, Set<String> named, OmittedLoci omitted, List<String> notices) {
        /**
         * Copies the collections.
         *
         * @param genotypes the genotypes it allows
         * @param phase what is known of the phase
         * @param named the loci it names
         * @param omitted how other loci were taken
         * @param notices what means nothing here
         */
        public Parsed {
            named = ImmutableSet.copyOf(named);
            notices = ImmutableList.copyOf(notices);
        }
    }

    /**
     * Reads genotype text.
     *
     * @param text the text; empty text names no locus
     * @param omitted what it means that a locus is not named
     * @return what it says
     * @throws ProblemsException if it is not understood: every part that fails, with its place
     */
    public Parsed parse(String text, OmittedLoci omitted) {
        GenotypeReading reading = GenotypeReading.of(model, text);
        GenotypeSet set = GenotypeSet.all(model);
        Set<String> seen = new LinkedHashSet<>();
        for (GenotypePart part : reading.parts()) {
            seen.add(part.locus().id());
            set = set.where(part.locus().id(), part.pairs());
        }
        if (omitted == OmittedLoci.WILD_TYPE) {
            for (Locus locus : model.loci().values()) {
                if (!seen.contains(locus.id()) && locus.wildType().isPresent()) {
                    set = set.where(locus.id(), wild(locus));
                }
            }
        }
        Set<String> named = new LinkedHashSet<>(model.loci().keySet());
        named.retainAll(seen);
        return new Parsed(set, reading.phase(), named, omitted, reading.notices());
    }

    /** The genotypes without any other allele than the wild type. */
    private static List<AllelePair> wild(Locus locus) {
        return locus.pairs().stream()
                .filter(pair -> pair.alleles().stream()
                        .allMatch(allele -> Optional.of(allele).equals(locus.wildType())))
                .toList();
    }

    /**
     * Reads genotype text in which every named locus is fully known. Where it tells the sex, loci on a chromosome that animals of this
     * sex lack are known too.
     *
     * @param text the text
     * @return the genotype of the loci named, with the phase that is stated
     * @throws ProblemsException if it is not understood or a named locus is only partly known
     */
    public Genotype genotype(String text) {
        List<Problem> problems = new ArrayList<>();
        List<AllelePair> pairs = new ArrayList<>();
        GenotypeReading reading = GenotypeReading.of(model, text);
        for (GenotypePart part : reading.parts()) {
            AllelePair example = part.pairs().get(0);
            if (part.pairs().size() != 1) {
                problems.add(at(
                                part.written().column(),
                                "partly-known",
                                "locus " + part.locus().id() + " is only partly known in \"" + text + "\"")
                        .expecting((example.isHemizygous() ? "a known allele" : "two known alleles") + ", for example "
                                + example));
            }
            pairs.add(example);
        }
        if (!problems.isEmpty()) {
            throw new ProblemsException(problems);
        }
        Set<Sex> sexes = reading.sexes();
        for (Locus locus : model.loci().values()) {
            if (sexes.size() == 1
                    && locus.transmission().strands(sexes.iterator().next()) == 0) {
                pairs.add(locus.of());
            }
        }
        return Genotype.of(model, pairs, reading.phase());
    }

    /**
     * Prints a genotype.
     *
     * @param genotype a genotype
     * @return its canonical text: loci in model order, alleles in declared order, one space between loci
     */
    public String print(Genotype genotype) {
        return genotype.toString();
    }

    /**
     * Prints a set of genotypes, if the notation can.
     *
     * @param set a set of this model
     * @return its canonical text, in which unknown loci are not named; empty if the set is not a product of loci each fully known,
     *     known in one allele, or unknown
     */
    public Optional<String> print(GenotypeSet set) {
        return set.isEmpty() ? Optional.empty() : new GenotypePrinter(model).print(set);
    }

    static List<AllelePair> having(Locus locus, String allele) {
        return locus.pairs().stream().filter(pair -> pair.has(allele)).toList();
    }

    static Problem at(int column, String code, String message) {
        return Problem.of(Stage.SYNTAX, code, "", message).at(new Position(1, column));
    }
}
