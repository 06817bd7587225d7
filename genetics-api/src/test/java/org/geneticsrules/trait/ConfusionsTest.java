package org.geneticsrules.trait;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.probability.Probability;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ConfusionsTest {

    private static final Probability TENTH = Probability.of(1, 10);

    private static Confusion confusion(String shown, String read, String stage, Probability chance) {
        return new Confusion(
                "hue", shown, read, stage.isEmpty() ? Optional.empty() : Optional.of(LifeStage.parse(stage)), chance);
    }

    @Test
    void what_is_not_confused_is_read_as_it_is() {
        Confusions named = Confusions.of(
                List.of(confusion("black", "brown", "", TENTH), confusion("black", "grey", "", Probability.of(1, 5))));
        LifeStage any = LifeStage.unstated();
        assertEquals(TENTH, named.chance("hue", "black", "brown", any));
        assertEquals(Probability.of(1, 5), named.chance("hue", "black", "grey", any));
        assertEquals(Probability.of(7, 10), named.chance("hue", "black", "black", any));
        assertEquals(Probability.ZERO, named.chance("hue", "black", "white", any));
        assertEquals(Probability.ZERO, named.chance("hue", "brown", "black", any));
        assertEquals(Probability.ONE, named.chance("hue", "brown", "brown", any));
        assertEquals(Probability.ONE, named.chance("eye", "black", "black", any));
        assertEquals(Probability.ONE, Confusions.none().chance("hue", "black", "black", any));
    }

    @ParameterizedTest
    @CsvSource({
        "week 3, week 3, true",
        "week 3, week 4, false",
        "week 3, '', false",
        "moult 1, moult 1, true",
        "moult 1, moult 2, false",
        "summer, 'moult 2, summer', true",
        "summer, 'moult 2, winter', false",
        "'moult 2, summer', summer, false",
        "'moult 2, summer', 'moult 2, summer', true"
    })
    void it_applies_where_all_that_its_stage_states_is_so(String stated, String at, boolean applies) {
        Confusions named = Confusions.of(List.of(confusion("black", "brown", stated, TENTH)));
        LifeStage stage = at.isEmpty() ? LifeStage.unstated() : LifeStage.parse(at);
        assertEquals(applies ? TENTH : Probability.ZERO, named.chance("hue", "black", "brown", stage));
        assertEquals(applies ? TENTH.complement() : Probability.ONE, named.chance("hue", "black", "black", stage));
    }

    @Test
    void chances_of_one_state_sum_to_at_most_one() {
        Confusion half = confusion("black", "brown", "", Probability.of(1, 2));
        Confusions.of(List.of(half, confusion("black", "grey", "", Probability.of(1, 2))));
        Confusions.of(List.of(half, confusion("brown", "grey", "", Probability.ONE)));
        Confusions.of(List.of(
                confusion("black", "brown", "summer", Probability.ONE),
                confusion("black", "brown", "winter", Probability.ONE)));
        assertThrows(
                IllegalArgumentException.class,
                () -> Confusions.of(List.of(half, confusion("black", "grey", "", Probability.of(2, 3)))));
        assertThrows(
                IllegalArgumentException.class,
                () -> Confusions.of(List.of(half, confusion("black", "grey", "summer", Probability.of(2, 3)))));
        assertThrows(
                IllegalArgumentException.class,
                () -> Confusions.of(List.of(
                        confusion("black", "brown", "week 3", Probability.of(2, 3)),
                        confusion("black", "grey", "summer", Probability.of(2, 3)))));
        assertThrows(IllegalArgumentException.class, () -> confusion("black", "black", "", TENTH));
        assertThrows(IllegalArgumentException.class, () -> confusion("black", "grey", "", Probability.ZERO));
    }

    @Test
    void a_record_of_several_looks_names_the_same_traits_in_all() {
        Phenotype black = Phenotype.of("hue", "black");
        Phenotype brown = Phenotype.of("hue", "brown");
        Reading either = new Reading(LifeStage.unstated(), Set.of(black, brown));
        assertEquals(List.of("hue"), either.traits());
        assertThrows(
                IllegalArgumentException.class,
                () -> new Reading(LifeStage.unstated(), Set.of(black, Phenotype.of("eye", "pink"))));
        assertThrows(IllegalArgumentException.class, () -> new Reading(LifeStage.unstated(), Set.of()));
        assertEquals(
                List.of(new Reading(LifeStage.atWeek(3), Set.of(black))),
                Reading.ofAll(List.of(new Sighting(LifeStage.atWeek(3), black))));
    }
}
