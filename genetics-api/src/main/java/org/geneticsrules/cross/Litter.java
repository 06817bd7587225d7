package org.geneticsrules.cross;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.math.BigInteger;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Diagram;
import org.geneticsrules.expression.Level;
import org.geneticsrules.expression.View;
import org.geneticsrules.expression.Weights;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Viability;
import org.geneticsrules.probability.Approximation;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sighting;

/** A question about the next kit of a litter, given kits already seen: the diagrams it needs, read once for each kind of parents. */
final class Litter {

    private final Model model;
    private final Sires sires;
    private final Diagram<Phenotype> asked;
    private final Map<Diagram<Boolean>, Integer> seen;

    private Litter(Model model, Sires sires, Diagram<Phenotype> asked, Map<Diagram<Boolean>, Integer> seen) {
        this.model = model;
        this.sires = sires;
        this.asked = asked;
        this.seen = seen;
    }

    static Litter of(CompiledModel compiled, Sires sires, View view, List<Sighting> seen) {
        // who is seen has been born
        Census census = view.census() == Census.CONCEIVED ? Census.BORN : view.census();
        Map<Sighting, Integer> alike = new LinkedHashMap<>();
        seen.forEach(kit -> alike.merge(kit, 1, Integer::sum));
        Map<Diagram<Boolean>, Integer> evidence = new LinkedHashMap<>();
        alike.forEach((kit, count) -> evidence.put(compiled.matching(ImmutableList.of(kit), census), count));
        return new Litter(compiled.model(), sires, compiled.diagram(view), evidence);
    }

    /** The question who of the kits is counted at all. */
    static Litter surviving(CompiledModel compiled, Sires sires, Census census) {
        return new Litter(compiled.model(), sires, compiled.survival(census), ImmutableMap.of());
    }

    /** All loci that matter. */
    Set<String> read() {
        Set<String> read = new LinkedHashSet<>(asked.loci());
        seen.keySet().forEach(kit -> read.addAll(kit.loci()));
        return model.loci().keySet().stream().filter(read::contains).collect(ImmutableSet.toImmutableSet());
    }

    /** Whether daughters and sons may differ in what matters. */
    boolean bothSexes() {
        return seen.keySet().stream().anyMatch(Litter::testsSex) || bothSexes(model, asked, read());
    }

    /** Whether daughters and sons may differ in an outcome that depends on some loci. */
    static boolean bothSexes(Model model, Diagram<?> asked, Set<String> read) {
        return testsSex(asked)
                || read.stream()
                        .map(model::locus)
                        .anyMatch(locus -> locus.dependsOnSex()
                                || locus.transmission().heterogametic().isPresent());
    }

    private static boolean testsSex(Diagram<?> diagram) {
        return diagram.levels().stream().anyMatch(level -> level instanceof Level.OfSex);
    }

    /** The weight of what a kit may show, parents being averaged wherever one kit depends on the mean alone. */
    Mixture<Phenotype> averages(ParentPairs parents) {
        Mixture<Phenotype> result = new Mixture<>();
        parents.visit(read(), this::decidesWhoIsLost, (weight, young) -> {
            for (int i = 0; i < young.size(); i++) {
                Weights weights = young.get(i).weigh(asked);
                BigInteger kept = weights.kept();
                if (kept.signum() > 0) {
                    Probability access = sires.access().get(i);
                    BigInteger share = weight.multiply(access.numerator());
                    BigInteger whole = kept.multiply(access.denominator());
                    for (int outcome = 0; outcome < weights.shares().length; outcome++) {
                        result.add(asked.outcomes().get(outcome), share.multiply(weights.shares()[outcome]), whole);
                    }
                }
            }
        });
        return result;
    }

    /** The same in floating point. */
    Optional<Approximation<Phenotype>> approximate(ParentPairs parents) {
        Approximation.Mixture<Phenotype> result = asked.mixture();
        BigInteger common =
                sires.access().stream().map(Probability::denominator).reduce(BigInteger.ONE, BigInteger::multiply);
        parents.visit(read(), this::decidesWhoIsLost, (weight, young) -> {
            for (int i = 0; i < young.size(); i++) {
                Probability access = sires.access().get(i);
                BigInteger share = weight.multiply(access.numerator()).multiply(common.divide(access.denominator()));
                young.get(i).approximate(asked).given().ifPresent(counted -> result.add(counted, share));
            }
        });
        return result.build();
    }

    /** The weight of kits that are lost. */
    Mixture<Boolean> lost(ParentPairs parents) {
        Mixture<Boolean> result = new Mixture<>();
        parents.visit(read(), unit -> false, (weight, young) -> {
            for (int i = 0; i < young.size(); i++) {
                Weights weights = young.get(i).weigh(asked);
                Probability access = sires.access().get(i);
                BigInteger share = weight.multiply(access.numerator());
                BigInteger whole = weights.total().multiply(access.denominator());
                result.add(true, share.multiply(weights.total().subtract(weights.kept())), whole);
                result.add(false, share.multiply(weights.kept()), whole);
            }
        });
        return result;
    }

    /** The share of kits that are lost differs from class to class of parents here, so that their kits must not be pooled. */
    boolean decidesWhoIsLost(Unit unit) {
        return asked.loses()
                && model.viability().values().stream().map(Viability::locus).anyMatch(unit.names()::contains);
    }

    /** The weight of each chance the next kit may have of showing a look and no other. */
    Mixture<Probability> chances(ParentPairs parents, Phenotype look) {
        Mixture<Probability> result = new Mixture<>();
        parents.visit(read(), unit -> true, (weight, young) -> {
            if (sires.perKit()) {
                Distribution<Integer> sire = perKit();
                add(result, weight, Probability.ONE, young, sire, look);
            } else {
                for (int i = 0; i < young.size(); i++) {
                    add(result, weight, sires.access().get(i), young, Distribution.certain(i), look);
                }
            }
        });
        return result;
    }

    private Distribution<Integer> perKit() {
        Map<Integer, Probability> chances = new LinkedHashMap<>();
        for (int i = 0; i < sires.access().size(); i++) {
            chances.put(i, sires.access().get(i));
        }
        return Distribution.of(chances);
    }

    /** Adds what parents of one kind contribute, each kit having its sire by chance. */
    private void add(
            Mixture<Probability> result,
            BigInteger weight,
            Probability access,
            List<Young> young,
            Distribution<Integer> sire,
            Phenotype look) {
        BigInteger up = weight.multiply(access.numerator());
        BigInteger down = access.denominator();
        for (Map.Entry<Diagram<Boolean>, Integer> kits : seen.entrySet()) {
            Probability likelihood = share(kits.getKey(), young, sire, true).pow(kits.getValue());
            up = up.multiply(likelihood.numerator());
            down = down.multiply(likelihood.denominator());
            if (up.signum() == 0) {
                return;
            }
        }
        if (access.isZero() || sire.outcomes().stream().noneMatch(i -> hasKits(young.get(i)))) {
            return;
        }
        result.add(share(asked, young, sire, look), up, down);
    }

    private boolean hasKits(Young young) {
        return !asked.loses() || young.weigh(asked).kept().signum() > 0;
    }

    /** The chance of an outcome among the kits that are counted. */
    private static <T> Probability share(Diagram<T> diagram, List<Young> young, Distribution<Integer> sire, T outcome) {
        int at = diagram.outcomes().indexOf(outcome);
        Probability sum = Probability.ZERO;
        for (Map.Entry<Integer, Probability> one : sire.asMap().entrySet()) {
            Weights weights = young.get(one.getKey()).weigh(diagram);
            BigInteger kept = weights.kept();
            if (at >= 0 && kept.signum() > 0) {
                sum = sum.plus(one.getValue().times(Probability.of(weights.shares()[at], kept)));
            }
        }
        return sum;
    }

    /** Phenotypes in the order of the diagram. */
    Set<Phenotype> inOrder(Set<Phenotype> found) {
        return asked.outcomes().stream().filter(found::contains).collect(ImmutableSet.toImmutableSet());
    }

    /** A distribution in the order of the diagram. */
    Distribution<Phenotype> inOrder(Distribution<Phenotype> found) {
        Map<Phenotype, Probability> ordered = new LinkedHashMap<>();
        asked.outcomes().forEach(outcome -> ordered.put(outcome, found.probability(outcome)));
        return Distribution.of(ordered);
    }
}
