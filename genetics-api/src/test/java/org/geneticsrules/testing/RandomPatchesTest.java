package org.geneticsrules.testing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.model.Model;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Random patches are worth testing with: there is a sound one for nearly every model, and of every kind there are many. */
@Tag("default-jdk")
class RandomPatchesTest {

    private static final int MODELS = 400;

    @Test
    void every_kind_of_change_is_drawn_often_enough() {
        Map<RandomPatches.Kind, Integer> counts = new EnumMap<>(RandomPatches.Kind.class);
        int sound = 0;
        int removing = 0;
        for (long seed = 0; seed < MODELS; seed++) {
            Optional<RandomPatches.Drawn> drawn = RandomPatches.draw(RandomModels.whole(seed), seed);
            sound += drawn.isPresent() ? 1 : 0;
            removing += drawn.filter(one -> !one.patch().remove().isEmpty()).isPresent() ? 1 : 0;
            drawn.ifPresent(one -> one.kinds().forEach(kind -> counts.merge(kind, 1, Integer::sum)));
        }
        assertTrue(sound > MODELS * 95 / 100, sound + " of " + MODELS + " are sound");
        assertTrue(removing > MODELS / 20, removing + " of " + MODELS + " remove something");
        for (RandomPatches.Kind kind : RandomPatches.Kind.values()) {
            assertTrue(counts.getOrDefault(kind, 0) > MODELS / 40, kind + ": " + counts);
        }
    }

    @Test
    void one_seed_gives_one_patch() {
        Model base = RandomModels.whole(5);
        assertEquals(RandomPatches.draw(base, 7), RandomPatches.draw(base, 7));
    }
}
