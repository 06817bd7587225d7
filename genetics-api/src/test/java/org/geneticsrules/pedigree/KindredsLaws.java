package org.geneticsrules.pedigree;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

/** Kindreds of pedigrees of any shape. */
class KindredsLaws {

    @Property(tries = 300)
    void kindreds_are_the_sets_that_nothing_joins_any_more(@ForAll long seed) {
        kindreds(seed);
    }

    /** Seeds of pedigrees with one kindred, with several, with a foster dam among strangers. */
    @Test
    void the_laws_meet_what_is_rare() {
        Set<Integer> counts = new LinkedHashSet<>();
        int fostered = 0;
        for (long seed = 0; seed < 60; seed++) {
            Pedigree pedigree = kindreds(seed);
            Kindreds apart = Kindreds.of(pedigree);
            counts.add(Math.min(3, apart.count()));
            fostered += (int) pedigree.litters().values().stream()
                    .filter(one -> one.fosterDam().isPresent())
                    .filter(one -> apart.of(pedigree.positionOf(one.fosterDam().orElseThrow()))
                            != apart.ofLitter(
                                    List.copyOf(pedigree.litters().keySet()).indexOf(one.id())))
                    .count();
        }
        assertEquals(Set.of(1, 2, 3), counts);
        assertTrue(fostered >= 10, "litters with a foster dam of another kindred: " + fostered);
    }

    private static Pedigree kindreds(long seed) {
        Pedigree pedigree = RandomPedigree.recorded(seed, 14);
        List<Set<String>> expected = joined(pedigree);
        Kindreds apart = Kindreds.of(pedigree);
        assertEquals(expected.size(), apart.count());
        List<Pedigree> each = apart.each();
        assertEquals(
                expected,
                each.stream()
                        .map(one -> one.individuals().keySet())
                        .map(Set::copyOf)
                        .toList());
        for (int kindred = 0; kindred < expected.size(); kindred++) {
            for (String id : expected.get(kindred)) {
                assertEquals(kindred, apart.of(pedigree.positionOf(id)));
            }
            checkPart(pedigree, each.get(kindred));
        }
        SplittableRandom random = new SplittableRandom(seed);
        int room = 1 + random.nextInt(16);
        List<Pedigree> portions = apart.portions(room);
        assertEquals(
                pedigree.individuals().size(),
                portions.stream().mapToInt(one -> one.individuals().size()).sum());
        assertEquals(
                pedigree.litters().size(),
                portions.stream().mapToInt(one -> one.litters().size()).sum());
        for (Pedigree portion : portions) {
            checkPart(pedigree, portion);
            assertTrue(portion.individuals().size() <= room || joined(portion).size() == 1);
        }
        String one = List.copyOf(pedigree.individuals().keySet())
                .get(random.nextInt(pedigree.individuals().size()));
        Pedigree around = apart.around(List.of(one));
        assertEquals(
                expected.stream().filter(set -> set.contains(one)).findFirst().orElseThrow(),
                around.individuals().keySet());
        checkPart(pedigree, around);
        return pedigree;
    }

    /** Records are those of the whole, but for foster dams who are elsewhere. */
    private static void checkPart(Pedigree whole, Pedigree part) {
        assertEquals(whole.id(), part.id());
        part.individuals().forEach((id, one) -> assertEquals(whole.individual(id), one));
        part.litters().forEach((id, one) -> {
            Litter stated = whole.litters().get(id);
            boolean here = stated.fosterDam()
                    .filter(dam -> part.individuals().containsKey(dam))
                    .isPresent();
            assertEquals(here ? stated.fosterDam().get() : "", one.fosterDam().orElse(""));
            assertEquals(bare(stated), bare(one));
        });
    }

    private static List<Object> bare(Litter one) {
        return List.of(
                one.dam(),
                one.sires(),
                one.born(),
                one.bornCount(),
                one.scoredCount(),
                one.kits(),
                one.ascertainment());
    }

    /** By definition: sets that share a litter are joined until none do. */
    private static List<Set<String>> joined(Pedigree pedigree) {
        List<Set<String>> sets = new ArrayList<>();
        pedigree.individuals().keySet().forEach(id -> sets.add(new LinkedHashSet<>(Set.of(id))));
        for (boolean again = true; again; ) {
            again = false;
            for (Litter litter : pedigree.litters().values()) {
                Set<String> members = new LinkedHashSet<>(litter.kits());
                litter.dam().ifPresent(members::add);
                members.addAll(litter.sires().males());
                List<Set<String>> touched = sets.stream()
                        .filter(set -> set.stream().anyMatch(members::contains))
                        .toList();
                for (Set<String> other : touched.isEmpty() ? touched : touched.subList(1, touched.size())) {
                    touched.get(0).addAll(other);
                    sets.removeIf(set -> set == other);
                    again = true;
                }
            }
        }
        return sets;
    }
}
