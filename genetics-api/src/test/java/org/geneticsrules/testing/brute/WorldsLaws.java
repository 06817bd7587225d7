package org.geneticsrules.testing.brute;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.statistics.Statistics;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomPedigrees;
import org.geneticsrules.testing.RandomPedigrees.RandomPedigree;
import org.geneticsrules.testing.brute.Kindred.Litter;
import org.geneticsrules.testing.brute.Kindred.Member;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The reference must obey the laws of chance itself. */
@Once
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
        // It multiplies the worlds.
        boolean few = pedigree.worlds().size() < 2_000;
        Statistics.label("few worlds")
                .collect(few)
                .coverage(coverage -> coverage.check(true).percentage(share -> share > 20));
        if (few) {
            unrecordedKit(pedigree);
        }
    }

    private static void unrecordedKit(RandomPedigree pedigree) {
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
        Worlds possible = pedigree.possible();
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

    /** Of one litter whose parents are taken for founders, {@link Litters} tells the same of the next kit, listing it otherwise. */
    @Property(tries = 60)
    void a_litter_is_a_pedigree(@ForAll("pedigrees") RandomPedigree pedigree) {
        litter(pedigree);
    }

    /** Of some kinds there is one in ten random pedigrees, so these were looked for. */
    @ParameterizedTest
    @CsvSource({"one sire, 3", "one sire, 14", "one of two, 4", "one of two, 35", "each of two, 15", "each of two, 21"})
    void a_litter_of_each_kind_is_a_pedigree(String kind, long seed) {
        assertEquals(kind, litter(RandomPedigrees.pedigree(seed)));
    }

    /** Compares, and tells what kind of litter it was. */
    private static String litter(RandomPedigree pedigree) {
        List<Litter> litters = new ArrayList<>(pedigree.kindred().litters());
        litters.removeIf(litter -> litter.dam().isEmpty());
        litters.sort(Comparator.comparing(litter -> -litter.sires().size()));
        Litter litter = litters.isEmpty() ? pedigree.kindred().litters().get(0) : litters.get(0);
        Genome genome = pedigree.genome();
        int most = litter.sires().size() > 1 ? 6 : 30;
        boolean few = genome.genotypes("female").size() <= most
                && genome.genotypes("male").size() <= most
                && !litters.isEmpty();
        if (!few || !oneLitter(pedigree, litter)) {
            return "too many";
        }
        return litter.sires().size() == 1 ? "one sire" : litter.sirePerKit() ? "each of two" : "one of two";
    }

    /** Compares, unless there are too many worlds. */
    private static boolean oneLitter(RandomPedigree pedigree, Litter litter) {
        Genome genome = pedigree.genome();
        Kindred kindred = pedigree.kindred();
        KindredBuilder builder = new KindredBuilder().member("dam", "female", "even");
        Map<Animal, Probability> dams = founder(genome, "female", seen(kindred, litter.dam()));
        note(builder, "dam", seen(kindred, litter.dam()));
        List<Kindred.Candidate> sires = new ArrayList<>();
        List<Map<Animal, Probability>> males = new ArrayList<>();
        List<Probability> access = new ArrayList<>();
        for (Kindred.Candidate sire : litter.sires()) {
            String id = "sire " + sires.size();
            sires.add(new Kindred.Candidate(sire.id().isEmpty() ? "" : id, "even", sire.share()));
            List<Seen> seen = sire.id().isEmpty() ? List.of() : seen(kindred, sire.id());
            if (!sire.id().isEmpty()) {
                note(builder.member(id, "male", "even"), id, seen);
            }
            males.add(founder(genome, "male", seen));
            access.add(sire.share());
        }
        List<String> kits = new ArrayList<>(List.of("next"));
        List<Seen.Kit> seenKits = new ArrayList<>();
        for (String kit : litter.kits()) {
            String sex = kindred.member(kit).sex();
            builder.member("kit " + kits.size(), sex, "");
            note(builder, "kit " + kits.size(), seen(kindred, kit));
            kits.add("kit " + kits.size());
            seenKits.add(new Seen.Kit(sex, seen(kindred, kit)));
        }
        builder.litter("dam", "", sires, litter.sirePerKit(), kits.toArray(String[]::new));
        // Less is recorded than was, so there may be very many.
        Optional<Worlds> few = Worlds.within(genome, builder.build(), 50_000);
        if (few.isEmpty()) {
            return false;
        }
        Worlds worlds = few.get();
        if (dams.isEmpty() || males.stream().anyMatch(Map::isEmpty)) {
            assertEquals(0, worlds.size());
            return true;
        }
        Litters litters = (litter.sirePerKit()
                        ? Litters.perKit(genome, males, access, dams, "scored")
                        : Litters.oneOf(genome, males, access, dams, "scored"))
                .given(seenKits);
        Map<List<Object>, Probability> expected = new LinkedHashMap<>();
        if (!litters.isEmpty()) {
            litters.next(Map.of(), List.of())
                    .forEach((kit, chance) ->
                            expected.merge(List.of(kit.sex(), kit.genotype(), kit.phase()), chance, Probability::plus));
        }
        Map<List<Object>, Probability> found = new LinkedHashMap<>();
        worlds.animals("next")
                .forEach((animal, chance) -> found.merge(
                        List.of(animal.sex(), genome.genotype(animal), genome.phase(animal)),
                        chance,
                        Probability::plus));
        assertEquals(expected, found);
        return true;
    }

    /** The sightings of a member, of each the first look only. */
    private static List<Seen> seen(Kindred kindred, String id) {
        return kindred.member(id).sightings().stream()
                .map(sighting -> new Seen(sighting.stage(), sighting.looks().get(0)))
                .toList();
    }

    private static void note(KindredBuilder builder, String id, List<Seen> seen) {
        seen.forEach(one -> builder.seen(id, one.stage(), List.of(one.look())));
    }

    private static Map<Animal, Probability> founder(Genome genome, String sex, List<Seen> seen) {
        return Founders.of(genome, sex, genome.genotypes(sex), Map.of(), "even", "scored", seen);
    }
}
