package org.geneticsrules.simulation;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.expression.Expressed;
import org.geneticsrules.expression.TraitTrace;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;

/**
 * An animal that was drawn: what it truly is, and what was written down of it. Each is one of its kind; two that happen to be alike are not
 * equal.
 *
 * <p>Immutable and thread-safe.
 */
public final class DrawnAnimal {

    private final Genome genome;
    private final Optional<String> id;
    private final Sex sex;
    private final short[] strands;
    private final Lives lives;
    private final Lives.Life life;
    private final List<Recorder.Note> notes;
    private final List<GenotypeTest> tests;

    DrawnAnimal(
            Genome genome,
            Optional<String> id,
            Sex sex,
            short[] strands,
            Lives lives,
            Lives.Life life,
            List<Recorder.Note> notes,
            List<GenotypeTest> tests) {
        this.genome = genome;
        this.id = id;
        this.sex = sex;
        this.strands = strands;
        this.lives = lives;
        this.life = life;
        this.notes = notes;
        this.tests = tests;
    }

    /**
     * Returns its id in the pedigree.
     *
     * @return the id; empty for a parent that is not recorded, and in litters of no pedigree
     */
    public Optional<String> id() {
        return id;
    }

    /**
     * Returns its sex.
     *
     * @return the sex
     */
    public Sex sex() {
        return sex;
    }

    /**
     * Returns what it truly carries at every locus, with its phase.
     *
     * @return the genotype, made anew each time
     */
    public Genotype genotype() {
        return genome.genotype(strands);
    }

    /**
     * Returns how it truly looks at each look planned, whether or not somebody looked at it then, with its own states beneath what is seen
     * ({@link TraitTrace}).
     *
     * @return what is seen and how it came about, in the order of the looks, worked out anew each time
     */
    public List<Expressed> looks() {
        return lives.told(strands, sex, life);
    }

    /**
     * Returns what is truly seen of a trait at a look planned.
     *
     * @param look number of the look, from 0
     * @param trait one of the traits of that look
     * @return the state; empty if the model makes no claim
     * @throws IndexOutOfBoundsException if there is no such look
     * @throws IllegalArgumentException if the look is not at this trait
     */
    public Optional<String> state(int look, String trait) {
        return lives.seen(life, look, trait);
    }

    /**
     * Returns what was written down of its looks.
     *
     * @return the observations, in the order of the looks
     */
    public List<Observation> observations() {
        return notes.stream().flatMap(note -> note.observation().stream()).collect(ImmutableList.toImmutableList());
    }

    /**
     * Returns the sex that was written down, if a look was planned at it.
     *
     * @return the sex; empty if nobody looked
     */
    public Optional<Sex> recordedSex() {
        return notes.stream().anyMatch(Recorder.Note::tellsSex) ? Optional.of(sex) : Optional.empty();
    }

    /**
     * Returns what DNA tests reported.
     *
     * @return the reports, in the order of the tests
     */
    public List<GenotypeTest> tests() {
        return tests;
    }

    /**
     * Tells whether it was once recorded with a look.
     *
     * @param description the states of some traits; {@code sex} may be among them
     * @return true if all of them were written down at one look
     */
    public boolean isRecordedWith(Phenotype description) {
        return isRecordedWith(Sighting.of(description));
    }

    /** Tells whether it was once recorded with a look, at a stage and in a light as far as they are stated. */
    boolean isRecordedWith(Sighting seen) {
        for (Recorder.Note note : notes) {
            if (note.look().isOf(seen) && note.shows(seen.look())) {
                return true;
            }
        }
        return false;
    }

    short[] strands() {
        return strands;
    }

    /** Returns its id, if it has one, its sex and its genotype. */
    @Override
    public String toString() {
        return id.map(name -> name + ", ").orElse("") + sex.word() + " " + genotype();
    }
}
