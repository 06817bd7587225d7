package org.geneticsrules.comparison;

import java.util.Optional;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/**
 * What kits are counted by: a look, and the sex where the model makes a difference between the sexes.
 *
 * @param sex the sex, if kits are counted by it
 * @param look what they show
 */
public record Shown(Optional<Sex> sex, Phenotype look) {

    /** Returns for example {@code female, eye colour: red}. */
    @Override
    public String toString() {
        return sex.map(one -> one.word() + ", ").orElse("") + look;
    }
}
