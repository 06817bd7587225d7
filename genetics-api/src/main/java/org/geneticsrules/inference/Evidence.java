package org.geneticsrules.inference;

import com.google.common.collect.ImmutableList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.geneticsrules.expression.WeightedBox;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.trait.Sex;

/**
 * What the records of one animal say of its genotype.
 *
 * @param boxes animals that may be recorded as it was, disjoint, each with the chance of it; one box of everything if nothing is recorded
 * @param tests what tests of single loci reported
 */
record Evidence(List<WeightedBox> boxes, List<Test> tests) {

    /**
     * A test of one locus.
     *
     * @param locus id of the locus
     * @param result the genotypes of which one was reported
     * @param error the chance that what was reported is not the genotype
     */
    record Test(String locus, Set<AllelePair> result, double error) {}

    Evidence {
        boxes = ImmutableList.copyOf(boxes);
        tests = ImmutableList.copyOf(tests);
    }

    /** The loci that something is said of. */
    Set<String> loci() {
        Set<String> found = new LinkedHashSet<>();
        boxes.forEach(box -> found.addAll(box.box().names()));
        found.remove(Sex.VARIABLE);
        tests.forEach(test -> found.add(test.locus()));
        return found;
    }

    boolean readsSex() {
        return boxes.stream().anyMatch(box -> box.box().variables().containsKey(Sex.VARIABLE));
    }
}
