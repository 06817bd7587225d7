package org.geneticsrules.testing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.geneticsrules.model.Model;

/**
 * Documents in which one statement of a model says something else. Where it applies stays as it is: a case and a mask keep their
 * conditions, a statement about viability its animals, a group its loci.
 *
 * <p>Chances of states stand for all states at once, since their weights differ; a state or shown state that is declared nowhere stands
 * for any other.
 */
public final class OtherWords {

    /** A state that no trait has. */
    public static final String STRANGE = "strange";

    private final Model model;

    /**
     * Prepares the documents of a model.
     *
     * @param model a model
     */
    public OtherWords(Model model) {
        this.model = model;
    }

    /**
     * Lists documents in which a statement says something else.
     *
     * @param pointer pointer of a statement
     * @return documents that the reference can read; none where nothing else is sure to leave it a model
     */
    public List<Map<String, Object>> at(String pointer) {
        String[] path = names(pointer);
        List<Map<String, Object>> all = new ArrayList<>();
        for (Object other : alternatives(path)) {
            Map<String, Object> document = DocumentMaps.of(model);
            put(document, path, other);
            boolean turned = List.of(path).contains("order");
            if (!turned || decides(members(members(document.get("loci")).get(path[1])))) {
                all.add(document);
            }
        }
        return all;
    }

    /** The whole statement anew, or what to change in it. */
    private List<Object> alternatives(String[] path) {
        return switch (path[0]) {
            case "loci" -> locus(path);
            case "traits" -> List.of(Map.of("chance", anyState(path[1])));
            case "masks" -> List.of(Map.of("covers", Map.of()), Map.of("covers", strange(path[1])));
            case "groups" ->
                List.of(
                        Map.of("crossovers", Map.of("none", "1")),
                        Map.of("recombination", Arrays.asList(intervals(path[1], "2/7"))));
            case "viability" -> {
                List<Object> steps = new ArrayList<>();
                var stated = model.viability().get(path[1]);
                if (stated.decidesBirth()) {
                    steps.add(Map.of("birth", "2/7"));
                }
                if (!stated.scored().isOne() || !stated.birth().isOne()) {
                    steps.add(Map.of("scored", "3/7"));
                }
                yield steps;
            }
            default -> List.of();
        };
    }

    private List<Object> locus(String[] path) {
        if (path[2].equals("mutation")) {
            return List.of("1/7");
        } else if (path[path.length - 2].equals("order")) {
            return List.of("the other way round");
        }
        return new ArrayList<>(model.locus(path[1]).expressions());
    }

    private Map<String, Object> anyState(String trait) {
        Map<String, Object> chances = new LinkedHashMap<>();
        List<String> states = model.states(trait);
        int sum = states.size() * (states.size() + 1) / 2;
        for (int i = 0; i < states.size(); i++) {
            chances.put(states.get(i), (i + 1) + "/" + sum);
        }
        return chances;
    }

    private Map<String, Object> strange(String mask) {
        Map<String, Object> covers = new LinkedHashMap<>();
        model.masks().get(mask).covers().keySet().forEach(trait -> covers.put(trait, STRANGE));
        return covers;
    }

    private Object[] intervals(String group, String fraction) {
        Object[] all = new Object[model.groups().get(group).loci().size() - 1];
        Arrays.fill(all, fraction);
        return all;
    }

    private static void put(Map<String, Object> document, String[] path, Object value) {
        Object parent = document;
        for (int i = 0; i < path.length - 1; i++) {
            parent = members(parent).get(path[i]);
            if (path[i].equals("order")) {
                turn(parent, Integer.parseInt(path[i + 1]));
                return;
            }
        }
        String last = path[path.length - 1];
        Map<String, Object> statement = new LinkedHashMap<>();
        if (members(parent).get(last) instanceof Map<?, ?> before) {
            before.forEach((name, member) -> statement.put((String) name, member));
        }
        switch (path[0]) {
            case "traits" -> statement.keySet().removeAll(List.of("state", "chance", "progression", "threshold"));
            case "groups" -> statement.keySet().removeAll(List.of("recombination", "crossovers"));
            default -> {}
        }
        if (value instanceof Map<?, ?> changes) {
            changes.forEach((name, member) -> statement.put((String) name, member));
        }
        members(parent).put(last, value instanceof Map ? statement : value);
    }

    @SuppressWarnings("unchecked")
    private static void turn(Object order, int index) {
        List<Object> statements = (List<Object>) order;
        String[] step = order(statements.get(index));
        statements.set(index, step[1] + " > " + step[0]);
    }

    private static String[] order(Object statement) {
        String text = statement instanceof String plain
                ? plain
                : (String) members(statement).get("order");
        return text.split(" > ", -1);
    }

    /** Whether every pair of alleles is decided once, in either sex. */
    @SuppressWarnings("unchecked")
    private static boolean decides(Map<String, Object> locus) {
        List<String> ids = ((List<Object>) locus.get("alleles"))
                .stream()
                        .map(allele -> allele instanceof String id
                                ? id
                                : (String) members(allele).get("id"))
                        .toList();
        Map<String, Object> stated = members(locus.get("dominance"));
        for (Object sex : stated.containsKey("male") ? stated.values() : List.of(stated)) {
            List<Object> order = (List<Object>) members(sex).getOrDefault("order", List.of());
            Set<String> tabled = members(members(sex).get("shows")).keySet();
            for (String a : ids) {
                for (String b : ids) {
                    int ways = (below(order, a, Set.of()).contains(b) ? 1 : 0)
                            + (below(order, b, Set.of()).contains(a) ? 1 : 0)
                            + (tabled.contains(a + "/" + b) || tabled.contains(b + "/" + a) ? 1 : 0);
                    if (ways != (a.equals(b) ? 0 : 1)) {
                        return false;
                    }
                }
            }
        }
        return true;
    }

    /** All alleles that an allele is dominant over, by however many steps. */
    private static Set<String> below(List<Object> order, String allele, Set<String> passed) {
        Set<String> found = new LinkedHashSet<>();
        for (Object statement : order) {
            String[] step = order(statement);
            if (step[0].equals(allele) && !passed.contains(allele)) {
                Set<String> way = new LinkedHashSet<>(passed);
                way.add(allele);
                found.add(step[1]);
                found.addAll(below(order, step[1], way));
            }
        }
        return found;
    }

    @SuppressWarnings("unchecked")
    private static Map<String, Object> members(Object node) {
        return (Map<String, Object>) node;
    }

    private static String[] names(String pointer) {
        String[] names = pointer.substring(1).split("/", -1);
        Arrays.setAll(names, i -> names[i].replace("~1", "/").replace("~0", "~"));
        return names;
    }
}
