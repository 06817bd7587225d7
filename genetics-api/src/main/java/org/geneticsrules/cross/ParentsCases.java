package org.geneticsrules.cross;

import com.google.common.collect.ImmutableList;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.geneticsrules.explanation.ParentsCase;
import org.geneticsrules.explanation.Segregation;
import org.geneticsrules.expression.Chain;
import org.geneticsrules.expression.Diagram;
import org.geneticsrules.expression.KitLaw;
import org.geneticsrules.expression.Weights;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Phase;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Sex;
import org.jspecify.annotations.Nullable;

/** Lists the kinds of parents there may be, box by box, and class by class where the share of lost kits depends on the class. */
final class ParentsCases {

    /** More kinds of parents than this are no explanation. */
    private static final int MOST_CASES = 4096;

    private final Model model;
    private final Diagram<?> diagram;
    private final List<Unit> units;
    private final boolean bothSexes;
    private final Predicate<Unit> enumerated;

    /** A kind of parents with what its kits carry. */
    record Kind(ParentsCase parents, Map<Unit, Chain> carried) {}

    /** What two parents may carry at one unit. */
    private record Couple(AtUnit sire, AtUnit dam, BigInteger weight) {}

    ParentsCases(Model model, Diagram<?> diagram, Set<String> read, boolean bothSexes, Predicate<Unit> enumerated) {
        this.model = model;
        this.diagram = diagram;
        this.units = Unit.of(model, read);
        this.bothSexes = bothSexes;
        this.enumerated = enumerated;
    }

    /** The kinds of parents, none of them without weight. */
    List<Kind> of(Sires sires, List<List<ParentBox>> males, List<ParentBox> dams, Set<String> read) {
        List<List<Couple>> couples = new ArrayList<>();
        List<Integer> sire = new ArrayList<>();
        Mixture<Integer> weights = new Mixture<>();
        for (int i = 0; i < males.size(); i++) {
            Probability access = sires.access().get(i);
            for (ParentBox male : males.get(i)) {
                for (ParentBox dam : dams) {
                    BigInteger outside = male.outside(read).multiply(dam.outside(read));
                    for (List<Couple> one : couples(male, dam)) {
                        BigInteger weight = outside.multiply(access.numerator());
                        for (Couple couple : one) {
                            weight = weight.multiply(couple.weight());
                        }
                        if (weight.signum() > 0) {
                            weights.add(couples.size(), weight, others(males, i).multiply(access.denominator()));
                            couples.add(one);
                            sire.add(i);
                        }
                    }
                }
            }
        }
        ImmutableList.Builder<Kind> kinds = ImmutableList.builder();
        int[] number = {0};
        weights.distribution()
                .ifPresent(shares -> shares.asMap().forEach((at, share) -> {
                    List<Kind> bySex = kinds(number[0], sire.get(at), couples.get(at), share);
                    kinds.addAll(bySex);
                    number[0] += bySex.size();
                }));
        return kinds.build();
    }

    /** What the boxes of a male weigh together, so that males count by their access alone. */
    private static BigInteger others(List<List<ParentBox>> males, int sire) {
        BigInteger sum = BigInteger.ZERO;
        for (ParentBox box : males.get(sire)) {
            sum = sum.add(box.outside(Set.of()));
        }
        return sum;
    }

    private List<List<Couple>> couples(ParentBox male, ParentBox dam) {
        List<List<Couple>> all = new ArrayList<>();
        all.add(ImmutableList.of());
        for (Unit unit : units) {
            List<Couple> here = new ArrayList<>();
            AtUnit his = male.at(unit);
            AtUnit hers = dam.at(unit);
            if (enumerated.test(unit)) {
                his.each(
                        unit,
                        (sire, a) -> hers.each(unit, (mother, b) -> here.add(new Couple(sire, mother, a.multiply(b)))));
            } else {
                here.add(new Couple(his, hers, his.mass().multiply(hers.mass())));
            }
            List<List<Couple>> longer = new ArrayList<>();
            for (List<Couple> before : all) {
                for (Couple couple : here) {
                    longer.add(ImmutableList.<Couple>builder()
                            .addAll(before)
                            .add(couple)
                            .build());
                }
            }
            if (longer.size() > MOST_CASES) {
                throw new TooLargeException(
                        "kinds of parents to explain",
                        longer.size(),
                        MOST_CASES,
                        "ask about fewer traits, or state more of the parents' genotypes.");
            }
            all = longer;
        }
        return all;
    }

    private List<Kind> kinds(int number, int sire, List<Couple> couples, Probability share) {
        Map<Sex, Map<Unit, Chain>> carried = new LinkedHashMap<>();
        Map<Sex, KitLaw> laws = new LinkedHashMap<>();
        for (Sex kit : bothSexes ? List.of(Sex.values()) : List.of(Sex.FEMALE)) {
            Map<Unit, Chain> pairs = new LinkedHashMap<>();
            List<Chain> expressions = new ArrayList<>();
            for (int u = 0; u < units.size(); u++) {
                Unit unit = units.get(u);
                Fertilisation union = new Fertilisation(
                        unit,
                        kit,
                        Gametes.of(unit, couples.get(u).sire(), true),
                        Gametes.of(unit, couples.get(u).dam(), true));
                pairs.put(unit, union.pairs());
                expressions.add(union.expressions());
            }
            carried.put(kit, pairs);
            laws.put(kit, KitLaw.of(kit, expressions));
        }
        Weights whole = new Young(Objects.requireNonNull(laws.get(Sex.FEMALE)), Optional.ofNullable(laws.get(Sex.MALE)))
                .weigh(diagram);
        List<Kind> kinds = new ArrayList<>();
        if (whole.kept().signum() == 0) {
            return kinds; // no kit of such parents is ever counted
        }
        Probability counted = Probability.of(whole.kept(), whole.total());
        carried.forEach((kit, chains) -> {
            Map<String, Segregation> loci = new LinkedHashMap<>();
            for (int u = 0; u < units.size(); u++) {
                Unit unit = units.get(u);
                Chain chain = Objects.requireNonNull(chains.get(unit));
                for (int l = 0; l < unit.loci().size(); l++) {
                    Locus locus = unit.loci().get(l);
                    loci.put(locus.id(), segregation(locus, l, couples.get(u), chain, kit));
                }
            }
            Map<String, Segregation> ordered = new LinkedHashMap<>();
            model.loci().keySet().stream()
                    .filter(loci::containsKey)
                    .forEach(name -> ordered.put(name, Objects.requireNonNull(loci.get(name))));
            kinds.add(new Kind(
                    new ParentsCase(
                            number + kinds.size(),
                            sire,
                            bothSexes ? Optional.of(kit) : Optional.empty(),
                            bothSexes ? share.times(Probability.of(1, 2)) : share,
                            counted,
                            ordered),
                    chains));
        });
        return kinds;
    }

    private static Segregation segregation(Locus locus, int at, Couple couple, Chain carried, Sex kit) {
        Map<AllelePair, Probability> kits = new LinkedHashMap<>();
        for (int p = 0; p < locus.pairs().size(); p++) {
            int pair = p;
            kits.put(locus.pairs().get(p), carried.chance((l, value) -> l != at || value == pair));
        }
        Distribution<AllelePair> pairs = Distribution.of(kits);
        return new Segregation(
                locus.id(),
                pairs(locus, couple.sire().pairs()[at]),
                strands(locus, couple.sire().strands()[at]),
                pairs(locus, couple.dam().pairs()[at]),
                strands(locus, couple.dam().strands()[at]),
                pairs,
                pairs.map(pair -> locus.expression(pair, kit)));
    }

    private static Optional<Phase.Strands> strands(Locus locus, int @Nullable [] lying) {
        if (lying == null) {
            return Optional.empty();
        }
        ImmutableList<Allele> alleles = ImmutableList.copyOf(locus.alleles().values());
        return Optional.of(new Phase.Strands(alleles.get(lying[0]), alleles.get(lying[1])));
    }

    private static Distribution<AllelePair> pairs(Locus locus, BigInteger[] weights) {
        Map<AllelePair, BigInteger> shares = new LinkedHashMap<>();
        for (int i = 0; i < weights.length; i++) {
            shares.put(locus.pairs().get(i), weights[i]);
        }
        return Distribution.ofWeights(shares);
    }
}
