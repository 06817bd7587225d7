package org.geneticsrules.trait;

import com.google.common.collect.ImmutableMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;

/**
 * A box: every named variable must have one of its allowed values.
 *
 * <p>A variable is a locus, whose values are its expressions (never raw alleles), or a trait, whose values are its own states. A
 * variable that is not named may have any value, so the empty condition always holds.
 *
 * <pre>{@code
 * Condition albino = Condition.where("C", "albino");
 * Condition darkOnly = Condition.where("B", "dark").and("C", Allowed.allBut("albino"));
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 *
 * @param variables the allowed values by variable, in declared order
 */
public record Condition(Map<String, Allowed> variables) {

    /**
     * Copies the variables.
     *
     * @param variables the allowed values by variable
     */
    public Condition {
        variables = ImmutableMap.copyOf(variables);
    }

    /**
     * Returns the condition that always holds.
     *
     * @return a condition without variables
     */
    public static Condition always() {
        return new Condition(ImmutableMap.of());
    }

    /**
     * Returns a condition on one variable.
     *
     * @param variable a locus or trait
     * @param values its allowed values
     * @return the condition
     */
    public static Condition where(String variable, String... values) {
        return always().and(variable, values);
    }

    /**
     * Returns this condition with a further variable.
     *
     * @param variable a locus or trait not yet named here
     * @param values its allowed values
     * @return the narrower condition
     * @throws IllegalArgumentException if the variable is named already
     */
    public Condition and(String variable, String... values) {
        return and(variable, Allowed.only(values));
    }

    /**
     * Returns this condition with a further variable.
     *
     * @param variable a locus or trait not yet named here
     * @param allowed its allowed values
     * @return the narrower condition
     * @throws IllegalArgumentException if the variable is named already
     */
    public Condition and(String variable, Allowed allowed) {
        Map<String, Allowed> more = new LinkedHashMap<>(variables);
        if (more.put(variable, allowed) != null) {
            throw new IllegalArgumentException("the condition names \"" + variable + "\" already: " + this);
        }
        return new Condition(more);
    }

    /**
     * Returns the variables that are named.
     *
     * @return names in declared order
     */
    public Set<String> names() {
        return variables.keySet();
    }

    /**
     * Tells whether the condition holds.
     *
     * @param valueOf gives the value of each named variable; must know them all
     * @return true if every variable has an allowed value
     */
    public boolean holds(Function<String, String> valueOf) {
        for (Map.Entry<String, Allowed> variable : variables.entrySet()) {
            if (!variable.getValue().allows(valueOf.apply(variable.getKey()))) {
                return false;
            }
        }
        return true;
    }

    /**
     * Returns the document form.
     *
     * @return an object with, for each variable, its allowed values or {@code {"not": forbidden values}}
     */
    public Node toNode() {
        ObjectBuilder node = new ObjectBuilder();
        variables.forEach((name, allowed) -> {
            Node values = Node.texts(allowed.values());
            node.with(
                    name,
                    allowed.except() ? new ObjectBuilder().with("not", values).build() : values);
        });
        return node.build();
    }

    /** Returns {@code variable: value or value, variable: not value}, or {@code always}. */
    @Override
    public String toString() {
        return variables.isEmpty()
                ? "always"
                : variables.entrySet().stream()
                        .map(variable -> variable.getKey() + ": " + variable.getValue())
                        .collect(Collectors.joining(", "));
    }
}
