package org.geneticsrules.cross;

import com.google.common.collect.ImmutableList;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Sex;

/** Lists the distinct gametes of one parent: unit by unit, and for kits of either sex where the parent decides about that. */
final class GameteTable {

    private final Sex parent;
    private final ImmutableList<String> asked;
    private final List<Unit> units;
    private final List<Distribution<List<Allele>>> byUnit = new ArrayList<>();

    private GameteTable(Model model, ParentBox box, Collection<String> loci) {
        this.parent = box.sex();
        this.asked = ImmutableList.copyOf(loci);
        this.units = Unit.of(model, loci);
        double count = decides() ? 2 : 1;
        for (Unit unit : units) {
            boolean any = unit.transmission().strands(parent) > 0;
            Distribution<List<Allele>> alleles =
                    any ? alleles(unit, Gametes.of(unit, box.at(unit), true)) : Distribution.certain(List.of());
            count *= alleles.outcomes().size();
            require(count);
            byUnit.add(alleles);
        }
    }

    static Distribution<Gamete> of(Model model, ParentBox box, Collection<String> loci) {
        return new GameteTable(model, box, loci).gametes();
    }

    private static void require(double count) {
        if (count > PunnettSquare.MOST_GAMETES) {
            throw new TooLargeException(
                    "distinct gametes of one parent",
                    count,
                    PunnettSquare.MOST_GAMETES,
                    "ask for the square of fewer loci.");
        }
    }

    /** Whether the sex of a kit depends on which gamete of this parent it comes of, and a locus tells which that is. */
    private boolean decides() {
        return units.stream()
                .anyMatch(unit -> unit.transmission()
                        .heterogametic()
                        .filter(parent::equals)
                        .isPresent());
    }

    private Distribution<Gamete> gametes() {
        if (!decides()) {
            return gametes(Optional.empty());
        }
        Map<Sex, Integer> halves = new LinkedHashMap<>();
        for (Sex kit : Sex.values()) {
            halves.put(kit, 1);
        }
        return Distribution.ofWeights(halves).flatMap(kit -> gametes(Optional.of(kit)));
    }

    private Distribution<Gamete> gametes(Optional<Sex> kit) {
        Distribution<Map<String, Allele>> all = Distribution.certain(Map.of());
        List<Unit> passed = new ArrayList<>();
        for (int u = 0; u < units.size(); u++) {
            Unit unit = units.get(u);
            // where the sex of the kit does not matter, any will do
            if (unit.transmission().passes(parent, kit.orElse(Sex.FEMALE))) {
                passed.add(unit);
                all = all.product(byUnit.get(u), (before, alleles) -> {
                    Map<String, Allele> joined = new LinkedHashMap<>(before);
                    for (int l = 0; l < alleles.size(); l++) {
                        joined.put(unit.loci().get(l).id(), alleles.get(l));
                    }
                    return joined;
                });
            }
        }
        Optional<String> chromosome = kit.map(this::chromosome)
                .filter(letter -> passed.stream()
                        .noneMatch(unit -> unit.transmission().word().equals(letter)));
        return all.map(alleles -> new Gamete(inOrder(alleles), kit, chromosome));
    }

    private Map<String, Allele> inOrder(Map<String, Allele> alleles) {
        Map<String, Allele> ordered = new LinkedHashMap<>();
        asked.stream()
                .filter(alleles::containsKey)
                .forEach(locus -> ordered.put(locus, Objects.requireNonNull(alleles.get(locus))));
        return ordered;
    }

    /** The sex chromosome that this parent, who has two kinds of them, passes on to a kit of one sex. */
    private String chromosome(Sex kit) {
        Transmission same = parent == Sex.MALE ? Transmission.X : Transmission.Z;
        Transmission other = parent == Sex.MALE ? Transmission.Y : Transmission.W;
        return (kit == parent ? other : same).word();
    }

    /** Follows the strands of a unit; all allele sequences so far, with their weight in each state. */
    private static Distribution<List<Allele>> alleles(Unit unit, Gametes gametes) {
        Map<List<Allele>, BigInteger[]> sequences = new LinkedHashMap<>();
        sequences.put(List.of(), gametes.start());
        for (int l = 0; l < unit.loci().size(); l++) {
            Locus locus = unit.loci().get(l);
            List<Allele> alleles = List.copyOf(locus.alleles().values());
            Map<List<Allele>, BigInteger[]> longer = new LinkedHashMap<>();
            for (Map.Entry<List<Allele>, BigInteger[]> sequence : sequences.entrySet()) {
                BigInteger[] here = l == 0 ? sequence.getValue() : stepped(sequence.getValue(), gametes.steps()[l - 1]);
                for (int a = 0; a < alleles.size(); a++) {
                    BigInteger[] weights = new BigInteger[here.length];
                    int any = 0;
                    for (int state = 0; state < here.length; state++) {
                        weights[state] = here[state].multiply(gametes.alleles()[l][state][a]);
                        any |= weights[state].signum();
                    }
                    if (any != 0) {
                        List<Allele> one = new ArrayList<>(sequence.getKey());
                        one.add(alleles.get(a));
                        longer.put(one, weights);
                    }
                }
            }
            require(longer.size());
            sequences = longer;
        }
        Map<List<Allele>, BigInteger> sums = new LinkedHashMap<>();
        sequences.forEach((sequence, weights) -> {
            BigInteger sum = BigInteger.ZERO;
            for (BigInteger weight : weights) {
                sum = sum.add(weight);
            }
            sums.put(sequence, sum);
        });
        return Distribution.ofWeights(sums);
    }

    private static BigInteger[] stepped(BigInteger[] before, BigInteger[][] step) {
        BigInteger[] after = new BigInteger[step[0].length];
        for (int to = 0; to < after.length; to++) {
            BigInteger sum = BigInteger.ZERO;
            for (int from = 0; from < before.length; from++) {
                sum = sum.add(before[from].multiply(step[from][to]));
            }
            after[to] = sum;
        }
        return after;
    }
}
