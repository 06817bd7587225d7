package org.geneticsrules.cross;

import com.google.common.collect.ImmutableList;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
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
    private final Litter litter;
    private final List<Unit> units;
    private final boolean bothSexes;

    /** A kind of parents with what its kits carry. */
    record Kind(ParentsCase parents, Map<Unit, Chain> carried) {}

    /** What two parents may carry at one unit, and which of the classes of dams this is. */
    private record Couple(AtUnit sire, AtUnit dam, BigInteger weight, int damClass) {}

    /** What the kits of two parents carry, and how many of them are counted. */
    private record Kits(List<Couple> couples, Map<Sex, Map<Unit, Chain>> carried, Weights weights, boolean counted) {}

    /** One kind of parents as it is listed: one of the males, one of the classes of dams, and its weight among those of this male. */
    private record Entry(int sire, List<Integer> dam, BigInteger weight, Kits kits) {}

    ParentsCases(Model model, Diagram<?> diagram, Litter litter) {
        this.model = model;
        this.diagram = diagram;
        this.litter = litter;
        this.units = Unit.of(model, litter.read());
        this.bothSexes = litter.bothSexes();
    }

    /** The kinds of parents that have kits which are counted, none of them without weight. */
    List<Kind> of(Sires sires, List<List<ParentBox>> males, List<ParentBox> dams, Set<String> read) {
        List<Entry> entries = new ArrayList<>();
        for (int i = 0; i < males.size(); i++) {
            for (ParentBox male : males.get(i)) {
                for (int d = 0; d < dams.size(); d++) {
                    ParentBox dam = dams.get(d);
                    BigInteger outside = male.outside(read).multiply(dam.outside(read));
                    for (List<Couple> couples : couples(male, dam)) {
                        BigInteger weight = outside;
                        List<Integer> damClass = new ArrayList<>();
                        damClass.add(d);
                        for (Couple couple : couples) {
                            weight = weight.multiply(couple.weight());
                            damClass.add(couple.damClass());
                        }
                        entries.add(new Entry(i, damClass, weight, kits(couples)));
                    }
                }
            }
        }
        Turns turns = new Turns(sires, entries);
        Mixture<Integer> weights = new Mixture<>();
        for (int at = 0; at < entries.size(); at++) {
            Entry entry = entries.get(at);
            if (entry.kits().counted()) {
                Probability turn = turns.of(entry.sire(), entry.dam());
                weights.add(
                        at,
                        entry.weight().multiply(turn.numerator()),
                        others(males, entry.sire()).multiply(turn.denominator()));
            }
        }
        List<Kind> kinds = new ArrayList<>();
        weights.distribution()
                .ifPresent(shares -> shares.asMap().forEach((at, share) -> add(kinds, entries.get(at), share)));
        return ImmutableList.copyOf(kinds);
    }

    /**
     * How often each male is the sire of a kit of a dam of some class with whom he has kits: by his access, or, where each kit has a
     * sire of its own, by his access among the males who have kits with her, averaged over what the others may be.
     */
    private static final class Turns {
        private final Sires sires;
        private final Map<List<Integer>, BigInteger[]> all = new LinkedHashMap<>();
        private final Map<List<Integer>, BigInteger[]> fertile = new LinkedHashMap<>();

        Turns(Sires sires, List<Entry> entries) {
            this.sires = sires;
            for (Entry entry : entries) {
                add(all, entry);
                if (entry.kits().counted()) {
                    add(fertile, entry);
                }
            }
        }

        private void add(Map<List<Integer>, BigInteger[]> sums, Entry entry) {
            BigInteger[] sum = sums.computeIfAbsent(entry.dam(), dam -> {
                BigInteger[] zeros = new BigInteger[sires.males().size()];
                Arrays.fill(zeros, BigInteger.ZERO);
                return zeros;
            });
            sum[entry.sire()] = sum[entry.sire()].add(entry.weight());
        }

        Probability of(int sire, List<Integer> dam) {
            Probability access = sires.access().get(sire);
            return sires.perKit() && !access.isZero() ? among(sire, dam, 0, access) : access;
        }

        /** The mean over what the males from one on may be, given the access of those before who have kits with her. */
        private Probability among(int sire, List<Integer> dam, int male, Probability sum) {
            if (male == sires.males().size()) {
                return sires.access().get(sire).dividedBy(sum);
            }
            if (male == sire) {
                return among(sire, dam, male + 1, sum);
            }
            BigInteger whole = Objects.requireNonNull(all.get(dam))[male];
            Probability has = Probability.of(Objects.requireNonNull(fertile.get(dam))[male], whole);
            Probability with =
                    among(sire, dam, male + 1, sum.plus(sires.access().get(male)));
            return has.isOne() ? with : has.times(with).plus(has.complement().times(among(sire, dam, male + 1, sum)));
        }
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
            if (litter.decidesWhoIsLost(unit)) {
                his.each(unit, (sire, a) -> {
                    int[] damClass = {0};
                    hers.each(unit, (mother, b) -> here.add(new Couple(sire, mother, a.multiply(b), damClass[0]++)));
                });
            } else {
                here.add(new Couple(his, hers, his.mass().multiply(hers.mass()), 0));
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

    private Kits kits(List<Couple> couples) {
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
        Young young = new Young(Objects.requireNonNull(laws.get(Sex.FEMALE)), Optional.ofNullable(laws.get(Sex.MALE)));
        return new Kits(couples, carried, young.weigh(diagram), litter.hasKits(young));
    }

    /** Adds parents of one kind, once for each sex of a kit that may differ. */
    private void add(List<Kind> kinds, Entry entry, Probability share) {
        Kits kits = entry.kits();
        Probability counted =
                Probability.of(kits.weights().kept(), kits.weights().total());
        kits.carried().forEach((kit, chains) -> {
            Map<String, Segregation> loci = new LinkedHashMap<>();
            for (int u = 0; u < units.size(); u++) {
                Unit unit = units.get(u);
                Chain chain = Objects.requireNonNull(chains.get(unit));
                for (int l = 0; l < unit.loci().size(); l++) {
                    Locus locus = unit.loci().get(l);
                    loci.put(locus.id(), segregation(locus, l, kits.couples().get(u), chain, kit));
                }
            }
            Map<String, Segregation> ordered = new LinkedHashMap<>();
            model.loci().keySet().stream()
                    .filter(loci::containsKey)
                    .forEach(name -> ordered.put(name, Objects.requireNonNull(loci.get(name))));
            kinds.add(new Kind(
                    new ParentsCase(
                            kinds.size(),
                            entry.sire(),
                            bothSexes ? Optional.of(kit) : Optional.empty(),
                            bothSexes ? share.times(Probability.of(1, 2)) : share,
                            counted,
                            ordered),
                    chains));
        });
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
