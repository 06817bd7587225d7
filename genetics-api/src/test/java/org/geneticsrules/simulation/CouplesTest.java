package org.geneticsrules.simulation;

import static org.geneticsrules.simulation.SimulationTest.COMPILED;
import static org.geneticsrules.simulation.SimulationTest.coat;
import static org.geneticsrules.simulation.SimulationTest.simulation;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.expression.Census;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** Couples that are drawn with their litters. */
class CouplesTest {

    private static final Phenotype WHITE = Phenotype.of("hue", "white");

    @Test
    void couples_have_ids_of_their_own_and_as_many_litters_as_planned() {
        DrawnPedigree two = simulation()
                .looking(PlannedLook.at("hue"))
                .couples(new LitterPlan(
                        coat("C/c B/b"), Founder.from(COMPILED.model(), "kennel"), 2, 2, LitterSize.of(3), Census.BORN))
                .findFirst()
                .orElseThrow();
        assertEquals(
                List.of("1.1", "1.2", "2.1", "2.2"),
                List.copyOf(two.records().litters().keySet()));
        assertEquals(
                List.of("sire 1", "dam 1", "sire 2", "dam 2"), two.records().founders());
        assertEquals(4 + 4 * 3, two.animals().size());
        assertEquals(Optional.of("kennel"), two.records().individual("dam 2").population());
        assertEquals(Set.of("sire 2", "dam 2"), Set.copyOf(two.records().parentsOf("kit 2.2.3")));
        assertEquals(Optional.empty(), two.records().individual("kit 1.1.1").sex());
        assertEquals(Optional.of(Sex.MALE), two.records().individual("sire 1").sex());
        assertEquals(2, two.tried());
    }

    /** Each couple of carriers is kept with 1 - (3/4)^3 = 37/64 by itself, so ten of them take no longer than ten times one. */
    @Test
    void each_couple_is_kept_by_itself() {
        Shares<String> kits = new Shares<>();
        long[] tried = new long[1];
        simulation()
                .keeping(Ascertainment.atLeastOne(WHITE))
                .couples(LitterPlan.of(coat("C/c B/b"), coat("C/c B/b"), 10, LitterSize.of(3)))
                .limit(200)
                .forEach(drawn -> {
                    tried[0] += drawn.tried();
                    drawn.litters()
                            .values()
                            .forEach(litter ->
                                    kits.add(litter.kits().stream()
                                                    .filter(kit -> kit.isRecordedWith(WHITE))
                                                    .count() + " white"));
                });
        kits.agreeWith(
                Map.of(
                        "1 white", Probability.of(27, 37),
                        "2 white", Probability.of(9, 37),
                        "3 white", Probability.of(1, 37)),
                () -> "litters kept");
        assertEquals(64.0 / 37, tried[0] / 2000.0, 0.15);
    }

    @Test
    void couples_that_never_come_up_are_given_up() {
        TooRareException never = assertThrows(
                TooRareException.class,
                () -> simulation()
                        .within(30)
                        .keeping(Ascertainment.atLeastOne(WHITE))
                        .couples(LitterPlan.of(coat("C/C B/b"), coat("C/c B/b"), 2, LitterSize.of(3)))
                        .findFirst());
        assertTrue(never.getMessage().startsWith("no couple all of whose litters"), never.getMessage());
        assertThrows(
                IllegalArgumentException.class,
                () -> new LitterPlan(coat("C/c B/b"), coat("C/c B/b"), 101, 100, LitterSize.of(3), Census.BORN));
    }
}
