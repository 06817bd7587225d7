package org.geneticsrules.inference;

import com.google.common.collect.ImmutableSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.expression.WeightedBox;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Sex;

/** What an animal's own records leave of a locus, where they do not say more than which genotypes are left. */
final class OwnRecords {

    private OwnRecords() {}

    static Optional<Set<AllelePair>> at(Evidence evidence, Optional<Sex> sex, Locus locus, Set<AllelePair> living) {
        List<Condition> boxes = evidence.boxes().stream()
                .map(WeightedBox::box)
                .filter(box -> mayBe(box, sex))
                .toList();
        Set<Set<AllelePair>> left = new LinkedHashSet<>();
        for (Condition box : boxes) {
            left.add(locus.pairs(sex.orElse(Sex.FEMALE)).stream()
                    .filter(pair -> allows(box, locus.id(), locus.expression(pair, sex.orElse(Sex.FEMALE))))
                    .filter(living::contains)
                    .collect(ImmutableSet.toImmutableSet()));
        }
        if (left.size() != 1) {
            return Optional.empty(); // which genotype it has hangs on what it carries elsewhere
        }
        Set<AllelePair> pairs = new LinkedHashSet<>(left.iterator().next());
        for (Evidence.Test test : evidence.tests()) {
            if (test.locus().equals(locus.id())) {
                if (test.error() > 0) {
                    return Optional.empty(); // what was reported is likelier than the rest, but rules nothing out
                }
                pairs.retainAll(test.result());
            }
        }
        return Optional.of(ImmutableSet.copyOf(pairs));
    }

    private static boolean mayBe(Condition box, Optional<Sex> sex) {
        return sex.isEmpty() || allows(box, Sex.VARIABLE, sex.get().word());
    }

    private static boolean allows(Condition box, String variable, String value) {
        Allowed allowed = box.variables().get(variable);
        return allowed == null || allowed.allows(value);
    }
}
