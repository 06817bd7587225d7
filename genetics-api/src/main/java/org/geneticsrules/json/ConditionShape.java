package org.geneticsrules.json;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Condition;

/** The shape of a condition: an object of allowed values, or of {@code {"not": values}}, by variable. */
final class ConditionShape {

    private ConditionShape() {}

    static Condition read(Part part) {
        Map<String, Allowed> variables = new LinkedHashMap<>();
        part.entries().forEach((name, allowed) -> variables.put(name, allowed(allowed)));
        return new Condition(variables);
    }

    private static Allowed allowed(Part part) {
        if (part.isList()) {
            return new Allowed(false, part.distinctTexts(0));
        }
        Set<String> forbidden = part.members("not")
                .required("not")
                .map(values -> values.distinctTexts(0))
                .orElse(Set.of());
        return new Allowed(true, forbidden);
    }
}
