package org.geneticsrules.estimation;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.trait.Sex;

/**
 * Animals of a pedigree by whose own records the alleles of a locus are counted: those without recorded parents, or others that are named.
 *
 * <p>An animal counts if its looks and tests leave a set of genotypes at the locus and say nothing more. One whose look hangs on another locus too, or on
 * chance, is left out, since how likely its genotypes are cannot be told by this locus alone; so is one of which nothing is recorded that bears on the locus.
 *
 * <p>Genotypes with which the model lets no animal live are not left to any: where two doses of a dominant allele are lost, animals that show it are known to
 * have one.
 *
 * @param locus the locus
 * @param living the genotypes with which animals can live
 * @param counts by the genotypes that are left, how many animals there are
 * @param silent ids of animals whose records leave every genotype
 * @param unclear ids of animals whose records say more than which genotypes are left, or contradict one another
 */
public record UnrelatedAnimals(
        Locus locus,
        Set<AllelePair> living,
        Map<Set<AllelePair>, Long> counts,
        List<String> silent,
        List<String> unclear) {

    /**
     * Copies the lists.
     *
     * @param locus the locus
     * @param living genotypes of animals that live
     * @param counts by genotypes left, how many
     * @param silent ids of animals that say nothing
     * @param unclear ids of animals that are left out
     */
    public UnrelatedAnimals {
        living = ImmutableSet.copyOf(living);
        counts = ImmutableMap.copyOf(counts);
        silent = ImmutableList.copyOf(silent);
        unclear = ImmutableList.copyOf(unclear);
    }

    /**
     * Sorts animals by what their own records leave.
     *
     * @param questions the model and the records
     * @param pedigree the same records
     * @param model the same model
     * @param locus id of the locus
     * @param animals ids of the animals, of whom each counts once; those without recorded parents if there are none
     * @return the animals by what is left
     * @throws IllegalArgumentException if there is no such animal or locus
     */
    public static UnrelatedAnimals of(
            Inference questions, Pedigree pedigree, Model model, String locus, Collection<String> animals) {
        Map<Set<AllelePair>, Long> counts = new LinkedHashMap<>();
        List<String> silent = new ArrayList<>();
        List<String> unclear = new ArrayList<>();
        for (String id : animals.isEmpty() ? pedigree.founders() : ImmutableSet.copyOf(animals)) {
            Optional<Set<AllelePair>> left = questions.ownRecords(id, locus);
            if (left.isEmpty() || left.get().isEmpty()) {
                unclear.add(id);
            } else if (left.get()
                    .equals(model.living(locus, pedigree.individual(id).sex()))) {
                silent.add(id);
            } else {
                counts.merge(left.get(), 1L, Long::sum);
            }
        }
        return new UnrelatedAnimals(model.locus(locus), model.living(locus, Optional.empty()), counts, silent, unclear);
    }

    /**
     * Returns how many animals count.
     *
     * @return their number
     */
    public long total() {
        return counts.values().stream().mapToLong(Long::longValue).sum();
    }

    /**
     * Counts the alleles. Where all that is known of every animal is a look, looks that no animal has are classes too.
     *
     * @return the frequencies
     * @throws IllegalArgumentException if no animal counts, or alleles cannot be counted at the locus
     */
    public GeneCounting counting() {
        Map<Set<AllelePair>, Long> classes = new LinkedHashMap<>();
        List<AllelePair> can = locus.pairs().stream().filter(living::contains).toList();
        Map<String, Set<AllelePair>> looks = can.stream()
                .collect(Collectors.groupingBy(
                        pair -> locus.expression(pair, Sex.FEMALE),
                        LinkedHashMap::new,
                        Collectors.collectingAndThen(Collectors.toList(), ImmutableSet::copyOf)));
        looks.values().forEach(pairs -> classes.put(pairs, 0L));
        if (!classes.keySet().containsAll(counts.keySet())) {
            classes.clear();
            can.forEach(pair -> classes.put(Set.of(pair), 0L)); // as of tests
            if (!classes.keySet().containsAll(counts.keySet())) {
                classes.clear();
            }
        }
        classes.putAll(counts);
        return GeneCounting.ofGenotypes(locus, classes);
    }

    /**
     * Returns the counts of the three genotypes, where there are two alleles and the genotype of every animal is known.
     *
     * @return what can be held against Hardy-Weinberg proportions; empty if more is open, and where animals of a genotype cannot live
     */
    public Optional<HardyWeinberg> genotypes() {
        if (locus.alleles().size() != 2
                || counts.isEmpty()
                || living.size() < locus.pairs().size()
                || counts.keySet().stream().anyMatch(one -> one.size() > 1)) {
            return Optional.empty();
        }
        long[] numbers = new long[3];
        counts.forEach((pairs, number) -> {
            int[] positions = locus.positions(pairs.iterator().next());
            numbers[positions[0] + positions[1]] += number;
        });
        return Optional.of(new HardyWeinberg(numbers[0], numbers[1], numbers[2]));
    }
}
