package org.geneticsrules.answer.recorded;

import org.geneticsrules.answer.recorded.LookNext.Information;
import org.geneticsrules.inference.Conclusions;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.inference.Posterior;

/**
 * What a test is expected to tell of the genotype at its locus, report by report: the mean of the information gained, I = sum over reports r
 * and genotypes g of P(r) P(g | r) log2 (P(g | r) / P(g)) (Shannon 1948; see {@link ExpectedInformation}). Not thread-safe.
 */
final class Gained {

    private final String animal;
    private final String locus;
    private final Conclusions before;
    private Standing worst = Standing.EXACT;
    private double bits;

    Gained(String animal, String locus, Conclusions before) {
        this.animal = animal;
        this.locus = locus;
        this.before = before;
    }

    /** Takes a report into account. */
    void by(Supposed.Then then) {
        if (then.standing() == Standing.CONTRADICTED) {
            return; // it is never reported
        }
        by(then.standing());
        if (worst == Standing.EXACT) {
            Posterior was = before.at(animal, locus).orElseThrow();
            then.found().at(animal, locus).orElseThrow().chances().forEach((pair, chance) -> {
                double earlier = was.chance(pair::equals);
                if (chance > 0 && earlier > 0) {
                    bits += then.chance() * chance * Math.log(chance / earlier) / Math.log(2);
                }
            });
        }
    }

    /** Takes into account that a report was not worked out. */
    void by(Standing standing) {
        worst = PlannedMating.worse(worst, standing);
    }

    Information bits() {
        return worst == Standing.EXACT ? Information.exact(bits) : Information.unsettled(worst);
    }
}
