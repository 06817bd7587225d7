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

/** Reads the document of a model literally, one animal at a time. It uses nothing of the library. */
final class JsonModel {

    private final JsonNode model;
    private final JsonMeiosis meiosis;

    JsonModel(JsonNode model) {
        this.model = model;
        this.meiosis = new JsonMeiosis(model);
    }

    JsonMeiosis meiosis() {
        return meiosis;
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

    /** What two alleles, one or none show as: the table where it names them, or the dominant allele's entry. */
    String expression(String locus, List<String> pair, String sex) {
        JsonNode stated = model.get("loci").get(locus);
        if (pair.isEmpty()) {
            return text(stated, "absent");
        }
        JsonNode dominance = stated.get("dominance");
        dominance = dominance.has(sex) ? dominance.get(sex) : dominance;
        Map<List<String>, String> table = new LinkedHashMap<>();
        for (Map.Entry<String, JsonNode> entry : dominance.get("shows").properties()) {
            List<String> key = new ArrayList<>(List.of(entry.getKey().split("/")));
            key.sort(null);
            JsonNode shown = entry.getValue();
            table.put(key, shown.isObject() ? text(shown, "shows") : shown.asString());
        }
        if (pair.size() == 1) {
            for (String partner : List.of("Y", "W")) {
                List<String> hemizygous = new ArrayList<>(List.of(pair.get(0), partner));
                hemizygous.sort(null);
                boolean allele = stated.get("alleles").toString().contains("\"" + partner + "\"");
                if (!allele && table.containsKey(hemizygous)) {
                    return table.get(hemizygous);
                }
            }
        }
        List<String> sorted = new ArrayList<>(pair);
        sorted.sort(null);
        if (sorted.size() == 2 && sorted.get(0).equals(sorted.get(1))) {
            sorted.remove(1);
        }
        String direct = table.get(sorted);
        if (direct != null) {
            return direct;
        }
        for (String dominant : sorted) {
            Set<String> below = below(dominance, dominant);
            if (below.containsAll(
                    sorted.stream().filter(allele -> !allele.equals(dominant)).toList())) {
                String shown = table.get(List.of(dominant));
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

    /** The chance of an animal to live until it is counted, as far as it is decided at some loci. */
    Fraction survival(Map<String, String> expressions, String sex, String census) {
        Fraction lives = Fraction.ONE;
        if (model.has("viability")) {
            for (JsonNode one : model.get("viability")) {
                String shown = expressions.get(text(one, "locus"));
                boolean same = !one.has("sex") || text(one, "sex").equals(sex);
                if (shown != null && same && contains(one.get("expressions"), shown)) {
                    if (one.has("birth") && !census.equals("conceived")) {
                        lives = lives.times(Fraction.of(text(one, "birth")));
                    }
                    if (one.has("scored") && census.equals("scored")) {
                        lives = lives.times(Fraction.of(text(one, "scored")));
                    }
                }
            }
        }
        return lives;
    }

    /** The loci at which statements about viability are made. */
    Set<String> lociOfViability() {
        Set<String> loci = new LinkedHashSet<>();
        if (model.has("viability")) {
            model.get("viability").forEach(one -> loci.add(text(one, "locus")));
        }
        return loci;
    }

    /** The chances of what is drawn once in the life of an animal, by the pointer of the statement. */
    Map<String, Fraction> draw(String pointer, @Nullable JsonNode stage) {
        Map<String, Fraction> chances = new LinkedHashMap<>();
        JsonNode stated = model.at(pointer);
        if (stated.isString()) { // a step of viability
            Fraction lives = Fraction.of(stated.asString());
            chances.put("lives", lives);
            chances.put("lost", Fraction.ONE.minus(lives));
        } else if (stated.has("chance")) {
            chances(stated.get("chance"), chances);
        } else if (stated.has("progression")) {
            JsonNode chain = stated.get("progression");
            chances(chain.get("start"), chances);
            int steps = stage.get(text(chain, "clock").equals("week") ? "weeks" : "moult")
                    .asInt();
            for (int i = 0; i < steps; i++) {
                step(chain.get("step"), chances);
            }
        } else {
            JsonNode residual = stated.get("threshold").get("residual");
            if (residual == null) {
                chances.put("0", Fraction.ONE);
            } else {
                chances(residual, chances);
            }
        }
        chances.values().removeIf(Fraction::isNought);
        return chances;
    }

    private static void chances(JsonNode node, Map<String, Fraction> into) {
        node.properties()
                .forEach(
                        one -> into.put(one.getKey(), Fraction.of(one.getValue().asString())));
    }

    private static void step(JsonNode steps, Map<String, Fraction> chances) {
        Map<String, Fraction> next = new LinkedHashMap<>();
        chances.forEach((from, chance) -> {
            if (steps.has(from)) {
                steps.get(from)
                        .properties()
                        .forEach(to -> next.merge(
                                to.getKey(),
                                chance.times(Fraction.of(to.getValue().asString())),
                                Fraction::plus));
            } else {
                next.merge(from, chance, Fraction::plus);
            }
        });
        chances.clear();
        chances.putAll(next);
    }

    /** One animal that is looked at: what its loci show, its sex, when, and what chance decided. */
    record Animal(
            Map<String, String> expressions,
            String sex,
            @Nullable JsonNode stage,
            Map<String, String> draws) {}

    /** What is seen of an animal in some traits: own states, then masks; a trait without a claim is absent. */
    Map<String, String> look(Animal animal, Set<String> traits) {
        Map<String, String> own = new LinkedHashMap<>();
        Map<String, String> look = new LinkedHashMap<>();
        for (String trait : traits) {
            String shown = trait.equals("sex") ? animal.sex() : shown(trait, animal, own);
            if (shown != null) {
                look.put(trait, shown);
            }
        }
        return look;
    }

    private @Nullable String own(String trait, Animal animal, Map<String, String> own) {
        if (own.containsKey(trait)) {
            return own.get(trait);
        }
        String state = null;
        JsonNode rule = model.get("traits").get(trait);
        boolean unknown = false;
        boolean decided = false;
        for (Map.Entry<String, JsonNode> one : rule.get("cases").properties()) {
            Boolean holds = holds(one.getValue().get("when"), animal, own);
            unknown |= holds == null;
            if (Boolean.TRUE.equals(holds) && !decided) {
                decided = true;
                state = given("/traits/" + escaped(trait) + "/cases/" + escaped(one.getKey()), one.getValue(), animal);
            }
        }
        JsonNode otherwise = rule.get("otherwise");
        if (!decided && !unknown && otherwise != null) {
            state = otherwise.isObject()
                    ? given("/traits/" + escaped(trait) + "/otherwise", otherwise, animal)
                    : otherwise.asString();
        }
        own.put(trait, state);
        return state;
    }

    private static String escaped(String name) {
        return name.replace("~", "~0").replace("/", "~1");
    }

    private String given(String pointer, JsonNode gives, Animal animal) {
        if (gives.has("state")) {
            return text(gives, "state");
        }
        String drawn = animal.draws().get(pointer);
        if (drawn == null) {
            drawn = draw(pointer, animal.stage()).keySet().iterator().next();
        }
        if (!gives.has("threshold")) {
            return drawn;
        }
        JsonNode threshold = gives.get("threshold");
        int sum = Integer.parseInt(drawn);
        for (Map.Entry<String, JsonNode> dose : threshold.get("doses").properties()) {
            JsonNode amount = dose.getValue().get(animal.expressions().get(dose.getKey()));
            sum += amount == null ? 0 : amount.asInt();
        }
        String state = text(threshold, "below");
        int highest = Integer.MIN_VALUE;
        for (Map.Entry<String, JsonNode> cut : threshold.get("cuts").properties()) {
            int least = cut.getValue().asInt();
            if (sum >= least && least > highest) {
                highest = least;
                state = cut.getKey();
            }
        }
        return state;
    }

    /** Whether a condition holds; null if a trait that it reads is not modelled and nothing else fails it. */
    private @Nullable Boolean holds(JsonNode when, Animal animal, Map<String, String> own) {
        boolean unknown = false;
        for (Map.Entry<String, JsonNode> part : when.properties()) {
            String name = part.getKey();
            String value;
            if (model.get("loci").has(name)) {
                value = animal.expressions().get(name);
            } else if (name.equals("sex")) {
                value = animal.sex();
            } else if (name.equals("season")) {
                value = animal.stage() == null || !animal.stage().has("season") ? null : text(animal.stage(), "season");
            } else {
                value = own(name, animal, own);
            }
            if (value == null) {
                unknown = true;
            } else if (!allows(part.getValue(), value)) {
                return false;
            }
        }
        return unknown ? null : Boolean.TRUE;
    }

    private @Nullable String shown(String trait, Animal animal, Map<String, String> own) {
        Set<String> active = new LinkedHashSet<>();
        boolean unknown = false;
        if (model.has("masks")) {
            for (Map.Entry<String, JsonNode> mask : model.get("masks").properties()) {
                if (mask.getValue().get("covers").has(trait)) {
                    Boolean holds = holds(mask.getValue().get("when"), animal, own);
                    unknown |= holds == null;
                    if (Boolean.TRUE.equals(holds)) {
                        active.add(mask.getKey());
                    }
                }
            }
        }
        if (unknown) {
            return null;
        }
        List<String> deciding = new ArrayList<>(active);
        deciding.removeIf(lower -> active.stream().anyMatch(upper -> over(upper, lower)));
        String state = own(trait, animal, own);
        for (String mask : deciding) {
            JsonNode cover = model.get("masks").get(mask).get("covers").get(trait);
            if (cover.isString()) {
                return cover.asString();
            }
        }
        if (deciding.isEmpty() || state == null) {
            return state;
        }
        JsonNode cover = model.get("masks").get(deciding.get(0)).get("covers").get(trait);
        return cover.has(state) ? text(cover, state) : state;
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
