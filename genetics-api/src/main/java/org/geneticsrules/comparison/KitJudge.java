package org.geneticsrules.comparison;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.comparison.KitFit.Standing;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Paternity;

/** Judges kits: whether one can be, given all other records of its kindred, and whether it is rare, given all. */
final class KitJudge {

    /** Animals that are gone through for the kits of one kindred where each look takes a pedigree of its own. */
    private static final long MOST_ANIMALS = 50_000;

    private final CompiledModel compiled;
    private final boolean misread;

    KitJudge(CompiledModel compiled, boolean misread) {
        this.compiled = compiled;
        this.misread = misread;
    }

    /**
     * Judges a kit.
     *
     * @param kindred its kindred
     * @param litters the litters of that
     * @param place number of its litter among these
     * @param kit the kit
     * @param chances how likely litters are
     * @param known what is known of all of these litters
     * @param animals how many animals the kindred has
     */
    KitFit judge(
            Kindred kindred,
            List<Noticed> litters,
            int place,
            Individual kit,
            ModelChances chances,
            Chances known,
            int animals) {
        Noticed litter = litters.get(place);
        String home = litter.litter().id();
        boolean couple = chances.chances(kindred) instanceof CoupleChances;
        long work = couple ? 0 : (long) animals * animals;
        if (2 * work > MOST_ANIMALS) {
            return new KitFit(kit.id(), home, Standing.NOT_JUDGED, Double.NaN, Double.NaN);
        }
        double without = whole(kindred, litters, place, kit, Noticed.bare(kit), chances);
        if (without == Double.NEGATIVE_INFINITY) {
            return new KitFit(kit.id(), home, Standing.NOT_JUDGED, Double.NaN, Double.NaN);
        }
        double chance = Math.exp(whole(kindred, litters, place, kit, kit, chances) - without);
        if (chance == 0) {
            return new KitFit(kit.id(), home, Standing.IMPOSSIBLE, 0, 0);
        }
        double rarer = rarer(litter, kit, known, work);
        long mates = litter.kits().stream().filter(Noticed::isRecorded).count();
        // a kit this rare is met in a litter with at most so many times its chance
        Standing standing = rarer * mates < FittedModel.USUAL_RISK ? Standing.UNLIKELY : Standing.FINE;
        return new KitFit(kit.id(), home, standing, chance, rarer);
    }

    /**
     * The chance that one more kit of these parents, who may be what all records say of them, this kit's own included, shows a look no likelier
     * than this kit's: a kit that shows its parents to be carriers is not rare because carriers are.
     */
    private double rarer(Noticed litter, Individual kit, Chances known, long work) {
        Optional<Alike> way = Alike.of(kit, compiled);
        if (way.isEmpty() || litter.chances().length > 0) {
            return Double.NaN; // what is rare among all litters is not so among those that were noticed
        }
        if (litter.litter().dam().isEmpty() || !(litter.litter().sires() instanceof Paternity.Known)) {
            return Double.NaN; // one more kit might have other parents
        }
        Shown own = way.get().shown(kit);
        List<Shown> looks = way.get().all(compiled, misread, List.of(own)).stream()
                .filter(look -> look.sex().equals(own.sex()))
                .toList();
        if (looks.isEmpty() || (looks.size() * work > MOST_ANIMALS)) {
            return Double.NaN;
        }
        Individual more = kit.sex().map(litter.born()::with).orElse(litter.born());
        double born = known.with(litter.litter(), List.of(more));
        double chance = Math.exp(known.with(litter.litter(), List.of(way.get().showing(more, own))) - born);
        double sum = 0;
        double rarer = 0;
        for (Shown look : looks) {
            double one = Math.exp(known.with(litter.litter(), List.of(way.get().showing(more, look))) - born);
            sum += one;
            rarer += one <= chance * (1 + 1e-9) ? one : 0;
        }
        return Math.abs(sum - 1) > 1e-6 ? Double.NaN : Math.min(1, rarer);
    }

    /** The chance of all records of a kindred, with others in place of those of one kit. */
    private static double whole(
            Kindred kindred,
            List<Noticed> litters,
            int place,
            Individual kit,
            Individual instead,
            ModelChances chances) {
        Chances all = chances.chances(kindred);
        for (int t = 0; t < litters.size(); t++) {
            Noticed litter = litters.get(t);
            if (t == place) {
                List<Individual> kits = new ArrayList<>(litter.kits());
                kits.replaceAll(one -> one.id().equals(kit.id()) ? instead : one);
                litter = litter.with(kits);
            }
            all.add(litter.litter(), litter.recorded());
        }
        return all.soFar();
    }
}
