package org.geneticsrules.comparison;

import java.util.Objects;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Probability;

/**
 * A model of inheritance that is held against records.
 *
 * <p>Immutable and thread-safe.
 *
 * @param name what it is called in the comparison
 * @param compiled the model
 * @param prior its share of belief before the records are looked at, in proportion to those of the others; 1 where nobody states another
 * @param fitted how many of its numbers were fitted to these same records, such as a recombination fraction that was estimated from them
 */
public record Candidate(String name, CompiledModel compiled, Probability prior, int fitted) {

    /**
     * Checks the parts.
     *
     * @param name what it is called
     * @param compiled the model
     * @param prior its share of belief
     * @param fitted how many of its numbers were fitted
     * @throws IllegalArgumentException if the name is blank or the number of fitted ones negative
     */
    public Candidate {
        Objects.requireNonNull(compiled, "compiled");
        if (name.isBlank() || (fitted < 0)) {
            throw new IllegalArgumentException(
                    "a candidate has a name and no negative number of fitted parameters, but was \"" + name + "\" with "
                            + fitted);
        }
    }

    /**
     * Returns a model as a candidate under its own id.
     *
     * @param model the model
     * @return a candidate none of whose numbers were fitted, as much believed in as others
     */
    public static Candidate of(Model model) {
        return of(CompiledModel.of(model));
    }

    /**
     * Returns a model as a candidate under its own id.
     *
     * @param compiled the model
     * @return a candidate none of whose numbers were fitted, as much believed in as others
     */
    public static Candidate of(CompiledModel compiled) {
        return new Candidate(compiled.model().id(), compiled, Probability.ONE, 0);
    }

    /**
     * Returns this candidate under a name.
     *
     * @param other what to call it
     * @return a copy
     */
    public Candidate called(String other) {
        return new Candidate(other, compiled, prior, fitted);
    }

    /**
     * Returns this candidate with a share of belief.
     *
     * @param share in proportion to those of the others
     * @return a copy
     */
    public Candidate believed(Probability share) {
        return new Candidate(name, compiled, share, fitted);
    }

    /**
     * Returns this candidate with numbers that were fitted to the records.
     *
     * @param numbers how many
     * @return a copy
     */
    public Candidate fitted(int numbers) {
        return new Candidate(name, compiled, prior, numbers);
    }

    /**
     * Returns the model.
     *
     * @return the model that is compiled
     */
    public Model model() {
        return compiled.model();
    }

    /** Returns the name. */
    @Override
    public String toString() {
        return name;
    }
}
