package org.geneticsrules.answer.recorded;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntFunction;
import org.geneticsrules.answer.recorded.CarrierTrail.Order;
import org.geneticsrules.inference.RecordRef;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;

/** The looks and tests of a pedigree in an order, and the pedigree as it was when only the first of them were known. */
final class Prefixes {

    private final Pedigree kindred;
    private final List<RecordRef> records = new ArrayList<>();
    private final Order order;

    private record Dated(RecordRef record, Optional<LocalDate> date) {}

    Prefixes(Pedigree kindred) {
        this.kindred = kindred;
        List<Dated> all = new ArrayList<>();
        for (String id : kindred.order()) {
            Individual one = kindred.individual(id);
            for (int i = 0; i < one.observations().size(); i++) {
                all.add(new Dated(
                        new RecordRef.Observed(id, i), one.observations().get(i).date()));
            }
            for (int i = 0; i < one.tests().size(); i++) {
                all.add(new Dated(
                        new RecordRef.Tested(id, i), one.tests().get(i).date()));
            }
        }
        if (all.stream().allMatch(one -> one.date().isPresent())) {
            this.order = Order.BY_DATE;
            all.sort(Comparator.comparing(one -> one.date().orElseThrow()));
        } else {
            this.order = Order.BY_PEDIGREE;
        }
        all.forEach(one -> records.add(one.record()));
    }

    Order order() {
        return order;
    }

    List<RecordRef> records() {
        return records;
    }

    /** The pedigree with the first so many records and no others. */
    Pedigree first(int count) {
        if (count == records.size()) {
            return kindred;
        }
        Set<RecordRef> kept = new LinkedHashSet<>(records.subList(0, count));
        PedigreeBuilder builder = Altered.copy(kindred);
        for (Individual one : kindred.individuals().values()) {
            builder.add(new Individual(
                    one.id(),
                    one.sex(),
                    one.born(),
                    one.population(),
                    kept(one.observations(), kept, i -> new RecordRef.Observed(one.id(), i)),
                    one.names(),
                    kept(one.tests(), kept, i -> new RecordRef.Tested(one.id(), i)),
                    one.hearing(),
                    one.fertility()));
        }
        kindred.litters().values().forEach(builder::add);
        return builder.build();
    }

    private static <T> List<T> kept(List<T> all, Set<RecordRef> kept, IntFunction<RecordRef> ref) {
        List<T> left = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            if (kept.contains(ref.apply(i))) {
                left.add(all.get(i));
            }
        }
        return left;
    }
}
