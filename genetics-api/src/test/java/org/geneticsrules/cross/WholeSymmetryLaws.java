package org.geneticsrules.cross;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.geneticsrules.cross.RandomMatings.Known;
import org.geneticsrules.expression.View;
import org.geneticsrules.linkage.Recombination;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.Relabelled;
import org.geneticsrules.trait.Phenotype;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What may be exchanged, renamed or left out in matings of the whole language without changing any chance. */
@Once
class WholeSymmetryLaws {

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    @Property(tries = 150)
    void reciprocal_matings_agree_where_the_sexes_inherit_alike(@ForAll("seeds") long seed) {
        reciprocalAgree(Known.draw(seed));
    }

    @Property(tries = 60)
    void other_names_in_another_order_change_no_chance(@ForAll("seeds") long seed) {
        renamingChangesNothing(Known.draw(seed));
    }

    @Property(tries = 100)
    void a_part_of_the_traits_is_the_marginal_of_all(@ForAll("seeds") long seed) {
        partIsMarginal(Known.draw(seed));
    }

    @Property(tries = 100)
    void one_locus_is_the_marginal_of_all_and_of_the_square(@ForAll("seeds") long seed) {
        squareAndLociAgree(Known.draw(seed));
    }

    @Test
    @Tag("long")
    void many_matings_are_reciprocal_and_some_squares_are_sex_linked_or_linked() {
        int reciprocal = 0;
        int sexLinked = 0;
        int linked = 0;
        for (long seed = 0; seed < 200; seed++) {
            Model model = Known.draw(seed).model();
            reciprocal += sexesInheritAlike(model) ? 1 : 0;
            sexLinked += model.loci().values().stream()
                            .anyMatch(locus ->
                                    locus.transmission().heterogametic().isPresent())
                    ? 1
                    : 0;
            linked += model.groups().values().stream()
                            .anyMatch(group -> group.loci().size() > 1)
                    ? 1
                    : 0;
        }
        String counted = reciprocal + " reciprocal, " + sexLinked + " sex-linked, " + linked + " linked";
        assertTrue(reciprocal >= 40 && sexLinked >= 40 && linked >= 40, counted);
    }

    private static boolean sexesInheritAlike(Model model) {
        return model.loci().values().stream().allMatch(locus -> locus.transmission() == Transmission.AUTOSOMAL)
                && model.groups().values().stream()
                        .allMatch(group -> !(group.recombination() instanceof Recombination.Fractions fractions)
                                || fractions.female().equals(fractions.male()));
    }

    static void reciprocalAgree(Known known) {
        View view = known.looking().view();
        Known swapped =
                new Known(known.model(), known.compiled(), known.genome(), known.dam(), known.sire(), known.looking());
        // an animal of one sex may live where one of the other does not
        if (sexesInheritAlike(known.model()) && known.hasKits(view.census()) && swapped.hasKits(view.census())) {
            assertEquals(known.cross().phenotypes(view), swapped.cross().phenotypes(view), known::toString);
            assertEquals(
                    known.cross().lostShare(view.census()), swapped.cross().lostShare(view.census()), known::toString);
        }
    }

    static void renamingChangesNothing(Known known) {
        View view = known.looking().view();
        if (known.hasKits(view.census())) {
            Relabelled relabelled = Relabelled.of(known.model());
            Cross renamed =
                    Cross.of(relabelled.model(), relabelled.genotype(known.sire()), relabelled.genotype(known.dam()));
            assertEquals(known.cross().phenotypes(view), renamed.phenotypes(view), known::toString);
            assertEquals(known.cross().lostShare(view.census()), renamed.lostShare(view.census()), known::toString);
        }
    }

    static void partIsMarginal(Known known) {
        View view = known.looking().view();
        if (known.hasKits(view.census())) {
            Distribution<Phenotype> all = known.cross().phenotypes(view);
            Probability mass = Probability.ZERO;
            for (Probability chance : all.asMap().values()) {
                mass = mass.plus(chance);
            }
            assertEquals(Probability.ONE, mass);
            for (String left : view.traits()) {
                List<String> part = new ArrayList<>(view.traits());
                part.remove(left);
                assertEquals(
                        all.map(look -> look.restrictedTo(part)),
                        known.cross().phenotypes(new View(part, view.stage(), view.census())),
                        () -> known + " without " + left);
            }
        }
    }

    static void squareAndLociAgree(Known known) {
        Set<String> loci = known.model().loci().keySet();
        Cross cross = known.cross();
        // squares are without new mutation
        boolean mutates = known.model().loci().values().stream()
                .anyMatch(locus -> !locus.mutation().isEmpty());
        if (!mutates) {
            assertEquals(cross.genotypes(loci), cross.square(loci).genotypes(), known::toString);
        }
        for (String locus : loci) {
            Distribution<AllelePair> single = cross.segregation(locus);
            assertEquals(
                    cross.genotypes(loci).map(kit -> kit.pair(locus).orElseThrow()),
                    single,
                    () -> known + " at " + locus);
            assertEquals(
                    known.model().locus(locus).mutation().isEmpty()
                            ? single
                            : cross.square(loci)
                                    .genotypes()
                                    .map(kit -> kit.pair(locus).orElseThrow()),
                    cross.square(List.of(locus))
                            .genotypes()
                            .map(kit -> kit.pair(locus).orElseThrow()),
                    () -> known + " at " + locus);
        }
        Probability mass = Probability.ZERO;
        PunnettSquare square = cross.square(loci);
        for (Gamete fromSire : square.sireGametes().outcomes()) {
            for (Gamete fromDam : square.damGametes().outcomes()) {
                mass = mass.plus(square.probability(fromSire, fromDam));
                assertTrue(fromSire.kit().isEmpty() || fromDam.kit().isEmpty(), known::toString);
            }
        }
        assertEquals(Probability.ONE, mass);
    }
}
