package org.geneticsrules.cross;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.testing.BruteForce;
import org.geneticsrules.testing.DocumentMaps;
import org.geneticsrules.testing.RandomModels;

/**
 * Relevant evidence: whatever an answer does not cite can be replaced without changing it, and a cited rule of the trait asked for
 * cannot.
 *
 * <p>Statements are replaced in the document, by every other expression or state declared, or made to cover nothing if they are
 * masks, and the answer is computed again by the brute-force engine. It checks nothing, so a cited rule can be given a state that does not exist,
 * which must then be seen.
 */
class RestsOnLaws {

    private static final String STRANGE = "strange";

    @Provide
    Arbitrary<Model> models() {
        return RandomModels.models(RandomModels.Size.SMALL);
    }

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    @Property(tries = 100)
    void uncited_statements_do_not_matter_and_cited_rules_do(
            @ForAll("models") Model model, @ForAll("seeds") long seed) {
        citesWhatMatters(model, seed);
    }

    static void citesWhatMatters(Model model, long seed) {
        Cross cross = CrossLaws.cross(model, seed);
        for (String trait : model.visibleTraits()) {
            Set<String> cited = cross.explain(List.of(trait)).statements();
            Distribution<Map<String, String>> before =
                    answer(DocumentMaps.of(model), cross, trait).orElseThrow();
            for (String pointer : model.statements().keySet()) {
                boolean ownRule = pointer.startsWith("/traits/" + trait + "/") && !isRead(model, trait);
                if (!cited.contains(pointer)) {
                    for (String value : alternatives(model, pointer)) {
                        Map<String, Object> changed = DocumentMaps.of(model);
                        replace(changed, pointer, value);
                        assertEquals(
                                before,
                                answer(changed, cross, trait).orElse(before),
                                () -> model + ": " + cross + " " + trait + " with " + value + " at " + pointer);
                    }
                } else if (ownRule) {
                    Map<String, Object> changed = DocumentMaps.of(model);
                    replace(changed, pointer, STRANGE);
                    assertNotEquals(
                            Optional.of(before),
                            answer(changed, cross, trait),
                            () -> model + ": " + cross + " " + trait + " cites " + pointer);
                }
            }
        }
    }

    /** A trait that masks or rules read may be cited for what it does to them, which need not be seen. */
    private static boolean isRead(Model model, String trait) {
        return model.masks().values().stream()
                        .anyMatch(mask -> mask.when().names().contains(trait))
                || model.rules().values().stream()
                        .flatMap(rule -> rule.cases().stream())
                        .anyMatch(one -> one.when().names().contains(trait));
    }

    /** What may stand in place of a statement's value; one empty text for a mask, which then covers nothing. */
    private static List<String> alternatives(Model model, String pointer) {
        String[] path = names(pointer);
        if (pointer.contains("/dominance/shows/")) {
            return model.locus(path[1]).expressions();
        } else if (path[0].equals("masks")) {
            return List.of("");
        } else if (path[0].equals("traits")) {
            return model.states(path[1]);
        }
        return List.of(); // orders and populations
    }

    /** Empty where a replaced state makes masks contradict each other, so that the document is no model any more. */
    private static Optional<Distribution<Map<String, String>>> answer(
            Map<String, Object> document, Cross cross, String trait) {
        Distribution<Map<String, String>> young =
                BruteForce.offspring(document, RandomModels.plain(cross.sire()), RandomModels.plain(cross.dam()));
        try {
            return Optional.of(BruteForce.phenotypes(document, young, List.of(trait)));
        } catch (IllegalStateException e) {
            return Optional.empty();
        }
    }

    @SuppressWarnings("unchecked")
    private static void replace(Map<String, Object> document, String pointer, String value) {
        String[] path = names(pointer);
        String last = path[path.length - 1];
        Map<String, Object> parent = document;
        for (int i = 0; i < path.length - 1; i++) {
            parent = (Map<String, Object>) parent.get(path[i]);
        }
        if (path[0].equals("masks")) {
            ((Map<String, Object>) parent.get(last)).put("covers", Map.of());
        } else if (path[0].equals("traits") && !last.equals("otherwise")) {
            ((Map<String, Object>) parent.get(last)).put("state", value);
        } else {
            parent.put(last, value);
        }
    }

    private static String[] names(String pointer) {
        String[] names = pointer.substring(1).split("/", -1);
        Arrays.setAll(names, i -> names[i].replace("~1", "/").replace("~0", "~"));
        return names;
    }
}
