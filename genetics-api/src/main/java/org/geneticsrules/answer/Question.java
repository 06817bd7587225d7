package org.geneticsrules.answer;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.expression.Census;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sighting;
import org.geneticsrules.trait.Taxon;

/**
 * The question an answer belongs to.
 *
 * @param kind a stable word, {@code mating}, {@code coat}, {@code sale} (handing an animal over) or {@code test mating}
 * @param text the question in a sentence
 * @param traits the traits that the answer is about
 * @param stage when the animals asked about are looked at
 * @param census which of the kits conceived are counted; all for an animal that is looked at
 * @param look the look asked for in particular, if one was
 * @param seen what the kits seen already show, or what the animal showed before
 * @param young what the young of such animals are called
 */
public record Question(
        String kind,
        String text,
        List<String> traits,
        LifeStage stage,
        Census census,
        Optional<Phenotype> look,
        List<Sighting> seen,
        Taxon.Young young) {

    /**
     * Copies the lists.
     *
     * @param kind a stable word
     * @param text the question
     * @param traits the traits
     * @param stage when animals are looked at
     * @param census which kits are counted
     * @param look the look asked for
     * @param seen what was seen already
     * @param young what the young are called
     */
    public Question {
        traits = ImmutableList.copyOf(traits);
        seen = ImmutableList.copyOf(seen);
    }
}
