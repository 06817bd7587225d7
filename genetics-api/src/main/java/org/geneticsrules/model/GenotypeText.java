package org.geneticsrules.model;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.problem.Position;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;

/**
 * Reads and prints genotypes as text.
 *
 * <pre>
 *   genotype = part { (space | ";") part }
 *   part     = phased | unphased
 *   unphased = [ locus ":" ] allele "/" allele          C/c    order without meaning
 *   phased   = hap ( "/" | "|" ) hap                    [C B]/[c b]
 *   hap      = "[" allele { space allele } "]"
 *   allele   = "+" | "-" | "?" | symbol
 * </pre>
 *
 * <p>{@code -} (also {@code _}) is an allele that is not known, {@code ?} a locus not examined, {@code +} the wild type of the locus.
 * The two alleles may also be written together, {@code Cc}, and so may several loci, {@code CcBb}, if that has only one reading; it
 * is never printed. Loci that are not linked have no phase: brackets are read, and {@link Parsed#notices()} says that the phase
 * means nothing here.
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
     * @param named the loci it names, in model order
     * @param omitted how loci that it does not name were taken
     * @param notices what was read but means nothing under this model
     */
    public record Parsed(GenotypeSet genotypes, Set<String> named, OmittedLoci omitted, List<String> notices) {
        /**
         * Copies the collections.
         *
         * @param genotypes the genotypes it allows
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
        GenotypeSet set = GenotypeSet.all(model);
        Set<String> seen = new LinkedHashSet<>();
        boolean phased = false;
        for (GenotypePart part : parts(text)) {
            seen.add(part.locus().id());
            set = set.where(part.locus().id(), part.pairs());
            phased |= part.phased();
        }
        if (omitted == OmittedLoci.WILD_TYPE) {
            for (Locus locus : model.loci().values()) {
                Optional<Allele> wild = locus.wildType();
                if (!seen.contains(locus.id()) && wild.isPresent()) {
                    String allele = wild.get().id();
                    set = set.where(locus.id(), List.of(locus.pair(allele, allele)));
                }
            }
        }
        List<String> notices =
                phased ? List.of("phase was read but not kept: no loci are linked in model " + model) : List.of();
        Set<String> named = new LinkedHashSet<>(model.loci().keySet());
        named.retainAll(seen);
        return new Parsed(set, named, omitted, notices);
    }

    private List<GenotypePart> parts(String text) {
        List<Problem> problems = new ArrayList<>();
        List<GenotypePart> parts = new GenotypeParser(model, text, problems).parts();
        Set<String> seen = new LinkedHashSet<>();
        for (GenotypePart part : parts) {
            if (!seen.add(part.locus().id())) {
                problems.add(
                        at(part.column(), "locus-twice", "locus " + part.locus().id() + " is named twice"));
            }
        }
        if (!problems.isEmpty()) {
            throw new ProblemsException(problems);
        }
        return parts;
    }

    /**
     * Reads genotype text in which every named locus is fully known.
     *
     * @param text the text
     * @return the genotype of the loci named
     * @throws ProblemsException if it is not understood or a named locus is only partly known
     */
    public Genotype genotype(String text) {
        List<Problem> problems = new ArrayList<>();
        List<AllelePair> pairs = new ArrayList<>();
        for (GenotypePart part : parts(text)) {
            if (part.pairs().size() != 1) {
                problems.add(at(
                                part.column(),
                                "partly-known",
                                "locus " + part.locus().id() + " is only partly known in \"" + text + "\"")
                        .expecting(
                                "two known alleles, for example " + part.pairs().get(0)));
            }
            pairs.add(part.pairs().get(0));
        }
        if (!problems.isEmpty()) {
            throw new ProblemsException(problems);
        }
        return Genotype.of(model, pairs);
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
        BigInteger product = BigInteger.ONE;
        List<String> parts = new ArrayList<>();
        for (Locus locus : model.loci().values()) {
            List<AllelePair> allowed = set.pairs(locus.id());
            product = product.multiply(BigInteger.valueOf(allowed.size()));
            if (allowed.size() == locus.pairs().size() && allowed.size() > 1) {
                continue;
            }
            Optional<String> part = allowed.size() == 1
                    ? Optional.of(allowed.get(0).toString())
                    : locus.alleles().values().stream()
                            .filter(allele -> allowed.equals(having(locus, allele.id())))
                            .map(allele -> model.symbols().prefix(locus.id(), allele.symbol()) + allele.symbol() + "/-")
                            .findFirst();
            if (part.isEmpty()) {
                return Optional.empty();
            }
            parts.add(part.get());
        }
        return product.equals(set.size()) ? Optional.of(String.join(" ", parts)) : Optional.empty();
    }

    static List<AllelePair> having(Locus locus, String allele) {
        return locus.pairs().stream().filter(pair -> pair.has(allele)).toList();
    }

    static Problem at(int column, String code, String message) {
        return Problem.of(Stage.SYNTAX, code, "", message).at(new Position(1, column));
    }
}
