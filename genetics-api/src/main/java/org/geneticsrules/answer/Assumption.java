package org.geneticsrules.answer;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.pedigree.NamedRecords;
import org.geneticsrules.trait.Trait;

/**
 * Something an answer takes for granted.
 *
 * @param id a stable word by which it can be named, for example {@code unlinked-loci}
 * @param text what is assumed, as a sentence
 * @param otherwise what would change if it did not hold, as a sentence
 */
public record Assumption(String id, String text, String otherwise) {

    /**
     * Returns the assumption that looks whose light is not stated were made in a light in which their traits can be told.
     *
     * @param traits traits that can be told in some lights only, at least one
     * @return the assumption, the same for every animal
     */
    public static Assumption ofLight(Collection<Trait> traits) {
        Map<String, List<String>> byLight = new LinkedHashMap<>();
        for (Trait trait : traits) {
            List<String> here =
                    byLight.computeIfAbsent(String.join(" or ", trait.judgeableIn()), key -> new ArrayList<>());
            if (!here.contains(trait.id())) {
                here.add(trait.id());
            }
        }
        String told = byLight.entrySet().stream()
                .map(one -> String.join(", ", one.getValue()) + " in " + one.getKey())
                .collect(Collectors.joining("; "));
        return new Assumption(
                "told-in-its-light",
                "Where no light is stated, it was one in which the trait can be told: " + told + ".",
                "What is read in another light is no evidence; write down the light with the look.");
    }

    /**
     * Returns the assumption that names mean what vocabularies say, for names that were used as evidence.
     *
     * @param names what names say, at least one
     * @return the assumption, which names the vocabularies and the weakest grade of what was read
     */
    public static Assumption ofNames(Collection<NamedRecords.Reading> names) {
        String whose =
                names.stream().map(NamedRecords.Reading::whose).distinct().collect(Collectors.joining(", "));
        Grade weakest = names.stream()
                .map(NamedRecords.Reading::grade)
                .reduce(Grade::weaker)
                .orElseThrow();
        return new Assumption(
                "names-as-said",
                "Names that animals were called by mean what the vocabularies say they did: " + whose
                        + ". The weakest sense that was read is graded " + weakest.word() + ".",
                "People use names loosely, and a name is weaker evidence than a look that was written down; look at the"
                        + " animal where that can be done.");
    }
}
