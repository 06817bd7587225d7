package org.geneticsrules.vocabulary;

import com.google.common.collect.ImmutableMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;

/**
 * One reading of a name: an animal may be called so if it has one of these looks.
 *
 * <pre>{@code
 * Sense usual = Sense.of("usual")
 *         .withLook("sandy", Condition.where("dilution", "sandy").and("eye colour", "dark"))
 *         .withPeriod(Period.parse("1985/2009-06"));
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 *
 * @param id plain words that tell it from other senses of the name
 * @param looks the looks by id, in declared order; each is a condition on traits, and perhaps on sex and season
 * @param period when the name was used in this sense
 * @param judgeableFrom the age or moult before which nobody is called so; empty if only the traits it reads decide that
 * @param note what else there is to know
 * @param evidence id of the evidence, if it is not that of the name
 */
public record Sense(
        String id,
        Map<String, Condition> looks,
        Period period,
        Optional<LifeStage> judgeableFrom,
        Optional<String> note,
        Optional<String> evidence) {

    /**
     * Copies the looks and checks the stage.
     *
     * @param id plain words
     * @param looks the looks by id
     * @param period when the name was used in this sense
     * @param judgeableFrom the age or moult before which nobody is called so
     * @param note a note
     * @param evidence id of the evidence
     * @throws IllegalArgumentException if {@code judgeableFrom} states both an age and a moult, neither, or a season
     */
    public Sense {
        looks = ImmutableMap.copyOf(looks);
        judgeableFrom.filter(stage -> !stage.isOneCount()).ifPresent(stage -> {
            throw new IllegalArgumentException("the sense \"" + id
                    + "\" is judgeable from an age or from a moult, and from nothing else, but was " + stage);
        });
    }

    /**
     * Returns a sense without looks, in use at all times.
     *
     * @param id plain words
     * @return the sense
     */
    public static Sense of(String id) {
        return new Sense(id, Map.of(), Period.always(), Optional.empty(), Optional.empty(), Optional.empty());
    }

    /**
     * Returns this sense with a further look.
     *
     * @param look plain words that name the look
     * @param condition what has to be seen
     * @return a copy
     * @throws IllegalArgumentException if there is a look of this name already
     */
    public Sense withLook(String look, Condition condition) {
        Map<String, Condition> more = new LinkedHashMap<>(looks);
        if (more.put(look, condition) != null) {
            throw new IllegalArgumentException("the sense \"" + id + "\" has a look \"" + look + "\" already");
        }
        return new Sense(id, more, period, judgeableFrom, note, evidence);
    }

    /**
     * Returns this sense with a time of use.
     *
     * @param use when the name was used in this sense
     * @return a copy
     */
    public Sense withPeriod(Period use) {
        return new Sense(id, looks, use, judgeableFrom, note, evidence);
    }

    /**
     * Returns this sense as one in which nobody is called so before a stage of life.
     *
     * @param stage an age or a moult
     * @return a copy
     * @throws IllegalArgumentException if the stage states both, neither, or a season
     */
    public Sense withJudgeableFrom(LifeStage stage) {
        return new Sense(id, looks, period, Optional.of(stage), note, evidence);
    }

    /**
     * Returns this sense with a note.
     *
     * @param text the note
     * @return a copy
     */
    public Sense withNote(String text) {
        return new Sense(id, looks, period, judgeableFrom, Optional.of(text), evidence);
    }

    /**
     * Returns this sense with its evidence.
     *
     * @param support id of the evidence
     * @return a copy
     */
    public Sense withEvidence(String support) {
        return new Sense(id, looks, period, judgeableFrom, note, Optional.of(support));
    }
}
