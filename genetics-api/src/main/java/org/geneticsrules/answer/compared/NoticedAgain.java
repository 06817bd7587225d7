package org.geneticsrules.answer.compared;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.answer.Assumption;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.comparison.ModelComparison;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Pedigree;

/**
 * Parents of several litters each of which was noticed for what its kits show. Which parents have several such litters hangs on what they
 * carry, and the comparison, litter by litter, does not know that they have. Stateless and thread-safe.
 */
final class NoticedAgain {

    /** So many litters are named. */
    private static final int MOST_NAMED = 5;

    private NoticedAgain() {}

    /** What is taken for granted of them; nothing if there are none, or tests say what all of them carry. */
    static Optional<Assumption> assumed(ModelComparison question, Pedigree pedigree) {
        Map<String, List<String>> noticed = new LinkedHashMap<>();
        for (Litter litter : pedigree.litters().values()) {
            if (litter.ascertainment().noticedBy().isPresent()
                    && !(litter.ascertainment() instanceof Ascertainment.ParentsChosen)) {
                Set<String> parents = new LinkedHashSet<>(litter.sires().males());
                litter.dam().ifPresent(parents::add);
                parents.forEach(parent -> noticed.computeIfAbsent(parent, any -> new ArrayList<>())
                        .add(litter.id()));
            }
        }
        Set<String> litters = new LinkedHashSet<>();
        noticed.forEach((parent, of) -> {
            if (of.size() > 1 && !isKnown(pedigree.individual(parent), question)) {
                litters.addAll(of);
            }
        });
        return litters.isEmpty() ? Optional.empty() : Optional.of(assumption(litters));
    }

    private static Assumption assumption(Set<String> litters) {
        return new Assumption(
                "noticed-by-itself",
                "Of parents with several litters that were noticed for what their kits show ("
                        + (litters.size() > MOST_NAMED ? litters.size() + " litters" : String.join(", ", litters))
                        + "), each litter is taken as noticed by itself, given those before it.",
                "Such parents are more often of genotypes whose young show the look more often than the comparison knows; where tests"
                        + " do not tell what they carry, a wrong model may then be ahead more often than in 1 of 20 sets."
                        + " With the first such litter of each alone that is not so.");
    }

    /** Whether DNA tests that are never wrong say what an animal carries wherever the looks compared depend on it. */
    private static boolean isKnown(Individual parent, ModelComparison question) {
        Set<String> tested = new LinkedHashSet<>();
        parent.tests().stream()
                .filter(test -> test.result().size() == 1 && test.error().isZero())
                .forEach(test -> tested.add(test.locus()));
        for (Candidate one : question.candidates()) {
            if (!tested.containsAll(one.compiled().lociRead(question.records().traits()))) {
                return false;
            }
        }
        return true;
    }
}
