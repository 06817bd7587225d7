package org.geneticsrules.comparison;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.trait.Catalogue;

/**
 * Records taken apart, whatever the model.
 *
 * @param kindreds what is related
 * @param litters of each kindred, its litters in order
 */
record Prepared(List<Kindred> kindreds, List<List<Noticed>> litters) {

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
        return new Prepared(kindreds, litters);
    }
}
