package org.geneticsrules.trait;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.BitSet;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The variables that boxes range over, each with finitely many values: loci with their expressions, or loci with their genotypes.
 *
 * <p>Immutable and thread-safe.
 */
public final class BoxSpace {

    private final ImmutableMap<String, ImmutableList<String>> variables;
    private final ImmutableList<String> names;
    private final ImmutableMap<String, Integer> indexes;

    private BoxSpace(ImmutableMap<String, ImmutableList<String>> variables) {
        this.variables = variables;
        this.names = variables.keySet().asList();
        ImmutableMap.Builder<String, Integer> positions = ImmutableMap.builder();
        for (int i = 0; i < names.size(); i++) {
            positions.put(names.get(i), i);
        }
        this.indexes = positions.buildOrThrow();
    }

    /**
     * Returns the space of the given variables.
     *
     * @param variables the values of each variable, in declared order
     * @return the space
     */
    public static BoxSpace of(Map<String, ? extends List<String>> variables) {
        ImmutableMap.Builder<String, ImmutableList<String>> copy = ImmutableMap.builder();
        variables.forEach((name, values) -> copy.put(name, ImmutableList.copyOf(values)));
        return new BoxSpace(copy.buildOrThrow());
    }

    /**
     * Returns the variables.
     *
     * @return their names in declared order
     */
    public List<String> names() {
        return names;
    }

    /**
     * Returns the values of a variable.
     *
     * @param variable a variable of this space
     * @return its values in declared order
     * @throws IllegalArgumentException if the space has no such variable
     */
    public List<String> values(String variable) {
        return values(index(variable));
    }

    /**
     * Returns the set of all points.
     *
     * @return one box without restriction
     */
    public BoxSet everything() {
        return new BoxSet(this, ImmutableList.<BitSet[]>of(full()));
    }

    /**
     * Returns the empty set.
     *
     * @return a set without boxes
     */
    public BoxSet nothing() {
        return new BoxSet(this, ImmutableList.of());
    }

    /**
     * Returns the set of points at which one variable has an allowed value.
     *
     * @param variable a variable of this space
     * @param allowed its allowed values
     * @return one box, or none if no value is allowed
     * @throws IllegalArgumentException if the space has no such variable
     */
    public BoxSet where(String variable, Allowed allowed) {
        int index = index(variable);
        List<String> all = values(index);
        BitSet bits = new BitSet(all.size());
        for (int value = 0; value < all.size(); value++) {
            bits.set(value, allowed.allows(all.get(value)));
        }
        if (bits.isEmpty()) {
            return nothing();
        }
        BitSet[] box = full();
        box[index] = bits;
        return new BoxSet(this, ImmutableList.<BitSet[]>of(box));
    }

    /**
     * Returns the set made of boxes that are known not to overlap.
     *
     * @param boxes disjoint conditions over variables of this space
     * @return their union, kept box by box
     * @throws IllegalArgumentException if a condition names another variable
     */
    public BoxSet ofDisjoint(Collection<Condition> boxes) {
        ImmutableList.Builder<BitSet[]> kept = ImmutableList.builder();
        for (Condition condition : boxes) {
            BoxSet box = everything();
            for (Map.Entry<String, Allowed> variable : condition.variables().entrySet()) {
                box = box.and(where(variable.getKey(), variable.getValue()));
            }
            kept.addAll(box.boxList());
        }
        return new BoxSet(this, kept.build());
    }

    private BitSet[] full() {
        BitSet[] box = new BitSet[names.size()];
        for (int v = 0; v < box.length; v++) {
            box[v] = new BitSet();
            box[v].set(0, values(v).size());
        }
        return box;
    }

    Optional<Integer> find(String variable) {
        return Optional.ofNullable(indexes.get(variable));
    }

    int index(String variable) {
        return find(variable)
                .orElseThrow(() -> new IllegalArgumentException(
                        "no variable \"" + variable + "\"; the variables are " + String.join(", ", names)));
    }

    List<String> values(int index) {
        return variables.values().asList().get(index);
    }

    @Override
    public boolean equals(Object other) {
        return other == this
                || (other instanceof BoxSpace that && names.equals(that.names) && variables.equals(that.variables));
    }

    @Override
    public int hashCode() {
        return variables.hashCode();
    }

    /** Returns the variables with their values. */
    @Override
    public String toString() {
        return variables.toString();
    }
}
