package org.geneticsrules.comparison;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.inference.LitterLikelihood;
import org.geneticsrules.inference.LitterLikelihood.Seen;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Pedigree;
import org.jspecify.annotations.Nullable;

/** How likely the litters of kindreds are under one model, each given those looked at before it. */
final class ModelChances {

    private final Inference inference;
    private final LitterLikelihood likelihood;
    private final Pedigree pedigree;
    private final IdentityHashMap<Individual, Seen> seen = new IdentityHashMap<>();
    private final ByKind sires = new ByKind();
    private final ByKind dams = new ByKind();
    private final ByKind ofKits = new ByKind();

    ModelChances(Inference inference, Pedigree pedigree) {
        this.inference = inference;
        this.likelihood = inference.litters();
        this.pedigree = pedigree;
    }

    /**
     * Works out one kindred.
     *
     * @param kindred the kindred
     * @param litters its litters, in order
     * @return the logarithm of the chance of the founders' records, then for each litter that of its records given the founders' and those
     *     of earlier litters; what follows on something impossible is 0
     */
    double[] of(Kindred kindred, List<Noticed> litters) {
        return logs(chances(kindred), litters);
    }

    /**
     * Works out one of many kindreds.
     *
     * @param prepared the kindreds, always the same
     * @param number which one
     * @return as the other method
     */
    double[] of(Prepared prepared, int number) {
        return prepared.couples()
                .get(number)
                .map(couple -> of(couple, prepared.kinds()))
                .orElseGet(() ->
                        of(prepared.kindreds().get(number), prepared.litters().get(number)));
    }

    private double[] of(NumberedCouple couple, Kinds kinds) {
        Seen sire = sires.get(couple.sire(), kinds, likelihood::sire);
        Seen dam = dams.get(couple.dam(), kinds, likelihood::dam);
        List<Seen> all = new ArrayList<>();
        double[] logs = new double[couple.litters().length + 1];
        logs[0] = likelihood.log(sire, dam, all);
        for (int t = 0; (t + 1 < logs.length) && (logs[t] != Double.NEGATIVE_INFINITY); t++) {
            all.add(ofKits.get(couple.born()[t], kinds, likelihood::kit));
            double given = likelihood.log(sire, dam, all);
            all.remove(all.size() - 1);
            for (int kit : couple.litters()[t]) {
                all.add(ofKits.get(kit, kinds, likelihood::kit));
            }
            logs[t + 1] = given == Double.NEGATIVE_INFINITY ? given : likelihood.log(sire, dam, all) - given;
        }
        return logs;
    }

    /** What is known of animals in one place of a litter, by the numbers of their kinds. */
    private static final class ByKind {

        private final List<@Nullable Seen> known = new ArrayList<>();

        Seen get(int number, Kinds kinds, Function<Individual, Seen> take) {
            while (known.size() <= number) {
                known.add(null);
            }
            Seen found = known.get(number);
            if (found == null) {
                found = take.apply(kinds.example(number));
                known.set(number, found);
            }
            return found;
        }
    }

    /** Whether the records of a kindred can be. */
    boolean possible(Kindred kindred, List<Noticed> litters) {
        return whole(kindred, litters).soFar() != Double.NEGATIVE_INFINITY;
    }

    /** The chances of a kindred of whose litters all are taken in. */
    Chances whole(Kindred kindred, List<Noticed> litters) {
        Chances all = chances(kindred);
        litters.forEach(litter -> all.add(litter.litter(), litter.recorded()));
        return all;
    }

    /** The chances of a kindred of whose litters none is taken in yet. */
    Chances chances(Kindred kindred) {
        Optional<Individual> sire = kindred.sire(pedigree);
        Optional<Individual> dam = kindred.dam(pedigree);
        return sire.isEmpty() || dam.isEmpty()
                ? new KindredChances(inference, inference.loci(), kindred.founders())
                : new CoupleChances(likelihood, likelihood.sire(sire.get()), likelihood.dam(dam.get()), this::seen);
    }

    /** What was recorded of a kit. The same object is often met again. */
    private Seen seen(Individual kit) {
        return seen.computeIfAbsent(kit, likelihood::kit);
    }

    private static double[] logs(Chances chances, List<Noticed> litters) {
        double[] logs = new double[litters.size() + 1];
        logs[0] = chances.soFar();
        for (int t = 0; (t < litters.size()) && (logs[t] != Double.NEGATIVE_INFINITY); t++) {
            Noticed litter = litters.get(t);
            List<Individual> recorded = litter.recorded();
            double all = chances.with(litter.litter(), recorded);
            // that a litter was born is no evidence, so what it adds is told from one born of which nothing is recorded
            double given = litter.chances().length > 0
                    ? noticed(chances, litter)
                    : chances.with(litter.litter(), List.of(litter.earlier().orElse(litter.born())));
            logs[t + 1] = given == Double.NEGATIVE_INFINITY ? given : all - given + litter.found();
            chances.add(litter.litter(), recorded);
        }
        return logs;
    }

    /** The chance of what was known before and that a litter of this size is recorded. */
    private static double noticed(Chances chances, Noticed litter) {
        double[] terms = new double[litter.size() + 1];
        double most = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < terms.length; k++) {
            double chance = litter.chances()[k];
            terms[k] = chance == 0
                    ? Double.NEGATIVE_INFINITY
                    : Math.log(chance)
                            + logChoose(litter.size(), k)
                            + chances.with(litter.litter(), litter.supposed(k));
            most = Math.max(most, terms[k]);
        }
        if (most == Double.NEGATIVE_INFINITY) {
            return most;
        }
        double sum = 0;
        for (double term : terms) {
            sum += Math.exp(term - most);
        }
        return most + Math.log(sum);
    }

    private static double logChoose(int n, int k) {
        double log = 0;
        for (int i = 1; i <= Math.min(k, n - k); i++) {
            log += Math.log(n + 1.0 - i) - Math.log(i);
        }
        return log;
    }
}
