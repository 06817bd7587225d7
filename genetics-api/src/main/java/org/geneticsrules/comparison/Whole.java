package org.geneticsrules.comparison;

import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * How all litters together go with a model: the chance of a set of litters no likelier than these.
 *
 * @param p that chance
 * @param standardError of it
 * @param drawn whether sets were drawn
 */
record Whole(Optional<Double> p, double standardError, boolean drawn) {

    private static final double SAME = 1e-9;

    /** Judges litters of which outcomes are known; of others nothing can be said. */
    static Whole of(List<LitterOutcomes> litters, int draws, SplittableRandom random) {
        if (litters.isEmpty()) {
            return new Whole(Optional.empty(), 0, false);
        }
        if (litters.size() == 1) {
            LitterOutcomes one = litters.get(0);
            return new Whole(Optional.of(one.p()), one.standardError(), !one.listed());
        }
        double observed = litters.stream().mapToDouble(LitterOutcomes::observed).sum();
        if (observed == Double.NEGATIVE_INFINITY) {
            return new Whole(Optional.of(0.0), 0, false);
        }
        int hits = 0;
        for (int d = 0; d < draws; d++) {
            double drawn = 0;
            for (LitterOutcomes litter : litters) {
                drawn += litter.draw(random);
            }
            hits += drawn <= observed + SAME * Math.max(1, Math.abs(observed)) ? 1 : 0;
        }
        double p = (hits + 1.0) / (draws + 1.0);
        return new Whole(Optional.of(p), Math.sqrt(p * (1 - p) / draws), true);
    }
}
