package org.geneticsrules.cross;

import com.google.common.collect.ImmutableList;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.Chain;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Diagram;
import org.geneticsrules.expression.KitLaw;
import org.geneticsrules.expression.Weights;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.jspecify.annotations.Nullable;

/**
 * Animals as parents: what each may pass on at the loci of a question. Two animals whose gametes are distributed alike are one
 * breeder, whatever else they carry.
 */
final class Breeders {

    /** More kinds of animals than this are not gone through. */
    private static final int MOST = 1 << 14;

    private final CompiledModel compiled;
    private final Set<String> read;
    private final List<Unit> units;
    private final boolean mutating;

    /**
     * A kind of parent.
     *
     * @param gametes what it passes on at each unit
     */
    record Breeder(List<Gametes> gametes) {
        Breeder {
            gametes = ImmutableList.copyOf(gametes);
        }
    }

    /** What a young animal carries at one unit, and what it passes on there. */
    private record Carried(List<AllelePair> pairs, Gametes gametes) {}

    /**
     * Starts with the loci of a question.
     *
     * @param compiled the model
     * @param read the loci that matter
     * @param mutating whether alleles mutate, or only what happens without is asked
     */
    Breeders(CompiledModel compiled, Set<String> read, boolean mutating) {
        this.compiled = compiled;
        this.read = read;
        this.units = Unit.of(compiled.model(), read);
        this.mutating = mutating;
    }

    List<Unit> units() {
        return units;
    }

    /** What animals of whom something is known may be; empty if there are none. */
    Optional<Distribution<Breeder>> known(ParentBoxes animal) {
        Mixture<Breeder> all = new Mixture<>();
        for (ParentBox box : mutating ? animal.weighted(read) : animal.structural(read)) {
            Map<List<Gametes>, BigInteger> product = new LinkedHashMap<>();
            product.put(ImmutableList.of(), box.outside(read));
            for (Unit unit : units) {
                Map<Gametes, BigInteger> here = new LinkedHashMap<>();
                box.at(unit)
                        .each(
                                unit,
                                (one, weight) -> here.merge(Gametes.of(unit, one, mutating), weight, BigInteger::add));
                product = times(product, here);
            }
            product.forEach((gametes, weight) -> all.add(new Breeder(gametes), weight, BigInteger.ONE));
        }
        return all.distribution();
    }

    private static <T> Map<List<T>, BigInteger> times(Map<List<T>, BigInteger> product, Map<T, BigInteger> here) {
        require((double) product.size() * here.size());
        Map<List<T>, BigInteger> longer = new LinkedHashMap<>();
        product.forEach((before, weight) -> here.forEach((next, share) ->
                longer.put(ImmutableList.<T>builder().addAll(before).add(next).build(), weight.multiply(share))));
        return longer;
    }

    private static void require(double kinds) {
        if (kinds > MOST) {
            throw new TooLargeException(
                    "kinds of parents", kinds, MOST, "ask about fewer traits, or state more of the genotypes.");
        }
    }

    /**
     * What the young of two parents may be that live to be parents themselves and look as stated; empty if there are none.
     *
     * @param sex sex of the young
     */
    Optional<Distribution<Breeder>> young(Sex sex, Breeder sire, Breeder dam, List<Sighting> seen) {
        Map<List<Carried>, BigInteger> product = new LinkedHashMap<>();
        product.put(ImmutableList.of(), BigInteger.ONE);
        for (int u = 0; u < units.size(); u++) {
            product = times(
                    product,
                    young(
                                    units.get(u),
                                    sex,
                                    sire.gametes().get(u),
                                    dam.gametes().get(u))
                            .parts());
        }
        Mixture<Breeder> all = new Mixture<>();
        Optional<Diagram<Boolean>> look =
                seen.isEmpty() ? Optional.empty() : Optional.of(compiled.matching(seen, Census.CONCEIVED));
        product.forEach((carried, weight) -> {
            Probability agrees =
                    look.map(diagram -> agrees(diagram, sex, carried)).orElse(Probability.ONE);
            all.add(
                    new Breeder(carried.stream().map(Carried::gametes).toList()),
                    weight.multiply(agrees.numerator()),
                    agrees.denominator());
        });
        return all.distribution();
    }

    private Mixture<Carried> young(Unit unit, Sex sex, Gametes sire, Gametes dam) {
        Mixture<Carried> all = new Mixture<>();
        boolean mine = unit.transmission().passes(Sex.MALE, sex);
        boolean theirs = unit.transmission().passes(Sex.FEMALE, sex);
        passed(unit, sire, mine)
                .forEach((sperm, p) -> passed(unit, dam, theirs).forEach((egg, q) -> {
                    Probability lives = Probability.ONE;
                    List<AllelePair> pairs = new ArrayList<>();
                    int count = unit.loci().size();
                    BigInteger[][] weights = new BigInteger[count][];
                    int[] @Nullable [] strands = new int[count][];
                    for (int l = 0; l < count; l++) {
                        Locus locus = unit.loci().get(l);
                        AllelePair pair = mine && theirs
                                ? locus.pair(sperm.get(l), egg.get(l))
                                : mine ? locus.of(sperm.get(l)) : theirs ? locus.of(egg.get(l)) : locus.of();
                        pairs.add(pair);
                        weights[l] = new BigInteger[locus.pairs().size()];
                        Arrays.fill(weights[l], BigInteger.ZERO);
                        weights[l][locus.pairs().indexOf(pair)] = BigInteger.ONE;
                        strands[l] =
                                unit.isLinked() && pair.isHeterozygous() ? new int[] {sperm.get(l), egg.get(l)} : null;
                        lives = lives.times(ParentBoxes.survival(compiled.model(), sex, locus, pair));
                    }
                    Gametes gametes = Gametes.of(unit, new AtUnit(sex, weights, strands), mutating);
                    all.add(
                            new Carried(ImmutableList.copyOf(pairs), gametes),
                            p.multiply(q).multiply(lives.numerator()),
                            lives.denominator());
                }));
        return all;
    }

    /** The alleles that may lie together on a strand that is passed on, with their weights; none where none is passed on. */
    private static Map<List<Integer>, BigInteger> passed(Unit unit, Gametes gametes, boolean passes) {
        Map<List<Integer>, BigInteger> strands = new LinkedHashMap<>();
        if (passes) {
            Chain.of(unit.names(), gametes.start(), gametes.steps(), gametes.alleles())
                    .each((values, weight) ->
                            strands.put(Arrays.stream(values).boxed().toList(), weight));
        } else {
            strands.put(ImmutableList.of(), BigInteger.ONE);
        }
        return strands;
    }

    private Probability agrees(Diagram<Boolean> look, Sex sex, List<Carried> carried) {
        List<Chain> certain = new ArrayList<>();
        for (int u = 0; u < carried.size(); u++) {
            List<Locus> loci = units.get(u).loci();
            for (int l = 0; l < loci.size(); l++) {
                BigInteger[] shows = new BigInteger[loci.get(l).expressions().size()];
                Arrays.fill(shows, BigInteger.ZERO);
                shows[loci.get(l).expressionPosition(carried.get(u).pairs().get(l), sex)] = BigInteger.ONE;
                certain.add(Chain.single(loci.get(l).id(), shows));
            }
        }
        Weights weights = look.weigh(KitLaw.of(sex, certain));
        int at = look.outcomes().indexOf(true);
        return at < 0 ? Probability.ZERO : Probability.of(weights.shares()[at], weights.total());
    }
}
