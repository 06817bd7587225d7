package org.geneticsrules.json;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;

/** The shape of chances: a fraction or a decimal as a text, or a number, which is its exact decimal. */
final class ChanceShape {

    private static final Pattern CHANCE = Pattern.compile("[0-9]{1,400}(/[0-9]{1,400}|\\.[0-9]{1,400})?");

    private ChanceShape() {}

    /** A chance; what is none is noted by the given code. */
    static Optional<Probability> read(Part part, String code) {
        try {
            if (part.isNumber()) {
                return part.number().map(BigDecimal::stripTrailingZeros).map(Probability::from);
            }
            return part.text(CHANCE, code, "a fraction such as \"3/4\" or a decimal such as \"0.75\"")
                    .map(Probability::parse);
        } catch (IllegalArgumentException e) {
            part.problems().add(code, part.pointer(), String.valueOf(e.getMessage()), "0 to 1");
            return Optional.empty();
        }
    }

    /** The chances of some texts. */
    static Optional<Distribution<String>> distribution(Part part) {
        return distribution(part, (name, chance) -> Optional.of(name));
    }

    /** Turns the name of a member into an outcome, or notes why it cannot. */
    interface Outcome<T> {
        Optional<T> read(String name, Part chance);
    }

    /** Positive chances that sum to 1. */
    static <T> Optional<Distribution<T>> distribution(Part part, Outcome<T> outcome) {
        Map<T, Probability> chances = new LinkedHashMap<>();
        Map<String, Part> entries = part.entries();
        boolean good = part.isObject();
        for (Map.Entry<String, Part> entry : entries.entrySet()) {
            Part stated = entry.getValue();
            Optional<Probability> chance = read(stated, "bad-chance");
            Optional<T> of = outcome.read(entry.getKey(), stated);
            boolean zero = chance.filter(Probability::isZero).isPresent();
            if (zero) {
                // It would be lost when the document is written again, and a misspelt name in it never be found.
                stated.problems()
                        .add(
                                "zero-chance",
                                stated.pointer(),
                                "\"" + entry.getKey() + "\" has no chance",
                                "this left out, or a chance above 0");
            }
            good &= chance.isPresent() && of.isPresent() && !zero;
            chance.ifPresent(value -> of.ifPresent(key -> chances.put(key, value)));
        }
        if (!good) {
            return Optional.empty();
        }
        String total = Probability.total(chances.values());
        if (!total.equals("1")) {
            part.problems()
                    .add("chances-sum", part.pointer(), "the chances sum to " + total, "chances that sum to exactly 1");
            return Optional.empty();
        }
        return Optional.of(Distribution.of(chances));
    }

    /** A chance for each of some names that the author chose. */
    static Map<String, Probability> byName(Part part) {
        return mapped(part, chance -> read(chance, "bad-chance"));
    }

    static <T> Map<String, T> mapped(Part part, Function<Part, Optional<T>> read) {
        Map<String, T> values = new LinkedHashMap<>();
        part.entries().forEach((name, stated) -> read.apply(stated).ifPresent(value -> values.put(name, value)));
        return values;
    }
}
