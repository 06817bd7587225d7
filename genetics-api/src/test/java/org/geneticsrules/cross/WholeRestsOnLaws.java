package org.geneticsrules.cross;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.geneticsrules.cross.RandomMatings.Known;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.DocumentMaps;
import org.geneticsrules.testing.brute.Animal;
import org.geneticsrules.testing.brute.Genome;
import org.geneticsrules.testing.brute.Litters;
import org.geneticsrules.trait.Sex;

/**
 * Relevant evidence in models of the whole language: a statement that an answer does not cite can be replaced without changing it, and
 * the trait's own rules that it cites cannot. Replaced in the document, answered again by the reference.
 */
class WholeRestsOnLaws {

    private static final String STRANGE = "strange";

    /** Statements replaced in one try; the next try replaces others. */
    private static final int MOST = 8;

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    @Property(tries = 50)
    void uncited_statements_do_not_matter_and_cited_rules_do(@ForAll("seeds") long seed) {
        citesWhatMatters(Known.draw(seed), seed);
    }

    static void citesWhatMatters(Known known, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Model model = known.model();
        if (!known.hasKits(Census.BORN)) {
            return;
        }
        String trait = known.looking().traits().get(0);
        View view = new View(List.of(trait), known.looking().view().stage(), Census.BORN);
        Set<String> cited = known.cross().explain(view).statements();
        Map<Map<String, String>, Probability> before =
                answer(DocumentMaps.of(model), known, trait).orElseThrow();
        List<String> pointers = new ArrayList<>(model.statements().keySet());
        while (pointers.size() > MOST) {
            pointers.remove(random.nextInt(pointers.size()));
        }
        for (String pointer : pointers) {
            if (isOtherRule(pointer, trait)) {
                continue;
            }
            if (!cited.contains(pointer)) {
                for (Object value : alternatives(model, pointer)) {
                    Map<String, Object> changed = DocumentMaps.of(model);
                    replace(changed, pointer, value);
                    assertEquals(
                            before,
                            answer(changed, known, trait).orElse(before),
                            () -> known + " " + trait + " with " + value + " at " + pointer);
                }
            } else if (pointer.startsWith("/traits/" + trait + "/") && !isRead(model, trait) && !mayLoseAll(model)) {
                Map<String, Object> changed = DocumentMaps.of(model);
                replace(changed, pointer, Map.of("state", STRANGE));
                assertNotEquals(
                        Optional.of(before),
                        answer(changed, known, trait),
                        () -> known + " " + trait + " cites " + pointer);
            }
        }
    }

    /** Open: the rule of another trait that is read through chance is not always cited; RestsOnLaws holds it without chance. */
    private static boolean isOtherRule(String pointer, String trait) {
        return pointer.startsWith("/traits/") && !pointer.startsWith("/traits/" + trait + "/");
    }

    /** A rule is cited for kits that are conceived, all of which may be lost. */
    private static boolean mayLoseAll(Model model) {
        return model.viability().values().stream().anyMatch(one -> one.birth().isZero());
    }

    /** A trait that masks or rules read may be cited for what it does to them, which need not be seen. */
    private static boolean isRead(Model model, String trait) {
        return model.masks().values().stream()
                        .anyMatch(mask -> mask.when().names().contains(trait))
                || model.rules().values().stream()
                        .flatMap(rule -> rule.cases().stream())
                        .anyMatch(one -> one.when().names().contains(trait));
    }

    /** What may stand in place of a statement; none where nothing else is sure to be allowed. */
    private static List<Object> alternatives(Model model, String pointer) {
        String[] path = names(pointer);
        return switch (path[0]) {
            case "loci" ->
                pointer.contains("/shows/")
                        ? new ArrayList<>(model.locus(path[1]).expressions())
                        : pointer.contains("/mutation/") ? List.of("1/5") : List.of();
            case "masks" -> List.of(Map.of());
            case "traits" ->
                model.states(path[1]).stream()
                        .<Object>map(state -> Map.of("state", state))
                        .toList();
            case "groups" -> List.of("none recombine");
            case "viability" -> List.of("1/5");
            default -> List.of();
        };
    }

    private static Optional<Map<Map<String, String>, Probability>> answer(
            Map<String, Object> document, Known known, String trait) {
        Genome genome = new Genome(document);
        Map<Animal, Probability> sires = known.animals(Sex.MALE);
        Map<Animal, Probability> dams = known.animals(Sex.FEMALE);
        try {
            return Optional.of(Litters.of(genome, sires, dams, "born")
                    .looks(known.looking().stage(), List.of(trait)));
        } catch (IllegalStateException conflict) {
            return Optional.empty(); // masks contradict each other now, so that the document is no model any more
        }
    }

    @SuppressWarnings("unchecked")
    private static void replace(Map<String, Object> document, String pointer, Object value) {
        String[] path = names(pointer);
        String last = path[path.length - 1];
        Map<String, Object> parent = document;
        for (int i = 0; i < path.length - 1; i++) {
            parent = (Map<String, Object>) parent.get(path[i]);
        }
        Map<String, Object> statement = new LinkedHashMap<>();
        if (parent.get(last) instanceof Map<?, ?> members) {
            members.forEach((name, member) -> statement.put((String) name, member));
        }
        switch (path[0]) {
            case "masks" -> statement.put("covers", value);
            case "groups" -> {
                statement.keySet().removeAll(List.of("recombination", "crossovers"));
                statement.put("crossovers", Map.of("none", "1"));
            }
            case "viability" -> statement.put("birth", value);
            case "traits" -> {
                statement.keySet().removeAll(List.of("chance", "progression", "threshold"));
                statement.putAll((Map<String, Object>) value);
            }
            default -> {}
        }
        boolean bare = path[0].equals("loci") || last.equals("otherwise");
        parent.put(last, !bare ? statement : last.equals("otherwise") ? statement.get("state") : value);
    }

    private static String[] names(String pointer) {
        String[] names = pointer.substring(1).split("/", -1);
        Arrays.setAll(names, i -> names[i].replace("~1", "/").replace("~0", "~"));
        return names;
    }
}
