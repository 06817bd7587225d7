package org.geneticsrules.answer.named;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.trait.BoxSet;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.vocabulary.Naming;
import org.geneticsrules.vocabulary.Naming.InFacet;
import org.geneticsrules.vocabulary.Naming.OfName;
import org.geneticsrules.vocabulary.Naming.Standing;

/**
 * The names of an animal in one vocabulary in half a sentence: the most telling that are certain, or else a few of those that are possible
 * and what to look at. Stateless and thread-safe.
 */
final class NamesInShort {

    private static final int MOST_POSSIBLE = 3;

    /** A word that covers as many of the names still open says too little to stand in a verdict. */
    private static final int CATCHES_ALL = 2;

    private NamesInShort() {}

    static String of(Naming naming) {
        List<String> certain = new ArrayList<>();
        List<OfName> wide = new ArrayList<>();
        for (InFacet facet : naming.facets()) {
            List<OfName> telling = new ArrayList<>();
            for (OfName one : facet.narrowest()) {
                (catchesAll(one, facet, naming) ? wide : telling).add(one);
            }
            if (!telling.isEmpty()) {
                certain.add(telling.stream()
                        .map(NamesInShort::word)
                        .reduce((a, b) -> a + " and " + b)
                        .orElseThrow());
            }
        }
        if (!certain.isEmpty()) {
            return String.join(", ", certain);
        }
        Optional<InFacet> open = naming.facets().stream()
                .filter(facet -> !facet.of(Standing.POSSIBLE).isEmpty())
                .min(Comparator.comparing(facet -> facet.of(Standing.EXCLUDED).isEmpty()));
        String sure = wide.isEmpty()
                ? ""
                : "; certain is only the wide word "
                        + or(wide.stream().map(NamesInShort::quoted).toList());
        return open.map(facet -> possible(facet) + sure).orElseGet(() -> none(naming));
    }

    private static String possible(InFacet facet) {
        List<OfName> open = facet.of(Standing.POSSIBLE);
        List<OfName> nearest = open.stream()
                .sorted(Comparator.comparingInt(one -> one.lookAt().size()))
                .limit(MOST_POSSIBLE)
                .toList();
        List<String> words =
                new ArrayList<>(nearest.stream().map(NamesInShort::quoted).toList());
        int more = open.size() - nearest.size();
        if (more > 0) {
            words.add(more == 1 ? "one other" : "one of " + more + " others");
        }
        Set<String> lookAt = new LinkedHashSet<>();
        nearest.forEach(one -> lookAt.addAll(one.lookAt()));
        return "perhaps " + or(words) + (lookAt.isEmpty() ? "" : " (look at " + String.join(", ", lookAt) + ")");
    }

    private static String none(Naming naming) {
        Optional<LifeStage> again = naming.facets().stream()
                .flatMap(facet -> facet.of(Standing.TOO_EARLY).stream())
                .flatMap(one -> one.lookAgain().stream())
                .findFirst();
        return again.map(from -> "too early to say, look again from " + from + " on")
                .orElse("no name there covers what was seen");
    }

    /** A word for nearly everything: of the names of its facet that are still open, it covers several, and more besides. */
    private static boolean catchesAll(OfName one, InFacet facet, Naming naming) {
        BoxSet whole = meant(one, naming);
        return facet.of(Standing.POSSIBLE).stream()
                        .filter(open -> meant(open, naming).minus(whole).isEmpty())
                        .limit(CATCHES_ALL)
                        .count()
                == CATCHES_ALL;
    }

    private static BoxSet meant(OfName one, Naming naming) {
        BoxSet all = naming.vocabulary().space().nothing();
        for (String sense : one.senses().keySet()) {
            Collection<Condition> looks = Objects.requireNonNull(
                            one.name().senses().get(sense))
                    .looks()
                    .values();
            for (Condition look : looks) {
                all = all.or(naming.vocabulary().space().ofDisjoint(List.of(look)));
            }
        }
        return all;
    }

    private static String word(OfName one) {
        return quoted(one) + (one.isAmbiguous() ? " (a word of several senses)" : "");
    }

    private static String quoted(OfName one) {
        return NameAnswers.quoted(one.name().word());
    }

    /** As in "a", "b" or "c". */
    private static String or(List<String> words) {
        int last = words.size() - 1;
        return last == 0 ? words.get(0) : String.join(", ", words.subList(0, last)) + " or " + words.get(last);
    }
}
