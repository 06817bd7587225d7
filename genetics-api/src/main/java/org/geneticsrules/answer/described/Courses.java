package org.geneticsrules.answer.described;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.answer.described.Description.Change;
import org.geneticsrules.answer.described.Description.Course;
import org.geneticsrules.answer.described.Description.Reading;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Trait;

/** Puts readings of one trait and one season side by side. */
final class Courses {

    private final Catalogue catalogue;
    private final List<Reading> readings;

    Courses(Catalogue catalogue, List<Reading> readings) {
        this.catalogue = catalogue;
        this.readings = readings;
    }

    List<Course> list() {
        List<Course> found = new ArrayList<>();
        for (Trait trait : catalogue.traits().values()) {
            Map<Optional<String>, List<Reading>> bySeason = new LinkedHashMap<>();
            readings.stream()
                    .filter(one -> one.trait().equals(trait.id()) && one.counts())
                    .forEach(one -> bySeason.computeIfAbsent(one.stage().season(), season -> new ArrayList<>())
                            .add(one));
            bySeason.forEach((season, same) -> {
                if (same.size() > 1) {
                    found.add(new Course(trait.id(), season, same, change(trait, same)));
                }
            });
        }
        return found;
    }

    private static Change change(Trait trait, List<Reading> same) {
        boolean forward = false;
        boolean back = false;
        for (int i = 1; i < same.size(); i++) {
            int step = trait.states().indexOf(same.get(i).state())
                    - trait.states().indexOf(same.get(i - 1).state());
            forward |= step > 0;
            back |= step < 0;
        }
        if (!forward && !back) {
            return Change.NONE;
        }
        if (!trait.ordered()) {
            return Change.CHANGED;
        }
        return forward && back ? Change.BOTH_WAYS : forward ? Change.FORWARD : Change.BACK;
    }
}
