package org.geneticsrules.testing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Recombination;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.model.Viability;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Sex;

/**
 * Random loci with the chromosomes on which they lie and what they mean for life: few enough for all gametes to be listed.
 *
 * @param loci the loci, in declared order
 * @param groups the linkage groups; loci of one sex chromosome are in one group
 * @param viability what is stated about viability
 */
record RandomGenome(List<RandomStrandLocus> loci, List<LinkageGroup> groups, List<Viability> viability) {

    private static final List<List<Transmission>> SEX_CHROMOSOMES = List.of(
            List.of(),
            List.of(Transmission.X, Transmission.X, Transmission.Y),
            List.of(Transmission.Z, Transmission.Z, Transmission.W));

    private static final List<Probability> FRACTIONS = List.of(
            Probability.ZERO,
            Probability.of(1, 10),
            Probability.of(1, 5),
            Probability.of(1, 4),
            Probability.of(1, 3),
            Probability.of(1, 2));

    static RandomGenome draw(SplittableRandom random, RandomModels.Size size) {
        int count = size.loci() == 1 ? 1 : Math.max(1, size.loci() - random.nextInt(10) / 5 - random.nextInt(10) / 8);
        List<Transmission> special = SEX_CHROMOSOMES.get(random.nextInt(10) % 3);
        List<RandomStrandLocus> loci = new ArrayList<>();
        int most = random.nextBoolean() ? size.alleles() : Math.min(2, size.alleles());
        for (int i = 0; i < count; i++) {
            Transmission transmission = random.nextInt(20) == 0
                    ? Transmission.MATERNAL
                    : special.isEmpty() || random.nextInt(5) < 2
                            ? Transmission.AUTOSOMAL
                            : RandomLocus.pick(random, special);
            loci.add(RandomStrandLocus.draw(random, i, most, transmission));
            // One locus of many alleles is enough; the others have two.
            most = loci.get(i).locus().alleles().size() > 2 ? 2 : most;
        }
        List<LinkageGroup> groups = groups(random, loci);
        return new RandomGenome(loci, groups, viability(random, loci));
    }

    private static List<LinkageGroup> groups(SplittableRandom random, List<RandomStrandLocus> loci) {
        List<LinkageGroup> groups = new ArrayList<>();
        for (Transmission transmission : Transmission.values()) {
            List<String> ids = new ArrayList<>();
            for (RandomStrandLocus locus : loci) {
                if (locus.transmission() == transmission) {
                    ids.add(random.nextInt(ids.size() + 1), locus.locus().id());
                }
            }
            boolean autosomal = transmission == Transmission.AUTOSOMAL;
            if (autosomal && ids.size() == 3 && random.nextInt(3) == 0) {
                ids.remove(random.nextInt(3));
            }
            if (!ids.isEmpty() && (!autosomal || random.nextInt(10) < (ids.size() > 1 ? 8 : 1))) {
                Optional<String> evidence = random.nextInt(4) == 0 ? Optional.of("study") : Optional.empty();
                groups.add(new LinkageGroup(
                        "chromosome " + transmission.word(),
                        Optional.empty(),
                        transmission,
                        ids,
                        recombination(random, transmission, ids),
                        evidence));
            }
        }
        return groups;
    }

    private static Recombination recombination(SplittableRandom random, Transmission transmission, List<String> ids) {
        int intervals = transmission.recombines() ? ids.size() - 1 : 0;
        int kind = intervals == 0 ? 0 : random.nextInt(10);
        if (kind < 4) {
            return Recombination.Fractions.of(fractions(random, intervals));
        } else if (kind < 7 && transmission == Transmission.AUTOSOMAL) {
            return new Recombination.Fractions(fractions(random, intervals), fractions(random, intervals));
        }
        Map<String, Integer> weights = new LinkedHashMap<>();
        for (int set = 0; set < 1 << intervals; set++) {
            List<String> named = new ArrayList<>();
            for (int i = 0; i < intervals; i++) {
                if ((set >> i & 1) == 1) {
                    named.add(ids.get(i) + "-" + ids.get(i + 1));
                }
            }
            weights.put(
                    named.isEmpty() ? "none" : String.join(" ", named), random.nextInt(weights.isEmpty() ? 1 : 0, 6));
        }
        return new Recombination.Crossovers(Distribution.ofWeights(weights).asMap());
    }

    private static List<Probability> fractions(SplittableRandom random, int intervals) {
        List<Probability> fractions = new ArrayList<>();
        for (int i = 0; i < intervals; i++) {
            fractions.add(RandomLocus.pick(random, FRACTIONS));
        }
        return fractions;
    }

    /** About half of the models state something; no sex is left without any animal that can live. */
    private static List<Viability> viability(SplittableRandom random, List<RandomStrandLocus> loci) {
        List<Viability> viability = new ArrayList<>();
        boolean any = random.nextInt(20) < 9;
        for (RandomStrandLocus locus : loci) {
            if (any && (viability.isEmpty() || random.nextInt(3) == 0)) {
                int kind = random.nextInt(6);
                List<String> all = locus.locus().expressions();
                List<String> spared = all.stream().filter(locus::canDoWithout).toList();
                String expression = RandomLocus.pick(random, kind < 4 && !spared.isEmpty() ? spared : all);
                Probability lethal = locus.canDoWithout(expression) ? Probability.ZERO : Probability.of(1, 2);
                viability.add(new Viability(
                        "life " + locus.locus().id(),
                        locus.locus().id(),
                        Set.of(expression),
                        random.nextInt(4) == 0
                                ? Optional.of(RandomLocus.pick(random, List.of(Sex.values())))
                                : Optional.empty(),
                        kind < 4 ? lethal : kind < 5 ? Probability.of(random.nextInt(1, 4), 4) : Probability.ONE,
                        kind % 3 == 2 ? Probability.of(random.nextInt(1, 3), 3) : Probability.ONE,
                        random.nextInt(3) == 0 ? Optional.of("practice") : Optional.empty()));
            }
        }
        return viability;
    }

    /** What conditions may read of the loci. */
    Map<String, List<String>> expressions() {
        Map<String, List<String>> expressions = new LinkedHashMap<>();
        loci.forEach(locus -> expressions.put(locus.locus().id(), locus.locus().expressions()));
        return expressions;
    }

    void addTo(ModelBuilder builder) {
        loci.forEach(locus -> builder.locus(locus.locus().id(), locus::describe));
        groups.forEach(builder::group);
        viability.forEach(builder::viability);
    }
}
