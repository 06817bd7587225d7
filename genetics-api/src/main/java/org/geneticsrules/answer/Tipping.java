package org.geneticsrules.answer;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.geneticsrules.cross.UncertainCross;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Population;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;

/**
 * How frequent an allele has to be in a population for a look to be as likely as not: there an answer that rests on the frequency turns
 * from "rather not" to "rather yes".
 *
 * <p>All else in the population stays as it is, and the other alleles of the locus keep their proportions to one another.
 *
 * @param locus id of the locus
 * @param allele the allele
 * @param frequency a frequency, in ten-thousandths, at which the chance is 1/2 or more, while a ten-thousandth below it is less
 * @param stated the frequency that the population states
 */
public record Tipping(String locus, Allele allele, Probability frequency, Probability stated) {

    private static final int GRID = 10_000;
    private static final Probability HALF = Probability.of(1, 2);

    /**
     * Finds the frequencies at which a look turns from less likely than not to likely: one for each allele that makes the look likelier
     * the more frequent it is, and that can bring it about by itself.
     *
     * @param mating the question, which asks for a look
     * @param population the population of the parents that state none
     * @param chance the chance in question; none where what is stated has no weight
     */
    static List<Tipping> of(
            Mating mating, Population population, Function<UncertainCross, Optional<Probability>> chance) {
        List<Tipping> found = new ArrayList<>();
        Set<String> read = mating.compiled().lociRead(mating.eventView());
        for (String id : read) {
            Distribution<String> frequencies = population.frequencies().get(id);
            boolean open = mating.parents().stream()
                    .anyMatch(parent -> parent.population().isEmpty()
                            && parent.genotypes().pairs(id).size() > 1);
            if (frequencies == null || !open) {
                continue;
            }
            Locus locus = mating.compiled().model().locus(id);
            for (Allele allele : locus.alleles().values()) {
                Probability stated = frequencies.probability(allele.id());
                if (!stated.isOne()) {
                    Curve curve = at -> chance.apply(mating.cross(Optional.of(with(population, id, allele.id(), at))));
                    curve.turn().ifPresent(at -> found.add(new Tipping(id, allele, at, stated)));
                }
            }
        }
        return found;
    }

    /** A chance by the frequency of one allele. */
    @FunctionalInterface
    private interface Curve {
        Optional<Probability> at(Probability frequency);

        default boolean isLikely(int step) {
            return at(Probability.of(step, GRID))
                    .filter(chance -> chance.compareTo(HALF) >= 0)
                    .isPresent();
        }

        /** Where the chance passes a half, if it does so from below. */
        default Optional<Probability> turn() {
            int below = 1;
            int above = GRID - 1;
            if (isLikely(below) || !isLikely(above)) {
                return Optional.empty();
            }
            while (above - below > 1) {
                int middle = (below + above) >>> 1;
                if (isLikely(middle)) {
                    above = middle;
                } else {
                    below = middle;
                }
            }
            return Optional.of(Probability.of(above, GRID));
        }
    }

    /** The population with another frequency of one allele, the others of its locus in proportion. */
    private static Population with(Population population, String locus, String allele, Probability frequency) {
        Map<String, Distribution<String>> all = new LinkedHashMap<>(population.frequencies());
        all.computeIfPresent(locus, (id, before) -> {
            Probability rest = before.probability(allele).complement();
            Map<String, Probability> after = new LinkedHashMap<>();
            before.asMap().forEach((other, share) -> {
                if (!other.equals(allele)) {
                    after.put(other, frequency.complement().times(share.dividedBy(rest)));
                }
            });
            after.put(allele, frequency);
            return Distribution.of(after);
        });
        return new Population(population.id(), population.title(), all, population.evidence());
    }
}
