package org.geneticsrules.trait;

import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Set;

/**
 * The values that a condition allows one variable to have: those listed, or all except those listed.
 *
 * @param except true if the listed values are the forbidden ones
 * @param values the listed values
 */
public record Allowed(boolean except, Set<String> values) {

    /**
     * Copies the values.
     *
     * @param except true if the listed values are forbidden
     * @param values the listed values
     */
    public Allowed {
        values = ImmutableSet.copyOf(values);
    }

    /**
     * Allows the listed values only.
     *
     * @param values the allowed values
     * @return the set of allowed values
     */
    public static Allowed only(String... values) {
        return new Allowed(false, ImmutableSet.copyOf(values));
    }

    /**
     * Allows all values but the listed.
     *
     * @param values the forbidden values
     * @return the set of allowed values
     */
    public static Allowed allBut(String... values) {
        return new Allowed(true, ImmutableSet.copyOf(Arrays.asList(values)));
    }

    /**
     * Tells whether a value is allowed.
     *
     * @param value any value
     * @return true if allowed
     */
    public boolean allows(String value) {
        return values.contains(value) != except;
    }

    /**
     * Returns the allowed values out of all values there are.
     *
     * @param all every value of the variable
     * @return those allowed, in the order of {@code all}
     */
    public List<String> among(Collection<String> all) {
        List<String> allowed = new ArrayList<>();
        for (String value : all) {
            if (allows(value)) {
                allowed.add(value);
            }
        }
        return allowed;
    }

    /** Returns the values joined by {@code or}, after {@code not} if they are the forbidden ones. */
    @Override
    public String toString() {
        return (except ? "not " : "") + String.join(" or ", values);
    }
}
