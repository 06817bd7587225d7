package org.geneticsrules.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Reckons every reason of an answer again from two texts alone: the answer's document and the model's. It uses nothing of the library,
 * so that an error there cannot agree with itself here.
 */
final class AnswerRecount {

    private static final int MOST_COMBINATIONS = 4096;

    private final JsonNode answer;
    private final JsonModel model;
    private final @Nullable JsonNode stage;
    private final String census;
    private final List<String> errors = new ArrayList<>();
    private final Map<Integer, Case> cases = new LinkedHashMap<>();
    private int checked;

    /**
     * What the young of some parents may carry, or what one animal carries.
     *
     * @param weight how likely it is
     * @param sex the sex of the young; a female stands for both where it makes no difference
     * @param counted the share that is counted
     * @param units what is carried, apart for loci that are handed down apart
     */
    private record Case(
            Fraction weight, String sex, Fraction counted, Map<List<String>, List<JsonMeiosis.Carried>> units) {}

    private AnswerRecount(JsonNode answer, JsonNode model) {
        this.answer = answer;
        this.model = new JsonModel(model);
        this.stage = answer.get("question").get("stage");
        this.census = answer.get("question").get("census").asString();
    }

    /** What does not add up; empty if everything does. */
    static List<String> errors(String answerText, String modelText) {
        return of(answerText, modelText).errors;
    }

    /** How many numbers were reckoned again, all of which have to add up. */
    static int checked(String answerText, String modelText, String what) {
        AnswerRecount recount = of(answerText, modelText);
        assertEquals(List.of(), recount.errors, what);
        return recount.checked;
    }

    private static AnswerRecount of(String answerText, String modelText) {
        JsonMapper json = JsonMapper.builder().build();
        AnswerRecount recount = new AnswerRecount(json.readTree(answerText), json.readTree(modelText));
        recount.parents();
        recount.animals();
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

    private List<JsonNode> reasons(String kind) {
        List<JsonNode> found = new ArrayList<>();
        answer.get("because").forEach(reason -> {
            if (reason.get("kind").asString().equals(kind)) {
                found.add(reason);
            }
        });
        return found;
    }

    private static String sex(JsonNode reason) {
        return reason.has("sex") ? reason.get("sex").asString() : "female";
    }

    /** Gametes and unions of every case of parents, one by one. */
    private void parents() {
        Fraction whole = Fraction.NOUGHT;
        Fraction lost = Fraction.NOUGHT;
        Set<String> loci = new LinkedHashSet<>();
        for (JsonNode reason : reasons("parents")) {
            Map<List<String>, List<JsonMeiosis.Carried>> units = new LinkedHashMap<>();
            loci.addAll(names(reason.get("loci")));
            for (List<String> unit : model.meiosis().units(loci)) {
                units.put(
                        unit,
                        model.meiosis()
                                .kits(unit, reason.get("loci"), sex(reason).equals("female")));
            }
            Case one = new Case(
                    Fraction.of(reason.get("probability")), sex(reason), Fraction.of(reason.get("counted")), units);
            cases.put(reason.get("case").asInt(), one);
            whole = whole.plus(one.weight());
            lost = lost.plus(one.weight().times(Fraction.ONE.minus(one.counted())));
            loci.forEach(locus -> segregation(locus, one, reason.get("loci").get(locus)));
        }
        if (!cases.isEmpty()) {
            equal("the chances of the cases", whole, Fraction.ONE);
            counted();
            if (answer.has("lost") && loci.containsAll(model.lociOfViability())) {
                equal("the share lost", lost, Fraction.of(answer.get("lost")));
            }
        }
    }

    private static List<String> names(JsonNode node) {
        List<String> names = new ArrayList<>();
        node.properties().forEach(one -> names.add(one.getKey()));
        return names;
    }

    private void segregation(String locus, Case one, JsonNode stated) {
        Map<List<String>, Fraction> pairs = new LinkedHashMap<>();
        Map<String, Fraction> shown = new LinkedHashMap<>();
        for (JsonMeiosis.Carried kit : unit(one, locus)) {
            List<String> pair = kit.pairs().get(locus);
            pairs.merge(pair, kit.chance(), Fraction::plus);
            shown.merge(model.expression(locus, pair, one.sex()), kit.chance(), Fraction::plus);
        }
        equal("kits at " + locus, pairs, pairs(stated.get("kits")));
        Map<String, Fraction> said = new LinkedHashMap<>();
        stated.get("expressions")
                .forEach(part -> said.put(part.get("expression").asString(), Fraction.of(part.get("probability"))));
        equal("expressions at " + locus, shown, said);
    }

    private static List<JsonMeiosis.Carried> unit(Case one, String locus) {
        for (Map.Entry<List<String>, List<JsonMeiosis.Carried>> unit :
                one.units().entrySet()) {
            if (unit.getKey().contains(locus)) {
                return unit.getValue();
            }
        }
        throw new IllegalStateException("no case tells of " + locus);
    }

    private static Map<List<String>, Fraction> pairs(JsonNode list) {
        Map<List<String>, Fraction> pairs = new LinkedHashMap<>();
        list.forEach(one -> pairs.put(pair(one.get("pair")), Fraction.of(one.get("probability"))));
        return pairs;
    }

    private static List<String> pair(JsonNode alleles) {
        List<String> pair = new ArrayList<>();
        alleles.forEach(allele -> pair.add(allele.asString()));
        pair.sort(null);
        return pair;
    }

    /** The share of kits that live: of daughters and sons together, who follow one another where they are told apart. */
    private void counted() {
        List<Fraction> lives = new ArrayList<>();
        List<Case> all = new ArrayList<>(cases.values());
        for (Case one : all) {
            Fraction share = Fraction.ONE;
            for (List<JsonMeiosis.Carried> unit : one.units().values()) {
                Fraction here = Fraction.NOUGHT;
                for (JsonMeiosis.Carried kit : unit) {
                    here = here.plus(
                            kit.chance().times(model.survival(expressions(kit, one.sex()), one.sex(), census)));
                }
                share = share.times(here);
            }
            lives.add(share);
        }
        boolean sexes = all.stream().anyMatch(one -> one.sex().equals("male"));
        for (int i = 0; i < all.size(); i++) {
            int mate = i % 2 == 0 ? i + 1 : i - 1;
            Fraction mean = sexes ? lives.get(i).plus(lives.get(mate)).times(Fraction.HALF) : lives.get(i);
            equal("the share counted", mean, all.get(i).counted());
        }
    }

    private Map<String, String> expressions(JsonMeiosis.Carried kit, String sex) {
        Map<String, String> expressions = new LinkedHashMap<>();
        kit.pairs().forEach((locus, pair) -> expressions.put(locus, model.expression(locus, pair, sex)));
        return expressions;
    }

    /** An animal of known genotype. */
    private void animals() {
        for (JsonNode reason : reasons("animal")) {
            Map<List<String>, List<JsonMeiosis.Carried>> units = new LinkedHashMap<>();
            for (String locus : names(reason.get("pairs"))) {
                List<String> pair = pair(reason.get("pairs").get(locus));
                units.put(List.of(locus), List.of(new JsonMeiosis.Carried(Map.of(locus, pair), Fraction.ONE)));
                equal(
                        "expression at " + locus,
                        model.expression(locus, pair, sex(reason)),
                        reason.get("expressions").get(locus).asString());
            }
            Case one = new Case(Fraction.ONE, sex(reason), Fraction.of(reason.get("counted")), units);
            cases.put(reason.get("case").asInt(), one);
            if (answer.get("question").get("seen").isEmpty()) {
                equal("the share counted", Fraction.ONE, one.counted());
            }
        }
    }

    private void ways() {
        Set<String> traits = new LinkedHashSet<>();
        answer.get("question").get("traits").forEach(trait -> traits.add(trait.asString()));
        boolean before = !reasons("animal").isEmpty()
                && !answer.get("question").get("seen").isEmpty();
        for (JsonNode way : reasons("way")) {
            Case one = cases.get(way.get("case").asInt());
            Fraction product = one.weight();
            Map<String, Fraction> factors = new LinkedHashMap<>();
            way.get("factors").properties().forEach(part -> factors.put(part.getKey(), Fraction.of(part.getValue())));
            for (Map.Entry<List<String>, List<JsonMeiosis.Carried>> unit :
                    one.units().entrySet()) {
                product = product.times(allowed(unit.getValue(), one, way));
            }
            Map<String, List<String>> draws = new LinkedHashMap<>();
            for (String name : names(way.get("expressions"))) {
                if (name.startsWith("/")) {
                    Fraction factor = Fraction.NOUGHT;
                    List<String> values = new ArrayList<>();
                    for (Map.Entry<String, Fraction> outcome :
                            model.draw(name, stage).entrySet()) {
                        if (JsonModel.allows(way.get("expressions").get(name), outcome.getKey())) {
                            factor = factor.plus(outcome.getValue());
                            values.add(outcome.getKey());
                        }
                    }
                    if (before) { // what was seen before belongs to the draw
                        factor = factors.get(name);
                    }
                    equal("the chance of " + name, factor, factors.get(name));
                    product = product.times(factor);
                    draws.put(name, values);
                }
            }
            Fraction stated = Fraction.ONE;
            for (Fraction factor : factors.values()) {
                stated = stated.times(factor);
            }
            equal("the factors of a way", product, one.weight().times(stated));
            equal("the product of a way", product.over(one.counted()), Fraction.of(way.get("probability")));
            if (!before) {
                looks(way, one, draws, traits);
            }
        }
    }

    /** The chance that what is carried at some loci shows as a way needs. */
    private Fraction allowed(List<JsonMeiosis.Carried> unit, Case one, JsonNode way) {
        Fraction chance = Fraction.NOUGHT;
        for (JsonMeiosis.Carried kit : unit) {
            if (goes(kit, one, way)) {
                chance = chance.plus(kit.chance());
            }
        }
        return chance;
    }

    private boolean goes(JsonMeiosis.Carried kit, Case one, JsonNode way) {
        return expressions(kit, one.sex()).entrySet().stream()
                .allMatch(shown -> JsonModel.allows(way.get("expressions").get(shown.getKey()), shown.getValue()));
    }

    /** Every animal that goes a way shows its look, and lives. */
    private void looks(JsonNode way, Case one, Map<String, List<String>> draws, Set<String> traits) {
        List<Map<String, String>> expressions = List.of(Map.of());
        for (List<JsonMeiosis.Carried> unit : one.units().values()) {
            Set<Map<String, String>> longer = new LinkedHashSet<>();
            for (Map<String, String> before : expressions) {
                for (JsonMeiosis.Carried kit : unit) {
                    if (goes(kit, one, way)) {
                        Map<String, String> more = new LinkedHashMap<>(before);
                        more.putAll(expressions(kit, one.sex()));
                        longer.add(more);
                    }
                }
            }
            expressions = longer.stream().limit(MOST_COMBINATIONS).toList();
        }
        List<Map<String, String>> drawn = List.of(Map.of());
        for (Map.Entry<String, List<String>> draw : draws.entrySet()) {
            List<Map<String, String>> longer = new ArrayList<>();
            for (Map<String, String> before : drawn) {
                for (String value : draw.getValue()) {
                    Map<String, String> more = new LinkedHashMap<>(before);
                    more.put(draw.getKey(), value);
                    longer.add(more);
                }
            }
            drawn = longer.stream().limit(MOST_COMBINATIONS).toList();
        }
        Map<String, String> stated = phenotype(way.get("phenotype"));
        for (Map<String, String> shown : expressions) {
            for (Map<String, String> outcome : drawn) {
                equal(
                        "the look of " + shown + " " + outcome,
                        model.look(new JsonModel.Animal(shown, one.sex(), stage, outcome), traits),
                        stated);
            }
        }
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
        for (JsonNode way : reasons("way")) {
            sums.merge(phenotype(way.get("phenotype")), Fraction.of(way.get("probability")), Fraction::plus);
        }
        boolean animal = !reasons("animal").isEmpty();
        if (sums.isEmpty() || (!animal && !answer.get("question").get("seen").isEmpty())) {
            return;
        }
        Map<Map<String, String>, Fraction> stated = new LinkedHashMap<>();
        boolean weighted = answer.get("outcomes").get(0).has("probability");
        JsonNode numbers = weighted ? answer : answer.get("weightings").get(0);
        numbers.get("outcomes")
                .forEach(one -> stated.put(phenotype(one.get("phenotype")), Fraction.of(one.get("probability"))));
        equal("the chances of the looks", sums, stated);
        JsonNode asked = answer.get("question").get("look");
        if (asked != null) {
            Fraction chance = Fraction.NOUGHT;
            for (Map.Entry<Map<String, String>, Fraction> look : sums.entrySet()) {
                if (look.getKey().entrySet().containsAll(phenotype(asked).entrySet())) {
                    chance = chance.plus(look.getValue());
                }
            }
            equal("the chance asked for", chance, Fraction.of(numbers.get("probability")));
            if (numbers.has("litter")) {
                litter(numbers.get("litter"), chance);
            }
        }
    }

    /** However litter-mates depend on one another, averages are products. */
    private void litter(JsonNode litter, Fraction chance) {
        Fraction size = Fraction.NOUGHT;
        for (JsonNode one : litter.get("kits")) {
            size = size.plus(times(one));
        }
        Fraction mean = Fraction.NOUGHT;
        Fraction whole = Fraction.NOUGHT;
        Fraction none = Fraction.NOUGHT;
        for (JsonNode one : litter.get("counts")) {
            mean = mean.plus(times(one));
            whole = whole.plus(Fraction.of(one.get("probability")));
            none = one.get("count").asInt() == 0 ? Fraction.of(one.get("probability")) : none;
        }
        equal("the average of a litter", size.times(chance), mean);
        equal("the chances of numbers", Fraction.ONE, whole);
        equal("at least one", Fraction.ONE.minus(none), Fraction.of(litter.get("atLeastOne")));
    }

    private static Fraction times(JsonNode count) {
        return Fraction.of(BigInteger.valueOf(count.get("count").asInt()), BigInteger.ONE)
                .times(Fraction.of(count.get("probability")));
    }

    /** What a kit of a look carries: the share of each pair on the ways to that look. */
    private void hidden() {
        for (JsonNode hidden : answer.get("hidden")) {
            if (!hidden.has("chances")) {
                continue;
            }
            String locus = hidden.get("locus").asString();
            Map<List<String>, Fraction> joint = new LinkedHashMap<>();
            Fraction whole = Fraction.NOUGHT;
            for (JsonNode way : reasons("way")) {
                if (phenotype(way.get("phenotype")).equals(phenotype(hidden.get("phenotype")))) {
                    Case one = cases.get(way.get("case").asInt());
                    Fraction chance = Fraction.of(way.get("probability"));
                    Fraction all = allowed(unit(one, locus), one, way);
                    whole = whole.plus(chance);
                    for (JsonMeiosis.Carried kit : unit(one, locus)) {
                        if (goes(kit, one, way)) {
                            joint.merge(
                                    kit.pairs().get(locus),
                                    chance.times(kit.chance()).over(all),
                                    Fraction::plus);
                        }
                    }
                }
            }
            Fraction total = whole;
            joint.replaceAll((pair, chance) -> chance.over(total));
            equal("what is hidden at " + locus, joint, pairs(hidden.get("chances")));
        }
    }
}
