package org.geneticsrules.cross;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.geneticsrules.cross.RandomMatings.Family;
import org.geneticsrules.cross.RandomMatings.Known;
import org.geneticsrules.cross.RandomMatings.Looking;
import org.geneticsrules.expression.Census;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.brute.Litters;
import org.geneticsrules.trait.Phenotype;

/** Matings in models of the whole language, held to the enumeration of gametes with their phase. */
@Once
class WholeCrossLaws {

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    @Property(tries = 200)
    void kits_of_known_parents(@ForAll("seeds") long seed) {
        knownParents(Known.draw(seed));
    }

    @Property(tries = 80)
    void kits_of_uncertain_parents(@ForAll("seeds") long seed) {
        uncertainParents(Family.draw(seed));
    }

    @Property(tries = 30)
    void kits_of_one_of_two_males(@ForAll("seeds") long seed) {
        uncertainParents(Family.ofTwoMales(seed, false));
    }

    @Property(tries = 30)
    void kits_that_have_either_of_two_sires_each(@ForAll("seeds") long seed) {
        uncertainParents(Family.ofTwoMales(seed, true));
    }

    static void knownParents(Known known) {
        Census census = known.looking().view().census();
        Litters litters = known.litters(census);
        Cross cross = known.cross();
        if (known.hasKits(census)) {
            assertEquals(
                    Distribution.of(known.looking().of(litters)),
                    cross.phenotypes(known.looking().view()),
                    known::toString);
            assertEquals(litters.lost(), cross.lostShare(census), known::toString);
        }
    }

    static void uncertainParents(Family family) {
        Looking looking = family.looking();
        UncertainCross cross = family.cross();
        assertEquals(family.isContradictory(), cross.isContradictory(), family::toString);
        if (family.isContradictory()) {
            assertEquals(Optional.empty(), cross.probable(looking.view()));
            assertEquals(Set.of(), cross.possible(looking.view()));
            return;
        }
        Census census = looking.view().census();
        Litters litters = family.litters(census);
        Map<Phenotype, Probability> expected = looking.of(litters);
        Optional<Distribution<Phenotype>> probable = cross.probable(looking.view());
        assertEquals(
                expected.isEmpty() ? Optional.empty() : Optional.of(Distribution.of(expected)),
                probable,
                family::toString);
        assertEquals(Optional.of(litters.lost()), cross.lostShare(census), family::toString);
        possibleIsTheSupport(family, probable.map(Distribution::outcomes).orElse(Set.of()));
    }

    /** With no allele absent from the population, what is possible is what has a chance; mutation is left out of the possible. */
    private static void possibleIsTheSupport(Family family, Set<Phenotype> support) {
        Set<Phenotype> possible = family.cross().possible(family.looking().view());
        if (family.mutates()) {
            assertTrue(support.containsAll(possible), family::toString);
        } else {
            assertEquals(new LinkedHashSet<>(support), possible, family::toString);
        }
        for (Phenotype look : List.copyOf(support).subList(0, Math.min(1, support.size()))) {
            Set<Probability> chances =
                    family.cross().possibleChances(family.looking().view(), look, List.of());
            if (!family.mutates()) {
                assertEquals(
                        family.cross()
                                .chance(family.looking().view(), look, List.of())
                                .orElseThrow()
                                .outcomes(),
                        chances,
                        family::toString);
            }
        }
    }
}
