package org.geneticsrules.comparison;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.geneticsrules.inference.LitterLikelihood;
import org.geneticsrules.inference.LitterLikelihood.Seen;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;

/** The chances of a kindred that is one couple with their litters: all kits are of the same two parents, whichever litter they are of. */
final class CoupleChances implements Chances {

    private final LitterLikelihood litters;
    private final Seen sire;
    private final Seen dam;
    private final Function<Individual, Seen> seen;
    private final List<Seen> kits = new ArrayList<>();

    CoupleChances(LitterLikelihood litters, Seen sire, Seen dam, Function<Individual, Seen> seen) {
        this.litters = litters;
        this.sire = sire;
        this.dam = dam;
        this.seen = seen;
    }

    @Override
    public double soFar() {
        return litters.log(sire, dam, kits);
    }

    @Override
    public double with(Litter litter, List<Individual> further) {
        int before = kits.size();
        further.forEach(kit -> kits.add(seen.apply(kit)));
        double log = litters.log(sire, dam, kits);
        kits.subList(before, kits.size()).clear();
        return log;
    }

    @Override
    public void add(Litter litter, List<Individual> further) {
        further.forEach(kit -> kits.add(seen.apply(kit)));
    }
}
