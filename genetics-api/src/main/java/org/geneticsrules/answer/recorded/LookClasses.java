package org.geneticsrules.answer.recorded;

import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.answer.recorded.LookNext.AtLocus;
import org.geneticsrules.answer.recorded.LookNext.Combined;
import org.geneticsrules.answer.recorded.LookNext.OfExpression;
import org.geneticsrules.answer.recorded.LookNext.Whether;
import org.geneticsrules.inference.Conclusions;
import org.geneticsrules.inference.Possibility;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.trait.Sex;

/** The expressions that are left of an animal, at single loci and together. */
final class LookClasses {

    private static final int MOST_LISTED = 20;

    /** Loci are taken together as long as they have no more combinations than this. */
    private static final int MOST_COMBINED = 64;

    private final Ground ground;
    private final Pedigree kindred;
    private final String animal;
    private final Optional<Sex> sex;

    LookClasses(Ground ground, Pedigree kindred, String animal) {
        this.ground = ground;
        this.kindred = kindred;
        this.animal = animal;
        this.sex = PlannedMating.sex(kindred, animal);
    }

    /** The expressions of a locus, all of them with whether they are left. */
    AtLocus at(Locus locus, List<Conclusions> weighed) {
        Map<String, Whether> whether = new LinkedHashMap<>();
        locus.expressions().forEach(one -> whether.put(one, Whether.EXCLUDED));
        ground.inference(kindred)
                .possible(locus.id())
                .of(animal)
                .forEach((pair, possibility) ->
                        shown(locus, pair).forEach(one -> whether.merge(one, whether(possibility), LookClasses::more)));
        boolean told = isTold(locus);
        List<OfExpression> all = new ArrayList<>();
        whether.forEach((expression, left) -> {
            List<Chance> chances = weighed.stream()
                    .map(found -> Chance.of(
                            found,
                            animal,
                            locus.id(),
                            pair -> shown(locus, pair).contains(expression)))
                    .toList();
            all.add(new OfExpression(expression, left, told ? chances : List.of()));
        });
        return new AtLocus(locus.id(), all);
    }

    /** What a pair of alleles shows as; two expressions where the sex decides and is not known. */
    private Set<String> shown(Locus locus, AllelePair pair) {
        return sex.filter(known -> locus.pairs(known).contains(pair))
                .map(known -> Set.of(locus.expression(pair, known)))
                .orElseGet(() -> locus.expressions(pair));
    }

    private boolean isTold(Locus locus) {
        return locus.pairs().stream().allMatch(pair -> shown(locus, pair).size() == 1);
    }

    static Whether whether(Possibility possibility) {
        return possibility instanceof Possibility.Possible
                ? Whether.POSSIBLE
                : possibility instanceof Possibility.Excluded ? Whether.EXCLUDED : Whether.UNDECIDED;
    }

    /** One genotype that is left is enough. */
    private static Whether more(Whether one, Whether other) {
        if (one == Whether.POSSIBLE || other == Whether.POSSIBLE) {
            return Whether.POSSIBLE;
        }
        return one == Whether.UNDECIDED ? one : other;
    }

    /** By locus, the expressions of some genotypes; only loci of which that is told. */
    Map<String, Set<String>> left(Collection<Map<String, AllelePair>> genotypes) {
        Map<String, Set<String>> left = new LinkedHashMap<>();
        for (Map<String, AllelePair> genotype : genotypes) {
            genotype.forEach((id, pair) -> left.computeIfAbsent(id, key -> new LinkedHashSet<>())
                    .addAll(shown(ground.model().locus(id), pair)));
        }
        return left;
    }

    /**
     * The loci to take together, the first ones first, as long as there are not too many combinations.
     *
     * @param first loci in the order in which they matter
     * @param classes what is left at each
     */
    Set<String> combined(Collection<String> first, List<AtLocus> classes) {
        Set<String> chosen = new LinkedHashSet<>();
        long combinations = 1;
        for (String locus : first) {
            long left = classes.stream()
                    .filter(at -> at.locus().equals(locus))
                    .mapToLong(at -> at.left().size())
                    .sum();
            boolean fits = left > 1 && combinations * left <= MOST_COMBINED;
            if (fits && isTold(ground.model().locus(locus)) && chosen.add(locus)) {
                combinations *= left;
            }
        }
        return chosen;
    }

    /** Combinations at some loci, the most likely first by the mean over the origins. */
    List<Combined> together(Set<String> loci, List<ExpectedInformation> weighed) {
        if (loci.size() < 2) {
            return List.of();
        }
        Map<Map<String, String>, double[]> sums = new LinkedHashMap<>();
        for (int i = 0; i < weighed.size(); i++) {
            Optional<Map<Map<String, AllelePair>, Double>> carried =
                    weighed.get(i).carried(loci);
            if (carried.isEmpty()) {
                return List.of();
            }
            for (Map.Entry<Map<String, AllelePair>, Double> one : carried.get().entrySet()) {
                ImmutableMap.Builder<String, String> expressions = ImmutableMap.builder();
                for (String locus : loci) {
                    AllelePair pair = Objects.requireNonNull(one.getKey().get(locus), locus);
                    expressions.put(
                            locus,
                            shown(ground.model().locus(locus), pair).iterator().next());
                }
                sums.computeIfAbsent(expressions.buildOrThrow(), key -> new double[weighed.size()])[i] +=
                        one.getValue();
            }
        }
        List<Map.Entry<Map<String, String>, double[]>> sorted = new ArrayList<>(sums.entrySet());
        sorted.sort(Comparator.comparingDouble(one -> -sum(one.getValue())));
        List<Combined> combined = new ArrayList<>();
        for (Map.Entry<Map<String, String>, double[]> one : sorted) {
            List<Chance> chances = new ArrayList<>();
            for (double chance : one.getValue()) {
                chances.add(Chance.exact(chance));
            }
            combined.add(new Combined(one.getKey(), chances));
        }
        return combined;
    }

    /** The first ones, as many as are listed. */
    static List<Combined> listed(List<Combined> all) {
        return all.subList(0, Math.min(all.size(), MOST_LISTED));
    }

    private static double sum(double[] numbers) {
        double sum = 0;
        for (double one : numbers) {
            sum += one;
        }
        return sum;
    }
}
