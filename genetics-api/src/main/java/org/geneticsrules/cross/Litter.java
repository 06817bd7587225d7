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

    /** Shares of males are kept to so many binary places where floating point is asked for. */
    private static final int FRACTION_BITS = 128;

    private final Model model;
    private final Sires sires;
    private final Diagram<Phenotype> asked;
    private final Map<Diagram<Boolean>, Integer> seen;

    /** Tells which parents have any kits, where that bears on what is asked although the loci that decide it do not. */
    private final Optional<Diagram<Phenotype>> survival;

    private Litter(
            Model model,
            Sires sires,
            Diagram<Phenotype> asked,
            Map<Diagram<Boolean>, Integer> seen,
            Optional<Diagram<Phenotype>> survival) {
        this.model = model;
        this.sires = sires;
        this.asked = asked;
        this.seen = seen;
        this.survival = survival;
    }

    /** Which kits are counted: who is seen has been born. */
    static Census counted(View view, List<Sighting> seen) {
        return view.census() == Census.CONCEIVED && !seen.isEmpty() ? Census.BORN : view.census();
    }

    static Litter of(CompiledModel compiled, Sires sires, View view, List<Sighting> seen) {
        Census census = counted(view, seen);
        Map<Sighting, Integer> alike = new LinkedHashMap<>();
        seen.forEach(kit -> alike.merge(kit, 1, Integer::sum));
        Map<Diagram<Boolean>, Integer> evidence = new LinkedHashMap<>();
        alike.forEach((kit, count) -> evidence.put(compiled.matching(ImmutableList.of(kit), census), count));
        return new Litter(compiled.model(), sires, compiled.diagram(view), evidence, Optional.empty());
    }

    /** The question who of the kits is counted at all. */
    static Litter surviving(CompiledModel compiled, Sires sires, Census census) {
        return new Litter(compiled.model(), sires, compiled.survival(census), ImmutableMap.of(), Optional.empty());
    }

    /** The same question about parents of whom it is known that they have kits which are counted. */
    Litter ofParentsWithKits(Diagram<Phenotype> surviving) {
        return new Litter(model, sires, asked, seen, Optional.of(surviving));
    }

    /** Whether some animals never live to be counted, so that parents may lose all their kits. */
    static boolean hasLethals(Model model, Census census) {
        return model.viability().values().stream()
                .anyMatch(one -> (one.birth().isZero() && census != Census.CONCEIVED)
                        || (one.scored().isZero() && census == Census.SCORED));
    }

    /** Whether there may be parents who have no kits that are counted. */
    boolean mayBeBarren(ParentPairs parents) {
        boolean[] barren = {false};
        parents.visit(
                read(),
                this::decidesWhoIsLost,
                (weight, young) -> barren[0] |= !young.stream().allMatch(this::hasKits));
        return barren[0];
    }

    /** Whether a kit that shows anything at all may be lost, so that the statements about that matter. */
    private boolean loses() {
        return asked.loses() || survival.isPresent();
    }

    /** Whether having kits at all sorts the parents there may be. */
    boolean sorts() {
        return survival.isPresent();
    }

    /** All loci that matter. */
    Set<String> read() {
        Set<String> read = new LinkedHashSet<>(asked.loci());
        seen.keySet().forEach(kit -> read.addAll(kit.loci()));
        survival.ifPresent(kits -> read.addAll(kits.loci()));
        return model.loci().keySet().stream().filter(read::contains).collect(ImmutableSet.toImmutableSet());
    }

    /** Whether daughters and sons may differ in what matters. */
    boolean bothSexes() {
        return seen.keySet().stream().anyMatch(Litter::testsSex)
                || survival.filter(Litter::testsSex).isPresent()
                || bothSexes(model, asked, read());
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
            Probability fertile = sires.perKit() ? fertile(young) : Probability.ONE;
            for (int i = 0; i < young.size(); i++) {
                Weights weights = young.get(i).weigh(asked);
                BigInteger kept = weights.kept();
                Probability access = sires.access().get(i);
                if (!access.isZero() && hasKits(young.get(i))) {
                    access = access.dividedBy(fertile);
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
        parents.visit(read(), this::decidesWhoIsLost, (weight, young) -> {
            Probability fertile = sires.perKit() ? fertile(young) : Probability.ONE;
            for (int i = 0; i < young.size(); i++) {
                Probability access = sires.access().get(i);
                if (!access.isZero() && hasKits(young.get(i))) {
                    access = access.dividedBy(fertile);
                    BigInteger share = weight.multiply(access.numerator())
                            .shiftLeft(FRACTION_BITS)
                            .divide(access.denominator());
                    young.get(i).approximate(asked).given().ifPresent(counted -> result.add(counted, share));
                }
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
        return loses()
                && model.viability().values().stream().map(Viability::locus).anyMatch(unit.names()::contains);
    }

    /** The weight of each chance the next kit may have of showing a look and no other. */
    Mixture<Probability> chances(ParentPairs parents, Phenotype look) {
        Mixture<Probability> result = new Mixture<>();
        parents.visit(read(), unit -> true, (weight, young) -> {
            if (sires.perKit()) {
                perKit(young).ifPresent(sire -> add(result, weight, Probability.ONE, young, sire, look));
            } else {
                for (int i = 0; i < young.size(); i++) {
                    add(result, weight, sires.access().get(i), young, Distribution.certain(i), look);
                }
            }
        });
        return result;
    }

    /** The share that the males who have kits with this dam have together. */
    private Probability fertile(List<Young> young) {
        Probability fertile = Probability.ZERO;
        for (int i = 0; i < young.size(); i++) {
            fertile = hasKits(young.get(i)) ? fertile.plus(sires.access().get(i)) : fertile;
        }
        return fertile;
    }

    /** Who is the sire of a kit that is counted: one of the males who have any; empty if none has. */
    private Optional<Distribution<Integer>> perKit(List<Young> young) {
        Probability fertile = fertile(young);
        if (fertile.isZero()) {
            return Optional.empty();
        }
        Map<Integer, Probability> chances = new LinkedHashMap<>();
        for (int i = 0; i < young.size(); i++) {
            chances.put(i, hasKits(young.get(i)) ? sires.access().get(i).dividedBy(fertile) : Probability.ZERO);
        }
        return Optional.of(Distribution.of(chances));
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

    /** Whether any kit of a male is counted, by all that decides about it here. */
    boolean hasKits(Young young) {
        return hasKits(asked, young)
                && seen.keySet().stream().allMatch(kit -> hasKits(kit, young))
                && survival.stream().allMatch(kits -> hasKits(kits, young));
    }

    private static boolean hasKits(Diagram<?> diagram, Young young) {
        return !diagram.loses() || young.weigh(diagram).kept().signum() > 0;
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
