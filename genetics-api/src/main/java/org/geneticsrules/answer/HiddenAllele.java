package org.geneticsrules.answer;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;

/**
 * An allele that an animal may carry unseen.
 *
 * @param locus id of its locus
 * @param allele the allele
 */
public record HiddenAllele(String locus, Allele allele) {

    /**
     * Finds an allele of a model.
     *
     * @param model the model
     * @param name its title, symbol, id or a synonym; after the id of its locus and a colon, where several loci have one of that name
     * @return the allele
     * @throws ProblemsException if no allele has this name, or several have
     */
    public static HiddenAllele find(Model model, String name) {
        String wanted = name.strip();
        List<HiddenAllele> found = new ArrayList<>();
        List<String> known = new ArrayList<>();
        for (Locus locus : model.loci().values()) {
            for (Allele allele : locus.alleles().values()) {
                names(allele).forEach(known::add);
                boolean named =
                        names(allele).anyMatch(one -> one.equals(wanted) || (locus.id() + ": " + one).equals(wanted));
                if (named) {
                    found.add(new HiddenAllele(locus.id(), allele));
                }
            }
        }
        if (found.isEmpty()) {
            throw new ProblemsException(
                    Problems.unknown(Stage.REFERENCES, "unknown-allele", "", "allele", wanted, known));
        }
        if (found.size() > 1) {
            String one = found.get(0).locus() + ": " + wanted;
            throw new ProblemsException(Problem.of(
                            Stage.REFERENCES,
                            "several-alleles",
                            "",
                            "\"" + wanted + "\" names alleles of " + found.size() + " loci")
                    .expecting("the locus too, such as \"" + one + "\""));
        }
        return found.get(0);
    }

    /**
     * Finds the same allele in another model: by its locus and id, or by what it is called.
     *
     * @param other another model
     * @return the allele there
     * @throws ProblemsException if there is none, or several are called so
     */
    public HiddenAllele under(Model other) {
        Locus there = other.loci().get(locus);
        Allele same = there == null ? null : there.alleles().get(allele.id());
        return same == null ? find(other, words()) : new HiddenAllele(locus, same);
    }

    private static Stream<String> names(Allele allele) {
        return Stream.of(allele.title().stream(), Stream.of(allele.symbol(), allele.id()), allele.synonyms().stream())
                .flatMap(some -> some)
                .distinct();
    }

    /**
     * Returns what the allele is called.
     *
     * @return its title, or its symbol if it has none
     */
    public String words() {
        return allele.title().orElse(allele.symbol());
    }

    /** Returns locus and symbol, as in {@code C: c}; {@link #find} finds it again. */
    @Override
    public String toString() {
        return locus + ": " + allele.symbol();
    }
}
