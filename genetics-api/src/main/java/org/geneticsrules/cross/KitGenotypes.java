package org.geneticsrules.cross;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Sex;

/** Lists the genotypes of the kits of two known parents. */
final class KitGenotypes {

    /** More offspring genotypes than this are not listed. */
    private static final double MOST_GENOTYPES = 1 << 20;

    private final Model model;
    private final ParentBox sire;
    private final ParentBox dam;

    KitGenotypes(Model model, ParentBox sire, ParentBox dam) {
        this.model = model;
        this.sire = sire;
        this.dam = dam;
    }

    Distribution<Genotype> of(Collection<String> loci) {
        List<Unit> units = Unit.of(model, loci);
        boolean bothSexes = loci.stream()
                .anyMatch(locus ->
                        model.locus(locus).transmission().heterogametic().isPresent());
        Mixture<Genotype> kits = new Mixture<>();
        for (Sex sex : bothSexes ? List.of(Sex.values()) : List.of(Sex.FEMALE)) {
            List<Distribution<List<AllelePair>>> byUnit = new ArrayList<>();
            double count = 1;
            for (Unit unit : units) {
                Distribution<List<AllelePair>> pairs = pairs(unit, sex);
                count *= pairs.outcomes().size();
                if (count > MOST_GENOTYPES) {
                    throw new TooLargeException(
                            "offspring genotypes", count, MOST_GENOTYPES, "ask about fewer loci, or about phenotypes.");
                }
                byUnit.add(pairs);
            }
            Distribution<List<AllelePair>> all = Distribution.certain(List.of());
            for (Distribution<List<AllelePair>> pairs : byUnit) {
                all = all.product(pairs, KitGenotypes::joined);
            }
            all.asMap()
                    .forEach((pairs, chance) ->
                            kits.add(Genotype.of(model, pairs), chance.numerator(), chance.denominator()));
        }
        return kits.distribution().orElseThrow();
    }

    private static List<AllelePair> joined(List<AllelePair> before, List<AllelePair> more) {
        List<AllelePair> joined = new ArrayList<>(before);
        joined.addAll(more);
        return joined;
    }

    private Distribution<List<AllelePair>> pairs(Unit unit, Sex sex) {
        Map<List<AllelePair>, BigInteger> weights = new LinkedHashMap<>();
        List<Locus> loci = unit.loci();
        new Fertilisation(unit, sex, Gametes.of(unit, sire.at(unit), true), Gametes.of(unit, dam.at(unit), true))
                .pairs()
                .each((values, weight) -> {
                    List<AllelePair> pairs = new ArrayList<>();
                    for (int l = 0; l < values.length; l++) {
                        pairs.add(loci.get(l).pairs().get(values[l]));
                    }
                    weights.merge(pairs, weight, BigInteger::add);
                });
        return Distribution.ofWeights(weights);
    }
}
