package org.geneticsrules.linkage;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.trait.Sex;

/**
 * Loci that are handed down on one chromosome, in map order.
 *
 * @param id its name
 * @param title words for it
 * @param transmission the way it is handed down
 * @param loci its loci in map order
 * @param recombination how often neighbours are separated
 * @param evidence id of its evidence, if stated
 */
public record LinkageGroup(
        String id,
        Optional<String> title,
        Transmission transmission,
        List<String> loci,
        Recombination recombination,
        Optional<String> evidence) {

    /**
     * Copies the loci.
     *
     * @param id its name
     * @param title words for it
     * @param transmission the way it is handed down
     * @param loci its loci
     * @param recombination how often neighbours are separated
     * @param evidence id of its evidence
     */
    public LinkageGroup {
        loci = ImmutableList.copyOf(loci);
    }

    /**
     * Returns an autosomal group with the same recombination fractions in both sexes.
     *
     * @param id its name
     * @param loci its loci in map order
     * @param fractions one fraction for each interval between neighbours
     * @return the group
     */
    public static LinkageGroup autosomal(String id, List<String> loci, List<Probability> fractions) {
        return of(id, Transmission.AUTOSOMAL, loci, Recombination.Fractions.of(fractions));
    }

    /**
     * Returns a group of one locus, which has nothing to recombine with.
     *
     * @param transmission the way it is handed down
     * @param locus id of the locus, by which the group is named too
     * @return the group
     */
    public static LinkageGroup single(Transmission transmission, String locus) {
        return of(locus, transmission, List.of(locus), Recombination.Fractions.of(List.of()));
    }

    /**
     * Returns a group without title and evidence.
     *
     * @param id its name
     * @param transmission the way it is handed down
     * @param loci its loci in map order
     * @param recombination how often neighbours are separated
     * @return the group
     */
    public static LinkageGroup of(
            String id, Transmission transmission, List<String> loci, Recombination recombination) {
        return new LinkageGroup(id, Optional.empty(), transmission, loci, recombination, Optional.empty());
    }

    /**
     * Returns the names of the intervals.
     *
     * @return {@code B-W} for neighbours B and W, in map order
     */
    public List<String> intervals() {
        List<String> names = new ArrayList<>();
        for (int i = 1; i < loci.size(); i++) {
            names.add(loci.get(i - 1) + "-" + loci.get(i));
        }
        return ImmutableList.copyOf(names);
    }

    /**
     * Returns the chance of each set of intervals that recombine in a gamete.
     *
     * @param parent sex of the parent
     * @return chances by set, a whole number in which bit i stands for interval i; they sum to 1
     */
    public Map<Integer, Probability> patterns(Sex parent) {
        ImmutableMap.Builder<Integer, Probability> chances = ImmutableMap.builder();
        if (recombination instanceof Recombination.Crossovers table) {
            table.patterns().forEach((pattern, chance) -> chances.put(bits(pattern), chance));
            return chances.buildOrThrow();
        }
        List<Probability> fractions = ((Recombination.Fractions) recombination).of(parent);
        for (int set = 0; set < 1 << fractions.size(); set++) {
            Probability chance = Probability.ONE;
            for (int i = 0; i < fractions.size(); i++) {
                Probability r = fractions.get(i);
                chance = chance.times((set >> i & 1) == 1 ? r : r.complement());
            }
            chances.put(set, chance);
        }
        return chances.buildOrThrow();
    }

    private int bits(String pattern) {
        int set = 0;
        List<String> names = intervals();
        for (String name : pattern.equals("none") ? new String[0] : pattern.split(" ")) {
            set |= 1 << names.indexOf(name);
        }
        return set;
    }

    /**
     * Returns the address of the group in the model's document.
     *
     * @return a JSON Pointer
     */
    public String pointer() {
        return Pointer.of("groups", id);
    }
}
