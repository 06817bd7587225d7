package org.geneticsrules.pedigree;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.geneticsrules.document.Reference;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

class KindredsTest {

    /** Two couples with a kit each; a single animal; a litter of which nobody is recorded. */
    private static Pedigree kennel() {
        return Pedigree.builder("kennel", "1")
                .catalogue(new Reference("looks", "1.0.0", Optional.empty()))
                .add(Individual.of("ann", Sex.FEMALE))
                .add(Individual.of("bea", Sex.FEMALE))
                .add(Individual.of("ann's kit"))
                .add(Individual.of("bob", Sex.MALE))
                .add(Individual.of("art", Sex.MALE))
                .add(Individual.of("alone"))
                .add(Individual.of("bea's kit"))
                .add(Litter.of("a", "ann", "art", "ann's kit").raisedBy("bea"))
                .add(Litter.of("b", "bea", "bob", "bea's kit").raisedBy("ann"))
                .add(Litter.of("nobody", Optional.empty(), Paternity.unknown()))
                .build();
    }

    private static List<Set<String>> ids(List<Pedigree> parts) {
        return parts.stream().map(one -> one.individuals().keySet()).toList();
    }

    @Test
    void kindreds_are_numbered_by_their_first_animals() {
        Kindreds apart = Kindreds.of(kennel());
        assertEquals(3, apart.count());
        assertEquals(
                List.of(0, 1, 0, 1, 0, 2, 1),
                List.of(0, 1, 2, 3, 4, 5, 6).stream().map(apart::of).toList());
        assertEquals(
                List.of(0, 1, Links.NONE),
                List.of(0, 1, 2).stream().map(apart::ofLitter).toList());
    }

    @Test
    void a_foster_dam_joins_nobody_and_is_left_out_where_she_is_not() {
        Pedigree family = Kindreds.of(kennel()).around(List.of("ann's kit"));
        assertEquals(Set.of("ann", "art", "ann's kit"), family.individuals().keySet());
        assertEquals(Set.of("a"), family.litters().keySet());
        assertEquals(Optional.empty(), family.litters().get("a").fosterDam());
        Pedigree both = Kindreds.of(kennel()).around(List.of("art", "bob"));
        assertEquals(6, both.individuals().size());
        assertEquals(Optional.of("bea"), both.litters().get("a").fosterDam());
    }

    @Test
    void a_part_keeps_the_name_and_the_catalogue_of_the_whole() {
        for (Pedigree part : Kindreds.of(kennel()).each()) {
            assertEquals("kennel", part.id());
            assertEquals(kennel().catalogue(), part.catalogue());
        }
    }

    @Test
    void the_whole_is_its_only_part() {
        Pedigree kennel = kennel();
        assertSame(kennel, Kindreds.of(kennel).around(List.of("alone", "ann", "bob")));
        assertEquals(List.of(kennel), Kindreds.of(kennel).portions(7));
        Pedigree empty = Pedigree.builder("empty", "1").build();
        assertEquals(0, Kindreds.of(empty).count());
        assertEquals(List.of(empty), Kindreds.of(empty).each());
    }

    @Test
    void portions_are_filled_with_whole_kindreds() {
        Kindreds apart = Kindreds.of(kennel());
        Set<String> first = Set.of("ann", "art", "ann's kit");
        Set<String> second = Set.of("bea", "bob", "bea's kit");
        assertEquals(List.of(first, second, Set.of("alone")), ids(apart.portions(1)));
        assertEquals(List.of(first, Set.of("bea", "bob", "bea's kit", "alone")), ids(apart.portions(4)));
        assertEquals(Set.of("a", "nobody"), apart.portions(4).get(0).litters().keySet());
        assertThrows(IllegalArgumentException.class, () -> apart.portions(0));
    }

    @Test
    void an_animal_that_is_not_recorded_is_refused() {
        assertThrows(IllegalArgumentException.class, () -> Kindreds.of(kennel()).around(List.of("stranger")));
    }

    @Test
    void a_litter_keeps_its_counts() {
        Litter counted = new Litter(
                "a",
                Optional.of("ann"),
                Paternity.unknown(),
                Optional.empty(),
                OptionalInt.of(7),
                OptionalInt.of(1),
                Optional.of("bea"),
                List.of("kit"),
                Ascertainment.complete());
        Pedigree pedigree = Pedigree.builder("kennel", "1")
                .add(Individual.of("ann", Sex.FEMALE))
                .add(Individual.of("bea", Sex.FEMALE))
                .add(Individual.of("kit"))
                .add(counted)
                .build();
        Litter found = Kindreds.of(pedigree).around(List.of("kit")).litters().get("a");
        assertEquals(OptionalInt.of(7), found.bornCount());
        assertEquals(OptionalInt.of(1), found.scoredCount());
        assertEquals(Ascertainment.complete(), found.ascertainment());
    }
}
