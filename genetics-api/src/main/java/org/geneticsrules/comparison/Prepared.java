package org.geneticsrules.comparison;

import com.google.common.collect.ImmutableList;
import java.nio.IntBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.trait.Catalogue;

/**
 * Records taken apart, whatever the model.
 *
 * @param kindreds what is related
 * @param litters of each kindred, its litters in order
 * @param like for each kindred, the number of the first one that was recorded like it, perhaps its own: couples with litters that were
 *     recorded alike are equally likely under any model
 * @param couples for each kindred, its animals as numbers, if it is a couple with litters that nothing brought to notice
 * @param kinds what the numbers mean
 */
@SuppressWarnings("ArrayRecordComponent") // never compared
record Prepared(
        List<Kindred> kindreds,
        List<List<Noticed>> litters,
        int[] like,
        List<Optional<NumberedCouple>> couples,
        Kinds kinds) {

    Prepared {
        kindreds = ImmutableList.copyOf(kindreds);
        litters = ImmutableList.copyOf(litters);
        couples = ImmutableList.copyOf(couples);
    }

    static Prepared of(Pedigree pedigree, Catalogue catalogue, Problems problems) {
        Noticed.Reader reader = new Noticed.Reader(pedigree, catalogue, problems);
        Kinds kinds = new Kinds(pedigree);
        List<Kindred> kindreds = Kindred.of(pedigree, Kindred.order(pedigree));
        List<List<Noticed>> litters = new ArrayList<>();
        List<Optional<NumberedCouple>> couples = new ArrayList<>();
        Map<List<Object>, Integer> met = new HashMap<>();
        int[] like = new int[kindreds.size()];
        for (Kindred kindred : kindreds) {
            int own = litters.size();
            List<Noticed> of = IntStream.of(kindred.litters())
                    .mapToObj(litter -> reader.read(pedigree.litterAt(litter)))
                    .toList();
            Optional<NumberedCouple> couple = number(pedigree, kindred, of, kinds);
            like[own] = couple.map(numbers -> met.computeIfAbsent(key(numbers, of), first -> own))
                    .orElse(own);
            litters.add(of);
            couples.add(couple.filter(numbers -> of.stream().allMatch(Noticed::isPlain)));
        }
        return new Prepared(kindreds, litters, like, couples, kinds);
    }

    private static Optional<NumberedCouple> number(
            Pedigree pedigree, Kindred kindred, List<Noticed> litters, Kinds kinds) {
        Optional<Individual> sire = kindred.sire(pedigree);
        Optional<Individual> dam = kindred.dam(pedigree);
        if (sire.isEmpty() || dam.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new NumberedCouple(
                kinds.of(sire.get()),
                kinds.of(dam.get()),
                litters.stream()
                        .map(litter ->
                                litter.kits().stream().mapToInt(kinds::of).toArray())
                        .toArray(int[][]::new),
                litters.stream()
                        .mapToInt(litter -> kinds.unrecorded(litter.born()))
                        .toArray()));
    }

    /** What makes couples alike. */
    private static List<Object> key(NumberedCouple couple, List<Noticed> litters) {
        List<Object> key = new ArrayList<>(2 + 3 * litters.size());
        key.add(couple.sire());
        key.add(couple.dam());
        for (int t = 0; t < couple.litters().length; t++) {
            int[] kits = couple.litters()[t].clone();
            Arrays.sort(kits);
            key.add(litters.get(t).litter().ascertainment());
            key.add(litters.get(t).size());
            key.add(IntBuffer.wrap(kits));
        }
        return key;
    }
}
