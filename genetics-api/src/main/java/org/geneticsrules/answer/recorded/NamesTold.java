package org.geneticsrules.answer.recorded;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.NamedRecords.Reading;
import org.geneticsrules.pedigree.Pedigree;

/** What has to be said of the names that some animals were called by, where these are records of their looks. */
final class NamesTold {

    private final Set<String> vocabularies = new LinkedHashSet<>();
    private final Map<String, Set<String>> remarks = new LinkedHashMap<>();
    private final Map<String, Set<String>> nothing = new LinkedHashMap<>();
    private Optional<Grade> weakest = Optional.empty();

    NamesTold(Ground ground, Pedigree kindred) {
        for (Individual one : kindred.individuals().values()) {
            if (!one.names().isEmpty() && ground.names().isEmpty()) {
                add(nothing, "no vocabulary was at hand to read them", one.id());
            }
            ground.names().ifPresent(read -> read.of(one.id()).forEach(this::add));
        }
    }

    private void add(Reading reading) {
        if (reading.looks().isPresent()) {
            vocabularies.add(reading.whose());
            weakest = Optional.of(weakest.map(reading.grade()::weaker).orElse(reading.grade()));
        }
        boolean silent = reading.looks().isEmpty();
        List<String> why = new ArrayList<>(reading.notices());
        if (silent && why.isEmpty()) {
            why.add("\"" + reading.name().word() + "\" says nothing of the look");
        }
        why.forEach(
                notice -> add(silent ? nothing : remarks, notice + " (" + reading.whose() + ")", reading.individual()));
    }

    private static void add(Map<String, Set<String>> of, String message, String id) {
        of.computeIfAbsent(message, key -> new LinkedHashSet<>()).add(id);
    }

    /** What is weak about the names that were used, and whose they are. */
    Map<String, Set<String>> remarks() {
        return remarks;
    }

    /** Why names are no evidence, and whose they are. */
    Map<String, Set<String>> nothing() {
        return nothing;
    }

    /** That names mean what vocabularies say they do, if any was used. */
    void assume(Taken taken) {
        weakest.ifPresent(grade -> taken.add(
                "names-as-said",
                "Names that animals were called by mean what the vocabularies say they did: "
                        + String.join(", ", vocabularies) + ". The weakest sense that was read is graded "
                        + grade.word()
                        + ".",
                "People use names loosely, and a name is weaker evidence than a look that was written down; look at the"
                        + " animal where that can be done."));
    }
}
