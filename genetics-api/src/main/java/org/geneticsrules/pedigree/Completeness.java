package org.geneticsrules.pedigree;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.probability.Probability;

/**
 * How much of the ancestry of an individual is recorded. A coefficient of inbreeding of 0 means little where little is recorded.
 *
 * <p>With g(k) the share of the 2<sup>k</sup> places in generation k that hold a recorded ancestor, an ancestor in several places
 * counted in each:
 *
 * <ul>
 *   <li>{@link #equivalentGenerations} is the sum of g(k): the number of complete generations that would hold as many known places (Maignel,
 *       Boichard and Verrier 1996, from memory);
 *   <li>{@link #index} compares both sides of the ancestry: with c the mean of g over the generations looked at on the dam's and on the
 *       sire's side, the dam and the sire themselves being the first, it is 2 c(dam) c(sire) / (c(dam) + c(sire)), and 0 if one side is
 *       empty, because then no inbreeding could be seen (MacCluer et al. 1983, J. Hered. 74:394; formula from memory).
 * </ul>
 *
 * <p>A place held by one of several candidate sires counts by the shares of those who are recorded.
 *
 * @param generations g(1), g(2) and so on: parents, grandparents, as many generations as were asked for
 * @param damSide the mean of the shares known on the dam's side
 * @param sireSide the mean of the shares known on the sire's side
 */
public record Completeness(List<Probability> generations, Probability damSide, Probability sireSide) {

    /** The most generations that can be looked at. */
    public static final int MOST_GENERATIONS = 60;

    private static final Probability HALF = Probability.of(1, 2);

    /**
     * Copies the shares.
     *
     * @param generations the share known of each generation
     * @param damSide the mean on the dam's side
     * @param sireSide the mean on the sire's side
     */
    public Completeness {
        generations = ImmutableList.copyOf(generations);
    }

    /**
     * Measures the ancestry of an individual.
     *
     * @param pedigree a pedigree
     * @param individual id of an individual
     * @param generations how many generations to look at, 1 to 60; five are common practice
     * @return what is recorded of it
     * @throws IllegalArgumentException if it is not recorded, or the number of generations is out of range
     */
    public static Completeness of(Pedigree pedigree, String individual, int generations) {
        if (generations < 1 || generations > MOST_GENERATIONS) {
            throw new IllegalArgumentException(
                    "generations must be 1 to " + MOST_GENERATIONS + ", but were " + generations);
        }
        Links links = pedigree.links;
        List<Litter> litters = new ArrayList<>(pedigree.litters().values());
        int self = links.at(pedigree.individual(individual).id());
        Probability[] none = new Probability[links.litterOf.length];
        Arrays.fill(none, Probability.ZERO);
        Probability[] dams = none.clone();
        Probability[] sires = none.clone();
        if (links.litterOf[self] != Links.NONE) {
            Litter litter = litters.get(links.litterOf[self]);
            litter.dam().ifPresent(dam -> dams[links.at(dam)] = Probability.ONE);
            addSires(litter, Probability.ONE, links, sires);
        }
        List<Probability> known = new ArrayList<>();
        Probability[][] sides = {dams, sires};
        Probability[] means = {Probability.ZERO, Probability.ZERO};
        for (int generation = 1; generation <= generations; generation++) {
            Probability whole = Probability.ZERO;
            for (int side = 0; side < 2; side++) {
                Probability share = Probability.ZERO;
                for (Probability part : sides[side]) {
                    share = share.plus(part);
                }
                means[side] = means[side].plus(share.times(Probability.of(1, generations)));
                whole = whole.plus(share.times(HALF));
                if (generation < generations) {
                    sides[side] = parents(sides[side], links, litters, none);
                }
            }
            known.add(whole);
        }
        return new Completeness(known, means[0], means[1]);
    }

    /** The share of places that each individual holds one generation up. */
    private static Probability[] parents(Probability[] places, Links links, List<Litter> litters, Probability[] none) {
        Probability[] up = none.clone();
        for (int i = 0; i < places.length; i++) {
            if (places[i].isZero() || links.litterOf[i] == Links.NONE) {
                continue;
            }
            Litter litter = litters.get(links.litterOf[i]);
            Probability half = places[i].times(HALF);
            litter.dam().ifPresent(dam -> up[links.at(dam)] = up[links.at(dam)].plus(half));
            addSires(litter, half, links, up);
        }
        return up;
    }

    private static void addSires(Litter litter, Probability place, Links links, Probability[] up) {
        if (litter.sires() instanceof Paternity.Known known) {
            int sire = links.at(known.sire());
            up[sire] = up[sire].plus(place);
        } else if (litter.sires() instanceof Paternity.Candidates several) {
            for (Paternity.Candidate candidate : several.candidates()) {
                Optional<String> male = candidate.male();
                if (male.isPresent()) {
                    int sire = links.at(male.get());
                    up[sire] = up[sire].plus(place.times(candidate.share()));
                }
            }
        }
    }

    /**
     * Returns to how many complete generations the known places add up, within those looked at.
     *
     * @return from 0 to the number of generations looked at
     */
    public double equivalentGenerations() {
        return generations.stream().mapToDouble(Probability::toDouble).sum();
    }

    /**
     * Returns the index of completeness of both sides.
     *
     * @return from 0, if one side is empty, to 1, if all places are known
     */
    public Probability index() {
        if (damSide.isZero() || sireSide.isZero()) {
            return Probability.ZERO;
        }
        // The harmonic mean 2xy / (x + y), by halves, so that no step leaves the range 0 to 1.
        Probability mean = damSide.times(HALF).plus(sireSide.times(HALF));
        return damSide.times(sireSide).dividedBy(mean);
    }
}
