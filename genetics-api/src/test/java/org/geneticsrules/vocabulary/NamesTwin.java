package org.geneticsrules.vocabulary;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.geneticsrules.vocabulary.PlainNames.Day;
import org.geneticsrules.vocabulary.PlainNames.From;
import org.geneticsrules.vocabulary.PlainNames.Reading;
import org.geneticsrules.vocabulary.PlainNames.Word;
import org.geneticsrules.vocabulary.RandomNames.Look;

/** Names by brute force: every phenotype is listed and asked. Shares no code with the library. */
final class NamesTwin {

    final PlainNames plain;
    final List<Map<String, String>> points;

    NamesTwin(PlainNames plain) {
        this.plain = plain;
        this.points = plain.points();
    }

    static boolean isIn(Reading sense, Map<String, String> point) {
        return sense.looks().stream()
                .anyMatch(look -> look.entrySet().stream()
                        .allMatch(variable -> variable.getValue().contains(point.get(variable.getKey()))));
    }

    static boolean isIn(List<Reading> senses, Map<String, String> point) {
        return senses.stream().anyMatch(sense -> isIn(sense, point));
    }

    static List<Reading> used(Word word, Optional<Day> date) {
        return word.senses().stream().filter(sense -> sense.isUsed(date)).toList();
    }

    /** Those of some senses that are in use on each day of a date; without one, all of them. */
    static Set<List<Reading>> daily(List<Reading> senses, Optional<Day> date) {
        return date.map(some -> some.days().stream()
                        .map(day -> senses.stream()
                                .filter(sense -> sense.isUsed(day))
                                .toList())
                        .collect(Collectors.toSet()))
                .orElse(Set.of(senses));
    }

    Set<String> untold(Look look) {
        return plain.states().keySet().stream()
                .filter(trait ->
                        look.isBefore(Optional.ofNullable(plain.judgeable().get(trait))))
                .collect(Collectors.toSet());
    }

    /** What is known and counts, in the order of the variables. */
    Map<String, String> known(Look look) {
        Map<String, String> stated = new LinkedHashMap<>(look.seen());
        stated.keySet().removeAll(untold(look));
        stated.putAll(look.circumstances());
        Map<String, String> known = new LinkedHashMap<>();
        for (String variable : plain.variables().keySet()) {
            if (stated.containsKey(variable)) {
                known.put(variable, stated.get(variable));
            }
        }
        return known;
    }

    List<Map<String, String>> agreeing(Map<String, String> known) {
        return points.stream()
                .filter(point -> point.entrySet().containsAll(known.entrySet()))
                .toList();
    }

    String standing(List<Reading> senses, Look look) {
        Set<String> found = daily(senses, look.date()).stream()
                .map(day -> standingOnADay(day, look))
                .collect(Collectors.toSet());
        if (found.equals(Set.of("CERTAIN")) || found.equals(Set.of("EXCLUDED"))) {
            return found.iterator().next();
        }
        return found.contains("CERTAIN") || found.contains("POSSIBLE") ? "POSSIBLE" : "TOO_EARLY";
    }

    private String standingOnADay(List<Reading> senses, Look look) {
        List<Reading> now =
                senses.stream().filter(sense -> !look.isBefore(sense.from())).toList();
        List<Map<String, String>> agreeing = agreeing(known(look));
        if (agreeing.stream().allMatch(point -> isIn(now, point))) {
            return "CERTAIN";
        }
        Set<String> untold = untold(look);
        Map<Map<String, String>, Boolean> always = new LinkedHashMap<>();
        for (Map<String, String> point : agreeing) {
            Map<String, String> told = new LinkedHashMap<>(point);
            told.keySet().removeAll(untold);
            always.merge(told, isIn(now, point), (one, other) -> one && other);
        }
        if (always.containsValue(true)) {
            return "POSSIBLE";
        }
        return agreeing.stream().anyMatch(point -> isIn(senses, point)) ? "TOO_EARLY" : "EXCLUDED";
    }

    /** The variables not in a list on which it depends, among some points, whether a condition holds. */
    Set<String> decisive(List<Map<String, String>> among, Predicate<Map<String, String>> holds) {
        Set<Map<String, String>> all = new LinkedHashSet<>(among);
        Set<String> decisive = new LinkedHashSet<>();
        plain.variables().forEach((variable, values) -> {
            for (Map<String, String> point : among) {
                for (String value : values) {
                    Map<String, String> changed = new LinkedHashMap<>(point);
                    changed.put(variable, value);
                    if (all.contains(changed) && holds.test(point) != holds.test(changed)) {
                        decisive.add(variable);
                    }
                }
            }
        });
        return decisive;
    }

    boolean excludes(Map<String, String> known, List<Reading> senses) {
        return agreeing(known).stream().noneMatch(point -> isIn(senses, point));
    }

    /** Every part of what is known that excludes. */
    List<Map<String, String>> excluding(Map<String, String> known, List<Reading> senses) {
        List<String> variables = new ArrayList<>(known.keySet());
        List<Map<String, String>> found = new ArrayList<>();
        for (int bits = 0; bits < 1 << variables.size(); bits++) {
            Map<String, String> part = new LinkedHashMap<>();
            for (int i = 0; i < variables.size(); i++) {
                if ((bits >> i & 1) == 1) {
                    part.put(variables.get(i), Objects.requireNonNull(known.get(variables.get(i))));
                }
            }
            if (excludes(part, senses)) {
                found.add(part);
            }
        }
        return found;
    }

    /** The fewest things known that some animal so called does not share. */
    int distance(Map<String, String> known, List<Reading> senses) {
        return points.stream()
                .filter(point -> isIn(senses, point))
                .mapToInt(point -> (int) known.entrySet().stream()
                        .filter(one -> !one.getValue().equals(point.get(one.getKey())))
                        .count())
                .min()
                .orElseThrow();
    }

    Optional<From> later(boolean weeks, List<Reading> senses, Look look, Set<String> lookAt) {
        List<From> all = new ArrayList<>();
        senses.stream()
                .filter(sense -> !excludes(known(look), List.of(sense)))
                .forEach(sense -> sense.from().ifPresent(all::add));
        lookAt.forEach(
                trait -> Optional.ofNullable(plain.judgeable().get(trait)).ifPresent(all::add));
        return all.stream()
                .filter(from -> from.weeks() == weeks && look.isBefore(Optional.of(from)))
                .max((one, other) -> Integer.compare(one.count(), other.count()));
    }

    Set<Map<String, String>> covered(List<Reading> senses, Map<String, String> circumstances) {
        return agreeing(circumstances).stream()
                .filter(point -> isIn(senses, point))
                .collect(Collectors.toCollection(LinkedHashSet::new));
    }

    /** What is left of a set if some variables are not looked at. */
    Set<Map<String, String>> blurred(Set<Map<String, String>> set, Set<String> variables) {
        Set<Map<String, String>> parts = new LinkedHashSet<>();
        set.forEach(point -> parts.add(without(point, variables)));
        return points.stream()
                .filter(point -> parts.contains(without(point, variables)))
                .collect(Collectors.toCollection(LinkedHashSet::new));
    }

    static Map<String, String> without(Map<String, String> point, Set<String> variables) {
        Map<String, String> rest = new LinkedHashMap<>(point);
        rest.keySet().removeAll(variables);
        return rest;
    }
}
