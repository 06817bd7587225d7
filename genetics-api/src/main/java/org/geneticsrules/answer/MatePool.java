package org.geneticsrules.answer;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.Sex;

/** The mates that a model suggests for testing an animal, and what mates of any description may carry. */
final class MatePool {

    private final CompiledModel compiled;
    private final Model model;
    private final Sex sex;

    /**
     * Prepares a pool.
     *
     * @param sex sex of the mates
     */
    MatePool(CompiledModel compiled, Sex sex) {
        this.compiled = compiled;
        this.model = compiled.model();
        this.sex = sex;
    }

    /** One mate for each pair that there may be at a locus, being of the wild type elsewhere; those with one kind of allele first. */
    List<TestMate> suggested(String locus) {
        List<AllelePair> pairs = new ArrayList<>();
        model.locus(locus).pairs(sex).stream()
                .filter(pair -> !pair.isHeterozygous())
                .forEach(pairs::add);
        model.locus(locus).pairs(sex).stream()
                .filter(AllelePair::isHeterozygous)
                .forEach(pairs::add);
        pairs.removeIf(pair -> pair.alleles().isEmpty());
        return pairs.stream().map(pair -> TestMate.of(name(pair), plain(pair))).toList();
    }

    private static String name(AllelePair pair) {
        List<String> words = pair.alleles().stream()
                .map(allele -> allele.title().orElse(allele.symbol()))
                .toList();
        if (pair.isHeterozygous()) {
            return "a mate with " + words.get(0) + " and " + words.get(1);
        }
        return "a mate with " + (words.size() == 1 ? "its one dose of " : "two doses of ") + words.get(0);
    }

    private Animal plain(AllelePair pair) {
        Animal mate = Animal.unknown(compiled).as(sex).having(pair.locus(), List.of(pair), List.of("genotype " + pair));
        boolean first = true;
        for (Locus other : model.loci().values()) {
            if (!other.id().equals(pair.locus())) {
                String allele = plain(other);
                List<AllelePair> plain = other.pairs(sex).stream()
                        .filter(one -> one.alleles().stream()
                                .allMatch(part -> part.id().equals(allele)))
                        .toList();
                mate = mate.having(other.id(), plain, first ? List.of("wild type at all other loci") : List.of());
                first = false;
            }
        }
        return mate;
    }

    /** The allele that an animal is taken to carry at a locus unless something else is known: the wild type, or the first declared. */
    static String plain(Locus locus) {
        return locus.wildType()
                .map(Allele::id)
                .orElseGet(() -> locus.alleles().keySet().iterator().next());
    }

    /** All that a mate may carry; for one known by its parents, at each locus by itself. */
    GenotypeSet genotypes(Animal animal, TestMate mate) {
        Animal first = mate.animals().get(0);
        if (mate.kind() == TestMate.Kind.KNOWN) {
            return first.as(sex).genotypes();
        }
        Map<String, List<AllelePair>> pairs = mate.kind() == TestMate.Kind.OWN_YOUNG
                ? young(
                        animal.genotypes(),
                        first.as(sex).genotypes(),
                        model.loci().keySet())
                : Inherited.pairs(
                        model,
                        first.as(Sex.MALE).genotypes(),
                        mate.animals().get(1).as(Sex.FEMALE).genotypes(),
                        model.loci().keySet());
        GenotypeSet found = GenotypeSet.all(model).of(sex);
        for (Map.Entry<String, List<AllelePair>> locus : pairs.entrySet()) {
            found = found.where(locus.getKey(), locus.getValue());
        }
        return mate.seen().isEmpty() ? found : found.and(compiled.showing(mate.seen()));
    }

    /** The pairs that young of an animal of the other sex and a mate may have at some loci. */
    Map<String, List<AllelePair>> young(GenotypeSet animal, GenotypeSet mate, Collection<String> loci) {
        return sex == Sex.FEMALE
                ? Inherited.pairs(model, animal, mate, loci)
                : Inherited.pairs(model, mate, animal, loci);
    }
}
