package org.geneticsrules.simulation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.expression.Census;
import org.geneticsrules.trait.Sex;

/**
 * The kits of one litter as they are conceived, born and scored. A kit that is lost is counted and forgotten: the next is conceived in its
 * place, so one that is left has the chance that its parents make it times that of living, over the share that lives.
 */
final class Conception {

    /** After so many lost kits in a row it is worked out whether any can live. */
    private static final int PATIENCE = 64;

    /** When fewer kits than this live, none is waited for. */
    private static final double LEAST_SHARE = 1e-6;

    private final Genome genome;
    private final Meiosis meiosis;
    private final Chance chance;
    private final List<Kit> scored = new ArrayList<>();
    private long conceived;
    private long born;

    /** A kit that lived to be scored. */
    @SuppressWarnings("ArrayRecordComponent") // handed over, never compared
    record Kit(Sex sex, short[] strands, short[] sire) {}

    Conception(Genome genome, Meiosis meiosis, Chance chance) {
        this.genome = genome;
        this.meiosis = meiosis;
        this.chance = chance;
    }

    long conceived() {
        return conceived;
    }

    long born() {
        return born;
    }

    /** The kits that lived to be scored, in order. */
    List<Kit> scored() {
        return scored;
    }

    /** Conceives a kit, of a given sex if one is stated, and says how far it gets. */
    private Census conceive(short[] sire, short[] dam, Optional<Sex> stated) {
        Sex sex = stated.isPresent() ? stated.get() : chance.coin() ? Sex.FEMALE : Sex.MALE;
        short[] kit = meiosis.conceive(sire, dam, sex, chance);
        conceived++;
        if (!chance.happens(genome.birth(kit, sex))) {
            return Census.CONCEIVED;
        }
        born++;
        if (!chance.happens(genome.scoring(kit, sex))) {
            return Census.BORN;
        }
        scored.add(new Kit(sex, kit, sire));
        return Census.SCORED;
    }

    /**
     * Conceives kits until one gets as far as is asked.
     *
     * @return false if none ever can
     * @throws TooRareException if hardly any can
     */
    boolean until(Census step, short[] sire, short[] dam, Optional<Sex> sex) {
        for (int lost = 0; conceive(sire, dam, sex).compareTo(step) < 0; lost++) {
            if (lost == PATIENCE) {
                double share = share(sire, dam, sex, step);
                if (share == 0) {
                    return false;
                }
                if (share < LEAST_SHARE) {
                    throw new TooRareException(
                            "a kit of " + genome.genotype(sire) + " and " + genome.genotype(dam) + " is " + step.word()
                                    + " with a chance of about " + share + " only, and none came up",
                            lost,
                            "draw litters by the number of kits conceived.");
                }
            }
        }
        return true;
    }

    /** Whether two animals can have a kit of either sex that lives to be scored. */
    boolean canHaveKits(short[] sire, short[] dam) {
        return share(sire, dam, Optional.empty(), Census.SCORED) > 0;
    }

    private double share(short[] sire, short[] dam, Optional<Sex> sex, Census step) {
        double share = 0;
        for (Sex one : Sex.values()) {
            if (sex.isEmpty() || sex.get() == one) {
                share += meiosis.livingShare(sire, dam, one, step == Census.SCORED) / (sex.isEmpty() ? 2 : 1);
            }
        }
        return share;
    }
}
