package org.geneticsrules.testing.brute;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.statistics.Statistics;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.RandomPedigrees;
import org.geneticsrules.testing.RandomPedigrees.RandomPedigree;
import org.geneticsrules.testing.brute.Kindred.Litter;
import org.geneticsrules.testing.brute.Kindred.Member;

/** The reference must obey the laws of chance itself. */
class WorldsLaws {

    @Provide
    Arbitrary<RandomPedigree> pedigrees() {
        return RandomPedigrees.pedigrees();
    }

    private static Probability sum(Collection<Probability> chances) {
        return chances.stream().reduce(Probability.ZERO, Probability::plus);
    }

    private static List<String> ids(Kindred kindred) {
        return kindred.members().stream().map(Member::id).toList();
    }

    /** Sums to 1, or nothing is possible. */
    @Property(tries = 40)
    void chances_sum_to_one(@ForAll("pedigrees") RandomPedigree pedigree) {
        Probability whole = pedigree.worlds().likelihood().isZero() ? Probability.ZERO : Probability.ONE;
        for (String id : ids(pedigree.kindred())) {
            assertEquals(whole, sum(pedigree.worlds().genotypes(id).values()));
            assertEquals(whole, sum(pedigree.worlds().sexes(id).values()));
        }
        pedigree.kindred()
                .litters()
                .forEach(litter -> litter.kits()
                        .forEach(kit -> assertEquals(
                                whole, sum(pedigree.worlds().sires(kit).values()))));
        List<String> two = ids(pedigree.kindred()).subList(0, 2);
        Map<Map<String, String>, Probability> first = new LinkedHashMap<>();
        pedigree.worlds().jointly(two).forEach((both, chance) -> first.merge(both.get(0), chance, Probability::plus));
        assertEquals(pedigree.worlds().genotypes(two.get(0)), first);
        Statistics.label("possible")
                .collect(!whole.isZero())
                .coverage(coverage -> coverage.check(true).percentage(share -> share > 50));
    }

    /** P(genotype | records) = P(genotype and records) / P(records): a test without error is that genotype. */
    @Property(tries = 30)
    void a_posterior_is_a_ratio_of_likelihoods(@ForAll("pedigrees") RandomPedigree pedigree) {
        Member member = pedigree.kindred().members().get((int) Math.floorMod(
                pedigree.seed(), (long) pedigree.kindred().members().size()));
        String locus = pedigree.genome().loci().get(0);
        Set<String> all = new LinkedHashSet<>();
        Genome.SEXES.forEach(sex -> all.addAll(pedigree.genome().pairs(locus, sex)));
        Probability whole = Probability.ZERO;
        for (String genotype : all) {
            List<Kindred.Test> tests = new ArrayList<>(member.tests());
            tests.add(new Kindred.Test(locus, Set.of(genotype), Probability.ZERO));
            Member tested = new Member(member.id(), member.sex(), member.population(), member.sightings(), tests);
            Probability with = Worlds.of(pedigree.genome(), replaced(pedigree.kindred(), tested))
                    .likelihood();
            whole = whole.plus(with);
            if (!pedigree.worlds().likelihood().isZero()) {
                assertEquals(
                        with.dividedBy(pedigree.worlds().likelihood()),
                        pedigree.worlds().genotypes(member.id(), locus).getOrDefault(genotype, Probability.ZERO));
            }
        }
        assertEquals(pedigree.worlds().likelihood(), whole);
    }

    private static Kindred replaced(Kindred kindred, Member by) {
        List<Member> members = kindred.members().stream()
                .map(member -> member.id().equals(by.id()) ? by : member)
                .toList();
        return new Kindred(members, kindred.litters(), kindred.confusions());
    }

    /** One more kit of which nothing is recorded tells nothing about the others. */
    @Property(tries = 30)
    void an_unrecorded_kit_changes_nothing(@ForAll("pedigrees") RandomPedigree pedigree) {
        Kindred kindred = pedigree.kindred();
        List<Litter> litters = new ArrayList<>(kindred.litters());
        Litter last = litters.remove(litters.size() - 1);
        List<String> kits = new ArrayList<>(last.kits());
        kits.add("one more");
        litters.add(new Litter(
                last.id(), last.dam(), last.population(), last.sires(), last.sirePerKit(), last.census(), kits));
        List<Member> members = new ArrayList<>(kindred.members());
        members.add(new Member("one more", "", "", List.of(), List.of()));
        Worlds more = Worlds.of(pedigree.genome(), new Kindred(members, litters, kindred.confusions()));
        assertEquals(pedigree.worlds().likelihood(), more.likelihood());
        for (String id : ids(kindred)) {
            assertEquals(pedigree.worlds().animals(id), more.animals(id));
        }
    }

    @Property(tries = 30)
    void the_order_of_facts_changes_nothing(@ForAll("pedigrees") RandomPedigree pedigree) {
        Random random = new Random(pedigree.seed());
        List<Member> members = new ArrayList<>(pedigree.kindred().members());
        List<Litter> litters = new ArrayList<>(pedigree.kindred().litters());
        Collections.shuffle(members, random);
        Collections.shuffle(litters, random);
        Worlds other = Worlds.of(
                pedigree.genome(),
                new Kindred(members, litters, pedigree.kindred().confusions()));
        assertEquals(pedigree.worlds().likelihood(), other.likelihood());
        assertEquals(pedigree.worlds().size(), other.size());
        for (String id : ids(pedigree.kindred())) {
            assertEquals(pedigree.worlds().animals(id), other.animals(id));
        }
    }

    /** What is probable without mutation and confusions is possible, and the other way where all alleles occur everywhere. */
    @Property(tries = 40)
    void possible_is_the_support_of_probable(@ForAll("pedigrees") RandomPedigree pedigree) {
        Kindred even = everywhere(pedigree.kindred().withoutConfusions());
        Genome stable = pedigree.genome().withoutMutation();
        Worlds possible = Worlds.possible(pedigree.genome(), pedigree.kindred());
        Worlds probable = Worlds.of(stable, even);
        Worlds asStated = Worlds.of(stable, pedigree.kindred().withoutConfusions());
        for (String id : ids(even)) {
            assertEquals(possible.animals(id).keySet(), probable.animals(id).keySet());
            assertTrue(possible.animals(id)
                    .keySet()
                    .containsAll(asStated.animals(id).keySet()));
        }
    }

    /** All unrecorded ancestors come from the population that has every allele. */
    private static Kindred everywhere(Kindred kindred) {
        List<Member> members = new ArrayList<>();
        kindred.members()
                .forEach(member ->
                        members.add(new Member(member.id(), member.sex(), "even", member.sightings(), member.tests())));
        List<Litter> litters = new ArrayList<>();
        for (Litter litter : kindred.litters()) {
            List<Kindred.Candidate> sires = litter.sires().stream()
                    .map(sire -> new Kindred.Candidate(sire.id(), "", sire.share()))
                    .toList();
            litters.add(new Litter(
                    litter.id(), litter.dam(), "even", sires, litter.sirePerKit(), litter.census(), litter.kits()));
        }
        return new Kindred(members, litters, kindred.confusions());
    }
}
