package org.geneticsrules.answer;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
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
}
