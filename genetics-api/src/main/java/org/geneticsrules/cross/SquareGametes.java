package org.geneticsrules.cross;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Sex;

/** Lists the distinct gametes of one parent, without mutation; half of those of the heterogametic parent for kits of each sex. */
final class SquareGametes {

    private final Model model;
    private final ParentBox parent;
    private final List<String> loci;
    private final List<Unit> units;

    SquareGametes(Model model, ParentBox parent, Collection<String> loci) {
        this.model = model;
        this.parent = parent;
        this.loci = List.copyOf(loci);
        this.units = Unit.of(model, loci);
    }

    Distribution<Gamete> list() {
        boolean heterogametic = units.stream()
                .anyMatch(unit -> unit.transmission().heterogametic().equals(Optional.of(parent.sex())));
        Mixture<Gamete> all = new Mixture<>();
        for (Sex kit : Sex.values()) {
            Optional<Sex> decides = heterogametic ? Optional.of(kit) : Optional.empty();
            of(kit).asMap()
                    .forEach((alleles, chance) ->
                            all.add(gamete(alleles, decides), chance.numerator(), chance.denominator()));
        }
        return all.distribution().orElseThrow();
    }

    private Gamete gamete(Map<String, Allele> alleles, Optional<Sex> kit) {
        List<String> symbols = new ArrayList<>();
        for (String name : loci) {
            Allele allele = alleles.get(name);
            Transmission way = model.locus(name).transmission();
            symbols.add(allele == null ? way.partner().orElse("-") : allele.symbol());
        }
        return new Gamete(loci, symbols, alleles, kit);
    }

    /** What is passed on to kits of one sex. */
    private Distribution<Map<String, Allele>> of(Sex kit) {
        Distribution<Map<String, Allele>> all = Distribution.certain(Map.of());
        for (Unit unit : units) {
            if (unit.transmission().passes(parent.sex(), kit)) {
                Map<Map<String, Allele>, BigInteger> here = passed(unit);
                int count = all.outcomes().size() * here.size();
                if (count > PunnettSquare.MOST_GAMETES) {
                    throw new TooLargeException(
                            "distinct gametes of one parent",
                            count,
                            PunnettSquare.MOST_GAMETES,
                            "ask for the square of fewer loci.");
                }
                all = all.product(Distribution.ofWeights(here), (before, more) -> {
                    Map<String, Allele> both = new LinkedHashMap<>(before);
                    both.putAll(more);
                    return both;
                });
            }
        }
        return all;
    }

    /** Follows the strands from locus to locus. */
    private Map<Map<String, Allele>, BigInteger> passed(Unit unit) {
        Gametes gametes = Gametes.of(unit, parent.at(unit), false);
        List<Map<Map<String, Allele>, BigInteger>> byState = new ArrayList<>();
        for (int s = 0; s < gametes.states(); s++) {
            Map<Map<String, Allele>, BigInteger> first = new LinkedHashMap<>();
            extend(Map.of(), gametes.start()[s], unit.loci().get(0), gametes.alleles()[0][s], first);
            byState.add(first);
        }
        for (int l = 1; l < unit.loci().size(); l++) {
            List<Map<Map<String, Allele>, BigInteger>> next = new ArrayList<>();
            for (int to = 0; to < gametes.states(); to++) {
                Map<Map<String, Allele>, BigInteger> longer = new LinkedHashMap<>();
                for (int from = 0; from < gametes.states(); from++) {
                    BigInteger step = gametes.steps()[l - 1][from][to];
                    Locus locus = unit.loci().get(l);
                    BigInteger[] alleles = gametes.alleles()[l][to];
                    byState.get(from)
                            .forEach((before, weight) -> extend(before, weight.multiply(step), locus, alleles, longer));
                }
                next.add(longer);
            }
            byState = next;
        }
        Map<Map<String, Allele>, BigInteger> all = new LinkedHashMap<>();
        byState.forEach(state -> state.forEach((alleles, weight) -> all.merge(alleles, weight, BigInteger::add)));
        return all;
    }

    private static void extend(
            Map<String, Allele> before,
            BigInteger weight,
            Locus locus,
            BigInteger[] alleles,
            Map<Map<String, Allele>, BigInteger> into) {
        int position = 0;
        for (Allele allele : locus.alleles().values()) {
            BigInteger share = weight.multiply(alleles[position++]);
            if (share.signum() > 0) {
                Map<String, Allele> longer = new LinkedHashMap<>(before);
                longer.put(locus.id(), allele);
                into.merge(longer, share, BigInteger::add);
            }
        }
    }
}
