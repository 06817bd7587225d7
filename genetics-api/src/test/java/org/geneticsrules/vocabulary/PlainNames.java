package org.geneticsrules.vocabulary;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * A vocabulary as plain lists and maps, from which both the library's own and its twin are made.
 *
 * @param states the states of each trait
 * @param judgeable the stage from which a trait can be told, for some
 * @param seasons the seasons; may be none
 * @param facets the facets
 * @param names the names
 */
record PlainNames(
        Map<String, List<String>> states,
        Map<String, From> judgeable,
        List<String> seasons,
        List<String> facets,
        List<Word> names) {

    /** A count of weeks or moults. */
    record From(boolean weeks, int count) {}

    /** A name. */
    record Word(String word, String facet, List<Reading> senses) {}

    /**
     * A sense; a look gives the allowed values of some variables.
     *
     * @param id its id
     * @param looks its looks
     * @param first first year of use
     * @param last last year of use
     * @param from the stage from which it is said
     */
    record Reading(
            String id,
            List<Map<String, Set<String>>> looks,
            Optional<Integer> first,
            Optional<Integer> last,
            Optional<From> from) {

        boolean isUsed(Optional<Integer> year) {
            return year.map(one -> first.orElse(0) <= one && one <= last.orElse(9999))
                    .orElse(last.isEmpty());
        }
    }

    /** Every variable with its values: the traits, the sex and, if there are any, the seasons. */
    Map<String, List<String>> variables() {
        Map<String, List<String>> all = new LinkedHashMap<>(states);
        all.put("sex", List.of("female", "male"));
        if (!seasons.isEmpty()) {
            all.put("season", seasons);
        }
        return all;
    }

    /** Everything that an animal can look like, in either sex and every season. */
    List<Map<String, String>> points() {
        List<Map<String, String>> points = new ArrayList<>();
        points.add(new LinkedHashMap<>());
        for (Map.Entry<String, List<String>> variable : variables().entrySet()) {
            List<Map<String, String>> longer = new ArrayList<>();
            for (Map<String, String> point : points) {
                for (String value : variable.getValue()) {
                    Map<String, String> more = new LinkedHashMap<>(point);
                    more.put(variable.getKey(), value);
                    longer.add(more);
                }
            }
            points = longer;
        }
        return points;
    }
}
