package org.geneticsrules.examples;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * Lists the gametes and kits of the parents of an answer one by one, from the documents alone. It uses nothing of the library.
 *
 * <p>Every way in which the alleles of linked loci may lie on the strands is gone through, every pattern of crossovers, and every
 * mutation.
 */
final class JsonMeiosis {

    private final JsonNode model;

    JsonMeiosis(JsonNode model) {
        this.model = model;
    }

    /** What one animal carries at some loci: by locus two alleles, one or none. */
    record Carried(Map<String, List<String>> pairs, Fraction chance) {}

    /** One allele for each of some loci. */
    private record Gamete(Map<String, String> alleles, Fraction chance) {}

    /** Strands of a parent, locus by locus; at a locus of which it has one strand both are the same. */
    private record Strands(Map<String, List<String>> lying, Fraction chance) {}

    /** The group of a locus. */
    @Nullable
    JsonNode groupOf(String locus) {
        if (model.has("groups")) {
            for (JsonNode group : model.get("groups")) {
                for (JsonNode one : group.get("loci")) {
                    if (one.asString().equals(locus)) {
                        return group;
                    }
                }
            }
        }
        return null;
    }

    /** Sorts loci into those handed down together, in map order, and those that stand alone. */
    List<List<String>> units(Iterable<String> loci) {
        Map<Object, List<String>> units = new LinkedHashMap<>();
        for (String locus : loci) {
            JsonNode group = groupOf(locus);
            units.computeIfAbsent(group == null ? locus : group.get("loci").toString(), key -> new ArrayList<>())
                    .add(locus);
        }
        units.values().forEach(unit -> {
            JsonNode group = groupOf(unit.get(0));
            if (group != null) {
                List<String> map = new ArrayList<>();
                group.get("loci").forEach(one -> map.add(one.asString()));
                unit.sort((a, b) -> Integer.compare(map.indexOf(a), map.indexOf(b)));
            }
        });
        return new ArrayList<>(units.values());
    }

    private String transmission(String locus) {
        JsonNode group = groupOf(locus);
        return group == null || !group.has("transmission")
                ? "autosomal"
                : group.get("transmission").asString();
    }

    private static boolean passes(String transmission, boolean fromSire, boolean daughter) {
        return switch (transmission) {
            case "autosomal" -> true;
            case "X" -> !fromSire || daughter;
            case "Y" -> fromSire && !daughter;
            case "Z" -> fromSire || !daughter;
            case "W" -> !fromSire && daughter;
            case "maternal" -> !fromSire;
            default -> throw new IllegalStateException(transmission);
        };
    }

    /** What the kits of one sex carry at loci that are handed down together. */
    List<Carried> kits(List<String> unit, JsonNode loci, boolean daughter) {
        String transmission = transmission(unit.get(0));
        List<Gamete> sperm = passes(transmission, true, daughter) ? gametes(unit, loci, "sire") : nothing();
        List<Gamete> eggs = passes(transmission, false, daughter) ? gametes(unit, loci, "dam") : nothing();
        Map<Map<String, List<String>>, Fraction> kits = new LinkedHashMap<>();
        for (Gamete his : sperm) {
            for (Gamete hers : eggs) {
                Map<String, List<String>> pairs = new LinkedHashMap<>();
                for (String locus : unit) {
                    List<String> pair = new ArrayList<>();
                    if (his.alleles().containsKey(locus)) {
                        pair.add(his.alleles().get(locus));
                    }
                    if (hers.alleles().containsKey(locus)) {
                        pair.add(hers.alleles().get(locus));
                    }
                    pair.sort(null);
                    pairs.put(locus, pair);
                }
                kits.merge(pairs, his.chance().times(hers.chance()), Fraction::plus);
            }
        }
        List<Carried> all = new ArrayList<>();
        kits.forEach((pairs, chance) -> all.add(new Carried(pairs, chance)));
        return all;
    }

    private static List<Gamete> nothing() {
        return List.of(new Gamete(Map.of(), Fraction.ONE));
    }

    private List<Gamete> gametes(List<String> unit, JsonNode loci, String parent) {
        Map<Map<String, String>, Fraction> all = new LinkedHashMap<>();
        for (Strands strands : strands(unit, loci, parent)) {
            for (Map.Entry<List<Integer>, Fraction> read : reading(unit, parent).entrySet()) {
                Map<Map<String, String>, Fraction> passed = new LinkedHashMap<>();
                passed.put(Map.of(), strands.chance().times(read.getValue()));
                for (int l = 0; l < unit.size(); l++) {
                    String locus = unit.get(l);
                    String allele = strands.lying().get(locus).get(read.getKey().get(l));
                    Map<Map<String, String>, Fraction> longer = new LinkedHashMap<>();
                    for (Map.Entry<Map<String, String>, Fraction> before : passed.entrySet()) {
                        mutated(locus, allele).forEach((to, rate) -> {
                            Map<String, String> more = new LinkedHashMap<>(before.getKey());
                            more.put(locus, to);
                            longer.merge(more, before.getValue().times(rate), Fraction::plus);
                        });
                    }
                    passed = longer;
                }
                passed.forEach((alleles, chance) -> all.merge(alleles, chance, Fraction::plus));
            }
        }
        List<Gamete> gametes = new ArrayList<>();
        all.forEach((alleles, chance) -> {
            if (!chance.isNought()) {
                gametes.add(new Gamete(alleles, chance));
            }
        });
        return gametes;
    }

    private Map<String, Fraction> mutated(String locus, String allele) {
        Map<String, Fraction> to = new LinkedHashMap<>();
        Fraction same = Fraction.ONE;
        JsonNode rates = model.get("loci").get(locus).get("mutation");
        if (rates != null && rates.has(allele)) {
            for (Map.Entry<String, JsonNode> rate : rates.get(allele).properties()) {
                JsonNode stated = rate.getValue();
                Fraction chance =
                        Fraction.of(stated.isObject() ? stated.get("rate").asString() : stated.asString());
                to.put(rate.getKey(), chance);
                same = same.minus(chance);
            }
        }
        to.put(allele, same);
        return to;
    }

    /** What a parent may be, strand by strand; unknown phases are equally likely. */
    private List<Strands> strands(List<String> unit, JsonNode loci, String parent) {
        List<Strands> all = List.of(new Strands(Map.of(), Fraction.ONE));
        for (String locus : unit) {
            List<Strands> longer = new ArrayList<>();
            for (Strands before : all) {
                for (JsonNode one : loci.get(locus).get(parent)) {
                    Fraction chance = before.chance().times(Fraction.of(one.get("probability")));
                    JsonNode known = loci.get(locus).get(parent + "Strands");
                    List<String> pair = new ArrayList<>();
                    (known == null ? one.get("pair") : known).forEach(allele -> pair.add(allele.asString()));
                    if (pair.size() == 1) {
                        pair.add(pair.get(0));
                    }
                    boolean turns = known == null && !pair.get(0).equals(pair.get(1));
                    longer.add(with(before, locus, pair, turns ? chance.times(Fraction.HALF) : chance));
                    if (turns) {
                        longer.add(with(before, locus, List.of(pair.get(1), pair.get(0)), chance.times(Fraction.HALF)));
                    }
                }
            }
            all = longer;
        }
        return all;
    }

    private static Strands with(Strands before, String locus, List<String> pair, Fraction chance) {
        Map<String, List<String>> lying = new LinkedHashMap<>(before.lying());
        lying.put(locus, pair);
        return new Strands(lying, chance);
    }

    /** Which strand is read at each locus, with its chance. */
    private Map<List<Integer>, Fraction> reading(List<String> unit, String parent) {
        Map<List<Integer>, Fraction> all = new LinkedHashMap<>();
        patterns(unit, parent).forEach((changes, chance) -> {
            for (int first = 0; first < 2; first++) {
                List<Integer> read = new ArrayList<>(List.of(first));
                for (boolean change : changes) {
                    int last = read.get(read.size() - 1);
                    read.add(change ? 1 - last : last);
                }
                all.merge(read, chance.times(Fraction.HALF), Fraction::plus);
            }
        });
        return all;
    }

    /** Whether the strand changes between neighbours of a unit. */
    private Map<List<Boolean>, Fraction> patterns(List<String> unit, String parent) {
        Map<List<Boolean>, Fraction> all = new LinkedHashMap<>();
        if (unit.size() == 1) {
            all.put(List.of(), Fraction.ONE);
            return all;
        }
        JsonNode group = groupOf(unit.get(0));
        List<String> map = new ArrayList<>();
        group.get("loci").forEach(one -> map.add(one.asString()));
        whole(group, map, parent).forEach((intervals, chance) -> {
            List<Boolean> changes = new ArrayList<>();
            for (int l = 1; l < unit.size(); l++) {
                boolean change = false;
                for (int i = map.indexOf(unit.get(l - 1)); i < map.indexOf(unit.get(l)); i++) {
                    change ^= intervals.get(i);
                }
                changes.add(change);
            }
            all.merge(changes, chance, Fraction::plus);
        });
        return all;
    }

    /** Which intervals of a whole group recombine. */
    private static Map<List<Boolean>, Fraction> whole(JsonNode group, List<String> map, String parent) {
        Map<List<Boolean>, Fraction> all = new LinkedHashMap<>();
        if (group.has("crossovers")) {
            for (Map.Entry<String, JsonNode> pattern : group.get("crossovers").properties()) {
                List<String> named = List.of(pattern.getKey().split(" "));
                List<Boolean> intervals = new ArrayList<>();
                for (int i = 1; i < map.size(); i++) {
                    intervals.add(named.contains(map.get(i - 1) + "-" + map.get(i)));
                }
                all.put(intervals, Fraction.of(pattern.getValue().asString()));
            }
            return all;
        }
        all.put(List.of(), Fraction.ONE);
        JsonNode stated = group.get("recombination");
        JsonNode fractions = stated.isArray() ? stated : stated.get(parent.equals("sire") ? "male" : "female");
        Map<List<Boolean>, Fraction> found = all;
        for (JsonNode fraction : fractions) {
            Fraction r = Fraction.of(fraction.asString());
            Map<List<Boolean>, Fraction> longer = new LinkedHashMap<>();
            found.forEach((before, chance) -> {
                longer.put(and(before, true), chance.times(r));
                longer.put(and(before, false), chance.times(Fraction.ONE.minus(r)));
            });
            found = longer;
        }
        return found;
    }

    private static List<Boolean> and(List<Boolean> before, boolean next) {
        List<Boolean> longer = new ArrayList<>(before);
        longer.add(next);
        return longer;
    }
}
