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
import org.geneticsrules.pedigree.RecordKinds;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Sex;

/**
 * Records taken apart, whatever the model.
 *
 * @param kindreds what is related
 * @param litters of each kindred, its litters in order
 * @param like for each kindred, the number of the first one that was recorded like it, perhaps its own: couples with litters that were
 *     recorded alike are equally likely under any model
 */
@SuppressWarnings("ArrayRecordComponent") // never compared
record Prepared(List<Kindred> kindreds, List<List<Noticed>> litters, int[] like) {

    Prepared {
        kindreds = ImmutableList.copyOf(kindreds);
        litters = ImmutableList.copyOf(litters);
    }

    static Prepared of(Pedigree pedigree, Catalogue catalogue, Problems problems) {
        Noticed.Reader reader = new Noticed.Reader(pedigree, catalogue, problems);
        List<Kindred> kindreds = Kindred.of(pedigree, Kindred.order(pedigree));
        List<List<Noticed>> litters = new ArrayList<>();
        for (Kindred kindred : kindreds) {
            litters.add(IntStream.of(kindred.litters())
                    .mapToObj(litter -> reader.read(pedigree.litterAt(litter)))
                    .toList());
        }
        Map<List<Object>, Integer> met = new HashMap<>();
        int[] like = new int[kindreds.size()];
        for (int k = 0; k < like.length; k++) {
            int own = k;
            like[k] = key(pedigree, kindreds.get(k), litters.get(k))
                    .map(key -> met.computeIfAbsent(key, first -> own))
                    .orElse(own);
        }
        return new Prepared(kindreds, litters, like);
    }

    /** What makes couples alike; none for other kindreds. */
    private static Optional<List<Object>> key(Pedigree pedigree, Kindred kindred, List<Noticed> litters) {
        Optional<Individual> sire = kindred.sire(pedigree);
        Optional<Individual> dam = kindred.dam(pedigree);
        if (sire.isEmpty() || dam.isEmpty()) {
            return Optional.empty();
        }
        List<Object> key = new ArrayList<>(4 + 3 * litters.size());
        for (Individual parent : List.of(sire.get(), dam.get())) {
            key.add(pedigree.recordKinds().of(pedigree.positionOf(parent.id())));
            key.add(parent.population());
        }
        for (Noticed litter : litters) {
            key.add(litter.litter().ascertainment());
            key.add(litter.size());
            int[] kits = litter.kits().stream()
                    .mapToInt(kit -> kind(pedigree.recordKinds(), pedigree.positionOf(kit.id()), kit))
                    .toArray();
            Arrays.sort(kits);
            key.add(IntBuffer.wrap(kits));
        }
        return Optional.of(key);
    }

    private static int kind(RecordKinds kinds, int position, Individual kit) {
        int sex = kit.sex().map(one -> one == Sex.FEMALE ? 1 : 2).orElse(0);
        return 3 * kinds.of(position) + sex;
    }
}
