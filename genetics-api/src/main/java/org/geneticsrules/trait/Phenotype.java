package org.geneticsrules.trait;

import com.google.common.collect.ImmutableMap;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What an animal shows: a state for each of some traits.
 *
 * <p>A trait that is absent is one about which nothing is said: not asked for, not recorded, or not modelled. Equality is
 * equality of what is shown, whatever may be hidden underneath.
 *
 * <p>Immutable and thread-safe.
 */
public final class Phenotype {

    private static final Phenotype NOTHING = new Phenotype(ImmutableMap.of());

    private final ImmutableMap<String, String> states;
    private int hash;

    private Phenotype(ImmutableMap<String, String> states) {
        this.states = states;
    }

    /**
     * Returns the phenotype that says nothing.
     *
     * @return a phenotype without traits
     */
    public static Phenotype unspecified() {
        return NOTHING;
    }

    /**
     * Returns the phenotype that shows one state.
     *
     * @param trait a trait's id
     * @param state the state shown
     * @return the phenotype
     */
    public static Phenotype of(String trait, String state) {
        return new Phenotype(ImmutableMap.of(trait, state));
    }

    /**
     * Returns the phenotype with the given states.
     *
     * @param states shown state by trait, in display order
     * @return the phenotype
     */
    public static Phenotype from(Map<String, String> states) {
        return new Phenotype(ImmutableMap.copyOf(states));
    }

    /**
     * Reads the text form, {@code trait: state, trait: state}; a semicolon may stand for the comma.
     *
     * <p>The names are not compared with a catalogue here; {@link Catalogue#check} does that.
     *
     * @param text the text form
     * @return the phenotype
     * @throws IllegalArgumentException if a part lacks its colon or a trait is stated twice
     */
    public static Phenotype parse(String text) {
        Map<String, String> states = new LinkedHashMap<>();
        for (String part : text.split("[,;]", -1)) {
            if (part.isBlank() && text.isBlank()) {
                continue;
            }
            int colon = part.indexOf(':');
            String trait = colon < 0 ? "" : part.substring(0, colon).strip();
            String state = colon < 0 ? "" : part.substring(colon + 1).strip();
            if (trait.isEmpty() || state.isEmpty()) {
                throw new IllegalArgumentException(
                        "expected \"trait: state\", but found \"" + part.strip() + "\" in \"" + text + "\"");
            }
            if (states.put(trait, state) != null) {
                throw new IllegalArgumentException("the trait \"" + trait + "\" is stated twice in \"" + text + "\"");
            }
        }
        return from(states);
    }

    /**
     * Returns the traits about which something is said.
     *
     * @return trait ids in display order
     */
    public Set<String> traits() {
        return states.keySet();
    }

    /**
     * Returns the state shown.
     *
     * @param trait a trait's id
     * @return its state, or empty if nothing is said about it
     */
    public Optional<String> state(String trait) {
        return Optional.ofNullable(states.get(trait));
    }

    /**
     * Returns every trait with its state.
     *
     * @return states in display order, unmodifiable
     */
    public Map<String, String> asMap() {
        return states;
    }

    /**
     * Returns what this phenotype says of some traits only.
     *
     * @param traits the traits to keep
     * @return the part, in this display order
     */
    public Phenotype restrictedTo(Collection<String> traits) {
        ImmutableMap.Builder<String, String> kept = ImmutableMap.builder();
        states.forEach((trait, state) -> {
            if (traits.contains(trait)) {
                kept.put(trait, state);
            }
        });
        return new Phenotype(kept.buildOrThrow());
    }

    /**
     * Tells whether this phenotype shows everything that a description says.
     *
     * @param description a partial phenotype
     * @return true if every state of the description is shown here
     */
    public boolean shows(Phenotype description) {
        return states.entrySet().containsAll(description.states.entrySet());
    }

    @Override
    public boolean equals(Object other) {
        return this == other
                || (other instanceof Phenotype that && hashCode() == that.hashCode() && states.equals(that.states));
    }

    @Override
    public int hashCode() {
        int known = hash;
        if (known == 0) {
            known = states.hashCode(); // every thread that works it out finds the same
            hash = known;
        }
        return known;
    }

    /** Returns the text form, {@code hue: black, eye: pink}; {@link #parse} reads it back. */
    @Override
    public String toString() {
        return states.entrySet().stream()
                .map(state -> state.getKey() + ": " + state.getValue())
                .collect(Collectors.joining(", "));
    }
}
