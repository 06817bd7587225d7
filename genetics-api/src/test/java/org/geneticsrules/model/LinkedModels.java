package org.geneticsrules.model;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.RandomDistribution;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Recombination;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Sex;

/**
 * Models whose loci are linked and on all kinds of chromosomes, and genotypes of theirs with phase, for laws about genotypes as such:
 * the models have no traits.
 */
final class LinkedModels {

    private LinkedModels() {}

    /** A model from a seed, the same everywhere. */
    static Arbitrary<Model> models() {
        return Arbitraries.longs()
                .between(0, Long.MAX_VALUE)
                .withDistribution(RandomDistribution.uniform())
                .map(LinkedModels::model)
                .withoutEdgeCases();
    }

    /**
     * Up to four groups of one to four loci and up to two loci in none; the sex chromosomes are X and Y or Z and W. Loci of a group are
     * declared in another order than that of the map, and one symbol in three belongs to several loci.
     */
    static Model model(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Transmission> kinds = new ArrayList<>(List.of(Transmission.AUTOSOMAL, Transmission.MATERNAL));
        kinds.addAll(
                random.nextBoolean()
                        ? List.of(Transmission.X, Transmission.Y)
                        : List.of(Transmission.Z, Transmission.W));
        List<LinkageGroup> groups = new ArrayList<>();
        Map<String, Transmission> transmissions = new LinkedHashMap<>();
        int next = 1;
        int chromosomes = random.nextInt(1, 5);
        for (int g = 1; g <= chromosomes; g++) {
            Transmission kind = kinds.get(random.nextInt(kinds.size()));
            List<String> loci = new ArrayList<>();
            List<Probability> fractions = new ArrayList<>();
            int size = random.nextInt(1, 5);
            for (int i = 0; i < size; i++) {
                loci.add(i % 2 == 0 ? loci.size() : 0, "L" + next);
                transmissions.put("L" + next++, kind);
                if (i > 0 && kind.recombines()) {
                    fractions.add(Probability.of(random.nextInt(0, 9), 16));
                }
            }
            groups.add(LinkageGroup.of("g" + g, kind, loci, Recombination.Fractions.of(fractions)));
        }
        for (int i = random.nextInt(3); i > 0; i--) {
            transmissions.put("L" + next++, Transmission.AUTOSOMAL);
        }
        ModelBuilder builder = Model.builder(
                "linked.seed" + seed, "1", Catalogue.builder("linked.none", "1").build());
        transmissions.forEach((id, kind) -> builder.locus(id, locus -> describe(locus, id, kind, random)));
        groups.forEach(builder::group);
        return builder.build();
    }

    /** Dominance is that of the declared order, in males of one locus in three the reverse. */
    private static void describe(LocusBuilder locus, String id, Transmission kind, SplittableRandom random) {
        List<String> alleles = new ArrayList<>();
        int count = random.nextInt(1, 4);
        for (int a = 1; a <= count; a++) {
            String symbol = random.nextInt(3) == 0 ? "s" + a : "a" + id.substring(1) + "." + a;
            locus.allele(new Allele("allele" + a, symbol, Optional.empty(), List.of()));
            alleles.add("allele" + a);
        }
        if (random.nextInt(3) > 0) {
            state(locus.common, alleles);
        } else {
            List<String> reversed = new ArrayList<>(alleles);
            Collections.reverse(reversed);
            locus.in(Sex.FEMALE, dominance -> state(dominance, alleles));
            locus.in(Sex.MALE, dominance -> state(dominance, reversed));
        }
        if (random.nextBoolean()) {
            locus.wildType(alleles.get(random.nextInt(count)));
        }
        if (kind == Transmission.Y || kind == Transmission.W) {
            locus.absent("shows allele1");
        }
    }

    private static void state(DominanceBuilder dominance, List<String> order) {
        for (int i = 0; i < order.size(); i++) {
            dominance.shows(order.get(i), "shows " + order.get(i));
            for (int j = i + 1; j < order.size(); j++) {
                dominance.dominant(order.get(i), order.get(j));
            }
        }
    }

    /** A genotype that covers every locus, of an animal of some sex, with the phase of some loci. */
    static Genotype genotype(Model model, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Sex sex = random.nextBoolean() ? Sex.FEMALE : Sex.MALE;
        List<AllelePair> pairs = new ArrayList<>();
        Map<String, Phase.Strands> strands = new LinkedHashMap<>();
        for (Locus locus : model.loci().values()) {
            List<AllelePair> possible = locus.pairs(sex);
            AllelePair pair = possible.get(random.nextInt(possible.size()));
            pairs.add(pair);
            if (pair.alleles().size() == 2 && random.nextInt(3) > 0) {
                int first = random.nextInt(2);
                strands.put(
                        locus.id(),
                        new Phase.Strands(
                                pair.alleles().get(first), pair.alleles().get(1 - first)));
            }
        }
        return Genotype.of(model, pairs, Phase.of(model, strands));
    }
}
