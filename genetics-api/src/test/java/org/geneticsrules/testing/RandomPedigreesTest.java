package org.geneticsrules.testing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Model;
import org.geneticsrules.testing.RandomPedigrees.RandomPedigree;
import org.geneticsrules.testing.brute.Kindred;
import org.geneticsrules.testing.brute.Kindred.Candidate;
import org.geneticsrules.testing.brute.Kindred.Litter;
import org.geneticsrules.testing.brute.Kindred.Member;
import org.geneticsrules.testing.brute.Worlds;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;

/** Laws over random pedigrees say little if the pedigrees are all alike, so what is drawn is measured. */
@Once
class RandomPedigreesTest {

    private static final int PEDIGREES = 200;

    /** In how many pedigrees each feature occurred. */
    private static final Map<String, Integer> SEEN = new LinkedHashMap<>();

    @BeforeAll
    static void measure() {
        for (long seed = 0; seed < PEDIGREES; seed++) {
            RandomPedigree pedigree = RandomPedigrees.pedigree(seed);
            family(pedigree.kindred());
            records(pedigree);
            model(pedigree.model());
        }
    }

    private static void family(Kindred kindred) {
        List<Litter> litters = kindred.litters();
        int members = kindred.members().size();
        count("3 or 4 members", members < 5);
        count("5 or 6 members", members == 5 || members == 6);
        count("7 or 8 members", members > 6);
        count("loops", hasLoop(kindred));
        count("loops though all parents are certain", certain(kindred) && hasLoop(kindred));
        count(
                "unrecorded dams",
                litters.stream().anyMatch(litter -> litter.dam().isEmpty()));
        count(
                "unrecorded sires",
                litters.stream()
                        .anyMatch(litter -> sires(litter, sire -> sire.id().isEmpty()) == 1
                                && litter.sires().size() == 1));
        count(
                "unrecorded candidates",
                litters.stream()
                        .anyMatch(litter -> litter.sires().size() > 1
                                && sires(litter, sire -> sire.id().isEmpty()) > 0));
        count(
                "one of two sires",
                litters.stream().anyMatch(litter -> litter.sires().size() > 1 && !litter.sirePerKit()));
        count(
                "two kits or more, each of either of two sires",
                litters.stream()
                        .anyMatch(litter -> litter.sirePerKit() && litter.kits().size() > 1));
        count(
                "two kits or more, of one of two sires",
                litters.stream()
                        .anyMatch(litter -> litter.sires().size() > 1
                                && !litter.sirePerKit()
                                && litter.kits().size() > 1));
        count(
                "three generations",
                litters.stream()
                        .anyMatch(litter -> parents(litter).stream()
                                .anyMatch(parent -> kindred.litterOf(parent).isPresent())));
        count(
                "members of unknown sex",
                kindred.members().stream()
                        .anyMatch(member -> kindred.sex(member.id()).isEmpty()));
        count(
                "founders of unknown sex",
                kindred.members().stream()
                        .anyMatch(member -> kindred.sex(member.id()).isEmpty()
                                && kindred.litterOf(member.id()).isEmpty()));
        Set<String> populations = new LinkedHashSet<>();
        kindred.members().forEach(member -> populations.add(member.population()));
        populations.remove("");
        count("two populations", populations.size() > 1);
    }

    private static long sires(Litter litter, Predicate<Candidate> which) {
        return litter.sires().stream().filter(which).count();
    }

    private static boolean certain(Kindred kindred) {
        return kindred.litters().stream().allMatch(litter -> litter.sires().size() == 1);
    }

    private static Set<String> parents(Litter litter) {
        Set<String> parents = new LinkedHashSet<>();
        parents.add(litter.dam());
        litter.sires().forEach(sire -> parents.add(sire.id()));
        parents.remove("");
        return parents;
    }

    /**
     * Draws a line from each parent to each mating, all litters of the same two parents being one mating, and from each mating to each
     * kit. Lines that join what was already joined close a loop.
     */
    private static boolean hasLoop(Kindred kindred) {
        Map<String, String> group = new LinkedHashMap<>();
        Set<List<String>> lines = new LinkedHashSet<>();
        for (Litter litter : kindred.litters()) {
            boolean known = litter.sires().size() == 1 && parents(litter).size() == 2;
            String mating = known ? "mating of " + parents(litter) : litter.id();
            parents(litter).forEach(parent -> lines.add(List.of(parent, mating)));
            litter.kits().forEach(kit -> lines.add(List.of(kit, mating)));
        }
        boolean loop = false;
        for (List<String> line : lines) {
            String one = end(group, line.get(0));
            String other = end(group, line.get(1));
            loop = loop || one.equals(other);
            group.put(one, other);
        }
        return loop;
    }

    private static String end(Map<String, String> group, String of) {
        String end = of;
        while (!group.getOrDefault(end, end).equals(end)) {
            end = group.get(end);
        }
        return end;
    }

    private static void records(RandomPedigree pedigree) {
        List<Member> members = pedigree.kindred().members();
        count("contradictions", pedigree.worlds().size() == 0);
        count(
                "something recorded of most",
                members.stream()
                                        .filter(member -> !member.sightings().isEmpty()
                                                || !member.tests().isEmpty())
                                        .count()
                                * 2
                        > members.size());
        count(
                "nothing recorded",
                members.stream()
                        .allMatch(member ->
                                member.sightings().isEmpty() && member.tests().isEmpty()));
        count(
                "two sightings of one animal",
                members.stream().anyMatch(member -> member.sightings().size() > 1));
        count(
                "one of several looks",
                members.stream()
                        .flatMap(member -> member.sightings().stream())
                        .anyMatch(seen -> seen.looks().size() > 1));
        count("tests", members.stream().anyMatch(member -> !member.tests().isEmpty()));
        count(
                "tests that may err",
                members.stream()
                        .flatMap(member -> member.tests().stream())
                        .anyMatch(test -> !test.error().isZero()));
        count(
                "reported sets",
                members.stream()
                        .flatMap(member -> member.tests().stream())
                        .anyMatch(test -> test.reported().size() > 1));
        count("confusions", !pedigree.kindred().confusions().isEmpty());
        Kindred literal = pedigree.kindred().withoutConfusions();
        count(
                "records that only a confusion explains",
                pedigree.worlds().size() > 0
                        && Worlds.of(pedigree.genome(), literal).size() == 0);
        count(
                "records that only a mutation explains",
                pedigree.worlds().size() > 0
                        && Worlds.of(pedigree.genome().withoutMutation(), pedigree.kindred())
                                        .size()
                                == 0);
        count(
                "uncertain sires",
                pedigree.kindred().litters().stream()
                        .flatMap(litter -> litter.kits().stream())
                        .anyMatch(kit -> pedigree.worlds().sires(kit).size() > 1));
        count(
                "uncertain sexes",
                members.stream()
                        .anyMatch(member -> pedigree.worlds().sexes(member.id()).size() > 1));
        count("more than 100 worlds", pedigree.worlds().size() > 100);
        count("heterozygotes of unknown phase", members.stream().anyMatch(member -> {
            int animals = pedigree.worlds().animals(member.id()).size();
            return animals > pedigree.worlds().genotypes(member.id()).size();
        }));
        count(
                "uncertain genotypes",
                members.stream()
                        .anyMatch(member ->
                                pedigree.worlds().genotypes(member.id()).size() > 1));
    }

    private static void model(Model model) {
        for (Transmission way : Transmission.values()) {
            count(way + " loci", model.groups().values().stream().anyMatch(group -> group.transmission() == way));
        }
        count("several loci", model.loci().size() > 1);
        count(
                "linked loci",
                model.groups().values().stream()
                        .anyMatch(group ->
                                group.loci().size() > 1 && group.transmission().recombines()));
        count(
                "three alleles",
                model.loci().values().stream().anyMatch(locus -> locus.alleles().size() > 2));
        count(
                "mutation",
                model.loci().values().stream()
                        .anyMatch(locus -> !locus.mutation().isEmpty()));
        count("viability", !model.viability().isEmpty());
        count(
                "lethal expressions",
                model.viability().values().stream().anyMatch(one -> one.birth().isZero()));
        count(
                "viability of one sex",
                model.viability().values().stream().anyMatch(one -> one.sex().isPresent()));
        count("masks", !model.masks().isEmpty());
        for (Class<?> kind : List.of(CaseState.Chance.class, CaseState.Progression.class, CaseState.Threshold.class)) {
            count(
                    kind.getSimpleName(),
                    model.rules().values().stream()
                            .flatMap(rule -> Stream.concat(
                                    rule.cases().stream().map(one -> one.gives()),
                                    rule.otherwise().stream().map(one -> one.gives())))
                            .anyMatch(kind::isInstance));
        }
    }

    private static void count(String feature, boolean present) {
        SEEN.merge(feature, present ? 1 : 0, Integer::sum);
    }

    private static void atLeast(double least, String feature) {
        between(least, 1, feature);
    }

    private static void between(double least, double most, String feature) {
        double share = (double) SEEN.getOrDefault(feature, 0) / PEDIGREES;
        assertTrue(share >= least && share <= most, feature + ": " + SEEN.get(feature) + " of " + PEDIGREES);
    }

    @Test
    void every_feature_is_common_enough(TestReporter reporter) {
        SEEN.forEach((feature, count) -> reporter.publishEntry(feature, count + " of " + PEDIGREES));
        atLeast(0.25, "3 or 4 members");
        atLeast(0.2, "5 or 6 members");
        atLeast(0.15, "7 or 8 members");
        atLeast(0.25, "loops");
        atLeast(0.1, "loops though all parents are certain");
        atLeast(0.1, "unrecorded dams");
        atLeast(0.1, "unrecorded sires");
        atLeast(0.1, "unrecorded candidates");
        atLeast(0.1, "one of two sires");
        atLeast(0.05, "two kits or more, each of either of two sires");
        atLeast(0.04, "two kits or more, of one of two sires");
        atLeast(0.3, "three generations");
        atLeast(0.3, "members of unknown sex");
        atLeast(0.05, "founders of unknown sex");
        atLeast(0.4, "two populations");
        between(0.05, 0.3, "contradictions");
        atLeast(0.5, "something recorded of most");
        between(0.01, 0.1, "nothing recorded");
        atLeast(0.3, "two sightings of one animal");
        atLeast(0.2, "one of several looks");
        atLeast(0.5, "tests");
        atLeast(0.3, "tests that may err");
        atLeast(0.2, "reported sets");
        atLeast(0.2, "confusions");
        atLeast(0.02, "records that only a confusion explains");
        atLeast(0.003, "records that only a mutation explains");
        atLeast(0.1, "uncertain sires");
        atLeast(0.2, "uncertain sexes");
        atLeast(0.2, "more than 100 worlds");
        atLeast(0.5, "uncertain genotypes");
        atLeast(0.08, "AUTOSOMAL loci");
        atLeast(0.08, "X loci");
        atLeast(0.01, "Y loci");
        atLeast(0.08, "Z loci");
        atLeast(0.03, "W loci");
        atLeast(0.03, "MATERNAL loci");
        atLeast(0.3, "several loci");
        atLeast(0.1, "linked loci");
        atLeast(0.1, "heterozygotes of unknown phase");
        atLeast(0.08, "three alleles");
        atLeast(0.1, "mutation");
        atLeast(0.3, "viability");
        atLeast(0.1, "lethal expressions");
        atLeast(0.05, "viability of one sex");
        atLeast(0.5, "masks");
        atLeast(0.4, "Chance");
        atLeast(0.4, "Progression");
        atLeast(0.2, "Threshold");
    }

    @Test
    void the_same_seed_gives_the_same_pedigree() {
        RandomPedigree once = RandomPedigrees.pedigree(7);
        RandomPedigree again = RandomPedigrees.pedigree(7);
        assertEquals(once.kindred(), again.kindred());
        assertEquals(once.model().id(), again.model().id());
    }
}
