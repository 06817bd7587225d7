package org.geneticsrules.answer;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.trait.Phenotype;

/**
 * The question an answer belongs to.
 *
 * @param kind a stable word, {@code mating} or {@code coat}
 * @param text the question in a sentence
 * @param traits the traits that the answer is about
 * @param look the look asked for in particular, if one was
 * @param seen what the kits seen already show
 */
public record Question(String kind, String text, List<String> traits, Optional<Phenotype> look, List<Phenotype> seen) {

    /**
     * Copies the lists.
     *
     * @param kind a stable word
     * @param text the question
     * @param traits the traits
     * @param look the look asked for
     * @param seen the kits seen already
     */
    public Question {
        traits = ImmutableList.copyOf(traits);
        seen = ImmutableList.copyOf(seen);
    }
}
