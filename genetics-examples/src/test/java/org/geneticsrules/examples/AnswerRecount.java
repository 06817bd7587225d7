package org.geneticsrules.examples;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Reckons every reason of an answer again from two texts alone: the answer's document and the model's. It uses nothing of the library,
 * so that an error there cannot agree with itself here.
 */
final class AnswerRecount {

    /** An exact fraction in lowest terms. */
    record Fraction(BigInteger up, BigInteger down) {
        static final Fraction NOUGHT = of(BigInteger.ZERO, BigInteger.ONE);

        static Fraction of(BigInteger up, BigInteger down) {
            BigInteger common = up.gcd(down);
            return new Fraction(up.divide(common), down.divide(common));
        }

        static Fraction of(JsonNode chance) {
            return of(
                    new BigInteger(chance.get("numerator").asString()),
                    new BigInteger(chance.get("denominator").asString()));
        }

        Fraction times(Fraction other) {
            return of(up.multiply(other.up), down.multiply(other.down));
        }

        Fraction plus(Fraction other) {
            return of(up.multiply(other.down).add(other.up.multiply(down)), down.multiply(other.down));
        }

        Fraction over(Fraction other) {
            return of(up.multiply(other.down), down.multiply(other.up));
        }

        @Override
        public String toString() {
            return up + "/" + down;
        }
    }

    private static final Fraction QUARTER = Fraction.of(BigInteger.ONE, BigInteger.valueOf(4));
    private static final int MOST_COMBINATIONS = 4096;

    private final JsonNode answer;
    private final JsonModel model;
    private final List<String> errors = new ArrayList<>();
    private final Map<Integer, JsonNode> cases = new LinkedHashMap<>();
    private final Map<Integer, Map<String, Map<Set<String>, Fraction>>> kits = new LinkedHashMap<>();
    private int checked;

    private AnswerRecount(JsonNode answer, JsonNode model) {
        this.answer = answer;
        this.model = new JsonModel(model);
    }

    /** What does not add up; empty if everything does. */
    static List<String> errors(String answerText, String modelText) {
        return of(answerText, modelText).errors;
    }

    /** How many numbers were reckoned again. */
    static int numbers(String answerText, String modelText) {
        return of(answerText, modelText).checked;
    }

    private static AnswerRecount of(String answerText, String modelText) {
        JsonMapper json = JsonMapper.builder().build();
        AnswerRecount recount = new AnswerRecount(json.readTree(answerText), json.readTree(modelText));
        recount.parents();
        recount.ways();
        recount.outcomes();
        recount.hidden();
        return recount;
    }

    private void equal(String what, Object reckoned, Object stated) {
        checked++;
        if (!reckoned.equals(stated)) {
            errors.add(what + ": reckoned " + reckoned + " but stated " + stated);
        }
    }

    /** Each parent gives either of its alleles with chance 1/2; equal unions are added. */
    private void parents() {
        Fraction whole = Fraction.NOUGHT;
        for (JsonNode reason : answer.get("because")) {
            if (!reason.get("kind").asString().equals("parents")) {
                continue;
            }
            int number = reason.get("case").asInt();
            cases.put(number, reason);
            whole = whole.plus(Fraction.of(reason.get("probability")));
            Map<String, Map<Set<String>, Fraction>> young = new LinkedHashMap<>();
            for (Map.Entry<String, JsonNode> locus : reason.get("loci").properties()) {
                Map<Set<String>, Fraction> unions = new LinkedHashMap<>();
                Map<String, Fraction> shown = new LinkedHashMap<>();
                for (JsonNode sire : locus.getValue().get("sire")) {
                    for (JsonNode dam : locus.getValue().get("dam")) {
                        Fraction each = Fraction.of(sire.get("probability"))
                                .times(Fraction.of(dam.get("probability")))
                                .times(QUARTER);
                        for (JsonNode his : sire.get("pair")) {
                            for (JsonNode hers : dam.get("pair")) {
                                Set<String> pair = new HashSet<>(List.of(his.asString()));
                                pair.add(hers.asString());
                                unions.merge(pair, each, Fraction::plus);
                                shown.merge(model.expression(locus.getKey(), pair), each, Fraction::plus);
                            }
                        }
                    }
                }
                equal(
                        "kits at " + locus.getKey(),
                        unions,
                        pairs(locus.getValue().get("kits")));
                Map<String, Fraction> stated = new LinkedHashMap<>();
                locus.getValue()
                        .get("expressions")
                        .forEach(one ->
                                stated.put(one.get("expression").asString(), Fraction.of(one.get("probability"))));
                equal("expressions at " + locus.getKey(), shown, stated);
                young.put(locus.getKey(), unions);
            }
            kits.put(number, young);
        }
        if (!cases.isEmpty()) {
            equal("the chances of the cases", whole, Fraction.of(BigInteger.ONE, BigInteger.ONE));
        }
    }

    private static Map<Set<String>, Fraction> pairs(JsonNode list) {
        Map<Set<String>, Fraction> pairs = new LinkedHashMap<>();
        for (JsonNode one : list) {
            Set<String> pair = new HashSet<>();
            one.get("pair").forEach(allele -> pair.add(allele.asString()));
            pairs.put(pair, Fraction.of(one.get("probability")));
        }
        return pairs;
    }

    private void ways() {
        Set<String> traits = new LinkedHashSet<>();
        answer.get("question").get("traits").forEach(trait -> traits.add(trait.asString()));
        for (JsonNode way : answer.get("because")) {
            if (!way.get("kind").asString().equals("way")) {
                continue;
            }
            int number = way.get("case").asInt();
            Fraction product = Fraction.of(cases.get(number).get("probability"));
            Map<String, List<String>> options = new LinkedHashMap<>();
            for (Map.Entry<String, Map<Set<String>, Fraction>> locus :
                    kits.get(number).entrySet()) {
                JsonNode allowed = way.get("expressions").get(locus.getKey());
                Fraction factor = Fraction.NOUGHT;
                Set<String> occurring = new LinkedHashSet<>();
                for (Map.Entry<Set<String>, Fraction> pair : locus.getValue().entrySet()) {
                    String expression = model.expression(locus.getKey(), pair.getKey());
                    if (JsonModel.allows(allowed, expression)) {
                        factor = factor.plus(pair.getValue());
                        occurring.add(expression);
                    }
                }
                options.put(locus.getKey(), List.copyOf(occurring));
                if (allowed != null) {
                    equal(
                            "factor at " + locus.getKey(),
                            factor,
                            Fraction.of(way.get("factors").get(locus.getKey())));
                    product = product.times(factor);
                }
            }
            equal("the product of a way", product, Fraction.of(way.get("probability")));
            Map<String, String> stated = phenotype(way.get("phenotype"));
            for (Map<String, String> expressions : combinations(options)) {
                equal("the look of " + expressions, model.look(expressions, traits), stated);
            }
        }
    }

    private static List<Map<String, String>> combinations(Map<String, List<String>> options) {
        List<Map<String, String>> all = new ArrayList<>(List.of(Map.of()));
        for (Map.Entry<String, List<String>> locus : options.entrySet()) {
            List<Map<String, String>> longer = new ArrayList<>();
            for (Map<String, String> one : all) {
                for (String expression : locus.getValue()) {
                    Map<String, String> more = new LinkedHashMap<>(one);
                    more.put(locus.getKey(), expression);
                    longer.add(more);
                }
            }
            all = longer.size() > MOST_COMBINATIONS ? longer.subList(0, MOST_COMBINATIONS) : longer;
        }
        return all;
    }

    private static Map<String, String> phenotype(JsonNode node) {
        Map<String, String> states = new LinkedHashMap<>();
        node.properties()
                .forEach(state -> states.put(state.getKey(), state.getValue().asString()));
        return states;
    }

    /** Ways to one look add up to its chance, and looks to the chance asked for. */
    private void outcomes() {
        Map<Map<String, String>, Fraction> sums = new LinkedHashMap<>();
        for (JsonNode reason : answer.get("because")) {
            if (reason.get("kind").asString().equals("way")) {
                sums.merge(phenotype(reason.get("phenotype")), Fraction.of(reason.get("probability")), Fraction::plus);
            }
        }
        if (sums.isEmpty() || !answer.get("question").get("seen").isEmpty()) {
            return;
        }
        Map<Map<String, String>, Fraction> stated = new LinkedHashMap<>();
        boolean weighted = answer.get("outcomes").get(0).has("probability");
        JsonNode outcomes = weighted
                ? answer.get("outcomes")
                : answer.get("weightings").get(0).get("outcomes");
        outcomes.forEach(one -> stated.put(phenotype(one.get("phenotype")), Fraction.of(one.get("probability"))));
        equal("the chances of the looks", sums, stated);
        JsonNode asked = answer.get("question").get("look");
        if (asked != null) {
            Fraction chance = Fraction.NOUGHT;
            for (Map.Entry<Map<String, String>, Fraction> look : sums.entrySet()) {
                if (look.getKey().entrySet().containsAll(phenotype(asked).entrySet())) {
                    chance = chance.plus(look.getValue());
                }
            }
            JsonNode said = weighted
                    ? answer.get("probability")
                    : answer.get("weightings").get(0).get("probability");
            equal("the chance asked for", chance, Fraction.of(said));
        }
    }

    /** What a kit of a look carries: the share of each pair on the ways to that look. */
    private void hidden() {
        for (JsonNode hidden : answer.get("hidden")) {
            if (!hidden.has("chances")) {
                continue;
            }
            String locus = hidden.get("locus").asString();
            Map<Set<String>, Fraction> joint = new LinkedHashMap<>();
            Fraction whole = Fraction.NOUGHT;
            for (JsonNode way : answer.get("because")) {
                if (!way.get("kind").asString().equals("way")
                        || !phenotype(way.get("phenotype")).equals(phenotype(hidden.get("phenotype")))) {
                    continue;
                }
                JsonNode allowed = way.get("expressions").get(locus);
                Fraction chance = Fraction.of(way.get("probability"));
                Fraction factor = allowed == null
                        ? Fraction.of(BigInteger.ONE, BigInteger.ONE)
                        : Fraction.of(way.get("factors").get(locus));
                whole = whole.plus(chance);
                for (Map.Entry<Set<String>, Fraction> pair :
                        kits.get(way.get("case").asInt()).get(locus).entrySet()) {
                    if (JsonModel.allows(allowed, model.expression(locus, pair.getKey()))) {
                        joint.merge(pair.getKey(), chance.times(pair.getValue()).over(factor), Fraction::plus);
                    }
                }
            }
            Fraction total = whole;
            joint.replaceAll((pair, chance) -> chance.over(total));
            equal("what is hidden at " + locus, joint, pairs(hidden.get("chances")));
        }
    }
}
