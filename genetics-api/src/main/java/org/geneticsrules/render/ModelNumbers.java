package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.IntPredicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * What several models give for one thing, each model by its number. Few stand in the order of the models; many are sorted, the likeliest
 * first, and those that give the same stand together.
 */
final class ModelNumbers {

    private static final int FEW = 6;
    private static final int MOST_VALUES = 5;
    private static final int MOST_MODELS = 6;

    private ModelNumbers() {}

    /** Logarithms of chances in words; a model that knows nothing more has none, and one without a chance is told by a word. */
    static String logs(List<Double> logs, IntPredicate known, String excluded) {
        List<String> words = new ArrayList<>();
        for (int m = 0; m < logs.size(); m++) {
            words.add(
                    !known.test(m)
                            ? "nothing more"
                            : logs.get(m) == Double.NEGATIVE_INFINITY ? excluded : number(logs.get(m)));
        }
        if (logs.size() <= FEW) {
            return IntStream.range(0, words.size())
                    .mapToObj(m -> (m + 1) + ". " + words.get(m))
                    .collect(Collectors.joining(", "));
        }
        Map<String, List<Integer>> groups = new LinkedHashMap<>();
        for (int m = 0; m < words.size(); m++) {
            groups.computeIfAbsent(words.get(m), key -> new ArrayList<>()).add(m);
        }
        List<List<Integer>> numbers = new ArrayList<>(groups.values());
        numbers.removeIf(of -> !known.test(of.get(0)) || logs.get(of.get(0)) == Double.NEGATIVE_INFINITY);
        List<List<Integer>> others = new ArrayList<>(groups.values());
        others.removeAll(numbers);
        numbers.sort(Comparator.comparing(of -> -logs.get(of.get(0))));
        List<String> parts = new ArrayList<>();
        int told = numbers.size() > MOST_VALUES + 1 ? MOST_VALUES : numbers.size();
        numbers.subList(0, told).forEach(of -> parts.add(under(words, of)));
        if (told < numbers.size()) {
            int more = numbers.subList(told, numbers.size()).stream()
                    .mapToInt(List::size)
                    .sum();
            parts.add(more + " models more, down to "
                    + words.get(numbers.get(numbers.size() - 1).get(0)));
        }
        others.forEach(of -> parts.add(under(words, of)));
        return String.join("; ", parts);
    }

    private static String under(List<String> words, List<Integer> models) {
        return words.get(models.get(0)) + " under "
                + some(models.stream().map(m -> Integer.toString(m + 1)).toList());
    }

    /** Some of many names, and how many more there are. */
    static String some(List<String> names) {
        return names.size() <= MOST_MODELS
                ? String.join(", ", names)
                : String.join(", ", names.subList(0, MOST_MODELS)) + " and " + (names.size() - MOST_MODELS) + " more";
    }

    static String number(double log) {
        return String.format(Locale.ROOT, "%.4f", log);
    }
}
