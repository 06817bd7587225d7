package org.geneticsrules.pedigree;

import java.time.LocalDate;
import java.util.Optional;

/**
 * The result of one hearing test, ear by ear.
 *
 * <p>The usual test is that of the brain stem's response to clicks (BAER), which judges each ear alone. Watching whether an animal turns to
 * a sound cannot: an animal deaf in one ear turns too. What a result means for an animal and for breeding is for a veterinarian to say.
 *
 * @param date when it was tested, if recorded
 * @param left what was found of the left ear
 * @param right what was found of the right ear
 */
public record HearingTest(Optional<LocalDate> date, Hearing left, Hearing right) {

    /**
     * Returns a test without a date.
     *
     * @param left what was found of the left ear
     * @param right what was found of the right ear
     * @return the test
     */
    public static HearingTest of(Hearing left, Hearing right) {
        return new HearingTest(Optional.empty(), left, right);
    }

    /**
     * Tells whether an ear was found deaf.
     *
     * @return true if the left, the right or both are
     */
    public boolean isDeafInAnEar() {
        return left == Hearing.DEAF || right == Hearing.DEAF;
    }
}
