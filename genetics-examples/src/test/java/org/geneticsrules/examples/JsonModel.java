package org.geneticsrules.examples;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/** Reads the document of a model literally, one genotype at a time. It uses nothing of the library. */
final class JsonModel {

    private final JsonNode model;

    JsonModel(JsonNode model) {
        this.model = model;
    }

    static boolean allows(@Nullable JsonNode condition, String value) {
        if (condition == null) {
            return true;
        }
        if (condition.isArray()) {
            return contains(condition, value);
        }
        return !contains(condition.get("not"), value);
    }

    private static boolean contains(JsonNode list, String value) {
        for (JsonNode one : list) {
            if (one.asString().equals(value)) {
                return true;
            }
        }
        return false;
    }

    /** What a pair shows as: the table where it names the pair, or the dominant allele's entry. */
    String expression(String locus, Set<String> pair) {
        JsonNode dominance = model.get("loci").get(locus).get("dominance");
        Map<Set<String>, String> table = new LinkedHashMap<>();
        for (Map.Entry<String, JsonNode> entry : dominance.get("shows").properties()) {
            JsonNode shown = entry.getValue();
            table.put(
                    Set.copyOf(List.of(entry.getKey().split("/"))),
                    shown.isObject() ? text(shown, "shows") : shown.asString());
        }
        String direct = table.get(pair);
        if (direct != null) {
            return direct;
        }
        for (String dominant : pair) {
            Set<String> below = below(dominance, dominant);
            if (below.containsAll(
                    pair.stream().filter(allele -> !allele.equals(dominant)).toList())) {
                String shown = table.get(Set.of(dominant));
                if (shown != null) {
                    return shown;
                }
            }
        }
        throw new IllegalStateException("nothing decides " + pair + " at " + locus);
    }

    private static Set<String> below(JsonNode dominance, String allele) {
        Set<String> found = new LinkedHashSet<>();
        Deque<String> open = new ArrayDeque<>(List.of(allele));
        while (!open.isEmpty()) {
            String upper = open.pop();
            if (dominance.has("order")) {
                for (JsonNode entry : dominance.get("order")) {
                    String order = entry.isObject() ? text(entry, "order") : entry.asString();
                    List<String> chain = List.of(order.split(" > "));
                    for (int i = 0; i + 1 < chain.size(); i++) {
                        if (chain.get(i).equals(upper) && found.add(chain.get(i + 1))) {
                            open.push(chain.get(i + 1));
                        }
                    }
                }
            }
        }
        return found;
    }

    /** What is seen in some traits: own states, then masks; a trait without a claim is absent. */
    Map<String, String> look(Map<String, String> expressions, Set<String> traits) {
        Map<String, String> own = new LinkedHashMap<>();
        for (Map.Entry<String, JsonNode> trait : model.get("traits").properties()) {
            own(trait.getKey(), expressions, own);
        }
        Map<String, String> look = new LinkedHashMap<>();
        for (String trait : traits) {
            String shown = shown(trait, expressions, own);
            if (shown != null) {
                look.put(trait, shown);
            }
        }
        return look;
    }

    private @Nullable String own(String trait, Map<String, String> expressions, Map<String, String> own) {
        JsonNode rule = model.get("traits").get(trait);
        for (Map.Entry<String, JsonNode> one : rule.get("cases").properties()) {
            if (holds(one.getValue().get("when"), expressions, own)) {
                own.put(trait, text(one.getValue(), "state"));
                return own.get(trait);
            }
        }
        JsonNode otherwise = rule.get("otherwise");
        if (otherwise != null) {
            own.put(trait, otherwise.isObject() ? text(otherwise, "state") : otherwise.asString());
        }
        return own.get(trait);
    }

    private boolean holds(JsonNode when, Map<String, String> expressions, Map<String, String> own) {
        for (Map.Entry<String, JsonNode> part : when.properties()) {
            boolean locus = model.get("loci").has(part.getKey());
            String value = locus ? expressions.get(part.getKey()) : own(part.getKey(), expressions, own);
            if (value == null || !allows(part.getValue(), value)) {
                return false;
            }
        }
        return true;
    }

    private @Nullable String shown(String trait, Map<String, String> expressions, Map<String, String> own) {
        Set<String> active = new LinkedHashSet<>();
        if (model.has("masks")) {
            for (Map.Entry<String, JsonNode> mask : model.get("masks").properties()) {
                if (mask.getValue().get("covers").has(trait)
                        && holds(mask.getValue().get("when"), expressions, own)) {
                    active.add(mask.getKey());
                }
            }
        }
        List<String> deciding = new ArrayList<>(active);
        deciding.removeIf(lower -> active.stream().anyMatch(upper -> over(upper, lower)));
        String state = own.get(trait);
        if (deciding.isEmpty()) {
            return state;
        }
        JsonNode cover = model.get("masks").get(deciding.get(0)).get("covers").get(trait);
        if (cover.isString()) {
            return cover.asString();
        }
        return state == null ? null : cover.has(state) ? text(cover, state) : state;
    }

    private boolean over(String upper, String lower) {
        JsonNode below = model.get("masks").get(upper).get("over");
        if (below == null) {
            return false;
        }
        for (JsonNode one : below) {
            if (one.asString().equals(lower) || over(one.asString(), lower)) {
                return true;
            }
        }
        return false;
    }

    private static String text(JsonNode node, String name) {
        return node.get(name).asString();
    }
}
